// Gaps of rising walls, tied dimension lines, the start of a taped courtyard.

#include "core/plan/EditChecks.h"
#include "plan/Dimensions.h"
#include "plan/GapEdits.h"
#include "plan/OutlineEdits.h"
#include "plan/TapeEdits.h"
#include "plan/ThingEdits.h"
#include "support/PlanBuilder.h"

namespace sumpwright::plan {
namespace {

using support::PlanBuilder;

/// A rising wall 6 m long, 2 m up and 4 m along.
Job risen() {
  return PlanBuilder::rectangle()
      .with([](Job& j) {
        j.plan.rising_walls.push_back({"rw", {{2, 2}, {2, 4}, {6, 4}}, 0.2, {}});
      })
      .job();
}

const std::vector<Gap>& gapsIn(const Job& job) { return job.plan.rising_walls.front().gaps; }

TEST(GapEdits, AGapIsLaidEitherWayRound) {
  const Job job = doneWell(addGap(risen(), "rw", 3.0, 2.1));
  EXPECT_EQ(gapsIn(job), (std::vector<Gap>{{2.1, 3.0}}));
}

TEST(GapEdits, GapsThatTouchBecomeOneAndStandInOrder) {
  Job job = doneWell(addGap(risen(), "rw", 4.0, 5.0));
  job = doneWell(addGap(job, "rw", 0.5, 1.0));
  EXPECT_EQ(gapsIn(job), (std::vector<Gap>{{0.5, 1.0}, {4.0, 5.0}}));
  job = doneWell(addGap(job, "rw", 1.0, 4.2));
  EXPECT_EQ(gapsIn(job), (std::vector<Gap>{{0.5, 5.0}}));
}

TEST(GapEdits, WhatIsNoGapIsRefused) {
  EXPECT_EQ(problemIdOf(addGap(risen(), "none", 1, 2)), "plan.edit.no-thing");
  EXPECT_EQ(problemIdOf(addGap(risen(), "rw", 1, 6.1)), "plan.edit.not-a-place");
  EXPECT_EQ(problemIdOf(addGap(risen(), "rw", -0.1, 1)), "plan.edit.not-a-place");
  EXPECT_EQ(problemIdOf(addGap(risen(), "rw", 1, 1.0005)), "plan.edit.not-a-place");
  EXPECT_EQ(problemIdOf(addGap(risen(), "rw", std::nan(""), 1)), "plan.edit.not-a-place");
  EXPECT_EQ(problemIdOf(fillGap(risen(), "rw", 1)), "plan.edit.no-gap");
}

TEST(GapEdits, AFilledGapIsGone) {
  const Job job = doneWell(addGap(risen(), "rw", 1, 2));
  EXPECT_EQ(doneWell(fillGap(job, "rw", 1.5)), risen());
}

/// From the window's near jamb to a gully, half a metre aside.
Job tied() {
  return PlanBuilder::rectangle()
      .window("win", 0, 2.0, 1.2)
      .outside("gully", OutsideKind::gully, {{2, -4}})
      .with([](Job& j) {
        j.plan.dimensions.push_back(
            {"dim", {"win", ThingEnd::start}, {"gully", ThingEnd::start}, 0.5});
      })
      .job();
}

TEST(DimensionLine, StandsToTheLeftOfWhatItMeasures) {
  const Job job = tied();
  const auto line = lineOf(job, job.plan.dimensions.front());
  ASSERT_TRUE(line.has_value());
  // From (2, 0) down to (2, -4): left is to the east.
  EXPECT_NEAR(line->a.x, 2.5, 1e-12);
  EXPECT_NEAR(line->a.y, 0.0, 1e-12);
  EXPECT_NEAR(line->b.y, -4.0, 1e-12);
}

TEST(DimensionLine, FollowsWhatItIsTiedTo) {
  const Job moved = doneWell(moveThing(tied(), "gully", {1.0, 1.0}));
  const auto line = lineOf(moved, moved.plan.dimensions.front());
  ASSERT_TRUE(line.has_value());
  EXPECT_NEAR(geometry::distance(line->a, line->b), std::sqrt(1.0 + 9.0), 1e-12);
  const Job longer = doneWell(moveWall(tied(), 0, 0, 0.7));
  EXPECT_NEAR(lineOf(longer, longer.plan.dimensions.front())->a.y, -0.7, 1e-12);
}

TEST(DimensionLine, HasNoPlaceWithoutBothItsEnds) {
  Job job = tied();
  EXPECT_FALSE(lineOf(job, {"d", {"win"}, {"nothing"}, 0.0}).has_value());
  EXPECT_FALSE(lineOf(job, {"d", {"gully"}, {"gully"}, 0.5}).has_value());
  EXPECT_TRUE(doneWell(removeThing(job, "gully")).plan.dimensions.empty());
}

TEST(TapedCourtyard, BeginsWhereItIsTold) {
  const Job house = PlanBuilder::bare(14, 12).job();
  Job job = doneWell(addTaped(house, 1, {90, 4, true}, Point{5, 5}));
  job = doneWell(addTaped(job, 1, {0, 3, true}, Point{99, 99}));  // begun already
  job = doneWell(addTaped(job, 1, {270, 4, true}));
  job = doneWell(addTaped(job, 1, {180, 3, true}));
  job = doneWell(closeTaped(job, 1, Sharing::compass_rule));
  ASSERT_EQ(job.plan.rings.size(), 2U);
  EXPECT_EQ(job.plan.rings[1].corners.size(), 4U);
  for (const Point p : job.plan.rings[1].corners) {
    EXPECT_TRUE(p.x >= 5 - 1e-9 && p.x <= 9 + 1e-9 && p.y >= 5 - 1e-9 && p.y <= 8 + 1e-9);
  }
  EXPECT_EQ(unsoundIn(job), unsoundIn(house));
  EXPECT_EQ(problemIdOf(addTaped(house, 1, {90, 4, true}, Point{2e4, 0})), "plan.edit.not-a-place");
}

}  // namespace
}  // namespace sumpwright::plan
