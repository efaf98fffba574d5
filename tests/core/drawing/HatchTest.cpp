#include <cmath>
#include <numbers>

#include "core/drawing/Drawn.h"
#include "drawing/Hatch.h"
#include "geometry/Distance.h"
#include "geometry/Shapes.h"
#include "support/Seed.h"

namespace sumpwright::drawing {
namespace {

using geometry::Segment;
using support::Random;

/// A star-shaped polygon: simple, and rarely convex.
std::vector<Point> star(Random& random) {
  const int n = random.between(3, 14);
  const Point centre{random.uniform(-40, 40), random.uniform(-40, 40)};
  std::vector<Point> out;
  for (int i = 0; i < n; ++i) {
    const double angle = 2.0 * std::numbers::pi * i / n;
    const double r = random.uniform(4.0, 30.0);
    out.push_back({centre.x + r * std::cos(angle), centre.y + r * std::sin(angle)});
  }
  return out;
}

bool insideOrOn(const std::vector<Point>& polygon, Point p) {
  geometry::Polyline edge = polygon;
  edge.push_back(polygon.front());
  return geometry::contains(polygon, p) || geometry::distance(p, edge) < 1e-9;
}

TEST(Hatch, LinesLieInsideOnALatticeOfThePageAndFillTheArea) {
  support::forEachSeed(400, [](std::uint64_t seed) {
    Random random(seed);
    const auto polygon = star(random);
    const HatchStyle style{random.uniform(-90, 90), random.uniform(0.3, 2.0)};
    const double angle = style.angle_deg * std::numbers::pi / 180.0;
    double length = 0.0;
    for (const Segment& s : hatch({polygon}, style)) {
      for (double t : {0.0, 0.25, 0.5, 0.75, 1.0}) {
        ASSERT_TRUE(insideOrOn(polygon, geometry::lerp(s.a, s.b, t)));
      }
      const geometry::Vec along = s.b - s.a;
      // Counter-clockwise on a page whose y runs down.
      EXPECT_NEAR(geometry::cross(along, {std::cos(angle), -std::sin(angle)}), 0.0, 1e-9);
      const double across = s.a.x * std::sin(angle) + s.a.y * std::cos(angle);
      EXPECT_NEAR(std::remainder(across, style.spacing_mm), 0.0, 1e-9);
      length += geometry::norm(along);
    }
    // Each line stands for a strip one spacing wide; an edge loses at most half a strip a side.
    geometry::Polyline edge = polygon;
    edge.push_back(polygon.front());
    double outline = 0.0;
    for (std::size_t i = 1; i < edge.size(); ++i)
      outline += geometry::distance(edge[i - 1], edge[i]);
    EXPECT_NEAR(length * style.spacing_mm, std::abs(geometry::signedArea(polygon)),
                outline * style.spacing_mm);
  });
}

TEST(Hatch, IsAnchoredToThePage) {
  const std::vector<Point> left = {{0, 0}, {10, 0}, {10, 10}, {0, 10}};
  std::vector<Point> right = left;
  for (Point& p : right) p.x += 3.37;
  const auto row = [](const Segment& s) {
    return s.a.x - s.a.y;
  };  // constant along a 45 degree line
  for (const Segment& a : hatch({left}, {-45.0, 1.15})) {
    EXPECT_NEAR(std::remainder(row(a) / std::numbers::sqrt2, 1.15), 0.0, 1e-9);
  }
  for (const Segment& b : hatch({right}, {-45.0, 1.15})) {
    EXPECT_NEAR(std::remainder(row(b) / std::numbers::sqrt2, 1.15), 0.0, 1e-9);
  }
}

TEST(Hatch, LeavesHolesFree) {
  const std::vector<Point> outer = {{0, 0}, {20, 0}, {20, 20}, {0, 20}};
  const std::vector<Point> hole = {{5, 5}, {15, 5}, {15, 15}, {5, 15}};
  for (const Segment& s : hatch({outer, hole}, {0.0, 1.0})) {
    EXPECT_FALSE(geometry::contains(hole, geometry::lerp(s.a, s.b, 0.5)));
  }
}

TEST(Hatch, OfNothingIsNothing) {
  EXPECT_TRUE(hatch({}, {}).empty());
  EXPECT_TRUE(hatch({{{0, 0}, {1, 1}}}, {}).empty());
  EXPECT_TRUE(hatch({{{0, 0}, {9, 0}, {9, 9}}}, {45.0, 0.0}).empty());
  EXPECT_TRUE(dots({{0, 0}, {9, 0}, {9, 9}}, -1.0, 0.1).empty());
}

TEST(Hatch, DotsKeepOffTheEdges) {
  const std::vector<Point> box = {{0, 0}, {12, 0}, {12, 5}, {0, 5}};
  const auto points = dots(box, 2.2, 0.35);
  EXPECT_GT(points.size(), 6U);
  for (const Point& p : points) {
    EXPECT_GE(std::min({p.x, p.y, 12.0 - p.x, 5.0 - p.y}), 0.35 - 1e-9);
  }
}

}  // namespace
}  // namespace sumpwright::drawing
