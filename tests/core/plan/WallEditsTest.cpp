// Facts of walls, right angles, rectangles and courtyards; the whole plan mirrored and turned.

#include <cmath>
#include <numbers>

#include "core/plan/EditChecks.h"
#include "geometry/Shapes.h"
#include "plan/Dimensions.h"
#include "plan/FactEdits.h"
#include "plan/OutlineEdits.h"
#include "plan/WallEdits.h"
#include "plan/WholePlanEdits.h"
#include "support/PlanBuilder.h"
#include "support/Seed.h"

namespace sumpwright::plan {
namespace {

using geometry::Polygon;
using support::PlanBuilder;

double turnAt_deg(const Polygon& c, std::size_t i) {
  const std::size_t n = c.size();
  const geometry::Vec in = c[i] - c[(i + n - 1) % n];
  const geometry::Vec out = c[(i + 1) % n] - c[i];
  return std::atan2(geometry::cross(in, out), geometry::dot(in, out)) * 180.0 / std::numbers::pi;
}

void expectSquare(const Polygon& corners) {
  for (std::size_t i = 0; i < corners.size(); ++i) {
    EXPECT_NEAR(std::abs(turnAt_deg(corners, i)), 90.0, 1e-7) << i;
  }
}

TEST(SetWall, ItsFactsButNotItsId) {
  const Job job = PlanBuilder::rectangle();
  Wall facts = job.plan.rings[0].walls[1];
  facts.id = "other";
  facts.kind = WallKind::dwarf;
  facts.layers = {{LayerKind::brick, 0.1}, {LayerKind::block, 0.25}};
  const Job set = doneWell(setWall(job, 0, 1, facts));
  facts.id = job.plan.rings[0].walls[1].id;
  EXPECT_EQ(set.plan.rings[0].walls[1], facts);
  EXPECT_EQ(doneWell(setWall(set, 0, 1, job.plan.rings[0].walls[1])), job);
  facts.thickness_m = NAN;
  EXPECT_EQ(problemIdOf(setWall(job, 0, 1, facts)), "plan.edit.not-a-place");
  EXPECT_EQ(problemIdOf(setWall(job, 0, 4, {})), "plan.edit.no-edge");
  EXPECT_EQ(problemIdOf(setWall(job, -1, 0, {})), "plan.edit.no-edge");
}

/// 10 by 8 m; a room from face to face, a wall across, a zone in the middle.
Job insideOf(double thick) {
  PlanBuilder house = PlanBuilder::rectangle();
  house.with([&](Job& job) {
    job.house.wall_thickness_m = thick;
    for (Wall& wall : job.plan.rings[0].walls) wall.thickness_m.reset();
    job.plan.rooms.clear();
    Room room;
    room.id = "all";
    room.outline_m = {
        {thick, thick}, {10 - thick, thick}, {10 - thick, 8 - thick}, {thick, 8 - thick}};
    job.plan.rooms.push_back(room);
    InnerWall across;
    across.id = "across";
    across.line_m = {{4.0, thick}, {4.0, 8 - thick}};
    job.plan.inner_walls = {across};
    FloorZone middle;
    middle.id = "middle";
    middle.outline_m = {{2, 2}, {3, 2}, {3, 3}, {2, 3}};
    job.plan.floor_zones = {middle};
  });
  return house;
}

void expectSameInside(const Job& job, const Job& wanted) {
  const auto expectAt = [](const Polygon& is, const Polygon& should) {
    ASSERT_EQ(is.size(), should.size());
    for (std::size_t i = 0; i < is.size(); ++i) {
      EXPECT_NEAR(is[i].x, should[i].x, 1e-12) << i;
      EXPECT_NEAR(is[i].y, should[i].y, 1e-12) << i;
    }
  };
  expectAt(job.plan.rooms[0].outline_m, wanted.plan.rooms[0].outline_m);
  expectAt(job.plan.inner_walls[0].line_m, wanted.plan.inner_walls[0].line_m);
  expectAt(job.plan.floor_zones[0].outline_m, wanted.plan.floor_zones[0].outline_m);
}

TEST(Thickness, WhatStandsOnAnInnerFaceGoesAlong) {
  const Job before = insideOf(0.35);
  House house = before.house;
  house.wall_thickness_m = 0.50;
  const Job stone = doneWell(setHouse(before, house));
  expectSameInside(stone, insideOf(0.50));
  expectSameInside(doneWell(setHouse(stone, before.house)), before);
  // By its layers, where no thickness is stated.
  house.wall_thickness_m.reset();
  house.wall_layers = {{LayerKind::brick, 0.1}, {LayerKind::block, 0.1}};
  expectSameInside(doneWell(setHouse(before, house)), insideOf(0.20));
  // What says nothing of thickness moves nothing.
  house = before.house;
  house.slab_m = 0.2;
  EXPECT_EQ(doneWell(setHouse(before, house)).plan, before.plan);
}

TEST(Thickness, OfOneWallMovesThatFaceAlone) {
  const Job before = insideOf(0.35);
  Wall facts = before.plan.rings[0].walls[0];  // along y = 0
  facts.thickness_m = 0.60;
  const Job after = doneWell(setWall(before, 0, 0, facts));
  Job wanted = before;
  wanted.plan.rooms[0].outline_m[0].y = 0.60;
  wanted.plan.rooms[0].outline_m[1].y = 0.60;
  wanted.plan.inner_walls[0].line_m[0].y = 0.60;
  expectSameInside(after, wanted);
  // An open outline has no inside yet.
  Job open = before;
  open.plan.rings[0].closed = false;
  expectSameInside(doneWell(setWall(open, 0, 0, facts)), before);
}

/// A wall from the west's inner face to the middle with a door in it, a low wall beside it with a
/// gap, a radiator and a pipe on the west's inner face; faces at 0.30 m, outside at 0 of 10 by 8 m.
Job withDoor() {
  PlanBuilder house = PlanBuilder::rectangle();
  house.with([](Job& job) {
    for (Wall& wall : job.plan.rings[0].walls) wall.thickness_m = 0.3;
    job.plan.rooms.clear();
    job.plan.floor_zones.clear();
    Room room;
    room.id = "wc";
    room.outline_m = {{0.3, 0.3}, {1.3, 0.3}, {1.3, 2.95}, {0.3, 2.95}};
    job.plan.rooms = {room};
    InnerWall wall;
    wall.id = "across";
    wall.line_m = {{0.3, 3.0}, {5.0, 3.0}};
    InnerWall foot;
    foot.id = "foot";
    foot.line_m = {{0.9, 0.3}, {0.9, 1.5}};
    job.plan.inner_walls = {wall, foot};
    job.plan.inner_doors = {{"door", "across", 0.2, 0.7}};
    job.plan.rising_walls = {{"low", {{0.3, 4.0}, {5.0, 4.0}}, 0.1, {{1.0, 1.5}}}};
    job.plan.radiators = {{"on-face", "", std::nullopt, 0.0, {{0.3, 5.0}, {0.3, 6.0}}}};
    job.plan.heating_pipes = {{"pipe", "", {{0.3, 6.5}, {5.0, 6.5}}}};
  });
  return house;
}

Job west(const Job& job, double thickness_m) {
  Wall facts = job.plan.rings[0].walls[3];  // along x = 0
  facts.thickness_m = thickness_m;
  return doneWell(setWall(job, 0, 3, facts));
}

TEST(Thickness, LeavesDoorsAndGapsWhereTheyAre) {
  const Job thick = west(withDoor(), 0.45);
  EXPECT_NEAR(thick.plan.inner_walls[0].line_m[0].x, 0.45, 1e-12);
  EXPECT_NEAR(thick.plan.inner_doors[0].offset_m, 0.05, 1e-12);  // from x = 0.50 still
  EXPECT_EQ(thick.plan.inner_doors[0].width_m, 0.7);
  EXPECT_NEAR(thick.plan.rising_walls[0].gaps[0].from_m, 0.85, 1e-12);
  EXPECT_NEAR(thick.plan.rising_walls[0].gaps[0].to_m, 1.35, 1e-12);
  // Past the end of its wall: said by the check, not pushed along.
  EXPECT_NEAR(west(withDoor(), 0.60).plan.inner_doors[0].offset_m, -0.10, 1e-12);
}

TEST(Thickness, TakesRadiatorsAndPipesOnTheFaceAlong) {
  const Plan thick = west(withDoor(), 0.45).plan;
  EXPECT_NEAR(thick.radiators[0].line_m[0].x, 0.45, 1e-12);
  EXPECT_NEAR(thick.radiators[0].line_m[1].x, 0.45, 1e-12);
  EXPECT_NEAR(thick.heating_pipes[0].line_m[0].x, 0.45, 1e-12);
  EXPECT_EQ(thick.heating_pipes[0].line_m[1].x, 5.0);
  // One that only touches the face slides along its own wall.
  Job touching = withDoor();
  touching.plan.radiators[0].line_m = {{0.32, 0.3}, {1.12, 0.3}};
  const Plan slid = west(touching, 0.45).plan;
  EXPECT_NEAR(slid.radiators[0].line_m[0].x, 0.47, 1e-12);
  EXPECT_NEAR(slid.radiators[0].line_m[1].x, 1.27, 1e-12);
}

TEST(Thickness, MistypedAndTypedBackRestoresThePlan) {
  const Job before = withDoor();
  const Job thick = west(before, 1.1);
  EXPECT_EQ(thick.plan.inner_walls[1], before.plan.inner_walls[1]);  // not pushed along its wall
  const Job again = west(thick, 0.3);
  const auto same = [](const Polygon& is, const Polygon& should) {
    ASSERT_EQ(is.size(), should.size());
    for (std::size_t i = 0; i < is.size(); ++i) {
      EXPECT_NEAR(geometry::distance(is[i], should[i]), 0.0, 1e-12) << i;
    }
  };
  same(again.plan.rooms[0].outline_m, before.plan.rooms[0].outline_m);
  for (std::size_t i = 0; i < 2; ++i) {
    same(again.plan.inner_walls[i].line_m, before.plan.inner_walls[i].line_m);
  }
  EXPECT_NEAR(again.plan.inner_doors[0].offset_m, 0.2, 1e-12);
  // All walls at once: what a wall beside was drawn over comes back with its own.
  Job all = before;
  for (Wall& wall : all.plan.rings[0].walls) wall.thickness_m.reset();
  all.house.wall_thickness_m = 0.3;
  House house = all.house;
  house.wall_thickness_m = 1.1;
  all.plan.rooms.clear();
  same(doneWell(setHouse(doneWell(setHouse(all, house)), all.house)).plan.inner_walls[1].line_m,
       before.plan.inner_walls[1].line_m);
}

TEST(Thickness, ThatLeavesNoSpaceIsRefused) {
  const Job job = withDoor();
  Wall facts = job.plan.rings[0].walls[3];
  for (const double thick : {1.3, 1.5}) {  // the room ends at x = 1.30
    facts.thickness_m = thick;
    EXPECT_EQ(problemIdOf(setWall(job, 0, 3, facts)), "plan.edit.no-space-left") << thick;
  }
  Job zoned = job;
  zoned.plan.rooms.clear();
  FloorZone zone;
  zone.id = "strip";
  zone.outline_m = job.plan.rooms[0].outline_m;
  zoned.plan.floor_zones = {zone};
  EXPECT_EQ(problemIdOf(setWall(zoned, 0, 3, facts)), "plan.edit.no-space-left");
  for (Wall& wall : zoned.plan.rings[0].walls) wall.thickness_m.reset();
  zoned.house.wall_thickness_m = 0.3;
  House house = zoned.house;
  house.wall_thickness_m = 1.5;
  EXPECT_EQ(problemIdOf(setHouse(zoned, house)), "plan.edit.no-space-left");
}

TEST(Outline, LeavesDoorsInsideWhereTheyAre) {
  // The west wall 0.1 m inwards: the wall across begins at 0.40, its door still at 0.50.
  const Job moved = doneWell(moveWall(withDoor(), 0, 3, -0.1));
  EXPECT_NEAR(moved.plan.inner_walls[0].line_m[0].x, 0.4, 1e-12);
  EXPECT_NEAR(moved.plan.inner_doors[0].offset_m, 0.1, 1e-12);
  EXPECT_NEAR(moved.plan.rising_walls[0].gaps[0].from_m, 0.9, 1e-12);
  EXPECT_NEAR(moved.plan.radiators[0].line_m[1].x, 0.4, 1e-12);
  // A corner pulled out turns the west wall: the line's start goes with it.
  const Job job = withDoor();
  const Job pulled = doneWell(moveCorner(job, 0, 0, {-0.5, 0.0}));
  const auto doorAt = [](const Job& j) {
    const auto& line = j.plan.inner_walls[0].line_m;
    const double length = geometry::distance(line[0], line[1]);
    const double along = j.plan.inner_doors[0].offset_m + j.plan.inner_doors[0].width_m / 2.0;
    return geometry::lerp(line[0], line[1], along / length);
  };
  EXPECT_GT(geometry::distance(pulled.plan.inner_walls[0].line_m[0], Point{0.3, 3.0}), 0.1);
  EXPECT_NEAR(doorAt(pulled).x, doorAt(job).x,
              0.02);  // square onto the line, which turned a little
}

TEST(Outline, LeavesDoorsInsideWhereTheyAreWhenACornerGoes) {
  Job job = PlanBuilder::outline({{0, 0}, {10, 0}, {10, 8}, {0, 8}, {-1, 4}});
  for (Wall& wall : job.plan.rings[0].walls) wall.thickness_m = 0.3;
  const double face = (0.3 * std::sqrt(17.0) - 3.0) / 4.0;  // of the last wall, at y = 3
  InnerWall across;
  across.id = "across";
  across.line_m = {{face, 3.0}, {5.0, 3.0}};
  job.plan.inner_walls = {across};
  job.plan.inner_doors = {{"door", "across", 2.0, 0.7}};
  const Plan straight = doneWell(removeCorner(job, 0, 4)).plan;
  EXPECT_NEAR(straight.inner_walls[0].line_m[0].x, 0.3, 1e-12);
  EXPECT_NEAR(straight.inner_doors[0].offset_m, 2.0 - (0.3 - face), 1e-12);
}

TEST(Straighten, ATracedRectangle) {
  const Job job = PlanBuilder::outline({{0.02, -0.03}, {10.05, 0.04}, {9.97, 8.02}, {-0.01, 7.96}});
  const Polygon c = doneWell(straighten(job, 0, 3.0)).plan.rings[0].corners;
  expectSquare(c);
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_LT(geometry::distance(c[i], job.plan.rings[0].corners[i]), 0.08) << i;
  }
}

TEST(Straighten, ExactOnesStayAsTheyAre) {
  for (const Job& job : {PlanBuilder::rectangle().job(), PlanBuilder::lShape().job()}) {
    const Polygon c = doneWell(straighten(job, 0, 5.0)).plan.rings[0].corners;
    for (std::size_t i = 0; i < c.size(); ++i) {
      EXPECT_LT(geometry::distance(c[i], job.plan.rings[0].corners[i]), 1e-9);
    }
  }
}

// A splayed bay: its corners of 45 degrees are meant, and stay.
TEST(Straighten, ABayKeepsItsSplay) {
  const Job job = PlanBuilder::outline(
      {{0, 0}, {3, 0.03}, {3.6, -0.57}, {5.4, -0.6}, {6.0, 0.01}, {10, 0}, {10.04, 8}, {0, 8.03}});
  const Polygon c = doneWell(straighten(job, 0, 4.0)).plan.rings[0].corners;
  for (const std::size_t i : {0U, 5U, 6U, 7U}) EXPECT_NEAR(turnAt_deg(c, i), 90.0, 1e-7) << i;
  for (const std::size_t i : {1U, 2U, 3U, 4U}) EXPECT_NEAR(std::abs(turnAt_deg(c, i)), 45, 4.0);
}

TEST(Straighten, AWallThatHardlyTurnsGoesStraightOn) {
  const Job job = PlanBuilder::outline({{0, 0}, {5, 0.06}, {10, 0}, {10, 8}, {0, 8}});
  const Polygon c = doneWell(straighten(job, 0, 3.0)).plan.rings[0].corners;
  EXPECT_NEAR(turnAt_deg(c, 1), 0.0, 1e-7);
  EXPECT_NEAR(c[0].y, 0.02, 1e-9);  // the mean of the three
  EXPECT_NEAR(c[1].y, 0.02, 1e-9);
}

TEST(Straighten, TurnedHousesKeepTheirTurnAndLengths) {
  support::forEachSeed(200, [](std::uint64_t seed) {
    support::Random random(seed);
    const double turn = random.uniform(0.0, 6.28);
    Polygon corners;
    for (const Point p : Polygon{{0, 0}, {9, 0}, {9, 4}, {6, 4}, {6, 7}, {0, 7}}) {
      const Point q{p.x * std::cos(turn) - p.y * std::sin(turn),
                    p.x * std::sin(turn) + p.y * std::cos(turn)};
      corners.push_back({q.x + random.uniform(-0.03, 0.03), q.y + random.uniform(-0.03, 0.03)});
    }
    const Job job = PlanBuilder::outline(corners);
    const Polygon c = doneWell(straighten(job, 0, 4.0)).plan.rings[0].corners;
    expectSquare(c);
    for (std::size_t i = 0; i < c.size(); ++i) {
      EXPECT_LT(geometry::distance(c[i], corners[i]), 0.12) << i;
      const double was = geometry::distance(corners[i], corners[(i + 1) % c.size()]);
      EXPECT_NEAR(geometry::distance(c[i], c[(i + 1) % c.size()]), was, 0.08) << i;
    }
  });
}

TEST(Straighten, RefusesWhatItCannotDo) {
  const Job job = PlanBuilder::rectangle();
  EXPECT_EQ(problemIdOf(straighten(job, 0, 0.0)), "plan.edit.not-a-place");
  EXPECT_EQ(problemIdOf(straighten(job, 0, 30.0)), "plan.edit.not-a-place");
  EXPECT_EQ(problemIdOf(straighten(job, 0, NAN)), "plan.edit.not-a-place");
  EXPECT_EQ(problemIdOf(straighten(job, 1, 3.0)), "plan.edit.no-edge");
}

TEST(RectangleHouse, WithAWallToEachSide) {
  Job empty;
  empty.id = "new";
  const Job house = doneWell(rectangleHouse(empty, 10.0, 8.0));
  ASSERT_EQ(house.plan.rings.size(), 1U);
  EXPECT_EQ(house.plan.rings[0].corners, (Polygon{{0, 0}, {10, 0}, {10, 8}, {0, 8}}));
  EXPECT_EQ(house.plan.rings[0].walls.size(), 4U);
  EXPECT_EQ(unsoundIn(house), 0U);
  EXPECT_EQ(problemIdOf(rectangleHouse(house, 10.0, 8.0)), "plan.edit.has-outline");
  EXPECT_EQ(problemIdOf(rectangleHouse(empty, 0.0, 8.0)), "plan.edit.not-a-place");
  EXPECT_EQ(problemIdOf(rectangleHouse(empty, 1e9, 8.0)), "plan.edit.not-a-place");
  EXPECT_EQ(problemIdOf(rectangleHouse(empty, 1e-4, 8.0)), "plan.ring.short-edge");
}

TEST(AddOutline, EitherWayRound) {
  Job empty;
  empty.id = "new";
  const Job house = doneWell(addOutline(empty, {{0, 0}, {0, 8}, {10, 8}, {10, 0}}));
  EXPECT_GT(geometry::signedArea(house.plan.rings[0].corners), 0.0);
  EXPECT_EQ(problemIdOf(addOutline(empty, {{0, 0}, {1, 0}})), "plan.ring.corners");
}

TEST(Courtyards, ComeAndGoWithWhatStandsInThem) {
  const Job house = PlanBuilder::rectangle(14, 12);
  Job court = doneWell(addCourtyard(house, {{5, 5}, {9, 5}, {9, 8}, {5, 8}}));
  ASSERT_EQ(court.plan.rings.size(), 2U);
  EXPECT_LT(geometry::signedArea(court.plan.rings[1].corners), 0.0);
  court = doneWell(addCourtyard(court, {{1, 1}, {2, 1}, {2, 2}, {1, 2}}));
  court.plan.openings.push_back({"in", "", OpeningKind::window, Opens::yes, {1, 0, 0.5}, 1.0});
  court.plan.openings.push_back({"second", "", OpeningKind::window, Opens::yes, {2, 0, 0}, 0.5});
  court.plan.dimensions.push_back({"d", {"in"}, {"w0.0"}, 0.2});
  const Job less = doneWell(removeRing(court, 1));
  ASSERT_EQ(less.plan.openings.size(), 1U);
  EXPECT_EQ(less.plan.openings[0].at.ring, 1);
  EXPECT_TRUE(less.plan.dimensions.empty());
  EXPECT_EQ(problemIdOf(removeRing(court, 0)), "plan.edit.courtyards-first");
  EXPECT_EQ(problemIdOf(removeRing(court, 3)), "plan.edit.no-edge");
  const Job none = doneWell(removeRing(doneWell(removeRing(less, 1)), 0));
  EXPECT_TRUE(none.plan.rings.empty());
}

// ---- the whole plan ----

Job furnished() {
  Job job = PlanBuilder::courtyard()
                .window("w", 0, 2.0, 1.2)
                .window("in", 0, 0.5, 1.0, 1)
                .service("gas", ServiceKind::gas, 1, 3.0)
                .run("gas", {{14, 3}, {20, 3}})
                .radiator("r", 2, 1.0, 1.5)
                .innerWall("iw", {{5, 0.35}, {5, 4}})
                .sump("s", 0, 20.0)
                .with([](Job& j) {
                  j.plan.rings[0].walls[0].ground_points = {{1, -0.2, GroundSurface::soil},
                                                            {9, -0.3, GroundSurface::paving}};
                  j.plan.dimensions.push_back({"d", {"w0.0"}, {"w", ThingEnd::start}, -0.5});
                  j.plan.inner_doors.push_back({"door", "iw", 1.0, 0.8});
                  j.plan.wall_features.push_back({"f", "", WallFeatureKind::pier, {0, 2, 8}, 0.4});
                });
  return job;
}

void expectNearJobs(const Job& a, const Job& b) {
  const auto near = [](Point p, Point q) {
    EXPECT_NEAR(p.x, q.x, 3e-9);  // each verb rounds to the nanometre
    EXPECT_NEAR(p.y, q.y, 3e-9);
  };
  std::vector<Point> points;
  Job x = a;
  forEachPoint(x, [&](Point& p) { points.push_back(p); });
  std::size_t i = 0;
  Job y = b;
  forEachPoint(y, [&](Point& p) { near(points.at(i++), p); });
  for (const char* id : {"w", "in", "r", "f", "door"}) {
    for (const ThingEnd end : {ThingEnd::start, ThingEnd::end}) {
      near(*placeOf(a, {id, end}), *placeOf(b, {id, end}));
    }
  }
  near(*placeOf(a, {"s"}), *placeOf(b, {"s"}));
  for (std::size_t w = 0; w < 4; ++w) {
    EXPECT_EQ(a.plan.rings[0].walls[w].id, b.plan.rings[0].walls[w].id);
  }
}

TEST(MirrorPlan, EverythingIsWhereTheMirrorShowsIt) {
  const Job job = furnished();
  const Job mirrored = doneWell(mirrorPlan(job));
  EXPECT_EQ(unsoundIn(mirrored), unsoundIn(job));
  const auto flipped = [](Point p) { return Point{14 - p.x, p.y}; };
  const auto expectFlipped = [&](const char* id, ThingEnd was, ThingEnd is) {
    const Point a = flipped(*placeOf(job, {id, was}));
    const Point b = *placeOf(mirrored, {id, is});
    EXPECT_LT(geometry::distance(a, b), 1e-9) << id;
  };
  for (const char* id : {"w", "in", "r", "f", "w0.0", "w1.2"}) {  // their ends are now counted
    expectFlipped(id, ThingEnd::start, ThingEnd::end);            // from the other corner
    expectFlipped(id, ThingEnd::end, ThingEnd::start);
  }
  expectFlipped("gas", ThingEnd::start, ThingEnd::start);
  expectFlipped("door", ThingEnd::start, ThingEnd::start);
  expectFlipped("s", ThingEnd::start, ThingEnd::start);
  EXPECT_EQ(mirrored.plan.dimensions[0].from.end, ThingEnd::end);
  EXPECT_EQ(mirrored.plan.dimensions[0].off_m, 0.5);
  for (const Wall& w : mirrored.plan.rings[0].walls) {
    if (w.id != "w0.0") continue;
    ASSERT_EQ(w.ground_points.size(), 2U);
    EXPECT_NEAR(w.ground_points[0].offset_m, 5.0, 1e-9);
    EXPECT_EQ(w.ground_points[0].surface, GroundSurface::paving);
  }
}

TEST(MirrorPlan, TwiceIsAsItWas) {
  const Job job = furnished();
  expectNearJobs(doneWell(mirrorPlan(doneWell(mirrorPlan(job)))), job);
}

TEST(MirrorPlan, NeedsAnOutline) {
  EXPECT_EQ(problemIdOf(mirrorPlan(Job{})), "plan.edit.no-edge");
  Job open = furnished();
  open.plan.rings[0].closed = false;
  EXPECT_EQ(problemIdOf(mirrorPlan(open)), "plan.edit.no-edge");
}

TEST(TurnPlan, AQuarterIsExactAndFourAreNone) {
  const Job job = PlanBuilder::rectangle(10, 8).window("w", 0, 2.0, 1.2);
  const Job turned = doneWell(turnPlan(job, 90));
  EXPECT_EQ(turned.plan.rings[0].corners, (Polygon{{9, -1}, {9, 9}, {1, 9}, {1, -1}}));
  EXPECT_EQ(turned.plan.north_deg, -90.0);
  EXPECT_EQ(turned.plan.openings, job.plan.openings);
  EXPECT_EQ(doneWell(turnPlan(turned, -90)), job);
  EXPECT_EQ(doneWell(turnPlan(job, 360)), job);
}

TEST(TurnPlan, ByAnyAngleAndBack) {
  const Job job = furnished();
  for (const double angle : {12.5, -73.0, 181.0, 725.0}) {
    expectNearJobs(doneWell(turnPlan(doneWell(turnPlan(job, angle)), -angle)), job);
  }
  EXPECT_EQ(problemIdOf(turnPlan(job, NAN)), "plan.edit.not-a-place");
}

// ---- field book and dimensions under the outline's verbs ----

TEST(FieldBook, SaysWhatWasMeasuredNotWhatWasDragged) {
  Job job = PlanBuilder::rectangle();
  job.plan.rings[0].taped = {{90, 10}, {0, 8}, {270, 10}, {180, 8}};
  job.plan.rings[0].shared_by = Sharing::compass_rule;
  const Job moved = doneWell(moveCorner(job, 0, 1, {10.5, 0}));
  EXPECT_TRUE(moved.plan.rings[0].taped.empty());
  EXPECT_EQ(moved.plan.rings[0].shared_by, Sharing::not_shared);
  EXPECT_EQ(doneWell(moveCorner(job, 0, 1, {10, 0})), job);  // not moved at all
}

TEST(Dimensions, OfAWallThatGoesGoWithIt) {
  Job job = PlanBuilder::outline({{0, 0}, {10, 0}, {10, 8}, {5, 9}, {0, 8}});
  job.plan.dimensions.push_back({"d", {"w0.3"}, {"w0.0"}, 0.2});
  job.plan.dimensions.push_back({"e", {"w0.1"}, {"w0.0"}, 0.2});
  const Job removed = doneWell(removeCorner(job, 0, 3));
  for (const Dimension& d : removed.plan.dimensions) EXPECT_TRUE(placeOf(removed, d.from));
  EXPECT_EQ(removed.plan.dimensions.back().id, "e");
}

// ---- facts ----

TEST(FactEdits, PutAPartInPlaceOfTheOld) {
  const Job job = PlanBuilder::rectangle();
  House house = job.house;
  house.dpc_height_m = 0.05;
  house.appliances.push_back({"a", "", true, ""});
  const Job set = doneWell(setHouse(job, house));
  EXPECT_EQ(set.house.dpc_height_m, 0.05);
  EXPECT_TRUE(set.house.appliances.empty());
  house.standby.state = StandbyState::found;
  EXPECT_EQ(doneWell(setHouse(job, house)).looked_for.standby_pipe, Looked::present);
  Permissions permissions;
  permissions.flats = YesNo::yes;
  EXPECT_EQ(doneWell(setPermissions(job, permissions)).permissions, permissions);
  EXPECT_EQ(doneWell(setNorth(job, -12.5)).plan.north_deg, -12.5);
  EXPECT_EQ(problemIdOf(setNorth(job, NAN)), "plan.edit.not-a-place");
  EXPECT_EQ(doneWell(setBarrel(job, 0.6)).design.barrel_length_m, 0.6);
  EXPECT_EQ(problemIdOf(setBarrel(job, 0.0)), "plan.barrel.length");
  const Job drilled = doneWell(setDrill(job, 152.0, std::nullopt, 0.6));
  EXPECT_EQ(drilled.design.core_mm, 152.0);
  EXPECT_FALSE(drilled.design.pipe_od_mm);
  EXPECT_FALSE(doneWell(setDrill(drilled, std::nullopt, 110.0, std::nullopt)).design.core_mm);
  EXPECT_EQ(problemIdOf(setDrill(job, 10.0, std::nullopt, std::nullopt)), "plan.core.size");
  EXPECT_EQ(problemIdOf(setDrill(job, std::nullopt, 0.0, std::nullopt)), "plan.pipe.none");
  EXPECT_EQ(problemIdOf(setDrill(job, std::nullopt, std::nullopt, -1.0)), "plan.barrel.length");
  EXPECT_EQ(doneWell(setPhotos(job, {"front.jpg"})).photos.size(), 1U);
  EXPECT_EQ(problemIdOf(setPhotos(job, {"\x01"})), "plan.edit.not-text");
  EXPECT_EQ(drawnOfKind(job, "openings"), job.plan.openings.size());
  EXPECT_EQ(drawnOfKind(job, "what"), 0U);
  Underlay picture;
  picture.path = "estate.png";
  EXPECT_EQ(doneWell(setUnderlay(job, picture)).plan.underlay, picture);
  picture.fade = 2.0;
  EXPECT_EQ(problemIdOf(setUnderlay(job, picture)), "plan.edit.not-a-place");
  EXPECT_FALSE(doneWell(setUnderlay(job, std::nullopt)).plan.underlay);
  Heading heading = headingOf(job);
  heading.address = "9 Invented Lane";
  heading.surveyed_on = "2026-03-01";
  EXPECT_EQ(headingOf(doneWell(setHeading(job, heading))), heading);
  heading.surveyed_on = "soon";
  EXPECT_EQ(problemIdOf(setHeading(job, heading)), "plan.date.bad");
  LookedFor looked;
  EXPECT_EQ(doneWell(setLookedFor(job, looked)).looked_for, looked);
}

}  // namespace
}  // namespace sumpwright::plan
