#pragma once
// The ids of a job, in file order. Internal to core/plan.

#include <optional>
#include <set>
#include <string>

#include "plan/Job.h"
#include "plan/ProblemList.h"

namespace sumpwright::plan {

/// visit(id, pointer of the thing, whether it is a wall) for everything of the job that has an id,
/// but the job itself. Of a job that may change, the ids may.
template <class AnyJob, class Visit>
void forEachId(AnyJob& job, Visit&& visit) {
  const auto all = [&](auto& list, const std::string& pointer) {
    for (std::size_t i = 0; i < list.size(); ++i) visit(list[i].id, at(pointer, i), false);
  };
  all(job.house.appliances, "/house/appliances");
  auto& plan = job.plan;
  for (std::size_t r = 0; r < plan.rings.size(); ++r) {
    const std::string walls = at("/plan/rings", r) + "/walls";
    for (std::size_t w = 0; w < plan.rings[r].walls.size(); ++w) {
      visit(plan.rings[r].walls[w].id, at(walls, w), true);
    }
  }
  all(plan.openings, "/plan/openings");
  all(plan.services, "/plan/services");
  all(plan.rooms, "/plan/rooms");
  all(plan.floor_zones, "/plan/floor_zones");
  all(plan.inner_walls, "/plan/inner_walls");
  all(plan.inner_doors, "/plan/inner_doors");
  all(plan.rising_walls, "/plan/rising_walls");
  all(plan.radiators, "/plan/radiators");
  all(plan.heating_pipes, "/plan/heating_pipes");
  all(plan.supplies, "/plan/supplies");
  all(plan.fittings, "/plan/fittings");
  all(plan.outside, "/plan/outside");
  all(plan.test_holes, "/plan/test_holes");
  all(plan.wall_features, "/plan/wall_features");
  all(plan.dimensions, "/plan/dimensions");
  all(job.suction.tests, "/suction/tests");
  all(job.design.sumps, "/design/sumps");
  all(job.design.waivers, "/design/waivers");
  all(job.design.quote.lines, "/design/quote/lines");
}

/// Why a new thing may not have this id: plan.id.empty, plan.id.twice.
std::optional<base::Problem> unfitId(const Job& job, const std::string& id);

/// Ids in use.
std::set<std::string> idsOf(const Job& job);

/// Id of a wall that states none: "w<ring>.<edge>", with "_" added until it is not among `taken`.
std::string givenWallId(std::size_t ring, std::size_t edge, const std::set<std::string>& taken);

/// Whether an id looks as if givenWallId() had made it for that wall.
bool looksGiven(const std::string& id, std::size_t ring, std::size_t edge);

}  // namespace sumpwright::plan
