#include "plan/OnWalls.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "plan/DesignEdits.h"
#include "plan/PlanGeometry.h"
#include "plan/ThingParts.h"

namespace sumpwright::plan {

namespace {

using geometry::Segment;
using geometry::Vec;

OnEdge keptOn(const Segment& edge, OnEdge at, double width_m) {
  const double last = std::max(0.0, length_m(edge) - width_m);
  return {at.edge, std::clamp(at.offset_m, 0.0, last)};
}

/// A waiver stays with its sump unless the sump's place moved in the world.
void carryWaivers(Job& job, std::size_t ring, const Sump& before, const Sump& after,
                  double moved_m) {
  for (Waiver& w : job.design.waivers) {
    if (w.sump != after.id || w.lapsed || w.ring != static_cast<int>(ring)) continue;
    const double beside = w.chainage_m - before.chainage_m;
    if (std::abs(beside) > kWaiverReach_m || moved_m > kWaiverReach_m) {
      w.lapsed = true;
    } else {
      w.chainage_m = after.chainage_m + beside;
    }
  }
}

/// The points of the ground outside go with what stands on the walls. Two that come to lie on one
/// place are one.
void carryGround(const Ring& before, Ring& after, const Carry& carry) {
  for (Wall& w : after.walls) w.ground_points.clear();
  for (std::size_t i = 0; i < edgeCount(before) && i < before.walls.size(); ++i) {
    for (GroundPoint g : before.walls[i].ground_points) {
      const OnEdge to = carry(before, after, {i, g.offset_m}, 0.0);
      if (to.edge >= after.walls.size()) continue;
      g.offset_m = to.offset_m;
      auto& ground = after.walls[to.edge].ground_points;
      const auto later = std::find_if(ground.begin(), ground.end(), [&](const GroundPoint& other) {
        return other.offset_m >= g.offset_m;
      });
      if (later == ground.end() || later->offset_m != g.offset_m) ground.insert(later, g);
    }
  }
}

void carryDischarge(const Ring& before, const Ring& after, int ring, Sump& sump,
                    const Carry& carry) {
  if (!sump.discharge || sump.discharge->ring != ring) return;
  const OnEdge from = onEdge(before, sump.discharge->chainage_m);
  sump.discharge->chainage_m = chainageOf(after, carry(before, after, from, 0.0));
}

/// Where a sump stood in the ring while it was tested.
void carryTests(const Ring& before, const Ring& after, int ring, SuctionFacts& suction,
                const Carry& carry) {
  for (PressureTest& test : suction.tests) {
    if (!test.stood || test.stood->at_m || test.stood->ring != ring) continue;
    const OnEdge from = onEdge(before, test.stood->chainage_m);
    test.stood->chainage_m = chainageOf(after, carry(before, after, from, 0.0));
  }
}

}  // namespace

Vec directionOf(const Segment& s) {
  const double length = length_m(s);
  return length > 0.0 ? (1.0 / length) * (s.b - s.a) : Vec{1.0, 0.0};
}

void forEachOnWall(Plan& plan, const std::function<void(OnWall&, double width_m)>& visit) {
  for (Opening& o : plan.openings) visit(o.at, o.width_m);
  for (Service& s : plan.services) {
    if (s.entry) visit(*s.entry, 0.0);
  }
  for (Radiator& r : plan.radiators) {
    if (r.on) visit(*r.on, r.width_m);
  }
  for (WallFeature& f : plan.wall_features) visit(f.at, f.width_m);
}

OnEdge onEdge(const Ring& ring, double chainage_m) {
  const double round = ringLength_m(ring);
  double left = std::fmod(std::fmod(chainage_m, round) + round, round);
  const std::size_t count = edgeCount(ring);
  for (std::size_t i = 0; i < count; ++i) {
    const double length = length_m(edgeOf(ring, i));
    if (left < length) return {i, left};
    left -= length;
  }
  return {count - 1, length_m(edgeOf(ring, count - 1))};  // rounding at the very end
}

double chainageOf(const Ring& ring, OnEdge at) {
  double start = 0.0;
  for (std::size_t i = 0; i < at.edge; ++i) start += length_m(edgeOf(ring, i));
  return start + at.offset_m;
}

Point pointAt(const Ring& ring, OnEdge at) {
  const Segment edge = edgeOf(ring, at.edge);
  return edge.a + at.offset_m * directionOf(edge);
}

Job withRing(const Job& job, std::size_t ring, Ring after, const Carry& carry) {
  Job result = job;
  const Ring& before = job.plan.rings[ring];
  const auto edges = edgeCount(before);
  forEachOnWall(result.plan, [&](OnWall& at, double width) {
    if (at.ring != static_cast<int>(ring) || at.edge < 0) return;
    if (static_cast<std::size_t>(at.edge) >= edges) return;  // a fault that was there before
    const OnEdge to = carry(before, after, {static_cast<std::size_t>(at.edge), at.offset_m}, width);
    at.edge = static_cast<int>(to.edge);
    at.offset_m = to.offset_m;
  });
  for (Sump& sump : result.design.sumps) {
    carryDischarge(before, after, static_cast<int>(ring), sump, carry);
    if (sump.kind != SumpKind::cored || sump.ring != static_cast<int>(ring)) continue;
    const Sump was = sump;
    const OnEdge from = onEdge(before, sump.chainage_m);
    const OnEdge to = carry(before, after, from, 0.0);
    sump.chainage_m = chainageOf(after, to);
    const double moved = geometry::distance(pointAt(before, from), pointAt(after, to));
    carryWaivers(result, ring, was, sump, moved);
  }
  carryTests(before, after, static_cast<int>(ring), result.suction, carry);
  if (after.corners != before.corners) {
    after.taped.clear();
    after.shared_by = Sharing::not_shared;
  }
  carryGround(before, after, carry);
  std::set<std::string> gone;
  for (const Wall& w : before.walls) gone.insert(w.id);
  for (const Wall& w : after.walls) gone.erase(w.id);
  dropDimensions(result.plan, [&](const std::string& end) { return gone.contains(end); });
  result.plan.rings[ring] = std::move(after);
  return result;
}

void countFromOtherEnds(Job& job, std::size_t ring) {
  const Ring& r = job.plan.rings[ring];
  std::set<std::string> turned;
  for (std::size_t i = 0; i < edgeCount(r) && i < r.walls.size(); ++i) {
    turned.insert(r.walls[i].id);
  }
  const int number = static_cast<int>(ring);
  for (const Opening& o : job.plan.openings) {
    if (o.at.ring == number) turned.insert(o.id);
  }
  for (const WallFeature& f : job.plan.wall_features) {
    if (f.at.ring == number) turned.insert(f.id);
  }
  for (const Radiator& radiator : job.plan.radiators) {
    if (radiator.on && radiator.on->ring == number) turned.insert(radiator.id);
  }
  const auto turn = [&](DimensionEnd& end) {
    if (!turned.contains(end.thing) || end.end == ThingEnd::middle) return;
    end.end = end.end == ThingEnd::start ? ThingEnd::end : ThingEnd::start;
  };
  for (Dimension& d : job.plan.dimensions) {
    turn(d.from);
    turn(d.to);
  }
}

OnEdge setOnto(const Ring& before, const Ring& after, OnEdge at, double width_m, std::size_t edge) {
  const Segment to = edgeOf(after, edge);
  const Point middle = pointAt(before, {at.edge, at.offset_m + width_m / 2.0});
  const double along = geometry::dot(middle - to.a, directionOf(to));
  return keptOn(to, {edge, along - width_m / 2.0}, width_m);
}

OnEdge carryAlongEdge(const Ring& before, const Ring& after, OnEdge at, double width_m) {
  const Segment was = edgeOf(before, at.edge);
  const Segment is = edgeOf(after, at.edge);
  if (was == is) return at;  // not even pushed back onto its wall: this edit did not touch it
  if (was.a == is.a) return keptOn(is, at, width_m);
  if (was.b == is.b) {
    return keptOn(is, {at.edge, at.offset_m + length_m(is) - length_m(was)}, width_m);
  }
  return setOnto(before, after, at, width_m, at.edge);
}

}  // namespace sumpwright::plan
