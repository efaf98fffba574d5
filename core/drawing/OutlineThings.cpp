#include "drawing/OutlineThings.h"

#include <algorithm>

#include "drawing/OutlineWalls.h"
#include "drawing/Signs.h"
#include "plan/Dimensions.h"
#include "plan/OutsideShape.h"
#include "plan/ThingEdits.h"
#include "plan/WallThickness.h"

namespace sumpwright::drawing {

namespace {

constexpr double kPlateOut_mm = 8.0;          // own figure
constexpr double kOutlineRadiator_mm = 1.75;  // own figure

const plan::Ring* ringAt(const plan::Plan& plan, const plan::OnWall& at) {
  if (at.ring < 0 || static_cast<std::size_t>(at.ring) >= plan.rings.size()) return nullptr;
  return &plan.rings[static_cast<std::size_t>(at.ring)];
}

void pathOrDot(Sketch& sketch, const std::vector<Point>& line, const Pen& pen) {
  if (line.size() == 1) return sketch.circle(line.front(), 2.0, pen);
  if (!line.empty()) sketch.path(line, pen);
}

void outsideThing(Sketch& sketch, const SheetContext& c, const plan::OutsideThing& t) {
  const Pen pen = solid(c.theme.outside, 1.6);
  if (plan::enclosesArea(t)) return sketch.outline(c.at(t.points_m), pen);
  pathOrDot(sketch, c.at(t.points_m), pen);
}

void serviceThing(Sketch& sketch, const SheetContext& c, const plan::Job& job,
                  const plan::Service& s) {
  const Colour colour = c.theme.service(s.kind);
  if (s.run == plan::RunKnown::drawn) {
    pathOrDot(sketch, c.at(s.run_m), dashed(colour, 1.5, {6.0, 3.5}));
  }
  const auto slot = s.entry ? outlineSlot(job, *s.entry, c) : std::nullopt;
  if (!slot) return;
  const Point plate = outlinePlate(*slot);
  sketch.line(slot->from, plate, solid(c.theme.paper, 6.0));
  sketch.line(slot->from, plate, solid(colour, 2.4));
  servicePlate(sketch, c.theme, s.kind, plate);
}

void radiatorThing(Sketch& sketch, const SheetContext& c, const plan::Job& job,
                   const plan::Radiator& r) {
  const Pen pen = solid(c.theme.heating, 1.3);
  if (!r.on) return pathOrDot(sketch, c.at(r.line_m), solid(c.theme.heating, 4.0));
  const auto slot = outlineSlot(job, *r.on, c);
  if (!slot) return;
  const double wide = c.mm(r.width_m);
  const double near = slot->thick_mm + 0.5;
  const double far = near + kOutlineRadiator_mm;
  sketch.outline({slot->at(0, near), slot->at(wide, near), slot->at(wide, far), slot->at(0, far)},
                 pen);
}

std::vector<Point> slotBox(const SheetContext& c, const WallSlot& slot, double width_m) {
  const double more = width_m > 0.0 ? 0.5 : 1.2;
  const double to = c.mm(width_m) + more;
  return {slot.at(-more, -0.5), slot.at(to, -0.5), slot.at(to, slot.thick_mm + 0.5),
          slot.at(-more, slot.thick_mm + 0.5)};
}

/// The mark of what was chosen; one for each way a thing stands in the plan.
template <class T>
void selectedThing(Sketch& sketch, const SheetContext& c, const plan::Job& job, const T& thing,
                   const Pen& pen) {
  const auto boxed = [&](const plan::OnWall& at, double width_m) {
    if (const auto slot = outlineSlot(job, at, c)) {
      sketch.outline(slotBox(c, *slot, width_m), pen);
    }
  };
  if constexpr (std::is_same_v<T, plan::Opening> || std::is_same_v<T, plan::WallFeature>) {
    boxed(thing.at, thing.width_m);
  } else if constexpr (std::is_same_v<T, plan::Service>) {
    if (!thing.run_m.empty()) pathOrDot(sketch, c.at(thing.run_m), pen);
    const auto slot = thing.entry ? outlineSlot(job, *thing.entry, c) : std::nullopt;
    if (slot) sketch.circle(outlinePlate(*slot), kPlateHalf_mm + 1.2, pen);
  } else if constexpr (std::is_same_v<T, plan::Radiator>) {
    if (thing.on) return boxed(*thing.on, thing.width_m);
    pathOrDot(sketch, c.at(thing.line_m), pen);
  } else if constexpr (requires { thing.outline_m; }) {
    sketch.outline(c.at(thing.outline_m), pen);
  } else if constexpr (requires { thing.line_m; }) {
    pathOrDot(sketch, c.at(thing.line_m), pen);
  } else if constexpr (requires { thing.points_m; }) {
    pathOrDot(sketch, c.at(thing.points_m), pen);
  } else if constexpr (requires { thing.at_m; }) {
    sketch.circle(c.at(thing.at_m), 3.2, pen);
  } else if constexpr (std::is_same_v<T, plan::InnerDoor>) {
    const auto from = plan::placeOf(job, {thing.id, plan::ThingEnd::start});
    const auto to = plan::placeOf(job, {thing.id, plan::ThingEnd::end});
    if (from && to) sketch.path(c.at({*from, *to}), pen);
  }
}

}  // namespace

std::optional<WallSlot> outlineSlot(const plan::Job& job, const plan::OnWall& at,
                                    const SheetContext& c) {
  const plan::Ring* ring = ringAt(job.plan, at);
  if (ring == nullptr || at.edge < 0) return std::nullopt;
  const auto walls = outlineWalls(job, *ring, at.ring == 0, c);
  const auto edge = static_cast<std::size_t>(at.edge);
  if (edge >= walls.size()) return std::nullopt;
  const OutlineWall& wall = walls[edge];
  const double thick = c.mm(plan::thicknessTaken_m(*ring, edge, job.house));
  return WallSlot{wall.from + c.mm(at.offset_m) * wall.along, wall.along, -wall.out, thick};
}

Point outlinePlate(const WallSlot& slot) { return slot.at(0.0, -kPlateOut_mm); }

void paintOutlineInside(Sketch& sketch, const SheetContext& c, const plan::Plan& plan) {
  for (const plan::Room& room : plan.rooms) {
    sketch.tagged(room.id).fill(c.at(room.outline_m), c.theme.room(room.use));
  }
  for (const plan::FloorZone& zone : plan.floor_zones) {
    sketch.tagged(zone.id).outline(c.at(zone.outline_m), dashed(c.theme.ink3, 0.8, {2.0, 3.0}));
  }
  for (const plan::RisingWall& wall : plan.rising_walls) {
    risingWall(sketch.tagged(wall.id), c, wall);
  }
  for (const plan::InnerWall& wall : plan.inner_walls) {
    Pen pen = solid(c.theme.inner_wall, 1.0);
    pen.width_mm = std::max(0.5, c.mm(wall.thickness_m));
    sketch.tagged(wall.id).path(c.at(wall.line_m), pen);
  }
  for (const plan::HeatingPipe& pipe : plan.heating_pipes) {
    pathOrDot(sketch.tagged(pipe.id), c.at(pipe.line_m), solid(c.theme.pipe_pair, 2.0));
  }
  for (const plan::Fitting& f : plan.fittings) {
    const Point p = c.at(f.at_m);
    sketch.tagged(f.id).outline(rectangle(p.x - 1.6, p.y - 1.6, 3.2, 3.2),
                                solid(c.theme.ink3, 1.1));
  }
}

void paintOutlineThings(Sketch& sketch, const SheetContext& c, const plan::Job& job) {
  for (const plan::WallFeature& f : job.plan.wall_features) {
    if (const auto slot = outlineSlot(job, f.at, c)) wallFeature(sketch.tagged(f.id), c, f, *slot);
  }
  for (const plan::Radiator& r : job.plan.radiators) radiatorThing(sketch.tagged(r.id), c, job, r);
  for (const plan::Supply& s : job.plan.supplies) {
    const Point p = c.at(s.at_m);
    sketch.tagged(s.id).fill(rectangle(p.x - 0.75, p.y - 0.75, 1.5, 1.5), c.theme.electricity);
  }
  for (const plan::OutsideThing& t : job.plan.outside) outsideThing(sketch.tagged(t.id), c, t);
  for (const plan::TestHole& hole : job.plan.test_holes) {
    sketch.tagged(hole.id).circle(c.at(hole.at_m), 1.25, solid(c.theme.ink, 1.6));
  }
  for (const plan::Service& s : job.plan.services) serviceThing(sketch.tagged(s.id), c, job, s);
}

void paintOutlineSelected(Sketch& sketch, const SheetContext& c, const plan::Job& job,
                          const std::string& id) {
  const Pen pen = solid(c.theme.selection, 2.4);
  if (const auto thing = plan::thingOf(job, id)) {
    return std::visit([&](const auto& t) { selectedThing(sketch, c, job, t, pen); }, *thing);
  }
  for (std::size_t r = 0; r < job.plan.rings.size(); ++r) {
    const plan::Ring& ring = job.plan.rings[r];
    const auto walls = outlineWalls(job, ring, r == 0, c);
    for (std::size_t i = 0; i < walls.size() && i < ring.walls.size(); ++i) {
      if (ring.walls[i].id != id) continue;
      sketch.outline({walls[i].from, walls[i].to, walls[i].inner_to, walls[i].inner_from}, pen);
    }
  }
}

}  // namespace sumpwright::drawing
