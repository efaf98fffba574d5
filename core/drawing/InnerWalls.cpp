// Inner walls with their doors.

#include <algorithm>

#include "drawing/BuiltIn.h"
#include "drawing/PlanContext.h"
#include "geometry/Polylines.h"

namespace sumpwright::drawing {
namespace {

std::vector<plan::InnerDoor> doorsOf(const PlanContext& c, const plan::InnerWall& wall) {
  std::vector<plan::InnerDoor> doors;
  for (const plan::InnerDoor& d : c.plan().inner_doors) {
    if (d.wall == wall.id) doors.push_back(d);
  }
  std::sort(doors.begin(), doors.end(), [](const plan::InnerDoor& a, const plan::InnerDoor& b) {
    return a.offset_m < b.offset_m;
  });
  return doors;
}

void swing(Sketch& sketch, PlanContext& c, const std::vector<Point>& gap) {
  const Point hinge = gap.front();
  const Vec along = gap.back() - hinge;
  const Vec leaf = geometry::left(along);
  std::vector<Point> arc;
  for (int i = 0; i <= 12; ++i) {
    const double angle = i * 7.5 * 3.14159265358979323846 / 180.0;
    arc.push_back(hinge + std::cos(angle) * along + std::sin(angle) * leaf);
  }
  sketch.path(arc, solid(c.theme.inner_wall, 0.9));
  sketch.line(hinge, hinge + leaf, solid(c.theme.inner_wall, 1.3));
  c.swings.take(boxOf({hinge, hinge + along, hinge + leaf}));
}

}  // namespace

void paintInnerWalls(Sketch& sketch, PlanContext& c) {
  for (const plan::InnerWall& wall : c.plan().inner_walls) {
    sketch.tagged(wall.id);
    Pen pen = solid(c.theme.inner_wall, std::max(1.2, c.mm(wall.thickness_m) / kPx));
    double at = 0.0;
    for (const plan::InnerDoor& door : doorsOf(c, wall)) {
      sketch.path(c.at(linePart(wall.line_m, at, door.offset_m)), pen);
      at = door.offset_m + door.width_m;
      const auto gap = c.at(linePart(wall.line_m, door.offset_m, at));
      if (gap.size() == 2 && c.fixtures()) swing(sketch, c, gap);
    }
    const auto rest = c.at(linePart(wall.line_m, at, geometry::lengthOf(wall.line_m)));
    sketch.path(rest, pen);
    const auto whole = c.at(wall.line_m);
    for (std::size_t i = 0; i + 1 < whole.size(); ++i) c.occupied.takeLine(whole[i], whole[i + 1]);
  }
}

}  // namespace sumpwright::drawing
