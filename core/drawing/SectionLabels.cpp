// Heights beside the section; for the crew, every layer and distance as well.

#include <algorithm>
#include <cmath>
#include <ranges>

#include "build/Figures.h"
#include "drawing/SectionParts.h"

namespace sumpwright::drawing {

namespace {

using base::Message;
using build::Fit;
using build::LimitKind;
using build::Margin;

/// Words that belong to a height of the picture.
struct HeightLabel {
  double y = 0.0;   ///< where the thing is
  double at = 0.0;  ///< where its words stand
  std::string words;
  Font font = type::small;
  Colour colour;
};

/// Whether the build-up holds one of these for want of anybody's word: marked with a question mark.
bool isAssumed(const SectionContext& c, std::initializer_list<std::string_view> ids) {
  return std::ranges::any_of(c.up.assumed, [&](const build::Assumption& one) {
    return std::ranges::any_of(ids, [&](std::string_view id) {
      return one.what.id == "section.assumed." + std::string(id);
    });
  });
}

std::string marked(std::string words, bool assumed) {
  if (assumed) words += " ?";
  return words;
}

/// Moves labels apart, as little as it takes, top to bottom and back.
void spread(std::vector<HeightLabel>& labels, double top, double bottom) {
  std::stable_sort(labels.begin(), labels.end(),
                   [](const HeightLabel& a, const HeightLabel& b) { return a.y < b.y; });
  const double gap = 0.88 * leading_mm(type::small);
  double least = top;
  for (HeightLabel& label : labels) {
    label.at = std::max(label.y, least);
    least = label.at + gap;
  }
  double most = bottom;
  for (HeightLabel& label : std::views::reverse(labels)) {
    label.at = std::min(label.at, most);
    most = label.at - gap;
  }
}

std::string level(const SectionContext& c, double level_m) {
  return c.voice.say(Message("drawing.section.level", {base::metres("level", level_m)}));
}

std::string named(const SectionContext& c, const char* id, double level_m) {
  return c.voice.say(Message(id, {base::metres("level", level_m)}));
}

std::string thick(const SectionContext& c, const char* id, double thickness_m) {
  return c.voice.say(Message(id, {base::millimetres("thickness", 1000.0 * thickness_m)}));
}

/// A plate behind words, so that they read over hatches.
void plated(Sketch& sketch, const SectionContext& c, Point at, const std::string& words,
            const Font& font, const Colour& colour, HAlign align) {
  const double cap = c.voice.capHeight_mm(font);
  const Text text{{at.x, at.y + cap / 2.0}, words, font, colour, align, 0.0};
  const Box box = grown(boxOf(text, c.voice), 0.35);
  sketch.fill(roundedRectangle(box.left, box.top, box.width(), box.height(), 0.6), c.theme.paper);
  sketch.text(text.at, words, font, colour, align);
}

void levelColumn(Sketch& sketch, const SectionContext& c, std::vector<HeightLabel> labels) {
  spread(labels, c.picture.top + 2.2, c.picture.bottom - 2.2);
  for (const HeightLabel& label : labels) {
    const double cap = c.voice.capHeight_mm(label.font);
    sketch.text({c.picture.left + 1.0, label.at + cap / 2.0}, label.words, label.font,
                label.colour);
  }
}

// The dimensioned view.

/// Names of heights in the left column, each with a line to its height.
void ladder(Sketch& sketch, const SectionContext& c, std::vector<HeightLabel> labels) {
  spread(labels, c.picture.top + 2.0, c.picture.bottom - 2.0);
  const double right = c.picture.left;
  for (const HeightLabel& label : labels) {
    const double cap = c.voice.capHeight_mm(label.font);
    sketch.text({right - 5.0, label.at + cap / 2.0}, label.words, label.font, label.colour,
                HAlign::right);
    sketch.path({{right - 4.4, label.at}, {right - 2.2, label.y}, {right + 1.6, label.y}},
                solid(label.colour, 0.9));
  }
}

std::vector<HeightLabel> outsideHeights(const SectionContext& c) {
  std::vector<HeightLabel> labels;
  const auto add = [&](const char* id, double level_m, bool strong, const Colour& colour,
                       const char* assumed = "") {
    labels.push_back({c.y(level_m), 0.0, marked(named(c, id, level_m), isAssumed(c, {assumed})),
                      strong ? Font{type::small.size_pt, true, false} : type::small, colour});
  };
  const Colour ink = c.theme.ink2;
  add("drawing.section.dpc", c.up.dpc_m, false, ink, "dpc");
  add("drawing.section.ground", c.up.ground_m, false, ink, "ground");
  if (c.section.bore) {
    add("drawing.section.hole", c.section.bore->entry_m, true, c.theme.ink);
    if (c.section.dig_m > 0.0) {
      add("drawing.section.dig", c.up.ground_m - c.section.dig_m, false, ink);
    }
  }
  const bool range = c.up.footing_high_m > c.up.footing_low_m;
  add(range ? "drawing.section.footing-low" : "drawing.section.footing", c.up.footing_low_m, false,
      ink, "footing");
  if (range) add("drawing.section.footing-high", c.up.footing_high_m, false, ink, "footing");
  if (c.section.fit == Fit::fits_if_footing) {
    add("drawing.section.footing-needed", *c.section.footing_top_m, true, c.theme.refused.text);
  }
  return labels;
}

std::vector<HeightLabel> courses(const SectionContext& c) {
  std::vector<HeightLabel> labels;
  double high = c.up.floor_m;
  labels.push_back({c.y(high), 0.0, named(c, "drawing.section.floor", high),
                    Font{type::small.size_pt, true, false}, c.theme.ink});
  const auto add = [&](const char* id, double thickness_m,
                       std::initializer_list<std::string_view> assumed) {
    if (thickness_m <= 0.0) return;
    labels.push_back({c.y(high - thickness_m / 2.0), 0.0,
                      marked(thick(c, id, thickness_m), isAssumed(c, assumed)), type::small,
                      c.theme.ink2});
    high -= thickness_m;
  };
  if (c.suspended() && !c.oversite()) return labels;
  high -= c.up.under_floor_m;
  add("drawing.section.screed", c.up.screed_m, {"screed"});
  add("drawing.section.insulation", c.up.insulation_m, {"insulation"});
  add("drawing.section.slab", c.up.slab_m, {"slab", "oversite"});
  add("drawing.section.blinding", c.up.blinding_m, {"blinding"});
  add("drawing.section.hardcore", c.up.hardcore_m, {"hardcore"});
  if (c.section.bore) {
    const double litres = 1000.0 * c.section.hollow.volume_m3;
    labels.push_back(
        {c.y(c.section.hollow.bottom_m), 0.0,
         c.voice.say(Message("drawing.section.hollow",
                             {base::number("litres", litres),
                              base::millimetres("across", 2000.0 * c.section.hollow.radius_m)})),
         type::small, c.theme.ink2});
  }
  return labels;
}

void courseColumn(Sketch& sketch, const SectionContext& c) {
  std::vector<HeightLabel> labels = courses(c);
  spread(labels, c.picture.top + 2.0, c.picture.bottom - 2.0);
  const double left = c.picture.right;
  for (const HeightLabel& label : labels) {
    const double cap = c.voice.capHeight_mm(label.font);
    sketch.text({left + 5.0, label.at + cap / 2.0}, label.words, label.font, label.colour);
    sketch.path({{left - 1.6, label.y}, {left + 2.2, label.y}, {left + 4.4, label.at}},
                solid(label.colour, 0.9));
  }
}

void tick(Sketch& sketch, const SectionContext& c, Point p) {
  sketch.line({p.x - 0.7, p.y + 0.7}, {p.x + 0.7, p.y - 0.7}, solid(c.theme.ink, 1.6));
}

/// Leaves of the wall over the picture, and the wall altogether above them.
void wallChain(Sketch& sketch, const SectionContext& c) {
  const Pen pen = solid(c.theme.ink2, 0.9);
  const auto chain = [&](double y, const std::vector<double>& ends) {
    sketch.line({c.x(ends.front()), y}, {c.x(ends.back()), y}, pen);
    for (const double end : ends) tick(sketch, c, {c.x(end), y});
    for (std::size_t i = 1; i < ends.size(); ++i) {
      const std::string words = marked(thick(c, "drawing.section.thickness", ends[i] - ends[i - 1]),
                                       isAssumed(c, {"wall"}));
      const double room = (ends[i] - ends[i - 1]) * c.mm + 0.8;
      if (c.voice.width_mm(words, type::small) > room) continue;
      sketch.text({c.x((ends[i] + ends[i - 1]) / 2.0), y - 1.0}, words, type::small, c.theme.ink,
                  HAlign::centre);
    }
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

std::pair<double, double> columnsOf(const SectionContext& c) {
  const auto widest = [&](const std::vector<HeightLabel>& labels) {
    double width = 0.0;
    for (const HeightLabel& label : labels) {
      width = std::max(width, c.voice.width_mm(label.words, label.font));
    }
    return width + 6.0;  // and the lines to the picture
  };
  return {widest(outsideHeights(c)), widest(courses(c))};
}

void paintLevels(Sketch& sketch, const SectionContext& c) {
  std::vector<HeightLabel> labels;
  const auto add = [&](double level_m, double up_mm) {
    labels.push_back({c.y(level_m) - up_mm, 0.0, level(c, level_m), type::small, c.theme.ink});
  };
  add(c.up.ground_m, 1.8);
  if (c.section.bore) add(c.section.bore->entry_m, 0.0);
  add(c.up.footing_low_m, 0.0);
  if (c.up.footing_high_m > c.up.footing_low_m) add(c.up.footing_high_m, 0.0);
  sketch.tagged("levels");
  levelColumn(sketch, c, labels);
  sketch.text({c.picture.right - 1.2, c.y(c.up.floor_m) - 1.0}, level(c, c.up.floor_m), type::small,
              c.theme.ink, HAlign::right);
}

void paintDimensions(Sketch& sketch, const SectionContext& c) {
  sketch.tagged("heights");
  ladder(sketch, c, outsideHeights(c));
  sketch.tagged("courses");
  courseColumn(sketch, c);
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
