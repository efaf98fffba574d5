// Ground outside and under the house, and the footing.

#include <algorithm>
#include <cmath>

#include "build/Figures.h"
#include "drawing/Hatch.h"
#include "drawing/SectionParts.h"

namespace sumpwright::drawing {

namespace {

constexpr double kVoidUnder_m = 0.35;  // drawn under a suspended floor: joists and the space below

/// Where the ground under the floor begins.
double groundInside_m(const SectionContext& c) {
  return c.suspended() && !c.oversite() ? c.up.floor_m - kVoidUnder_m : c.up.fillBottom_m();
}

/// Short slanted strokes under the line of the ground.
void tufts(Sketch& sketch, const SectionContext& c, double from_m, double to_m, double level_m) {
  const Pen pen = solid(c.theme.soil_lines, 1.0);
  const double y = c.y(level_m) + 0.5;
  for (double x = c.x(from_m) + 1.2; x < c.x(to_m) - 1.8; x += 5.5) {
    for (const double step : {0.0, 1.1}) {
      sketch.line({x + step, y + 1.5}, {x + step + 1.0, y}, pen);
    }
  }
}

/// The trench outside in which the crew stands its drill.
void dig(Sketch& sketch, const SectionContext& c) {
  if (c.section.dig_m <= 0.0) return;
  const double low = c.up.ground_m - c.section.dig_m;
  const double out = -0.45;
  sketch.tagged("dig").path({c.at(out, c.up.ground_m), c.at(out, low), c.at(0.0, low)},
                            dashed(c.theme.ink2, 1.1, {4.0, 3.0}));
}

}  // namespace

void paintEarth(Sketch& sketch, const SectionContext& c) {
  const double left = c.leftEnd_m();
  const double right = c.rightEnd_m();
  const double bottom = c.bottom_m();
  sketch.tagged("soil");
  sketch.fill(c.block(left, 0.0, c.up.ground_m, bottom), c.theme.soil);
  sketch.fill(c.block(0.0, right, std::max(groundInside_m(c), bottom), bottom), c.theme.soil);
  tufts(sketch, c, left, 0.0, c.up.ground_m);
  if (c.suspended() && !c.oversite()) tufts(sketch, c, c.up.wall_m, right, groundInside_m(c));
  sketch.tagged("ground").line(c.at(left, c.up.ground_m), c.at(0.0, c.up.ground_m),
                               solid(c.theme.ink, 1.8));
  dig(sketch, c);
}

void paintFooting(Sketch& sketch, const SectionContext& c) {
  const double from = -build::kFootingOut_m;
  const double to = c.up.wall_m + build::kFootingOut_m;
  const double low = c.up.footing_low_m;
  const auto block = c.block(from, to, low, low - build::kFootingThick_m);
  sketch.tagged("footing").fill(block, c.theme.concrete);
  concrete(sketch, boxOf(block), c.theme.ink2);
  sketch.outline(block, solid(c.theme.ink, 1.2));
}

}  // namespace sumpwright::drawing
