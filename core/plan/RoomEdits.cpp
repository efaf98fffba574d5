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
constexpr int kMostCuts = 4096;          // own figure: more pieces than any house has rooms

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

/// An area still to be made an outline, and the place in `without`'s list of the one it is cut
/// from.
struct Open {
  Face face;
  std::size_t source = 0;
};

/// A middle that lies in a hole of the face, of all that an outline may not run over.
std::optional<Point> middleInHole(const Open& open, const std::vector<Point>& taken,
                                  const std::vector<Point>& of_faces) {
  for (const Polygon& hole : open.face.holes) {
    for (const Point p : taken) {
      if (geometry::contains(hole, p)) return p;
    }
    for (std::size_t i = 0; i < of_faces.size(); ++i) {
      if (i != open.source && geometry::contains(hole, of_faces[i])) return of_faces[i];
    }
  }
  return std::nullopt;
}

/// The parts of a face above and below `y`.
std::optional<std::vector<Face>> cutAt(const Face& face, double y) {
  const auto [low, high] = extentOf(face.outline);
  const double x0 = low.x - 1.0;
  const double x1 = high.x + 1.0;
  std::vector<Face> parts;
  for (const Polygon& half : {Polygon{{x0, y}, {x1, y}, {x1, high.y + 1.0}, {x0, high.y + 1.0}},
                              Polygon{{x0, low.y - 1.0}, {x1, low.y - 1.0}, {x1, y}, {x0, y}}}) {
    std::vector<Polygon> taken = face.holes;
    taken.push_back(half);
    auto rest = geometry::without(face.outline, taken);
    if (!rest) return std::nullopt;
    parts.insert(parts.end(), rest->begin(), rest->end());
  }
  return parts;
}

/// Outlines that run over none of the others and none of `taken`: a face round one is cut along x
/// through its middle.
std::optional<std::vector<Polygon>> wholeOutlines(const std::vector<Face>& faces,
                                                  const std::vector<Polygon>& taken,
                                                  double least_m2) {
  std::vector<Point> middles;
  for (const Polygon& p : taken) middles.push_back(geometry::labelPoint(p));
  std::vector<Point> of_faces;
  std::vector<Open> open;
  for (const Face& face : faces) {
    open.push_back({face, open.size()});
    const bool counts = geometry::faceArea(face) >= least_m2;
    of_faces.push_back(counts ? geometry::labelPoint(face.outline) : face.outline.front());
  }
  std::vector<Polygon> outlines;
  for (int cuts = 0; !open.empty(); ++cuts) {
    const Open next = std::move(open.back());
    open.pop_back();
    if (geometry::faceArea(next.face) < least_m2) continue;
    const auto middle = middleInHole(next, middles, of_faces);
    if (!middle) {
      outlines.push_back(next.face.outline);
      continue;
    }
    if (cuts > kMostCuts) return std::nullopt;
    auto parts = cutAt(next.face, middle->y);
    if (!parts) return std::nullopt;
    for (Face& part : *parts) open.push_back({std::move(part), next.source});
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

/// What is taken out besides outside walls and courtyards. No outline runs over a zone; over a wall
/// that stands free it does.
struct TakenOut {
  std::vector<Polygon> walls;
  std::vector<Polygon> zones;
};

/// What is left within the outside walls when `more` is taken out too.
std::optional<std::vector<Polygon>> insideWithout(const Job& job, TakenOut more, double least_m2) {
  const Plan& plan = job.plan;
  const bool sound = !plan.rings.empty() &&
                     std::all_of(plan.rings.begin(), plan.rings.end(), [](const Ring& ring) {
                       return ring.closed && ring.walls.size() == ring.corners.size() &&
                              !geometry::firstSelfContact(ring.corners);
                     });
  if (!sound) return std::nullopt;
  std::vector<Polygon> whole = more.zones;
  for (std::size_t r = 1; r < plan.rings.size(); ++r) whole.push_back(plan.rings[r].corners);
  std::vector<Polygon> taken = whole;
  for (const Ring& ring : plan.rings) append(taken, bandsOfRing(job, ring));
  append(taken, std::move(more.walls));
  const auto faces = geometry::without(plan.rings[0].corners, taken);
  if (!faces) return std::nullopt;
  auto outlines = wholeOutlines(*faces, whole, least_m2);
  if (outlines) putInOrder(*outlines);
  return outlines;
}

/// The area a room stands in: the one that holds its middle or, where a wall now runs through that,
/// the one that it covers most of. Past the end: none.
std::size_t areaOf(const Room& room, const std::vector<Polygon>& areas) {
  const Point middle = geometry::labelPoint(room.outline_m);
  std::size_t best = areas.size();
  double most_m2 = kLeastRoom_m2;
  for (std::size_t i = 0; i < areas.size(); ++i) {
    if (geometry::contains(areas[i], middle)) return i;
    const double shared_m2 = geometry::overlapArea(areas[i], room.outline_m);
    if (shared_m2 <= most_m2) continue;
    most_m2 = shared_m2;
    best = i;
  }
  return best;
}

}  // namespace

base::Result<std::vector<Polygon>> findRooms(const Job& job) {
  auto outlines = insideWithout(job, {bandsOfInnerWalls(job, kWallReach_m), {}}, kLeastRoom_m2);
  if (!outlines) return noAreas();
  return std::move(*outlines);
}

base::Result<Job> roomsFromWalls(const Job& job) {
  const auto outlines = findRooms(job);
  if (!outlines) return outlines.problems();
  std::vector<std::vector<const Room*>> rooms(outlines->size() + 1);
  for (const Room& room : job.plan.rooms) rooms[areaOf(room, *outlines)].push_back(&room);
  base::Result<Job> result = job;
  for (std::size_t i = 0; i < outlines->size(); ++i) {
    const std::vector<const Room*>& inside = rooms[i];
    if (inside.size() > 1 || !result) continue;
    Room room = inside.empty() ? Room{} : *inside.front();
    room.outline_m = (*outlines)[i];
    result = inside.empty() ? addThing(*result, std::move(room)) : replaceThing(*result, room);
  }
  return result;
}

base::Result<Job> floorZoneFromWalls(const Job& job) {
  std::vector<Polygon> zones;
  for (const FloorZone& zone : job.plan.floor_zones) zones.push_back(zone.outline_m);
  const auto outlines = insideWithout(job, {{}, std::move(zones)}, kLeastFloor_m2);
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
