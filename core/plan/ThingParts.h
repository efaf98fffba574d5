#pragma once
// The lists a job has, and the parts things have in common: a place on a wall, points. Internal to
// core/plan.

#include <set>
#include <string>
#include <type_traits>
#include <vector>

#include "plan/Job.h"

namespace sumpwright::plan {

/// visit(list) for every list of things with ids, walls, sumps and waivers left out.
template <class AnyJob, class Visit>
void forEachThingList(AnyJob& job, Visit&& visit) {
  auto& plan = job.plan;
  visit(plan.openings);
  visit(plan.services);
  visit(plan.rooms);
  visit(plan.floor_zones);
  visit(plan.inner_walls);
  visit(plan.inner_doors);
  visit(plan.rising_walls);
  visit(plan.radiators);
  visit(plan.heating_pipes);
  visit(plan.supplies);
  visit(plan.fittings);
  visit(plan.outside);
  visit(plan.test_holes);
  visit(plan.wall_features);
  visit(plan.dimensions);
  visit(job.house.appliances);
}

/// The list of things of that type.
template <class T, class AnyJob>
auto& listIn(AnyJob& job) {
  using List = std::conditional_t<std::is_const_v<AnyJob>, const std::vector<T>, std::vector<T>>;
  List* found = nullptr;
  forEachThingList(job, [&](auto& list) {
    if constexpr (std::is_same_v<std::remove_cvref_t<decltype(list)>, std::vector<T>>)
      found = &list;
  });
  return *found;
}

/// Its place on an outside wall, or null.
template <class T>
OnWall* wallPlaceOf(T& thing) {
  if constexpr (std::is_same_v<T, Opening> || std::is_same_v<T, WallFeature>) {
    return &thing.at;
  } else if constexpr (std::is_same_v<T, Service>) {
    return thing.entry ? &*thing.entry : nullptr;
  } else if constexpr (std::is_same_v<T, Radiator>) {
    return thing.on ? &*thing.on : nullptr;
  } else {
    return nullptr;
  }
}

/// Its width along the wall; 0 where it has none.
template <class T>
double wallWidthOf(const T& thing) {
  if constexpr (std::is_same_v<T, Opening> || std::is_same_v<T, WallFeature> ||
                std::is_same_v<T, Radiator>) {
    return thing.width_m;
  } else {
    return 0.0;
  }
}

/// Its line or outline, or null.
template <class T>
std::vector<Point>* pointsOf(T& thing) {
  if constexpr (requires { thing.outline_m; }) {
    return &thing.outline_m;
  } else if constexpr (requires { thing.line_m; }) {
    return &thing.line_m;
  } else if constexpr (requires { thing.points_m; }) {
    return &thing.points_m;
  } else if constexpr (requires { thing.run_m; }) {
    return &thing.run_m;
  } else {
    return nullptr;
  }
}

/// Fewest points its line or outline may have.
template <class T>
std::size_t leastPointsOf(const T& thing) {
  if constexpr (requires { thing.outline_m; }) return 3;
  if constexpr (requires { thing.points_m; }) return 1;
  return 2;
}

/// visit(point) for every point of a thing that is not on a wall.
template <class T, class Visit>
void forEachPointOf(T& thing, Visit&& visit) {
  if (std::vector<Point>* points = pointsOf(thing)) {
    for (Point& p : *points) visit(p);
  } else if constexpr (requires { thing.at_m; }) {
    visit(thing.at_m);
  }
}

/// visit(point) for every point of a job, corners of rings too, places on walls not.
template <class Visit>
void forEachPoint(Job& job, Visit&& visit) {
  for (Ring& ring : job.plan.rings) {
    for (Point& p : ring.corners) visit(p);
  }
  forEachThingList(job, [&](auto& list) {
    for (auto& thing : list) forEachPointOf(thing, visit);
  });
  for (Sump& sump : job.design.sumps) {
    if (sump.at_m) visit(*sump.at_m);
  }
  for (PressureTest& test : job.suction.tests) {
    if (test.stood && test.stood->at_m) visit(*test.stood->at_m);
  }
  if (job.house.standby.at_m) visit(*job.house.standby.at_m);
  if (job.plan.underlay) visit(job.plan.underlay->at_m);
}

/// Takes out what was read in holes that are gone, and what names a supply or sump that is.
inline void forgetGone(Job& job, const std::set<std::string>& gone) {
  for (PressureTest& test : job.suction.tests) {
    std::erase_if(test.readings, [&](const HoleReading& r) { return gone.contains(r.hole); });
    if (gone.contains(test.sump)) test.sump.clear();
  }
  for (Sump& sump : job.design.sumps) {
    if (gone.contains(sump.supply)) sump.supply.clear();
  }
}

/// Takes out the dimensions that `gone(id)` of an end.
template <class Gone>
void dropDimensions(Plan& plan, Gone&& gone) {
  std::erase_if(plan.dimensions,
                [&](const Dimension& d) { return gone(d.from.thing) || gone(d.to.thing); });
}

}  // namespace sumpwright::plan
