// Floors: room colours, the broken lines of wet rooms, floors that are no ground slab.

#include <cmath>

#include "drawing/Clip.h"
#include "drawing/Hatch.h"
#include "drawing/PlanContext.h"
#include "geometry/Shapes.h"

namespace sumpwright::drawing {
namespace {

bool isWet(plan::RoomUse use) {
  return use == plan::RoomUse::bathroom || use == plan::RoomUse::shower || use == plan::RoomUse::wc;
}

void wetLines(Sketch& sketch, const PlanContext& c, const std::vector<Point>& room) {
  for (const auto& line : hatch({clipped(room, c.page)}, {0.0, 1.75})) {
    Pen pen = dashed(c.theme.wet_lines, 1.0, {9.0, 5.0});
    // Every other row half a dash on, and all of them in step with the page.
    const double pattern = 14.0 * kPx;
    const bool odd = std::fmod(std::abs(std::round(line.a.y / 1.75)), 2.0) == 1.0;
    pen.dash_offset_mm =
        std::fmod(std::fmod(line.a.x + (odd ? pattern / 2 : 0.0), pattern) + pattern, pattern);
    sketch.line(line.a, line.b, pen);
  }
}

/// Suspended floors carry their own fine lines: paired for concrete beams, broken for joists.
void floorMarks(Sketch& sketch, const PlanContext& c, const plan::FloorZone& zone) {
  const std::vector<Point> area = clipped(c.at(zone.outline_m), c.page);
  if (zone.kind == plan::FloorKind::suspended_timber) {
    for (const auto& line : hatch({area}, {90.0, 2.9})) {
      sketch.line(line.a, line.b, dashed(c.theme.hairline, 1.1, {9.0, 3.0}));
    }
  }
  if (zone.kind == plan::FloorKind::suspended_concrete) {
    for (const auto& line : hatch({area}, {0.0, 4.4})) {
      sketch.line(line.a, line.b, solid(c.theme.hairline, 1.1));
      const Vec pair{0.0, 1.0};
      sketch.line(line.a + pair, line.b + pair, solid(c.theme.hairline, 1.1));
    }
  }
}

}  // namespace

bool PlanContext::inHouse(Point point) const {
  for (const PageRing& ring : rings) {
    if (geometry::contains(ring.outside(), point) != (ring.ring == 0)) return false;
  }
  return true;
}

void paintFloor(Sketch& sketch, PlanContext& c) {
  sketch.tagged("floor");
  std::vector<std::vector<Point>> faces;
  for (const PageRing& ring : c.rings) faces.push_back(ring.outside());
  sketch.fill(faces, c.theme.room_hall);
  for (const plan::Room& room : c.plan().rooms) {
    sketch.tagged(room.id);
    const std::vector<Point> outline = c.at(room.outline_m);
    sketch.fill(outline, c.theme.room(room.use));
    if (isWet(room.use) && c.view.mm_per_m >= kAreaScale) wetLines(sketch, c, outline);
  }
  for (const plan::FloorZone& zone : c.plan().floor_zones) {
    sketch.tagged(zone.id);
    floorMarks(sketch, c, zone);
  }
}

}  // namespace sumpwright::drawing
