// sumpwright draw JOB -o FILE: the client's marked-up plan as PDF, SVG or PNG.

#include <memory>

#include "cli/CommandLine.h"
#include "cli/Display.h"
#include "cli/PaperOptions.h"
#include "cli/Problems.h"
#include "drawing/ElevationDrawing.h"
#include "paint/Export.h"
#include "paint/QtVoice.h"

namespace sumpwright::cli {

namespace {

struct DrawChoice {
  PaperChoice paper;
  std::string file;
  std::string what = "plan";
  std::string theme = "paper";
};

std::string badFile(const std::string& file) {
  return paint::formatOf(file) ? "" : "'" + file + "' must end in .pdf, .svg or .png";
}

drawing::ThemeName themeOf(const std::string& name) {
  if (name == "dark") return drawing::ThemeName::dark;
  return name == "light" ? drawing::ThemeName::light : drawing::ThemeName::paper;
}

/// The cored sump asked for, or the first.
const plan::Sump* drawnSump(const plan::Design& design, const std::string& id) {
  for (const plan::Sump& sump : design.sumps) {
    if (sump.kind == plan::SumpKind::cored && (id.empty() || sump.id == id)) return &sump;
  }
  return nullptr;
}

/// The unrolled walls about the sump.
drawing::DrawList elevationOf(const DrawChoice& choice, const PaperStuff& stuff,
                              const drawing::Voice& voice) {
  constexpr double kWidth_mm = 250.0;
  constexpr double kHeight_mm = 130.0;
  const siting::Study& study = stuff.study;
  const plan::Sump* sump = drawnSump(study.job().design, stuff.options.sump);
  const perimeter::Place place =
      sump == nullptr ? perimeter::Place{} : perimeter::Place{sump->ring, sump->chainage_m};
  const auto view =
      drawing::elevationAbout(study, place, kWidth_mm, kHeight_mm, themeOf(choice.theme));
  drawing::DrawList list = drawing::elevationBase(study, view, voice);
  const auto marker = sump == nullptr
                          ? drawing::elevationLane(study, view, voice)
                          : drawing::elevationMarker(study, study.assess(place, sump->id), sump->id,
                                                     view, voice, drawing::wordsOf(list, voice));
  list.items.insert(list.items.end(), marker.items.begin(), marker.items.end());
  return list;
}

base::Result<std::vector<std::string>> writeElevation(const DrawChoice& choice,
                                                      const PaperStuff& stuff,
                                                      const drawing::Voice& voice) {
  const std::vector<drawing::DrawList> pages{elevationOf(choice, stuff, voice)};
  paint::Pages document;
  document.title = "Elevation, unrolled";
  document.author = stuff.study.job().surveyor;
  document.subject = stuff.study.job().address;
  document.width_mm = pages[0].width_mm;
  document.height_mm = pages[0].height_mm;
  document.pages = pages;
  return paint::exportPages(document, choice.file);
}

base::Result<std::vector<std::string>> writePlan(const DrawChoice& choice, const PaperStuff& stuff,
                                                 const drawing::Voice& voice) {
  const dossier::Document paper = dossier::clientPlan(stuff.study, voice, stuff.options);
  return paint::exportPages(paint::pagesOf(paper), choice.file);
}

void runDraw(const DrawChoice& choice, Console& console) {
  const std::optional<PaperStuff> stuff = paperStuff(choice.paper, console);
  if (!stuff) return;
  ensureGui();
  const paint::QtVoice voice(stuff->study.job().display_units);
  const auto written = choice.what == "elevation" ? writeElevation(choice, *stuff, voice)
                                                  : writePlan(choice, *stuff, voice);
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
  command
      ->add_option("--what", choice->what,
                   "The marked-up plan on paper, or the unrolled elevation about the sump")
      ->check(CLI::IsMember({"plan", "elevation"}))
      ->type_name("plan|elevation")
      ->capture_default_str();
  command->add_option("--theme", choice->theme, "Colours of the elevation")
      ->check(CLI::IsMember({"paper", "light", "dark"}))
      ->type_name("paper|light|dark")
      ->capture_default_str();
  addPaperOptions(*command, choice->paper);
  command->callback([choice, &console] { runDraw(*choice, console); });
}

}  // namespace sumpwright::cli
