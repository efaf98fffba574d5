#include "drawing/ClosingLens.h"

#include <algorithm>
#include <cmath>

#include "geometry/Shapes.h"

namespace sumpwright::drawing {

namespace {

// Of the look, as the millimetres below: own figures.
constexpr double kLeastGap_m = 0.0005;
constexpr double kLens_mm = 19.0;      // its radius
constexpr double kShownGap_mm = 12.0;  // as long as the gap is drawn in it
constexpr double kSeenAsIs_mm = 12.0;  // a gap this long on the page needs no lens

std::string millimetresOf(const Voice& voice, double metres) {
  return voice.say(
      base::Message("drawing.gap.part", {base::millimetres("length", 1000.0 * metres)}));
}

void words(Sketch& sketch, const SheetContext& c, Point at, const std::string& text, HAlign align) {
  sketch.text(at, text, type::second, c.theme.ink, align);
}

void lens(Sketch& sketch, const SheetContext& c, const plan::Ring& ring, Point centre, Vec gap,
          const std::string& letter, const Voice& voice) {
  const Point start = c.at(ring.corners.front());
  const double factor = kShownGap_mm / geometry::norm(gap);
  const Point end_in = centre + Vec{-0.5 * factor * gap.x, 0.5 * factor * gap.y};
  const Point start_in = centre + Vec{0.5 * factor * gap.x, -0.5 * factor * gap.y};
  // Two lines lead from the spot to the lens.
  const Vec to = unit(centre - start);
  for (double side : {1.0, -1.0}) {
    sketch.line(start + 2.0 * side * geometry::left(to),
                centre - 4.0 * to + 0.975 * kLens_mm * side * geometry::left(to),
                solid(c.theme.selection, 0.8));
  }
  sketch.ring(centre, kLens_mm, solid(c.theme.selection, 2.0), c.theme.paper);
  const Point knee{end_in.x, start_in.y};
  sketch.path({end_in, knee, start_in}, dashed(c.theme.ink2, 1.0, {2, 2}));
  sketch.line(end_in, start_in, solid(c.theme.selection, 3.0));
  sketch.disc(end_in, 1.2, c.theme.selection);
  sketch.ring(start_in, 1.3, solid(c.theme.selection, 2.0), c.theme.paper);
  const bool knee_up = knee.y < end_in.y;
  const bool start_right = start_in.x > end_in.x;
  words(sketch, c, {(knee.x + start_in.x) / 2.0, knee.y + (knee_up ? -1.2 : 3.6)},
        millimetresOf(voice, std::abs(gap.x)), HAlign::centre);
  words(sketch, c, {knee.x + (start_right ? -1.2 : 1.2), (knee.y + end_in.y) / 2.0 + 1.0},
        millimetresOf(voice, std::abs(gap.y)), start_right ? HAlign::right : HAlign::left);
  words(sketch, c, {start_in.x + (start_right ? 2.0 : -2.0), start_in.y + 1.0}, letter,
        start_right ? HAlign::left : HAlign::right);
  words(sketch, c, {centre.x, centre.y + kLens_mm - 4.0},
        voice.say(base::Message("drawing.gap.times",
                                {base::number("times", std::round(factor / c.view.mm_per_m))})),
        HAlign::centre);
}

}  // namespace

void closingGap(Sketch& sketch, const SheetContext& c, const plan::Ring& ring,
                const std::string& letter, const Voice& voice) {
  if (ring.corners.size() < 4) return;
  const Vec gap = ring.corners.front() - ring.corners.back();
  const double gap_m = geometry::norm(gap);
  if (gap_m < kLeastGap_m) return;
  const Point start = c.at(ring.corners.front());
  const Point end = c.at(ring.corners.back());
  if (c.mm(gap_m) > kSeenAsIs_mm) {
    sketch.line(end, start, dashed(c.theme.selection, 1.6, {2, 4}));
    return;
  }
  const Box box = boxOf(c.at(ring.corners));
  if (box.width() < 3.0 * kLens_mm || box.height() < 3.0 * kLens_mm) return;
  const Point centre = box.centre();
  // Towards the start, so that the area's figures in the middle stay free.
  const Point at = geometry::lerp(centre, start, 0.42);
  lens(sketch, c, ring, {at.x, std::clamp(at.y, box.top + kLens_mm, box.bottom - kLens_mm)}, gap,
       letter, voice);
}

}  // namespace sumpwright::drawing
