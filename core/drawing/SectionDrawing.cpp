#include "drawing/SectionDrawing.h"

#include <algorithm>

#include "build/Figures.h"
#include "drawing/Clip.h"
#include "drawing/SectionParts.h"

namespace sumpwright::drawing {

namespace {

// What a view shows round the wall, metres, and the row of words above it, millimetres.
constexpr double kOutside_m = 0.62;
constexpr double kInside_m = 0.95;
constexpr double kAbove_m = 0.34;
constexpr double kBelow_m = 0.10;
constexpr double kTopWords_mm = 12.0;

double lowest_m(const build::DrillSection& section) {
  double low = std::min(section.up.footing_low_m - build::kFootingThick_m, section.up.ground_m);
  if (section.bore) {
    low = std::min(low, section.hollow.bottom_m);
    low = std::min(low, section.bore->entry_m - section.up.core_m);
  }
  return low - kBelow_m;
}

double highest_m(const build::DrillSection& section) {
  return std::max({section.up.floor_m, section.up.ground_m, section.up.dpc_m}) + kAbove_m;
}

}  // namespace

SectionContext::SectionContext(const build::DrillSection& s, const SectionView& v, const Voice& w)
    : section(s), up(s.up), view(v), voice(w), theme(drawing::theme(v.theme)) {
  picture = {0.0, 0.0, v.width_mm, v.height_mm};
  if (v.dimensioned) {
    const auto [left, right] = columnsOf(*this);
    picture = {left, kTopWords_mm, v.width_mm - right, v.height_mm};
  }
  const double low = lowest_m(s);
  const double high = highest_m(s);
  const double wide = kOutside_m + up.wall_m + kInside_m;
  mm = std::min(picture.width() / wide, picture.height() / (high - low));
  // What is left over goes inside and up: there the picture just goes on.
  const double spare = picture.width() - wide * mm;
  face_x = picture.left + kOutside_m * mm + 0.4 * spare;
  floor_y = picture.bottom + low * mm;
}

DrawList sectionDrawing(const build::DrillSection& section, const SectionView& view,
                        const Voice& voice) {
  const SectionContext c(section, view, voice);
  DrawList cut{view.width_mm, view.height_mm, {}};
  Sketch sketch(cut);
  sketch.tagged("page").fill(
      rectangle(c.picture.left, c.picture.top, c.picture.width(), c.picture.height()),
      c.theme.paper);
  paintEarth(sketch, c);
  paintFloor(sketch, c);
  paintFooting(sketch, c);
  paintWall(sketch, c);
  if (section.bore) paintHole(sketch, c);
  DrawList list = clipped(cut, c.picture, voice);
  Sketch words(list);
  if (view.dimensioned) {
    words.tagged("frame").outline(
        rectangle(c.picture.left, c.picture.top, c.picture.width(), c.picture.height()),
        solid(c.theme.rule, 1.0));
    paintDimensions(words, c);
  } else {
    paintLevels(words, c);
  }
  return clipped(list, {0.0, 0.0, view.width_mm, view.height_mm}, voice);
}

}  // namespace sumpwright::drawing
