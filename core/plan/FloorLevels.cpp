#include "plan/FloorLevels.h"

#include <algorithm>

#include "plan/Assumed.h"

namespace sumpwright::plan {

namespace {

/// Thicknesses where nobody knows them: of concrete floors as insulated today, and of the slabs
/// laid in old solid houses (common practice, both).
struct UsualFloor {
  double screed_m, insulation_m, slab_m;
};
constexpr UsualFloor kUsualFloor{0.065, 0.100, 0.150};
constexpr UsualFloor kUsualOldFloor{0.050, 0.0, 0.100};

/// Concrete over the ground under a suspended floor: joists of 200 mm and the void of 150 mm that
/// Approved Document C of 1992 asks for; its thickness from memory.
constexpr double kUnderFloor_m = 0.350;
constexpr double kOversite_m = 0.100;

Taken saidOr(const std::optional<double>& said, double usual) {
  return {said.value_or(usual), said.has_value()};
}

}  // namespace

bool isSuspended(FloorKind kind) {
  return kind == FloorKind::suspended_timber || kind == FloorKind::suspended_concrete;
}

FloorLayers floorLayers(const House& house, const FloorZone* zone) {
  FloorLayers layers;
  const FloorKind kind = zone != nullptr ? zone->kind : FloorKind::unknown;
  layers.floor_m = zone != nullptr ? zone->level_m.value_or(0.0) : 0.0;
  if (isSuspended(kind)) {
    layers.under_floor_m = kUnderFloor_m;
    layers.slab = {kOversite_m, false};
    return layers;
  }
  const bool old =
      house.build_type == BuildType::solid_masonry || house.build_type == BuildType::stone_rubble;
  const UsualFloor& usual = old ? kUsualOldFloor : kUsualFloor;
  layers.screed = saidOr(house.screed_m, usual.screed_m);
  layers.insulation = saidOr(house.insulation_m, usual.insulation_m);
  layers.slab = saidOr(zone != nullptr && zone->slab_m ? zone->slab_m : house.slab_m, usual.slab_m);
  return layers;
}

double GroundLine::at(double along_m) const {
  if (along_m <= points.front().along_m) return points.front().level_m;
  for (std::size_t i = 1; i < points.size(); ++i) {
    const At& a = points[i - 1];
    const At& b = points[i];
    if (along_m > b.along_m) continue;
    const double t = (along_m - a.along_m) / (b.along_m - a.along_m);
    return a.level_m + t * (b.level_m - a.level_m);
  }
  return points.back().level_m;
}

GroundLine groundAlong(const House& house, const Wall& wall) {
  GroundLine line;
  for (const GroundPoint& p : wall.ground_points) line.points.push_back({p.offset_m, p.level_m});
  std::stable_sort(line.points.begin(), line.points.end(),
                   [](const auto& a, const auto& b) { return a.along_m < b.along_m; });
  if (!line.points.empty()) return line;
  const auto& level = wall.ground_level_m ? wall.ground_level_m : house.ground_level_m;
  line.assumed = !level;
  line.points.push_back({0.0, level.value_or(kAssumedGround_m)});
  return line;
}

}  // namespace sumpwright::plan
