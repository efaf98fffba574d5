// Heights beside the section; for the crew, every layer as well.

#include <algorithm>
#include <cmath>
#include <ranges>

#include "build/Figures.h"
#include "drawing/SectionParts.h"

namespace sumpwright::drawing {

namespace {

using base::Message;
using build::Fit;

/// Words that belong to a height of the picture.
struct HeightLabel {
  double y = 0.0;   ///< where the thing is
  double at = 0.0;  ///< where its words stand
  std::string words;
  Font font = type::small;
  Colour colour;
};

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

}  // namespace

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

std::string thick(const SectionContext& c, const char* id, double thickness_m) {
  return c.voice.say(Message(id, {base::millimetres("thickness", 1000.0 * thickness_m)}));
}

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

void paintHeights(Sketch& sketch, const SectionContext& c) {
  sketch.tagged("heights");
  ladder(sketch, c, outsideHeights(c));
  sketch.tagged("courses");
  courseColumn(sketch, c);
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

}  // namespace sumpwright::drawing
