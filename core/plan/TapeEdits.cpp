#include "plan/TapeEdits.h"

#include <algorithm>
#include <cmath>

#include "geometry/Shapes.h"
#include "plan/Checks.h"
#include "plan/DesignEdits.h"
#include "plan/EditProblem.h"
#include "plan/JobIds.h"
#include "plan/OnWalls.h"
#include "plan/PlanGeometry.h"
#include "plan/ThingEdits.h"

namespace sumpwright::plan {

namespace {

constexpr double kFarthestTaped_m = 10'000.0;  // as the reader takes coordinates
constexpr double kNoArea_m2 = 1e-6;            // own figure: walls on one line, but for rounding

base::Problem noTapedWall(int ring, std::size_t index) {
  return editProblem("plan.edit.no-edge", {base::count("ring", ring),
                                           base::count("edge", static_cast<std::int64_t>(index))});
}

bool hasRing(const Job& job, int ring) {
  return ring >= 0 && static_cast<std::size_t>(ring) < job.plan.rings.size();
}

const Ring& ringOf(const Job& job, int ring) {
  return job.plan.rings[static_cast<std::size_t>(ring)];
}

std::optional<base::Problem> badWall(const TapedWall& wall) {
  if (!std::isfinite(wall.bearing_deg) || !(std::abs(wall.length_m) <= kFarthestTaped_m)) {
    return editProblem("plan.edit.not-a-place");
  }
  if (wall.length_m >= kShortestEdge_m) return std::nullopt;
  return editProblem("plan.ring.short-edge",
                     {base::millimetres("length", 1000.0 * wall.length_m),
                      base::millimetres("least", 1000.0 * kShortestEdge_m)});
}

std::optional<base::Problem> badCorners(const std::vector<Point>& corners) {
  const bool far = std::any_of(corners.begin(), corners.end(), [](Point p) {
    return std::max(std::abs(p.x), std::abs(p.y)) > kFarthestTaped_m;
  });
  if (far) return editProblem("plan.edit.not-a-place");
  return std::nullopt;
}

/// The ring's walls brought to one per corner; new ones get ids of their own.
void matchWalls(const Job& job, std::size_t index, Ring& ring) {
  while (ring.walls.size() > ring.corners.size()) ring.walls.pop_back();
  while (ring.walls.size() < ring.corners.size()) {
    Wall wall;
    Job with = job;  // so that the ids just given are not given twice
    with.plan.rings[index].walls = ring.walls;
    wall.id = givenWallId(index, ring.walls.size(), idsOf(with));
    ring.walls.push_back(std::move(wall));
  }
}

/// Along its own wall from its first corner, kept on it; on a wall that is no more, on the last.
OnEdge keepOffset(const Ring&, const Ring& after, OnEdge at, double width_m) {
  const std::size_t edge = std::min(at.edge, edgeCount(after) - 1);
  const double last = std::max(0.0, length_m(edgeOf(after, edge)) - width_m);
  return {edge, std::clamp(at.offset_m, 0.0, last)};
}

/// withRing() empties the book of a ring whose corners change; here the book is what changed them.
Job withBook(const Job& job, std::size_t index, Ring ring, const Carry& carry) {
  const std::vector<TapedWall> book = ring.taped;
  const Sharing shared_by = ring.shared_by;
  Job result = withRing(job, index, std::move(ring), carry);
  result.plan.rings[index].taped = book;
  result.plan.rings[index].shared_by = shared_by;
  return result;
}

/// The job with the ring's corners and book replaced.
base::Result<Job> adopted(const Job& job, std::size_t index, Ring ring, const Carry& carry) {
  if (const auto bad = badCorners(ring.corners)) return *bad;
  matchWalls(job, index, ring);
  if (edgeCount(ring) == 0 || edgeCount(job.plan.rings[index]) == 0) {
    Job result = job;
    result.plan.rings[index] = std::move(ring);
    return result;
  }
  return withBook(job, index, std::move(ring), carry);
}

Point startOf(const Ring& ring) { return ring.corners.empty() ? Point{} : ring.corners.front(); }

/// The open ring its book describes.
Ring openRing(Ring ring) {
  ring.corners = geometry::corners(startOf(ring), legsOf(ring.taped));
  ring.closed = false;
  ring.shared_by = Sharing::not_shared;
  return ring;
}

TapedWall walkedBack(TapedWall wall) {
  wall.bearing_deg = std::fmod(wall.bearing_deg + 180.0, 360.0);
  return wall;
}

/// The book walked the other way. A wall's angle is that to the wall before it, which is now the
/// one after: all but the first's move on by one.
void turnBook(std::vector<TapedWall>& book) {
  std::reverse(book.begin(), book.end());
  for (TapedWall& wall : book) wall = walkedBack(wall);
  for (std::size_t i = book.size(); i-- > 1;) std::swap(book[i].square, book[i - 1].square);
}

/// The corners a closed ring gets, one per wall. A wall that is drawn to close it stands in no
/// book.
base::Result<Ring> closedRing(Ring ring, Sharing sharing) {
  const Point start = startOf(ring);
  const auto legs = legsOf(ring.taped);
  const geometry::Closing closing = geometry::closingOf(legs);
  ring.closed = true;
  ring.shared_by = sharing;
  if (sharing == Sharing::least_squares) {
    const auto shared = geometry::closedByLeastSquares(legs, geometry::Precision{});
    if (!shared) return editProblem("plan.tape.cannot-share");
    ring.corners = geometry::corners(start, *shared);
  } else if (sharing == Sharing::compass_rule) {
    ring.corners = geometry::closedByCompassRule(start, legs);
  } else {
    ring.corners = geometry::corners(start, legs);
    if (closing.gap_m >= kShortestEdge_m) return ring;
  }
  ring.corners.pop_back();  // the end is the start
  return ring;
}

bool standsOn(const std::optional<OnWall>& at, int ring, std::size_t index) {
  return at && at->ring == ring && at->edge == static_cast<int>(index);
}

/// Ids of what goes with a wall; a service whose run is drawn only loses its entry.
std::vector<std::string> goneWith(const Job& job, int ring, std::size_t index) {
  std::vector<std::string> gone;
  for (const Opening& o : job.plan.openings) {
    if (standsOn(o.at, ring, index)) gone.push_back(o.id);
  }
  for (const Radiator& r : job.plan.radiators) {
    if (standsOn(r.on, ring, index)) gone.push_back(r.id);
  }
  for (const WallFeature& f : job.plan.wall_features) {
    if (standsOn(f.at, ring, index)) gone.push_back(f.id);
  }
  for (const Service& s : job.plan.services) {
    if (standsOn(s.entry, ring, index) && s.run != RunKnown::drawn) gone.push_back(s.id);
  }
  return gone;
}

base::Result<Job> withoutSumpsOn(Job job, int ring, std::size_t index) {
  const Ring r = ringOf(job, ring);
  if (edgeCount(r) == 0) return job;
  const std::vector<Sump> sumps = job.design.sumps;
  for (const Sump& s : sumps) {
    const bool here = s.kind == SumpKind::cored && s.ring == ring;
    if (!here || onEdge(r, s.chainage_m).edge != index) continue;
    base::Result<Job> without = removeSump(job, s.id);
    if (!without) return without;
    job = std::move(without).value();
  }
  return job;
}

/// The job without what stands on a wall, and without what hung on that: each goes by its own verb.
base::Result<Job> withoutStanding(const Job& job, int ring, std::size_t index) {
  Job left = job;
  for (Service& s : left.plan.services) {
    if (standsOn(s.entry, ring, index) && s.run == RunKnown::drawn) s.entry.reset();
  }
  for (const std::string& id : goneWith(job, ring, index)) {
    base::Result<Job> without = removeThing(left, id);
    if (!without) return without;
    left = std::move(without).value();
  }
  return withoutSumpsOn(std::move(left), ring, index);
}

/// The ring begun at its second corner: its first wall becomes the last.
Job begunAtNext(const Job& job, int ring) {
  Ring r = ringOf(job, ring);
  std::rotate(r.corners.begin(), r.corners.begin() + 1, r.corners.end());
  std::rotate(r.walls.begin(), r.walls.begin() + 1, r.walls.end());
  const std::size_t count = r.corners.size();
  return withBook(job, static_cast<std::size_t>(ring), std::move(r),
                  [count](const Ring&, const Ring&, OnEdge at, double) {
                    return OnEdge{(at.edge + count - 1) % count, at.offset_m};
                  });
}

/// The job with an open ring closed, and turned where it was walked the wrong way round.
base::Result<Job> closedJob(const Job& job, int ring, Ring open, Sharing sharing) {
  const auto walls = static_cast<std::int64_t>(open.taped.size());
  base::Result<Ring> closed = closedRing(std::move(open), sharing);
  if (!closed) return closed.problems();
  Ring whole = std::move(closed).value();
  if (whole.corners.size() < 3) {
    return editProblem("plan.tape.few", {base::count("walls", walls)});
  }
  const double area = geometry::signedArea(whole.corners);
  if (std::abs(area) < kNoArea_m2) return editProblem("plan.tape.no-area");
  base::Result<Job> done =
      adopted(job, static_cast<std::size_t>(ring), std::move(whole), keepOffset);
  if (!done || (area > 0.0) == (ring == 0)) return done;
  const bool drawn = ringOf(*done, ring).taped.size() < ringOf(*done, ring).corners.size();
  Job turned = turnedRound(*done, ring);
  // The wall that was drawn stays the last, so that the book still counts from the first.
  if (drawn) return begunAtNext(turned, ring);
  if (sharing != Sharing::least_squares) return turned;
  // By the angles as the turned book has them, as any later correction will do it.
  base::Result<Ring> again = closedRing(openRing(ringOf(turned, ring)), sharing);
  // A book so wild that it now closes the other way round keeps the first sharing.
  const bool same = again.ok() && (geometry::signedArea(again->corners) > 0.0) == (ring == 0);
  if (!same) return turned;
  return adopted(turned, static_cast<std::size_t>(ring), std::move(again).value(), keepOffset);
}

}  // namespace

geometry::Leg legOf(const TapedWall& wall) {
  return {wall.bearing_deg, wall.length_m, wall.square, false};
}

std::vector<geometry::Leg> legsOf(const std::vector<TapedWall>& walls) {
  std::vector<geometry::Leg> legs;
  legs.reserve(walls.size());
  for (const TapedWall& wall : walls) legs.push_back(legOf(wall));
  return legs;
}

bool mayTape(const Job& job, int ring) {
  if (!hasRing(job, ring)) return ring == static_cast<int>(job.plan.rings.size());
  const Ring& r = ringOf(job, ring);
  return (!r.closed || r.corners.empty()) && (!r.taped.empty() || r.corners.size() < 2);
}

base::Result<Job> addTaped(const Job& job, int ring, const TapedWall& wall,
                           std::optional<Point> start) {
  if (const auto bad = badWall(wall)) return *bad;
  if (!hasRing(job, ring) && ring != static_cast<int>(job.plan.rings.size())) {
    return noTapedWall(ring, 0);
  }
  if (!mayTape(job, ring)) {
    return editProblem(ringOf(job, ring).closed ? "plan.tape.closed" : "plan.tape.none");
  }
  Job begun = job;
  if (!hasRing(job, ring)) begun.plan.rings.emplace_back();
  const auto index = static_cast<std::size_t>(ring);
  Ring r = begun.plan.rings[index];
  if (start && r.corners.empty()) r.corners = {*start};
  r.taped.push_back(wall);
  return adopted(begun, index, openRing(std::move(r)), keepOffset);
}

base::Result<Job> replaceTaped(const Job& job, int ring, std::size_t index, const TapedWall& wall) {
  if (const auto bad = badWall(wall)) return *bad;
  if (!hasRing(job, ring)) return noTapedWall(ring, index);
  Ring r = ringOf(job, ring);
  if (r.taped.empty()) return editProblem("plan.tape.none");
  if (index >= r.taped.size()) return noTapedWall(ring, index);
  r.taped[index] = wall;
  if (!r.closed) return adopted(job, static_cast<std::size_t>(ring), openRing(r), keepOffset);
  const Sharing sharing = r.shared_by;
  return closedJob(job, ring, openRing(std::move(r)), sharing);
}

base::Result<Job> insertTaped(const Job& job, int ring, std::size_t index, const TapedWall& wall) {
  if (const auto bad = badWall(wall)) return *bad;
  if (!hasRing(job, ring)) return noTapedWall(ring, index);
  Ring r = ringOf(job, ring);
  if (r.closed) return editProblem("plan.tape.closed");
  if (index == r.taped.size()) return addTaped(job, ring, wall);
  if (r.taped.empty()) return editProblem("plan.tape.none");
  if (index > r.taped.size()) return noTapedWall(ring, index);
  matchWalls(job, static_cast<std::size_t>(ring), r);
  const auto at = static_cast<std::ptrdiff_t>(index);
  r.taped.insert(r.taped.begin() + at, wall);
  Wall facts;
  facts.id = givenWallId(static_cast<std::size_t>(ring), index, idsOf(job));
  r.walls.insert(r.walls.begin() + at, std::move(facts));
  return adopted(job, static_cast<std::size_t>(ring), openRing(std::move(r)),
                 [index](const Ring& before, const Ring& after, OnEdge place, double width_m) {
                   if (place.edge >= index) ++place.edge;
                   return keepOffset(before, after, place, width_m);
                 });
}

base::Result<Job> removeTaped(const Job& job, int ring, std::size_t index) {
  if (!hasRing(job, ring)) return noTapedWall(ring, index);
  Ring r = ringOf(job, ring);
  if (r.closed) return editProblem("plan.tape.closed");
  if (r.taped.empty()) return editProblem("plan.tape.none");
  if (index >= r.taped.size()) return noTapedWall(ring, index);
  base::Result<Job> cleared = withoutStanding(job, ring, index);
  if (!cleared) return cleared;
  Job without = std::move(cleared).value();
  auto& walls = without.plan.rings[static_cast<std::size_t>(ring)].walls;
  if (index < walls.size()) walls[index].ground_points.clear();
  matchWalls(without, static_cast<std::size_t>(ring), r);
  const auto at = static_cast<std::ptrdiff_t>(index);
  r.taped.erase(r.taped.begin() + at);
  r.walls.erase(r.walls.begin() + at);
  return adopted(without, static_cast<std::size_t>(ring), openRing(std::move(r)),
                 [index](const Ring& before, const Ring& after, OnEdge place, double width_m) {
                   if (place.edge > index) --place.edge;
                   return keepOffset(before, after, place, width_m);
                 });
}

base::Result<Job> closeTaped(const Job& job, int ring, Sharing sharing) {
  if (!hasRing(job, ring)) return noTapedWall(ring, 0);
  const Ring& r = ringOf(job, ring);
  if (r.closed) return editProblem("plan.tape.closed");
  if (r.taped.empty()) return editProblem("plan.tape.none");
  return closedJob(job, ring, openRing(r), sharing);
}

base::Result<Job> reopenTaped(const Job& job, int ring) {
  if (!hasRing(job, ring)) return noTapedWall(ring, 0);
  const Ring& r = ringOf(job, ring);
  if (!r.closed) return editProblem("plan.tape.open");
  if (r.taped.empty()) return editProblem("plan.tape.none");
  return adopted(job, static_cast<std::size_t>(ring), openRing(r), keepOffset);
}

Job turnedRound(const Job& job, int ring) {
  SUMPWRIGHT_REQUIRE(hasRing(job, ring));
  Ring r = ringOf(job, ring);
  SUMPWRIGHT_REQUIRE(r.closed && r.walls.size() == r.corners.size() && !r.corners.empty());
  // Corner 0 stays; wall i, from corner i to i + 1, becomes the wall n - 1 - i.
  std::reverse(r.corners.begin() + 1, r.corners.end());
  std::reverse(r.walls.begin(), r.walls.end());
  turnBook(r.taped);
  const std::size_t count = r.corners.size();
  Job turned = withBook(job, static_cast<std::size_t>(ring), std::move(r),
                        [count](const Ring& before, const Ring&, OnEdge at, double width_m) {
                          const double length = length_m(edgeOf(before, at.edge));
                          return OnEdge{count - 1 - at.edge, length - at.offset_m - width_m};
                        });
  countFromOtherEnds(turned, static_cast<std::size_t>(ring));
  return turned;
}

}  // namespace sumpwright::plan
