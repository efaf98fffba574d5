// Dimension lines with oblique ticks; the overall ones of the paper.

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>
#include <utility>

#include "drawing/PlanContext.h"

namespace sumpwright::drawing {
namespace {

constexpr double kOffWall_mm = 12.1;  // the words in the line clear the tags
constexpr double kAxis = 0.02;        // sine of about one degree

std::string metres(const Voice& voice, double value) {
  return voice.say(base::Message("drawing.length", {base::metres("length", value)}));
}

void extension(Sketch& sketch, const PlanContext& c, Point face, Point end, Vec out) {
  sketch.line(face + (kBandFar_mm + 0.8) * out, end + 0.8 * out, solid(c.theme.ink2, 0.8));
}

/// The words of a dimension, turned so that they read from below or from the right.
class Words {
 public:
  Words(std::string text, Vec along, const Colour& colour, const Voice& voice)
      : m_text{{}, std::move(text), type::body, colour, HAlign::centre, 0.0} {
    double turn = std::atan2(-along.y, along.x) * 180.0 / std::numbers::pi;
    if (turn > 90.0 + 1e-6) turn -= 180.0;
    if (turn <= -90.0 + 1e-6) turn += 180.0;
    m_text.turn_deg = turn;
    const double angle = turn * std::numbers::pi / 180.0;
    m_up = {-std::sin(angle), -std::cos(angle)};
    m_right = {-m_up.y, m_up.x};
    m_half = voice.width_mm(m_text.text, m_text.font) / 2.0;
    m_cap = voice.capHeight_mm(m_text.font);
  }
  double half_mm() const { return m_half; }
  /// Centred on a point.
  Text at(Point middle) const {
    Text text = m_text;
    text.at = middle - (m_cap / 2.0) * m_up;
    return text;
  }
  /// Above (or below) a line through the point.
  Point above(Point p, bool above) const { return p + (above ? 0.95 : -0.95) * m_cap * m_up; }
  /// What is left white about them.
  std::vector<Point> plate(Point middle) const {
    const Vec r = (m_half + 0.8) * m_right;
    const Vec u = (m_cap / 2.0 + 0.5) * m_up;
    return {middle - r - u, middle + r - u, middle + r + u, middle - r + u};
  }

 private:
  Text m_text;
  Vec m_up;
  Vec m_right;
  double m_half = 0.0;
  double m_cap = 0.0;
};

/// Where the words stand: in the line itself, as near its middle as nothing else is there, else
/// beside it, else past its ends; over other lines if need be, but never over other words.
std::optional<Point> placeOf(const PlanContext& c, const Voice& voice, const Words& words, Point a,
                             Point b, Vec out) {
  const bool long_enough = geometry::distance(a, b) > 2.0 * words.half_mm() + 5.0;
  const Vec up = words.above({}, true) - Point{};
  const bool out_is_up = geometry::dot(up, out) > 0.0;
  std::optional<Point> chosen;
  double least = std::numeric_limits<double>::infinity();
  int tries = 0;
  const auto consider = [&](Point p) {
    const Box box = boxOf(words.plate(p));
    ++tries;
    if (!holds(c.page, boxOf(words.at(p), voice)) || !c.labels.isFree(box)) return;
    const double cost = 2.0 * c.occupied.clashes(box) + 0.1 * tries;
    if (cost >= least) return;
    least = cost;
    chosen = p;
  };
  constexpr std::array kShares{0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82};
  for (double share : kShares) {
    if (long_enough) consider(geometry::lerp(a, b, share));
  }
  for (bool above : {!out_is_up, out_is_up}) {
    for (double share : kShares) consider(words.above(geometry::lerp(a, b, share), above));
  }
  // Past an end, where all along the line there are words.
  const Vec past = (words.half_mm() + 2.5) * unit(b - a);
  for (Point p : {b + past, a - past}) consider(p);
  return chosen;
}

void dimension(Sketch& sketch, PlanContext& c, Point a, Point b, Vec out, const std::string& text,
               const Voice& voice) {
  const Vec along = unit(b - a);
  sketch.line(a, b, solid(c.theme.ink2, 1.1));
  const Vec tick = 0.9 * unit(along + geometry::left(along));
  for (Point end : {a, b}) sketch.line(end - tick, end + tick, solid(c.theme.ink, 1.3));
  const Words words(text, along, c.theme.ink, voice);
  const auto middle = placeOf(c, voice, words, a, b, out);
  if (!middle) return;
  sketch.fill(words.plate(*middle), c.theme.paper);
  const Text t = words.at(*middle);
  sketch.text(t.at, t.text, t.font, t.colour, t.align, t.turn_deg);
  c.labels.take(boxOf(words.plate(*middle)));
}

struct MeasuredSide {
  Point a;  ///< on the house, page
  Point b;
  Vec out;
};

/// Both ends of a side's dimension line: `off` beyond the farther end of the side.
std::pair<Point, Point> lineOf(const MeasuredSide& side) {
  const double reach = std::max(geometry::dot(side.a - Point{}, side.out),
                                geometry::dot(side.b - Point{}, side.out)) +
                       kOffWall_mm;
  const auto onLine = [&](Point p) {
    return p + (reach - geometry::dot(p - Point{}, side.out)) * side.out;
  };
  return {onLine(side.a), onLine(side.b)};
}

void dimensionSide(Sketch& sketch, PlanContext& c, const MeasuredSide& side, const Voice& voice) {
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
std::vector<MeasuredSide> boxSides(const PageRing& ring) {
  const Box box = boxOf(ring.outside());
  std::vector<MeasuredSide> sides{{{box.left, box.bottom}, {box.right, box.bottom}, {0.0, 1.0}},
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
std::vector<MeasuredSide> longestSides(const PlanContext& c, const PageRing& ring) {
  std::vector<const PageEdge*> edges;
  for (const PageEdge& e : ring.edges) edges.push_back(&e);
  std::stable_sort(edges.begin(), edges.end(), [](const PageEdge* a, const PageEdge* b) {
    return a->length_mm > b->length_mm;
  });
  std::vector<MeasuredSide> sides;
  for (const PageEdge* e : edges) {
    const Point middle = e->at(e->length_mm / 2.0, kOffWall_mm);
    if (sides.size() < 4 && e->length_mm > 15.0 && !c.inHouse(middle) &&
        !c.inHouse(e->at(0.0, kOffWall_mm)) && !c.inHouse(e->at(e->length_mm, kOffWall_mm))) {
      sides.push_back({e->from, e->to, e->out});
    }
  }
  return sides;
}

std::vector<MeasuredSide> sidesOf(const PlanContext& c) {
  if (!c.view.overall_dimensions || c.rings.empty()) return {};
  const PageRing& outer = c.rings.front();
  return onAxes(outer) ? boxSides(outer) : longestSides(c, outer);
}

}  // namespace

std::vector<geometry::Segment> dimensionLines(const PlanContext& c) {
  std::vector<geometry::Segment> out;
  for (const MeasuredSide& side : sidesOf(c)) {
    const auto [a, b] = lineOf(side);
    const Vec start = (kBandFar_mm + 0.8) * side.out;
    out.push_back({a, b});
    out.push_back({side.a + start, a + 0.8 * side.out});
    out.push_back({side.b + start, b + 0.8 * side.out});
  }
  return out;
}

void paintOverallDimensions(Sketch& sketch, PlanContext& c, const Voice& voice) {
  sketch.tagged("dimension");
  for (const MeasuredSide& side : sidesOf(c)) dimensionSide(sketch, c, side, voice);
}

}  // namespace sumpwright::drawing
