#include "tools/OutlineDrag.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/Contract.h"
#include "geometry/Distance.h"
#include "plan/OutlineEdits.h"

namespace sumpwright::tools {

namespace {

const plan::Ring& ringOf(const plan::Plan& plan, const OutlineGrip& grip) {
  SUMPWRIGHT_REQUIRE(grip.ring >= 0 && static_cast<std::size_t>(grip.ring) < plan.rings.size());
  const plan::Ring& ring = plan.rings[static_cast<std::size_t>(grip.ring)];
  SUMPWRIGHT_REQUIRE(ring.closed && grip.index >= 0 &&
                     static_cast<std::size_t>(grip.index) < ring.corners.size());
  return ring;
}

Segment edgeOf(const plan::Ring& ring, std::size_t i) {
  return {ring.corners[i], ring.corners[(i + 1) % ring.corners.size()]};
}

Vec unitAlong(const Segment& s) {
  const Vec along = s.b - s.a;
  const double length = geometry::norm(along);
  return length > 0.0 ? (1.0 / length) * along : Vec{1.0, 0.0};
}

/// The corners of all rings but those that move with the grip.
std::vector<Point> fixedCorners(const plan::Plan& plan, const OutlineGrip& grip) {
  std::vector<Point> corners;
  for (std::size_t r = 0; r < plan.rings.size(); ++r) {
    const auto& all = plan.rings[r].corners;
    for (std::size_t i = 0; i < all.size(); ++i) {
      const auto held = static_cast<std::size_t>(grip.index);
      const bool moves =
          static_cast<int>(r) == grip.ring &&
          (i == held || (grip.kind == GripKind::wall && i == (held + 1) % all.size()));
      if (!moves) corners.push_back(all[i]);
    }
  }
  return corners;
}

}  // namespace

Point gripPoint(const plan::Plan& plan, const OutlineGrip& grip) {
  const plan::Ring& ring = ringOf(plan, grip);
  const auto index = static_cast<std::size_t>(grip.index);
  if (grip.kind == GripKind::corner) return ring.corners[index];
  const Segment edge = edgeOf(ring, index);
  return geometry::lerp(edge.a, edge.b, 0.5);
}

std::optional<OutlineGrip> outlineGripAt(const plan::Plan& plan, Point at, double reach_m,
                                         double thickness_m) {
  std::optional<OutlineGrip> corner;
  std::optional<OutlineGrip> wall;
  double nearest_corner = reach_m;
  double nearest_wall = std::numeric_limits<double>::infinity();
  for (std::size_t r = 0; r < plan.rings.size(); ++r) {
    const plan::Ring& ring = plan.rings[r];
    if (!ring.closed || ring.corners.size() < 3) continue;
    for (std::size_t i = 0; i < ring.corners.size(); ++i) {
      const double to_corner = geometry::distance(ring.corners[i], at);
      if (to_corner <= nearest_corner) {
        nearest_corner = to_corner;
        corner = OutlineGrip{GripKind::corner, static_cast<int>(r), static_cast<int>(i)};
      }
      const Segment edge = edgeOf(ring, i);
      const Vec along = unitAlong(edge);
      const double u = geometry::dot(at - edge.a, along);
      const double inside = geometry::cross(along, at - edge.a);
      if (u < 0.0 || u > geometry::distance(edge.a, edge.b)) continue;
      if (inside < -reach_m || inside > thickness_m + reach_m) continue;
      const double off = std::max({0.0, -inside, inside - thickness_m});
      if (off >= nearest_wall) continue;
      nearest_wall = off;
      wall = OutlineGrip{GripKind::wall, static_cast<int>(r), static_cast<int>(i)};
    }
  }
  return corner ? corner : wall;
}

OutlineDrag::OutlineDrag(plan::Job before, OutlineGrip grip, Point pointer, double reach_m,
                         double grid_m)
    : m_before(std::move(before)), m_grip(grip) {
  const Point held = gripPoint(m_before.plan, grip);
  m_rod = pointer - held;
  m_snapped = {held, SnapKind::none, {}};
  const plan::Ring& ring = ringOf(m_before.plan, grip);
  const std::size_t n = ring.corners.size();
  const auto index = static_cast<std::size_t>(grip.index);
  m_field.corners = fixedCorners(m_before.plan, grip);
  m_field.reach_m = reach_m;
  m_field.grid_m = grid_m;
  if (grip.kind == GripKind::corner) {
    // Square to the wall that leads here, and to the one that leads on.
    m_field.from = ring.corners[(index + n - 1) % n];
    m_field.axis = ring.corners[(index + n - 1) % n] - ring.corners[(index + n - 2) % n];
  } else {
    m_field.axis = unitAlong(edgeOf(ring, index));
  }
}

base::Result<plan::Job> OutlineDrag::move(Point pointer) {
  const Point aimed = pointer - m_rod;
  m_snapped = snap(m_field, aimed);
  if (m_grip.kind == GripKind::corner) {
    return plan::moveCorner(m_before, m_grip.ring, m_grip.index, m_snapped.at);
  }
  const plan::Ring& ring = ringOf(m_before.plan, m_grip);
  const Segment edge = edgeOf(ring, static_cast<std::size_t>(m_grip.index));
  const Vec outward = -geometry::left(unitAlong(edge));
  // A wall goes only square to itself: its line snaps to corners and to the grid from where it was.
  const double out = geometry::dot(aimed - gripPoint(m_before.plan, m_grip), outward);
  double best = m_field.grid_m > 0.0 ? std::round(out / m_field.grid_m) * m_field.grid_m : out;
  double nearest = m_field.reach_m;
  m_snapped = {gripPoint(m_before.plan, m_grip) + best * outward, SnapKind::grid, {}};
  for (const Point corner : m_field.corners) {
    const double at = geometry::dot(corner - edge.a, outward);
    if (std::abs(at - out) > nearest) continue;
    nearest = std::abs(at - out);
    best = at;
    m_snapped.at = gripPoint(m_before.plan, m_grip) + best * outward;
    m_snapped.kind = SnapKind::extension;
    m_snapped.guides = {{corner, m_snapped.at}};
  }
  m_out_m = best;
  return plan::moveWall(m_before, m_grip.ring, m_grip.index, best);
}

base::Result<plan::Job> OutlineDrag::set(double length_m) {
  if (m_grip.kind == GripKind::wall) {
    m_out_m = m_out_m < 0.0 ? -length_m : length_m;
    return plan::moveWall(m_before, m_grip.ring, m_grip.index, m_out_m);
  }
  const plan::Ring& ring = ringOf(m_before.plan, m_grip);
  const std::size_t n = ring.corners.size();
  const auto index = static_cast<std::size_t>(m_grip.index);
  const Point from = ring.corners[(index + n - 1) % n];
  const Vec along = unitAlong({from, m_snapped.at});
  return plan::moveCorner(m_before, m_grip.ring, m_grip.index, from + length_m * along);
}

}  // namespace sumpwright::tools
