// sumpwright check JOB...: what is wrong with job files, or still missing.

#include <algorithm>
#include <memory>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "cli/Command.h"
#include "cli/CommandLine.h"
#include "cli/Problems.h"
#include "files/JobFile.h"
#include "files/RuleSheets.h"
#include "siting/DesignCheck.h"

namespace sumpwright::cli {

namespace {

struct CheckChoice {
  std::vector<std::string> jobs;
  bool json = false;
};

struct Checked {
  std::string file;
  base::Problems problems;
  words::Units units = words::Units::metric;
};

Checked checked(const std::string& file) {
  const base::Result<plan::ReadJob> read = files::openJob(file);
  if (!read.ok()) return {file, read.problems()};
  Checked out{file, read->problems};
  if (read->job.display_units == plan::DisplayUnits::imperial) out.units = words::Units::imperial;
  const auto sheet = files::sheetOf(*read);
  const bool unsound = base::any(read->problems, base::Gravity::unsound);
  base::Problems more = sheet.problems();
  if (sheet.ok() && !unsound) more = siting::checkDesign(read->job, sheet->sheet);
  out.problems.insert(out.problems.end(), more.begin(), more.end());
  return out;
}

const char* verdictOf(const base::Problems& problems) {
  switch (exitCodeOf(problems)) {
    case kUnusable:
      return "unreadable";
    case kUnsound:
      return "unsound";
    default:
      return "sound";
  }
}

/// Errors in the usual place, whatever form the report has.
void complainOfUnreadable(const Checked& checked, std::ostream& err) {
  base::Problems unreadable = checked.problems;
  std::erase_if(unreadable,
                [](const base::Problem& p) { return p.gravity != base::Gravity::unreadable; });
  complain(err, checked.file, unreadable, checked.units);
}

void printText(const Checked& checked, std::ostream& out) {
  out << checked.file << ": " << verdictOf(checked.problems) << '\n';
  for (const base::Problem& problem : checked.problems) {
    if (problem.gravity == base::Gravity::unreadable) continue;
    out << "  " << gravityName(problem.gravity) << ' ' << lineOf(problem, checked.units) << '\n';
  }
}

void printJson(const std::vector<Checked>& all, std::ostream& out) {
  nlohmann::ordered_json jobs = nlohmann::ordered_json::array();
  for (const Checked& one : all) {
    jobs.push_back({{"file", one.file},
                    {"verdict", verdictOf(one.problems)},
                    {"problems", toJson(one.problems, one.units)}});
  }
  const nlohmann::ordered_json report{{"format", "sumpwright.check/1"}, {"jobs", jobs}};
  out << report.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) << '\n';
}

void runCheck(const CheckChoice& choice, Console& console) {
  std::vector<Checked> all;
  for (const std::string& file : choice.jobs) {
    all.push_back(checked(file));
    complainOfUnreadable(all.back(), console.err);
    if (!choice.json) printText(all.back(), console.out);
    console.exit_code = std::max(console.exit_code, exitCodeOf(all.back().problems));
  }
  if (choice.json) printJson(all, console.out);
}

}  // namespace

void addCheck(CLI::App& program, Console& console) {
  auto choice = std::make_shared<CheckChoice>();
  CLI::App* command =
      program.add_subcommand("check", "Say what is wrong with job files, or missing");
  command->add_option("JOB", choice->jobs, "Job files, NAME.sump.json")->required();
  command->add_flag("--json", choice->json, "Report as JSON (sumpwright.check/1)");
  command->callback([choice, &console] { runCheck(*choice, console); });
}

}  // namespace sumpwright::cli
