#include "suction/WallsBelow.h"

#include <algorithm>
#include <cmath>

#include "geometry/Distance.h"
#include "geometry/Interval.h"
#include "geometry/Polylines.h"
#include "plan/FloorLevels.h"
#include "plan/WallThickness.h"
#include "suction/Along.h"

namespace sumpwright::suction {

namespace {

using geometry::Segment;
using geometry::Vec;

constexpr double kMeetsWall_m = 0.10;  // barriers this near to an edge run up to it (own figure)
constexpr double kBeside_m = 0.02;     // bodies that near to one another touch (own figure)
constexpr double kLeastWall_m = 0.10;  // what is left and shorter is drawing (own figure)
constexpr double kOffLine_m = 1e-6;    // a jog that short is rounding

/// A stretch of a line that needs no wall of its own, and the wall that stands there; none: it is
/// not within the floor.
struct Covered {
  Stretch at;
  const Polyline* by = nullptr;
};

void addAlongside(const Polyline& line, const Polyline& other, double within_m, const Polyline* by,
                  std::vector<Covered>& covered) {
  double s = 0.0;
  for (std::size_t k = 1; k < line.size(); ++k) {
    const Segment piece{line[k - 1], line[k]};
    for (std::size_t n = 1; n < other.size(); ++n) {
      const auto common = alongside(piece, {other[n - 1], other[n]}, within_m);
      if (common) covered.push_back({{s + common->from_m, s + common->to_m}, by});
    }
    s += geometry::distance(piece.a, piece.b);
  }
}

/// What is left of a line, and the walls it adjoins at its ends.
struct Left {
  Stretch at;
  const Polyline* before = nullptr;
  const Polyline* after = nullptr;
};

std::vector<Left> leftOf(double length, std::vector<Covered> covered) {
  std::sort(covered.begin(), covered.end(),
            [](const Covered& a, const Covered& b) { return a.at.from_m < b.at.from_m; });
  covered.push_back({{length, length}});
  std::vector<Left> left;
  double from = 0.0;
  const Polyline* before = nullptr;
  for (const Covered& next : covered) {
    if (next.at.from_m - from > kLeastWall_m) {
      left.push_back({{from, next.at.from_m}, before, next.by});
    }
    if (next.at.to_m < from) continue;
    from = next.at.to_m;
    before = next.by;
  }
  return left;
}

/// Two walls that lie along one another share their ground.
double sharedWithin_m(double one_m, double other_m) { return 0.5 * (one_m + other_m) + kBeside_m; }

class BarrierMaker {
 public:
  BarrierMaker(const plan::Job& job, const Ground& ground, const ModelChoices& choices,
               const std::vector<Region>& floor)
      : m_job(job), m_ground(ground), m_choices(choices), m_floor(floor) {}

  std::vector<Barrier> made() {
    addRisingWalls();
    addInnerWalls();
    addOldOuterWalls();
    return std::move(m_made);
  }

 private:
  void addRisingWalls() {
    for (const plan::RisingWall& wall : m_job.plan.rising_walls) {
      std::vector<Stretch> gaps;
      for (const plan::Gap& gap : wall.gaps) gaps.push_back({gap.from_m, gap.to_m});
      const Polyline line = ledToFaces(wall.line_m, gaps, wall.thickness_m);
      addWhatIsNew(wall.id, line, wall.thickness_m, gaps);
    }
  }

  void addInnerWalls() {
    for (const plan::InnerWall& wall : m_job.plan.inner_walls) {
      const bool stands =
          wall.below_floor == plan::BelowFloor::own_footing ||
          (wall.below_floor == plan::BelowFloor::unknown && m_choices.unknown_walls_stand);
      if (!stands) continue;
      std::vector<Stretch> none;
      addWhatIsNew(wall.id, ledToFaces(wall.line_m, none, wall.thickness_m), wall.thickness_m);
    }
  }

  /// Between the house and what was built on later.
  void addOldOuterWalls() {
    const double thickness = plan::usualThickness_m(m_job.house);
    for (const plan::FloorZone& zone : m_job.plan.floor_zones) {
      if (zone.part == plan::HousePart::house || plan::isSuspended(zone.kind)) continue;
      for (std::size_t k = 0; k < zone.outline_m.size(); ++k) {
        const Polyline side{zone.outline_m[k], zone.outline_m[(k + 1) % zone.outline_m.size()]};
        addWhatIsNew(zone.id, side, thickness, {}, beyondFloor({side[0], side[1]}));
      }
    }
  }

  void addWhatIsNew(const std::string& id, const Polyline& line, double thickness_m,
                    const std::vector<Stretch>& gaps = {}, std::vector<Covered> covered = {}) {
    if (line.size() < 2) return;
    for (std::size_t k = 0; k < m_made.size(); ++k) {
      addAlongside(line, m_made[k].line, sharedWithin_m(thickness_m, m_thickness_m[k]),
                   &m_made[k].line, covered);
    }
    std::vector<Barrier> made;
    for (const Left& left : leftOf(geometry::lengthOf(line), std::move(covered))) {
      made.push_back(barrierOf(id, line, left, gaps));
    }
    for (Barrier& barrier : made) {
      m_made.push_back(std::move(barrier));
      m_thickness_m.push_back(thickness_m);
    }
  }

  Barrier barrierOf(const std::string& id, const Polyline& line, const Left& left,
                    const std::vector<Stretch>& gaps) const {
    Barrier barrier{id,
                    geometry::partOf(line, left.at.from_m, left.at.to_m),
                    m_ground.footing_m2_s_pa,
                    {},
                    m_ground.joint_m2_s_pa()};
    const double ahead = joined(barrier.line, left);
    for (const Stretch& gap : gaps) {
      const double from = std::max(gap.from_m, left.at.from_m) - left.at.from_m;
      const double to = std::min(gap.to_m, left.at.to_m) - left.at.from_m;
      if (to > from) barrier.gaps.push_back({ahead + from, ahead + to});
    }
    return barrier;
  }

  /// Led across to the walls it adjoins; by how much its start moved.
  static double joined(Polyline& line, const Left& left) {
    if (left.after != nullptr) {
      const Point end = geometry::nearest(line.back(), *left.after);
      if (geometry::distance(end, line.back()) > kOffLine_m) line.push_back(end);
    }
    if (left.before == nullptr) return 0.0;
    const Point start = geometry::nearest(line.front(), *left.before);
    const double ahead = geometry::distance(start, line.front());
    if (!(ahead > kOffLine_m)) return 0.0;
    line.insert(line.begin(), start);
    return ahead;
  }

  /// Ends that stop at the face of an outside or inner wall are led up to it; gaps move along.
  Polyline ledToFaces(Polyline line, std::vector<Stretch>& gaps, double thickness_m) const {
    if (line.size() < 2) return line;
    const double ahead = led(line.front(), line[1], thickness_m);
    led(line.back(), line[line.size() - 2], thickness_m);
    for (Stretch& gap : gaps) {
      gap.from_m += ahead;
      gap.to_m += ahead;
    }
    return line;
  }

  /// By how much the end was lengthened.
  double led(Point& end, Point from, double thickness_m) const {
    const double length = geometry::distance(from, end);
    if (!(length > 0.0)) return 0.0;
    const Vec outward = (1.0 / length) * (end - from);
    double longest = 0.0;
    for (const Region& region : m_floor) {
      for (std::size_t k = 0; k < region.outline.size(); ++k) {
        const Segment side{region.outline[k], region.outline[(k + 1) % region.outline.size()]};
        longest = std::max(longest, toLine(end, outward, side, kMeetsWall_m));
      }
    }
    for (const plan::InnerWall& other : m_job.plan.inner_walls) {
      longest = std::max(longest, toAny(end, outward, other.line_m, other.thickness_m));
    }
    for (const plan::RisingWall& other : m_job.plan.rising_walls) {
      longest = std::max(longest, toAny(end, outward, other.line_m, other.thickness_m));
    }
    longest = std::min(longest, kMeetsWall_m + thickness_m + 1.0);
    end = end + longest * outward;
    return longest;
  }

  static double toAny(Point end, Vec outward, const Polyline& line, double thickness_m) {
    double longest = 0.0;
    for (std::size_t k = 1; k < line.size(); ++k) {
      longest = std::max(
          longest, toLine(end, outward, {line[k - 1], line[k]}, 0.5 * thickness_m + kMeetsWall_m));
    }
    return longest;
  }

  /// How far onward the line is, where it is within reach and not run along; else 0.
  static double toLine(Point end, Vec outward, const Segment& side, double reach) {
    const double away = geometry::distance(end, side);
    if (away > reach || away < 1e-9) return 0.0;
    const double turn = geometry::cross(outward, side.b - side.a);
    if (std::abs(turn) < 0.3 * geometry::distance(side.a, side.b)) return 0.0;
    return std::max(0.0, geometry::cross(side.a - end, side.b - side.a) / turn);
  }

  /// Stretches of a zone's side that lie outside the floor or along its edge.
  std::vector<Covered> beyondFloor(const Segment& side) const {
    const double length = geometry::distance(side.a, side.b);
    if (!(length > 0.0)) return {};
    const geometry::Line line{side.a, (1.0 / length) * (side.b - side.a)};
    std::vector<Covered> within;
    std::vector<Covered> beyond;
    const auto addInside = [&](const Polygon& ring, std::vector<Covered>& parts) {
      for (const auto& part : geometry::inside(line, ring)) {
        const Stretch on{std::max(0.0, part.from), std::min(length, part.to)};
        if (on.from_m < on.to_m) parts.push_back({on});
      }
    };
    const auto addEdge = [&](const Polygon& ring) {
      for (std::size_t k = 0; k < ring.size(); ++k) {
        addAlongside({side.a, side.b}, {ring[k], ring[(k + 1) % ring.size()]}, kMeetsWall_m,
                     nullptr, beyond);
      }
    };
    for (const Region& region : m_floor) {
      addInside(region.outline, within);
      addEdge(region.outline);
      for (const Polygon& hole : region.holes) {
        addInside(hole, beyond);
        addEdge(hole);
      }
    }
    for (const Left& outside : leftOf(length, std::move(within))) beyond.push_back({outside.at});
    return beyond;
  }

  const plan::Job& m_job;
  const Ground& m_ground;
  const ModelChoices& m_choices;
  const std::vector<Region>& m_floor;
  std::vector<Barrier> m_made;
  std::vector<double> m_thickness_m;  ///< of each of m_made
};

}  // namespace

std::vector<Barrier> wallsBelow(const plan::Job& job, const Ground& ground,
                                const ModelChoices& choices, const std::vector<Region>& floor) {
  return BarrierMaker(job, ground, choices, floor).made();
}

bool standsByItself(const plan::InnerWall& wall, const std::vector<plan::RisingWall>& rising) {
  std::vector<Covered> covered;
  for (const plan::RisingWall& below : rising) {
    addAlongside(wall.line_m, below.line_m, sharedWithin_m(wall.thickness_m, below.thickness_m),
                 nullptr, covered);
  }
  return !leftOf(geometry::lengthOf(wall.line_m), std::move(covered)).empty();
}

}  // namespace sumpwright::suction
