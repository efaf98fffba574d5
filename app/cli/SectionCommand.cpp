// sumpwright section JOB: can a hole be cored there, and where in the wall.

#include <algorithm>
#include <memory>
#include <nlohmann/json.hpp>

#include "cli/AtPlace.h"
#include "cli/CommandLine.h"
#include "cli/Display.h"
#include "cli/Load.h"
#include "cli/Problems.h"
#include "cli/Section.h"
#include "drawing/SectionDrawing.h"
#include "paint/Export.h"
#include "paint/QtVoice.h"

namespace sumpwright::cli {

namespace {

struct SectionChoice {
  StudyChoice study;
  std::string at;
  std::string sump;
  std::optional<double> entry_m, fall_deg, pit_l;
  std::string file;
  bool json = false;
};

constexpr double kPictureWidth_mm = 180.0;
constexpr double kPictureHeight_mm = 120.0;

std::string badPicture(const std::string& file) {
  return paint::formatOf(file) ? "" : "'" + file + "' must end in .pdf, .svg or .png";
}

void failSection(const SectionChoice& choice, const base::Problems& problems, Console& console) {
  complain(console.err, choice.study.job, problems);
  console.exit_code = kUnusable;
}

const plan::Sump* sumpOf(const SectionChoice& choice, const plan::Design& design) {
  const auto& sumps = design.sumps;
  const auto found = std::find_if(sumps.begin(), sumps.end(), [&](const plan::Sump& sump) {
    return sump.kind == plan::SumpKind::cored && (choice.sump.empty() || sump.id == choice.sump);
  });
  return found == sumps.end() ? nullptr : &*found;
}

/// The place asked for: --at, the sump's, else the best one; or why there is none.
base::Result<SectionAt> whereOf(const SectionChoice& choice, const siting::Study& study) {
  if (!choice.at.empty()) {
    const siting::Place place = *placeOf(choice.at);
    if (const auto bad = noSuchPlace(place, study)) {
      return base::Problem{*bad, "", base::Gravity::unreadable};
    }
    return SectionAt{{}, study.perimeter().wrapped(place), {}};
  }
  if (const plan::Sump* sump = sumpOf(choice, study.job().design)) {
    return SectionAt{sump->id, {sump->ring, sump->chainage_m}, {}};
  }
  if (!choice.sump.empty()) {
    return base::Problem{base::Message("cli.no-sump", {base::text("sump", choice.sump)}),
                         "/design/sumps", base::Gravity::unreadable};
  }
  if (!study.best().empty()) return SectionAt{{}, study.best().front().place, {}};
  return base::Problem{base::Message("cli.no-place"), "/design/sumps", base::Gravity::unreadable};
}

build::SectionWish wishOf(const SectionChoice& choice, const plan::Job& job,
                          const std::string& sump) {
  build::SectionWish wish;
  wish.pit_l = job.suction.pit_l;
  for (const plan::Sump& one : job.design.sumps) {
    if (one.id == sump) wish = build::wishOf(job, one);
  }
  if (choice.entry_m) wish.bore.entry_m = choice.entry_m;
  if (choice.fall_deg) wish.bore.fall = build::fallOfDegrees(*choice.fall_deg);
  if (choice.pit_l) wish.pit_l = choice.pit_l;
  return wish;
}

void drawSection(const SectionChoice& choice, const siting::Study& study, const SectionAt& at,
                 Console& console) {
  ensureGui();
  const paint::QtVoice voice(study.job().display_units);
  const drawing::SectionView view{kPictureWidth_mm, kPictureHeight_mm, drawing::ThemeName::paper,
                                  true};
  const std::vector<drawing::DrawList> pages{drawing::sectionDrawing(at.section, view, voice)};
  const paint::Pages document{"Drill section", study.job().surveyor, study.job().address,
                              view.width_mm,   view.height_mm,       pages};
  const auto written = paint::exportPages(document, choice.file);
  if (!written.ok()) return failSection(choice, written.problems(), console);
  for (const std::string& file : *written) console.out << file << '\n';
}

void runSection(const SectionChoice& choice, Console& console) {
  const std::optional<siting::Study> made = study(choice.study, console);
  if (!made) return;
  const auto where = whereOf(choice, *made);
  if (!where.ok()) return failSection(choice, where.problems(), console);
  SectionAt at = *where;
  at.section = build::drillSection(made->site(), at.place, wishOf(choice, made->job(), at.sump));
  if (!choice.file.empty()) return drawSection(choice, *made, at, console);
  if (!choice.json) return printSection(*made, at, console.out);
  using Handler = nlohmann::ordered_json::error_handler_t;
  console.out << sectionJson(*made, at).dump(2, ' ', false, Handler::replace) << '\n';
}

}  // namespace

void addSection(CLI::App& program, Console& console) {
  auto choice = std::make_shared<SectionChoice>();
  CLI::App* command =
      program.add_subcommand("section", "Drill section: can it be cored there, and at what height");
  addStudyOptions(*command, choice->study);
  command->add_flag("--json", choice->json, "As JSON (sumpwright.section/1)");
  addAtOption(*command, choice->at);
  command->add_option("--sump", choice->sump, "Which sump of the design; the first unless given")
      ->type_name("ID");
  command
      ->add_option("--entry", choice->entry_m,
                   "Middle of the hole at the outside face, metres above finished floor")
      ->check(within(-5.0, 5.0))
      ->type_name("M");
  command->add_option("--fall", choice->fall_deg, "Fall of the hole into the house, degrees")
      ->check(within(-45.0, 45.0))
      ->type_name("DEG");
  command->add_option("--pit", choice->pit_l, "Fill taken out under the slab, litres")
      ->check(within(1.0, 500.0))
      ->type_name("L");
  command
      ->add_option("-o,--output", choice->file,
                   "Write the section as a drawing instead; its ending says which form")
      ->check(badPicture)
      ->type_name("FILE.{pdf,svg,png}");
  command->callback([choice, &console] { runSection(*choice, console); });
}

}  // namespace sumpwright::cli
