#include <gtest/gtest.h>

#include "plan/WallEdits.h"
#include "tools/ThingPlace.h"

namespace sumpwright::tools {
namespace {

plan::Job oblongHouse() {
  plan::Job job;
  job.id = "things";
  job.house.wall_thickness_m = 0.3;
  return plan::rectangleHouse(job, 10.0, 8.0).value();
}

plan::Job put(const plan::Job& job, int edge, const char* text) {
  const ThingLine line = readThingLine(text);
  EXPECT_TRUE(line.ok()) << text;
  auto result = placed(job, 0, edge, line);
  EXPECT_TRUE(result.ok()) << text;
  return result ? std::move(result).value() : job;
}

TEST(ThingPlace, OpeningsFromEitherCorner) {
  const plan::Job left = put(oblongHouse(), 0, "w 1.20 1.05 0.9 2.1");
  ASSERT_EQ(left.plan.openings.size(), 1U);
  EXPECT_EQ(left.plan.openings[0].at, (plan::OnWall{0, 0, 1.2}));
  EXPECT_EQ(left.plan.openings[0].sill_m, 0.9);
  const plan::Job right = put(oblongHouse(), 0, "d r1.20 1.00");
  EXPECT_NEAR(right.plan.openings[0].at.offset_m, 7.8, 1e-12);
  EXPECT_EQ(put(oblongHouse(), 0, "v 3 0.2").plan.openings[0].opens, plan::Opens::vent);
  EXPECT_EQ(lastAdded(oblongHouse(), left), left.plan.openings[0].id);
}

TEST(ThingPlace, RepeatsAtTheSameDistance) {
  const plan::Job job = put(oblongHouse(), 0, "t3 w 1 1.5");
  ASSERT_EQ(job.plan.openings.size(), 3U);
  EXPECT_NEAR(job.plan.openings[1].at.offset_m, 3.5, 1e-12);
  EXPECT_NEAR(job.plan.openings[2].at.offset_m, 6.0, 1e-12);
}

TEST(ThingPlace, ServicesAndRadiators) {
  const plan::Job gas = put(oblongHouse(), 1, "gas r2.1");
  EXPECT_NEAR(gas.plan.services.at(0).entry->offset_m, 5.9, 1e-12);
  const plan::Job run = put(oblongHouse(), 1, "el 2 6");
  ASSERT_EQ(run.plan.services.at(0).run, plan::RunKnown::drawn);
  EXPECT_EQ(run.plan.services[0].run_m, (std::vector<geometry::Point>{{10, 2}, {16, 2}}));
  const plan::Job radiator = put(oblongHouse(), 1, "rad r1 0.8");
  EXPECT_NEAR(radiator.plan.radiators.at(0).on->offset_m, 6.2, 1e-12);
}

TEST(ThingPlace, InnerWallsRunToTheNextWall) {
  const plan::Job across = put(oblongHouse(), 0, "iw 4");
  ASSERT_EQ(across.plan.inner_walls.size(), 1U);
  EXPECT_NEAR(across.plan.inner_walls[0].line_m[0].y, 0.3, 1e-12);
  EXPECT_NEAR(across.plan.inner_walls[0].line_m[1].x, 4.0, 1e-12);
  EXPECT_NEAR(across.plan.inner_walls[0].line_m[1].y, 7.7, 1e-12);
  const plan::Job tee = put(across, 1, "iw 4");  // from the east wall to the inner one
  EXPECT_NEAR(tee.plan.inner_walls[1].line_m[1].x, 4.0, 1e-12);
  EXPECT_NEAR(tee.plan.inner_walls[1].line_m[1].y, 4.0, 1e-12);
  const plan::Job stub = put(oblongHouse(), 0, "iw 4 1.5");
  EXPECT_NEAR(stub.plan.inner_walls[0].line_m[1].y, 1.8, 1e-12);
}

TEST(ThingPlace, SaysWhyNot) {
  const auto problem = [](int edge, const char* text) {
    const auto result = placed(oblongHouse(), 0, edge, readThingLine(text));
    return result ? std::string() : result.problems().front().message.id;
  };
  EXPECT_EQ(problem(7, "gas 1"), "place.no-wall");
  EXPECT_EQ(problem(0, "gas 11"), "place.past-end");
  EXPECT_EQ(problem(0, "rad 9.5 1"), "place.past-end");
  EXPECT_EQ(problem(0, "iw 12"), "place.past-end");
  EXPECT_EQ(problem(0, "w 9.5 1"), "plan.edit.no-room");
}

}  // namespace
}  // namespace sumpwright::tools
