#include "geometry/Shapes.h"

#include <algorithm>
#include <array>
#include <boost/geometry/algorithms/area.hpp>
#include <boost/geometry/algorithms/centroid.hpp>
#include <boost/geometry/algorithms/correct.hpp>
#include <boost/geometry/algorithms/intersection.hpp>
#include <boost/geometry/algorithms/intersects.hpp>
#include <boost/geometry/core/cs.hpp>
#include <boost/geometry/geometries/linestring.hpp>
#include <boost/geometry/geometries/multi_polygon.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <boost/geometry/geometries/register/point.hpp>
#include <boost/geometry/geometries/segment.hpp>
#include <boost/geometry/strategies/strategies.hpp>
#include <exception>
#include <limits>
#include <numeric>
#include <queue>
#include <utility>

#include "geometry/Distance.h"
#include "geometry/Slabs.h"

BOOST_GEOMETRY_REGISTER_POINT_2D(sumpwright::geometry::Point, double, cs::cartesian, x, y)

namespace sumpwright::geometry {

namespace {

namespace bg = boost::geometry;
using OpenRing = bg::model::ring<Point, false, false>;  // counter-clockwise, first not repeated
using Area = bg::model::polygon<Point, false, false>;
using Areas = bg::model::multi_polygon<Area>;
using Edge = bg::model::segment<Point>;

/// Contract of labelPoint.
constexpr double kLabelAccuracy_m = 0.05;
/// Cells looked at before the best so far is good enough (own figure): a house needs some hundreds.
constexpr int kLabelCells = 20'000;

OpenRing ringOf(const Polygon& polygon) { return {polygon.begin(), polygon.end()}; }

Area areaOf(const Polygon& polygon) {
  Area area;
  area.outer().assign(polygon.begin(), polygon.end());
  bg::correct(area);
  return area;
}

Edge edgeOf(const Segment& s) { return {s.a, s.b}; }

Point meanOf(const Polygon& polygon) {
  if (polygon.empty()) return {};
  Point sum;
  for (const Point p : polygon) sum = {sum.x + p.x, sum.y + p.y};
  const auto n = static_cast<double>(polygon.size());
  return {sum.x / n, sum.y / n};
}

struct Box {
  Point low{std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity()};
  Point high{-std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};
};

Box boxOf(const Polygon& polygon) {
  Box box;
  for (const Point p : polygon) {
    box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
    box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
  }
  return box;
}

Segment side(const Polygon& polygon, std::size_t i) {
  return {polygon[i], polygon[(i + 1) % polygon.size()]};
}

/// A point that the closed segments share.
std::optional<Point> contact(const Segment& a, const Segment& b) {
  if (!meet(a, b)) return std::nullopt;
  const Vec u = a.b - a.a;
  const Vec v = b.b - b.a;
  const double turn = cross(u, v);
  if (turn == 0.0) return nearest(a.b, b);
  return lerp(b.a, b.b, std::clamp(cross(u, a.a - b.a) / turn, 0.0, 1.0));
}

/// Whether side i+1 runs back over side i.
bool doublesBack(const Segment& a, const Segment& b) {
  const Vec u = a.b - a.a;
  const Vec v = b.b - b.a;
  return dot(u, v) < 0 && std::abs(cross(u, v)) <= 1e-12 * norm(u) * norm(v);
}

Polygon withoutRepeats(const Polygon& polygon) {
  Polygon result;
  for (const Point p : polygon) {
    if (result.empty() || !(result.back() == p)) result.push_back(p);
  }
  while (result.size() > 1 && result.front() == result.back()) result.pop_back();
  return result;
}

/// Distance to the outline, negative outside.
double depth(const Polygon& polygon, Point p) {
  double nearest = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    nearest = std::min(nearest, distance(p, side(polygon, i)));
  }
  return contains(polygon, p) ? nearest : -nearest;
}

/// A square of the search for the deepest point.
struct Cell {
  Point centre;
  double half = 0.0;
  double depth = 0.0;
  double most() const { return depth + half * std::sqrt(2.0); }
  bool operator<(const Cell& other) const { return most() < other.most(); }
};

Cell cellAt(const Polygon& polygon, Point centre, double half) {
  return {centre, half, depth(polygon, centre)};
}

std::priority_queue<Cell> firstCells(const Polygon& polygon, const Box& box) {
  const double width = box.high.x - box.low.x;
  const double height = box.high.y - box.low.y;
  // Squares as wide as the shorter side, yet no more than 64 along the longer one.
  const double step = std::max(std::min(width, height), std::max(width, height) / 64.0);
  std::priority_queue<Cell> cells;
  for (double x = box.low.x; x < box.high.x; x += step) {
    for (double y = box.low.y; y < box.high.y; y += step) {
      cells.push(cellAt(polygon, {x + step / 2, y + step / 2}, step / 2));
    }
  }
  return cells;
}

/// Where sides i < j touch as they may not: neighbours share a corner, and may only not double
/// back.
std::optional<Point> contactOfSides(const Polygon& outline, std::size_t i, std::size_t j) {
  const bool follows = j == i + 1;
  const bool closes = i == 0 && j == outline.size() - 1;
  if (!follows && !closes) return contact(side(outline, i), side(outline, j));
  const Segment before = side(outline, follows ? i : j);
  if (!doublesBack(before, side(outline, follows ? j : i))) return std::nullopt;
  return before.b;
}

}  // namespace

double signedArea(const Polygon& polygon) {
  return polygon.size() < 3 ? 0.0 : bg::area(ringOf(polygon));
}

Point centroid(const Polygon& polygon) {
  if (polygon.size() < 3 || signedArea(polygon) == 0.0) return meanOf(polygon);
  Point centre;
  bg::centroid(ringOf(polygon), centre);
  return centre;
}

// Best-first refinement: of a square whose centre lies d deep, no point lies deeper than d + half
// its diagonal; squares that cannot beat the best by the accuracy wanted are dropped.
Point labelPoint(const Polygon& polygon) {
  if (polygon.size() < 3 || signedArea(polygon) == 0.0) return centroid(polygon);
  std::priority_queue<Cell> cells = firstCells(polygon, boxOf(polygon));
  Cell best = cellAt(polygon, centroid(polygon), 0.0);
  for (int looked = 0; !cells.empty() && looked < kLabelCells; ++looked) {
    const Cell cell = cells.top();
    cells.pop();
    if (cell.depth > best.depth) best = cell;
    if (cell.most() - best.depth <= kLabelAccuracy_m) break;
    const double h = cell.half / 2;
    for (const Vec v : {Vec{-h, -h}, Vec{h, -h}, Vec{-h, h}, Vec{h, h}}) {
      cells.push(cellAt(polygon, cell.centre + v, h));
    }
  }
  return best.centre;
}

// Even-odd, which Boost's winding test is not for outlines that overlap themselves.
bool contains(const Polygon& polygon, Point p) {
  bool in = false;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const auto [a, b] = side(polygon, i);
    if (bg::intersects(p, edgeOf({a, b}))) return false;
    if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x)) in = !in;
  }
  return in;
}

// Sides sorted by their west end: only those whose spans of x overlap are compared.
std::optional<Point> firstSelfContact(const Polygon& polygon) {
  if (polygon.empty()) return std::nullopt;
  const Polygon outline = withoutRepeats(polygon);
  const std::size_t n = outline.size();
  if (n < 3 || signedArea(outline) == 0.0) return polygon.front();
  std::vector<std::size_t> order(n);
  std::iota(order.begin(), order.end(), std::size_t{0});
  const auto west = [&](std::size_t i) { return std::min(outline[i].x, outline[(i + 1) % n].x); };
  const auto east = [&](std::size_t i) { return std::max(outline[i].x, outline[(i + 1) % n].x); };
  std::sort(order.begin(), order.end(), [&](auto i, auto j) { return west(i) < west(j); });

  std::optional<Point> found;
  std::pair<std::size_t, std::size_t> first{n, n};
  for (std::size_t a = 0; a < n; ++a) {
    for (std::size_t b = a + 1; b < n && west(order[b]) <= east(order[a]); ++b) {
      const auto [i, j] = std::minmax(order[a], order[b]);
      if (std::pair(i, j) >= first) continue;
      const std::optional<Point> at = contactOfSides(outline, i, j);
      if (!at) continue;
      found = at;
      first = {i, j};
    }
  }
  return found;
}

double overlapArea(const Polygon& a, const Polygon& b) {
  if (a.size() < 3 || b.size() < 3 || boxesApart(a, b)) return 0.0;
  try {
    Areas common;
    bg::intersection(areaOf(a), areaOf(b), common);
    return bg::area(common);
  } catch (const std::exception&) {
    // Boost refuses outlines it finds invalid, among them ones that only rounding makes so, and
    // numbers too large for its grid; the slower twin takes any outline.
    return overlapAreaBySlabs(a, b);
  }
}

double areaOutside(const Polygon& inner, const Polygon& outer) {
  return std::max(0.0, std::abs(signedArea(inner)) - overlapArea(inner, outer));
}

bool boxesApart(const Polygon& a, const Polygon& b) {
  const Box one = boxOf(a);
  const Box other = boxOf(b);
  return one.high.x < other.low.x || other.high.x < one.low.x || one.high.y < other.low.y ||
         other.high.y < one.low.y;
}

bool meet(const Segment& a, const Segment& b) { return bg::intersects(edgeOf(a), edgeOf(b)); }

}  // namespace sumpwright::geometry
