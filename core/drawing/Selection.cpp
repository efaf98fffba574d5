// A thing outlined in selection blue.

#include "drawing/PlanContext.h"
#include "drawing/Signs.h"

namespace sumpwright::drawing {
namespace {

bool outlineOpening(Sketch& sketch, const PlanContext& c, const std::string& id, const Pen& pen) {
  for (const plan::Opening& o : c.plan().openings) {
    if (o.id != id) continue;
    const PageEdge& e =
        c.rings[static_cast<std::size_t>(o.at.ring)].edges[static_cast<std::size_t>(o.at.edge)];
    const double from = c.mm(o.at.offset_m) - 0.4;
    const double to = c.mm(o.at.offset_m + o.width_m) + 0.4;
    sketch.outline({e.at(from, 0.5), e.at(to, 0.5), e.at(to, -e.thick_mm - 0.5),
                    e.at(from, -e.thick_mm - 0.5)},
                   pen);
    return true;
  }
  return false;
}

bool outlineFeature(Sketch& sketch, const PlanContext& c, const std::string& id, const Pen& pen) {
  for (const plan::WallFeature& f : c.plan().wall_features) {
    if (f.id != id) continue;
    const PageEdge& e =
        c.rings[static_cast<std::size_t>(f.at.ring)].edges[static_cast<std::size_t>(f.at.edge)];
    const double from = c.mm(f.at.offset_m) - 1.2;
    const double to = c.mm(f.at.offset_m + f.width_m) + 1.2;
    sketch.outline({e.at(from, 0.5), e.at(to, 0.5), e.at(to, -e.thick_mm - 0.5),
                    e.at(from, -e.thick_mm - 0.5)},
                   pen);
    return true;
  }
  return false;
}

bool outlineService(Sketch& sketch, const PlanContext& c, const std::string& id, const Pen& pen) {
  for (const ServiceTag& tag : serviceTags(c)) {
    if (tag.service->id != id) continue;
    sketch.circle(tag.centre, kPlateHalf_mm + 1.2, pen);
    if (tag.service->run == plan::RunKnown::drawn) sketch.path(c.at(tag.service->run_m), pen);
    return true;
  }
  return false;
}

bool outlineThing(Sketch& sketch, const PlanContext& c, const std::string& id, const Pen& pen) {
  bool found = false;
  for (const rules::Thing& t : c.study.site().things) {
    if (t.id != id) continue;
    for (const auto& shape : t.shapes) {
      if (shape.size() == 1) {
        sketch.circle(c.at(shape.front()), 3.2, pen);
      } else if (t.area) {
        sketch.outline(c.at(shape), pen);
      } else {
        sketch.path(c.at(shape), pen);
      }
      found = true;
    }
  }
  return found;
}

}  // namespace

void paintOutline(Sketch& sketch, const PlanContext& c, const std::string& id) {
  const Pen pen = solid(c.theme.selection, 2.4);
  if (outlineOpening(sketch, c, id, pen) || outlineFeature(sketch, c, id, pen) ||
      outlineService(sketch, c, id, pen) || outlineThing(sketch, c, id, pen)) {
    return;
  }
  for (const plan::InnerWall& wall : c.plan().inner_walls) {
    if (wall.id == id) sketch.path(c.at(wall.line_m), pen);
  }
  for (const plan::RisingWall& wall : c.plan().rising_walls) {
    if (wall.id == id) sketch.path(c.at(wall.line_m), pen);
  }
  for (const plan::Room& room : c.plan().rooms) {
    if (room.id == id) sketch.outline(c.at(room.outline_m), pen);
  }
  for (const plan::FloorZone& zone : c.plan().floor_zones) {
    if (zone.id == id) sketch.outline(c.at(zone.outline_m), pen);
  }
  for (const PageRing& ring : c.rings) {
    for (const PageEdge& e : ring.edges) {
      if (c.study.perimeter().wall(*e.edge).id != id) continue;
      sketch.outline({e.from, e.to, e.at(e.length_mm, -e.thick_mm), e.at(0.0, -e.thick_mm)}, pen);
    }
  }
}

}  // namespace sumpwright::drawing
