#include "suction/ModelOf.h"

#include <algorithm>
#include <cmath>

#include "airflow/Duty.h"
#include "geometry/Areas.h"
#include "geometry/Distance.h"
#include "geometry/HalfBall.h"
#include "geometry/Shapes.h"
#include "plan/FloorLevels.h"
#include "plan/WallBands.h"
#include "plan/WallThickness.h"
#include "suction/FloorEdges.h"
#include "suction/Trenches.h"
#include "suction/WallsBelow.h"

namespace sumpwright::suction {

namespace {

using base::Message;
using base::Problem;
using geometry::Face;
using geometry::Segment;
using geometry::Vec;

constexpr double kSmallestPiece_m2 = 0.1;  // slivers between walls are no floor (own figure)
constexpr double kOnFace_m = 0.02;  // an edge that far from a wall's inner face is its (own figure)
constexpr double kFar_m = 1000.0;

Problem noPlan() { return {Message("suction.model.plan"), "/plan/rings", base::Gravity::unsound}; }

Point mirrored(Point p, const Segment& line) {
  const Vec along = line.b - line.a;
  const double t = geometry::dot(p - line.a, along) / geometry::dot(along, along);
  const Point foot = geometry::lerp(line.a, line.b, t);
  return foot + (foot - p);
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
    m_model.barriers = wallsBelow(m_job, m_ground, m_choices, m_model.regions);
    addNextDoor();
    if (m_choices.trenches_open) m_model.conduits = trenchesBelow(m_job.plan, m_ground.air);
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
      if (plan::isSuspended(zone.kind)) taken.push_back(zone.outline_m);
    }
    return geometry::without(m_job.plan.rings[0].corners, taken);
  }

  Region regionOf(const Face& face) const {
    Region region;
    region.outline = face.outline;
    region.holes = face.holes;
    addEdges(m_job, m_ground, m_choices, region);
    return region;
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
    addOutdoors(own, cut);
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

  /// Beyond our other walls lies no floor of theirs.
  void addOutdoors(const std::vector<Region>& own, std::vector<Polygon>& cut) const {
    for (const Region& region : own) {
      for (std::size_t k = 0; k < region.edges.size(); ++k) {
        const Edge& edge = region.edges[k];
        if (edge.goes_on || edge.ring < 0) continue;
        const Point a = region.outline[k];
        const Point b = region.outline[(k + 1) % region.outline.size()];
        const plan::Wall& wall = m_job.plan.rings[static_cast<std::size_t>(edge.ring)]
                                     .walls[static_cast<std::size_t>(edge.wall)];
        const Vec out = (-plan::thicknessTaken_m(wall, m_job.house) / geometry::distance(a, b)) *
                        geometry::left(b - a);
        cut.push_back({a, b, b + out, a + out});
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
          leak_ground_m_s_pa};
}

double Ground::joint_m2_s_pa() const {
  return crackConductance(joint_width_m, slab_m, airflow::viscosity_pa_s(air));
}

InertiaOf inertiaOf(const Ground& ground) {
  return [ground](double radius_m) { return ground.inertia_pa_s2_m6(radius_m); };
}

double Ground::inertia_pa_s2_m6(double radius_m) const {
  return airflow::inertia_pa_s2_m6(wardBeta(permeability_m2), thickness_m, radius_m, air);
}

bool hasUnknownWalls(const plan::Plan& plan) {
  return std::any_of(plan.inner_walls.begin(), plan.inner_walls.end(), [&](const auto& wall) {
    return wall.below_floor == plan::BelowFloor::unknown && standsByItself(wall, plan.rising_walls);
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
  const bool walls = hasUnknownWalls(plan);
  const bool party = hasUnknownParty(plan);
  const bool trenches = !drainsBelow(plan).empty();
  std::vector<ModelChoices> all;
  for (const bool stand : {true, false}) {
    for (const bool open : {false, true}) {
      for (const bool trench : {false, true}) {
        if ((stand || walls) && (!open || party) && (!trench || trenches)) {
          all.push_back({stand, open, trench});
        }
      }
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
