#include "plan/RoomEdits.h"

#include <algorithm>
#include <limits>
#include <optional>

#include "geometry/Areas.h"
#include "geometry/Shapes.h"
#include "plan/EditProblem.h"
#include "plan/LookedKinds.h"
#include "plan/ThingEdits.h"
#include "plan/WallBands.h"

namespace sumpwright::plan {

namespace {

using geometry::Face;
using geometry::Polygon;

constexpr double kWallReach_m = 0.05;    // own figure
constexpr double kLeastRoom_m2 = 0.2;    // own figure
constexpr double kLeastFloor_m2 = 0.05;  // own figure: less is rounding at the edge of another zone
constexpr int kMostCuts = 64;            // own figure: more courtyards than any house has

base::Problem noAreas() { return editProblem("plan.edit.no-areas"); }

void append(std::vector<Polygon>& list, std::vector<Polygon> more) {
  list.insert(list.end(), std::make_move_iterator(more.begin()),
              std::make_move_iterator(more.end()));
}

struct Extent {
  Point low{std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity()};
  Point high{-std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};
};

Extent extentOf(const Polygon& polygon) {
  Extent box;
  for (const Point p : polygon) {
    box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
    box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
  }
  return box;
}

/// A hole that no outline may run over: a courtyard's.
const Polygon* courtIn(const Face& face, const Plan& plan) {
  for (const Polygon& hole : face.holes) {
    for (std::size_t r = 1; r < plan.rings.size(); ++r) {
      const Polygon& court = plan.rings[r].corners;
      if (!court.empty() && geometry::contains(hole, court.front())) return &hole;
    }
  }
  return nullptr;
}

/// Outlines that have no courtyard within: a face round one is cut along x through its middle.
std::optional<std::vector<Polygon>> wholeOutlines(std::vector<Face> faces, const Plan& plan,
                                                  double least_m2) {
  std::vector<Polygon> outlines;
  for (int cuts = 0; !faces.empty(); ++cuts) {
    const Face face = std::move(faces.back());
    faces.pop_back();
    const Polygon* court = courtIn(face, plan);
    if (court == nullptr || cuts > kMostCuts) {
      if (geometry::faceArea(face) >= least_m2) outlines.push_back(face.outline);
      continue;
    }
    const double y = geometry::centroid(*court).y;
    const auto [low, high] = extentOf(face.outline);
    const double x0 = low.x - 1.0;
    const double x1 = high.x + 1.0;
    for (const Polygon& half : {Polygon{{x0, y}, {x1, y}, {x1, high.y + 1.0}, {x0, high.y + 1.0}},
                                Polygon{{x0, low.y - 1.0}, {x1, low.y - 1.0}, {x1, y}, {x0, y}}}) {
      std::vector<Polygon> taken = face.holes;
      taken.push_back(half);
      auto rest = geometry::without(face.outline, taken);
      if (!rest) return std::nullopt;
      faces.insert(faces.end(), rest->begin(), rest->end());
    }
  }
  return outlines;
}

/// Outlines beginning with their lowest, then leftmost corner, in the order of those.
void putInOrder(std::vector<Polygon>& outlines) {
  const auto lower = [](Point a, Point b) { return a.y < b.y || (a.y == b.y && a.x < b.x); };
  for (Polygon& p : outlines)
    std::rotate(p.begin(), std::min_element(p.begin(), p.end(), lower), p.end());
  std::sort(outlines.begin(), outlines.end(),
            [&](const Polygon& a, const Polygon& b) { return lower(a.front(), b.front()); });
}

/// What is left within the outside walls when `more` is taken out too.
std::optional<std::vector<Polygon>> insideWithout(const Job& job, std::vector<Polygon> more,
                                                  double least_m2) {
  const Plan& plan = job.plan;
  const bool sound = !plan.rings.empty() &&
                     std::all_of(plan.rings.begin(), plan.rings.end(), [](const Ring& ring) {
                       return ring.closed && ring.walls.size() == ring.corners.size() &&
                              !geometry::firstSelfContact(ring.corners);
                     });
  if (!sound) return std::nullopt;
  std::vector<Polygon> taken;
  for (std::size_t r = 0; r < plan.rings.size(); ++r) {
    if (r > 0) taken.push_back(plan.rings[r].corners);
    append(taken, bandsOfRing(job, plan.rings[r]));
  }
  append(taken, std::move(more));
  auto faces = geometry::without(plan.rings[0].corners, taken);
  if (!faces) return std::nullopt;
  auto outlines = wholeOutlines(std::move(*faces), plan, least_m2);
  if (outlines) putInOrder(*outlines);
  return outlines;
}

}  // namespace

base::Result<std::vector<Polygon>> findRooms(const Job& job) {
  auto outlines = insideWithout(job, bandsOfInnerWalls(job, kWallReach_m), kLeastRoom_m2);
  if (!outlines) return noAreas();
  return std::move(*outlines);
}

base::Result<Job> roomsFromWalls(const Job& job) {
  const auto outlines = findRooms(job);
  if (!outlines) return outlines.problems();
  base::Result<Job> result = job;
  for (const Polygon& outline : *outlines) {
    std::vector<const Room*> inside;
    for (const Room& room : job.plan.rooms) {
      if (geometry::contains(outline, geometry::labelPoint(room.outline_m)))
        inside.push_back(&room);
    }
    if (inside.size() > 1 || !result) continue;
    Room room = inside.empty() ? Room{} : *inside.front();
    room.outline_m = outline;
    result = inside.empty() ? addThing(*result, std::move(room)) : replaceThing(*result, room);
  }
  return result;
}

base::Result<Job> floorZoneFromWalls(const Job& job) {
  std::vector<Polygon> zones;
  for (const FloorZone& zone : job.plan.floor_zones) zones.push_back(zone.outline_m);
  const auto outlines = insideWithout(job, std::move(zones), kLeastFloor_m2);
  if (!outlines) return noAreas();
  if (outlines->empty()) return editProblem("plan.edit.floor-whole");
  base::Result<Job> result = job;
  for (const Polygon& outline : *outlines) {
    FloorZone zone;
    zone.outline_m = outline;
    if (result) result = addThing(*result, std::move(zone));
  }
  return result;
}

}  // namespace sumpwright::plan
