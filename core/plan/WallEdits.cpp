#include "plan/WallEdits.h"

#include <algorithm>
#include <set>

#include "geometry/Shapes.h"
#include "plan/Checks.h"
#include "plan/EditProblem.h"
#include "plan/FitsFile.h"
#include "plan/FollowInside.h"
#include "plan/JobIds.h"
#include "plan/LookedKinds.h"
#include "plan/OnWalls.h"
#include "plan/PlanGeometry.h"
#include "plan/ThingParts.h"

namespace sumpwright::plan {

namespace {

base::Problem noWall(int ring, int edge) {
  return editProblem("plan.edit.no-edge", {base::count("ring", ring), base::count("edge", edge)});
}

/// A ring of the corners with a wall of nothing known to each.
base::Result<Ring> newRing(const Job& job, geometry::Polygon corners, bool outer) {
  if (corners.size() < 3) {
    return editProblem("plan.ring.corners",
                       {base::count("corners", static_cast<std::int64_t>(corners.size()))});
  }
  Ring ring;
  ring.corners = std::move(corners);
  if (const auto bad = unfit(ring)) return *bad;
  if ((geometry::signedArea(ring.corners) > 0.0) != outer) {
    std::reverse(ring.corners.begin() + 1, ring.corners.end());
  }
  for (std::size_t i = 0; i < edgeCount(ring); ++i) {
    const double length = length_m(edgeOf(ring, i));
    if (length > kLongestEdge_m) return editProblem("plan.edit.not-a-place");
    if (length >= kShortestEdge_m) continue;
    return editProblem("plan.ring.short-edge",
                       {base::millimetres("length", 1000.0 * length),
                        base::millimetres("least", 1000.0 * kShortestEdge_m)});
  }
  const std::set<std::string> taken = idsOf(job);
  for (std::size_t i = 0; i < ring.corners.size(); ++i) {
    ring.walls.emplace_back().id = givenWallId(outer ? 0 : job.plan.rings.size(), i, taken);
  }
  return ring;
}

/// Ids of what goes with a ring.
std::set<std::string> standingOn(const Job& job, int ring) {
  std::set<std::string> gone;
  for (const Wall& w : job.plan.rings[static_cast<std::size_t>(ring)].walls) gone.insert(w.id);
  const auto on = [&](const OnWall& at) { return at.ring == ring; };
  for (const Opening& o : job.plan.openings) {
    if (on(o.at)) gone.insert(o.id);
  }
  for (const WallFeature& f : job.plan.wall_features) {
    if (on(f.at)) gone.insert(f.id);
  }
  for (const Radiator& r : job.plan.radiators) {
    if (r.on && on(*r.on)) gone.insert(r.id);
  }
  for (const Service& s : job.plan.services) {
    if (s.entry && on(*s.entry) && s.run_m.empty()) gone.insert(s.id);
  }
  for (const Sump& s : job.design.sumps) {
    if (s.kind == SumpKind::cored && s.ring == ring) gone.insert(s.id);
  }
  return gone;
}

void renumber(Job& job, int gone) {
  const auto up = [gone](int& ring) {
    if (ring > gone) --ring;
  };
  forEachOnWall(job.plan, [&](OnWall& at, double) { up(at.ring); });
  for (Sump& s : job.design.sumps) {
    up(s.ring);
    if (s.discharge) up(s.discharge->ring);
  }
  for (Waiver& w : job.design.waivers) up(w.ring);
  for (PressureTest& test : job.suction.tests) {
    if (test.stood) up(test.stood->ring);
  }
}

}  // namespace

base::Result<Job> setWall(const Job& job, int ring, int edge, const Wall& facts) {
  const auto r = static_cast<std::size_t>(ring);
  const auto e = static_cast<std::size_t>(edge);
  if (ring < 0 || r >= job.plan.rings.size() || edge < 0 || e >= job.plan.rings[r].walls.size()) {
    return noWall(ring, edge);
  }
  if (const auto bad = unfit(facts)) return *bad;
  Job result = job;
  Wall& wall = result.plan.rings[r].walls[e];
  const std::string id = wall.id;
  wall = facts;
  wall.id = id;
  if (const auto bad = followThickness(result, job)) return *bad;
  return result;
}

base::Result<Job> addOutline(const Job& job, const geometry::Polygon& corners) {
  if (job.plan.rings.size() > 1 ||
      (!job.plan.rings.empty() && job.plan.rings[0].corners.size() > 1)) {
    return editProblem("plan.edit.has-outline");
  }
  const auto ring = newRing(job, corners, true);
  if (!ring) return ring.problems();
  Job result = job;
  result.plan.rings = {*ring};
  return result;
}

base::Result<Job> rectangleHouse(const Job& job, double width_m, double depth_m) {
  if (!(width_m > 0.0) || !(depth_m > 0.0)) return editProblem("plan.edit.not-a-place");
  return addOutline(job, {{0, 0}, {width_m, 0}, {width_m, depth_m}, {0, depth_m}});
}

base::Result<Job> addCourtyard(const Job& job, const geometry::Polygon& corners) {
  if (job.plan.rings.empty() || !job.plan.rings[0].closed) return noWall(0, 0);
  if (job.plan.rings.size() >= kMaxListed) return editProblem("plan.edit.too-many");
  const auto ring = newRing(job, corners, false);
  if (!ring) return ring.problems();
  Job result = job;
  result.plan.rings.push_back(*ring);
  return result;
}

base::Result<Job> removeRing(const Job& job, int ring) {
  const auto index = static_cast<std::size_t>(ring);
  if (ring < 0 || index >= job.plan.rings.size()) return noWall(ring, 0);
  if (ring == 0 && job.plan.rings.size() > 1) return editProblem("plan.edit.courtyards-first");
  const std::set<std::string> gone = standingOn(job, ring);
  const auto isGone = [&](const auto& thing) { return gone.contains(thing.id); };
  Job result = job;
  forEachThingList(result, [&](auto& list) { std::erase_if(list, isGone); });
  for (Service& s : result.plan.services) {
    if (s.entry && s.entry->ring == ring) s.entry.reset();
  }
  std::erase_if(result.design.sumps, isGone);
  std::erase_if(result.design.waivers, [&](const Waiver& w) {
    return gone.contains(w.sump) || gone.contains(w.thing) || w.ring == ring;
  });
  dropDimensions(result.plan, [&](const std::string& end) { return gone.contains(end); });
  for (Sump& s : result.design.sumps) {
    if (s.discharge && s.discharge->ring == ring) s.discharge.reset();
  }
  for (PressureTest& test : result.suction.tests) {
    if (test.stood && !test.stood->at_m && test.stood->ring == ring) test.stood.reset();
  }
  forgetGone(result, gone);
  result.plan.rings.erase(result.plan.rings.begin() + ring);
  renumber(result, ring);
  settleLookedFor(job, result);
  return result;
}

}  // namespace sumpwright::plan
