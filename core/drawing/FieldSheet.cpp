// What of the plan stands round a field, and hides it where it runs on past the floor.

#include <algorithm>

#include "drawing/BuiltIn.h"
#include "drawing/Clip.h"
#include "drawing/FieldParts.h"
#include "drawing/Hatch.h"
#include "geometry/Polylines.h"
#include "suction/ModelOf.h"

namespace sumpwright::drawing {
namespace {

constexpr double kThinWall_m = 0.10;  // of a barrier whose thickness the plan does not say
constexpr double kStripe_mm = 1.1;
constexpr double kBareHatch_mm = 1.7;  // wider than any wall's: it is no solid

using Rings = std::vector<std::vector<Point>>;

Rings outsideFaces(const PlanContext& c) {
  Rings faces;
  for (const PageRing& ring : c.rings) faces.push_back(ring.outside());
  return faces;
}

Rings floorOf(const SheetContext& c, const suction::SuctionModel& model) {
  Rings floor;
  for (const suction::Region& region : model.regions) {
    if (region.neighbour) continue;
    floor.push_back(c.at(region.outline));
    for (const auto& hole : region.holes) floor.push_back(c.at(hole));
  }
  return floor;
}

/// Rings cut to the page: hatching what lies outside would take long close up.
Rings onThePage(const Rings& rings, const Box& page) {
  Rings cut;
  for (const auto& ring : rings) {
    auto part = clipped(ring, page);
    if (part.size() >= 3) cut.push_back(std::move(part));
  }
  return cut;
}

/// Where a line of the grid enters and leaves the house, along it.
std::vector<double> crossingsOf(const Rings& faces, Point a, Point b) {
  std::vector<double> at{0.0, 1.0};
  for (const auto& face : faces) {
    for (std::size_t i = 0; i < face.size(); ++i) {
      const Point p = face[i];
      const Point q = face[(i + 1) % face.size()];
      const double dp = geometry::cross(b - a, p - a);
      const double dq = geometry::cross(b - a, q - a);
      if ((dp < 0.0) == (dq < 0.0)) continue;
      const Point hit = geometry::lerp(p, q, dp / (dp - dq));
      const double t = geometry::dot(hit - a, b - a) / geometry::dot(b - a, b - a);
      if (t > 0.0 && t < 1.0) at.push_back(t);
    }
  }
  std::sort(at.begin(), at.end());
  return at;
}

/// The grid round the house, not in it.
void gridOutside(Sketch& sketch, const PlanContext& c, const Rings& faces) {
  DrawList whole;
  Sketch all(whole);
  paintGrid(all, c);
  for (const Item& item : whole.items) {
    const auto* stroke = std::get_if<Stroke>(&item.shape);
    if (stroke == nullptr) continue;
    const Point a = stroke->points.front();
    const Point b = stroke->points.back();
    const auto cuts = crossingsOf(faces, a, b);
    for (std::size_t i = 0; i + 1 < cuts.size(); i += 2) {
      sketch.line(geometry::lerp(a, b, cuts[i]), geometry::lerp(a, b, cuts[i + 1]), stroke->pen);
    }
  }
}

double thicknessOf(const PlanContext& c, const std::string& id) {
  for (const plan::RisingWall& wall : c.plan().rising_walls) {
    if (wall.id == id && wall.thickness_m > 0.0) return wall.thickness_m;
  }
  for (const plan::InnerWall& wall : c.plan().inner_walls) {
    if (wall.id == id && wall.thickness_m > 0.0) return wall.thickness_m;
  }
  return kThinWall_m;
}

/// A straight piece of a wall through the fill as a hatched solid.
void barrierPiece(Sketch& sketch, const PlanContext& c, Point a, Point b, double half_mm) {
  const Vec along = unit(b - a);
  const Vec aside = half_mm * geometry::left(along);
  const std::vector<Point> body{a + aside, b + aside, b - aside, a - aside};
  sketch.fill(body, c.theme.paper);
  for (const auto& line : hatch({clipped(body, c.page)}, {-45.0, kStripe_mm})) {
    sketch.line(line.a, line.b, solid(c.theme.wall_edge, 1.2));
  }
  sketch.outline(body, solid(c.theme.wall_edge, 1.1));
}

void barrier(Sketch& sketch, const PlanContext& c, const suction::Barrier& wall) {
  std::vector<suction::Stretch> gaps = wall.gaps;
  const double length = geometry::lengthOf(wall.line);
  std::sort(gaps.begin(), gaps.end(),
            [](const auto& a, const auto& b) { return a.from_m < b.from_m; });
  gaps.push_back({length, length});
  const double half = std::max(0.5, c.mm(thicknessOf(c, wall.id)) / 2.0);
  double at = 0.0;
  for (const suction::Stretch& gap : gaps) {
    const auto piece = c.at(linePart(wall.line, at, gap.from_m));
    for (std::size_t i = 0; i + 1 < piece.size(); ++i) {
      barrierPiece(sketch, c, piece[i], piece[i + 1], half);
    }
    if (gap.to_m > gap.from_m) {  // the gap is known: dotted
      const Pen dots = dashed(c.theme.wall_edge, 1.1, {1.1, 3.0});
      const auto open = c.at(linePart(wall.line, gap.from_m, gap.to_m));
      for (std::size_t i = 0; i + 1 < open.size(); ++i) {
        const Vec aside = half * geometry::left(unit(open[i + 1] - open[i]));
        sketch.line(open[i] + aside, open[i + 1] + aside, dots);
        sketch.line(open[i] - aside, open[i + 1] - aside, dots);
      }
    }
    at = std::max(at, gap.to_m);
  }
}

void takeWalls(PlanContext& c) {
  for (const PageRing& ring : c.rings) {
    for (const PageEdge& e : ring.edges) {
      for (double out : {kBandFar_mm, (kBandNear_mm + kBandFar_mm) / 2.0, 0.0, -e.thick_mm / 2.0}) {
        c.occupied.takeLine(e.at(0.0, out), e.at(e.length_mm, out));
        c.bands.takeLine(e.at(0.0, out), e.at(e.length_mm, out));
      }
    }
  }
}

/// Sumps of the design that the marker does not show.
void otherSumps(Sketch& sketch, const PlanContext& c, const std::string& marked) {
  for (const plan::Sump& sump : c.study.job().design.sumps) {
    if (sump.id == marked || sump.kind != plan::SumpKind::cored) continue;
    const auto rings = static_cast<int>(c.rings.size());
    if (sump.ring < 0 || sump.ring >= rings) continue;
    paintBuiltSump(sketch.tagged(sump.id), c, {sump.ring, sump.chainage_m});
  }
}

/// The letter of a concave corner stands over the field: on a disc of paper.
void fieldCornerLetters(Sketch& sketch, PlanContext& c, const Voice& voice) {
  DrawList letters;
  Sketch apart(letters);
  paintCornerLetters(apart, c, voice);
  for (const Item& item : letters.items) {
    const Point middle = boxOf(item.shape, voice).centre();
    if (c.inHouse(middle)) {
      sketch.tagged(item.tag).disc(middle, type::letter.size_pt * 0.26, c.theme.raised);
    }
    sketch.put(item);
  }
}

void paintOver(Sketch& sketch, PlanContext& c, const Voice& voice,
               const suction::SuctionModel& model, const Rings& floor, bool plain) {
  const Rings faces = outsideFaces(c);
  Rings beyond = faces;
  beyond.push_back(rectangle(0.0, 0.0, c.view.width_mm, c.view.height_mm));
  sketch.tagged("paper").fill(beyond, c.theme.paper);
  if (c.view.grid) gridOutside(sketch.tagged("grid"), c, faces);
  Rings off_floor = faces;
  off_floor.insert(off_floor.end(), floor.begin(), floor.end());
  sketch.tagged("off-floor").fill(off_floor, c.theme.room_hall);
  bareHatch(sketch, c.theme, onThePage(off_floor, c.page));
  paintInnerWalls(sketch, c);
  for (const suction::Barrier& wall : model.barriers) barrier(sketch.tagged(wall.id), c, wall);
  paintWalls(sketch, c);
  if (!plain) bands(sketch, c.theme, c.study, c.rings, c.page);
  paintBuiltIn(sketch, c);
  paintOpenings(sketch, c);
  if (plain) return paintSumpsInside(sketch, c);
  paintOutside(sketch, c);
  paintServices(sketch, c);
  paintSumpsInside(sketch, c);
  paintServiceNames(sketch, c, voice);
  fieldCornerLetters(sketch, c, voice);
}

}  // namespace

void bareHatch(Sketch& sketch, const Theme& theme, const std::vector<std::vector<Point>>& rings) {
  for (const auto& line : hatch(rings, {45.0, kBareHatch_mm})) {
    sketch.line(line.a, line.b, solid(theme.ink3, 0.8));
  }
}

FieldSheet fieldSheet(const siting::Study& study, const suction::SuctionModel& model,
                      const PlanView& view, const Voice& voice, const std::string& marked,
                      bool plain) {
  const Box page{0.0, 0.0, view.width_mm, view.height_mm};
  FieldSheet sheet{view, {view.width_mm, view.height_mm, {}}, {}, {}, {}, {}};
  DrawList over{view.width_mm, view.height_mm, {}};
  Sketch under(sheet.under);
  Sketch sketch(over);
  PlanContext c(study, view);
  under.tagged("paper").fill(rectangle(0, 0, view.width_mm, view.height_mm), c.theme.paper);
  if (view.furniture) c.occupied.take({0.0, 0.0, kFurnitureWidth_mm, kFurnitureHeight_mm});
  takeWalls(c);
  sheet.floor = floorOf(c, model);
  paintOver(sketch, c, voice, model, sheet.floor, plain);
  otherSumps(sketch, c, marked);
  for (const plan::TestHole& hole : study.job().plan.test_holes) {
    c.occupied.take(around(c.at(hole.at_m), 2.7, 2.7));
  }
  for (const RoomName& name : placedRoomNames(c, voice, false)) {
    sheet.names.push_back({name.room->id, name.texts, name.box});
  }
  paintFurniture(sketch, c, voice);
  if (!view.selected.empty()) paintOutline(sketch.tagged("selected"), c, view.selected);
  sheet.over = clipped(over, page, voice);
  sheet.taken = wordsOf(sheet.over, voice);
  return sheet;
}

}  // namespace sumpwright::drawing
