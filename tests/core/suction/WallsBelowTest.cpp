// Which walls of the plan go through the fill, and that none of them counts twice.

#include <gtest/gtest.h>

#include "geometry/Distance.h"
#include "suction/ModelOf.h"
#include "support/Fields.h"
#include "support/PlanBuilder.h"

namespace sumpwright::suction {

namespace {

using support::PlanBuilder;

SuctionModel modelWithWalls(const plan::Job& job) {
  auto model = modelOf(job, {});
  EXPECT_TRUE(model);
  return model ? *model : SuctionModel{};
}

SuctionModel withInnerWall(const plan::Job& job, const Polyline& line, plan::BelowFloor below) {
  plan::Job drawn = job;
  drawn.plan.inner_walls.push_back({"w", line, 0.1, below});
  return modelWithWalls(drawn);
}

/// Suction at a point for one cubic metre a second drawn in the south-west; walls are tight.
double suctionAt(const SuctionModel& model, Point at) {
  const FieldSolver solver = FieldSolver::of(model, {.cell_m = 0.1});
  EXPECT_TRUE(solver.ok());
  return *sampleAt(solver.network(), solver.unit({{2, 0.7}, 0.3})->suction, at);
}

/// 12 x 8 m with a rising wall across its middle, a known gap of 1 m in it.
plan::Job partedHouse() {
  return PlanBuilder::rectangle(12, 8)
      .with([](plan::Job& j) {
        j.plan.rising_walls.push_back({"r", {{6, 0.35}, {6, 7.65}}, 0.1, {{3.0, 4.0}}});
      })
      .job();
}

/// The wall that a rising wall carries is the same wall, whose gap stays open.
TEST(WallsBelow, AnInnerWallOnARisingWallIsOneWall) {
  const plan::Job job = partedHouse();
  const SuctionModel alone = modelWithWalls(job);
  EXPECT_GT(suctionAt(alone, {9, 5}), 0.0);
  for (const auto below : {plan::BelowFloor::own_footing, plan::BelowFloor::unknown}) {
    for (const Polyline& line :
         {Polyline{{6, 0.35}, {6, 7.65}}, Polyline{{6.05, 7.6}, {6.05, 0.4}},
          Polyline{{6, 2}, {6, 5}}, Polyline{{6, 0.35}, {6.03, 4}, {6, 7.65}}}) {
      EXPECT_EQ(withInnerWall(job, line, below).barriers, alone.barriers);
    }
  }
  plan::Job carried = job;
  carried.plan.inner_walls.push_back({"w", {{6, 0.35}, {6, 7.65}}, 0.1, {}});
  EXPECT_FALSE(hasUnknownWalls(carried.plan)) << "both answers are the same";
  carried.plan.inner_walls[0].line_m = {{6, 4}, {8, 4}};
  EXPECT_TRUE(hasUnknownWalls(carried.plan));
}

/// What goes on beyond the rising wall stands, and nothing passes where the two are out of line.
TEST(WallsBelow, TheRestOfAnInnerWallAdjoinsTheRisingWall) {
  plan::Job job = PlanBuilder::rectangle(12, 8);
  job.plan.rising_walls.push_back({"r", {{6, 0.35}, {6, 3.0}}, 0.1, {}});
  EXPECT_GT(suctionAt(modelWithWalls(job), {9, 5}), 0.0);
  for (const double off : {0.0, 0.04, -0.09}) {
    const SuctionModel model =
        withInnerWall(job, {{6 + off, 0.35}, {6 + off, 7.65}}, plan::BelowFloor::own_footing);
    ASSERT_EQ(model.barriers.size(), 2U) << off;
    EXPECT_NEAR(geometry::distance(model.barriers[1].line.front(), Point{6, 3}), 0.0, 1e-6);
    EXPECT_EQ(suctionAt(model, {9, 5}), 0.0) << off;
  }
  const SuctionModel beside =
      withInnerWall(job, {{6.5, 0.35}, {6.5, 7.65}}, plan::BelowFloor::own_footing);
  EXPECT_NEAR(geometry::distance(beside.barriers[1].line.front(), Point{6.5, 0.35}), 0.0, 1e-6)
      << "a wall half a metre off is another one";
}

/// Of two rising walls along one another the first counts; gaps of what is left stay in place.
TEST(WallsBelow, GapsStayWhereTheyWereDrawn) {
  plan::Job job = PlanBuilder::rectangle(12, 8);
  job.plan.rising_walls.push_back({"a", {{6, 0.35}, {6, 3.0}}, 0.1, {}});
  job.plan.rising_walls.push_back({"b", {{6.05, 1.0}, {6.05, 7.65}}, 0.1, {{4.0, 5.0}}});
  const SuctionModel model = modelWithWalls(job);
  ASSERT_EQ(model.barriers.size(), 2U);
  const Barrier& rest = model.barriers[1];
  ASSERT_EQ(rest.gaps.size(), 1U);
  ASSERT_EQ(rest.line.size(), 3U) << "led across to the first";
  const double jog = geometry::distance(rest.line[0], rest.line[1]);
  EXPECT_NEAR(rest.line[1].y + rest.gaps[0].from_m - jog, 5.0, 1e-6);
  EXPECT_NEAR(rest.line[1].y + rest.gaps[0].to_m - jog, 6.0, 1e-6);
}

/// A 14 x 8 m house the eastern 5 m of which were built on later.
plan::Job extendedHouse() {
  return PlanBuilder::rectangle(14, 8)
      .noZones()
      .zone("house", plan::FloorKind::ground_bearing_slab,
            {{0.35, 0.35}, {9, 0.35}, {9, 7.65}, {0.35, 7.65}})
      .zone("new", plan::FloorKind::ground_bearing_slab,
            {{9, 0.35}, {13.65, 0.35}, {13.65, 7.65}, {9, 7.65}})
      .with([](plan::Job& j) { j.plan.floor_zones[1].part = plan::HousePart::extension; })
      .job();
}

TEST(WallsBelow, OldOuterWallBehindAnExtensionStands) {
  const SuctionModel model = modelWithWalls(extendedHouse());
  ASSERT_EQ(model.barriers.size(), 1U);
  EXPECT_NEAR(geometry::distance(Point{9, 4}, model.barriers[0].line), 0.0, 1e-9);
  EXPECT_EQ(suctionAt(model, {11, 4}), 0.0);
}

TEST(WallsBelow, WhatStandsNearAnOldOuterWallDoesNotOpenIt) {
  const plan::Job job = extendedHouse();
  const SuctionModel abutting = withInnerWall(job, {{4, 4}, {9, 4}}, plan::BelowFloor::own_footing);
  EXPECT_EQ(abutting.barriers.size(), 2U);
  EXPECT_EQ(suctionAt(abutting, {11, 4}), 0.0);
  plan::Job stub = job;
  stub.plan.rising_walls.push_back({"stub", {{8.7, 4}, {8.7, 4.3}}, 0.1, {}});
  EXPECT_EQ(modelWithWalls(stub).barriers.size(), 2U);
  EXPECT_EQ(suctionAt(modelWithWalls(stub), {11, 4}), 0.0);
}

/// Where it is drawn as a rising wall, that one counts, and its gap.
TEST(WallsBelow, AnOldOuterWallThatIsDrawnCountsOnce) {
  plan::Job whole = extendedHouse();
  whole.plan.rising_walls.push_back({"r", {{8.8, 0.35}, {8.8, 7.65}}, 0.3, {{2.0, 3.0}}});
  ASSERT_EQ(modelWithWalls(whole).barriers.size(), 1U);
  EXPECT_GT(suctionAt(modelWithWalls(whole), {11, 4}), 0.0);
  plan::Job part = extendedHouse();
  part.plan.rising_walls.push_back({"r", {{8.8, 2.0}, {8.8, 5.0}}, 0.3, {}});
  ASSERT_EQ(modelWithWalls(part).barriers.size(), 3U);
  EXPECT_EQ(suctionAt(modelWithWalls(part), {11, 4}), 0.0);
}

/// A bay of 0.8 m: its long side and both its ends stand.
TEST(WallsBelow, ANarrowExtensionKeepsItsEnds) {
  const plan::Job job =
      PlanBuilder::rectangle(14, 8)
          .zone("bay", plan::FloorKind::ground_bearing_slab,
                {{4, 6.85}, {8, 6.85}, {8, 7.65}, {4, 7.65}})
          .with([](plan::Job& j) { j.plan.floor_zones[1].part = plan::HousePart::porch; });
  ASSERT_EQ(modelWithWalls(job).barriers.size(), 3U);
  EXPECT_EQ(suctionAt(modelWithWalls(job), {6, 7.3}), 0.0);
  EXPECT_GT(suctionAt(modelWithWalls(job), {6, 6.5}), 0.0);
}

/// A zone's outline may run beyond the walls: only what lies within the floor stands.
TEST(WallsBelow, OfAZonesSidesOnlyWhatLiesWithinTheFloorStands) {
  const plan::Job job =
      PlanBuilder::rectangle(14, 8)
          .zone("new", plan::FloorKind::ground_bearing_slab, {{9, -1}, {15, -1}, {15, 9}, {9, 9}})
          .with([](plan::Job& j) { j.plan.floor_zones[1].part = plan::HousePart::extension; });
  const SuctionModel model = modelWithWalls(job);
  ASSERT_EQ(model.barriers.size(), 1U);
  const Polyline& line = model.barriers[0].line;
  EXPECT_NEAR(geometry::distance(line.front(), line.back()), 7.3, 1e-6);
}

}  // namespace

}  // namespace sumpwright::suction
