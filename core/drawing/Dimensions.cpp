// Dimension lines with oblique ticks; the overall ones of the paper.

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <utility>

#include "drawing/PlanContext.h"

namespace sumpwright::drawing {
namespace {

constexpr double kOffWall_mm = 11.6;  // just beyond the tags
constexpr double kAxis = 0.02;        // sine of about one degree

std::string metres(const Voice& voice, double value) {
  return voice.say(base::Message("drawing.length", {base::metres("length", value)}));
}

void extension(Sketch& sketch, const PlanContext& c, Point face, Point end, Vec out) {
  sketch.line(face + (kBandFar_mm + 0.8) * out, end + 0.8 * out, solid(c.theme.ink2, 0.8));
}

/// A dimension line with oblique ticks; its words on the house's side of the line (read from below
/// or from the right), as near to its middle as nothing else stands there.
void dimension(Sketch& sketch, PlanContext& c, Point a, Point b, Vec out, const std::string& words,
               const Voice& voice) {
  const Font font = type::body;
  const Vec along = unit(b - a);
  sketch.line(a, b, solid(c.theme.ink2, 1.1));
  const Vec tick = 0.9 * unit(along + geometry::left(along));
  for (Point end : {a, b}) sketch.line(end - tick, end + tick, solid(c.theme.ink, 1.3));
  double turn = std::atan2(-along.y, along.x) * 180.0 / std::numbers::pi;
  if (turn > 90.0 + 1e-6) turn -= 180.0;
  if (turn <= -90.0 + 1e-6) turn += 180.0;
  const double angle = turn * std::numbers::pi / 180.0;
  const Vec up{-std::sin(angle), -std::cos(angle)};
  const double cap = voice.capHeight_mm(font);
  // First on the house's side of the line, then on the other.
  const Vec above = 0.45 * cap * up;
  const Vec below = -1.45 * cap * up;
  const bool out_is_up = geometry::dot(up, out) > 0.0;
  Text text{{}, words, font, c.theme.ink, HAlign::centre, turn};
  // Where nothing stands; else over lines, but never over other words.
  std::optional<Point> chosen;
  bool free = false;
  for (const Vec& shift : {out_is_up ? below : above, out_is_up ? above : below}) {
    for (double share : {0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82}) {
      text.at = geometry::lerp(a, b, share) + shift;
      const Box box = boxOf(text, voice);
      if (free || !holds(c.page, box) || !c.labels.isFree(grown(box, 0.3))) continue;
      free = c.occupied.isFree(box);
      if (free || !chosen) chosen = text.at;
    }
  }
  if (!chosen) return;
  text.at = *chosen;
  const Box box = boxOf(text, voice);
  if (std::abs(along.x) < kAxis || std::abs(along.y) < kAxis) {
    sketch.fill(rectangle(box.left, box.top, box.width(), box.height()), c.theme.paper);
  }
  sketch.text(text.at, words, font, c.theme.ink, HAlign::centre, turn);
  c.labels.take(grown(box, 0.3));
}

struct Side {
  Point a;  ///< on the house, page
  Point b;
  Vec out;
};

/// Both ends of a side's dimension line: `off` beyond the farther end of the side.
std::pair<Point, Point> lineOf(const Side& side) {
  const double reach = std::max(geometry::dot(side.a - Point{}, side.out),
                                geometry::dot(side.b - Point{}, side.out)) +
                       kOffWall_mm;
  const auto onLine = [&](Point p) {
    return p + (reach - geometry::dot(p - Point{}, side.out)) * side.out;
  };
  return {onLine(side.a), onLine(side.b)};
}

void dimensionSide(Sketch& sketch, PlanContext& c, const Side& side, const Voice& voice) {
  const auto [a, b] = lineOf(side);
  const double length_m = geometry::distance(a, b) / c.view.mm_per_m;
  extension(sketch, c, side.a, a, side.out);
  extension(sketch, c, side.b, b, side.out);
  dimension(sketch, c, a, b, side.out, metres(voice, length_m), voice);
}

bool onAxes(const PageRing& ring) {
  return std::all_of(ring.edges.begin(), ring.edges.end(), [](const PageEdge& e) {
    return std::min(std::abs(e.along.x), std::abs(e.along.y)) < kAxis;
  });
}

/// Overall length on two sides, the outermost wall's own on the two others where it is shorter.
std::vector<Side> boxSides(const PageRing& ring) {
  const Box box = boxOf(ring.outside());
  std::vector<Side> sides{{{box.left, box.bottom}, {box.right, box.bottom}, {0.0, 1.0}},
                          {{box.right, box.bottom}, {box.right, box.top}, {1.0, 0.0}}};
  const auto outermost = [&](Vec out, double whole) {
    const PageEdge* best = nullptr;
    for (const PageEdge& e : ring.edges) {
      if (geometry::dot(e.out, out) < 0.9) continue;
      const auto reach = [&](const PageEdge& x) { return geometry::dot(x.from - Point{}, out); };
      if (best == nullptr || reach(e) > reach(*best) + 1e-6 ||
          (reach(e) > reach(*best) - 1e-6 && e.length_mm > best->length_mm)) {
        best = &e;
      }
    }
    if (best != nullptr && best->length_mm < whole - 0.5)
      sides.push_back({best->from, best->to, out});
  };
  outermost({0.0, -1.0}, box.width());
  outermost({-1.0, 0.0}, box.height());
  return sides;
}

/// A plan off the axes: its four longest walls.
std::vector<Side> longestSides(const PlanContext& c, const PageRing& ring) {
  std::vector<const PageEdge*> edges;
  for (const PageEdge& e : ring.edges) edges.push_back(&e);
  std::stable_sort(edges.begin(), edges.end(), [](const PageEdge* a, const PageEdge* b) {
    return a->length_mm > b->length_mm;
  });
  std::vector<Side> sides;
  for (const PageEdge* e : edges) {
    const Point middle = e->at(e->length_mm / 2.0, kOffWall_mm);
    if (sides.size() < 4 && e->length_mm > 15.0 && !c.inHouse(middle) &&
        !c.inHouse(e->at(0.0, kOffWall_mm)) && !c.inHouse(e->at(e->length_mm, kOffWall_mm))) {
      sides.push_back({e->from, e->to, e->out});
    }
  }
  return sides;
}

std::vector<Side> sidesOf(const PlanContext& c) {
  if (!c.view.overall_dimensions || c.rings.empty()) return {};
  const PageRing& outer = c.rings.front();
  return onAxes(outer) ? boxSides(outer) : longestSides(c, outer);
}

}  // namespace

void reserveDimensions(PlanContext& c) {
  for (const Side& side : sidesOf(c)) {
    const auto [a, b] = lineOf(side);
    c.occupied.takeLine(a, b);
  }
}

void paintOverallDimensions(Sketch& sketch, PlanContext& c, const Voice& voice) {
  sketch.tagged("dimension");
  for (const Side& side : sidesOf(c)) dimensionSide(sketch, c, side, voice);
}

}  // namespace sumpwright::drawing
