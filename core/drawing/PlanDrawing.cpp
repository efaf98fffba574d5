#include "drawing/PlanDrawing.h"

#include <algorithm>
#include <limits>

#include "drawing/Beyond.h"
#include "drawing/Clip.h"
#include "drawing/PlanContext.h"
#include "drawing/TiedDimensions.h"
#include "plan/Dimensions.h"

namespace sumpwright::drawing {
namespace {

constexpr double kAround_mm = 16.0;       // on screen: bands, tags and the grip, all round
constexpr double kPaperAround_mm = 13.9;  // on paper: bands, tags and a dimension with its words
constexpr double kGarden_m = 1.2;         // outside things widen the view by no more (own figure)

/// The extent of the plan in metres, as {left, top = least y, right, bottom = greatest y}; things
/// outside and dimension lines widen it by no more than `garden_m`.
Box extent(const siting::Study& study, double garden_m = kGarden_m) {
  std::vector<Point> house;
  for (int r = 0; r < study.perimeter().ringCount(); ++r) {
    for (const perimeter::Edge& e : study.perimeter().edges(r)) house.push_back(e.from);
  }
  Box box = boxOf(house);
  const Box near = grown(box, garden_m);
  for (const plan::OutsideThing& t : study.job().plan.outside) {
    // Lines lead out of the picture anyway.
    if (isLine(t)) continue;
    for (Point p : t.points_m) {
      const Point kept{std::clamp(p.x, near.left, near.right),
                       std::clamp(p.y, near.top, near.bottom)};
      box = join(box, {kept.x, kept.y, kept.x, kept.y});
    }
  }
  for (const plan::Dimension& d : study.job().plan.dimensions) {
    const auto line = plan::lineOf(study.job(), d);
    if (!line) continue;
    for (Point p : {line->a, line->b}) {
      const Point kept{std::clamp(p.x, near.left, near.right),
                       std::clamp(p.y, near.top, near.bottom)};
      box = join(box, {kept.x, kept.y, kept.x, kept.y});
    }
  }
  return box;
}

/// The bands' room along all walls, so that labels keep off it.
void takeBands(PlanContext& c) {
  for (const PageRing& ring : c.rings) {
    for (const PageEdge& e : ring.edges) {
      for (double out : {kBandFar_mm, (kBandNear_mm + kBandFar_mm) / 2.0, 0.0, -e.thick_mm / 2.0}) {
        c.occupied.takeLine(e.at(0.0, out), e.at(e.length_mm, out));
        c.bands.takeLine(e.at(0.0, out), e.at(e.length_mm, out));
      }
    }
  }
}

/// Whatever the marker will draw, so that the plan's labels keep off it.
void takeMarker(PlanContext& c, const Voice& voice) {
  if (!c.view.keep_clear) return;
  PlanView view = c.view;
  view.keep_clear.reset();
  const auto assessment = c.study.assess(*c.view.keep_clear);
  for (const Item& item : planMarker(c.study, assessment, view, voice, true).items) {
    if (const auto* stroke = std::get_if<Stroke>(&item.shape)) {
      for (std::size_t i = 0; i + 1 < stroke->points.size(); ++i) {
        c.occupied.takeLine(stroke->points[i], stroke->points[i + 1]);
      }
    } else {
      c.occupied.take(boxOf(item.shape, voice));
      if (std::holds_alternative<Text>(item.shape)) {
        c.labels.take(grown(boxOf(item.shape, voice), 0.4));
      }
    }
  }
  // No words may come under the grip.
  const double r = kGripRadius_mm + 0.4;
  c.labels.take(around(gripCentre(c.study, assessment, view), r, r));
}

}  // namespace

Point toPage(const PlanView& view, Point p) {
  return {view.width_mm / 2.0 + (p.x - view.centre_m.x) * view.mm_per_m,
          view.height_mm / 2.0 - (p.y - view.centre_m.y) * view.mm_per_m};
}

Point toPlan(const PlanView& view, Point p) {
  return {view.centre_m.x + (p.x - view.width_mm / 2.0) / view.mm_per_m,
          view.centre_m.y - (p.y - view.height_mm / 2.0) / view.mm_per_m};
}

PlanView fitted(const siting::Study& study, double width_mm, double height_mm, ThemeName name) {
  // North point and scale bar stand at the top.
  constexpr double kTop_mm = kFurnitureHeight_mm + 5.0;
  const Box plan = extent(study);
  PlanView view;
  view.width_mm = width_mm;
  view.height_mm = height_mm;
  view.theme = name;
  const double room_x = std::max(10.0, width_mm - 2.0 * kAround_mm);
  const double room_y = std::max(10.0, height_mm - kTop_mm - kAround_mm);
  view.mm_per_m =
      std::min(room_x / std::max(plan.width(), 0.5), room_y / std::max(plan.height(), 0.5));
  view.centre_m = plan.centre();
  view.centre_m.y += (kTop_mm - kAround_mm) / 2.0 / view.mm_per_m;
  return view;
}

PlanView atScale(const siting::Study& study, double mm_per_m, ThemeName name, double garden_m) {
  const Box plan = extent(study, garden_m);
  PlanView view;
  view.theme = name;
  view.mm_per_m = mm_per_m;
  view.centre_m = plan.centre();
  view.width_mm = plan.width() * mm_per_m + 2.0 * kPaperAround_mm;
  view.height_mm = plan.height() * mm_per_m + 2.0 * kPaperAround_mm;
  return view;
}

DrawList planFurniture(const siting::Study& study, const PlanView& view, const Voice& voice) {
  DrawList list{view.width_mm, view.height_mm, {}};
  Sketch sketch(list);
  PlanView shown = view;
  shown.furniture = true;
  PlanContext c(study, shown);
  paintFurniture(sketch, c, voice);
  return list;
}

DrawList planBase(const siting::Study& study, const PlanView& view, const Voice& voice) {
  DrawList list{view.width_mm, view.height_mm, {}};
  Sketch sketch(list);
  PlanContext c(study, view);
  if (!c.onPaper()) {
    sketch.tagged("paper").fill(rectangle(0, 0, view.width_mm, view.height_mm), c.theme.paper);
  }
  if (view.furniture) c.occupied.take({0.0, 0.0, kFurnitureWidth_mm, kFurnitureHeight_mm});
  takeBands(c);
  takeMarker(c, voice);
  paintGrid(sketch, c);
  paintFloor(sketch, c);
  paintRisingWalls(sketch, c);
  paintFixtures(sketch, c);
  paintInnerWalls(sketch, c);
  paintWalls(sketch, c);
  bands(sketch, c.theme, study, c.rings, c.page);
  paintBuiltIn(sketch, c);
  paintOpenings(sketch, c);
  paintOutside(sketch, c);
  paintServices(sketch, c);
  paintTestHoles(sketch, c, voice);
  paintSumpsInside(sketch, c);
  for (const auto& line : dimensionLines(c)) c.dimensions.takeLine(line.a, line.b);
  const auto tied = tiedDimensions(c, study.job(), voice);
  for (const TiedDimension& d : tied) {
    c.dimensions.takeLine(d.line.a, d.line.b);
    c.labels.take(boxOf(d.plate));
    c.occupied.take(boxOf(d.plate));
  }
  paintOverallDimensions(sketch, c, voice);
  paintServiceNames(sketch, c, voice);  // a dimension line stops for a name
  paintCornerLetters(sketch, c, voice);
  paintRoomLabels(sketch, c, voice);
  paintTiedDimensions(sketch, c, tied);
  paintFurniture(sketch, c, voice);
  if (!view.selected.empty()) paintOutline(sketch.tagged("selected"), c, view.selected);
  return clipped(list, c.page, voice);
}

}  // namespace sumpwright::drawing
