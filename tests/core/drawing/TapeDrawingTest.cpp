#include <algorithm>
#include <cmath>

#include "core/drawing/Drawn.h"
#include "drawing/TapeDrawing.h"
#include "drawing/TapeLayout.h"

namespace sumpwright::drawing {
namespace {

using support::PlanBuilder;

TapeView tall(const siting::Study& study) {
  TapeView view;
  view.height_mm = tapeFullHeight_mm(study, view);
  return view;
}

TEST(Tape, PlacesAndXAreInverse) {
  const auto study = studyOf(PlanBuilder::courtyard());
  const TapeView view = tall(study);
  for (int ring : {0, 1}) {
    for (double s = 0.0; s < study.perimeter().length_m(ring); s += 0.9) {
      const perimeter::Place back = tapePlace(study, view, tapeX(study, view, {ring, s}));
      EXPECT_EQ(back.ring, ring);
      EXPECT_NEAR(back.chainage_m, s, 1e-9);
    }
  }
}

TEST(Tape, RingsFollowEachOtherWithAGap) {
  const auto study = studyOf(PlanBuilder::courtyard());
  const TapeView view = tall(study);
  const TapeLayout at(study, view);
  EXPECT_NEAR(at.left(1) - at.right(0), kRingGap_mm, 1e-9);
  EXPECT_LE(at.right(1), view.width_mm);
  // In the gap the nearer ring answers; beyond both ends the ends do.
  EXPECT_EQ(tapePlace(study, view, at.right(0) + 1.0).ring, 0);
  EXPECT_EQ(tapePlace(study, view, at.left(1) - 1.0).ring, 1);
  EXPECT_NEAR(tapePlace(study, view, -50.0).chainage_m, 0.0, 1e-9);
}

TEST(Tape, HasALanePerRuleThatCanObject) {
  const auto study = studyOf(furnished());
  const TapeView view = tall(study);
  const TapeLayout at(study, view);
  std::size_t objecting = 0;
  for (const rules::Rule& r : study.sheet().rules) {
    objecting += r.enabled && r.severity != rules::Severity::preference ? 1U : 0U;
  }
  EXPECT_EQ(at.lanes().size(), objecting);
  for (std::size_t i = 0; i < at.lanes().size(); ++i) {
    ASSERT_TRUE(at.laneTop(i)) << i;
    EXPECT_EQ(tapeRuleAt(study, view, *at.laneTop(i) + 1.0), at.lanes()[i].rule);
  }
  EXPECT_EQ(tapeRuleAt(study, view, 1.0), "");
  EXPECT_EQ(at.hidden(), 0U);
}

TEST(Tape, RiserModeHasALaneForTheOutlet) {
  siting::StudyOptions riser;
  riser.outlet = plan::OutletMode::riser;
  const auto study = studyOf(furnished(), riser);
  const TapeView view = tall(study);
  const TapeLayout layout(study, view);
  EXPECT_EQ(std::count_if(layout.lanes().begin(), layout.lanes().end(),
                          [](const Lane& lane) { return lane.rule == "discharge"; }),
            1);
}

TEST(Tape, LanesWithNothingInThemAreBelowTheOthers) {
  const auto study = studyOf(furnished());
  const TapeView view = tall(study);
  const TapeLayout layout(study, view);
  const auto speaks = [&](const Lane& lane) {
    return std::any_of(study.spans().begin(), study.spans().end(),
                       [&](const auto& span) { return span.finding.rule == lane.rule; });
  };
  EXPECT_TRUE(std::is_partitioned(layout.lanes().begin(), layout.lanes().end(), speaks));
  EXPECT_TRUE(speaks(layout.lanes().front()));
  EXPECT_FALSE(speaks(layout.lanes().back()));
}

TEST(Tape, KeepsTheDecidingLaneInView) {
  const auto study = studyOf(furnished());
  TapeView view;
  view.height_mm = 60.0;
  const TapeLayout unpinned(study, view);
  ASSERT_GT(unpinned.hidden(), 0U);
  for (std::size_t i = 0; i < unpinned.lanes().size(); ++i) {
    view.deciding_rule = unpinned.lanes()[i].rule;
    for (double scroll : {0.0, 8.0, 1000.0}) {
      view.scroll_mm = scroll;
      const TapeLayout at(study, view);
      const auto top = at.laneTop(i);
      ASSERT_TRUE(top) << i << ' ' << scroll;
      EXPECT_GE(*top, at.lanesTop() - 1e-9);
      EXPECT_LE(*top + kLane_mm, at.lanesBottom() + 1e-6);
    }
  }
}

TEST(Tape, LanesInViewNeverOverlap) {
  const auto study = studyOf(furnished());
  for (double height : {40.0, 52.5, 60.0, 71.0, 200.0}) {
    TapeView view;
    view.height_mm = height;
    view.deciding_rule = study.sheet().rules.back().id;
    const TapeLayout at(study, view);
    std::vector<double> tops;
    for (std::size_t i = 0; i < at.lanes().size(); ++i) {
      if (const auto top = at.laneTop(i)) tops.push_back(*top);
    }
    std::sort(tops.begin(), tops.end());
    for (std::size_t i = 1; i < tops.size(); ++i) EXPECT_GE(tops[i] - tops[i - 1], kLane_mm - 1e-6);
  }
}

TEST(Tape, StaysInItsView) {
  for (const plan::Job& job :
       {furnished().job(), PlanBuilder::courtyard().job(), PlanBuilder::bare().job()}) {
    const auto study = studyOf(job);
    for (double height : {45.0, 70.0, 160.0}) {
      TapeView view;
      view.height_mm = height;
      expectInside(tapeBase(study, view, voice()), voice());
      expectInside(tapeMarker(study, study.assess({0, 4.0}), view, voice()), voice());
    }
  }
}

TEST(Tape, OnPaperOnlyTheVerdictLane) {
  const auto study = studyOf(furnished());
  TapeView view;
  view.theme = ThemeName::paper;
  view.lanes = false;
  view.label_mm = 2.0;
  view.height_mm = tapeFullHeight_mm(study, view);
  EXPECT_LT(view.height_mm, 20.0);
  const DrawList list = tapeBase(study, view, voice());
  EXPECT_EQ(itemsTagged(list, "score"), 0);
  EXPECT_GT(itemsTagged(list, "verdict"), 0);
  EXPECT_TRUE(says(list, "A"));
}

}  // namespace
}  // namespace sumpwright::drawing
