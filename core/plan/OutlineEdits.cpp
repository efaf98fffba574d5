#include "plan/OutlineEdits.h"

#include <algorithm>
#include <cmath>

#include "plan/Checks.h"
#include "plan/EditProblem.h"
#include "plan/FitsFile.h"
#include "plan/FollowInside.h"
#include "plan/JobIds.h"
#include "plan/OnWalls.h"
#include "plan/PlanGeometry.h"
#include "plan/WallThickness.h"

namespace sumpwright::plan {

namespace {

using geometry::Segment;
using geometry::Vec;

constexpr double kFarthest_m = 10'000.0;  // as the reader takes coordinates
constexpr double kParallel = 1e-6;        // sine of an angle nobody measures (own figure)
constexpr double kSameSpot_m = 1e-9;      // rounding

bool isRing(const Job& job, int ring) {
  return ring >= 0 && static_cast<std::size_t>(ring) < job.plan.rings.size();
}

std::optional<base::Problem> noEdge(const Job& job, int ring, int edge) {
  if (isRing(job, ring) && edge >= 0) {
    const Ring& r = job.plan.rings[static_cast<std::size_t>(ring)];
    // Only a closed ring with a wall to each edge can be edited as an outline.
    if (r.closed && r.walls.size() == r.corners.size() &&
        static_cast<std::size_t>(edge) < edgeCount(r)) {
      return std::nullopt;
    }
  }
  return editProblem("plan.edit.no-edge", {base::count("ring", ring), base::count("edge", edge)});
}

std::optional<base::Problem> noCorner(const Job& job, int ring, int corner) {
  if (!noEdge(job, ring, corner)) return std::nullopt;  // a closed ring: a corner to each edge
  return editProblem("plan.edit.no-corner",
                     {base::count("ring", ring), base::count("corner", corner)});
}

bool isPlace(double metres) { return std::abs(metres) <= kFarthest_m; }  // false for NaN

base::Problem notAPlace() { return editProblem("plan.edit.not-a-place"); }

base::Problem shortBy(double length_m) {
  return editProblem("plan.ring.short-edge",
                     {base::millimetres("length", 1000.0 * length_m),
                      base::millimetres("least", 1000.0 * kShortestEdge_m)});
}

/// An edge too short, or so long that no file could hold a place at its end.
std::optional<base::Problem> badEdge(const Ring& ring) {
  for (std::size_t i = 0; i < edgeCount(ring); ++i) {
    const double length = length_m(edgeOf(ring, i));
    if (length < kShortestEdge_m) return shortBy(length);
    if (length > kLongestEdge_m) return notAPlace();
  }
  return std::nullopt;
}

std::size_t before(const Ring& ring, std::size_t i) {
  return (i + ring.corners.size() - 1) % ring.corners.size();
}

std::size_t after(const Ring& ring, std::size_t i) { return (i + 1) % ring.corners.size(); }

/// A corner at a place of an edge, and a wall for what is behind it.
Ring withCorner(const Job& job, const Ring& ring, std::size_t index, std::size_t edge,
                Point place) {
  Ring split = ring;
  const auto next = static_cast<std::ptrdiff_t>(edge) + 1;
  split.corners.insert(split.corners.begin() + next, place);
  Wall second = ring.walls[edge];
  second.id = givenWallId(index, edge + 1, idsOf(job));
  split.walls.insert(split.walls.begin() + next, std::move(second));
  return split;
}

/// Splits without asking what stands there: things from `offset_m` on go to the second wall.
Job splitAt(const Job& job, std::size_t ring, std::size_t edge, double offset_m) {
  const Ring& whole = job.plan.rings[ring];
  const Segment wall = edgeOf(whole, edge);
  const Point place = offset_m == 0.0              ? wall.a
                      : offset_m == length_m(wall) ? wall.b
                                                   : pointAt(whole, {edge, offset_m});
  return withRing(job, ring, withCorner(job, whole, ring, edge, place),
                  [edge, offset_m](const Ring&, const Ring&, OnEdge at, double) {
                    if (at.edge > edge) return OnEdge{at.edge + 1, at.offset_m};
                    if (at.edge < edge || at.offset_m < offset_m) return at;
                    return OnEdge{edge + 1, at.offset_m - offset_m};
                  });
}

/// Where the shifted line meets a neighbour's line.
Point meeting(const Segment& shifted, const Segment& neighbour) {
  const Vec along = shifted.b - shifted.a;
  const Vec side = neighbour.b - neighbour.a;
  const double t = geometry::cross(neighbour.a - shifted.a, side) / geometry::cross(along, side);
  return shifted.a + t * along;
}

bool runsOn(const Segment& a, const Segment& b) {
  return std::abs(geometry::cross(directionOf(a), directionOf(b))) < kParallel;
}

}  // namespace

base::Result<Job> moveCorner(const Job& job, int ring, int corner, Point to) {
  if (const auto bad = noCorner(job, ring, corner)) return *bad;
  if (!isPlace(to.x) || !isPlace(to.y)) return notAPlace();
  const auto index = static_cast<std::size_t>(ring);
  Ring moved = job.plan.rings[index];
  moved.corners[static_cast<std::size_t>(corner)] = to;
  if (const auto bad = badEdge(moved)) return *bad;
  Job result = withRing(job, index, moved, carryAlongEdge);
  followCorner(result, job.plan.rings[index], moved, static_cast<std::size_t>(corner));
  return result;
}

base::Result<Job> moveWall(const Job& job, int ring, int edge, double out_m) {
  if (const auto bad = noEdge(job, ring, edge)) return *bad;
  if (!isPlace(out_m)) return notAPlace();
  const auto index = static_cast<std::size_t>(ring);
  if (const auto bad = badEdge(job.plan.rings[index])) return *bad;
  if (out_m == 0.0) return job;
  auto at = static_cast<std::size_t>(edge);
  Job start = job;
  const Segment wall = edgeOf(job.plan.rings[index], at);
  const Wall facts = job.plan.rings[index].walls[at];
  const bool jog_before =
      runsOn(edgeOf(job.plan.rings[index], before(job.plan.rings[index], at)), wall);
  const bool jog_after =
      runsOn(wall, edgeOf(job.plan.rings[index], after(job.plan.rings[index], at)));
  if (jog_after) start = splitAt(start, index, at, length_m(wall));
  if (jog_before) start = splitAt(start, index, at++, 0.0);
  const Vec shift = -out_m * geometry::left(directionOf(wall));  // the house is on the left
  const Segment shifted{wall.a + shift, wall.b + shift};
  Ring moved = start.plan.rings[index];
  const std::size_t next = after(moved, at);
  // A neighbour's line is that of the old outline: the walls put between have no length yet.
  const Segment prior = edgeOf(moved, before(moved, at));
  const Segment later = edgeOf(moved, next);
  moved.corners[at] = jog_before ? shifted.a : meeting(shifted, prior);
  moved.corners[next] = jog_after ? shifted.b : meeting(shifted, later);
  if (const auto bad = unfit(moved)) return *bad;  // nearly parallel lines meet far away
  if (const auto bad = badEdge(moved)) return *bad;
  Job result = withRing(start, index, std::move(moved), carryAlongEdge);
  followWall(result, wall, thicknessTaken_m(facts, job.house), shift);
  return result;
}

base::Result<Job> setWallLength(const Job& job, int ring, int edge, double length_m) {
  if (const auto bad = noEdge(job, ring, edge)) return *bad;
  if (!isPlace(length_m) || length_m <= 0.0) return notAPlace();
  const Ring& r = job.plan.rings[static_cast<std::size_t>(ring)];
  if (const auto bad = badEdge(r)) return *bad;
  const auto at = static_cast<std::size_t>(edge);
  const Segment wall = edgeOf(r, at);
  const Segment next = edgeOf(r, after(r, at));
  const Vec longer = (length_m - plan::length_m(wall)) * directionOf(wall);
  if (runsOn(wall, next)) {
    return moveCorner(job, ring, static_cast<int>(after(r, at)), wall.b + longer);
  }
  const Vec outward = -geometry::left(directionOf(next));
  return moveWall(job, ring, static_cast<int>(after(r, at)), geometry::dot(longer, outward));
}

base::Result<Job> splitWall(const Job& job, int ring, int edge, double offset_m) {
  if (const auto bad = noEdge(job, ring, edge)) return *bad;
  if (!isPlace(offset_m)) return notAPlace();
  const auto index = static_cast<std::size_t>(ring);
  const Segment wall = edgeOf(job.plan.rings[index], static_cast<std::size_t>(edge));
  const double rest = length_m(wall) - offset_m;
  if (std::min(offset_m, rest) < kShortestEdge_m) return shortBy(std::min(offset_m, rest));
  bool through = false;
  Plan plan = job.plan;
  forEachOnWall(plan, [&](const OnWall& at, double width_m) {
    through =
        through || (at.ring == ring && at.edge == edge && at.offset_m < offset_m - kSameSpot_m &&
                    at.offset_m + width_m > offset_m + kSameSpot_m);
  });
  if (through) return editProblem("plan.edit.split-through");
  return splitAt(job, index, static_cast<std::size_t>(edge), offset_m);
}

base::Result<Job> removeCorner(const Job& job, int ring, int corner) {
  if (const auto bad = noCorner(job, ring, corner)) return *bad;
  const auto index = static_cast<std::size_t>(ring);
  const Ring& whole = job.plan.rings[index];
  const std::size_t count = whole.corners.size();
  if (count <= 3) return editProblem("plan.edit.too-few-corners");
  const auto gone = static_cast<std::size_t>(corner);
  const std::size_t prior = before(whole, gone);
  Ring merged = whole;
  const bool second = length_m(edgeOf(whole, gone)) > length_m(edgeOf(whole, prior));
  merged.walls[prior] = whole.walls[second ? gone : prior];
  merged.corners.erase(merged.corners.begin() + corner);
  merged.walls.erase(merged.walls.begin() + corner);
  if (const auto bad = badEdge(merged)) return *bad;
  const auto renumbered = [gone](std::size_t edge) { return edge > gone ? edge - 1 : edge; };
  const std::size_t across = gone == 0 ? count - 2 : prior;
  Job result =
      withRing(job, index, merged, [=](const Ring& was, const Ring& is, OnEdge at, double width_m) {
        if (at.edge == gone || at.edge == prior) {
          return setOnto(was, is, at, width_m, across);
        }
        return OnEdge{renumbered(at.edge), at.offset_m};
      });
  followRemoved(result, whole, merged, gone, across);
  return result;
}

}  // namespace sumpwright::plan
