// Right angles for a taped or traced outline: WallEdits.h, straighten().

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

#include "plan/Checks.h"
#include "plan/EditProblem.h"
#include "plan/FitsFile.h"
#include "plan/OnWalls.h"
#include "plan/PlanGeometry.h"
#include "plan/WallEdits.h"

namespace sumpwright::plan {

namespace {

using geometry::Vec;

constexpr double kWidestTolerance_deg = 30.0;  // own figure: wider, a hipped bay is a corner
constexpr double kSameLine = 1e-6;             // sine of an angle nobody measures (own figure)

/// Sets that grow together.
class Groups {
 public:
  explicit Groups(std::size_t count) : m_parent(count) {
    std::iota(m_parent.begin(), m_parent.end(), std::size_t{0});
  }
  std::size_t of(std::size_t i) const {
    while (m_parent[i] != i) i = m_parent[i];
    return i;
  }
  void join(std::size_t a, std::size_t b) { m_parent[of(a)] = of(b); }

 private:
  std::vector<std::size_t> m_parent;
};

/// How far a turn (radians, 0 .. pi either way) is from one of a quarter, and from none.
double offRight(double turn) { return std::abs(std::abs(turn) - std::numbers::pi / 2.0); }
double offStraight(double turn) { return std::abs(turn); }

class Squarer {
 public:
  Squarer(const Ring& ring, double tolerance_rad)
      : m_ring(ring),
        m_count(ring.corners.size()),
        m_family(m_count),
        m_line(m_count),
        m_direction(m_count) {
    for (std::size_t i = 0; i < m_count; ++i) m_direction[i] = directionOf(edgeOf(ring, i));
    link(tolerance_rad);
    turnFamilies();
    joinStraightOn();
    placeLines();
  }

  std::vector<Point> corners() const {
    std::vector<Point> out(m_count);
    for (std::size_t i = 0; i < m_count; ++i) out[i] = cornerAt(i);
    return out;
  }

 private:
  std::size_t prior(std::size_t i) const { return (i + m_count - 1) % m_count; }

  double turnAt(std::size_t corner) const {
    const Vec in = m_direction[prior(corner)];
    const Vec out = m_direction[corner];
    return std::atan2(geometry::cross(in, out), geometry::dot(in, out));
  }

  void link(double tolerance) {
    for (std::size_t i = 0; i < m_count; ++i) {
      const double turn = turnAt(i);
      if (offRight(turn) <= tolerance || offStraight(turn) <= tolerance) m_family.join(prior(i), i);
    }
  }

  /// Four times the angle takes the quarters out: the mean of a family, weighed by length, is where
  /// those point together. A wall of no family keeps its direction.
  void turnFamilies() {
    std::vector<Vec> sum(m_count);
    std::vector<std::size_t> members(m_count);
    for (std::size_t i = 0; i < m_count; ++i) {
      const double angle = 4.0 * std::atan2(m_direction[i].y, m_direction[i].x);
      const double weight = length_m(edgeOf(m_ring, i));
      Vec& s = sum[m_family.of(i)];
      s = s + weight * Vec{std::cos(angle), std::sin(angle)};
      ++members[m_family.of(i)];
    }
    for (std::size_t i = 0; i < m_count; ++i) {
      const std::size_t family = m_family.of(i);
      if (members[family] < 2) continue;
      m_direction[i] = nearestQuarter(m_direction[i], sum[family]);
    }
  }

  /// The direction along or square to the family that the wall is nearest to.
  static Vec nearestQuarter(Vec wall, Vec four_fold) {
    const double angle = std::atan2(four_fold.y, four_fold.x) / 4.0;
    Vec along{std::cos(angle), std::sin(angle)};
    if (std::abs(along.y) < kSameLine) along = {1.0, 0.0};  // as it was drawn, and exactly so
    Vec best = along;
    for (int i = 0; i < 3; ++i) {
      along = geometry::left(along);
      if (geometry::dot(along, wall) > geometry::dot(best, wall)) best = along;
    }
    return best;
  }

  /// Walls that run straight on from one another, now exactly, lie on one line.
  void joinStraightOn() {
    for (std::size_t i = 0; i < m_count; ++i) {
      if (std::abs(geometry::cross(m_direction[prior(i)], m_direction[i])) < kSameLine) {
        m_line.join(prior(i), i);
      }
    }
  }

  /// Each line where its corners are left least of all, squares added up: their mean across it.
  void placeLines() {
    std::vector<double> sum(m_count, 0.0);
    std::vector<double> corners(m_count, 0.0);
    m_offset.assign(m_count, 0.0);
    const auto take = [&](std::size_t line, std::size_t corner) {
      sum[line] += across(m_direction[line], m_ring.corners[corner]);
      corners[line] += 1.0;
    };
    for (std::size_t i = 0; i < m_count; ++i) {
      const std::size_t next = (i + 1) % m_count;
      take(m_line.of(i), i);
      if (m_line.of(next) != m_line.of(i)) take(m_line.of(i), next);  // else its own turn comes
    }
    for (std::size_t i = 0; i < m_count; ++i) {
      m_offset[i] = sum[m_line.of(i)] / corners[m_line.of(i)];
    }
  }

  static double across(Vec direction, Point p) {
    return geometry::dot(geometry::left(direction), p - Point{});
  }

  Point cornerAt(std::size_t i) const {
    const std::size_t a = prior(i);
    const Vec u = m_direction[m_line.of(a)];
    const Vec v = m_direction[m_line.of(i)];
    const double turn = geometry::cross(u, v);
    const Point was = m_ring.corners[i];
    if (std::abs(turn) < kSameLine) {  // on one line: set square onto it
      const double off = m_offset[a] - across(u, was);
      return was + off * geometry::left(u);
    }
    // p = s u + t v; left(u) . p = t cross(u, v), left(v) . p = -s cross(u, v).
    const double t = m_offset[a] / turn;
    const double s = -m_offset[i] / turn;
    // An axis gives its coordinate as it is, without a trace of the other.
    return Point{} + (s * u + t * v);
  }

  const Ring& m_ring;
  std::size_t m_count;
  Groups m_family;
  Groups m_line;
  std::vector<Vec> m_direction;
  std::vector<double> m_offset;
};

}  // namespace

base::Result<Job> straighten(const Job& job, int ring, double tolerance_deg) {
  const auto index = static_cast<std::size_t>(ring);
  const bool there = ring >= 0 && index < job.plan.rings.size() && job.plan.rings[index].closed &&
                     job.plan.rings[index].corners.size() >= 3 &&
                     job.plan.rings[index].walls.size() == job.plan.rings[index].corners.size();
  if (!there) {
    return editProblem("plan.edit.no-edge", {base::count("ring", ring), base::count("edge", 0)});
  }
  if (!(tolerance_deg > 0.0 && tolerance_deg < kWidestTolerance_deg)) {
    return editProblem("plan.edit.not-a-place");
  }
  Ring square = job.plan.rings[index];
  square.corners =
      Squarer(job.plan.rings[index], tolerance_deg * std::numbers::pi / 180.0).corners();
  if (const auto bad = unfit(square)) return *bad;
  for (std::size_t i = 0; i < square.corners.size(); ++i) {
    const double length = length_m(edgeOf(square, i));
    if (length > kLongestEdge_m) return editProblem("plan.edit.not-a-place");
    if (length >= kShortestEdge_m) continue;
    return editProblem("plan.ring.short-edge",
                       {base::millimetres("length", 1000.0 * length),
                        base::millimetres("least", 1000.0 * kShortestEdge_m)});
  }
  return withRing(job, index, std::move(square), carryAlongEdge);
}

}  // namespace sumpwright::plan
