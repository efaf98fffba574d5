// What is fixed inside: radiators, heating pipes, sockets, consumer unit, fittings.

#include <algorithm>
#include <optional>

#include "drawing/PlanContext.h"
#include "geometry/Shapes.h"

namespace sumpwright::drawing {
namespace {

/// A radiator's segment on the inner face, and the direction into the room.
struct Panel {
  Point from;
  Point to;
  Vec in;
};

bool inRoom(const PlanContext& c, Point plan_m) {
  const auto& rooms = c.plan().rooms;
  return std::any_of(rooms.begin(), rooms.end(), [&](const plan::Room& room) {
    return geometry::contains(room.outline_m, plan_m);
  });
}

std::optional<Panel> panelOf(const PlanContext& c, const plan::Radiator& r) {
  if (r.on) {
    const auto& edges = c.rings[static_cast<std::size_t>(r.on->ring)].edges;
    const PageEdge& e = edges[static_cast<std::size_t>(r.on->edge)];
    const double from = c.mm(r.on->offset_m);
    return Panel{e.at(from, -e.thick_mm), e.at(from + c.mm(r.width_m), -e.thick_mm), -e.out};
  }
  if (r.line_m.size() < 2) return std::nullopt;
  const Point from = c.at(r.line_m.front());
  const Point to = c.at(r.line_m.back());
  // Into the room it stands in: the side that lies in one, whichever way the line was drawn.
  const Vec left = geometry::left(unit(to - from));
  const Point middle = geometry::lerp(r.line_m.front(), r.line_m.back(), 0.5);
  const bool room_right = inRoom(c, middle - 0.15 * Vec{left.x, -left.y});
  const bool room_left = inRoom(c, middle + 0.15 * Vec{left.x, -left.y});
  return Panel{from, to, room_right && !room_left ? -left : left};
}

void radiator(Sketch& sketch, PlanContext& c, const plan::Radiator& r) {
  const auto panel = panelOf(c, r);
  if (!panel) return;
  const double gap = 2.0 * kPx;
  const double deep = 7.0 * kPx;
  const Point a = panel->from + gap * panel->in;
  const Point b = panel->to + gap * panel->in;
  const Vec in = deep * panel->in;
  sketch.fill({a, b, b + in, a + in}, c.theme.room_dwelling);
  const double length = geometry::distance(a, b);
  const int fins = std::max(1, static_cast<int>(length / (5.1 * kPx)));
  for (int i = 1; i < fins; ++i) {
    const Point p = geometry::lerp(a, b, static_cast<double>(i) / fins);
    sketch.line(p, p + in, solid(c.theme.heating, 0.9));
  }
  sketch.outline({a, b, b + in, a + in}, solid(c.theme.heating, 1.3));
  c.occupied.take(boxOf({a, b + in, b, a + in}));
}

void pipe(Sketch& sketch, const PlanContext& c, const plan::HeatingPipe& p) {
  const auto line = c.at(p.line_m);
  sketch.path(line, solid(c.theme.pipe_pair, 4.0));
  sketch.path(line, solid(c.theme.room_dwelling, 2.2));
}

/// Along the outside wall it hangs on, else level; three slots.
void consumerUnit(Sketch& sketch, PlanContext& c, const plan::Supply& s) {
  constexpr double kReach_m = 0.3;  // farther from the inner face it hangs on an inner wall
  const perimeter::Edge& wall = c.study.perimeter().edgeAt(c.study.perimeter().nearest(s.at_m));
  const double depth = geometry::dot(s.at_m - wall.from, wall.inward) - wall.thickness_m;
  const bool on_wall = depth > -wall.thickness_m && depth < kReach_m;
  const Vec along = on_wall ? Vec{wall.along.x, -wall.along.y} : Vec{1.0, 0.0};
  const Vec in = on_wall ? Vec{wall.inward.x, -wall.inward.y} : Vec{0.0, 1.0};
  Point p = c.at(s.at_m);
  if (on_wall) p = p + (1.5 - c.mm(depth)) * in;
  const auto at = [&](double x, double y) { return p + x * along + y * in; };
  const std::vector<Point> box{at(-3.5, -1.5), at(3.5, -1.5), at(3.5, 1.5), at(-3.5, 1.5)};
  sketch.fill(box, c.theme.electricity);
  for (double x : {-1.75, 0.0, 1.75}) {
    sketch.line(at(x, -0.75), at(x, 0.75), solid(c.theme.paper, 2.0));
  }
  c.occupied.take(boxOf(box));
}

void supply(Sketch& sketch, PlanContext& c, const plan::Supply& s) {
  const Point p = c.at(s.at_m);
  if (s.kind == plan::SupplyKind::consumer_unit) return consumerUnit(sketch, c, s);
  const auto plate = rectangle(p.x - 0.75, p.y - 0.75, 1.5, 1.5);
  sketch.fill(plate, c.theme.paper);
  sketch.outline(plate, solid(c.theme.electricity, 1.6));
  if (s.kind == plan::SupplyKind::fused_spur) sketch.disc(p, 0.25, c.theme.electricity);
  c.occupied.take(around(p, 1.0, 1.0));
}

void fitting(Sketch& sketch, PlanContext& c, const plan::Fitting& f) {
  const Point p = c.at(f.at_m);
  const Pen pen = solid(c.theme.ink3, 1.1);
  double half_width = 1.6;
  double half_height = 1.6;
  switch (f.kind) {
    case plan::FittingKind::bath:
      half_width = 3.4;
      sketch.outline(rectangle(p.x - 3.4, p.y - 1.6, 6.8, 3.2), pen);
      sketch.outline(roundedRectangle(p.x - 2.9, p.y - 1.1, 5.8, 2.2, 0.9), pen);
      break;
    case plan::FittingKind::shower:
      sketch.outline(rectangle(p.x - 1.6, p.y - 1.6, 3.2, 3.2), pen);
      sketch.line({p.x - 1.6, p.y - 1.6}, {p.x + 1.6, p.y + 1.6}, pen);
      sketch.line({p.x - 1.6, p.y + 1.6}, {p.x + 1.6, p.y - 1.6}, pen);
      break;
    case plan::FittingKind::wc:
      half_width = 1.2;
      sketch.outline(rectangle(p.x - 1.2, p.y - 1.7, 2.4, 0.9), pen);
      sketch.circle({p.x, p.y + 0.4}, 1.1, pen);
      break;
    case plan::FittingKind::basin:
      sketch.circle(p, 1.2, pen);
      sketch.disc(p, 0.25, c.theme.ink3);
      break;
    case plan::FittingKind::sink:
      half_width = 2.4;
      half_height = 1.4;
      sketch.outline(rectangle(p.x - 2.4, p.y - 1.4, 4.8, 2.8), pen);
      sketch.outline(roundedRectangle(p.x - 1.9, p.y - 0.9, 2.3, 1.8, 0.4), pen);
      break;
    case plan::FittingKind::appliance:
      sketch.outline(rectangle(p.x - 1.6, p.y - 1.6, 3.2, 3.2), pen);
      sketch.circle(p, 0.9, pen);
      break;
  }
  c.occupied.take(around(p, half_width, half_height));
}

}  // namespace

void paintFixtures(Sketch& sketch, PlanContext& c) {
  if (c.fixtures()) {
    for (const auto& p : c.plan().heating_pipes) pipe(sketch.tagged(p.id), c, p);
    for (const auto& f : c.plan().fittings) fitting(sketch.tagged(f.id), c, f);
  }
  for (const auto& r : c.plan().radiators) radiator(sketch.tagged(r.id), c, r);
  if (c.fixtures()) {
    for (const auto& s : c.plan().supplies) supply(sketch.tagged(s.id), c, s);
  }
}

}  // namespace sumpwright::drawing
