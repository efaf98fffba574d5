// Drains under the floor, whose trenches may carry air.

#include <gtest/gtest.h>

#include "suction/ModelOf.h"
#include "support/Fields.h"
#include "support/PlanBuilder.h"

namespace sumpwright::suction {

namespace {

using support::PlanBuilder;

/// 14 x 8 m with a drain from its east end along the middle.
plan::Job drainedHouse(const Polyline& run) {
  return PlanBuilder::rectangle(14, 8)
      .service("drain", plan::ServiceKind::drain, 1, 4.0)
      .run("drain", run)
      .job();
}
const Polyline kUnderTheFloor{{16, 4}, {14, 4}, {3, 4}};

TEST(SuctionTrenches, ADrainUnderTheFloorIsOne) {
  EXPECT_EQ(drainsBelow(drainedHouse(kUnderTheFloor).plan).size(), 1U);
  EXPECT_TRUE(drainsBelow(drainedHouse({{14, 4}, {16, 4}}).plan).empty());
  EXPECT_TRUE(drainsBelow(drainedHouse({{13.2, 4}, {16, 4}}).plan).empty())
      << "hardly more than the wall";
  plan::Job other = drainedHouse(kUnderTheFloor);
  other.plan.services[0].kind = plan::ServiceKind::water;
  EXPECT_TRUE(drainsBelow(other.plan).empty());
  other = drainedHouse(kUnderTheFloor);
  other.plan.services[0].run = plan::RunKnown::unknown;
  EXPECT_TRUE(drainsBelow(other.plan).empty());
  const plan::Job yard = PlanBuilder::courtyard()
                             .service("drain", plan::ServiceKind::drain, 0, 6.0)
                             .run("drain", {{6, 5.1}, {6, 7.9}});
  EXPECT_TRUE(drainsBelow(yard.plan).empty()) << "in a courtyard";
}

TEST(SuctionTrenches, BothAnswersAreAsked) {
  EXPECT_EQ(choicesOf(drainedHouse({{14, 4}, {16, 4}}).plan).size(), 1U);
  const auto choices = choicesOf(drainedHouse(kUnderTheFloor).plan);
  ASSERT_EQ(choices.size(), 2U);
  EXPECT_FALSE(choices[0].trenches_open);
  EXPECT_TRUE(choices[1].trenches_open);
}

/// In tight fill the trench carries suction to the far end, through a wall too.
TEST(SuctionTrenches, ATrenchCarriesSuctionAlongIt) {
  plan::Job job = drainedHouse(kUnderTheFloor);
  job.plan.rising_walls.push_back({"r", {{7, 0.35}, {7, 7.65}}, 0.1, {}});
  const auto beyond = [&](bool open) {
    Ground ground;
    ground.permeability_m2 = 1e-9;
    const auto model = modelOf(job, ground, {.trenches_open = open});
    EXPECT_TRUE(model);
    EXPECT_EQ(model->conduits.size(), open ? 1U : 0U);
    const FieldSolver solver = FieldSolver::of(*model, {.cell_m = 0.1});
    return *sampleAt(solver.network(), solver.unit({{2, 4}, 0.3})->suction, {12, 4.5});
  };
  EXPECT_EQ(beyond(false), 0.0);
  EXPECT_GT(beyond(true), 0.0);
}

}  // namespace

}  // namespace sumpwright::suction
