#include <gtest/gtest.h>

#include "suction/Model.h"
#include "suction/Network.h"
#include "support/Fields.h"

namespace sumpwright::suction {

namespace {

using support::box;
using support::Pose;
using support::region;

SuctionModel floor6x4() {
  SuctionModel model;
  model.regions = {region(box(0, 0, 6, 4))};
  model.layer = {1e-4, 3e-6};
  return model;
}

std::string firstProblem(const SuctionModel& model) {
  const auto problems = checkModel(model);
  return problems.empty() ? "" : problems[0].message.id;
}

TEST(SuctionModel, SaysWhatKeepsItFromHavingAnAnswer) {
  EXPECT_EQ(firstProblem(floor6x4()), "");
  SuctionModel model = floor6x4();
  model.regions.clear();
  EXPECT_EQ(firstProblem(model), "suction.model.area");
  model = floor6x4();
  model.layer.transmissivity_m3_s_pa = 0.0;
  EXPECT_EQ(firstProblem(model), "suction.model.transmissivity");
  model = floor6x4();
  model.layer.leak_ground_m_s_pa = 0.0;
  EXPECT_EQ(firstProblem(model), "suction.model.leakage");
  model.regions[0].edges[2].room_m2_s_pa = 1e-6;
  EXPECT_EQ(firstProblem(model), "");
  model.barriers = {{"w", {{1, 1}, {2, std::nan("")}}}};
  EXPECT_EQ(firstProblem(model), "suction.model.numbers");
}

TEST(SuctionModel, NextDoorIsNoFloorOfOurs) {
  SuctionModel model = floor6x4();
  model.regions[0].holes = {box(1, 1, 2, 2)};
  model.regions.push_back(region(box(6, 0, 12, 4)));
  model.regions[1].neighbour = true;
  EXPECT_DOUBLE_EQ(floorArea_m2(model), 23.0);
}

double areaOf(const Network& net) {
  double area = 0.0;
  for (const Cell& cell : net.cells) area += cell.area_m2;
  return area;
}

TEST(SuctionNetwork, CutCellsKeepAreaAndLeakage) {
  const Pose pose{0.3, {5, -2}};
  for (const bool align : {true, false}) {
    SuctionModel model = floor6x4();
    model.regions[0].outline = pose(model.regions[0].outline);
    model.regions[0].holes = {pose(box(1.03, 1.01, 2.52, 1.97))};
    const Network net = networkOf(model, 0.1, align);
    EXPECT_NEAR(areaOf(net), 24.0 - 1.49 * 0.96, 1e-5);
    EXPECT_NEAR(net.ownJoint_m(), 20.0 + 2.0 * (1.49 + 0.96), 1e-5);
  }
}

TEST(SuctionNetwork, ItsOwnGridRunsWithTheHouse) {
  const Pose pose{0.3, {5, -2}};
  SuctionModel model = floor6x4();
  model.regions[0].outline = pose(model.regions[0].outline);
  EXPECT_EQ(networkOf(model, 0.1, true).cells.size(), 2400U);
}

TEST(SuctionNetwork, ZonesShareACellByArea) {
  SuctionModel model = floor6x4();
  model.zones = {{"z", box(3.05, 0, 6, 4), {5e-4, 1e-5}}};
  const Network net = networkOf(model, 0.1, false);
  double leakage = 0.0;
  for (const Cell& cell : net.cells) {
    leakage += cell.leak_ground_m3_s_pa;
  }
  EXPECT_NEAR(leakage, 3.05 * 4 * 3e-6 + 2.95 * 4 * 1e-5, 1e-12);
}

/// No way from one side to the other through a wall without gap, however it lies in the grid.
TEST(SuctionNetwork, ATightWallIsTight) {
  for (const double turn : {0.0, 0.1, 0.5, 0.7853981633974483, 1.2}) {
    const Pose pose{turn, {0.037, 0.011}};
    for (const double x : {2.0, 2.05, 2.5, 3.011}) {
      SuctionModel model = floor6x4();
      model.regions[0].outline = pose(model.regions[0].outline);
      model.barriers = {{"w", pose({{x, 0}, {x + 0.3, 1.7}, {x - 0.4, 4}})}};
      const FieldSolver solver = FieldSolver::of(model, {.cell_m = 0.1, .align = false});
      ASSERT_TRUE(solver.ok());
      const auto unit = solver.unit({pose({0.7, 2.0}), 0.1});
      ASSERT_TRUE(unit);
      const auto beyond = sampleAt(solver.network(), unit->suction, pose({5, 2}));
      ASSERT_TRUE(beyond);
      EXPECT_EQ(*beyond, 0.0) << "turned " << turn << ", at " << x;
    }
  }
}

TEST(SuctionNetwork, AWallThatStopsJustShortOfAnotherMeetsIt) {
  SuctionModel model = floor6x4();
  model.barriers = {{"a", {{2, 0}, {2, 4}}}, {"b", {{2.03, 2}, {5.98, 2}}}};
  const FieldSolver solver = FieldSolver::of(model, {.cell_m = 0.1});
  ASSERT_TRUE(solver.ok());
  const auto unit = solver.unit({{4, 1}, 0.1});
  ASSERT_TRUE(unit);
  EXPECT_EQ(*sampleAt(solver.network(), unit->suction, {4, 3}), 0.0);
  EXPECT_EQ(*sampleAt(solver.network(), unit->suction, {1, 1}), 0.0);
  EXPECT_GT(*sampleAt(solver.network(), unit->suction, {5.9, 0.1}), 0.0);
}

TEST(SuctionNetwork, ADuctShortCircuitsAndAPipeOnlyAtItsEnds) {
  SuctionModel model = floor6x4();
  model.layer.leak_ground_m_s_pa = 4e-4;  // leakage length 0.5 m
  const auto at = [&](Point p) {
    const FieldSolver solver = FieldSolver::of(model, {.cell_m = 0.1});
    return *sampleAt(solver.network(), solver.unit({{0.5, 2}, 0.1})->suction, p);
  };
  const double far = at({5.5, 2.05});
  const double middle = at({3.05, 2.05});
  model.conduits = {{"d", {{0.4, 2.05}, {5.6, 2.05}}, 1e-2}};
  EXPECT_GT(at({5.5, 2.05}), 100.0 * far);
  EXPECT_GT(at({3.05, 2.05}), 5.0 * middle);
  model.conduits[0].sealed = true;
  EXPECT_GT(at({5.55, 2.05}), 100.0 * far);
  EXPECT_LT(at({3.05, 2.05}), 2.0 * middle);
}

}  // namespace

}  // namespace sumpwright::suction
