#include <gtest/gtest.h>

#include "suction/Field.h"
#include "suction/Reach.h"
#include "support/Fields.h"

namespace sumpwright::suction {

namespace {

using support::box;
using support::region;

SuctionModel house() {
  SuctionModel model;
  model.regions = {region(box(0, 0, 8, 6), 2e-6)};
  model.layer = {8e-5, 5e-6};
  return model;
}

FieldSolver solved(const SuctionModel& model, double cell_m = 0.1) {
  return FieldSolver::of(model, {.cell_m = cell_m});
}

TEST(SuctionField, SaysWhyItDoesNotSolve) {
  EXPECT_EQ(solved(house(), 0.0).summary().state, FieldState::bad_options);
  SuctionModel model = house();
  model.layer.transmissivity_m3_s_pa = -1.0;
  EXPECT_EQ(solved(model).summary().state, FieldState::bad_model);
  // A part that leaks nowhere, behind a tight wall.
  model = house();
  model.regions = {region(box(0, 0, 8, 6))};
  model.layer.leak_ground_m_s_pa = 0.0;
  model.zones = {{"z", box(0, 0, 4, 6), {8e-5, 5e-6}}};
  model.barriers = {{"w", {{4, 0}, {4, 6}}}};
  const FieldSolver solver = solved(model);
  EXPECT_EQ(solver.summary().state, FieldState::not_definite);
  ASSERT_EQ(solver.summary().problems.size(), 1U);
  EXPECT_EQ(solver.summary().problems[0].message.id, "suction.model.leakage");
}

TEST(SuctionField, SummaryHoldsWhatWasDone) {
  const FieldSolver solver = solved(house());
  const FieldSummary& summary = solver.summary();
  EXPECT_EQ(summary.state, FieldState::solved);
  EXPECT_EQ(summary.cells, 4800U);
  EXPECT_EQ(summary.links, 80U * 59U + 79U * 60U);
  EXPECT_GT(summary.fill, summary.cells);
  EXPECT_FALSE(summary.coarser);
  EXPECT_LT(summary.balance, 1e-9);
}

TEST(SuctionField, KeepsWithinMemoryByCoarserCells) {
  const FieldSolver solver =
      FieldSolver::of(house(), {.cell_m = 0.05, .most_bytes = 2U * 1024U * 1024U});
  ASSERT_TRUE(solver.ok());
  EXPECT_TRUE(solver.summary().coarser);
  EXPECT_GT(solver.summary().cell_m, 0.05);
  EXPECT_LE(solver.summary().bytes, 2U * 1024U * 1024U);
}

/// Drawn as walls often are, to the outside face: an end there lets nothing pass inside.
TEST(SuctionField, AWallDrawnBeyondTheInnerFacesShutsItsCornerOff) {
  SuctionModel model = house();
  model.barriers = {{"w", {{5, 6.3}, {5, 3}, {8.3, 3}}}};
  for (const double cell_m : {0.1, 0.2, 0.25, 0.3125, 0.4, 0.5}) {
    const support::OneSink one(model, {{1.0, 1.0}, 0.3}, 1.0, {.cell_m = cell_m});
    ASSERT_TRUE(one.ok());
    EXPECT_GT(one.at({4, 2}), 1e-3 * one.atPit());
    EXPECT_LE(one.at({7, 5}), 1e-9 * one.atPit()) << "cells of " << cell_m << " m";
  }
}

TEST(SuctionField, ManySumpsAtOnceAreTheSameAsOneByOne) {
  const FieldSolver solver = solved(house());
  std::vector<Sink> sinks;
  for (int k = 0; k < 11; ++k) sinks.push_back({{0.5 + 0.6 * k, 1.0 + 0.4 * k}, 0.2});
  sinks[4].at = {-3, -3};  // off the floor
  const auto units = solver.units(sinks);
  ASSERT_EQ(units.size(), sinks.size());
  for (std::size_t k = 0; k < sinks.size(); ++k) {
    const auto one = solver.unit(sinks[k]);
    ASSERT_EQ(one.has_value(), units[k].has_value());
    if (!one) continue;
    EXPECT_NEAR(units[k]->resistance_pa_s_m3 / one->resistance_pa_s_m3, 1.0, 1e-12);
    EXPECT_NEAR(units[k]->suction[777] / one->suction[777], 1.0, 1e-12);
  }
  EXPECT_FALSE(units[4]);
}

TEST(SuctionField, BackgroundOfGroundLeakageIsTheOutdoorPressure) {
  SuctionModel model;
  model.regions = {region(box(0, 0, 8, 6))};
  model.layer = {8e-5, 4e-6};
  for (const double s : solved(model).background(-4.0)) EXPECT_NEAR(s, -4.0, 1e-9);
  // A joint to the room takes some of it.
  for (Edge& edge : model.regions[0].edges) edge.room_m2_s_pa = 1e-5;
  for (const double s : solved(model).background(-4.0)) {
    EXPECT_GT(s, -4.0);
    EXPECT_LT(s, 0.0);
  }
}

TEST(SuctionField, ExposedWallDrawsInOutdoorPressure) {
  SuctionModel model = house();
  model.regions[0].edges[1].outdoors_m2_s_pa = 5e-5;
  model.layer = {8e-5, 0.0};
  // The room is joined at the edges alone: leaky enough there that the far side is the room's.
  for (const std::size_t k : {0U, 2U, 3U}) model.regions[0].edges[k].room_m2_s_pa = 2e-5;
  const auto background = solved(model).background(-3.0);
  const Network net = solved(model).network();
  const double near = *sampleAt(net, background, {7.9, 3});
  const double far = *sampleAt(net, background, {0.1, 3});
  EXPECT_GT(near, -3.0);
  EXPECT_LT(near, 1.5 * far);
  EXPECT_LT(far, 0.0);
}

TEST(SuctionField, MatrixOfSeveralSumpsIsSymmetricAndPositive) {
  const FieldSolver solver = solved(house());
  const std::vector<Sink> sinks{{{1, 1}, 0.3}, {{7, 5}, 0.3}, {{0.15, 3}, 0.3}};
  std::vector<UnitField> units;
  for (const auto& unit : solver.units(sinks)) units.push_back(*unit);
  const auto r = resistances(units);
  for (std::size_t i = 0; i < 3; ++i) {
    for (std::size_t j = 0; j < 3; ++j) {
      EXPECT_NEAR(r[3 * i + j] / r[3 * j + i], 1.0, 1e-9);
      if (i != j) {
        EXPECT_LT(r[3 * i + j], r[3 * i + i]);
      }
    }
  }
  const auto both = superposed(units, {1e-2, 2e-2, 0.0});
  EXPECT_NEAR(both[100], 1e-2 * units[0].suction[100] + 2e-2 * units[1].suction[100], 1e-12);
}

/// A pit at a straight tight wall is half a pit: as a whole one on the doubled floor (derived).
TEST(SuctionField, PitAtAWallIsHalfOfOneInTheDoubledFloor) {
  SuctionModel half;
  half.regions = {region(box(0, -5, 6, 5))};
  half.layer = {8e-5, 5e-6};
  SuctionModel whole = half;
  whole.regions = {region(box(-6, -5, 6, 5))};
  const auto at_wall = solved(half, 0.05).unit({{0.0, 0.0}, 0.3});
  const auto inside = solved(whole, 0.05).unit({{0.0, 0.0}, 0.3});
  ASSERT_TRUE(at_wall && inside);
  EXPECT_NEAR(at_wall->port.inside, 0.5, 0.01);
  EXPECT_NEAR(at_wall->resistance_pa_s_m3 / (2.0 * inside->resistance_pa_s_m3), 1.0, 0.002);
}

TEST(SuctionReach, CountsFloorAndJointAtOrBeyond) {
  const FieldSolver solver = solved(house());
  const Network& net = solver.network();
  std::vector<double> suction(net.cells.size());
  for (std::size_t c = 0; c < suction.size(); ++c) {
    suction[c] = net.centre(static_cast<int>(c)).x < 2.0 ? 6.0 : 2.0;
  }
  suction[17] = 0.25;
  const Reach reach = reachOf(net, suction, {});
  EXPECT_NEAR(reach.floor_m2, 48.0, 1e-9);
  EXPECT_NEAR(reach.joint_m, 28.0, 1e-9);
  EXPECT_NEAR(reach.floor, (12.0 - 0.01) / 48.0, 1e-9);
  EXPECT_NEAR(reach.floor_limit, 1.0 - 0.01 / 48.0, 1e-9);
  EXPECT_NEAR(reach.joint, (10.0 - 0.1) / 28.0, 1e-9);  // cell 17 lies on the south wall
  EXPECT_EQ(reach.least.suction_pa, 0.25);
  EXPECT_EQ(reach.least.at, net.centre(17));
}

TEST(SuctionReach, NextDoorCountsForNothing) {
  SuctionModel model = house();
  model.regions.push_back(region(box(8, 0, 16, 6)));
  model.regions[0].edges[1] = {};
  model.regions[1].edges[3] = {};
  model.regions[1].neighbour = true;
  const FieldSolver solver = solved(model);
  const auto unit = solver.unit({{7, 3}, 0.3});
  ASSERT_TRUE(unit);
  EXPECT_GT(*sampleAt(solver.network(), unit->suction, {8.3, 3}), 0.0);
  const Reach reach = reachOf(solver.network(), unit->suction, {});
  EXPECT_NEAR(reach.floor_m2, 48.0, 1e-6);
  EXPECT_LT(reach.least.at.x, 8.0);
}

}  // namespace

}  // namespace sumpwright::suction
