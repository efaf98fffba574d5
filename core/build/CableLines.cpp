#include "build/CableLines.h"

#include <algorithm>
#include <cmath>

#include "geometry/Distance.h"
#include "geometry/Shapes.h"

namespace sumpwright::build {

namespace {

using geometry::Point;
using geometry::Segment;
using geometry::Vec;

constexpr double kHangsOn_m = 0.5;  // a supply in no room is on a wall this near (own figure)
constexpr double kOnFace_m = 0.10;  // drawn a little inside an outer face, a supply still is on it
                                    // (own figure)

/// Nearest place of a line to a point.
Spot nearestOn(const CableLine& line, std::size_t index, Point p, double& off_m) {
  Spot best{index, 0.0};
  off_m = 1e300;
  for (std::size_t i = 0; i < line.corners.size(); ++i) {
    const Point near = geometry::nearest(p, line.side(i));
    const double off = geometry::distance(p, near);
    if (off >= off_m) continue;
    off_m = off;
    best.s_m = line.wrapped(line.starts_m[i] + geometry::distance(line.corners[i], near));
  }
  return best;
}

}  // namespace

geometry::Vec wayOf(const Segment& side) {
  const Vec v = side.b - side.a;
  const double n = geometry::norm(v);
  return n > 0.0 ? (1.0 / n) * v : Vec{1.0, 0.0};
}

double CableLine::wrapped(double s_m) const {
  const double s = std::fmod(s_m, length_m);
  const double positive = s < 0.0 ? s + length_m : s;
  return positive > length_m - kSameSpot_m ? 0.0 : positive;
}

std::size_t CableLine::sideAt(double s_m) const {
  const auto after = std::upper_bound(starts_m.begin(), starts_m.end(), s_m);
  return static_cast<std::size_t>(after - starts_m.begin()) - 1;
}

geometry::Segment CableLine::side(std::size_t i) const {
  return {corners[i], corners[(i + 1) % corners.size()]};
}

geometry::Point CableLine::pointAt(double s_m) const {
  const std::size_t i = sideAt(s_m);
  const Segment s = side(i);
  return s.a + (s_m - starts_m[i]) * wayOf(s);
}

geometry::Vec CableLine::intoWall(std::size_t side_index) const {
  const Segment s = side(side_index);
  const Vec to_left = geometry::left(wayOf(s));
  return wall_left ? to_left : -to_left;
}

const OverOpening* CableLine::overAt(double s_m) const {
  for (const OverOpening& one : over) {
    if (s_m > one.from_m + kSameSpot_m && s_m < one.to_m - kSameSpot_m) return &one;
  }
  return nullptr;
}

bool CableLine::isClosed(double s_m) const {
  return std::any_of(closed.begin(), closed.end(), [s_m](const CableRange& r) {
    return s_m > r.from_m + kSameSpot_m && s_m < r.to_m - kSameSpot_m;
  });
}

bool CableLine::isAtEntry(double s_m) const {
  return std::any_of(entries.begin(), entries.end(), [s_m](const CableRange& r) {
    return s_m > r.from_m + kSameSpot_m && s_m < r.to_m - kSameSpot_m;
  });
}

Spot CableLines::spotOnFace(perimeter::Place place) const {
  const auto ring = static_cast<std::size_t>(place.ring);
  return {ring, lines[ring].wrapped(place.chainage_m)};
}

FoundSpot CableLines::spotOf(Point at) const {
  double wet_off = kHangsOn_m;  // to the wall of a wet room: what hangs on it is in that room
  for (const geometry::Polygon& wet : wet_rooms) {
    if (geometry::contains(wet, at)) return {Found::wet, {}, 0.0, false};
    for (std::size_t i = 0; i < wet.size(); ++i) {
      const Segment side{wet[i], wet[(i + 1) % wet.size()]};
      wet_off = std::min(wet_off, geometry::distance(at, geometry::nearest(at, side)));
    }
  }
  FoundSpot best;
  double nearest_m = kHangsOn_m;
  for (std::size_t k = 0; k < lines.size(); ++k) {
    const CableLine& line = lines[k];
    const bool outside = line.kind == CablePartKind::outside;
    double off = 0.0;
    const Spot spot = nearestOn(line, k, at, off);
    const bool within = !outside && geometry::contains(line.corners, at);
    if (outside && line.isClosed(spot.s_m)) continue;  // on a neighbour's side
    // In a room: that room's wall, however far. On a wall: the nearest line.
    if (within) return {line.isClosed(spot.s_m) ? Found::wet : Found::on_line, spot, off, false};
    if (off >= nearest_m) continue;
    nearest_m = off;
    best = {line.isClosed(spot.s_m) ? Found::wet : Found::on_line, spot, off, outside};
  }
  if (wet_off < kHangsOn_m && wet_off <= nearest_m) return {Found::wet, {}, wet_off};
  // On the inside of a wall that no room is drawn behind.
  best.through = best.outside && isIndoors(at) && best.off_m > kOnFace_m;
  return best;
}

bool CableLines::isIndoors(Point at) const {
  bool indoors = false;
  for (const CableLine& line : lines) {
    if (line.kind != CablePartKind::outside || !geometry::contains(line.corners, at)) continue;
    indoors = &line == &lines.front();  // then it is a courtyard that holds it
    if (!indoors) return false;
  }
  return indoors;
}

bool CableLines::mayDrill(const Spot& spot) const {
  const CableLine& line = lines[spot.line];
  const std::size_t i = line.sideAt(spot.s_m);
  const Segment side = line.side(i);
  const double along = spot.s_m - line.starts_m[i];
  const double length = geometry::distance(side.a, side.b);
  const double off = from_corner_m - kSameSpot_m;
  if (along < off || length - along < off) return false;
  if (line.isClosed(spot.s_m) || line.isAtEntry(spot.s_m)) return false;
  return std::none_of(line.over.begin(), line.over.end(), [&](const OverOpening& one) {
    return spot.s_m > one.from_m - off && spot.s_m < one.to_m + off;
  });
}

std::optional<Facing> CableLines::facing(const Spot& spot) const {
  const CableLine& line = lines[spot.line];
  const std::size_t from_side = line.sideAt(spot.s_m);
  const Point p = line.pointAt(spot.s_m);
  const Vec into = line.intoWall(from_side);
  std::optional<Facing> nearest;
  bool faces = false;
  for (std::size_t k = 0; k < lines.size(); ++k) {
    for (std::size_t i = 0; i < lines[k].corners.size(); ++i) {
      if (k == spot.line && i == from_side) continue;
      const Segment side = lines[k].side(i);
      const Vec way = side.b - side.a;
      const double turn = geometry::cross(into, way);
      if (turn == 0.0) continue;
      const double far = geometry::cross(side.a - p, way) / turn;
      const double share = geometry::cross(side.a - p, into) / turn;
      if (far < -kSameSpot_m || far > thickest_m || share < 0.0 || share > 1.0) continue;
      if (nearest && nearest->distance_m <= far) continue;
      nearest = Facing{{k, lines[k].wrapped(lines[k].starts_m[i] + share * geometry::norm(way))},
                       std::max(0.0, far)};
      faces = geometry::dot(lines[k].intoWall(i), into) < -kFacing;
    }
  }
  if (!faces) return std::nullopt;
  const Point middle = p + nearest->distance_m / 2.0 * into;
  const bool through_wet =
      std::any_of(wet_rooms.begin(), wet_rooms.end(),
                  [&](const geometry::Polygon& wet) { return geometry::contains(wet, middle); });
  if (through_wet) return std::nullopt;
  return nearest;
}

}  // namespace sumpwright::build
