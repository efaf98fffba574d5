// The place on the tape: a line through all lanes, the grip on top, its chainage on the axis.

#include <algorithm>

#include "drawing/Clip.h"
#include "drawing/Signs.h"
#include "drawing/TapeParts.h"
#include "plan/SumpList.h"

namespace sumpwright::drawing {
namespace {

constexpr double kGrip_mm = 4.0;       // 32 px across
constexpr double kOtherTape_mm = 2.6;  // of a sump that is not the one being sited
constexpr double kTapeBadge_mm = 1.9;

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

void numberIn(Sketch& sketch, const Voice& voice, Point centre, int number, const Colour& ink) {
  const Font font{type::second.size_pt, true, false};
  const std::string words =
      voice.say(base::Message("drawing.sump-number", {base::count("number", number)}));
  sketch.text({centre.x, centre.y + voice.capHeight_mm(font) / 2.0}, words, font, ink,
              HAlign::centre);
}

}  // namespace

DrawList tapeOthers(const siting::Study& study, const TapeView& view, const Voice& voice,
                    const std::string& marked) {
  DrawList list{view.width_mm, view.height_mm, {}};
  Sketch sketch(list);
  const TapeContext c(study, view, voice);
  for (const plan::Sump& sump : study.job().design.sumps) {
    const perimeter::Place place{sump.ring, sump.chainage_m};
    const bool stands = sump.kind == plan::SumpKind::cored && study.perimeter().contains(place);
    if (!stands || sump.id == marked) continue;
    const double x = c.at.x(place);
    const Point grip{x, kOtherTape_mm + 1.9};
    sketch.tagged(sump.id);
    sketch.line({x, grip.y}, {x, c.at.axisTop() + 0.6}, solid(c.theme.panel, 3.4));
    sketch.line({x, grip.y}, {x, c.at.axisTop() + 0.6}, dashed(c.theme.ink2, 1.6, {5.0, 3.0}));
    sketch.ring(grip, kOtherTape_mm, solid(c.theme.ink2, 1.6), c.theme.paper);
    const int number = plan::neededNumber(study.job(), sump.id);
    if (number > 0) numberIn(sketch, voice, grip, number, c.theme.ink);
  }
  return clipped(list, {0.0, 0.0, view.width_mm, view.height_mm}, voice);
}

DrawList tapeMarker(const siting::Study& study, const siting::Assessment& assessment,
                    const TapeView& view, const Voice& voice, int number) {
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
  if (number > 0) {
    const Point badge{grip.x + kGrip_mm + kTapeBadge_mm - 0.9, grip.y + 1.6};
    sketch.disc(badge, kTapeBadge_mm + 0.3, c.theme.panel);
    sketch.disc(badge, kTapeBadge_mm, c.theme.ink);
    numberIn(sketch, voice, badge, number, c.theme.paper);
  }
  chainagePlate(sketch, c, assessment, x);
  return clipped(list, {0.0, 0.0, view.width_mm, view.height_mm}, voice);
}

}  // namespace sumpwright::drawing
