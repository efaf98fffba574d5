// Corners 0.30 + 0.0635 = 0.3635 m, jambs and doors 0.15 + 0.0635 = 0.2135 m along the wall.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "core/rules/Judged.h"

namespace sumpwright::rules {

namespace {

using support::PlanBuilder;

TEST(AlongWall, CornersOnBothSides) {
  const Judged j(PlanBuilder::rectangle(), "corners");
  ASSERT_EQ(j.spans.size(), 5U);  // A is cut at chainage 0
  expectSpan(j.spans[0], 0.0, 0.3635, true);
  EXPECT_EQ(j.spans[0].finding.thing, "corner.A");
  expectSpan(j.spans[1], 9.6365, 10.3635);
  EXPECT_EQ(j.spans[1].finding.thing, "corner.B");
  expectSpan(j.spans[4], 35.6365, 36.0);
  EXPECT_EQ(j.spans[4].finding.thing, "corner.A");
  EXPECT_NEAR(*j.least(j.spans[1]), -kHalfCore_m, kMicrometre);
  EXPECT_NEAR(j.nearest(0, 11.0)->distance_m, 1.0 - kHalfCore_m, kMicrometre);
  EXPECT_NEAR(j.nearest(0, 35.0)->distance_m, 1.0 - kHalfCore_m, kMicrometre);  // over the start
}

// A pier of 0.44 m from 4.0: kept clear by as much as a corner, on both sides.
TEST(AlongWall, FeaturesOfTheWallAreKeptClearLikeCorners) {
  const Judged j(PlanBuilder::rectangle().with([](plan::Job& job) {
    job.plan.wall_features.push_back({"p", "", plan::WallFeatureKind::pier, {0, 0, 4.0}, 0.44});
    job.plan.wall_features.push_back(
        {"j", "", plan::WallFeatureKind::movement_joint, {0, 2, 5.0}, 0.0});
  }),
                 "corners");
  ASSERT_EQ(j.spans.size(), 7U);
  expectSpan(j.spans[1], 3.6365, 4.8035);
  EXPECT_EQ(j.spans[1].finding.thing, "p");
  EXPECT_EQ(j.spans[1].finding.thing_label.id, "thing.on-wall");
  expectSpan(j.spans[4], 22.6365, 23.3635);
  EXPECT_EQ(j.spans[4].finding.thing, "j");
}

TEST(AlongWall, InnerCornersCountAndCourtyardsToo) {
  EXPECT_EQ(Judged(PlanBuilder::lShape(), "corners").spans.size(), 7U);
  const Judged court(PlanBuilder::courtyard(), "corners");
  EXPECT_EQ(court.spans.size(), 10U);
  EXPECT_EQ(court.spans.back().ring, 1);
}

/// A wall of 10 m bent in the middle by so many degrees.
plan::Job bent(double degrees) {
  const double turn = degrees * std::numbers::pi / 180.0;
  return PlanBuilder::outline({{-5, 0}, {0, 0}, {5 * std::cos(turn), 5 * std::sin(turn)}, {0, 12}});
}

TEST(AlongWall, CornerTurnsByMoreThanTenDegrees) {
  const auto corners = [](double degrees) {
    const Judged j(bent(degrees), "corners");
    return std::count_if(j.spans.begin(), j.spans.end(),
                         [](const FindingSpan& s) { return s.finding.thing == "corner.B"; });
  };
  EXPECT_EQ(corners(10.1), 1);
  EXPECT_EQ(corners(9.9), 0);
  EXPECT_EQ(corners(-10.1), 1);
  EXPECT_EQ(corners(-9.9), 0);
  EXPECT_EQ(corners(0.0), 0);
}

// Jambs at 2.0 and 3.2; between them the wall under the sill is free of this rule.
TEST(AlongWall, WindowJambsLeaveTheSillFree) {
  const Judged j(PlanBuilder::rectangle().window("w", 0, 2.0, 1.2), "jambs");
  ASSERT_EQ(j.spans.size(), 2U);
  expectSpan(j.spans[0], 1.7865, 2.2135);
  expectSpan(j.spans[1], 2.9865, 3.4135);
  EXPECT_NEAR(j.nearest(0, 2.6)->distance_m, 0.6 - kHalfCore_m, kMicrometre);
}

TEST(AlongWall, NarrowWindowHasOneSpan) {
  const Judged j(PlanBuilder::rectangle().window("w", 0, 2.0, 0.4), "jambs");
  ASSERT_EQ(j.spans.size(), 1U);
  expectSpan(j.spans[0], 1.7865, 2.6135);
}

TEST(AlongWall, DoorIsKeptClearOverItsWidth) {
  for (const auto kind :
       {plan::OpeningKind::door, plan::OpeningKind::glazed_door, plan::OpeningKind::garage_door}) {
    const Judged j(PlanBuilder::rectangle().door("d", 0, 2.0, 0.9).with([&](plan::Job& job) {
      job.plan.openings[0].kind = kind;
    }),
                   "jambs");
    ASSERT_EQ(j.spans.size(), 1U);
    expectSpan(j.spans[0], 1.7865, 3.1135);
    EXPECT_NEAR(j.nearest(0, 2.5)->distance_m, -kHalfCore_m, kMicrometre);
  }
}

TEST(AlongWall, VentsHaveJambsAndFluesHaveNone) {
  EXPECT_FALSE(Judged(PlanBuilder::rectangle().vent("v", 0, 4.0), "jambs").spans.empty());
  EXPECT_TRUE(Judged(PlanBuilder::rectangle().flue("f", 0, 4.0), "jambs").spans.empty());
}

// Far jamb at 9.9: 0.2135 on is 0.1135 round corner B.
TEST(AlongWall, MeasuredRoundTheCorner) {
  const Judged j(PlanBuilder::rectangle().window("w", 0, 8.6, 1.3), "jambs");
  ASSERT_EQ(j.spans.size(), 2U);
  expectSpan(j.spans[1], 9.6865, 10.1135);
}

// Near jamb at 0.1: cut at chainage 0.
TEST(AlongWall, MeasuredOverTheStart) {
  const Judged j(PlanBuilder::rectangle().window("w", 0, 0.1, 3.0), "jambs");
  ASSERT_EQ(j.spans.size(), 3U);
  expectSpan(j.spans[0], 0.0, 0.3135, true);
  expectSpan(j.spans[2], 36.0 - 0.1135, 36.0);
}

TEST(AlongWall, ReachLongerThanTheRingIsTheWholeRing) {
  const Judged j(PlanBuilder::rectangle(), "corners",
                 [](Rule& rule) { rule.needed_m->value = 18.0; });
  ASSERT_EQ(j.spans.size(), 4U);
  for (const FindingSpan& s : j.spans) expectSpan(s, 0.0, 36.0, true);
}

}  // namespace

}  // namespace sumpwright::rules
