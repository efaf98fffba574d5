// What a wall is made of, the ground along it, and whether the drill reaches through.

#include <algorithm>
#include <array>
#include <cmath>

#include "plan/Checks.h"
#include "plan/OnWalls.h"
#include "plan/PlanGeometry.h"
#include "plan/WallThickness.h"

namespace sumpwright::plan {

namespace {

using base::Gravity;

const std::vector<Layer>& layersOf(const Wall& wall, const House& house) {
  return wall.layers.empty() ? house.wall_layers : wall.layers;
}

void checkLayers(const std::vector<Layer>& layers, const std::optional<double>& thickness_m,
                 const std::string& label, const std::string& pointer, ProblemList& problems) {
  for (std::size_t i = 0; i < layers.size(); ++i) {
    if (layers[i].thickness_m > 0.0) continue;
    problems.add("plan.wall.layer-thickness", at(pointer, i) + "/thickness_m",
                 {base::text("wall", label), base::metres("thickness", layers[i].thickness_m)});
    return;
  }
  const auto sum = thicknessOf(layers);
  if (!sum || !thickness_m || std::abs(*sum - *thickness_m) <= kUnlistedLayers_m) return;
  problems.add("plan.wall.layers-sum", pointer,
               {base::text("wall", label), base::metres("sum", *sum),
                base::metres("thickness", *thickness_m)});
}

/// Make-ups that change how a hole is made.
struct MakeUp {
  const char* id;
  LayerKind kind;
};

constexpr auto kMakeUps = std::to_array<MakeUp>({
    {"plan.wall.external-insulation", LayerKind::external_insulation},
    {"plan.wall.timber-frame", LayerKind::timber_frame},
    {"plan.wall.stone", LayerKind::stone},
});

bool has(const std::vector<Layer>& layers, LayerKind kind) {
  return std::any_of(layers.begin(), layers.end(), [&](const Layer& l) { return l.kind == kind; });
}

/// One note for all walls of a ring.
void noteMakeUp(const House& house, const Ring& ring, const std::string& pointer,
                const MakeUp& makeUp, ProblemList& problems) {
  std::string walls;
  for (const Wall& wall : ring.walls) {
    if (!has(layersOf(wall, house), makeUp.kind)) continue;
    walls += (walls.empty() ? "" : ", ") + labelOf(wall);
  }
  if (walls.empty()) return;
  problems.add(Gravity::missing, makeUp.id, pointer, {base::text("walls", walls)});
}

void checkGround(const Job& job, const Wall& wall, double length, const std::string& pointer,
                 ProblemList& problems) {
  const auto label = base::text("wall", labelOf(wall));
  for (std::size_t i = 0; i < wall.ground_points.size(); ++i) {
    const GroundPoint& g = wall.ground_points[i];
    const std::string place = at(pointer + "/ground_points", i);
    if (!(g.offset_m >= -kTapeRounding_m && g.offset_m <= length + kTapeRounding_m)) {
      problems.add("plan.ground.off-wall", place + "/offset_m",
                   {label, base::metres("offset", g.offset_m), base::metres("length", length)});
    }
    const auto& dpc = job.house.dpc_height_m;
    if (!dpc || *dpc - g.level_m >= kGroundUnderDpc_m - kTapeRounding_m) continue;
    problems.add(
        Gravity::missing, "plan.ground.near-dpc", place + "/level_m",
        {label, base::metres("offset", g.offset_m), base::metres("under", *dpc - g.level_m),
         base::metres("least", kGroundUnderDpc_m)});
  }
}

}  // namespace

void checkMakeUp(const Job& job, ProblemList& problems) {
  const House& house = job.house;
  checkLayers(house.wall_layers, house.wall_thickness_m, "", "/house/wall_layers", problems);
  for (std::size_t r = 0; r < job.plan.rings.size(); ++r) {
    const Ring& ring = job.plan.rings[r];
    const std::string pointer = at("/plan/rings", r) + "/walls";
    for (std::size_t i = 0; i < edgeCount(ring) && i < ring.walls.size(); ++i) {
      const Wall& wall = ring.walls[i];
      checkLayers(wall.layers, wall.thickness_m, labelOf(wall), at(pointer, i) + "/layers",
                  problems);
      checkGround(job, wall, length_m(edgeOf(ring, i)), at(pointer, i), problems);
    }
    for (const MakeUp& makeUp : kMakeUps) noteMakeUp(house, ring, pointer, makeUp, problems);
  }
}

void checkBarrel(const Job& job, const Sump& sump, const std::string& pointer,
                 ProblemList& problems) {
  if (!onRing(job.plan, sump.ring, sump.chainage_m)) return;
  const Ring& ring = job.plan.rings[static_cast<std::size_t>(sump.ring)];
  const OnEdge at = onEdge(ring, sump.chainage_m);
  if (at.edge >= ring.walls.size()) return;
  const double path = thicknessTaken_m(ring, at.edge, job.house);
  const double barrel = job.design.barrel_length_m.value_or(kAssumedBarrel_m);
  if (path <= barrel) return;
  problems.add(
      Gravity::missing, "plan.barrel.short", plan::at(pointer, "chainage_m"),
      {base::text("sump", sump.id), base::metres("path", path), base::metres("barrel", barrel)});
}

}  // namespace sumpwright::plan
