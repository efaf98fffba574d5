// Rules about what is behind the wall: heating, rooms, fittings, floors. Walls 0.35 m, so a drill
// line ends 0.55 m in.
#include <gtest/gtest.h>

#include <cmath>

#include "core/rules/Judged.h"

namespace sumpwright::rules {

namespace {

using plan::FittingKind;
using plan::FloorKind;
using plan::Oversite;
using plan::RoomUse;
using support::PlanBuilder;
using support::Polygon;

Polygon box(double x0, double y0, double x1, double y1) {
  return {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}};
}

// ---- heating: 0.30 + 0.0635 = 0.3635 m from the drill line ----

// On the inner face, which every drill line crosses: its width and 0.3635 either side.
TEST(DrillLine, RadiatorOnTheInnerFace) {
  const Judged j(PlanBuilder::rectangle().radiator("r", 0, 3.0, 1.0), "heating");
  ASSERT_EQ(j.spans.size(), 1U);
  expectSpan(j.spans[0], 2.6365, 4.3635);
  EXPECT_NEAR(*j.least(j.spans[0]), -kHalfCore_m, kMicrometre);
  EXPECT_NEAR(j.nearest(0, 5.0)->distance_m, 1.0 - kHalfCore_m, kMicrometre);
}

// A pipe along y = 0.85 lies 0.30 past the line's end: over its length and
// sqrt(0.3635^2 - 0.30^2) more.
TEST(DrillLine, PipePastTheInnerEnd) {
  const Judged j(PlanBuilder::rectangle().heatingPipe("p", {{3, 0.85}, {5, 0.85}}), "heating");
  ASSERT_EQ(j.spans.size(), 1U);
  const double more = std::sqrt(0.3635 * 0.3635 - 0.09);
  expectSpan(j.spans[0], 3 - more, 5 + more);
  EXPECT_NEAR(*j.least(j.spans[0]), 0.3 - kHalfCore_m, kMicrometre);
}

TEST(DrillLine, PipeOutOfReach) {
  const auto spans = [](double y) {
    return Judged(PlanBuilder::rectangle().heatingPipe("p", {{3, y}, {5, y}}), "heating").spans;
  };
  EXPECT_TRUE(spans(0.55 + 0.3635 + 1e-9).empty());
  EXPECT_EQ(spans(0.55 + 0.3635 - 1e-9).size(), 1U);
}

// From (3, 0.2) in the wall to (4, 1.2) indoors, at 45 degrees. Left of its end the line's foot
// is the nearest: 3 - 0.3635. Right of where it leaves the lines' reach: the point (3.35, 0.55) of
// the pipe is level with the inner ends; beyond, ends are 0.3635 off the pipe's line at
// 3.35 + 0.3635 * sqrt(2).
TEST(DrillLine, SlantingPipe) {
  const Judged j(PlanBuilder::rectangle().heatingPipe("p", {{3, 0.2}, {4, 1.2}}), "heating");
  ASSERT_EQ(j.spans.size(), 1U);
  expectSpan(j.spans[0], 3 - 0.3635, 3.35 + 0.3635 * std::sqrt(2.0));
}

// A pipe along x = 9.5 from y = 0.5 to 7. From the front, lines as near as 0.3635 on either side of
// it. From the east wall lines reach x = 9.45 and cross it, from 0.3635 short of its ends.
TEST(DrillLine, EachWallOfACornerDrillsItsOwnWay) {
  const Judged j(PlanBuilder::rectangle().heatingPipe("p", {{9.5, 0.5}, {9.5, 7}}), "heating");
  ASSERT_EQ(j.spans.size(), 2U);
  expectSpan(j.spans[0], 9.1365, 9.8635);
  expectSpan(j.spans[1], 10.1365, 17.3635);
  EXPECT_NEAR(*j.least(j.spans[0]), -kHalfCore_m, kMicrometre);
}

// At corner B itself the drill line is the east wall's, 0.55 along y = 0: 0.5 below the pipe's end.
// A stretch that only ends there is not judged by it.
TEST(DrillLine, CornerBelongsToTheWallBeyond) {
  const Judged j(PlanBuilder::rectangle().heatingPipe("p", {{9.5, 0.5}, {9.5, 7}}), "heating");
  EXPECT_NEAR(j.nearest(0, 10.0)->distance_m, 0.5 - kHalfCore_m, kMicrometre);
  const Thing& pipe = j.site().things.front();
  ASSERT_EQ(pipe.id, "p");
  const auto least = [&](double from, double to) {
    return *kDrillLine.least(j.rule(), j.site(), pipe, 0, from, to);
  };
  EXPECT_NEAR(least(10.0, 10.0), 0.5 - kHalfCore_m, kMicrometre);
  EXPECT_NEAR(least(9.9, 10.0), 0.4 - kHalfCore_m, kMicrometre);
  EXPECT_NEAR(least(10.0, 10.1), 0.4 - kHalfCore_m, kMicrometre);
}

// ---- rooms ----

TEST(RoomBehind, WetRoomsRefuse) {
  for (const auto use : {RoomUse::bathroom, RoomUse::shower, RoomUse::wc, RoomUse::utility}) {
    const Judged j(PlanBuilder::rectangle().noRooms().room("r", use, box(3, 0.35, 5, 3)),
                   "wet-room");
    ASSERT_EQ(j.spans.size(), 1U);
    expectSpan(j.spans[0], 3 - kHalfCore_m, 5 + kHalfCore_m);
    EXPECT_EQ(j.spans[0].finding.thing, "r");
    EXPECT_EQ(j.spans[0].finding.waivable.evidence, plan::Evidence::drains_located);
    EXPECT_FALSE(j.nearest(0, 4.0));
  }
}

TEST(RoomBehind, DryAndUnknownRoomsDoNot) {
  for (const auto use : {RoomUse::living, RoomUse::kitchen, RoomUse::unknown}) {
    EXPECT_TRUE(
        Judged(PlanBuilder::rectangle().noRooms().room("r", use, box(3, 0.35, 5, 3)), "wet-room")
            .spans.empty());
  }
}

// In the corner, 0.35 in from either face: from the front x = 8..9.65, from the east y = 0.35..2.
TEST(RoomBehind, CornerRoomIsBehindBothWalls) {
  const Judged j(PlanBuilder::rectangle().noRooms().room("r", RoomUse::wc, box(8, 0.35, 9.65, 2)),
                 "wet-room");
  ASSERT_EQ(j.spans.size(), 2U);
  expectSpan(j.spans[0], 8 - kHalfCore_m, 9.65 + kHalfCore_m);
  expectSpan(j.spans[1], 10.35 - kHalfCore_m, 12 + kHalfCore_m);
}

// ---- fittings: 1.00 + 0.0635 = 1.0635 m from the hole, and in the room behind ----

TEST(FittingBehind, SinkInTheKitchenBehind) {
  const Judged j(PlanBuilder::rectangle()
                     .noRooms()
                     .room("k", RoomUse::kitchen, box(2, 0.35, 6, 3))
                     .fitting("s", FittingKind::sink, {4, 0.6}),
                 "kitchen-sink");
  ASSERT_EQ(j.spans.size(), 1U);
  const double reach = std::sqrt(1.0635 * 1.0635 - 0.36);
  expectSpan(j.spans[0], 4 - reach, 4 + reach);
  EXPECT_EQ(j.spans[0].finding.weight, Weight::advisory);
  EXPECT_NEAR(*j.least(j.spans[0]), 0.6 - kHalfCore_m, kMicrometre);
  EXPECT_NEAR(j.nearest(0, 4.0)->distance_m, 0.6 - kHalfCore_m, kMicrometre);
}

TEST(FittingBehind, NotPastItsRoom) {
  const Judged j(PlanBuilder::rectangle()
                     .noRooms()
                     .room("k", RoomUse::kitchen, box(3.8, 0.35, 6, 3))
                     .fitting("s", FittingKind::sink, {4, 0.6}),
                 "kitchen-sink");
  ASSERT_EQ(j.spans.size(), 1U);
  expectSpan(j.spans[0], 3.8 - kHalfCore_m, 4 + std::sqrt(1.0635 * 1.0635 - 0.36));
  EXPECT_FALSE(j.nearest(0, 3.0));  // the kitchen is not behind
}

TEST(FittingBehind, AgainstTheWallItStandsInItsRoom) {
  const auto spans = [](support::Point at) {
    return Judged(PlanBuilder::rectangle()
                      .noRooms()
                      .room("k", RoomUse::kitchen, box(2, 0.35, 6, 3))
                      .fitting("s", FittingKind::sink, at),
                  "kitchen-sink")
        .spans.size();
  };
  EXPECT_EQ(spans({4, 0.35}), 1U);
  EXPECT_EQ(spans({8, 0.6}), 0U);  // in no room
}

// ---- floors ----

std::vector<FindingSpan> floorFindings(FloorKind kind, Oversite oversite) {
  return Judged(PlanBuilder::rectangle()
                    .noZones()
                    .zone("z", kind, box(0, 0, 10, 8))
                    .with([&](plan::Job& job) { job.plan.floor_zones[0].oversite = oversite; }),
                "floor-behind")
      .spans;
}

TEST(FloorBehind, OnlySlabsAndSealedOversitesWillDo) {
  EXPECT_TRUE(floorFindings(FloorKind::ground_bearing_slab, Oversite::unknown).empty());
  EXPECT_TRUE(floorFindings(FloorKind::suspended_timber, Oversite::sealed).empty());
  EXPECT_TRUE(floorFindings(FloorKind::suspended_concrete, Oversite::sealed).empty());
  for (const auto kind : {FloorKind::suspended_timber, FloorKind::suspended_concrete}) {
    const auto found = floorFindings(kind, Oversite::open);
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0].finding.weight, Weight::binding);
    EXPECT_EQ(found[0].finding.thing, "z");
    expectSpan(found[0], 0.0, 36.0, true);
    EXPECT_FALSE(found[0].finding.waivable.allowed);
  }
}

TEST(FloorBehind, WhatIsUnknownIsNotProven) {
  for (const auto& [kind, oversite] : {std::pair(FloorKind::unknown, Oversite::sealed),
                                       std::pair(FloorKind::suspended_timber, Oversite::unknown)}) {
    const auto found = floorFindings(kind, oversite);
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0].finding.weight, Weight::unknown);
    EXPECT_EQ(found[0].finding.thing, "z");
  }
}

// A slab from x = 2 to 10 only: the west wall, and the front up to 2, have no zone behind; so has
// the rear from chainage 26 on.
TEST(FloorBehind, WhereNoZoneIsDrawnIsNotProven) {
  const Judged j(PlanBuilder::rectangle().noZones().zone("z", FloorKind::ground_bearing_slab,
                                                         box(2, 0, 10, 8)),
                 "floor-behind");
  ASSERT_EQ(j.spans.size(), 2U);
  expectSpan(j.spans[0], 0.0, 2.0, true);
  expectSpan(j.spans[1], 26.0, 36.0, true);
  EXPECT_EQ(j.spans[0].finding.thing, "");
  EXPECT_EQ(j.spans[0].finding.reason.id, "rule.floor-not-drawn");
}

TEST(FloorBehind, NothingDrawnIsNotProvenAllRound) {
  const Judged j(PlanBuilder::courtyard().noZones(), "floor-behind");
  ASSERT_EQ(j.spans.size(), 2U);
  expectUnknownAllRound(j.spans[0], 52.0, "rule.floor-not-drawn");
  expectUnknownAllRound(j.spans[1], 14.0, "rule.floor-not-drawn");
}

}  // namespace

}  // namespace sumpwright::rules
