#include "suction/FloorEdges.h"

#include <algorithm>
#include <cmath>

#include "perimeter/Behind.h"
#include "plan/FloorLevels.h"
#include "plan/PlanGeometry.h"
#include "plan/WallThickness.h"
#include "suction/Along.h"

namespace sumpwright::suction {

namespace {

using geometry::Segment;
using geometry::Vec;

constexpr double kOnInnerFace_m = 0.02;  // a side that far from a wall's inner face is its (own
                                         // figure)
constexpr double kStraight = 0.02;       // sine of the angle within which it is (own figure)
constexpr double kLeastEdge_m = 0.01;    // shorter ones are not told apart (own figure)
constexpr double kSameHeight_m = 1e-9;   // rounding

/// A wall along a side of the floor.
struct Facing {
  Stretch at;  ///< along the side
  std::size_t ring = 0;
  std::size_t wall = 0;
};

/// Height by which the foundation stands free, by distance along the wall: straight between.
struct Shown {
  double along_m = 0.0;
  double before_m = 0.0;  ///< it may jump, where one floor ends and another begins
  double after_m = 0.0;
};

perimeter::Edge edgeFrame(const plan::Job& job, const plan::Ring& ring, std::size_t wall) {
  perimeter::Edge edge;
  edge.from = plan::edgeOf(ring, wall).a;
  edge.to = plan::edgeOf(ring, wall).b;
  edge.length_m = geometry::distance(edge.from, edge.to);
  edge.along = (1.0 / edge.length_m) * (edge.to - edge.from);
  edge.inward = geometry::left(edge.along);
  edge.thickness_m = plan::thicknessTaken_m(ring, wall, job.house);
  return edge;
}

const plan::FloorZone* zoneAt(const plan::Plan& plan, const std::vector<perimeter::Span>& spans,
                              double along_m) {
  for (const perimeter::Span& span : spans) {
    if (along_m < span.from_m || along_m >= span.to_m) continue;
    const auto zone = std::find_if(plan.floor_zones.begin(), plan.floor_zones.end(),
                                   [&](const auto& z) { return z.id == span.id; });
    if (zone != plan.floor_zones.end()) return &*zone;
  }
  return nullptr;
}

/// The foundation of one wall as it is seen from outside.
class Foundation {
 public:
  Foundation(const plan::Job& job, const plan::Ring& ring, std::size_t wall)
      : m_job(job),
        m_edge(edgeFrame(job, ring, wall)),
        m_spans(perimeter::zonesBehind(m_edge, job.plan.floor_zones)),
        m_ground(plan::groundAlong(job.house, ring.walls[wall])) {
    std::vector<double> breaks{0.0, m_edge.length_m};
    for (const auto& point : m_ground.points) breaks.push_back(point.along_m);
    for (const auto& span : m_spans) {
      breaks.push_back(span.from_m);
      breaks.push_back(span.to_m);
    }
    std::erase_if(breaks, [&](double s) { return s < 0.0 || s > m_edge.length_m; });
    std::sort(breaks.begin(), breaks.end());
    for (std::size_t k = 1; k < breaks.size(); ++k) addPiece(breaks[k - 1], breaks[k]);
  }

  double alongOf(Point p) const { return geometry::dot(m_edge.along, p - m_edge.from); }

  /// Where it changes how it goes on.
  const std::vector<Shown>& shown() const { return m_shown; }

  /// Mean height between two places; level beyond the wall's ends.
  double mean_m(double from, double to) const {
    if (!(from < to) || m_shown.empty()) return 0.0;
    double sum = 0.0;
    if (from < 0.0) sum += (std::min(to, 0.0) - from) * m_shown.front().after_m;
    for (std::size_t k = 1; k < m_shown.size(); ++k) {
      const Shown& a = m_shown[k - 1];
      const Shown& b = m_shown[k];
      const double low = std::max(from, a.along_m);
      const double high = std::min(to, b.along_m);
      if (!(low < high)) continue;
      const double rise = (b.before_m - a.after_m) / (b.along_m - a.along_m);
      sum += (high - low) * (a.after_m + rise * (0.5 * (low + high) - a.along_m));
    }
    const double end = m_shown.back().along_m;
    if (to > end) sum += (to - std::max(from, end)) * m_shown.back().before_m;
    return sum / (to - from);
  }

 private:
  void addPiece(double from, double to) {
    if (to - from < kSameHeight_m) return;
    const plan::FloorZone* zone = zoneAt(m_job.plan, m_spans, 0.5 * (from + to));
    const double under = plan::floorLayers(m_job.house, zone).underside_m();
    const double inset = 1e-3 * (to - from);  // of two points at one place this side's counts
    const double at_inset = under - m_ground.at(from + inset);
    const double rise = (under - m_ground.at(to - inset) - at_inset) / (to - from - 2.0 * inset);
    const double start = at_inset - rise * inset;
    const double end = start + rise * (to - from);
    add(from, std::max(0.0, start));
    if ((start > 0.0) != (end > 0.0)) {
      m_shown.push_back({from + (to - from) * (start / (start - end)), 0.0, 0.0});
    }
    m_shown.push_back({to, std::max(0.0, end), std::max(0.0, end)});
  }

  void add(double along, double after) {
    if (!m_shown.empty() && m_shown.back().along_m == along) {
      m_shown.back().after_m = after;
    } else {
      m_shown.push_back({along, after, after});
    }
  }

  const plan::Job& m_job;
  perimeter::Edge m_edge;
  std::vector<perimeter::Span> m_spans;
  plan::GroundLine m_ground;
  std::vector<Shown> m_shown;
};

class EdgeMaker {
 public:
  EdgeMaker(const plan::Job& job, const Ground& ground, const ModelChoices& choices)
      : m_job(job), m_ground(ground), m_choices(choices) {}

  void addTo(Polygon& ring, std::vector<Edge>& edges) {
    Polygon corners;
    for (std::size_t k = 0; k < ring.size(); ++k) {
      addSide({ring[k], ring[(k + 1) % ring.size()]}, corners, edges);
    }
    ring = std::move(corners);
  }

 private:
  void addSide(const Segment& side, Polygon& corners, std::vector<Edge>& edges) {
    const double length = geometry::distance(side.a, side.b);
    const auto facing = wallsAlong(side);
    double from = 0.0;
    for (std::size_t k = 0; k < facing.size() && from < length; ++k) {
      double to = length;
      if (k + 1 < facing.size()) to = 0.5 * (facing[k].at.to_m + facing[k + 1].at.from_m);
      if (length - to < kLeastEdge_m) to = length;
      if (to - from < kLeastEdge_m && to < length) continue;
      addWall(side, {from, to}, facing[k], corners, edges);
      from = to;
    }
    if (!facing.empty()) return;
    corners.push_back(side.a);
    edges.emplace_back();
  }

  /// Walls whose inner face the side is, in order along it.
  std::vector<Facing> wallsAlong(const Segment& side) const {
    std::vector<Facing> facing;
    const Vec way = side.b - side.a;
    for (std::size_t r = 0; r < m_job.plan.rings.size(); ++r) {
      const plan::Ring& ring = m_job.plan.rings[r];
      for (std::size_t e = 0; e < plan::edgeCount(ring) && e < ring.walls.size(); ++e) {
        const Segment outer = plan::edgeOf(ring, e);
        const Vec along = outer.b - outer.a;
        const double product = geometry::norm(along) * geometry::norm(way);
        // Both have the floor on their left.
        if (!(product > 0.0) || geometry::dot(along, way) < 0.0 ||
            std::abs(geometry::cross(along, way)) > kStraight * product) {
          continue;
        }
        const Vec in = (plan::thicknessTaken_m(ring, e, m_job.house) / geometry::norm(along)) *
                       geometry::left(along);
        const auto common = alongside(side, {outer.a + in, outer.b + in}, kOnInnerFace_m);
        if (common) facing.push_back({*common, r, e});
      }
    }
    std::sort(facing.begin(), facing.end(), [](const Facing& a, const Facing& b) {
      return a.at.from_m + a.at.to_m < b.at.from_m + b.at.to_m;
    });
    return facing;
  }

  void addWall(const Segment& side, const Stretch& at, const Facing& facing, Polygon& corners,
               std::vector<Edge>& edges) const {
    const plan::Ring& ring = m_job.plan.rings[facing.ring];
    const plan::Wall& wall = ring.walls[facing.wall];
    Edge edge;
    edge.ring = static_cast<int>(facing.ring);
    edge.wall = static_cast<int>(facing.wall);
    edge.party = wall.kind == plan::WallKind::party;
    edge.goes_on = edge.party && goesOn(wall);
    if (!edge.goes_on) edge.room_m2_s_pa = m_ground.joint_m2_s_pa();
    const double length = geometry::distance(side.a, side.b);
    const auto add = [&](double from) {
      corners.push_back(geometry::lerp(side.a, side.b, from / length));
      edges.push_back(edge);
    };
    if (edge.party) return add(at.from_m);
    const Foundation foundation(m_job, ring, facing.wall);
    const double start = foundation.alongOf(side.a);
    double last = -1.0;
    for (const Stretch& part : partsOf(foundation, start, at)) {
      const double height = foundation.mean_m(start + part.from_m, start + part.to_m);
      if (std::abs(height - last) < kSameHeight_m) continue;
      last = height;
      edge.outdoors_m2_s_pa = m_ground.exposed_m_s_pa * height;
      add(part.from_m);
    }
  }

  static std::vector<Stretch> partsOf(const Foundation& foundation, double start,
                                      const Stretch& at) {
    std::vector<Stretch> parts;
    double from = at.from_m;
    for (const Shown& next : foundation.shown()) {
      const double to = next.along_m - start;
      if (to - from < kLeastEdge_m || at.to_m - to < kLeastEdge_m) continue;
      parts.push_back({from, to});
      from = to;
    }
    parts.push_back({from, at.to_m});
    return parts;
  }

  bool goesOn(const plan::Wall& party) const {
    return party.party_below == plan::PartyBelow::continuous ||
           (party.party_below == plan::PartyBelow::unknown && m_choices.party_open);
  }

  const plan::Job& m_job;
  const Ground& m_ground;
  const ModelChoices& m_choices;
};

}  // namespace

void addEdges(const plan::Job& job, const Ground& ground, const ModelChoices& choices,
              Region& region) {
  EdgeMaker maker(job, ground, choices);
  maker.addTo(region.outline, region.edges);
  for (Polygon& hole : region.holes) maker.addTo(hole, region.hole_edges.emplace_back());
}

}  // namespace sumpwright::suction
