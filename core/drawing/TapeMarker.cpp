// The place on the tape: a line through all lanes, the grip on top, its chainage on the axis.

#include <algorithm>

#include "drawing/Clip.h"
#include "drawing/Signs.h"
#include "drawing/TapeParts.h"

namespace sumpwright::drawing {
namespace {

constexpr double kGrip_mm = 4.0;  // 32 px across

void pointer(Sketch& sketch, const TapeContext& c, double x) {
  const double top = c.at.verdictTop();
  sketch.line({x, top - 0.4}, {x, top + c.at.verdictHeight() + 0.4}, solid(c.theme.ink, 2.6));
  sketch.fill({{x - 1.7, top - 2.9}, {x + 1.7, top - 2.9}, {x, top - 0.2}}, c.theme.ink);
}

void chainagePlate(Sketch& sketch, const TapeContext& c, const siting::Assessment& a, double x) {
  const std::string words = c.voice.say(
      base::Message("drawing.chainage-here", {base::metres("chainage", a.place.chainage_m)}));
  const Font font{type::body.size_pt, true, false};
  const double half = c.voice.width_mm(words, font) / 2.0 + 1.6;
  const double middle = std::clamp(x, c.view.label_mm + half - 4.0, c.view.width_mm - half - 0.2);
  const double top = c.at.axisTop() + 0.6;
  sketch.fill(roundedRectangle(middle - half, top, 2.0 * half, 4.4, 1.0), c.theme.ink);
  sketch.text({middle, top + 2.2 + c.voice.capHeight_mm(font) / 2.0}, words, font, c.theme.paper,
              HAlign::centre);
}

}  // namespace

DrawList tapeMarker(const siting::Study& study, const siting::Assessment& assessment,
                    const TapeView& view, const Voice& voice) {
  DrawList list{view.width_mm, view.height_mm, {}};
  Sketch sketch(list);
  const TapeContext c(study, view, voice);
  const double x = c.at.x(assessment.place);
  sketch.tagged("marker");
  if (!view.lanes) {
    pointer(sketch, c, x);
    return clipped(list, {0.0, 0.0, view.width_mm, view.height_mm}, voice);
  }
  const Point grip{x, kGrip_mm + 0.5};
  sketch.line({x, grip.y}, {x, c.at.axisTop() + 0.6}, solid(c.theme.panel, 4.6));
  sketch.line({x, grip.y}, {x, c.at.axisTop() + 0.6}, solid(c.theme.ink, 2.4));
  sketch.ring(grip, kGrip_mm - 0.5, solid(c.theme.ink, 2.4), c.theme.paper);
  stateSign(sketch, c.theme, assessment.state, grip, 3.8);
  chainagePlate(sketch, c, assessment, x);
  return clipped(list, {0.0, 0.0, view.width_mm, view.height_mm}, voice);
}

}  // namespace sumpwright::drawing
