#include "cli/Load.h"

#include <cmath>
#include <utility>

#include "cli/Problems.h"
#include "files/JobFile.h"
#include "files/RuleSheets.h"
#include "plan/KindNames.h"

namespace sumpwright::cli {

namespace {

std::nullopt_t fail(const StudyChoice& choice, Console& console, const base::Problems& problems) {
  complain(console.err, choice.job, problems);
  console.exit_code = exitCodeOf(problems);
  return std::nullopt;
}

base::Problems onlyUnsound(base::Problems problems) {
  std::erase_if(problems,
                [](const base::Problem& p) { return p.gravity != base::Gravity::unsound; });
  return problems;
}

siting::StudyOptions optionsOf(const StudyChoice& choice) {
  siting::StudyOptions options;
  if (!choice.outlet.empty()) options.outlet = plan::valueOf<plan::OutletMode>(choice.outlet);
  if (choice.core_mm) options.core_m = *choice.core_mm / 1000.0;
  return options;
}

}  // namespace

CLI::Validator within(double least, double most) {
  CLI::Validator range = CLI::Range(least, most);
  range.operation([inner = CLI::Range(least, most)](std::string& text) {
    double value = 0.0;
    const bool number = CLI::detail::lexical_cast(text, value) && std::isfinite(value);
    return number ? inner(text) : "'" + text + "' is not a number";
  });
  return range;
}

void addStudyOptions(CLI::App& command, StudyChoice& choice) {
  command.add_option("JOB", choice.job, "Job file, NAME.sump.json")->required();
  command.add_option("--rules", choice.rules, "Rule sheet by id or file instead of the job's own")
      ->type_name("ID|FILE");
  command
      .add_option("--outlet", choice.outlet,
                  "Judge for an outlet low at the hole or a riser to the eaves")
      ->check(CLI::IsMember({"low", "riser"}))
      ->type_name("low|riser");
  // The bounds are those of plan::setCore.
  command.add_option("--core", choice.core_mm, "Diameter of the drilled hole, 40 to 300 mm")
      ->check(within(40.0, 300.0))
      ->type_name("MM");
}

std::optional<siting::Study> study(const StudyChoice& choice, Console& console) {
  const base::Result<plan::ReadJob> read = files::openJob(choice.job);
  if (!read.ok()) return fail(choice, console, read.problems());
  const base::Problems unsound = onlyUnsound(read->problems);
  if (!unsound.empty()) return fail(choice, console, unsound);
  const base::Result<files::LoadedSheet> loaded =
      choice.rules.empty() ? files::sheetOf(*read)
                           : files::sheetByIdOrFile(choice.rules, read->source);
  if (!loaded.ok()) return fail(choice, console, loaded.problems());
  base::Result<siting::Study> made = siting::Study::of(read->job, loaded->sheet, optionsOf(choice));
  if (!made.ok()) return fail(choice, console, made.problems());
  return std::move(made).value();
}

}  // namespace sumpwright::cli
