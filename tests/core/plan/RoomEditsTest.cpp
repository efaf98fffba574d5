// Rooms found from walls, against a slow twin that samples the plan on a grid and floods it.

#include <algorithm>
#include <cmath>

#include "core/plan/EditChecks.h"
#include "geometry/Distance.h"
#include "geometry/Shapes.h"
#include "plan/Dimensions.h"
#include "plan/RoomEdits.h"
#include "plan/ThingEdits.h"
#include "support/PlanBuilder.h"
#include "support/Seed.h"

namespace sumpwright::plan {
namespace {

using geometry::Polygon;
using support::PlanBuilder;

std::vector<double> areasOf(const std::vector<Polygon>& outlines) {
  std::vector<double> areas;
  for (const Polygon& p : outlines) areas.push_back(geometry::signedArea(p));
  std::sort(areas.begin(), areas.end());
  return areas;
}

std::vector<Polygon> found(const Job& job) {
  const auto rooms = findRooms(job);
  EXPECT_TRUE(rooms.ok());
  return rooms.ok() ? *rooms : std::vector<Polygon>{};
}

TEST(FindRooms, OneWithinBareWalls) {
  const auto rooms = found(PlanBuilder::rectangle());
  ASSERT_EQ(rooms.size(), 1U);
  EXPECT_EQ(rooms[0], (Polygon{{0.35, 0.35}, {9.65, 0.35}, {9.65, 7.65}, {0.35, 7.65}}));
}

TEST(FindRooms, AnInnerCornerIsFilled) {
  const auto rooms = found(PlanBuilder::lShape());
  ASSERT_EQ(rooms.size(), 1U);
  EXPECT_EQ(rooms[0].size(), 6U);
  EXPECT_NEAR(geometry::signedArea(rooms[0]), 9.3 * 4.3 + 5.3 * 3.0, 1e-6);
}

TEST(FindRooms, WallsOfTheirOwnThickness) {
  const Job job = PlanBuilder::rectangle().wall(1, [](Wall& w) { w.thickness_m = 0.5; });
  EXPECT_NEAR(areasOf(found(job))[0], 9.15 * 7.3, 1e-6);
}

TEST(FindRooms, APartitionMakesTwo) {
  const Job job = PlanBuilder::rectangle().innerWall("iw", {{4, 0.35}, {4, 7.65}});
  const auto rooms = found(job);
  ASSERT_EQ(rooms.size(), 2U);
  EXPECT_EQ(rooms[0], (Polygon{{0.35, 0.35}, {3.95, 0.35}, {3.95, 7.65}, {0.35, 7.65}}));
  EXPECT_EQ(rooms[1], (Polygon{{4.05, 0.35}, {9.65, 0.35}, {9.65, 7.65}, {4.05, 7.65}}));
}

/// Ends right on an inner face, which rounding puts to either side of it.
TEST(FindRooms, WallsThatEndOnTheFacePartRooms) {
  const Job job =
      PlanBuilder::outline({{0, 0}, {15.6, 0}, {15.6, 9.5}, {10.7, 9.5}, {10.7, 6.9}, {0, 6.9}})
          .innerWall("a", {{3.8, 0.35}, {3.8, 6.55}})
          .innerWall("b", {{6, 0.35}, {6, 6.55}})
          .innerWall("c", {{11.2, 0.35}, {11.2, 9.15}})
          .innerWall("d", {{15.25, 4.5}, {11.2, 4.5}})
          .innerWall("e", {{0.35, 3.4}, {3.8, 3.4}});
  EXPECT_EQ(found(job).size(), 6U);
}

TEST(FindRooms, AlmostThereIsThere) {
  for (const double short_m : {0.0, 0.02, 0.045}) {
    const Job job =
        PlanBuilder::rectangle().innerWall("iw", {{4, 0.35 + short_m}, {4, 7.65 - short_m}});
    EXPECT_EQ(found(job).size(), 2U) << short_m;
  }
  const Job gap = PlanBuilder::rectangle().innerWall("iw", {{4, 0.35}, {4, 7.5}});
  EXPECT_EQ(found(gap).size(), 1U);
}

// Two walls that meet at their ends, on centre lines: the corner between them is wall too.
TEST(FindRooms, CornersOfInnerWallsClose) {
  const Job two = PlanBuilder::rectangle()
                      .innerWall("a", {{4, 0.35}, {4, 3}})
                      .innerWall("b", {{4, 3}, {0.35, 3}});
  const Job one = PlanBuilder::rectangle().innerWall("a", {{4, 0.35}, {4, 3}, {0.35, 3}});
  const double inner = 3.6 * 2.6;
  const double rest = 9.3 * 7.3 - 3.7 * 2.7;
  for (const Job& job : {two, one}) {
    const auto areas = areasOf(found(job));
    ASSERT_EQ(areas.size(), 2U);
    EXPECT_NEAR(areas[0], inner, 1e-6);
    EXPECT_NEAR(areas[1], rest, 1e-6);
  }
}

TEST(FindRooms, AWallThatStandsFreeMakesNone) {
  const Job job = PlanBuilder::rectangle().innerWall("a", {{4, 3}, {6, 3}});
  const auto rooms = found(job);
  ASSERT_EQ(rooms.size(), 1U);
  EXPECT_EQ(rooms[0].size(), 4U);
}

TEST(FindRooms, RoundACourtyardNoOutlineRunsOverIt) {
  const Job job = PlanBuilder::courtyard().noRooms();
  const auto rooms = found(job);
  ASSERT_EQ(rooms.size(), 2U);
  const double court = (4 + 0.7) * (3 + 0.7);
  const auto areas = areasOf(rooms);
  EXPECT_NEAR(areas[0] + areas[1], 13.3 * 11.3 - court, 1e-5);
  const Job made = doneWell(roomsFromWalls(job));
  EXPECT_EQ(unsoundIn(made), 0U);
}

void expectNoneOverAnother(const std::vector<Polygon>& outlines) {
  for (std::size_t i = 0; i < outlines.size(); ++i) {
    for (std::size_t k = i + 1; k < outlines.size(); ++k) {
      EXPECT_LT(geometry::overlapArea(outlines[i], outlines[k]), 1e-6) << i << " and " << k;
    }
  }
}

TEST(FindRooms, RoundARoomInTheMiddleNoOutlineRunsOverIt) {
  const Job job =
      PlanBuilder::rectangle().noRooms().innerWall("box", {{4, 3}, {6, 3}, {6, 5}, {4, 5}, {4, 3}});
  const auto rooms = found(job);
  ASSERT_EQ(rooms.size(), 3U);
  expectNoneOverAnother(rooms);
  double sum = 0.0;
  for (const double area : areasOf(rooms)) sum += area;
  EXPECT_NEAR(areasOf(rooms)[0], 1.9 * 1.9, 1e-5);
  EXPECT_NEAR(sum, 9.3 * 7.3 - 2.1 * 2.1 + 1.9 * 1.9, 1e-5);
  EXPECT_EQ(unsoundIn(doneWell(roomsFromWalls(job))), 0U);
}

TEST(FindRooms, RoomsWithinRoomsWithinRooms) {
  const Job job = PlanBuilder::rectangle()
                      .noRooms()
                      .innerWall("in", {{4.5, 3.5}, {5.5, 3.5}, {5.5, 4.5}, {4.5, 4.5}, {4.5, 3.5}})
                      .innerWall("out", {{3, 2}, {7, 2}, {7, 6}, {3, 6}, {3, 2}})
                      .innerWall("far", {{1, 1}, {2, 1}, {2, 2}, {1, 2}, {1, 1}});
  const auto rooms = found(job);
  expectNoneOverAnother(rooms);
  double sum = 0.0;
  for (const double area : areasOf(rooms)) sum += area;
  const auto band = [](double side) {
    return (side + 0.1) * (side + 0.1) - (side - 0.1) * (side - 0.1);
  };
  EXPECT_NEAR(sum, 9.3 * 7.3 - band(1) - band(4) - band(1), 1e-4);
}

TEST(FindRooms, NeedsASoundOutline) {
  Job open = PlanBuilder::rectangle();
  open.plan.rings[0].closed = false;
  EXPECT_FALSE(findRooms(open).ok());
  EXPECT_FALSE(findRooms(PlanBuilder::outline({{0, 0}, {9, 8}, {9, 0}, {0, 8}}).job()).ok());
  EXPECT_FALSE(findRooms(Job{}).ok());
}

TEST(RoomsFromWalls, KeepNamesAndUsesOfThoseThatAreThere) {
  const Job job = PlanBuilder::rectangle()
                      .noRooms()
                      .room("kitchen", RoomUse::kitchen, {{1, 1}, {3, 1}, {3, 3}, {1, 3}})
                      .innerWall("iw", {{4, 0.35}, {4, 7.65}});
  const Job made = doneWell(roomsFromWalls(job));
  ASSERT_EQ(made.plan.rooms.size(), 2U);
  EXPECT_EQ(made.plan.rooms[0].id, "kitchen");
  EXPECT_EQ(made.plan.rooms[0].use, RoomUse::kitchen);
  EXPECT_EQ(made.plan.rooms[0].outline_m.front(), (Point{0.35, 0.35}));
  EXPECT_EQ(made.plan.rooms[1].use, RoomUse::unknown);
  EXPECT_EQ(unsoundIn(made), 0U);
  EXPECT_EQ(doneWell(roomsFromWalls(made)), made);  // and once more changes nothing
}

TEST(RoomsFromWalls, LeaveRoomsThatWereParted) {
  const Job job =
      PlanBuilder::rectangle()
          .noRooms()
          .room("a", RoomUse::kitchen, {{0.35, 0.35}, {5, 0.35}, {5, 7.65}, {0.35, 7.65}})
          .room("b", RoomUse::dining, {{5, 0.35}, {9.65, 0.35}, {9.65, 7.65}, {5, 7.65}});
  EXPECT_EQ(doneWell(roomsFromWalls(job)), job);
}

TEST(FloorZoneFromWalls, FillsWhatNoZoneCovers) {
  const Job bare = PlanBuilder::rectangle().noZones();
  const Job whole = doneWell(floorZoneFromWalls(bare));
  ASSERT_EQ(whole.plan.floor_zones.size(), 1U);
  EXPECT_NEAR(geometry::signedArea(whole.plan.floor_zones[0].outline_m), 9.3 * 7.3, 1e-6);
  EXPECT_EQ(problemIdOf(floorZoneFromWalls(whole)), "plan.edit.floor-whole");
  const Job part = PlanBuilder::rectangle().noZones().zone(
      "old", FloorKind::suspended_timber, {{0.35, 0.35}, {4, 0.35}, {4, 7.65}, {0.35, 7.65}});
  const Job both = doneWell(floorZoneFromWalls(part));
  ASSERT_EQ(both.plan.floor_zones.size(), 2U);
  EXPECT_NEAR(geometry::signedArea(both.plan.floor_zones[1].outline_m), 5.65 * 7.3, 1e-6);
  EXPECT_EQ(unsoundIn(both), 0U);
}

TEST(RoomsFromWalls, ARoomThatAWallNowPartsIsOneOfTheTwo) {
  const Job whole = doneWell(roomsFromWalls(PlanBuilder::rectangle().noRooms()));
  ASSERT_EQ(whole.plan.rooms.size(), 1U);
  const Job parted =
      doneWell(addThing(whole, InnerWall{"iw", {{5, 0.35}, {5, 7.65}}, 0.1, BelowFloor::unknown}));
  const Job made = doneWell(roomsFromWalls(parted));
  ASSERT_EQ(made.plan.rooms.size(), 2U);
  EXPECT_EQ(made.plan.rooms[0].id, whole.plan.rooms[0].id);
  EXPECT_EQ(unsoundIn(made), 0U);
}

TEST(FloorZoneFromWalls, LeavesAZoneInTheMiddleAlone) {
  const Job middle = PlanBuilder::rectangle().noZones().zone("old", FloorKind::suspended_timber,
                                                             {{4, 3}, {6, 3}, {6, 5}, {4, 5}});
  const Job all = doneWell(floorZoneFromWalls(middle));
  std::vector<Polygon> outlines;
  double sum = 0.0;
  for (const FloorZone& zone : all.plan.floor_zones) {
    outlines.push_back(zone.outline_m);
    sum += std::abs(geometry::signedArea(zone.outline_m));
  }
  ASSERT_EQ(outlines.size(), 3U);
  expectNoneOverAnother(outlines);
  EXPECT_NEAR(sum, 9.3 * 7.3, 1e-5);
  EXPECT_EQ(unsoundIn(all), 0U);
  EXPECT_EQ(problemIdOf(floorZoneFromWalls(all)), "plan.edit.floor-whole");
}

// ---- the sampled twin ----

/// Areas of what is left when every grid point within a wall is taken out, largest last.
class FloodedTwin {
 public:
  FloodedTwin(const Job& job, double step) : m_job(job), m_step(step) {}

  std::vector<double> areas() {
    scan();
    std::vector<double> result;
    for (std::size_t i = 0; i < m_free.size(); ++i) {
      if (m_free[i]) result.push_back(static_cast<double>(flood(i)) * m_step * m_step);
    }
    std::sort(result.begin(), result.end());
    return result;
  }

 private:
  bool isFree(Point p) const {
    const auto& rings = m_job.plan.rings;
    if (!geometry::contains(rings[0].corners, p)) return false;
    for (const Ring& ring : rings) {
      for (std::size_t e = 0; e < edgeCount(ring); ++e) {
        if (inBand(edgeOf(ring, e), 0.0, *ring.walls[e].thickness_m, p)) return false;
      }
    }
    for (const InnerWall& w : m_job.plan.inner_walls) {
      const double half = w.thickness_m / 2.0;
      if (inBand({w.line_m[0], w.line_m[1]}, half, half, p)) return false;
    }
    return true;
  }

  static bool inBand(const geometry::Segment& s, double right, double left, Point p) {
    const double length = geometry::distance(s.a, s.b);
    const geometry::Vec along = (1.0 / length) * (s.b - s.a);
    const double u = geometry::dot(p - s.a, along);
    const double v = geometry::cross(along, p - s.a);
    return u >= 0.0 && u <= length && v >= -right && v <= left;
  }

  void scan() {
    m_wide = static_cast<std::size_t>(std::ceil(kWide / m_step));
    m_free.assign(m_wide * m_wide, false);
    for (std::size_t i = 0; i < m_free.size(); ++i) {
      const auto column = static_cast<double>(i % m_wide);
      const auto row = static_cast<double>(i / m_wide);
      m_free[i] = isFree({(column + 0.5) * m_step, (row + 0.5) * m_step});
    }
  }

  std::size_t flood(std::size_t start) {
    std::vector<std::size_t> open{start};
    m_free[start] = false;
    std::size_t count = 0;
    while (!open.empty()) {
      const std::size_t i = open.back();
      open.pop_back();
      ++count;
      for (const std::size_t next : {i + 1, i - 1, i + m_wide, i - m_wide}) {
        if (next >= m_free.size() || !m_free[next]) continue;
        m_free[next] = false;
        open.push_back(next);
      }
    }
    return count;
  }

  static constexpr double kWide = 12.5;
  const Job& m_job;
  double m_step;
  std::size_t m_wide = 0;
  std::vector<bool> m_free;
};

/// A house cut by walls from side to side, each ending at the inner faces or at a wall before.
Job randomlyParted(support::Random& random) {
  PlanBuilder house = PlanBuilder::rectangle(random.uniform(7, 12), random.uniform(6, 11));
  Job job = house;
  for (Wall& w : job.plan.rings[0].walls) w.thickness_m = random.uniform(0.2, 0.5);
  const auto& walls = job.plan.rings[0].walls;
  const Point high = job.plan.rings[0].corners[2];
  const double left = *walls[3].thickness_m;
  const double right = high.x - *walls[1].thickness_m;
  const double low = *walls[0].thickness_m;
  const double top = high.y - *walls[2].thickness_m;
  const double y = random.uniform(low + 1.5, top - 1.5);
  const double skew = random.uniform(-0.6, 0.6);
  const auto add = [&](const char* id, Point a, Point b) {
    job.plan.inner_walls.push_back({id, {a, b}, random.uniform(0.08, 0.25), BelowFloor::unknown});
  };
  add("across", {left - 0.05, y - skew}, {right + 0.05, y + skew});
  const auto yAt = [&](double x) {
    return y - skew + 2.0 * skew * (x - left + 0.05) / (right - left + 0.1);
  };
  for (int i = 0, n = random.between(0, 2); i < n; ++i) {
    const double x = left + (right - left) * (i + 1) / (n + 1);
    add(i == 0 ? "up0" : "up1", {x, yAt(x)}, {x, top + 0.05});
  }
  for (int i = 0, n = random.between(0, 2); i < n; ++i) {
    const double x = left + (right - left) * (i + 1) / (n + 1.3);
    add(i == 0 ? "down0" : "down1", {x, yAt(x)}, {x, low - 0.05});
  }
  return job;
}

TEST(FindRooms, AgreesWithTheFloodedTwin) {
  support::forEachSeed(40, [](std::uint64_t seed) {
    support::Random random(seed);
    const Job job = randomlyParted(random);
    const auto rooms = areasOf(found(job));
    const auto twin = FloodedTwin(job, 0.025).areas();
    ASSERT_EQ(rooms.size(), twin.size());
    for (std::size_t i = 0; i < rooms.size(); ++i) {
      EXPECT_NEAR(rooms[i], twin[i], 0.012 * rooms[i] + 0.05) << i;
    }
    EXPECT_EQ(unsoundIn(doneWell(roomsFromWalls(PlanBuilder::rectangle().with([&](Job& j) {
                j = job;
                j.plan.rooms.clear();
                j.plan.floor_zones.clear();
              })))),
              0U);
  });
}

}  // namespace
}  // namespace sumpwright::plan
