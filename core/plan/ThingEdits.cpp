#include "plan/ThingEdits.h"

#include <algorithm>
#include <cmath>

#include "geometry/Distance.h"
#include "geometry/Polylines.h"
#include "plan/Checks.h"
#include "plan/Dimensions.h"
#include "plan/EditProblem.h"
#include "plan/FitsFile.h"
#include "plan/JobIds.h"
#include "plan/KindNames.h"
#include "plan/LookedKinds.h"
#include "plan/OnWalls.h"
#include "plan/PlanGeometry.h"
#include "plan/ThingParts.h"

namespace sumpwright::plan {

namespace {

using geometry::Vec;

base::Problem noThing(const std::string& id) {
  return editProblem("plan.edit.no-thing", {base::text("thing", id)});
}
base::Problem noPoint(const std::string& id) {
  return editProblem("plan.edit.no-point", {base::text("thing", id)});
}

template <class T>
std::string stemOf(const T& thing) {
  if constexpr (requires { thing.kind; } && !std::is_same_v<T, FloorZone>) {
    return std::string(nameOf(thing.kind));
  } else {
    return "";
  }
}
std::string stemOf(const Room&) { return "room"; }
std::string stemOf(const FloorZone&) { return "floor"; }
std::string stemOf(const InnerWall&) { return "inner-wall"; }
std::string stemOf(const InnerDoor&) { return "inner-door"; }
std::string stemOf(const RisingWall&) { return "rising-wall"; }
std::string stemOf(const Radiator&) { return "radiator"; }
std::string stemOf(const HeatingPipe&) { return "heating-pipe"; }
std::string stemOf(const TestHole&) { return "test-hole"; }
std::string stemOf(const Dimension&) { return "dimension"; }
std::string stemOf(const Appliance&) { return "appliance"; }

/// What a thing refers to must be there.
template <class T>
std::optional<base::Problem> danglingIn(const Job& job, const T& thing) {
  T mine = thing;
  if (const OnWall* at = wallPlaceOf(mine); at != nullptr && !edgeAt(job.plan, *at)) {
    return editProblem("plan.edit.no-edge",
                       {base::count("ring", at->ring), base::count("edge", at->edge)});
  }
  if constexpr (std::is_same_v<T, InnerDoor>) {
    const auto& walls = job.plan.inner_walls;
    const bool there = std::any_of(walls.begin(), walls.end(),
                                   [&](const InnerWall& w) { return w.id == thing.wall; });
    if (!there) return noThing(thing.wall);
  }
  if constexpr (std::is_same_v<T, Dimension>) {
    if (!placeOf(job, thing.from)) return noThing(thing.from.thing);
    if (!placeOf(job, thing.to)) return noThing(thing.to.thing);
  }
  return std::nullopt;
}

template <class T>
std::optional<base::Problem> thingProblem(const Job& job, const T& thing) {
  if (auto bad = unfit(thing)) return bad;
  if (wallWidthOf(thing) < 0.0) return editProblem("plan.edit.not-a-place");
  return danglingIn(job, thing);
}

/// visit(list, index) on the list that holds the thing; whether there is one.
template <class AnyJob, class Visit>
bool withThing(AnyJob& job, const std::string& id, Visit&& visit) {
  bool found = false;
  forEachThingList(job, [&](auto& list) {
    if (found) return;
    const auto it =
        std::find_if(list.begin(), list.end(), [&](const auto& thing) { return thing.id == id; });
    if (it == list.end()) return;
    found = true;
    visit(list, static_cast<std::size_t>(it - list.begin()));
  });
  return found;
}

/// Changes one thing through `change`, which says why not; then asks whether the job may hold it.
template <class Change>
base::Result<Job> changed(const Job& job, const std::string& id, Change&& change) {
  Job result = job;
  std::optional<base::Problem> bad = noThing(id);
  withThing(result, id, [&](auto& list, std::size_t i) {
    bad = change(list[i]);
    if (!bad) bad = thingProblem(job, list[i]);
  });
  if (bad) return *bad;
  settleLookedFor(job, result);
  return result;
}

void moveOnWall(const Plan& plan, OnWall& at, double width_m, Vec by) {
  const auto edge = edgeAt(plan, at);
  if (!edge) return;
  const Point middle = edge->a + (at.offset_m + width_m / 2.0) * directionOf(*edge);
  if (const auto there = nearestOnWalls(plan, middle + by, width_m)) at = *there;
}

const InnerWall* innerWallOf(const Plan& plan, const InnerDoor& door) {
  const auto it = std::find_if(plan.inner_walls.begin(), plan.inner_walls.end(),
                               [&](const InnerWall& w) { return w.id == door.wall; });
  return it == plan.inner_walls.end() ? nullptr : &*it;
}

void moveDoor(const Plan& plan, InnerDoor& door, Vec by) {
  const InnerWall* wall = innerWallOf(plan, door);
  if (wall == nullptr || wall->line_m.size() < 2) return;
  const Vec along = directionOf({wall->line_m.front(), wall->line_m.back()});
  const double last = std::max(0.0, geometry::lengthOf(wall->line_m) - door.width_m);
  door.offset_m = std::clamp(door.offset_m + geometry::dot(by, along), 0.0, last);
}

void moveAside(const Job& job, Dimension& dimension, Vec by) {
  const auto from = placeOf(job, dimension.from);
  const auto to = placeOf(job, dimension.to);
  if (from && to) dimension.off_m += geometry::dot(by, geometry::left(directionOf({*from, *to})));
}

/// Moves all of a thing; whether it has a place at all.
template <class T>
bool moveAll(const Job& job, T& thing, Vec by) {
  if constexpr (std::is_same_v<T, InnerDoor>) {
    moveDoor(job.plan, thing, by);
    return true;
  } else if constexpr (std::is_same_v<T, Dimension>) {
    moveAside(job, thing, by);
    return true;
  } else {
    OnWall* at = wallPlaceOf(thing);
    if (at != nullptr) moveOnWall(job.plan, *at, wallWidthOf(thing), by);
    bool placed = at != nullptr;
    forEachPointOf(thing, [&](Point& p) {
      p = p + by;
      placed = true;
    });
    return placed;
  }
}

bool isVector(Vec by) { return std::isfinite(by.x) && std::isfinite(by.y); }

}  // namespace

const std::string& idOf(const Thing& thing) {
  return std::visit([](const auto& t) -> const std::string& { return t.id; }, thing);
}

std::optional<Thing> thingOf(const Job& job, const std::string& id) {
  std::optional<Thing> found;
  withThing(job, id, [&](const auto& list, std::size_t i) { found = list[i]; });
  return found;
}

std::string unusedId(const Job& job, const std::string& stem) {
  const std::set<std::string> taken = idsOf(job);
  for (std::size_t n = 1;; ++n) {
    std::string id = stem + "-" + std::to_string(n);
    if (!taken.contains(id)) return id;
  }
}

base::Result<Job> addThing(const Job& job, Thing thing) {
  return std::visit(
      [&]<class T>(T& t) -> base::Result<Job> {
        if (t.id.empty()) t.id = unusedId(job, stemOf(t));
        if (const auto bad = unfitId(job, t.id)) return *bad;
        if (const auto bad = thingProblem(job, t)) return *bad;
        Job result = job;
        std::vector<T>& list = listIn<T>(result);
        if (list.size() >= kMaxListed) return editProblem("plan.edit.too-many");
        list.push_back(std::move(t));
        settleLookedFor(job, result);
        return result;
      },
      thing);
}

base::Result<Job> replaceThing(const Job& job, const Thing& thing) {
  return std::visit(
      [&]<class T>(const T& t) -> base::Result<Job> {
        Job result = job;
        std::vector<T>& list = listIn<T>(result);
        const auto it =
            std::find_if(list.begin(), list.end(), [&](const T& o) { return o.id == t.id; });
        if (it == list.end()) return noThing(t.id);
        if (const auto bad = thingProblem(job, t)) return *bad;
        *it = t;
        settleLookedFor(job, result);
        return result;
      },
      thing);
}

base::Result<Job> removeThing(const Job& job, const std::string& id) {
  Job result = job;
  std::set<std::string> gone{id};
  const bool found = withThing(result, id, [](auto& list, std::size_t i) {
    list.erase(list.begin() + static_cast<std::ptrdiff_t>(i));
  });
  if (!found) return noThing(id);
  for (const InnerDoor& door : job.plan.inner_doors) {
    if (door.wall == id) gone.insert(door.id);
  }
  std::erase_if(result.plan.inner_doors,
                [&](const InnerDoor& door) { return gone.contains(door.id); });
  std::erase_if(result.design.waivers, [&](const Waiver& w) { return gone.contains(w.thing); });
  dropDimensions(result.plan, [&](const std::string& end) { return gone.contains(end); });
  forgetGone(result, gone);
  settleLookedFor(job, result);
  return result;
}

base::Result<Job> moveThing(const Job& job, const std::string& id, Vec by) {
  if (!isVector(by)) return editProblem("plan.edit.not-a-place");
  return changed(job, id, [&](auto& thing) -> std::optional<base::Problem> {
    if (moveAll(job, thing, by)) return std::nullopt;
    return noPoint(id);
  });
}

base::Result<Job> movePoint(const Job& job, const std::string& id, int point, Point to) {
  return changed(job, id, [&](auto& thing) -> std::optional<base::Problem> {
    int index = 0;
    bool moved = false;
    forEachPointOf(thing, [&](Point& p) {
      if (index++ != point) return;
      p = to;
      moved = true;
    });
    if (moved) return std::nullopt;
    return noPoint(id);
  });
}

base::Result<Job> insertPoint(const Job& job, const std::string& id, int point, Point place) {
  return changed(job, id, [&](auto& thing) -> std::optional<base::Problem> {
    std::vector<Point>* points = pointsOf(thing);
    if (points == nullptr || point < 0 || static_cast<std::size_t>(point) > points->size()) {
      return noPoint(id);
    }
    points->insert(points->begin() + point, place);
    return std::nullopt;
  });
}

base::Result<Job> removePoint(const Job& job, const std::string& id, int point) {
  return changed(job, id, [&](auto& thing) -> std::optional<base::Problem> {
    std::vector<Point>* points = pointsOf(thing);
    if (points == nullptr || point < 0 || static_cast<std::size_t>(point) >= points->size()) {
      return noPoint(id);
    }
    if (points->size() <= leastPointsOf(thing)) {
      return editProblem("plan.edit.too-few-points", {base::text("thing", id)});
    }
    points->erase(points->begin() + point);
    return std::nullopt;
  });
}

base::Result<Job> copyThing(const Job& job, const std::string& id, Vec by) {
  auto thing = thingOf(job, id);
  if (!thing) return noThing(id);
  if (!isVector(by)) return editProblem("plan.edit.not-a-place");
  std::string copy;
  const bool placed = std::visit(
      [&]<class T>(T& t) {
        t.id = copy = unusedId(job, stemOf(t));
        if constexpr (std::is_same_v<T, Service>) {  // the copy was located by nobody
          t.located = false;
          t.locating_record.clear();
        }
        return !std::is_same_v<T, Dimension> && moveAll(job, t, by);
      },
      *thing);
  if (!placed) return noPoint(id);
  base::Result<Job> result = addThing(job, std::move(*thing));
  for (const InnerDoor& door : job.plan.inner_doors) {
    if (!result || door.wall != id) continue;
    InnerDoor second = door;
    second.id.clear();
    second.wall = copy;
    result = addThing(*result, std::move(second));
  }
  return result;
}

std::optional<OnWall> nearestOnWalls(const Plan& plan, Point middle, double width_m) {
  std::optional<OnWall> best;
  double least = 0.0;
  for (std::size_t r = 0; r < plan.rings.size(); ++r) {
    for (std::size_t e = 0; e < edgeCount(plan.rings[r]); ++e) {
      const geometry::Segment edge = edgeOf(plan.rings[r], e);
      const double away = geometry::distance(middle, edge);
      if (best && !(away < least)) continue;
      const double along = geometry::dot(middle - edge.a, directionOf(edge)) - width_m / 2.0;
      const double last = std::max(0.0, length_m(edge) - width_m);
      best = {static_cast<int>(r), static_cast<int>(e), std::clamp(along, 0.0, last)};
      least = away;
    }
  }
  return best;
}

}  // namespace sumpwright::plan
