#include <gtest/gtest.h>

#include <cmath>

#include "suction/ModelOf.h"
#include "support/Fields.h"
#include "support/PlanBuilder.h"

namespace sumpwright::suction {

namespace {

using support::PlanBuilder;

SuctionModel made(const plan::Job& job, const ModelChoices& choices = {}) {
  auto model = modelOf(job, {}, choices);
  EXPECT_TRUE(model);
  return model ? *model : SuctionModel{};
}

TEST(SuctionModelOf, FloorLiesWithinTheInnerFaces) {
  const SuctionModel model = made(PlanBuilder::rectangle(10, 8));
  ASSERT_EQ(model.regions.size(), 1U);
  EXPECT_NEAR(floorArea_m2(model), 9.3 * 7.3, 1e-4);
  for (const Edge& edge : model.regions[0].edges) {
    EXPECT_EQ(edge.ring, 0);
    EXPECT_GT(edge.room_m2_s_pa, 0.0);
  }
}

plan::Job turnedBy(double turn_rad, const plan::Job& job) {
  plan::Job turned = job;
  for (plan::Ring& ring : turned.plan.rings) {
    for (Point& p : ring.corners) {
      p = {3.0 + std::cos(turn_rad) * p.x - std::sin(turn_rad) * p.y,
           std::sin(turn_rad) * p.x + std::cos(turn_rad) * p.y - 7.0};
    }
  }
  return turned;
}

/// However the house stands: walls that all but coincide by rounding lose no floor.
TEST(SuctionModelOf, TheFloorStaysWhenTheHouseIsTurned) {
  for (const plan::Job& job :
       {PlanBuilder::lShape().job(), PlanBuilder::courtyard().job(),
        PlanBuilder::outline({{0, 0}, {11, 1}, {10, 6}, {6, 5}, {5, 9}, {-1, 8}}).job()}) {
    const double area = floorArea_m2(made(job));
    EXPECT_GT(area, 30.0);
    for (int k = 1; k <= 120; ++k) {
      const double turn = 0.05 * k;
      EXPECT_NEAR(floorArea_m2(made(turnedBy(turn, job))), area, 1e-3) << turn;
    }
  }
}

TEST(SuctionModelOf, CourtyardIsAHole) {
  const SuctionModel model = made(PlanBuilder::courtyard());
  ASSERT_EQ(model.regions.size(), 1U);
  ASSERT_EQ(model.regions[0].holes.size(), 1U);
  EXPECT_NEAR(floorArea_m2(model), 13.3 * 11.3 - 4.7 * 3.7, 1e-3);
  EXPECT_EQ(model.regions[0].hole_edges[0][0].ring, 1);
}

TEST(SuctionModelOf, SuspendedFloorIsLeftOutAndItsEdgeIsTight) {
  const SuctionModel model = made(PlanBuilder::rectangle(10, 8).noZones().zone(
      "timber", plan::FloorKind::suspended_timber, {{5, 0}, {10, 0}, {10, 8}, {5, 8}}));
  EXPECT_NEAR(floorArea_m2(model), 4.65 * 7.3, 1e-3);
  int tight = 0;
  for (const Edge& edge : model.regions[0].edges) tight += edge.room_m2_s_pa > 0.0 ? 0 : 1;
  EXPECT_EQ(tight, 1);
}

TEST(SuctionModelOf, InnerWallsStandByWhatIsKnownOfTheirFooting) {
  const auto job = [](plan::BelowFloor below) {
    return PlanBuilder::rectangle(10, 8)
        .with([&](plan::Job& j) {
          j.plan.inner_walls.push_back({"w", {{5, 0.35}, {5, 7.65}}, 0.1, below});
        })
        .job();
  };
  EXPECT_TRUE(made(job(plan::BelowFloor::on_slab)).barriers.empty());
  EXPECT_EQ(made(job(plan::BelowFloor::own_footing)).barriers.size(), 1U);
  EXPECT_EQ(made(job(plan::BelowFloor::unknown)).barriers.size(), 1U);
  EXPECT_TRUE(
      made(job(plan::BelowFloor::unknown), {.unknown_walls_stand = false}).barriers.empty());
  EXPECT_TRUE(hasUnknownWalls(job(plan::BelowFloor::unknown).plan));
  EXPECT_FALSE(hasUnknownWalls(job(plan::BelowFloor::on_slab).plan));
}

/// A wall drawn to the face of another and a hand short of the outside wall parts the floor.
TEST(SuctionModelOf, WallsDrawnToFacesPartTheFloor) {
  const plan::Job job =
      PlanBuilder::rectangle(10, 8)
          .with([](plan::Job& j) {
            j.plan.rising_walls.push_back({"r", {{5, 0.43}, {5, 7.57}}, 0.1, {{1.0, 1.5}}});
            j.plan.inner_walls.push_back(
                {"w", {{5.05, 4}, {9.6, 4}}, 0.1, plan::BelowFloor::own_footing});
          })
          .job();
  const SuctionModel model = made(job);
  ASSERT_EQ(model.barriers.size(), 2U);
  // The gap stands where it was drawn: 1.43 to 1.93 up the wall.
  const Barrier& rising = model.barriers[0];
  EXPECT_NEAR(rising.line[0].y + rising.gaps[0].from_m, 1.43, 1e-6);
  const FieldSolver solver = FieldSolver::of(model, {.cell_m = 0.1});
  ASSERT_TRUE(solver.ok());
  const auto unit = solver.unit({{7, 6}, 0.3});  // the closed north-east room
  ASSERT_TRUE(unit);
  EXPECT_EQ(*sampleAt(solver.network(), unit->suction, {7, 2}), 0.0);
  EXPECT_EQ(*sampleAt(solver.network(), unit->suction, {2, 6}), 0.0);
  const auto through = solver.unit({{7, 2}, 0.3});
  EXPECT_GT(*sampleAt(solver.network(), through->suction, {2, 2}), 0.0);
}

TEST(SuctionModelOf, NextDoorGoesOnMirroredAndTakesItsShare) {
  const plan::Job job = PlanBuilder::rectangle(10, 8).wall(
      1, [](plan::Wall& wall) { wall.kind = plan::WallKind::party; });
  EXPECT_TRUE(hasPartyWalls(job.plan));
  const SuctionModel closed = made(job);
  const SuctionModel open = made(job, {.party_open = true});
  ASSERT_EQ(closed.regions.size(), 1U);
  ASSERT_EQ(open.regions.size(), 2U);
  EXPECT_TRUE(open.regions[1].neighbour);
  EXPECT_NEAR(floorArea_m2(open), 9.3 * 7.3, 1e-4);
  const auto far_corner = [](const SuctionModel& model) {
    const FieldSolver solver = FieldSolver::of(model, {.cell_m = 0.1});
    return *sampleAt(solver.network(), solver.unit({{9, 4}, 0.3})->suction, {1, 1});
  };
  EXPECT_LT(far_corner(open), 0.8 * far_corner(closed));
  // Twins: what one sump does next door and here is half of what a sump in each would do.
  const FieldSolver twin = FieldSolver::of(open, {.cell_m = 0.1});
  const auto ours = twin.unit({{8, 3}, 0.3});
  const auto theirs = twin.unit({{2 * 9.65 - 8, 3}, 0.3});
  ASSERT_TRUE(ours && theirs);
  SuctionModel alone = closed;
  for (Edge& edge : alone.regions[0].edges) {
    if (edge.party) edge.room_m2_s_pa = 0.0;
  }
  // Next door has no exposed wall in the model.
  for (SuctionModel* model : {&alone}) {
    for (Edge& edge : model->regions[0].edges) edge.outdoors_m2_s_pa = 0.0;
  }
  const FieldSolver single = FieldSolver::of(alone, {.cell_m = 0.1});
  const double both = *sampleAt(twin.network(), ours->suction, {2, 6}) +
                      *sampleAt(twin.network(), theirs->suction, {2, 6});
  EXPECT_NEAR(both / *sampleAt(single.network(), single.unit({{8, 3}, 0.3})->suction, {2, 6}), 1.0,
              0.02);
}

TEST(SuctionModelOf, AnOpenOutlineIsAProblem) {
  const plan::Job job =
      PlanBuilder::rectangle().with([](plan::Job& j) { j.plan.rings[0].closed = false; });
  const auto model = modelOf(job, {});
  ASSERT_FALSE(model);
  EXPECT_EQ(model.problems()[0].message.id, "suction.model.plan");
}

TEST(SuctionModelOf, ACoredSumpDrawsFromBehindItsWall) {
  const plan::Job job = PlanBuilder::rectangle(10, 8);
  const auto perimeter = perimeter::Perimeter::of(job);
  ASSERT_TRUE(perimeter);
  const Sink sink = sinkAt(*perimeter, {0, 4.0}, 0.3);
  EXPECT_NEAR(sink.at.x, 4.0, 1e-9);
  EXPECT_NEAR(sink.at.y, 0.65, 1e-9);
  plan::Sump standby{"s", plan::SumpKind::standby, 0, 0.0, Point{3, 3}};
  EXPECT_EQ(sinkOf(*perimeter, standby, 0.3)->at, (Point{3, 3}));
}

TEST(SuctionModelOf, PitOfAVolume) {
  // 53 to 90 litres (EPA/600/R-92/207, abstract) are 0.29 to 0.35 m.
  EXPECT_NEAR(pitRadius_m(0.053), 0.29, 0.005);
  EXPECT_NEAR(pitRadius_m(0.090), 0.35, 0.005);
}

}  // namespace

}  // namespace sumpwright::suction
