#include "plan/Dimensions.h"

#include <algorithm>

#include "geometry/Polylines.h"
#include "geometry/Shapes.h"
#include "plan/OnWalls.h"
#include "plan/PlanGeometry.h"

namespace sumpwright::plan {

namespace {

using geometry::Polyline;

std::optional<Point> onLine(const Polyline& line, ThingEnd end) {
  if (line.empty()) return std::nullopt;
  if (end == ThingEnd::start) return line.front();
  if (end == ThingEnd::end) return line.back();
  return geometry::pointAlong(line, geometry::lengthOf(line) / 2.0);
}

double shareOf(ThingEnd end) {
  return end == ThingEnd::start ? 0.0 : end == ThingEnd::end ? 1.0 : 0.5;
}

std::optional<Point> onFace(const Plan& plan, const OnWall& at, double width_m, ThingEnd end) {
  const auto edge = edgeAt(plan, at);
  if (!edge) return std::nullopt;
  return edge->a + (at.offset_m + shareOf(end) * width_m) * directionOf(*edge);
}

std::optional<Point> ofWall(const Plan& plan, const DimensionEnd& end) {
  for (const Ring& ring : plan.rings) {
    for (std::size_t i = 0; i < edgeCount(ring) && i < ring.walls.size(); ++i) {
      if (ring.walls[i].id != end.thing) continue;
      const geometry::Segment edge = edgeOf(ring, i);
      return onLine({edge.a, edge.b}, end.end);
    }
  }
  return std::nullopt;
}

/// The place of the thing of that id in a list, or nothing where the list has none.
template <class List, class PlaceOf>
bool find(const List& list, const std::string& id, std::optional<Point>& place, PlaceOf&& placeOf) {
  const auto it =
      std::find_if(list.begin(), list.end(), [&](const auto& thing) { return thing.id == id; });
  if (it == list.end()) return false;
  place = placeOf(*it);
  return true;
}

std::optional<Point> ofDoor(const Plan& plan, const InnerDoor& door, ThingEnd end) {
  std::optional<Point> place;
  find(plan.inner_walls, door.wall, place, [&](const InnerWall& wall) -> std::optional<Point> {
    if (wall.line_m.empty()) return std::nullopt;
    return geometry::pointAlong(wall.line_m, door.offset_m + shareOf(end) * door.width_m);
  });
  return place;
}

std::optional<Point> ofSump(const Plan& plan, const Sump& sump) {
  if (sump.kind != SumpKind::cored) return sump.at_m;
  if (!onRing(plan, sump.ring, sump.chainage_m)) return std::nullopt;
  const Ring& ring = plan.rings[static_cast<std::size_t>(sump.ring)];
  return pointAt(ring, onEdge(ring, sump.chainage_m));
}

}  // namespace

std::optional<Point> placeOf(const Job& job, const DimensionEnd& end) {
  const Plan& plan = job.plan;
  if (const auto corner = ofWall(plan, end)) return corner;
  std::optional<Point> place;
  const auto among = [&](const auto& list, auto&& of) { return find(list, end.thing, place, of); };
  const auto line = [&](const auto& thing) { return onLine(thing.line_m, end.end); };
  const auto point = [](const auto& thing) { return std::optional(thing.at_m); };
  const auto middle = [&](const auto& thing) -> std::optional<Point> {
    if (end.end != ThingEnd::middle || thing.outline_m.empty()) return std::nullopt;
    return geometry::centroid(thing.outline_m);
  };
  const auto onWall = [&](const auto& thing) {
    return onFace(plan, thing.at, thing.width_m, end.end);
  };
  among(plan.openings, onWall) || among(plan.wall_features, onWall) ||
      among(plan.services,
            [&](const Service& s) {
              return s.entry ? onFace(plan, *s.entry, 0.0, end.end) : onLine(s.run_m, end.end);
            }) ||
      among(plan.radiators,
            [&](const Radiator& r) {
              return r.on ? onFace(plan, *r.on, r.width_m, end.end) : line(r);
            }) ||
      among(plan.inner_walls, line) ||
      among(plan.inner_doors, [&](const InnerDoor& d) { return ofDoor(plan, d, end.end); }) ||
      among(plan.rising_walls, line) || among(plan.heating_pipes, line) ||
      among(plan.supplies, point) || among(plan.fittings, point) ||
      among(plan.outside, [&](const OutsideThing& t) { return onLine(t.points_m, end.end); }) ||
      among(plan.test_holes, point) || among(plan.rooms, middle) ||
      among(plan.floor_zones, middle) ||
      among(job.design.sumps, [&](const Sump& s) { return ofSump(plan, s); });
  return place;
}

std::optional<geometry::Segment> lineOf(const Job& job, const Dimension& dimension) {
  constexpr double kOnePlace_m = 1e-6;  // rounding
  const auto from = placeOf(job, dimension.from);
  const auto to = placeOf(job, dimension.to);
  if (!from || !to) return std::nullopt;
  const double length = geometry::distance(*from, *to);
  if (length <= kOnePlace_m) return std::nullopt;
  const geometry::Vec off = (dimension.off_m / length) * geometry::left(*to - *from);
  return geometry::Segment{*from + off, *to + off};
}

}  // namespace sumpwright::plan
