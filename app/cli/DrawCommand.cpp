// sumpwright draw JOB -o FILE: the client's marked-up plan as PDF, SVG or PNG.

#include <QDate>
#include <algorithm>
#include <memory>

#include "cli/CommandLine.h"
#include "cli/Display.h"
#include "cli/Load.h"
#include "cli/Problems.h"
#include "dossier/ClientPlan.h"
#include "paint/Export.h"
#include "paint/QtVoice.h"

namespace sumpwright::cli {

namespace {

struct DrawChoice {
  StudyChoice study;
  std::string file;
  std::string size = "a4";
  std::string date;
  std::string sump;
};

std::string badFile(const std::string& file) {
  return paint::formatOf(file) ? "" : "'" + file + "' must end in .pdf, .svg or .png";
}

std::string badDate(const std::string& text) {
  const bool good =
      text.size() == 10 && QDate::fromString(QString::fromStdString(text), Qt::ISODate).isValid();
  return good ? "" : "'" + text + "' is not a date such as 2026-03-31";
}

bool hasSump(const plan::Design& design, const std::string& id) {
  return std::any_of(design.sumps.begin(), design.sumps.end(), [&](const plan::Sump& sump) {
    return sump.id == id && sump.kind == plan::SumpKind::cored;
  });
}

dossier::ClientPlanOptions optionsOf(const DrawChoice& choice) {
  dossier::ClientPlanOptions options;
  options.size = choice.size == "a3" ? dossier::PaperSize::a3 : dossier::PaperSize::a4;
  options.sump = choice.sump;
  options.date =
      choice.date.empty() ? QDate::currentDate().toString(Qt::ISODate).toStdString() : choice.date;
  return options;
}

void fail(const DrawChoice& choice, const base::Problems& problems, Console& console) {
  complain(console.err, choice.study.job, problems);
  console.exit_code = kUnusable;
}

void runDraw(const DrawChoice& choice, Console& console) {
  const std::optional<siting::Study> made = study(choice.study, console);
  if (!made) return;
  if (!choice.sump.empty() && !hasSump(made->job().design, choice.sump)) {
    const base::Message message("cli.no-sump", {base::text("sump", choice.sump)});
    return fail(choice, {{message, "/design/sumps", base::Gravity::unreadable}}, console);
  }
  ensureGui();
  const paint::QtVoice voice(made->job().display_units);
  const dossier::Document paper = dossier::clientPlan(*made, voice, optionsOf(choice));
  const auto written = paint::exportPages(paint::pagesOf(paper), choice.file);
  if (!written.ok()) return fail(choice, written.problems(), console);
  for (const std::string& file : *written) console.out << file << '\n';
}

}  // namespace

void addDraw(CLI::App& program, Console& console) {
  auto choice = std::make_shared<DrawChoice>();
  CLI::App* command = program.add_subcommand("draw", "The marked-up plan as PDF, SVG or PNG");
  addStudyOptions(*command, choice->study);
  command->add_option("-o,--output", choice->file, "What to write; its ending says which form")
      ->required()
      ->check(badFile)
      ->type_name("FILE.{pdf,svg,png}");
  command->add_option("--size", choice->size, "Paper size")
      ->check(CLI::IsMember({"a4", "a3"}))
      ->type_name("a4|a3")
      ->capture_default_str();
  command->add_option("--date", choice->date, "Date on the sheet; today unless given")
      ->check(badDate)
      ->type_name("YYYY-MM-DD");
  command->add_option("--sump", choice->sump, "Which sump of the design; the first unless given")
      ->type_name("ID");
  command->callback([choice, &console] { runDraw(*choice, console); });
}

}  // namespace sumpwright::cli
