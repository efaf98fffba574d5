#include "suction/Model.h"

#include <algorithm>
#include <cmath>

#include "geometry/Shapes.h"

namespace sumpwright::suction {

namespace {

using base::Message;
using base::Problem;
using base::Problems;

double regionArea(const Region& region) {
  double area = std::abs(geometry::signedArea(region.outline));
  for (const Polygon& hole : region.holes) area -= std::abs(geometry::signedArea(hole));
  return area;
}

bool fair(double value) { return std::isfinite(value) && value >= 0.0; }

bool fair(const Polyline& line) {
  return std::all_of(line.begin(), line.end(),
                     [](Point p) { return std::isfinite(p.x) && std::isfinite(p.y); });
}

bool fair(const std::vector<Edge>& edges) {
  return std::all_of(edges.begin(), edges.end(), [](const Edge& e) {
    return fair(e.room_m2_s_pa) && fair(e.outdoors_m2_s_pa);
  });
}

bool fair(const Layer& layer) {
  return fair(layer.transmissivity_m3_s_pa) && fair(layer.leak_ground_m_s_pa);
}

bool fair(const Region& region) {
  return fair(region.outline) && fair(region.edges) &&
         std::all_of(region.holes.begin(), region.holes.end(),
                     [](const Polygon& hole) { return fair(hole); }) &&
         std::all_of(region.hole_edges.begin(), region.hole_edges.end(),
                     [](const std::vector<Edge>& edges) { return fair(edges); });
}

bool fair(const Barrier& barrier) {
  return fair(barrier.line) && fair(barrier.conductance_m2_s_pa) && fair(barrier.joint_m2_s_pa) &&
         std::all_of(barrier.gaps.begin(), barrier.gaps.end(), [](const Stretch& gap) {
           return std::isfinite(gap.from_m) && std::isfinite(gap.to_m);
         });
}

template <class Things>
bool allFair(const Things& things) {
  return std::all_of(things.begin(), things.end(), [](const auto& thing) { return fair(thing); });
}

bool allNumbersFair(const SuctionModel& model) {
  return fair(model.layer) && allFair(model.regions) && allFair(model.barriers) &&
         std::all_of(model.zones.begin(), model.zones.end(),
                     [](const Zone& z) { return fair(z.outline) && fair(z.layer); }) &&
         std::all_of(model.conduits.begin(), model.conduits.end(),
                     [](const Conduit& c) { return fair(c.line) && fair(c.conveyance_m4_s_pa); });
}

bool anyLeak(const SuctionModel& model) {
  const auto leaky = [](const Edge& e) { return e.room_m2_s_pa + e.outdoors_m2_s_pa > 0.0; };
  for (const Region& region : model.regions) {
    if (std::any_of(region.edges.begin(), region.edges.end(), leaky)) return true;
    for (const auto& edges : region.hole_edges) {
      if (std::any_of(edges.begin(), edges.end(), leaky)) return true;
    }
  }
  return model.layer.leak_ground_m_s_pa > 0.0 ||
         std::any_of(model.zones.begin(), model.zones.end(),
                     [](const Zone& z) { return z.layer.leak_ground_m_s_pa > 0.0; }) ||
         std::any_of(model.barriers.begin(), model.barriers.end(),
                     [](const Barrier& b) { return b.joint_m2_s_pa > 0.0; });
}

Problem problem(const char* id) { return {Message(id), "", base::Gravity::unsound}; }

}  // namespace

double transmissivity(double permeability_m2, double thickness_m, double viscosity_pa_s) {
  return permeability_m2 * thickness_m / viscosity_pa_s;
}

double crackConductance(double width_m, double depth_m, double viscosity_pa_s) {
  return width_m * width_m * width_m / (12.0 * viscosity_pa_s * depth_m);
}

base::Problems checkModel(const SuctionModel& model) {
  if (!allNumbersFair(model)) return {problem("suction.model.numbers")};
  Problems found;
  if (!(floorArea_m2(model) > 0.0)) found.push_back(problem("suction.model.area"));
  const bool layers = model.layer.transmissivity_m3_s_pa > 0.0 &&
                      std::all_of(model.zones.begin(), model.zones.end(), [](const Zone& z) {
                        return z.layer.transmissivity_m3_s_pa > 0.0;
                      });
  if (!layers) found.push_back(problem("suction.model.transmissivity"));
  if (!anyLeak(model)) found.push_back(problem("suction.model.leakage"));
  return found;
}

double floorArea_m2(const SuctionModel& model) {
  double area = 0.0;
  for (const Region& region : model.regions) {
    if (!region.neighbour) area += regionArea(region);
  }
  return area;
}

}  // namespace sumpwright::suction
