#include "drawing/BuiltIn.h"

#include <algorithm>

#include "geometry/Polylines.h"

namespace sumpwright::drawing {

namespace {

constexpr double kLeastFeature_mm = 1.6;  // own figure: a joint of no width is seen
constexpr double kBlock_mm = 2.0;         // own figure: a pier or breast stands so far off the face

struct Stretch {
  double from;
  double to;
};

/// As wide as it is, and wide enough to be seen.
Stretch shownStretch(const SheetContext& c, double width_m) {
  const double width = c.mm(width_m);
  const double more = std::max(0.0, kLeastFeature_mm - width) / 2.0;
  return {-more, width + more};
}

void block(Sketch& sketch, const SheetContext& c, const WallSlot& slot, Stretch s, double from_in,
           double to_in) {
  const std::vector<Point> body{slot.at(s.from, from_in), slot.at(s.to, from_in),
                                slot.at(s.to, to_in), slot.at(s.from, to_in)};
  sketch.fill(body, c.theme.wall);
  sketch.outline(body, solid(c.theme.wall_edge, 1.0));
}

void stair(Sketch& sketch, const WallSlot& slot, Stretch s, const Pen& pen) {
  const double step = (s.to - s.from) / 3.0;
  const double rise = slot.thick_mm / 3.0;
  std::vector<Point> line;
  for (int i = 0; i < 3; ++i) {
    line.push_back(slot.at(s.from + i * step, (3 - i) * rise));
    line.push_back(slot.at(s.from + (i + 1) * step, (3 - i) * rise));
  }
  sketch.path(line, pen);
}

}  // namespace

void wallFeature(Sketch& sketch, const SheetContext& c, const plan::WallFeature& feature,
                 const WallSlot& slot) {
  const Stretch s = shownStretch(c, feature.width_m);
  const double middle = (s.from + s.to) / 2.0;
  const Pen light = solid(c.theme.paper, 1.6);
  switch (feature.kind) {
    case plan::WallFeatureKind::pier:
      return block(sketch, c, slot, s, -kBlock_mm, 0.0);
    case plan::WallFeatureKind::chimney_breast:
      return block(sketch, c, slot, s, slot.thick_mm, slot.thick_mm + kBlock_mm);
    case plan::WallFeatureKind::beam_bearing:
      return sketch.fill({slot.at(s.from, slot.thick_mm), slot.at(s.to, slot.thick_mm),
                          slot.at(middle, 0.25 * slot.thick_mm)},
                         c.theme.paper);
    case plan::WallFeatureKind::movement_joint:
      for (const double x : {middle - 0.4, middle + 0.4}) {
        sketch.line(slot.at(x, -0.6), slot.at(x, slot.thick_mm + 0.6), solid(c.theme.paper, 2.4));
        sketch.line(slot.at(x, -0.6), slot.at(x, slot.thick_mm + 0.6), solid(c.theme.ink, 0.9));
      }
      return;
    case plan::WallFeatureKind::weep_hole:
      return sketch.ring(slot.at(middle, 0.3 * slot.thick_mm), 0.6, solid(c.theme.ink, 0.9),
                         c.theme.paper);
    case plan::WallFeatureKind::stepped_footing:
      return stair(sketch, slot, s, light);
  }
}

void risingWall(Sketch& sketch, const SheetContext& c, const plan::RisingWall& wall) {
  std::vector<plan::Gap> gaps = wall.gaps;
  std::sort(gaps.begin(), gaps.end(),
            [](const plan::Gap& a, const plan::Gap& b) { return a.from_m < b.from_m; });
  gaps.push_back({geometry::lengthOf(wall.line_m), geometry::lengthOf(wall.line_m)});
  const Pen pen = dashed(c.theme.ink3, 1.0, {5.0, 2.5});
  const double half = std::max(0.35, c.mm(wall.thickness_m) / 2.0);
  double at = 0.0;
  for (const plan::Gap& gap : gaps) {
    const auto piece = c.at(linePart(wall.line_m, at, gap.from_m));
    for (std::size_t i = 0; i + 1 < piece.size(); ++i) {
      const Vec aside = half * geometry::left(unit(piece[i + 1] - piece[i]));
      sketch.line(piece[i] + aside, piece[i + 1] + aside, pen);
      sketch.line(piece[i] - aside, piece[i + 1] - aside, pen);
    }
    at = std::max(at, gap.to_m);
  }
}

std::vector<Point> linePart(const std::vector<Point>& line, double from, double to) {
  std::vector<Point> out;
  double walked = 0.0;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const double length = geometry::distance(line[i], line[i + 1]);
    const double a = std::max(from - walked, 0.0);
    const double b = std::min(to - walked, length);
    if (length > 0.0 && a < b) {
      if (out.empty()) out.push_back(geometry::lerp(line[i], line[i + 1], a / length));
      out.push_back(geometry::lerp(line[i], line[i + 1], b / length));
    }
    walked += length;
  }
  return out;
}

}  // namespace sumpwright::drawing
