// Whole drawings compared as text. After a change that is meant, run with SUMPWRIGHT_RENEW_GOLDEN=1
// and read the difference.

#include "core/build/Sites.h"
#include "core/drawing/Drawn.h"
#include "core/drawing/Reached.h"
#include "dossier/ClientPlan.h"
#include "drawing/ElevationDrawing.h"
#include "drawing/FieldDrawing.h"
#include "drawing/FieldLegend.h"
#include "drawing/PlanDrawing.h"
#include "drawing/SectionDrawing.h"
#include "drawing/TapeDrawing.h"
#include "suction/ModelOf.h"
#include "support/Golden.h"

namespace sumpwright {
namespace {

using drawing::DrawList;
using drawing::furnished;
using drawing::studyOf;
using drawing::voice;
using support::PlanBuilder;

void expectGolden(const std::string& name, const std::string& text) {
  support::expectGolden("golden/" + name + ".txt", text);
}

/// Base and marker at a place, small enough that the file can be read.
std::string plan(const plan::Job& job, perimeter::Place place, drawing::ThemeName name) {
  const auto study = studyOf(job);
  const auto view = drawing::fitted(study, 100.0, 80.0, name);
  const auto assessment = study.assess(place, "s");
  return toText(drawing::planBase(study, view, voice())) +
         toText(drawing::planMarker(study, assessment, view, voice()));
}

std::string tape(const plan::Job& job, perimeter::Place place, double height_mm) {
  const auto study = studyOf(job);
  drawing::TapeView view;
  view.width_mm = 120.0;
  view.height_mm = height_mm;
  const auto assessment = study.assess(place, "s");
  if (!assessment.findings.empty()) view.deciding_rule = assessment.findings[0].rule;
  return toText(drawing::tapeBase(study, view, voice())) +
         toText(drawing::tapeMarker(study, assessment, view, voice()));
}

plan::Job terrace() {
  const auto party = [](plan::Wall& w) { w.kind = plan::WallKind::party; };
  auto b = PlanBuilder::rectangle(5, 9);
  b.wall(1, party).wall(3, party).window("w", 2, 1.0, 1.2).door("d", 0, 1.0);
  b.service("gas", plan::ServiceKind::gas, 0, 4.0).sump("s", 0, 17.5);
  return b.job();
}

TEST(Golden, PlanClearLight) {
  expectGolden("plan-clear-light", plan(furnished(), {0, 12.5}, drawing::ThemeName::light));
}

TEST(Golden, PlanRefusedDark) {
  expectGolden("plan-refused-dark", plan(furnished(), {0, 7.0}, drawing::ThemeName::dark));
}

TEST(Golden, PlanTerrace) {
  expectGolden("plan-terrace", plan(terrace(), {0, 17.5}, drawing::ThemeName::light));
}

TEST(Golden, PlanCourtyard) {
  expectGolden("plan-courtyard",
               plan(PlanBuilder::courtyard(), {1, 3.0}, drawing::ThemeName::light));
}

std::string elevation(bool strip) {
  plan::Job job = furnished().sump("s", 0, 12.5).job();
  job.design.outlet = plan::OutletMode::riser;
  job.house.eaves_m = 2.6;
  plan::Sump& s = job.design.sumps.at(0);
  s.discharge = plan::Discharge{0, s.chainage_m + 0.5, 3.4};
  const auto study = studyOf(job);
  const perimeter::Place place{s.ring, s.chainage_m};
  const auto view =
      strip ? drawing::elevationStrip(study, 140.0, 22.0, drawing::ThemeName::light)
            : drawing::elevationAbout(study, place, 100.0, 70.0, drawing::ThemeName::paper);
  return toText(drawing::elevationBase(study, view, voice())) +
         toText(drawing::elevationMarker(study, study.assess(place, s.id), s.id, view, voice()));
}

TEST(Golden, ElevationOfARun) { expectGolden("elevation-run", elevation(false)); }

TEST(Golden, ElevationStrip) { expectGolden("elevation-strip", elevation(true)); }

/// A field whose figures are simple: suction falls with the distance from the sump.
TEST(Golden, FieldOfAWallWithAGap) {
  plan::Job job = PlanBuilder::rectangle(8.0, 5.0).sump("s", 0, 1.5).job();
  job.plan.rising_walls.push_back({"rising", {{4.0, 0.35}, {4.0, 4.65}}, 0.1, {{3.0, 3.6}}});
  job.plan.test_holes.push_back({"hole", "", {6.0, 2.0}});
  const auto study = studyOf(job);
  const auto model = suction::modelOf(job, suction::Ground{}).value();
  const auto network = suction::networkOf(model, 0.25, true);
  std::vector<double> pa;
  for (std::size_t c = 0; c < network.cells.size(); ++c) {
    pa.push_back(20.0 - 4.0 * network.centre(static_cast<int>(c)).x);
  }
  drawing::FieldShown shown;
  shown.field = {&network, &pa};
  auto view = drawing::fitted(study, 100.0, 80.0, drawing::ThemeName::light);
  view.grid = false;
  const auto sheet = drawing::fieldSheet(study, model, view, voice(), "s", true);
  const auto holes = drawing::predictedAt(job.plan, shown.field);
  expectGolden("field-gap",
               toText(drawing::fieldPicture(sheet, shown, holes, voice())) +
                   toText(drawing::fieldLegend(drawing::FieldKind::suction, 5.0,
                                               drawing::ThemeName::light, 73.0, voice())) +
                   toText(drawing::shareBar({0.4, 0.7, 0.9}, drawing::ThemeName::light, 73.0)));
}

TEST(Golden, TapeFolded) { expectGolden("tape-folded", tape(furnished(), {0, 7.0}, 50.0)); }

TEST(Golden, TapeCourtyard) {
  expectGolden("tape-courtyard", tape(PlanBuilder::courtyard(), {1, 3.0}, 100.0));
}

TEST(Golden, TapeOfReach) {
  const auto study = studyOf(furnished());
  const auto reach = drawing::reachOf(study);
  drawing::TapeView view;
  view.reach = true;
  view.width_mm = 120.0;
  view.height_mm = drawing::tapeFullHeight_mm(study, view);
  expectGolden("tape-reach",
               toText(drawing::tapeReach(study, &reach, view, voice())) +
                   toText(drawing::tapeMarker(study, study.assess({0, 12.5}), view, voice())));
}

TEST(Golden, SectionForTheCrew) {
  const auto section = build::drillSection(build::knownBuildUp(), {});
  expectGolden("section-crew",
               toText(drawing::sectionDrawing(
                   section, {170.0, 110.0, drawing::ThemeName::paper, true}, voice())));
}

TEST(Golden, SectionOfADoubtfulFootingDark) {
  const auto section = build::drillSection(build::knownBuildUp(-0.75, -0.35), {});
  expectGolden("section-doubtful-dark",
               toText(drawing::sectionDrawing(
                   section, {73.0, 52.0, drawing::ThemeName::dark, false}, voice())));
}

TEST(Golden, PaperOfATerrace) {
  dossier::ClientPlanOptions options;
  options.date = "2026-06-02";
  std::string text;
  for (const DrawList& page : dossier::clientPlan(studyOf(terrace()), voice(), options).pages) {
    text += toText(page);
  }
  expectGolden("paper-terrace", text);
}

TEST(Golden, PaperOfAnUnsurveyedHouse) {
  dossier::ClientPlanOptions options;
  options.date = "2026-06-02";
  std::string text;
  for (const DrawList& page :
       dossier::clientPlan(studyOf(PlanBuilder::bare()), voice(), options).pages) {
    text += toText(page);
  }
  expectGolden("paper-unsurveyed", text);
}

}  // namespace
}  // namespace sumpwright
