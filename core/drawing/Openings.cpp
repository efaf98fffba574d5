// Windows, doors, vents and flue terminals in the gaps of the walls.

#include "drawing/PlanContext.h"

namespace sumpwright::drawing {
namespace {

/// An opening's own axes: x along the face from the first jamb, y into the house from the face.
struct Reveal {
  const PageEdge& edge;
  double from_mm;
  double width_mm;
  Point at(double along_mm, double in_mm) const { return edge.at(from_mm + along_mm, -in_mm); }
  double deep() const { return edge.thick_mm; }
};

Reveal revealOf(const PlanContext& c, const plan::Opening& o) {
  const PageRing& ring = c.rings[static_cast<std::size_t>(o.at.ring)];
  return {ring.edges[static_cast<std::size_t>(o.at.edge)], c.mm(o.at.offset_m), c.mm(o.width_m)};
}

void across(Sketch& sketch, const Reveal& r, double in_mm, const Pen& pen) {
  sketch.line(r.at(0, in_mm), r.at(r.width_mm, in_mm), pen);
}

void jambs(Sketch& sketch, const PlanContext& c, const Reveal& r) {
  for (double x : {0.0, r.width_mm}) {
    sketch.line(r.at(x, 0), r.at(x, r.deep()), solid(c.theme.ink, 1.3));
  }
}

void window(Sketch& sketch, const PlanContext& c, const plan::Opening& o, const Reveal& r) {
  across(sketch, r, 0.0, solid(c.theme.ink, 1.3));
  across(sketch, r, r.deep(), solid(c.theme.ink, 1.0));
  if (o.opens == plan::Opens::fixed) {
    across(sketch, r, 0.5 * r.deep(), solid(c.theme.ink, 1.0));  // one pane that stays shut
  } else {
    across(sketch, r, 0.38 * r.deep(), solid(c.theme.ink, 1.0));
    across(sketch, r, 0.58 * r.deep(), solid(c.theme.ink, 1.0));
  }
  jambs(sketch, c, r);
}

/// A leaf hung at x, `leaf` long, swinging towards the middle; double lines when glazed.
void leaf(Sketch& sketch, PlanContext& c, const Reveal& r, double x, double toward, double length,
          bool glazed) {
  const double root = 0.5 * r.deep();
  if (glazed) {
    for (double shift : {0.0, 0.6}) {
      sketch.line(r.at(x + toward * shift, root), r.at(x + toward * shift, root + length),
                  solid(c.theme.ink, 1.0));
    }
  } else {
    sketch.line(r.at(x, root), r.at(x, root + length), solid(c.theme.ink, 2.4));
  }
  if (!c.fixtures()) return;
  std::vector<Point> swing;
  for (int i = 0; i <= 12; ++i) {
    const double angle = i * 7.5 * 3.14159265358979323846 / 180.0;
    swing.push_back(r.at(x + toward * length * std::sin(angle), root + length * std::cos(angle)));
  }
  sketch.path(swing, solid(c.theme.ink, 0.9));
  c.swings.take(boxOf(swing));
}

void door(Sketch& sketch, PlanContext& c, const plan::Opening& o, const Reveal& r) {
  across(sketch, r, 0.0, solid(c.theme.ink, 1.0));
  const bool glazed = o.kind == plan::OpeningKind::glazed_door;
  const bool pair = o.width_m > 1.15;  // wider than one leaf is made (common practice)
  const double length = pair ? r.width_mm / 2.0 : r.width_mm;
  leaf(sketch, c, r, 0.0, 1.0, length, glazed);
  if (pair) leaf(sketch, c, r, r.width_mm, -1.0, length, glazed);
  jambs(sketch, c, r);
}

void garageDoor(Sketch& sketch, const PlanContext& c, const Reveal& r) {
  across(sketch, r, 0.0, solid(c.theme.ink, 1.0));
  across(sketch, r, 0.35 * r.deep(), solid(c.theme.ink, 2.0));
  across(sketch, r, r.deep() + 1.5, dashed(c.theme.ink, 0.9, {5.0, 3.0}));  // overhead when open
  jambs(sketch, c, r);
}

void vent(Sketch& sketch, const PlanContext& c, const plan::Opening& o, const Reveal& r) {
  across(sketch, r, 0.0, solid(c.theme.ink, 1.0));
  across(sketch, r, r.deep(), solid(c.theme.ink, 1.0));
  jambs(sketch, c, r);
  for (double share : {1.0 / 3.0, 2.0 / 3.0}) {
    const double x = share * r.width_mm;
    sketch.line(r.at(x, 0), r.at(x, r.deep()), solid(c.theme.ink, 1.0));
  }
  if (o.opens == plan::Opens::intake) {  // air is drawn in: an arrow head inside the face
    sketch.path(
        {r.at(r.width_mm * 0.5 - 0.7, r.deep() + 0.6), r.at(r.width_mm * 0.5, r.deep() + 1.6),
         r.at(r.width_mm * 0.5 + 0.7, r.deep() + 0.6)},
        solid(c.theme.ink, 1.0));
  }
}

void flue(Sketch& sketch, const PlanContext& c, const Reveal& r) {
  across(sketch, r, 0.0, solid(c.theme.ink, 1.0));
  across(sketch, r, r.deep(), solid(c.theme.ink, 1.0));
  jambs(sketch, c, r);
  const double x = r.width_mm / 2.0;
  sketch.line(r.at(x, r.deep()), r.at(x, -kBandFar_mm / 2.0), solid(c.theme.ink, 1.6));
  sketch.ring(r.at(x, -kBandFar_mm / 2.0), 3.0 * kPx, solid(c.theme.ink, 1.5), c.theme.paper);
}

/// An opening above: no gap in this storey's wall, only where it stands.
void above(Sketch& sketch, const PlanContext& c, const Reveal& r) {
  for (double share : {0.3, 0.7}) {
    across(sketch, r, share * r.deep(), dashed(c.theme.paper, 0.9, {4.0, 2.5}));
  }
}

/// Slots under the eaves, just outside the face.
void soffitVent(Sketch& sketch, const PlanContext& c, const Reveal& r) {
  for (double in : {-1.9, -0.7}) across(sketch, r, in, solid(c.theme.ink, 0.9));
  constexpr double kSlot_mm = 1.2;
  const int slots = std::max(1, static_cast<int>(r.width_mm / kSlot_mm));
  for (int i = 0; i <= slots; ++i) {
    const double x = r.width_mm * i / slots;
    sketch.line(r.at(x, -0.7), r.at(x, -1.9), solid(c.theme.ink, 0.9));
  }
}

/// In the slope above the room behind the wall: dashed, as it is overhead.
void roofWindow(Sketch& sketch, const PlanContext& c, const plan::Opening& o, const Reveal& r) {
  constexpr double kIn_mm = 1.0;
  constexpr double kDeep_mm = 3.0;
  const double near = r.deep() + kIn_mm;
  const double far = near + kDeep_mm;
  const Pen overhead = dashed(c.theme.ink, 0.9, {3.0, 2.0});
  sketch.outline({r.at(0, near), r.at(r.width_mm, near), r.at(r.width_mm, far), r.at(0, far)},
                 overhead);
  if (o.opens == plan::Opens::fixed) return;
  sketch.line(r.at(0, near), r.at(r.width_mm / 2.0, far), overhead);  // hung at the top
  sketch.line(r.at(r.width_mm, near), r.at(r.width_mm / 2.0, far), overhead);
}

/// Whether it was drawn: what is of the roof leaves no gap.
bool paintedOfRoof(Sketch& sketch, PlanContext& c, const plan::Opening& o, const Reveal& r) {
  if (!plan::isOfRoof(o.kind)) return false;
  if (o.kind == plan::OpeningKind::soffit_vent) {
    soffitVent(sketch, c, r);
    c.occupied.take(grown(boxOf({r.at(0, -1.9), r.at(r.width_mm, -0.7)}), 0.5));
  } else {
    roofWindow(sketch, c, o, r);
  }
  return true;
}

}  // namespace

void paintOpenings(Sketch& sketch, PlanContext& c) {
  for (const plan::Opening& o : c.plan().openings) {
    sketch.tagged(o.id);
    const Reveal r = revealOf(c, o);
    if (paintedOfRoof(sketch, c, o, r)) continue;
    if (o.storey != 0) {
      above(sketch, c, r);
      continue;
    }
    sketch.fill({r.at(0, 0), r.at(r.width_mm, 0), r.at(r.width_mm, r.deep()), r.at(0, r.deep())},
                c.theme.room_dwelling);
    switch (o.kind) {
      case plan::OpeningKind::window:
        window(sketch, c, o, r);
        break;
      case plan::OpeningKind::door:
      case plan::OpeningKind::glazed_door:
        door(sketch, c, o, r);
        break;
      case plan::OpeningKind::garage_door:
        garageDoor(sketch, c, r);
        break;
      case plan::OpeningKind::air_vent:
        vent(sketch, c, o, r);
        break;
      case plan::OpeningKind::flue_terminal:
        flue(sketch, c, r);
        break;
      case plan::OpeningKind::soffit_vent:
      case plan::OpeningKind::roof_window:
        break;  // drawn above
    }
    c.occupied.take(grown(boxOf({r.at(0, 0), r.at(r.width_mm, r.deep())}), 0.5));
  }
}

}  // namespace sumpwright::drawing
