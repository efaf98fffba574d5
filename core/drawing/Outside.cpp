// Outside things, test holes, and sumps inside the house.

#include <algorithm>

#include "drawing/Beyond.h"
#include "drawing/PlanContext.h"
#include "plan/OutsideShape.h"

namespace sumpwright::drawing {
namespace {

void gully(Sketch& sketch, const PlanContext& c, Point p) {
  const double half = 2.0;
  const auto box = rectangle(p.x - half, p.y - half, 2 * half, 2 * half);
  sketch.fill(box, c.theme.paper);
  sketch.outline(box, solid(c.theme.drain, 1.8));
  for (double x : {-0.7, 0.7}) {
    sketch.line({p.x + x, p.y - half}, {p.x + x, p.y + half}, solid(c.theme.drain, 1.4));
  }
}

/// The thing's own area, or a plate of the usual size about its point.
std::vector<Point> areaOf(const PlanContext& c, const plan::OutsideThing& t, double half_width,
                          double half_height) {
  if (plan::enclosesArea(t)) return c.at(t.points_m);
  const Point p = c.at(t.points_m.front());
  return rectangle(p.x - half_width, p.y - half_height, 2 * half_width, 2 * half_height);
}

void chamber(Sketch& sketch, const PlanContext& c, const plan::OutsideThing& t) {
  const auto area = areaOf(c, t, 3.0, 2.25);
  sketch.fill(area, c.theme.paper);
  sketch.outline(area, solid(c.theme.drain, 1.8));
  const std::size_t half = area.size() / 2;
  sketch.line(area[0], area[half], solid(c.theme.drain, 1.2));
  sketch.line(area[1], area[(half + 1) % area.size()], solid(c.theme.drain, 1.2));
}

void tank(Sketch& sketch, const PlanContext& c, const plan::OutsideThing& t, Colour colour) {
  const auto area = areaOf(c, t, 3.5, 2.0);
  sketch.fill(area, c.theme.paper);
  sketch.outline(area, solid(colour, 1.8));
  const Box box = boxOf(area);
  const double inset = 0.2 * std::min(box.width(), box.height());
  sketch.outline(roundedRectangle(box.left + inset, box.top + inset, box.width() - 2 * inset,
                                  box.height() - 2 * inset, inset),
                 solid(colour, 1.0));
}

void airConditioner(Sketch& sketch, const PlanContext& c, const plan::OutsideThing& t) {
  const auto area = areaOf(c, t, 2.4, 1.6);
  sketch.fill(area, c.theme.paper);
  sketch.outline(area, solid(c.theme.ink3, 1.4));
  const Box box = boxOf(area);
  sketch.circle(box.centre(), 0.35 * std::min(box.width(), box.height()), solid(c.theme.ink3, 1.0));
  sketch.disc(box.centre(), 0.3, c.theme.ink3);
}

void deck(Sketch& sketch, const PlanContext& c, const plan::OutsideThing& t) {
  const auto area = c.at(t.points_m);
  if (area.size() < 3) return sketch.path(area, solid(c.theme.outside, 1.4));
  sketch.outline(area, solid(c.theme.outside, 1.4));
  const Box box = boxOf(area);
  for (double y = box.top + 1.5; y < box.bottom - 0.5; y += 1.5) {
    // Boards: cut to the area only where it is a box, which a deck nearly always is.
    if (area.size() == 4) sketch.line({box.left, y}, {box.right, y}, solid(c.theme.outside, 0.5));
  }
}

/// A table between two seats.
void sittingPlace(Sketch& sketch, const PlanContext& c, const plan::OutsideThing& t) {
  const auto area = areaOf(c, t, 3.0, 2.6);
  sketch.outline(area, dashed(c.theme.outside, 1.2, {3.0, 2.0}));
  const Point middle = boxOf(area).centre();
  sketch.circle(middle, 1.0, solid(c.theme.outside, 1.2));
  for (double aside : {-2.0, 1.2}) {
    sketch.outline(rectangle(middle.x + aside, middle.y - 0.8, 0.8, 1.6),
                   solid(c.theme.outside, 1.0));
  }
}

/// Treads. Cut to the area only where it is a box, which steps nearly always are.
void steps(Sketch& sketch, const PlanContext& c, const plan::OutsideThing& t) {
  const auto area = areaOf(c, t, 2.4, 2.0);
  sketch.outline(area, solid(c.theme.outside, 1.4));
  const Box box = boxOf(area);
  constexpr double kTread_mm = 1.3;
  for (double y = box.top + kTread_mm; y < box.bottom - 0.5; y += kTread_mm) {
    if (area.size() == 4) sketch.line({box.left, y}, {box.right, y}, solid(c.theme.outside, 0.8));
  }
}

/// A roof overhead: dashed, with its diagonals.
void carport(Sketch& sketch, const PlanContext& c, const plan::OutsideThing& t) {
  const auto area = areaOf(c, t, 5.0, 4.0);
  const Pen overhead = dashed(c.theme.outside, 1.2, {6.0, 3.0});
  sketch.outline(area, overhead);
  if (area.size() != 4) return;
  sketch.line(area[0], area[2], overhead);
  sketch.line(area[1], area[3], overhead);
}

/// A path's edge with slant joints on its left.
void path(Sketch& sketch, const PlanContext& c, const plan::OutsideThing& t) {
  const auto line = c.at(t.points_m);
  sketch.path(line, solid(c.theme.outside, 1.4));
  breakMarks(sketch, c, line, c.theme.outside);
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const Vec along = unit(line[i + 1] - line[i]);
    const Vec joint = 2.0 * geometry::left(along) + 0.6 * along;
    const double length = geometry::distance(line[i], line[i + 1]);
    for (double at = 3.5; at < length; at += 7.0) {
      const Point p = line[i] + at * along;
      sketch.line(p, p + joint, solid(c.theme.outside, 0.9));
    }
  }
}

void neighbourOpening(Sketch& sketch, const PlanContext& c, const plan::OutsideThing& t) {
  const auto line = c.at(t.points_m);
  if (line.size() == 1) return sketch.circle(line.front(), 1.2, solid(c.theme.ink, 1.3));
  const Vec across = 0.5 * geometry::left(unit(line.back() - line.front()));
  sketch.line(line.front() + across, line.back() + across, solid(c.theme.ink, 1.0));
  sketch.line(line.front() - across, line.back() - across, solid(c.theme.ink, 1.0));
  for (Point p : {line.front(), line.back()}) {
    sketch.line(p + 2.0 * across, p - 2.0 * across, solid(c.theme.ink, 1.3));
  }
}

void thing(Sketch& sketch, PlanContext& c, const plan::OutsideThing& t) {
  if (t.points_m.empty()) return;
  switch (t.kind) {
    case plan::OutsideKind::path:
      path(sketch, c, t);
      break;
    case plan::OutsideKind::boundary:
      sketch.path(c.at(t.points_m), dashed(c.theme.outside, 1.8, {16.0, 4.0, 2.5, 4.0}));
      breakMarks(sketch, c, c.at(t.points_m), c.theme.outside);
      break;
    case plan::OutsideKind::gully:
      gully(sketch, c, c.at(t.points_m.front()));
      break;
    case plan::OutsideKind::inspection_chamber:
      chamber(sketch, c, t);
      break;
    case plan::OutsideKind::tank:
      tank(sketch, c, t, c.theme.oil);
      break;
    case plan::OutsideKind::air_conditioner:
      airConditioner(sketch, c, t);
      break;
    case plan::OutsideKind::deck:
      deck(sketch, c, t);
      break;
    case plan::OutsideKind::neighbour_opening:
      neighbourOpening(sketch, c, t);
      break;
    case plan::OutsideKind::septic_tank:
      tank(sketch, c, t, c.theme.drain);
      break;
    case plan::OutsideKind::soakaway:
      sketch.outline(areaOf(c, t, 3.0, 3.0), dashed(c.theme.drain, 1.8, {4.0, 3.0}));
      break;
    case plan::OutsideKind::sitting_place:
      sittingPlace(sketch, c, t);
      break;
    case plan::OutsideKind::steps:
      steps(sketch, c, t);
      break;
    case plan::OutsideKind::carport:
      carport(sketch, c, t);
      break;
    case plan::OutsideKind::overhead_line:
      sketch.path(c.at(t.points_m), dashed(c.theme.electricity, 1.4, {9.0, 3.0}));
      breakMarks(sketch, c, c.at(t.points_m), c.theme.electricity);
      break;
  }
  const auto points = c.at(t.points_m);
  if (points.size() == 1) {
    c.occupied.take(around(points.front(), 3.0, 2.3));
  } else if (plan::enclosesArea(t)) {
    c.occupied.take(boxOf(points));
  } else if (t.kind == plan::OutsideKind::neighbour_opening) {
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
      c.occupied.takeLine(points[i], points[i + 1]);
    }
  }  // a path or boundary may pass behind a name
}

/// Its number stands at its upper right, as in the table of what was measured.
void testHole(Sketch& sketch, PlanContext& c, const plan::TestHole& hole, int number,
              const Voice& voice) {
  const Point p = c.at(hole.at_m);
  for (const Vec& v : {Vec{1, 0}, Vec{-1, 0}, Vec{0, 1}, Vec{0, -1}}) {
    sketch.line(p + 1.25 * v, p + 2.5 * v, solid(c.theme.ink, 1.6));
  }
  sketch.ring(p, 1.25, solid(c.theme.ink, 1.6), c.theme.paper);  // open: nothing measured yet
  c.occupied.take(around(p, 2.7, 2.7));
  const std::string words =
      voice.say(base::Message("drawing.field.hole", {base::count("number", number)}));
  const double wide = voice.width_mm(words, type::strong);
  const double cap = voice.capHeight_mm(type::strong);
  const Box box{p.x + 1.3, p.y - 1.6 - cap, p.x + 1.3 + wide, p.y - 1.6};
  const Box plate = grown(box, 0.4);
  sketch.fill(roundedRectangle(plate.left, plate.top, plate.width(), plate.height(), 0.5),
              c.theme.paper);
  sketch.text({box.left, box.bottom}, words, type::strong, c.theme.ink);
  c.occupied.take(plate);
}

void sixSided(Sketch& sketch, const PlanContext& c, Point p) {
  std::vector<Point> cap = arcPoints(p, 2.5, 0.0, 0.0);
  cap.clear();
  for (int i = 0; i < 6; ++i) cap.push_back(arcPoints(p, 2.5, 60.0 * i, 0.0).front());
  sketch.ring(p, 5.0, dashed(c.theme.ink, 1.8, {4.0, 2.6}), c.theme.room_dwelling);
  sketch.fill(cap, c.theme.ink);
}

}  // namespace

void paintOutside(Sketch& sketch, PlanContext& c) {
  // On a screen the view moves; a paper shows a thing whole or names it as left out.
  const auto left_out =
      c.onPaper() ? beyond(c.study, c.view) : std::vector<const plan::OutsideThing*>{};
  for (const plan::OutsideThing& t : c.plan().outside) {
    if (std::find(left_out.begin(), left_out.end(), &t) != left_out.end()) continue;
    thing(sketch.tagged(t.id), c, t);
  }
}

void paintTestHoles(Sketch& sketch, PlanContext& c, const Voice& voice) {
  int number = 0;
  for (const plan::TestHole& hole : c.plan().test_holes) {
    testHole(sketch.tagged(hole.id), c, hole, ++number, voice);
  }
}

void paintSumpsInside(Sketch& sketch, PlanContext& c) {
  std::vector<std::pair<std::string, Point>> sumps;
  const auto& standby = c.study.job().house.standby;
  if (standby.at_m) sumps.emplace_back("standby", *standby.at_m);
  for (const plan::Sump& sump : c.study.job().design.sumps) {
    if (sump.kind != plan::SumpKind::cored && sump.at_m) sumps.emplace_back(sump.id, *sump.at_m);
  }
  for (const auto& [id, at] : sumps) {
    const Point p = c.at(at);
    sixSided(sketch.tagged(id), c, p);
    c.occupied.take(around(p, 5.3, 5.3));
  }
}

}  // namespace sumpwright::drawing
