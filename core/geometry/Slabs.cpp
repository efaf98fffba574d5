#include "geometry/Slabs.h"

#include <algorithm>
#include <cstddef>
#include <utility>
#include <vector>

namespace sumpwright::geometry {

namespace {

struct Side {
  Point west;
  Point east;
  bool of_a = false;
  double at(double x) const {
    return west.y + (x - west.x) / (east.x - west.x) * (east.y - west.y);
  }
};

void addSides(const Polygon& polygon, bool of_a, std::vector<Side>& sides) {
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    Side side{polygon[i], polygon[(i + 1) % polygon.size()], of_a};
    if (side.west.x > side.east.x) std::swap(side.west, side.east);
    if (side.west.x < side.east.x) sides.push_back(side);
  }
}

void addCrossing(const Side& a, const Side& b, std::vector<double>& cuts) {
  const Vec u = a.east - a.west;
  const Vec v = b.east - b.west;
  const double turn = cross(u, v);
  if (turn == 0.0) return;
  const double t = cross(b.west - a.west, v) / turn;
  if (t > 0.0 && t < 1.0) cuts.push_back(a.west.x + t * u.x);
}

std::vector<double> cutsOf(const std::vector<Side>& sides) {
  std::vector<double> cuts;
  for (std::size_t i = 0; i < sides.size(); ++i) {
    cuts.push_back(sides[i].west.x);
    cuts.push_back(sides[i].east.x);
    for (std::size_t j = i + 1; j < sides.size(); ++j) addCrossing(sides[i], sides[j], cuts);
  }
  std::sort(cuts.begin(), cuts.end());
  cuts.erase(std::unique(cuts.begin(), cuts.end()), cuts.end());
  return cuts;
}

/// Length of the vertical at x that lies in both.
double commonHeight(const std::vector<Side>& sides, double x) {
  std::vector<std::pair<double, bool>> crossed;
  for (const Side& side : sides) {
    if (side.west.x < x && x < side.east.x) crossed.emplace_back(side.at(x), side.of_a);
  }
  std::sort(crossed.begin(), crossed.end());
  bool inA = false;
  bool inB = false;
  double height = 0.0;
  for (std::size_t i = 0; i < crossed.size(); ++i) {
    bool& in = crossed[i].second ? inA : inB;
    in = !in;
    if (inA && inB) height += crossed[i + 1].first - crossed[i].first;
  }
  return height;
}

}  // namespace

double overlapAreaBySlabs(const Polygon& a, const Polygon& b) {
  std::vector<Side> sides;
  addSides(a, true, sides);
  addSides(b, false, sides);
  const std::vector<double> cuts = cutsOf(sides);
  double area = 0.0;
  for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
    area += (cuts[i + 1] - cuts[i]) * commonHeight(sides, (cuts[i] + cuts[i + 1]) / 2);
  }
  return area;
}

}  // namespace sumpwright::geometry
