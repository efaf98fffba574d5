#include "canvas/PlanPicker.h"

#include <algorithm>
#include <limits>

#include "geometry/Distance.h"
#include "geometry/Shapes.h"

namespace sumpwright::canvas {

namespace {

using geometry::Point;

bool isPart(rules::ThingKind kind) {  // of an opening or the outline, not a thing to choose
  return kind == rules::ThingKind::jamb || kind == rules::ThingKind::door_width ||
         kind == rules::ThingKind::corner;
}

double distanceTo(const rules::Thing& thing, Point at) {
  double least = std::numeric_limits<double>::infinity();
  for (const geometry::Polyline& shape : thing.shapes) {
    least = std::min(
        least, thing.area ? geometry::distanceToArea(at, shape) : geometry::distance(at, shape));
  }
  return least;
}

/// Openings stand on the outside face; the wall behind it belongs to them.
bool inOpening(const siting::Study& study, const plan::Opening& opening, Point at) {
  const auto& p = study.perimeter();
  const auto& edge = p.edges(opening.at.ring)[static_cast<std::size_t>(opening.at.edge)];
  const geometry::Vec from = at - edge.from;
  const double along = geometry::dot(from, edge.along);
  const double depth = geometry::dot(from, edge.inward);
  return along >= opening.at.offset_m && along <= opening.at.offset_m + opening.width_m &&
         depth >= 0.0 && depth <= edge.thickness_m;
}

Point middle(const geometry::Polyline& shape) {
  if (shape.size() == 2) return geometry::lerp(shape[0], shape[1], 0.5);
  return shape.size() < 3 ? shape.front() : geometry::labelPoint(shape);
}

}  // namespace

std::string thingAt(const siting::Study& study, Point at, double reach_m) {
  for (const plan::Opening& opening : study.job().plan.openings) {
    if (opening.storey == 0 && inOpening(study, opening, at)) return opening.id;
  }
  std::string nearest;
  double least = reach_m;
  for (const rules::Thing& thing : study.site().things) {
    if (isPart(thing.kind)) continue;
    const double distance = distanceTo(thing, at);
    if (distance > least) continue;
    least = distance;
    nearest = thing.id;
  }
  if (!nearest.empty()) return nearest;
  for (const plan::Room& room : study.job().plan.rooms) {
    if (geometry::contains(room.outline_m, at)) return room.id;
  }
  return {};
}

std::optional<Point> spotOf(const siting::Study& study, const std::string& id) {
  for (const rules::Thing& thing : study.site().things) {
    if (thing.id == id && !thing.shapes.empty()) return middle(thing.shapes.front());
  }
  const plan::Plan& plan = study.job().plan;
  for (const plan::Room& room : plan.rooms) {
    if (room.id == id) return geometry::labelPoint(room.outline_m);
  }
  for (const plan::FloorZone& zone : plan.floor_zones) {
    if (zone.id == id) return geometry::labelPoint(zone.outline_m);
  }
  for (int ring = 0; ring < study.perimeter().ringCount(); ++ring) {
    for (const auto& edge : study.perimeter().edges(ring)) {
      if (study.perimeter().wall(edge).id == id) return geometry::lerp(edge.from, edge.to, 0.5);
    }
  }
  return std::nullopt;
}

}  // namespace sumpwright::canvas
