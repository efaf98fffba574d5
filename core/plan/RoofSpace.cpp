#include "plan/RoofSpace.h"

#include "plan/PlanGeometry.h"

namespace sumpwright::plan {

namespace {

std::optional<double> eavesOver(const Job& job, const OnWall& at) {
  if (!edgeAt(job.plan, at)) return std::nullopt;
  const Ring& ring = job.plan.rings[static_cast<std::size_t>(at.ring)];
  const auto edge = static_cast<std::size_t>(at.edge);
  if (edge < ring.walls.size() && ring.walls[edge].eaves_m) return ring.walls[edge].eaves_m;
  return job.house.eaves_m;
}

bool showsRoof(const Job& job, const Opening& o) {
  if (o.kind == OpeningKind::roof_window) return true;
  const bool through = o.kind == OpeningKind::window || o.kind == OpeningKind::door ||
                       o.kind == OpeningKind::glazed_door;
  const auto eaves = eavesOver(job, o.at);
  return through && o.sill_m && eaves && *o.sill_m >= *eaves;
}

}  // namespace

RoofSpace roofSpaceOf(const Job& job) {
  if (job.house.roof_lived_in != YesNo::unknown) return {job.house.roof_lived_in, ""};
  for (const Opening& o : job.plan.openings) {
    if (showsRoof(job, o)) return {YesNo::yes, o.id};
  }
  return {};
}

}  // namespace sumpwright::plan
