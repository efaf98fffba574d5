#include "plan/WallThickness.h"

namespace sumpwright::plan {

std::optional<double> thicknessOf(const std::vector<Layer>& layers) {
  if (layers.empty()) return std::nullopt;
  double total = 0.0;
  for (const Layer& layer : layers) total += layer.thickness_m;
  return total;
}

std::optional<double> knownThickness_m(const House& house) {
  return house.wall_thickness_m ? house.wall_thickness_m : thicknessOf(house.wall_layers);
}

std::optional<double> knownThickness_m(const Wall& wall, const House& house) {
  if (wall.thickness_m) return wall.thickness_m;
  const auto of_layers = thicknessOf(wall.layers);
  return of_layers ? of_layers : knownThickness_m(house);
}

double usualThickness_m(const House& house) {
  return knownThickness_m(house).value_or(kAssumedWallThickness_m);
}

double thicknessTaken_m(const Wall& wall, const House& house) {
  return knownThickness_m(wall, house).value_or(kAssumedWallThickness_m);
}

double thicknessTaken_m(const Ring& ring, std::size_t edge, const House& house) {
  return edge < ring.walls.size() ? thicknessTaken_m(ring.walls[edge], house)
                                  : usualThickness_m(house);
}

}  // namespace sumpwright::plan
