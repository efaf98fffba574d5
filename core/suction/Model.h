#pragma once
// What the field solver is asked: the fill under one floor as a leaky layer, in SI units.
//
// Suction s = p_room - p (Pa, > 0 is good) is the unknown. Depth-averaged Darcy flow with leakage:
//
//   -div(T grad s) + L s = q + L (p_room - p_outdoors)                q: extraction, m/s
//   at an edge:       T ds/dn + (G_r + G_o) s = G_o (p_room - p_outdoors)
//   across a barrier: T ds/dn = G_w (s1 - s2)
//   along a conduit:  flow = C ds/dl
//
// T = k b / mu is the transmissivity of the fill, L its leakage through the soil, lambda = sqrt(T /
// L) the leakage length. A slab leaks at its joints; sound concrete is nothing beside them. It is
// the mathematics of the steady leaky aquifer (De Glee 1930, Jacob 1946, Hantush and Jacob 1955;
// from memory), and without leakage that of air drawn through a porous bed between two impermeable
// disks (Reddy et al., EPA-600/R-92-090). Steady, incompressible, laminar, uniform over the depth:
// it fails where there is no granular layer. Metres, plan coordinates.

#include <string>
#include <vector>

#include "base/Problem.h"
#include "geometry/Point.h"

namespace sumpwright::suction {

using geometry::Point;
using geometry::Polygon;
using geometry::Polyline;

/// The fill and what closes it above and below.
struct Layer {
  double transmissivity_m3_s_pa = 0.0;  ///< T > 0
  double leak_ground_m_s_pa = 0.0;      ///< L through the soil to outdoors, per area
  bool operator==(const Layer&) const = default;
};

/// One edge of a region, from its corner of the same index to the next.
struct Edge {
  double room_m2_s_pa = 0.0;      ///< G_r: joint of slab and wall; 0: tight
  double outdoors_m2_s_pa = 0.0;  ///< G_o: through the foundation wall to outdoors
  bool party = false;
  int ring = -1;  ///< of the plan, and its edge: the wall it is the inner face of; -1: none
  int wall = -1;
  bool goes_on = false;  ///< a party wall under which the fill goes on next door
  bool operator==(const Edge&) const = default;
};

/// A part of the floor in one piece. Regions must not overlap; where they share a line without
/// conductance the fill runs through.
struct Region {
  Polygon outline;                            ///< either way round
  std::vector<Polygon> holes;                 ///< either way round
  std::vector<Edge> edges;                    ///< of the outline; missing ones are tight
  std::vector<std::vector<Edge>> hole_edges;  ///< of each hole
  bool neighbour = false;  ///< next door: takes part in the flow, counts for no reach
  bool operator==(const Region&) const = default;
};

/// A part of the floor with other ground; of zones that overlap each counts by its share.
struct Zone {
  std::string id;
  Polygon outline;
  Layer layer;
  bool operator==(const Zone&) const = default;
};

/// A stretch of a line, by distance from its first point.
struct Stretch {
  double from_m = 0.0;
  double to_m = 0.0;
  bool operator==(const Stretch&) const = default;
};

/// A thin wall through the fill.
struct Barrier {
  std::string id;
  Polyline line;
  double conductance_m2_s_pa = 0.0;  ///< G_w per metre of wall; 0: tight
  std::vector<Stretch> gaps;         ///< openings through it
  double joint_m2_s_pa = 0.0;        ///< of slab and wall, to the room, on each side
  bool operator==(const Barrier&) const = default;
};

/// A drain trench or duct that short-circuits the fill, barriers included.
struct Conduit {
  std::string id;
  Polyline line;
  double conveyance_m4_s_pa = 0.0;  ///< C: flow per pressure gradient along it
  bool sealed = false;              ///< exchanges air at its two ends only
  bool operator==(const Conduit&) const = default;
};

struct SuctionModel {
  std::vector<Region> regions;
  Layer layer;
  std::vector<Zone> zones;
  std::vector<Barrier> barriers;
  std::vector<Conduit> conduits;
  bool operator==(const SuctionModel&) const = default;
};

/// T = k b / mu, m3/(s Pa).
double transmissivity(double permeability_m2, double thickness_m, double viscosity_pa_s);
/// G = w^3 / (12 mu t), m2/(s Pa): laminar flow between parallel plates (cubic law).
double crackConductance(double width_m, double depth_m, double viscosity_pa_s);

/// What keeps the model from having one answer: suction.model.area (no region with an area),
/// suction.model.numbers (not finite, or negative), suction.model.transmissivity (not positive),
/// suction.model.leakage (nothing leaks at all, so that no steady state is). Empty: sound.
base::Problems checkModel(const SuctionModel& model);

/// Area of the floor, neighbours left out, m2.
double floorArea_m2(const SuctionModel& model);

}  // namespace sumpwright::suction
