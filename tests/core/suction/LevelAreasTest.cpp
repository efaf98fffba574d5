#include <gtest/gtest.h>

#include <cmath>

#include "geometry/Shapes.h"
#include "suction/Field.h"
#include "suction/LevelAreas.h"
#include "support/Fields.h"

namespace sumpwright::suction {

namespace {

using support::box;
using support::region;

SuctionModel areaFloor() {
  SuctionModel model;
  model.regions = {region(box(0, 0, 8, 6))};
  model.layer = {8e-5, 5e-6};
  return model;
}

template <class Value>
std::vector<double> filledBy(const Network& net, Value value) {
  std::vector<double> values;
  for (std::size_t c = 0; c < net.cells.size(); ++c) {
    values.push_back(value(net.centre(static_cast<int>(c))));
  }
  return values;
}

/// Even-odd.
bool isIn(const LevelArea& area, Point p) {
  bool in = false;
  for (const Polygon& ring : area.rings) in ^= geometry::contains(ring, p);
  return in;
}

TEST(LevelAreas, OfAPlaneEndAtTheLevel) {
  const Network net = networkOf(areaFloor(), 0.1, true);
  const auto areas = areasAbove(net, filledBy(net, [](Point p) { return p.x; }), {6.02, 3.33});
  ASSERT_EQ(areas.size(), 2U);
  EXPECT_EQ(areas[0].level, 3.33);
  for (double y = 0.05; y < 6.0; y += 0.29) {
    EXPECT_FALSE(isIn(areas[0], {3.32, y}));
    EXPECT_TRUE(isIn(areas[0], {3.34, y}));
    EXPECT_TRUE(isIn(areas[0], {7.99, y}));
    EXPECT_FALSE(isIn(areas[1], {6.01, y}));
    EXPECT_TRUE(isIn(areas[1], {6.03, y}));
  }
}

TEST(LevelAreas, HaveFewCornersWhereNothingBends) {
  const Network net = networkOf(areaFloor(), 0.1, true);
  const auto areas = areasAbove(net, filledBy(net, [](Point) { return 7.0; }), {5.0, 10.0});
  ASSERT_EQ(areas[0].rings.size(), 1U);
  EXPECT_LE(areas[0].rings[0].size(), 5U);
  EXPECT_TRUE(areas[1].rings.empty());
}

TEST(LevelAreas, OfAHillAreRoundAndOfAHollowHaveAHole) {
  const Network net = networkOf(areaFloor(), 0.05, true);
  const auto far = [](Point p) { return geometry::distance(p, Point{4, 3}); };
  const auto hill = areasAbove(net, filledBy(net, [&](Point p) { return 9.0 - far(p); }), {7.0});
  ASSERT_EQ(hill[0].rings.size(), 1U);
  EXPECT_NEAR(geometry::signedArea(hill[0].rings[0]), 3.14159265 * 4.0, 0.02);
  const auto hollow = areasAbove(net, filledBy(net, far), {2.0});
  EXPECT_FALSE(isIn(hollow[0], {4.0, 3.0}));
  EXPECT_TRUE(isIn(hollow[0], {6.1, 3.0}));
}

/// Every point of the floor is in the area exactly when its value, read within a room, is so high.
TEST(LevelAreas, KeepToTheirSideOfAWall) {
  for (const double turn : {0.0, 0.31}) {
    const support::Pose pose{turn, {2.0, 1.0}};
    SuctionModel model = areaFloor();
    model.regions = {region(pose(box(0, 0, 8, 6)))};
    model.barriers = {{"wall", pose(Polygon{{5.03, 0.0}, {5.03, 6.0}}), 0.0, {}, 0.0}};
    const FieldSolver solver = FieldSolver::of(model, {.cell_m = 0.1});
    const support::Pose back{-turn, {}};
    const auto local = [&](Point p) { return back(Point{p.x - 2.0, p.y - 1.0}); };
    const auto values =
        filledBy(solver.network(), [&](Point p) { return local(p).x < 5.03 ? 1.0 : 20.0; });
    const auto areas = areasAbove(solver.network(), values, {2.0, 5.0, 10.0});
    for (const LevelArea& area : areas) {
      for (double y = 0.31; y < 5.8; y += 0.1731) {
        EXPECT_FALSE(isIn(area, pose(Point{5.02, y}))) << turn << ' ' << y;
        EXPECT_TRUE(isIn(area, pose(Point{5.04, y}))) << turn << ' ' << y;
      }
    }
  }
}

TEST(LevelAreas, AgreeWithTheFieldAllOverTheFloor) {
  SuctionModel model = areaFloor();
  model.regions[0].edges.assign(4, {2e-6});
  model.barriers = {{"half", {{4.0, 0.0}, {4.0, 3.5}}, 0.0, {}, 0.0}};
  const FieldSolver solver = FieldSolver::of(model, {.cell_m = 0.1});
  const auto unit = solver.unit({{1.0, 1.0}, 0.2});
  ASSERT_TRUE(unit);
  std::vector<double> suction;
  for (const double s : unit->suction) suction.push_back(0.004 * s);
  const auto areas = areasAbove(solver.network(), suction, {5.0, 20.0});
  int seen = 0;
  for (double x = 0.15; x < 7.9; x += 0.23) {
    for (double y = 0.15; y < 5.9; y += 0.23) {
      const double s = *sampleAt(solver.network(), suction, {x, y});
      for (const LevelArea& area : areas) {
        // Straight lines against bilinear sampling: they part within the change over a cell.
        if (std::abs(s - area.level) < 0.1 * area.level) continue;
        EXPECT_EQ(isIn(area, {x, y}), s > area.level) << x << ' ' << y << ' ' << s;
        ++seen;
      }
    }
  }
  EXPECT_GT(seen, 1000);
}

}  // namespace
}  // namespace sumpwright::suction
