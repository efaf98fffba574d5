#include "build/Layers.h"

#include <algorithm>

namespace sumpwright::build {

namespace {

using plan::BuildType;
using plan::Layer;
using plan::LayerKind;

// Common practice: two leaves of 100 mm and a cavity of 100 to 150 mm; a timber frame keeps 50 mm
// clear behind its brick.
constexpr double kLeaf_m = 0.10;
constexpr double kFrameCavity_m = 0.05;

std::vector<Layer> cavityWall(double thickness, const plan::House& house) {
  const double cavity = house.cavity_m.value_or(thickness - 2.0 * kLeaf_m);
  if (cavity <= 0.0 || thickness - cavity <= kLeaf_m) return {{LayerKind::block, thickness}};
  return {{LayerKind::block, kLeaf_m},
          {LayerKind::cavity, cavity},
          {LayerKind::block, thickness - cavity - kLeaf_m}};
}

std::vector<Layer> timberFrame(double thickness) {
  const double frame = thickness - kLeaf_m - kFrameCavity_m;
  if (frame <= 0.0) return {{LayerKind::timber_frame, thickness}};
  return {{LayerKind::brick, kLeaf_m},
          {LayerKind::cavity, kFrameCavity_m},
          {LayerKind::timber_frame, frame}};
}

std::vector<Layer> usualLayers(const plan::House& house, double thickness) {
  switch (house.build_type) {
    case BuildType::solid_masonry:
      return {{LayerKind::brick, thickness}};
    case BuildType::stone_rubble:
      return {{LayerKind::stone, thickness}};
    case BuildType::timber_frame:
      return timberFrame(thickness);
    case BuildType::unknown:
    case BuildType::cavity_masonry:
    case BuildType::other:
      break;
  }
  return cavityWall(thickness, house);
}

bool usable(const std::vector<Layer>& layers) {
  return !layers.empty() && std::all_of(layers.begin(), layers.end(),
                                        [](const Layer& l) { return l.thickness_m > 0.0; });
}

}  // namespace

std::vector<Leaf> leavesOf(const plan::Wall& wall, const plan::House& house, double thickness_m,
                           std::vector<Assumption>& assumed) {
  std::vector<Layer> layers = wall.layers.empty() ? house.wall_layers : wall.layers;
  if (!usable(layers)) {
    layers = usualLayers(house, thickness_m);
    assumed.push_back(
        {base::Message(layers.size() > 1 ? "section.assumed.leaves" : "section.assumed.one-leaf",
                       {base::millimetres("wall", 1000.0 * thickness_m)}),
         {base::Mark::common_practice, "walls as usually built"}});
  }
  double sum = 0.0;
  for (const Layer& layer : layers) sum += layer.thickness_m;
  std::vector<Leaf> leaves;
  double at = 0.0;
  for (const Layer& layer : layers) {
    const double to = at + layer.thickness_m * (thickness_m / sum);
    leaves.push_back({layer.kind, at, to});
    at = to;
  }
  leaves.back().to_m = thickness_m;
  return leaves;
}

}  // namespace sumpwright::build
