// Verbs on the outline: what moves, what stays, what goes along.

#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include "core/plan/EditChecks.h"
#include "plan/DesignEdits.h"
#include "plan/OutlineEdits.h"
#include "plan/PlanCheck.h"
#include "plan/RoomEdits.h"
#include "support/PlanBuilder.h"
#include "support/Seed.h"

namespace sumpwright::plan {
namespace {

using support::PlanBuilder;
using Corners = std::vector<Point>;

const Ring& outer(const Job& job) { return job.plan.rings[0]; }

std::string idOf(const base::Result<Job>& result) {
  return result.ok() ? "" : result.problems().front().message.id;
}

double length_m(const Ring& ring, std::size_t edge) {
  return geometry::distance(ring.corners[edge], ring.corners[(edge + 1) % ring.corners.size()]);
}

/// Where the nearer jamb of an opening stands.
Point placeOf(const Job& job, std::size_t opening) {
  const OnWall& at = job.plan.openings[opening].at;
  const Ring& ring = job.plan.rings[static_cast<std::size_t>(at.ring)];
  const auto edge = static_cast<std::size_t>(at.edge);
  const Point b = ring.corners[(edge + 1) % ring.corners.size()];
  return geometry::lerp(ring.corners[edge], b, at.offset_m / length_m(ring, edge));
}

void expectNear(Point a, Point b) {
  EXPECT_NEAR(a.x, b.x, 1e-9);
  EXPECT_NEAR(a.y, b.y, 1e-9);
}

// ---- corner ----

TEST(MoveCorner, TurnsBothEdgesAndNothingElse) {
  const auto moved = moveCorner(PlanBuilder::rectangle(), 0, 2, {11, 9});
  ASSERT_TRUE(moved);
  EXPECT_EQ(outer(*moved).corners, (Corners{{0, 0}, {10, 0}, {11, 9}, {0, 8}}));
}

TEST(MoveCorner, ThingsKeepTheirDistanceFromTheCornerThatStayed) {
  const Job job = PlanBuilder::rectangle().window("a", 1, 1.0, 1.2).window("b", 2, 2.0, 1.2);
  const auto moved = moveCorner(job, 0, 2, {10, 9});
  ASSERT_TRUE(moved);
  EXPECT_EQ(moved->plan.openings[0].at.offset_m, 1.0);  // from corner 1, which stayed
  const Ring& ring = outer(*moved);                     // from corner 3, which stayed
  EXPECT_NEAR(length_m(ring, 2) - moved->plan.openings[1].at.offset_m, 8.0, 1e-12);
}

TEST(MoveCorner, WhatNoLongerFitsStaysOnItsWall) {
  const Job job = PlanBuilder::rectangle().window("a", 1, 6.5, 1.2);
  const auto moved = moveCorner(job, 0, 2, {10, 5});
  ASSERT_TRUE(moved);
  EXPECT_NEAR(moved->plan.openings[0].at.offset_m, 3.8, 1e-12);
}

/// The same house with the rooms and floors that its walls close off, no others.
Job withRooms(Job job) {
  job.plan.rooms.clear();
  job.plan.floor_zones.clear();
  return doneWell(floorZoneFromWalls(doneWell(roomsFromWalls(job))));
}

/// Both outlines begin wherever they like.
void expectSameOutline(const Corners& is, const Corners& should) {
  ASSERT_EQ(is.size(), should.size());
  for (const Point p : should) {
    double nearest = 1e9;
    for (const Point q : is) nearest = std::min(nearest, geometry::distance(p, q));
    EXPECT_LT(nearest, 2e-3) << p.x << ", " << p.y;  // the walls' ground reaches out 1 mm
  }
}

TEST(MoveCorner, RoomAndFloorGoAlong) {
  support::forEachSeed(100, [](std::uint64_t seed) {
    support::Random random(seed);
    // An outline with a corner that turns inwards; walls of a thickness each.
    Job house = PlanBuilder::outline({{0, 0}, {10, 0}, {10, 8}, {5, 8}, {5, 5}, {0, 5}});
    for (Wall& w : house.plan.rings[0].walls) w.thickness_m = random.uniform(0.2, 0.5);
    const Job before = withRooms(house);
    const int corner = random.between(0, 5);
    const Point at = outer(house).corners[static_cast<std::size_t>(corner)];
    const Point to{at.x + random.uniform(-0.8, 0.8), at.y + random.uniform(-0.8, 0.8)};
    const Job moved = doneWell(moveCorner(before, 0, corner, to));
    const Job fresh = withRooms(doneWell(moveCorner(house, 0, corner, to)));
    expectSameOutline(moved.plan.rooms[0].outline_m, fresh.plan.rooms[0].outline_m);
    expectSameOutline(moved.plan.floor_zones[0].outline_m, fresh.plan.floor_zones[0].outline_m);
  });
}

TEST(MoveCorner, AnInnerWallKeepsItsDistanceFromTheCornerThatStayed) {
  Job job = PlanBuilder::rectangle();
  for (Wall& w : job.plan.rings[0].walls) w.thickness_m = 0.3;
  job.plan.inner_walls.push_back({"i", {{4, 0.3}, {4, 7.7}}, 0.1, BelowFloor::unknown});
  const Job moved = doneWell(moveCorner(job, 0, 2, {10, 9}));
  expectNear(moved.plan.inner_walls[0].line_m[0], {4, 0.3});
  const Point end = moved.plan.inner_walls[0].line_m[1];  // 3.7 m from the inner corner at the left
  EXPECT_NEAR(geometry::distance(end, {0.3, 8.03 - 0.3 * std::hypot(1.0, 0.1)}), 3.7, 1e-9);
}

TEST(MoveCorner, RefusesWhatIsNoPlaceOrNoCorner) {
  const Job job = PlanBuilder::rectangle();
  EXPECT_EQ(idOf(moveCorner(job, 0, 4, {0, 0})), "plan.edit.no-corner");
  EXPECT_EQ(idOf(moveCorner(job, 1, 0, {0, 0})), "plan.edit.no-corner");
  EXPECT_EQ(idOf(moveCorner(job, 0, -1, {0, 0})), "plan.edit.no-corner");
  EXPECT_EQ(idOf(moveCorner(job, 0, 0, {NAN, 0})), "plan.edit.not-a-place");
  EXPECT_EQ(idOf(moveCorner(job, 0, 0, {0, 1e9})), "plan.edit.not-a-place");
  EXPECT_EQ(idOf(moveCorner(job, 0, 0, {10, 0})), "plan.ring.short-edge");
}

// ---- wall ----

TEST(MoveWall, OutwardsTheNeighboursFollow) {
  const auto moved = moveWall(PlanBuilder::rectangle(), 0, 1, 2.0);
  ASSERT_TRUE(moved);
  EXPECT_EQ(outer(*moved).corners, (Corners{{0, 0}, {12, 0}, {12, 8}, {0, 8}}));
}

TEST(MoveWall, NeighboursThingsStayInTheWorld) {
  const Job job = PlanBuilder::rectangle().window("front", 0, 3.0, 1.2).window("rear", 2, 3.0, 1.2);
  const auto moved = moveWall(job, 0, 3, 1.5);  // the west gable
  ASSERT_TRUE(moved);
  expectNear(placeOf(*moved, 0), placeOf(job, 0));
  expectNear(placeOf(*moved, 1), placeOf(job, 1));
  EXPECT_NEAR(moved->plan.openings[0].at.offset_m, 4.5, 1e-12);
}

TEST(MoveWall, ItsOwnThingsGoSquareWithIt) {
  const Job job = PlanBuilder::rectangle().window("w", 1, 3.0, 1.2);
  const auto moved = moveWall(job, 0, 1, 2.0);
  ASSERT_TRUE(moved);
  EXPECT_EQ(moved->plan.openings[0].at.offset_m, 3.0);
}

TEST(MoveWall, SkewNeighboursKeepTheirLines) {
  const Job job = PlanBuilder::outline({{0, 0}, {10, 0}, {8, 6}, {0, 6}});
  const auto moved = moveWall(job, 0, 2, 3.0);
  ASSERT_TRUE(moved);
  expectNear(outer(*moved).corners[2], {7, 9});
  expectNear(outer(*moved).corners[3], {0, 9});
}

TEST(MoveWall, BackAgainIsAsItWas) {
  const Job job = PlanBuilder::lShape().window("w", 3, 0.5, 1.2);
  const auto out = moveWall(job, 0, 4, 0.7);
  ASSERT_TRUE(out);
  const auto back = moveWall(*out, 0, 4, -0.7);
  ASSERT_TRUE(back);
  for (std::size_t i = 0; i < outer(job).corners.size(); ++i) {
    expectNear(outer(*back).corners[i], outer(job).corners[i]);
  }
  EXPECT_NEAR(back->plan.openings[0].at.offset_m, 0.5, 1e-9);
}

// A wall divided in two and one part pulled out is how a porch or bay is drawn.
TEST(MoveWall, WallsAreMadeWhereNeighboursRunOn) {
  const Job job = PlanBuilder::rectangle();
  const auto once = splitWall(job, 0, 0, 3.0);
  ASSERT_TRUE(once);
  const auto twice = splitWall(*once, 0, 1, 2.0);
  ASSERT_TRUE(twice);
  const auto bay = moveWall(*twice, 0, 1, 0.8);
  ASSERT_TRUE(bay);
  EXPECT_EQ(outer(*bay).corners,
            (Corners{{0, 0}, {3, 0}, {3, -0.8}, {5, -0.8}, {5, 0}, {10, 0}, {10, 8}, {0, 8}}));
  std::set<std::string> ids;
  for (const Wall& w : outer(*bay).walls) EXPECT_TRUE(ids.insert(w.id).second) << w.id;
  for (const base::Problem& p : checkJob(*bay)) {
    EXPECT_NE(p.gravity, base::Gravity::unsound) << p.message.id << ' ' << p.pointer;
  }
}

TEST(MoveWall, RoomsGoWithTheInnerFace) {
  const auto moved = moveWall(PlanBuilder::rectangle(), 0, 1, 2.0);
  ASSERT_TRUE(moved);
  double east = 0.0;
  for (const Point& p : moved->plan.rooms[0].outline_m) east = std::max(east, p.x);
  EXPECT_NEAR(east, 12.0 - 0.35, 1e-12);
  for (const base::Problem& p : checkJob(*moved)) {
    EXPECT_NE(p.gravity, base::Gravity::unsound) << p.message.id << ' ' << p.pointer;
  }
}

TEST(MoveWall, OfACourtyardOutwardsMakesItSmaller) {
  const auto moved = moveWall(PlanBuilder::courtyard(), 1, 0, 1.0);  // away from the house
  ASSERT_TRUE(moved);
  double area = 0.0;
  const Corners& c = moved->plan.rings[1].corners;
  for (std::size_t i = 0; i < c.size(); ++i) {
    const Point& b = c[(i + 1) % c.size()];
    area += (c[i].x * b.y - b.x * c[i].y) / 2.0;
  }
  EXPECT_LT(std::abs(area), 12.0 - 1.0);
}

TEST(SetWallLength, ShiftsTheWallAfterIt) {
  const auto longer = setWallLength(PlanBuilder::rectangle(), 0, 0, 11.25);
  ASSERT_TRUE(longer);
  EXPECT_EQ(outer(*longer).corners, (Corners{{0, 0}, {11.25, 0}, {11.25, 8}, {0, 8}}));
  EXPECT_EQ(idOf(setWallLength(PlanBuilder::rectangle(), 0, 0, 0.0)), "plan.edit.not-a-place");
}

TEST(SetWallLength, OfASkewHouseIsExact) {
  const Job job = PlanBuilder::outline({{0, 0}, {10, 1}, {8, 6}, {-1, 7}});
  for (int edge = 0; edge < 4; ++edge) {
    const auto set = setWallLength(job, 0, edge, 7.77);
    ASSERT_TRUE(set) << edge;
    EXPECT_NEAR(length_m(outer(*set), static_cast<std::size_t>(edge)), 7.77, 1e-9) << edge;
  }
}

// ---- splitting and joining ----

TEST(SplitWall, NothingMovesAndThingsKnowTheirPart) {
  const Job job = PlanBuilder::rectangle()
                      .window("a", 0, 1.0, 1.0)
                      .window("b", 0, 5.0, 1.0)
                      .window("c", 2, 1.0, 1.0)
                      .sump("s", 0, 7.0);
  const auto split = splitWall(job, 0, 0, 3.0);
  ASSERT_TRUE(split);
  for (std::size_t i = 0; i < 3; ++i) expectNear(placeOf(*split, i), placeOf(job, i));
  EXPECT_EQ(split->plan.openings[0].at.edge, 0);
  EXPECT_EQ(split->plan.openings[1].at.edge, 1);
  EXPECT_EQ(split->plan.openings[2].at.edge, 3);
  EXPECT_NEAR(split->design.sumps[0].chainage_m, 7.0, 1e-12);
  EXPECT_EQ(outer(*split).walls.size(), 5U);
  EXPECT_NE(outer(*split).walls[0].id, outer(*split).walls[1].id);
}

TEST(SplitWall, NotThroughAWindow) {
  const Job job = PlanBuilder::rectangle().window("a", 0, 2.5, 1.0);
  EXPECT_EQ(idOf(splitWall(job, 0, 0, 3.0)), "plan.edit.split-through");
  EXPECT_TRUE(splitWall(job, 0, 0, 2.5));
  EXPECT_TRUE(splitWall(job, 0, 0, 3.5));
  EXPECT_EQ(idOf(splitWall(job, 0, 0, 0.0)), "plan.ring.short-edge");
  EXPECT_EQ(idOf(splitWall(job, 0, 0, 12.0)), "plan.ring.short-edge");
  EXPECT_EQ(idOf(splitWall(job, 0, 7, 1.0)), "plan.edit.no-edge");
}

TEST(RemoveCorner, UndoesASplit) {
  const Job job = PlanBuilder::rectangle()
                      .window("a", 0, 1.0, 1.0)
                      .window("b", 0, 5.0, 1.0)
                      .window("c", 3, 1.0, 1.0);
  const auto split = splitWall(job, 0, 0, 3.0);
  ASSERT_TRUE(split);
  const auto joined = removeCorner(*split, 0, 1);
  ASSERT_TRUE(joined);
  EXPECT_EQ(outer(*joined).corners, outer(job).corners);
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_EQ(joined->plan.openings[i].at.edge, job.plan.openings[i].at.edge);
    expectNear(placeOf(*joined, i), placeOf(job, i));
  }
}

TEST(RemoveCorner, TheFirstToo) {
  const Job job = PlanBuilder::outline({{0, 0}, {10, 0}, {10, 8}, {0, 8}, {-2, 4}})
                      .window("a", 1, 1.0, 1.0)
                      .window("b", 2, 1.0, 1.0);
  const auto removed = removeCorner(job, 0, 0);
  ASSERT_TRUE(removed);
  EXPECT_EQ(outer(*removed).corners, (Corners{{10, 0}, {10, 8}, {0, 8}, {-2, 4}}));
  EXPECT_EQ(removed->plan.openings[0].at.edge, 0);
  EXPECT_EQ(removed->plan.openings[1].at.edge, 1);
  EXPECT_EQ(outer(*removed).walls[0].id, outer(job).walls[1].id);
  EXPECT_EQ(outer(*removed).walls[3].id, outer(job).walls[0].id);  // the longer of the two
}

TEST(RemoveCorner, RoomAndFloorGoAlong) {
  Job house = PlanBuilder::outline({{0, 0}, {10, 0}, {10, 8}, {5, 9}, {0, 8}});
  for (Wall& w : house.plan.rings[0].walls) w.thickness_m = 0.3;
  const Job removed = doneWell(removeCorner(withRooms(house), 0, 3));
  const Job fresh = withRooms(doneWell(removeCorner(house, 0, 3)));
  expectSameOutline(removed.plan.rooms[0].outline_m, fresh.plan.rooms[0].outline_m);
  expectSameOutline(removed.plan.floor_zones[0].outline_m, fresh.plan.floor_zones[0].outline_m);
}

TEST(RemoveCorner, ThreeAreTheLeast) {
  const Job job = PlanBuilder::outline({{0, 0}, {10, 0}, {5, 8}});
  EXPECT_EQ(idOf(removeCorner(job, 0, 1)), "plan.edit.too-few-corners");
}

// ---- sumps and waivers ----

Waiver waiver(double chainage_m) {
  Waiver w;
  w.id = "wv";
  w.sump = "s";
  w.rule = "openings";
  w.thing = "a";
  w.chainage_m = chainage_m;
  w.reason = "seen on site (invented)";
  w.name = "A. Invented";
  w.date = "2026-03-01";
  return w;
}

TEST(Carried, ASumpStaysOnItsWallAndItsWaiverWithIt) {
  const Job job = PlanBuilder::rectangle().sump("s", 0, 14.0).waiver(waiver(14.0));
  const auto moved = moveWall(job, 0, 3, 1.0);  // the other gable: chainages grow by a metre
  ASSERT_TRUE(moved);
  EXPECT_NEAR(moved->design.sumps[0].chainage_m, 15.0, 1e-12);
  EXPECT_NEAR(moved->design.waivers[0].chainage_m, 15.0, 1e-12);
  EXPECT_FALSE(moved->design.waivers[0].lapsed);
}

TEST(Carried, AWaiverLapsesWhereItsWallMoved) {
  const Job job = PlanBuilder::rectangle().sump("s", 0, 14.0).waiver(waiver(14.0));
  const auto moved = moveWall(job, 0, 1, 0.5);
  ASSERT_TRUE(moved);
  EXPECT_TRUE(moved->design.waivers[0].lapsed);
  const auto within = moveWall(job, 0, 1, 0.005);
  ASSERT_TRUE(within);
  EXPECT_FALSE(within->design.waivers[0].lapsed);
}

// ---- any sequence (seeded) ----

base::Result<Job> randomEdit(support::Random& random, const Job& job) {
  const int count = static_cast<int>(outer(job).corners.size());
  const int at = random.between(0, count - 1);
  switch (random.between(0, 4)) {
    case 0: {
      const Point p = outer(job).corners[static_cast<std::size_t>(at)];
      return moveCorner(job, 0, at,
                        {p.x + random.uniform(-0.4, 0.4), p.y + random.uniform(-0.4, 0.4)});
    }
    case 1:
      return moveWall(job, 0, at, random.uniform(-0.5, 0.5));
    case 2:
      return splitWall(job, 0, at,
                       random.uniform(0.0, length_m(outer(job), static_cast<std::size_t>(at))));
    case 3:
      return removeCorner(job, 0, at);
    default:
      return setWallLength(job, 0, at, random.uniform(2.0, 9.0));
  }
}

void expectInvariants(const Job& job) {
  const Ring& ring = outer(job);
  ASSERT_EQ(ring.walls.size(), ring.corners.size());
  std::set<std::string> ids;
  double round = 0.0;
  for (std::size_t i = 0; i < ring.walls.size(); ++i) {
    EXPECT_TRUE(ids.insert(ring.walls[i].id).second) << ring.walls[i].id;
    EXPECT_GE(length_m(ring, i), 0.001 - 1e-12);
    round += length_m(ring, i);
  }
  for (const Opening& o : job.plan.openings) {
    ASSERT_GE(o.at.edge, 0);
    ASSERT_LT(static_cast<std::size_t>(o.at.edge), ring.corners.size());
    EXPECT_GE(o.at.offset_m, 0.0);
    const double length = length_m(ring, static_cast<std::size_t>(o.at.edge));
    if (o.width_m <= length) {
      EXPECT_LE(o.at.offset_m + o.width_m, length + 1e-9);
    }
  }
  EXPECT_GE(job.design.sumps[0].chainage_m, 0.0);
  EXPECT_LE(job.design.sumps[0].chainage_m, round + 1e-9);
}

TEST(AnySequence, HoldsThePlanTogether) {
  support::forEachSeed(40, [](std::uint64_t seed) {
    support::Random random(seed);
    Job job = PlanBuilder::lShape()
                  .window("a", 0, 2.0, 1.2)
                  .door("b", 1, 1.0)
                  .window("c", 4, 3.0, 0.9)
                  .service("d", ServiceKind::gas, 5, 2.0)
                  .sump("s", 0, 6.0);
    int done = 0;
    for (int i = 0; i < 200 && !testing::Test::HasFailure(); ++i) {
      const auto edited = randomEdit(random, job);
      if (!edited) continue;
      ++done;
      job = *edited;
      expectInvariants(job);
    }
    EXPECT_GT(done, 50);
  });
}

// ---- the ground outside ----

Job withGround(std::vector<GroundPoint> points) {
  return PlanBuilder::rectangle().wall(0, [&](Wall& w) { w.ground_points = points; });
}

std::vector<double> groundOf(const Job& job, std::size_t edge) {
  std::vector<double> offsets;
  for (const GroundPoint& g : job.plan.rings[0].walls[edge].ground_points) {
    offsets.push_back(g.offset_m);
  }
  return offsets;
}

TEST(OutlineEdits, GroundPointsStayOnAWallThatIsShortened) {
  const Job job = withGround({{2.0, -0.2}, {9.0, -0.4}});
  const Job shorter = doneWell(setWallLength(job, 0, 0, 6.0));
  EXPECT_EQ(groundOf(shorter, 0), (std::vector<double>{2.0, 6.0}));
  EXPECT_EQ(unsoundIn(shorter), 0U);
}

TEST(OutlineEdits, GroundPointsAreSharedOutWhereAWallIsSplit) {
  const Job job = withGround({{2.0, -0.2}, {9.0, -0.4}});
  const Job split = doneWell(splitWall(job, 0, 0, 5.0));
  EXPECT_EQ(groundOf(split, 0), (std::vector<double>{2.0}));
  EXPECT_EQ(groundOf(split, 1), (std::vector<double>{4.0}));
  EXPECT_EQ(unsoundIn(split), 0U);
  const Job whole = doneWell(removeCorner(split, 0, 1));
  EXPECT_EQ(groundOf(whole, 0), (std::vector<double>{2.0, 9.0}));
}

}  // namespace
}  // namespace sumpwright::plan
