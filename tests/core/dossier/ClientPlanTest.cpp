#include <algorithm>

#include "core/drawing/Drawn.h"
#include "dossier/ClientPlan.h"
#include "dossier/Flow.h"

namespace sumpwright::dossier {
namespace {

using drawing::furnished;
using drawing::says;
using drawing::studyOf;
using drawing::voice;
using support::PlanBuilder;

Document paper(const plan::Job& job, ClientPlanOptions options = {},
               const siting::StudyOptions& how = {}) {
  if (options.date.empty()) options.date = "2026-06-02";
  return clientPlan(studyOf(job, how), voice(), options);
}

bool saysAnywhere(const Document& document, const std::string& words) {
  for (const auto& page : document.pages) {
    if (says(page, words)) return true;
  }
  return false;
}

plan::Waiver waiver(double chainage_m) {
  plan::Waiver w;
  w.id = "waiver";
  w.sump = "s";
  w.rule = "openings";
  w.thing = "w";
  w.chainage_m = chainage_m;
  w.reason = "Owner accepts it";
  w.name = "A. N. Other";
  w.date = "2026-05-01";
  return w;
}

TEST(ClientPlan, IsPortraitA4OrA3) {
  const auto job = furnished().sump("s", 0, 12.0).job();
  const Document a4 = paper(job);
  EXPECT_EQ(a4.width_mm, 210.0);
  EXPECT_EQ(a4.height_mm, 297.0);
  ClientPlanOptions large;
  large.size = PaperSize::a3;
  const Document a3 = paper(job, large);
  EXPECT_EQ(a3.width_mm, 297.0);
  EXPECT_EQ(a3.height_mm, 420.0);
  for (const Document& d : {a4, a3}) {
    for (const auto& page : d.pages) {
      EXPECT_EQ(page.width_mm, d.width_mm);
      EXPECT_EQ(page.height_mm, d.height_mm);
      drawing::expectInside(page, voice());
    }
  }
}

TEST(ClientPlan, NumbersItsPages) {
  const Document d = paper(furnished().sump("s", 0, 12.0).job());
  ASSERT_GE(d.pages.size(), 2U);
  for (std::size_t i = 0; i < d.pages.size(); ++i) {
    EXPECT_TRUE(
        says(d.pages[i], "page " + std::to_string(i + 1) + ' ' + std::to_string(d.pages.size())));
  }
}

TEST(ClientPlan, TakesTheLargestScaleThatFits) {
  // "1:{scale} at A4" prints its arguments plainly here.
  EXPECT_TRUE(saysAnywhere(paper(PlanBuilder::rectangle(3, 2.5).job()), "scale-a4 50"));
  EXPECT_TRUE(saysAnywhere(paper(PlanBuilder::rectangle(15, 9).job()), "scale-a4 100"));
  EXPECT_TRUE(saysAnywhere(paper(PlanBuilder::rectangle(16, 9).job()), "scale-a4 125"));
  const auto big = PlanBuilder::rectangle(60, 50).job();
  const Document d = paper(big);  // fits none of the usual scales: still a plan, and inside
  for (const auto& page : d.pages) drawing::expectInside(page, voice());
}

TEST(ClientPlan, WithoutASumpShowsStretchesAndSaysSo) {
  const Document d = paper(furnished().job());
  EXPECT_TRUE(saysAnywhere(d, "none"));
  EXPECT_TRUE(saysAnywhere(d, "stretches-only"));
  EXPECT_TRUE(saysAnywhere(d, "places"));
  EXPECT_FALSE(saysAnywhere(d, "set-out"));
}

TEST(ClientPlan, ASumpInsideIsNotJudged) {
  auto job = furnished().job();
  plan::Sump inside;
  inside.id = "inside";
  inside.kind = plan::SumpKind::standby;
  inside.at_m = geometry::Point{3.0, 3.0};
  job.design.sumps.push_back(inside);
  ClientPlanOptions options;
  options.sump = "inside";
  EXPECT_TRUE(saysAnywhere(paper(job, options), "where-inside"));
}

TEST(ClientPlan, CarriesItsCautionsAlways) {
  for (const plan::Job& job : {furnished().sump("s", 0, 12.0).job(), PlanBuilder::bare().job()}) {
    const Document d = paper(job);
    for (const char* words :
         {"electric", "silica", "asbestos", "flue", "ladder", "codes", "check", "prediction",
          "services", "depths", "pit-limits", "consent", "high"}) {
      EXPECT_TRUE(saysAnywhere(d, words)) << words;
    }
  }
}

TEST(ClientPlan, NothingIsClearBeforeAnybodyLooked) {
  const auto study = studyOf(PlanBuilder::bare(10, 8).sump("s", 0, 3.0));
  const Document d = clientPlan(study, voice(), {});
  EXPECT_EQ(study.lengths_m()[0], 0.0);
  EXPECT_TRUE(says(d.pages[0], "not-proven"));
  EXPECT_TRUE(saysAnywhere(d, "not-looked"));
  EXPECT_TRUE(saysAnywhere(d, "electricity"));
}

TEST(ClientPlan, AWaiverThatHoldsStandsInABoxUnderTheVerdict) {
  const double s = 18.0 + 3.2;
  const auto job = PlanBuilder::rectangle(10, 8)
                       .window("w", 2, 4.0, 1.0)
                       .sump("s", 0, s)
                       .waiver(waiver(s))
                       .job();
  const Document d = paper(job);
  EXPECT_TRUE(says(d.pages[0], "Owner accepts it"));
  EXPECT_TRUE(says(d.pages[0], "A. N. Other"));
  EXPECT_TRUE(says(d.pages[0], "2026-05-01"));
  EXPECT_FALSE(says(d.pages[0], "lapsed"));
  EXPECT_GT(drawing::itemsTagged(d.pages[0], "waiver"), 4);
}

TEST(ClientPlan, AWaiverLeftBehindIsMarkedLapsedWithTheReason) {
  const auto job = PlanBuilder::rectangle(10, 8)
                       .window("w", 2, 4.0, 1.0)
                       .sump("s", 0, 21.3)
                       .waiver(waiver(21.2))
                       .job();
  const Document d = paper(job);
  EXPECT_TRUE(says(d.pages[0], "lapsed"));
  EXPECT_TRUE(says(d.pages[0], "lapsed 0.10"));
  EXPECT_TRUE(says(d.pages[0], "Owner accepts it"));
}

TEST(ClientPlan, AThingTooFarOutIsLeftOutWholeAndNamed) {
  auto b = PlanBuilder::rectangle(10, 8);
  b.outside("near", plan::OutsideKind::inspection_chamber, {{4.0, 9.0}});
  b.outside("far", plan::OutsideKind::inspection_chamber, {{4.0, 60.0}});
  b.outside("lane", plan::OutsideKind::path, {{-50.0, -1.0}, {50.0, -1.0}});
  const Document d = paper(b.job());
  EXPECT_GT(drawing::itemsTagged(d.pages[0], "near"), 0);
  EXPECT_EQ(drawing::itemsTagged(d.pages[0], "far"), 0);
  EXPECT_TRUE(says(d.pages[0], "beyond"));
  EXPECT_TRUE(says(d.pages[0], "lines-go-on"));
  const Document all = paper(
      PlanBuilder::rectangle(10, 8).outside("near", plan::OutsideKind::gully, {{4.0, 9.0}}).job());
  EXPECT_FALSE(saysAnywhere(all, "beyond"));
  EXPECT_FALSE(saysAnywhere(all, "lines-go-on"));
}

TEST(ClientPlan, HoldsLongTextsWhole) {
  auto job = furnished().sump("s", 0, 12.0).job();
  job.address = std::string(40, 'A') + ' ' + std::string(200, 'B');
  job.client = std::string(120, 'c');
  job.surveyor = std::string(300, 'd');
  job.house.height_datum = std::string(400, 'e');
  auto w = waiver(12.0);
  w.reason = std::string(6000, 'f');
  job.design.waivers = {w};
  const Document d = paper(job);
  std::size_t letters = 0;
  for (const auto& page : d.pages) {
    drawing::expectInside(page, voice());
    for (const std::string& text : drawing::textsOf(page)) {
      letters += static_cast<std::size_t>(std::count(text.begin(), text.end(), 'f'));
    }
  }
  EXPECT_GE(letters, 6000U);
}

TEST(ClientPlan, AsksWhatIsNotKnown) {
  // Where nobody may drill no size is given, and no datum to take one from.
  const siting::Study house = studyOf(furnished().job());
  double open = 0.5;
  while (open < 36.0 && house.stateAt({0, open}) == rules::State::refused) open += 0.25;
  auto job = furnished().sump("s", 0, open).job();
  job.house.standby.state = plan::StandbyState::not_searched;
  job.house.barrier = plan::Barrier::unknown;
  job.house.ground_level_m = -0.15;
  job.house.dpc_height_m = 0.0;
  job.house.footing_top_low_m = -1.2;
  job.house.footing_top_high_m = -1.0;
  job.design.core_mm = 112.0;
  Document d = paper(job);
  EXPECT_TRUE(saysAnywhere(d, "standby-search"));
  EXPECT_TRUE(saysAnywhere(d, "barrier-unknown"));
  EXPECT_TRUE(saysAnywhere(d, "core-gap"));
  EXPECT_TRUE(saysAnywhere(d, "no-datum"));
  job.house.standby.state = plan::StandbyState::searched_not_found;
  job.house.barrier = plan::Barrier::none;
  job.design.core_mm = 127.0;
  job.house.height_datum = "kitchen sill";
  d = paper(job);
  for (const char* words : {"standby-search", "barrier-unknown", "core-gap", "no-datum"}) {
    EXPECT_FALSE(saysAnywhere(d, words)) << words;
  }
  EXPECT_TRUE(saysAnywhere(d, "kitchen sill"));
  // Without a height to take from it, a datum would only puzzle.
  job.house.footing_top_low_m.reset();
  d = paper(job);
  EXPECT_FALSE(saysAnywhere(d, "kitchen sill"));
  EXPECT_FALSE(saysAnywhere(d, "no-datum"));
}

Rows rowsOf(int count, double height) {
  Rows rows;
  for (int i = 0; i < count; ++i) {
    rows.push_back({height,
                    [i](Sketch& sketch, Point at) {
                      sketch.text({at.x, at.y}, std::to_string(i), fonts::body, {});
                    },
                    false});
  }
  return rows;
}

TEST(Flow, PlacesEveryRowOnceAndInOrder) {
  const Rows rows = rowsOf(57, 4.0);
  const Region region{10, 20, 70, 80, 10, 2};
  std::vector<std::string> seen;
  std::size_t next = 0;
  while (next < rows.size()) {
    drawing::DrawList page{200, 100, {}};
    Sketch sketch(page);
    double end = 0.0;
    const std::size_t before = next;
    next = flow(sketch, rows, next, region, end);
    ASSERT_GT(next, before);
    EXPECT_LE(end, region.bottom + 1e-9);
    for (const std::string& text : drawing::textsOf(page)) seen.push_back(text);
  }
  ASSERT_EQ(seen.size(), 57U);
  for (std::size_t i = 0; i < seen.size(); ++i) EXPECT_EQ(seen[i], std::to_string(i));
}

TEST(Flow, EvensOutTheLastColumns) {
  drawing::DrawList page{200, 400, {}};
  Sketch sketch(page);
  double end = 0.0;
  flow(sketch, rowsOf(10, 4.0), 0, {10, 20, 300, 80, 10, 2}, end);
  EXPECT_NEAR(end, 20.0 + 5 * 4.0, 0.01);
}

TEST(Flow, KeepsATableWholeWhereAColumnCanHoldIt) {
  Rows rows = rowsOf(8, 10.0);
  const auto head = std::make_shared<const Row>(rowsOf(1, 5.0).front());
  for (std::size_t i = 0; i < 6; ++i) {  // a table of six rows, then two rows of text
    rows[i].head = head;
    rows[i].keep_with_next = i + 1 < 6;
  }
  const auto placed = [&](const Region& region) {
    drawing::DrawList page{200, 100, {}};
    Sketch sketch(page);
    double end = 0.0;
    return flow(sketch, rows, 0, region, end);
  };
  EXPECT_EQ(placed({0, 0, 70, 50, 10, 2}), 8U);
  // Left to a taller region that follows, rather than cut in three.
  EXPECT_EQ(placed({0, 0, 25, 50, 10, 3, true}), 0U);
  EXPECT_GT(placed({0, 0, 25, 50, 10, 3, false}), 0U);
}

TEST(Flow, KeepsHeadingsWithWhatFollows) {
  Rows rows = rowsOf(6, 10.0);
  rows[2].keep_with_next = true;  // would stand last in the first column
  drawing::DrawList page{200, 100, {}};
  Sketch sketch(page);
  double end = 0.0;
  flow(sketch, rows, 0, {0, 0, 30, 50, 10, 2}, end);
  for (const drawing::Item& item : page.items) {
    const auto& text = std::get<drawing::Text>(item.shape);
    if (text.text == "2") {
      EXPECT_GT(text.at.x, 50.0);
    }
  }
}

}  // namespace
}  // namespace sumpwright::dossier
