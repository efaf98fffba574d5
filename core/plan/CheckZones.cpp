// What a floor zone is of its own: part of the house, age, level, slab.

#include <algorithm>

#include "plan/Checks.h"
#include "plan/PlanGeometry.h"

namespace sumpwright::plan {

namespace {

using base::Gravity;

void checkZone(const Job& job, const FloorZone& zone, const std::string& pointer,
               ProblemList& problems) {
  const auto thing = base::text("thing", labelOf(zone));
  if (zone.slab_m && *zone.slab_m < 0.0) {
    problems.add("plan.house.negative", at(pointer, "slab_m"),
                 {base::metres("thickness", *zone.slab_m)});
  }
  if (zone.year_built && isDate(job.surveyed_on) &&
      *zone.year_built > std::stoi(job.surveyed_on.substr(0, 4))) {
    problems.add("plan.house.year-after-survey", at(pointer, "year_built"),
                 {base::text("year", std::to_string(*zone.year_built)),
                  base::text("surveyed", job.surveyed_on)});
  }
  if (zone.part != HousePart::house &&
      (!zone.level_m || !zone.slab_m || zone.barrier == Barrier::unknown)) {
    problems.add(Gravity::missing, "plan.zone.own-build", at(pointer, "part"), {thing});
  }
  // The highest: it decides whether a floor can be reached from outside.
  const double under = highestGround_m(job).value_or(kAssumedGround_m) - zone.level_m.value_or(0.0);
  if (zone.level_m && under > kDeepestFloor_m) {
    problems.add(Gravity::missing, "plan.zone.deep", at(pointer, "level_m"),
                 {thing, base::metres("under", under), base::metres("most", kDeepestFloor_m)});
  }
}

}  // namespace

std::optional<double> highestGround_m(const Job& job) {
  std::optional<double> highest = job.house.ground_level_m;
  const auto take = [&](double level) { highest = std::max(highest.value_or(level), level); };
  for (const Ring& ring : job.plan.rings) {
    for (const Wall& wall : ring.walls) {
      if (wall.ground_level_m) take(*wall.ground_level_m);
      for (const GroundPoint& g : wall.ground_points) take(g.level_m);
    }
  }
  return highest;
}

void checkZones(const Job& job, ProblemList& problems) {
  for (std::size_t i = 0; i < job.plan.floor_zones.size(); ++i) {
    checkZone(job, job.plan.floor_zones[i], at("/plan/floor_zones", i), problems);
  }
}

}  // namespace sumpwright::plan
