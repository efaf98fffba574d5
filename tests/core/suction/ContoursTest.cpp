#include <gtest/gtest.h>

#include <algorithm>

#include "geometry/Shapes.h"
#include "suction/Contours.h"
#include "suction/Field.h"
#include "support/Fields.h"

namespace sumpwright::suction {

namespace {

using support::box;
using support::region;

SuctionModel plain() {
  SuctionModel model;
  model.regions = {region(box(0, 0, 8, 6))};
  model.layer = {8e-5, 5e-6};
  return model;
}

template <class Value>
std::vector<double> valued(const Network& net, Value value) {
  std::vector<double> suction;
  for (std::size_t c = 0; c < net.cells.size(); ++c) {
    suction.push_back(value(net.centre(static_cast<int>(c))));
  }
  return suction;
}

TEST(SuctionContours, OfAPlaneIsOneStraightLineFromEdgeToEdge) {
  const Network net = networkOf(plain(), 0.1, true);
  const auto contours = contoursOf(net, valued(net, [](Point p) { return p.x; }), {3.33});
  ASSERT_EQ(contours.size(), 1U);
  EXPECT_FALSE(contours[0].closed);
  for (const Point p : contours[0].line) EXPECT_NEAR(p.x, 3.33, 1e-9);
  const auto [low, high] = std::minmax_element(contours[0].line.begin(), contours[0].line.end(),
                                               [](Point a, Point b) { return a.y < b.y; });
  EXPECT_LE(low->y, 0.0);
  EXPECT_GE(high->y, 6.0);
  // Above lies to the left: the line runs down.
  EXPECT_GT(contours[0].line.front().y, contours[0].line.back().y);
}

TEST(SuctionContours, OfAHillAreClosedAndHoldTheirArea) {
  const Network net = networkOf(plain(), 0.05, true);
  const auto suction = valued(net, [](Point p) {
    return 9.0 - geometry::distance(p, Point{4, 3});
  });
  const auto contours = contoursOf(net, suction, {8.0, 7.0});
  ASSERT_EQ(contours.size(), 2U);
  for (const Contour& contour : contours) {
    ASSERT_TRUE(contour.closed);
    const double r = 9.0 - contour.level_pa;
    EXPECT_NEAR(geometry::signedArea(contour.line), 3.14159265 * r * r, 0.01);  // left: inside
  }
}

TEST(SuctionContours, ASaddleIsParted) {
  const Network net = networkOf(plain(), 0.5, true);
  const auto suction = valued(net, [](Point p) { return (p.x - 4.0) * (p.y - 3.0); });
  const auto contours = contoursOf(net, suction, {0.01});
  ASSERT_EQ(contours.size(), 2U);
  for (const Contour& contour : contours) EXPECT_FALSE(contour.closed);
}

/// Two levels of suction on the two sides of a tight wall: no line between, however the wall runs.
TEST(SuctionContours, NeverCrossABarrier) {
  for (const double lean : {0.0, 0.7, 2.3}) {
    SCOPED_TRACE(lean);
    SuctionModel model = plain();
    model.barriers = {{"w", {{4 - lean, 0}, {4 + lean, 6}}}};
    const FieldSolver solver = FieldSolver::of(model, {.cell_m = 0.1});
    ASSERT_TRUE(solver.ok());
    const auto wall = model.barriers[0].line;
    const auto side = [&](Point p) {
      return geometry::cross(wall[1] - wall[0], p - wall[0]) > 0.0 ? 10.0 : 2.0;
    };
    EXPECT_TRUE(contoursOf(solver.network(), valued(solver.network(), side), {5.0}).empty());
    // And of a real field each line stays on its side.
    const auto unit = solver.unit({{1, 3}, 0.1});
    const double there = *sampleAt(solver.network(), unit->suction, {1.5, 4.5});
    const auto contours = contoursOf(solver.network(), unit->suction, {0.9 * there, there});
    ASSERT_FALSE(contours.empty());
    for (const Contour& contour : contours) {
      for (const Point p : contour.line)
        EXPECT_GE(geometry::cross(wall[1] - wall[0], p - wall[0]), -1e-6);
    }
  }
}

}  // namespace

}  // namespace sumpwright::suction
