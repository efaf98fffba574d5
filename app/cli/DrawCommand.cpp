// sumpwright draw JOB -o FILE: the client's marked-up plan as PDF, SVG or PNG.

#include <memory>

#include "cli/CommandLine.h"
#include "cli/Display.h"
#include "cli/PaperOptions.h"
#include "cli/Problems.h"
#include "paint/Export.h"
#include "paint/QtVoice.h"

namespace sumpwright::cli {

namespace {

struct DrawChoice {
  PaperChoice paper;
  std::string file;
};

std::string badFile(const std::string& file) {
  return paint::formatOf(file) ? "" : "'" + file + "' must end in .pdf, .svg or .png";
}

void runDraw(const DrawChoice& choice, Console& console) {
  const std::optional<PaperStuff> stuff = paperStuff(choice.paper, console);
  if (!stuff) return;
  ensureGui();
  const paint::QtVoice voice(stuff->study.job().display_units);
  const dossier::Document paper = dossier::clientPlan(stuff->study, voice, stuff->options);
  const auto written = paint::exportPages(paint::pagesOf(paper), choice.file);
  if (!written.ok()) {
    complain(console.err, choice.paper.study.job, written.problems());
    console.exit_code = kUnusable;
    return;
  }
  for (const std::string& file : *written) console.out << file << '\n';
}

}  // namespace

void addDraw(CLI::App& program, Console& console) {
  auto choice = std::make_shared<DrawChoice>();
  CLI::App* command = program.add_subcommand("draw", "The marked-up plan as PDF, SVG or PNG");
  command->add_option("-o,--output", choice->file, "What to write; its ending says which form")
      ->required()
      ->check(badFile)
      ->type_name("FILE.{pdf,svg,png}");
  addPaperOptions(*command, choice->paper);
  command->callback([choice, &console] { runDraw(*choice, console); });
}

}  // namespace sumpwright::cli
