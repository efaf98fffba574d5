#include "drawing/FieldDrawing.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "drawing/Clip.h"
#include "drawing/FieldParts.h"
#include "suction/Contours.h"
#include "suction/Field.h"
#include "suction/LevelAreas.h"

namespace sumpwright::drawing {
namespace {

constexpr double kContour_px = 1.1;
constexpr double kTarget_px = 3.0;
constexpr double kTargetHalo_px = 6.0;

std::vector<Point> onPage(const PlanView& view, const std::vector<Point>& plan) {
  std::vector<Point> out;
  out.reserve(plan.size());
  for (const Point p : plan) out.push_back(toPage(view, p));
  return out;
}

/// The classes' limits, and the target's where it is none of them.
std::vector<double> linesOf(const FieldScale& scale, double target) {
  std::vector<double> levels = scale.levels;
  levels.push_back(target);
  std::sort(levels.begin(), levels.end());
  levels.erase(std::unique(levels.begin(), levels.end()), levels.end());
  return levels;
}

std::vector<PageContour> contoursOnPage(const FieldSheet& sheet, const FieldShown& shown,
                                        const FieldScale& scale) {
  std::vector<PageContour> out;
  const auto& field = shown.field;
  for (const auto& contour :
       suction::contoursOf(*field.network, *field.values, linesOf(scale, shown.target))) {
    out.push_back({contour.level_pa, contour.level_pa == shown.target,
                   onPage(sheet.view, contour.line), contour.closed});
  }
  return out;
}

void paintClasses(Sketch& sketch, const FieldSheet& sheet, const FieldShown& shown,
                  const FieldPaint& paint) {
  // Each area over the one that holds it, so that no two of them leave a seam.
  sketch.tagged("class").fill(sheet.floor, paint.of(0));
  std::size_t own = 0;
  for (const auto& area :
       suction::areasAbove(*shown.field.network, *shown.field.values, paint.scale.levels)) {
    ++own;
    std::vector<std::vector<Point>> rings;
    for (const auto& ring : area.rings) rings.push_back(onPage(sheet.view, ring));
    sketch.fill(rings, paint.of(own));
  }
}

void strokeContour(Sketch& sketch, const PageContour& contour, const Pen& pen) {
  if (contour.closed) {
    sketch.outline(contour.line, pen);
  } else {
    sketch.path(contour.line, pen);
  }
}

/// Ink or paper, whichever is seen better on both sides of the line.
Colour contourColour(const FieldPaint& paint, double level) {
  if (paint.stale) return paint.theme.stale_line;
  const std::size_t upper = paint.scale.classOf(level);
  const std::size_t lower = upper == 0 ? 0 : upper - 1;
  return moreReadable(paint.theme.ink, paint.theme.paper, {paint.of(lower), paint.of(upper)});
}

void paintLikewise(Sketch& sketch, const FieldSheet& sheet, const FieldShown& shown,
                   const FieldPaint& paint) {
  sketch.tagged("target-likewise");
  for (const FieldValues& other : shown.likewise) {
    if (!other.has()) continue;
    for (const auto& contour : suction::contoursOf(*other.network, *other.values, {shown.target})) {
      const PageContour line{shown.target, true, onPage(sheet.view, contour.line), contour.closed};
      strokeContour(sketch, line, solid(paint.theme.paper, 2.8));
      strokeContour(sketch, line,
                    dottedTarget(paint.stale ? paint.theme.stale_line : paint.theme.ink));
    }
  }
}

}  // namespace

base::Message levelWords(FieldKind kind, double level) {
  if (kind == FieldKind::chance) {
    return base::Message("drawing.field.share", {base::percent("share", 100.0 * level)});
  }
  const bool whole = level == std::round(level);
  return base::Message(whole ? "drawing.field.level" : "drawing.field.level-fine",
                       {base::pressure("level", base::Pressure::ofPa(level))});
}

base::Message targetWords(FieldKind kind, double level) {
  if (kind == FieldKind::chance) return levelWords(kind, level);
  const bool whole = level == std::round(level);
  return base::Message(whole ? "drawing.field.pascal" : "drawing.field.pascal-fine",
                       {base::pressure("level", base::Pressure::ofPa(level))});
}

base::Message pascalWords(double pa) {
  constexpr double kWhole_pa = 9.95;  // from here on without decimals
  return base::Message(
      std::abs(pa) < kWhole_pa ? "drawing.field.pascal-fine" : "drawing.field.pascal",
      {base::pressure("level", base::Pressure::ofPa(pa))});
}

Pen dottedTarget(const Colour& colour) { return dashed(colour, 1.5, {1.5, 2.5}); }

void paintFieldAreas(Sketch& sketch, const FieldSheet& sheet, const FieldShown& shown,
                     const FieldPaint& paint, const std::vector<PageContour>& contours) {
  paintClasses(sketch, sheet, shown, paint);
  for (const PageContour& contour : contours) {
    if (contour.target) continue;
    strokeContour(sketch.tagged("contour"), contour,
                  solid(contourColour(paint, contour.level), kContour_px));
  }
  paintLikewise(sketch, sheet, shown, paint);
  sketch.tagged("target");
  for (const double width : {kTargetHalo_px, kTarget_px}) {
    const bool halo = width == kTargetHalo_px;
    const Colour line = paint.stale ? paint.theme.stale_text : paint.theme.ink;
    for (const PageContour& contour : contours) {
      if (!contour.target) continue;
      strokeContour(sketch, contour, solid(halo ? paint.theme.paper : line, width));
    }
  }
}

FieldLayers fieldLayers(const FieldSheet& sheet, const FieldShown& shown,
                        const std::vector<HoleMark>& holes, const Voice& voice) {
  const PlanView& view = sheet.view;
  FieldLayers layers{{view.width_mm, view.height_mm, {}}, {view.width_mm, view.height_mm, {}}};
  DrawList areas = layers.areas;
  DrawList labels = layers.labels;
  const FieldPaint paint(shown, view.theme);
  std::vector<PageContour> contours;
  if (shown.field.has()) {
    contours = contoursOnPage(sheet, shown, paint.scale);
    Sketch sketch(areas);
    paintFieldAreas(sketch, sheet, shown, paint, contours);
  }
  Sketch sketch(labels);
  paintFieldLabels(sketch, sheet, shown, paint, contours, holes, voice);
  const Box page{0.0, 0.0, view.width_mm, view.height_mm};
  layers.areas = clipped(areas, page, voice);
  layers.labels = clipped(labels, page, voice);
  return layers;
}

DrawList fieldPicture(const FieldSheet& sheet, const FieldShown& shown,
                      const std::vector<HoleMark>& holes, const Voice& voice) {
  FieldLayers layers = fieldLayers(sheet, shown, holes, voice);
  DrawList picture = sheet.under;
  for (const DrawList* list :
       std::array<const DrawList*, 3>{&layers.areas, &sheet.over, &layers.labels}) {
    picture.items.insert(picture.items.end(), list->items.begin(), list->items.end());
  }
  return picture;
}

std::vector<HoleMark> predictedAt(const plan::Plan& plan, const FieldValues& field) {
  std::vector<HoleMark> marks;
  for (const plan::TestHole& hole : plan.test_holes) {
    const int number = static_cast<int>(&hole - plan.test_holes.data()) + 1;
    HoleMark mark{hole.id, hole.at_m, std::nullopt, std::nullopt, false, number};
    if (field.has())
      mark.predicted_pa = suction::sampleAt(*field.network, *field.values, hole.at_m);
    marks.push_back(std::move(mark));
  }
  return marks;
}

}  // namespace sumpwright::drawing
