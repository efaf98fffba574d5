#include "suction/ModelOf.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "airflow/Duty.h"
#include "geometry/Areas.h"
#include "geometry/Distance.h"
#include "geometry/HalfBall.h"
#include "geometry/Shapes.h"
#include "plan/PlanGeometry.h"
#include "plan/WallBands.h"

namespace sumpwright::suction {

namespace {

using base::Message;
using base::Problem;
using geometry::Face;
using geometry::Segment;
using geometry::Vec;

constexpr double kSmallestPiece_m2 = 0.1;  // slivers between walls are no floor (own figure)
constexpr double kOnFace_m = 0.02;  // an edge that far from a wall's inner face is its (own figure)
constexpr double kMeetsWall_m = 0.10;  // barriers this near to an edge run up to it (own figure)
constexpr double kFar_m = 1000.0;
constexpr double kUsualGround_m = -0.15;  // outside ground where nobody said (common practice)

Problem noPlan() { return {Message("suction.model.plan"), "/plan/rings", base::Gravity::unsound}; }

double heightExposed_m(const plan::Job& job, const plan::Wall& wall, double slab_m) {
  const double ground =
      wall.ground_level_m.value_or(job.house.ground_level_m.value_or(kUsualGround_m));
  return std::max(0.0, -slab_m - ground);
}

Point mirrored(Point p, const Segment& line) {
  const Vec along = line.b - line.a;
  const double t = geometry::dot(p - line.a, along) / geometry::dot(along, along);
  const Point foot = geometry::lerp(line.a, line.b, t);
  return foot + (foot - p);
}

bool isSuspended(const plan::FloorZone& zone) {
  return zone.kind == plan::FloorKind::suspended_concrete ||
         zone.kind == plan::FloorKind::suspended_timber;
}

class ModelMaker {
 public:
  ModelMaker(const plan::Job& job, const Ground& ground, const ModelChoices& choices)
      : m_job(job), m_ground(ground), m_choices(choices) {}

  base::Result<SuctionModel> made() {
    const std::vector<plan::Ring>& rings = m_job.plan.rings;
    if (rings.empty() || rings[0].corners.size() < 3 || !rings[0].closed) return noPlan();
    if (geometry::firstSelfContact(rings[0].corners)) return noPlan();
    const auto floor = pieces();
    if (!floor) return noPlan();
    m_model.layer = m_ground.layer();
    for (const Face& face : *floor) {
      if (geometry::faceArea(face) >= kSmallestPiece_m2) m_model.regions.push_back(regionOf(face));
    }
    addRisingWalls();
    addInnerWalls();
    addOldOuterWalls();
    addNextDoor();
    base::Problems problems = checkModel(m_model);
    if (!problems.empty()) return problems;
    return std::move(m_model);
  }

 private:
  std::optional<std::vector<Face>> pieces() const {
    std::vector<Polygon> taken;
    for (std::size_t r = 0; r < m_job.plan.rings.size(); ++r) {
      const plan::Ring& ring = m_job.plan.rings[r];
      const auto bands = plan::bandsOfRing(m_job, ring);
      taken.insert(taken.end(), bands.begin(), bands.end());
      if (r > 0) taken.push_back(ring.corners);
    }
    for (const plan::FloorZone& zone : m_job.plan.floor_zones) {
      if (isSuspended(zone)) taken.push_back(zone.outline_m);
    }
    return geometry::without(m_job.plan.rings[0].corners, taken);
  }

  Region regionOf(const Face& face) const {
    Region region;
    region.outline = face.outline;
    region.holes = face.holes;
    region.edges = edgesOf(face.outline);
    for (const Polygon& hole : face.holes) region.hole_edges.push_back(edgesOf(hole));
    return region;
  }

  std::vector<Edge> edgesOf(const Polygon& ring) const {
    std::vector<Edge> edges;
    for (std::size_t k = 0; k < ring.size(); ++k) {
      edges.push_back(edgeOn({ring[k], ring[(k + 1) % ring.size()]}));
    }
    return edges;
  }

  /// The edge as the inner face of a wall; tight where it is none.
  Edge edgeOn(const Segment& side) const {
    Edge edge;
    double least = kOnFace_m;
    const Point middle = geometry::lerp(side.a, side.b, 0.5);
    for (std::size_t r = 0; r < m_job.plan.rings.size(); ++r) {
      const plan::Ring& ring = m_job.plan.rings[r];
      for (std::size_t e = 0; e < plan::edgeCount(ring) && e < ring.walls.size(); ++e) {
        const double off = std::abs(geometry::distance(middle, plan::edgeOf(ring, e)) -
                                    plan::bandThickness_m(m_job, ring.walls[e]));
        if (off > least) continue;
        least = off;
        edge.ring = static_cast<int>(r);
        edge.wall = static_cast<int>(e);
      }
    }
    if (edge.ring < 0) return edge;
    const plan::Wall& wall = m_job.plan.rings[static_cast<std::size_t>(edge.ring)]
                                 .walls[static_cast<std::size_t>(edge.wall)];
    edge.party = wall.kind == plan::WallKind::party;
    edge.goes_on = edge.party && goesOn(wall);
    if (edge.goes_on) return edge;
    edge.room_m2_s_pa = m_ground.joint_m2_s_pa();
    if (!edge.party) {
      edge.outdoors_m2_s_pa =
          m_ground.exposed_m_s_pa * heightExposed_m(m_job, wall, m_ground.slab_m);
    }
    return edge;
  }

  bool goesOn(const plan::Wall& party) const {
    return party.party_below == plan::PartyBelow::continuous ||
           (party.party_below == plan::PartyBelow::unknown && m_choices.party_open);
  }

  void addBarrier(const std::string& id, Polyline line, std::vector<Stretch> gaps = {}) {
    if (line.size() < 2) return;
    // From wall to wall: what ends a wall's thickness short of another meets it below.
    m_model.barriers.push_back(
        {id, std::move(line), m_ground.footing_m2_s_pa, std::move(gaps), m_ground.joint_m2_s_pa()});
  }

  void addRisingWalls() {
    for (const plan::RisingWall& wall : m_job.plan.rising_walls) {
      std::vector<Stretch> gaps;
      for (const plan::Gap& gap : wall.gaps) gaps.push_back({gap.from_m, gap.to_m});
      Polyline line = ledToFaces(wall.line_m, gaps, wall.thickness_m);
      addBarrier(wall.id, std::move(line), std::move(gaps));
    }
  }

  void addInnerWalls() {
    for (const plan::InnerWall& wall : m_job.plan.inner_walls) {
      const bool stands =
          wall.below_floor == plan::BelowFloor::own_footing ||
          (wall.below_floor == plan::BelowFloor::unknown && m_choices.unknown_walls_stand);
      std::vector<Stretch> none;
      if (stands) addBarrier(wall.id, ledToFaces(wall.line_m, none, wall.thickness_m));
    }
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
    for (const Region& region : m_model.regions) {
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

  /// Between the house and what was built on later.
  void addOldOuterWalls() {
    for (const plan::FloorZone& zone : m_job.plan.floor_zones) {
      if (zone.part == plan::HousePart::house || isSuspended(zone)) continue;
      for (std::size_t k = 0; k < zone.outline_m.size(); ++k) {
        const Segment side{zone.outline_m[k], zone.outline_m[(k + 1) % zone.outline_m.size()]};
        if (isWithinFloor(geometry::lerp(side.a, side.b, 0.5)) && !isDrawn(side)) {
          addBarrier(zone.id, {side.a, side.b});
        }
      }
    }
  }

  bool isWithinFloor(Point p) const {
    return std::any_of(m_model.regions.begin(), m_model.regions.end(), [&](const Region& r) {
      double least = std::numeric_limits<double>::infinity();
      for (std::size_t k = 0; k < r.outline.size(); ++k) {
        least = std::min(
            least,
            geometry::distance(p, Segment{r.outline[k], r.outline[(k + 1) % r.outline.size()]}));
      }
      return least > kMeetsWall_m && geometry::contains(r.outline, p);
    });
  }

  /// Whether a barrier that is drawn stands there already.
  bool isDrawn(const Segment& side) const {
    const Point middle = geometry::lerp(side.a, side.b, 0.5);
    return std::any_of(m_model.barriers.begin(), m_model.barriers.end(), [&](const Barrier& b) {
      return geometry::distance(middle, b.line) < 0.5;  // half a wall's thickness and more
    });
  }

  /// The same floor once more beyond every party wall, mirrored at its inner face. Inner walls next
  /// door are not known and left out.
  void addNextDoor() {
    std::vector<Region> own = m_model.regions;
    std::vector<Polygon> taken;
    for (const Region& region : own) taken.push_back(region.outline);
    for (const Region& region : own) {
      for (std::size_t k = 0; k < region.edges.size(); ++k) {
        if (!region.edges[k].goes_on) continue;
        addMirrored(own, {region.outline[k], region.outline[(k + 1) % region.outline.size()]},
                    taken);
      }
    }
  }

  void addMirrored(const std::vector<Region>& own, const Segment& line,
                   std::vector<Polygon>& taken) {
    const Vec along = (1.0 / geometry::distance(line.a, line.b)) * (line.b - line.a);
    // The floor lies to the left of its edges, so that is cut away.
    const Point a = line.a - kFar_m * along;
    const Point b = line.b + kFar_m * along;
    std::vector<Polygon> cut = taken;
    cut.push_back({a, b, b + kFar_m * geometry::left(along), a + kFar_m * geometry::left(along)});
    for (const Region& region : own) {
      Polygon image;
      for (const Point p : region.outline) image.push_back(mirrored(p, line));
      std::reverse(image.begin(), image.end());
      const auto faces = geometry::without(image, cut);
      for (const Face& face : faces.value_or(std::vector<Face>{})) {
        if (geometry::faceArea(face) < kSmallestPiece_m2) continue;
        Region next{face.outline, face.holes};
        for (std::size_t k = 0; k < face.outline.size(); ++k) {
          next.edges.push_back(
              edgeNextDoor({face.outline[k], face.outline[(k + 1) % face.outline.size()]}, own));
        }
        next.neighbour = true;
        taken.push_back(face.outline);
        m_model.regions.push_back(std::move(next));
      }
    }
  }

  /// A joint like ours, but for where it borders on our own floor.
  Edge edgeNextDoor(const Segment& side, const std::vector<Region>& own) const {
    const Point middle = geometry::lerp(side.a, side.b, 0.5);
    for (const Region& region : own) {
      for (std::size_t k = 0; k < region.outline.size(); ++k) {
        const Segment ours{region.outline[k], region.outline[(k + 1) % region.outline.size()]};
        if (geometry::distance(middle, ours) < kOnFace_m) return {};
      }
    }
    return {m_ground.joint_m2_s_pa()};
  }

  const plan::Job& m_job;
  const Ground& m_ground;
  const ModelChoices& m_choices;
  SuctionModel m_model;
};

template <class Is>
bool anyParty(const plan::Plan& plan, Is&& is) {
  return std::any_of(plan.rings.begin(), plan.rings.end(), [&](const plan::Ring& ring) {
    return std::any_of(ring.walls.begin(), ring.walls.end(), [&](const plan::Wall& wall) {
      return wall.kind == plan::WallKind::party && is(wall.party_below);
    });
  });
}

}  // namespace

Layer Ground::layer() const {
  return {transmissivity(permeability_m2, thickness_m, airflow::viscosity_pa_s(air)),
          leak_room_m_s_pa, leak_ground_m_s_pa};
}

double Ground::joint_m2_s_pa() const {
  return crackConductance(joint_width_m, slab_m, airflow::viscosity_pa_s(air));
}

double Ground::inertia_pa_s2_m6(double radius_m) const {
  return airflow::inertia_pa_s2_m6(wardBeta(permeability_m2), thickness_m, radius_m, air);
}

bool hasUnknownWalls(const plan::Plan& plan) {
  return std::any_of(plan.inner_walls.begin(), plan.inner_walls.end(), [](const auto& wall) {
    return wall.below_floor == plan::BelowFloor::unknown;
  });
}

bool hasPartyWalls(const plan::Plan& plan) {
  return anyParty(plan, [](plan::PartyBelow) { return true; });
}

bool hasUnknownParty(const plan::Plan& plan) {
  return anyParty(plan, [](plan::PartyBelow below) { return below == plan::PartyBelow::unknown; });
}

bool mayGoOnNextDoor(const plan::Plan& plan) {
  return anyParty(plan, [](plan::PartyBelow below) { return below != plan::PartyBelow::cut; });
}

std::vector<ModelChoices> choicesOf(const plan::Plan& plan) {
  std::vector<ModelChoices> all;
  for (const bool stand : {true, false}) {
    for (const bool open : {false, true}) {
      if (!stand && !hasUnknownWalls(plan)) continue;
      if (open && !hasUnknownParty(plan)) continue;
      all.push_back({stand, open});
    }
  }
  return all;
}

base::Result<SuctionModel> modelOf(const plan::Job& job, const Ground& ground,
                                   const ModelChoices& choices) {
  return ModelMaker(job, ground, choices).made();
}

double pitRadius_m(double volume_m3) { return geometry::halfBallRadius_m(volume_m3); }

Sink sinkAt(const perimeter::Perimeter& perimeter, perimeter::Place place, double radius_m) {
  const perimeter::Edge& edge = perimeter.edgeAt(place);
  return {perimeter.pointAt(place) + (edge.thickness_m + radius_m) * edge.inward, radius_m};
}

std::optional<Sink> sinkOf(const perimeter::Perimeter& perimeter, const plan::Sump& sump,
                           double radius_m) {
  if (sump.at_m) return Sink{*sump.at_m, radius_m};
  const perimeter::Place place{sump.ring, sump.chainage_m};
  if (!perimeter.contains(place)) return std::nullopt;
  return sinkAt(perimeter, place, radius_m);
}

}  // namespace sumpwright::suction
