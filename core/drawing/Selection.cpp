// A thing outlined in selection blue.

#include "drawing/OutlineThings.h"
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
  // What no rule asks about (sockets, paths, rooms, walls) is marked as on any plan.
  paintOutlineSelected(sketch, c, c.study.job(), id);
}

}  // namespace sumpwright::drawing
