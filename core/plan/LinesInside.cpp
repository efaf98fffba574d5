#include "plan/LinesInside.h"

#include <vector>

#include "plan/OnWalls.h"
#include "plan/PlanGeometry.h"

namespace sumpwright::plan {

namespace {

using geometry::Segment;
using geometry::Vec;
using Line = std::vector<Point>;
using To = std::function<Point(Point)>;

void movePoints(Line& points, const To& to) {
  for (Point& p : points) p = to(p);
}

void moveRadiator(Line& line, const To& to) {
  const Line was = line;
  movePoints(line, to);
  if (line == was || line.size() != 2) return;
  const double length = geometry::distance(was[0], was[1]);
  const Vec along = directionOf({line[0], line[1]});
  if (geometry::distance(line[0], was[0]) >= geometry::distance(line[1], was[1])) {
    line[1] = line[0] + length * along;
  } else {
    line[0] = line[1] - length * along;
  }
}

/// How far along the line now a place lies that was `along_m` along it before; the lines have as
/// many points.
double alongNow(const Line& before, const Line& now, double along_m) {
  double was_m = 0.0;
  double is_m = 0.0;
  for (std::size_t i = 1; i < before.size(); ++i) {
    const Segment was{before[i - 1], before[i]};
    const Segment is{now[i - 1], now[i]};
    if (along_m > was_m + length_m(was) && i + 1 < before.size()) {
      was_m += length_m(was);
      is_m += length_m(is);
      continue;
    }
    const Point place = was.a + (along_m - was_m) * directionOf(was);
    return is_m + geometry::dot(place - is.a, directionOf(is));
  }
  return along_m;
}

/// What is to be added to a distance along a line, of something from there to there.
double shiftOn(const Line& before, const Line& now, double from_m, double to_m) {
  const double middle = 0.5 * (from_m + to_m);
  return alongNow(before, now, middle) - middle;
}

}  // namespace

void moveInside(Job& job, const To& to) {
  Plan& plan = job.plan;
  for (Room& r : plan.rooms) movePoints(r.outline_m, to);
  for (FloorZone& z : plan.floor_zones) movePoints(z.outline_m, to);
  for (HeatingPipe& p : plan.heating_pipes) movePoints(p.line_m, to);
  for (Radiator& r : plan.radiators) moveRadiator(r.line_m, to);
  for (InnerWall& wall : plan.inner_walls) {
    const Line was = wall.line_m;
    movePoints(wall.line_m, to);
    if (wall.line_m == was) continue;
    for (InnerDoor& door : plan.inner_doors) {
      if (door.wall != wall.id) continue;
      door.offset_m += shiftOn(was, wall.line_m, door.offset_m, door.offset_m + door.width_m);
    }
  }
  for (RisingWall& wall : plan.rising_walls) {
    const Line was = wall.line_m;
    movePoints(wall.line_m, to);
    if (wall.line_m == was) continue;
    for (Gap& gap : wall.gaps) {
      const double by = shiftOn(was, wall.line_m, gap.from_m, gap.to_m);
      gap.from_m += by;
      gap.to_m += by;
    }
  }
}

}  // namespace sumpwright::plan
