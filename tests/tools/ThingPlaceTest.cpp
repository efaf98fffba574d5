#include <gtest/gtest.h>

#include "plan/RoomEdits.h"
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

TEST(ThingPlace, WhatIsInsideIsCountedFromTheInnerFace) {
  const plan::Job socket = put(oblongHouse(), 0, "so 2.1");
  EXPECT_EQ(socket.plan.supplies.at(0).at_m, (geometry::Point{2.1, 0.3}));
  const plan::Job sink = put(oblongHouse(), 1, "sink r2 0.25");
  EXPECT_EQ(sink.plan.fittings.at(0).at_m, (geometry::Point{10 - 0.3 - 0.25, 6.0}));
  const plan::Job hole = put(oblongHouse(), 0, "th 2 1.5");
  EXPECT_NEAR(hole.plan.test_holes.at(0).at_m.y, 1.8, 1e-12);
  const plan::Job pipe = put(oblongHouse(), 0, "hp 1 0.1 4");
  EXPECT_NEAR(pipe.plan.heating_pipes.at(0).line_m.at(1).x, 5.0, 1e-12);
  EXPECT_FALSE(placed(oblongHouse(), 0, 0, readThingLine("so 11")).ok());
}

TEST(ThingPlace, WhatIsOutsideIsCountedFromTheOutsideFace) {
  const plan::Job gully = put(oblongHouse(), 0, "gully 2.10 0.40");
  EXPECT_EQ(gully.plan.outside.at(0).points_m, (std::vector<geometry::Point>{{2.1, -0.4}}));
  EXPECT_EQ(lastAdded(oblongHouse(), gully), gully.plan.outside[0].id);
  const plan::Job chamber = put(oblongHouse(), 1, "ic 2 1 0.6 0.45");
  EXPECT_EQ(chamber.plan.outside.at(0).points_m,
            (std::vector<geometry::Point>{{11, 2}, {11, 2.6}, {11.45, 2.6}, {11.45, 2}}));
  const plan::Job fence = put(oblongHouse(), 0, "bo r0 3 12");
  EXPECT_EQ(fence.plan.outside.at(0).points_m, (std::vector<geometry::Point>{{-2, -3}, {10, -3}}))
      << "beyond the wall's end too";
}

TEST(ThingPlace, InTheWallUnderItAndThroughIt) {
  const plan::Job pier = put(oblongHouse(), 0, "pier r1 0.4");
  EXPECT_NEAR(pier.plan.wall_features.at(0).at.offset_m, 8.6, 1e-12);
  EXPECT_FALSE(placed(oblongHouse(), 0, 0, readThingLine("pier 9.8 0.4")).ok());
  const plan::Job parted = put(oblongHouse(), 0, "iw 4");
  const plan::Job rising = put(parted, 0, "rw 4");
  EXPECT_EQ(rising.plan.rising_walls.at(0).line_m, parted.plan.inner_walls[0].line_m);
  EXPECT_EQ(rising.plan.inner_walls[0].below_floor, plan::BelowFloor::own_footing);
  EXPECT_EQ(put(oblongHouse(), 0, "rw 4").plan.rising_walls.size(), 1U) << "no wall above it";
  const plan::Job door = put(parted, 0, "in 4 1 0.8");
  EXPECT_NEAR(door.plan.inner_doors.at(0).offset_m, 1.0, 1e-12);
  const plan::Job other_end = put(parted, 2, "in 6 1 0.8");  // the same wall from the north
  EXPECT_NEAR(other_end.plan.inner_doors.at(0).offset_m, 7.4 - 1.8, 1e-9);
  EXPECT_FALSE(placed(parted, 0, 0, readThingLine("in 5 1 0.8")).ok());
}

TEST(ThingPlace, FloorsWholeAndUnderARoom) {
  const plan::Job slab = put(oblongHouse(), 0, "floor slab");
  ASSERT_EQ(slab.plan.floor_zones.size(), 1U);
  EXPECT_EQ(slab.plan.floor_zones[0].kind, plan::FloorKind::ground_bearing_slab);
  EXPECT_FALSE(placed(slab, 0, 0, readThingLine("floor timber")).ok()) << "laid and known";
  plan::Job roomed = plan::roomsFromWalls(put(oblongHouse(), 0, "iw 4")).value();
  ASSERT_EQ(roomed.plan.rooms.size(), 2U);
  roomed.plan.rooms[1].use = plan::RoomUse::living;
  const plan::Job one = put(roomed, 0, "floor timber living");
  EXPECT_EQ(one.plan.floor_zones.at(0).outline_m, roomed.plan.rooms[1].outline_m);
  const plan::Job both = put(one, 0, "floor slab");
  EXPECT_EQ(both.plan.floor_zones.size(), 2U) << "the rest of it";
  EXPECT_EQ(both.plan.floor_zones[0].kind, plan::FloorKind::suspended_timber);
  EXPECT_EQ(put(both, 0, "floor concrete 2").plan.floor_zones[0].kind,
            plan::FloorKind::suspended_concrete);
  EXPECT_FALSE(placed(roomed, 0, 0, readThingLine("floor slab attic")).ok());
}

TEST(ThingPlace, CourtyardsAreTypedToo) {
  const plan::Job court = put(oblongHouse(), 0, "court 3 2 4 3");
  ASSERT_EQ(court.plan.rings.size(), 2U);
  EXPECT_EQ(lastAdded(oblongHouse(), court), court.plan.rings[1].walls[0].id);
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

/// At a corner that juts into the house the inner faces are longer than the wall outside.
TEST(ThingPlace, InnerWallsStopAtACornerThatJutsIn) {
  plan::Job job;
  job.id = "ell";
  job.house.wall_thickness_m = 0.3;
  plan::Ring ring;
  ring.corners = {{0, 0}, {10, 0}, {10, 5}, {6, 5}, {6, 8}, {0, 8}};
  ring.walls.resize(6);
  for (std::size_t i = 0; i < 6; ++i) ring.walls[i].id = "w" + std::to_string(i);
  job.plan.rings.push_back(ring);
  // Through the corner block, 5.7 to 6.0 m by 4.7 to 5.0 m.
  for (const char* text : {"iw 5.8", "iw 5.71", "iw 5.99"}) {
    EXPECT_NEAR(put(job, 0, text).plan.inner_walls.at(0).line_m[1].y, 4.7, 1e-12) << text;
  }
  EXPECT_NEAR(put(job, 5, "iw r4.8").plan.inner_walls.at(0).line_m[1].x, 5.7, 1e-12);
  EXPECT_NEAR(put(job, 0, "iw 5.6").plan.inner_walls.at(0).line_m[1].y, 7.7, 1e-12);
  EXPECT_NEAR(put(job, 0, "iw 6.1").plan.inner_walls.at(0).line_m[1].y, 4.7, 1e-12);
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
