// What a section for the crew is dimensioned with: the leaves of the wall, the distances that the
// hole keeps, and what is what.

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "build/Figures.h"
#include "drawing/SectionParts.h"

namespace sumpwright::drawing {

namespace {

using base::Message;
using build::LimitKind;
using build::Margin;

/// A plate behind words, so that they read over hatches.
void plated(Sketch& sketch, const SectionContext& c, Point at, const std::string& words,
            const Font& font, const Colour& colour, HAlign align) {
  const double cap = c.voice.capHeight_mm(font);
  const Text text{{at.x, at.y + cap / 2.0}, words, font, colour, align, 0.0};
  const Box box = grown(boxOf(text, c.voice), 0.35);
  sketch.fill(roundedRectangle(box.left, box.top, box.width(), box.height(), 0.6), c.theme.paper);
  sketch.text(text.at, words, font, colour, align);
}

void tick(Sketch& sketch, const SectionContext& c, Point p) {
  sketch.line({p.x - 0.7, p.y + 0.7}, {p.x + 0.7, p.y - 0.7}, solid(c.theme.ink, 1.6));
}

std::string inTurn(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : " | ") + word;
  return out;
}

/// Leaves of the wall over the picture, and the wall altogether above them; those with too little
/// room for their figures have them together, one after the other.
void wallChain(Sketch& sketch, const SectionContext& c) {
  const Pen pen = solid(c.theme.ink2, 0.9);
  const auto chain = [&](double y, const std::vector<double>& ends) {
    sketch.line({c.x(ends.front()), y}, {c.x(ends.back()), y}, pen);
    for (const double end : ends) tick(sketch, c, {c.x(end), y});
    std::vector<std::string> words;
    bool fits = true;
    for (std::size_t i = 1; i < ends.size(); ++i) {
      words.push_back(marked(thick(c, "drawing.section.thickness", ends[i] - ends[i - 1]),
                             isAssumed(c, {"wall"})));
      const double room = (ends[i] - ends[i - 1]) * c.mm - 0.8;
      fits = fits && c.voice.width_mm(words.back(), type::small) <= room;
    }
    const auto say = [&](double at_m, const std::string& text) {
      sketch.text({c.x(at_m), y - 1.0}, text, type::small, c.theme.ink, HAlign::centre);
    };
    if (!fits) return say((ends.front() + ends.back()) / 2.0, inTurn(words));
    for (std::size_t i = 1; i < ends.size(); ++i) say((ends[i] + ends[i - 1]) / 2.0, words[i - 1]);
  };
  std::vector<double> ends{0.0};
  for (const build::Leaf& leaf : c.up.leaves) ends.push_back(leaf.to_m);
  if (ends.size() > 2) chain(c.picture.top - 1.8, ends);
  chain(c.picture.top - 6.6, {0.0, c.up.wall_m});
}

const Margin* marginOf(const SectionContext& c, LimitKind kind) {
  for (const Margin& margin : c.section.margins) {
    if (margin.kind == kind) return &margin;
  }
  return nullptr;
}

/// Across the end of a distance: two dots close together would read as a figure.
void endBar(Sketch& sketch, Point end, Point other, const Colour& colour) {
  constexpr double kHalf_mm = 0.9;
  const double length = std::hypot(other.x - end.x, other.y - end.y);
  const double ux = length > 0.0 ? (other.x - end.x) / length : 0.0;
  const double uy = length > 0.0 ? (other.y - end.y) / length : 1.0;
  sketch.line({end.x - kHalf_mm * uy, end.y + kHalf_mm * ux},
              {end.x + kHalf_mm * uy, end.y - kHalf_mm * ux}, solid(colour, 1.6));
}

/// The line square from the hole's edge to a corner of the build-up, and its length.
void distanceTo(Sketch& sketch, const SectionContext& c, LimitKind kind, double x_m, double level_m,
                double side) {
  const Margin* margin = marginOf(c, kind);
  if (margin == nullptr) return;
  const build::Bore& bore = *c.section.bore;
  const double w2 = 1.0 + bore.fall * bore.fall;
  // Foot of the square on the axis, then out to the hole's edge.
  const double gap = level_m - build::axisAt_m(bore, x_m);
  const double foot = x_m - gap * bore.fall / w2;
  const double r = 0.5 * c.up.core_m / std::sqrt(w2);
  const Point edge = c.at(foot + side * r * bore.fall, build::axisAt_m(bore, foot) + side * r);
  const Point thing = c.at(x_m, level_m);
  const Colour colour = margin->passes ? c.theme.ink : c.theme.refused.text;
  sketch.tagged("distance").line(edge, thing, solid(colour, 2.0));
  endBar(sketch, edge, thing, colour);
  endBar(sketch, thing, edge, colour);
  const std::string words =
      c.voice.say(Message(margin->passes ? "drawing.section.clear" : "drawing.section.short",
                          {base::millimetres("clear", 1000.0 * margin->clear),
                           base::millimetres("needed", 1000.0 * margin->needed)}));
  plated(sketch, c, {std::max(edge.x, thing.x) + 2.2, (edge.y + thing.y) / 2.0}, words,
         Font{type::small.size_pt, true, false}, colour, HAlign::left);
}

/// Words inside, a line from them to what they name; they start at `to`.
void callout(Sketch& sketch, const SectionContext& c, Point from, Point to,
             const std::string& words) {
  const double width = c.voice.width_mm(words, type::small) + 1.0;
  to.x = std::max(c.picture.left + 1.0, std::min(to.x, c.picture.right - width));
  to.y = std::clamp(to.y, c.picture.top + 2.5, c.picture.bottom - 2.5);
  sketch.tagged("callout").line(from, to, solid(c.theme.ink, 0.9));
  sketch.disc(from, 0.45, c.theme.ink);
  plated(sketch, c, to, words, type::small, c.theme.ink, HAlign::left);
}

void callouts(Sketch& sketch, const SectionContext& c) {
  const build::Bore& bore = *c.section.bore;
  const double in = 0.85 * c.up.wall_m;
  const double lowest = std::min({c.section.hollow.bottom_m, c.up.fillBottom_m(),
                                  c.up.footing_high_m - 0.12, bore.entry_m - 0.3});
  callout(sketch, c, c.at(in, build::axisAt_m(bore, in) - 0.4 * c.up.core_m),
          c.at(c.up.wall_m + 0.28, lowest - 0.07),
          c.voice.say(Message("drawing.section.core",
                              {base::millimetres("core", 1000.0 * c.up.core_m),
                               base::degrees("fall", build::degreesOfFall(bore.fall))})));
  const double end = c.up.wall_m + 0.6 * build::kPastInner_m;
  callout(sketch, c, c.at(end, build::axisAt_m(bore, end) + 0.3 * c.up.pipe_od_m),
          c.at(c.up.wall_m + 0.12, c.up.floor_m + 0.12),
          c.voice.say(Message("drawing.section.pipe",
                              {base::millimetres("pipe", 1000.0 * c.up.pipe_od_m),
                               base::millimetres("past", 1000.0 * build::kPastInner_m)})));
}

}  // namespace

void paintDimensions(Sketch& sketch, const SectionContext& c) {
  paintHeights(sketch, c);
  sketch.tagged("chain");
  wallChain(sketch, c);
  if (!c.section.bore) return;
  callouts(sketch, c);  // below the distances: their plates keep a leader off the figures
  distanceTo(sketch, c, LimitKind::slab, c.up.wall_m, c.up.underside_m(), 1.0);
  distanceTo(sketch, c, LimitKind::footing,
             c.up.wall_m + std::min(build::kFootingOut_m, build::kPastInner_m), c.up.footing_high_m,
             -1.0);
}

}  // namespace sumpwright::drawing
