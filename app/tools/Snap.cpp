#include "tools/Snap.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace sumpwright::tools {

namespace {

constexpr double kNoLength_m = 1e-9;  // rounding
// Lines nearer to parallel than this have no crossing to aim at (own figure).
constexpr double kParallelSine = 1e-3;

/// A line to snap to, from a corner or from where drawing began.
struct Guide {
  Point origin;
  Vec along;  ///< unit
  SnapKind kind = SnapKind::none;
  double distance_m = 0.0;
};

Vec unitOr(Vec v, Vec fallback) {
  const double length = geometry::norm(v);
  return length > kNoLength_m ? (1.0 / length) * v : fallback;
}

Vec turnedBy(Vec v, double angle) {
  const double c = std::cos(angle);
  const double s = std::sin(angle);
  return {c * v.x - s * v.y, s * v.x + c * v.y};
}

double distanceTo(const Guide& guide, Point p) {
  return std::abs(geometry::cross(guide.along, p - guide.origin));
}

std::vector<Guide> guidesNear(const SnapField& field, Point pointer) {
  const Vec axis = unitOr(field.axis, {1.0, 0.0});
  std::vector<Guide> guides;
  const auto consider = [&](Point origin, Vec along, SnapKind kind) {
    Guide guide{origin, along, kind, 0.0};
    guide.distance_m = distanceTo(guide, pointer);
    if (guide.distance_m <= field.reach_m) guides.push_back(guide);
  };
  if (field.from) {
    for (int eighth = 0; eighth < 4; ++eighth) {
      consider(*field.from, turnedBy(axis, eighth * std::numbers::pi / 4.0), SnapKind::square);
    }
  }
  for (const Point corner : field.corners) {
    if (field.from && geometry::distance(corner, *field.from) < kNoLength_m) continue;
    consider(corner, axis, SnapKind::extension);
    consider(corner, geometry::left(axis), SnapKind::extension);
  }
  std::stable_sort(guides.begin(), guides.end(), [](const Guide& a, const Guide& b) {
    if (a.kind != b.kind) return a.kind == SnapKind::square;
    return a.distance_m < b.distance_m;
  });
  return guides;
}

std::optional<Point> crossingOf(const Guide& a, const Guide& b) {
  const double sine = geometry::cross(a.along, b.along);
  if (std::abs(sine) < kParallelSine) return std::nullopt;
  const double t = geometry::cross(b.origin - a.origin, b.along) / sine;
  return a.origin + t * a.along;
}

std::optional<Snapped> atCorner(const SnapField& field, Point pointer) {
  std::optional<Snapped> best;
  double nearest = field.reach_m;
  for (const auto* list : {&field.corners, &field.places}) {
    for (const Point corner : *list) {
      const double distance = geometry::distance(corner, pointer);
      if (distance > nearest || (best && distance == nearest)) continue;
      nearest = distance;
      best = Snapped{corner, SnapKind::corner, {}};
    }
  }
  return best;
}

std::optional<Snapped> atCrossing(const SnapField& field, const std::vector<Guide>& guides,
                                  Point pointer) {
  std::optional<Snapped> best;
  double nearest = field.reach_m;
  for (std::size_t i = 0; i < guides.size(); ++i) {
    for (std::size_t j = i + 1; j < guides.size(); ++j) {
      const auto at = crossingOf(guides[i], guides[j]);
      if (!at) continue;
      const double distance = geometry::distance(*at, pointer);
      if (distance > nearest || (best && distance == nearest)) continue;
      nearest = distance;
      best = Snapped{*at, SnapKind::crossing, {{guides[i].origin, *at}, {guides[j].origin, *at}}};
    }
  }
  return best;
}

double onGrid(double distance_m, double grid_m) {
  return grid_m > 0.0 ? std::round(distance_m / grid_m) * grid_m : distance_m;
}

/// On the guide, and there on the grid unless both together would move the pointer too far.
Snapped onGuide(const SnapField& field, const Guide& guide, Point pointer) {
  const double along = geometry::dot(pointer - guide.origin, guide.along);
  Point at = guide.origin + onGrid(along, field.grid_m) * guide.along;
  if (geometry::distance(at, pointer) > field.reach_m) at = guide.origin + along * guide.along;
  return {at, guide.kind, {{guide.origin, at}}};
}

std::optional<Snapped> onEdge(const SnapField& field, Point pointer) {
  std::optional<Snapped> best;
  double nearest = field.reach_m;
  for (const Segment& edge : field.edges) {
    const Vec along = edge.b - edge.a;
    const double length2 = geometry::dot(along, along);
    if (length2 < kNoLength_m) continue;
    const double t = std::clamp(geometry::dot(pointer - edge.a, along) / length2, 0.0, 1.0);
    const Point at = edge.a + t * along;
    const double distance = geometry::distance(at, pointer);
    if (distance > nearest || (best && distance == nearest)) continue;
    nearest = distance;
    best = Snapped{at, SnapKind::edge, {}};
  }
  return best;
}

}  // namespace

Snapped snap(const SnapField& field, Point pointer) {
  if (field.reach_m <= 0.0) return {pointer, SnapKind::none, {}};
  if (const auto corner = atCorner(field, pointer)) return *corner;
  const std::vector<Guide> guides = guidesNear(field, pointer);
  if (const auto crossing = atCrossing(field, guides, pointer)) return *crossing;
  if (!guides.empty()) return onGuide(field, guides.front(), pointer);
  if (const auto edge = onEdge(field, pointer)) return *edge;
  const Point grid{onGrid(pointer.x, field.grid_m), onGrid(pointer.y, field.grid_m)};
  const bool far = geometry::distance(grid, pointer) > field.reach_m;
  if (grid == pointer || field.grid_m <= 0.0 || far) return {pointer, SnapKind::none, {}};
  return {grid, SnapKind::grid, {}};
}

}  // namespace sumpwright::tools
