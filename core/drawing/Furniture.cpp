// Grid, corner letters, north point and scale bar.

#include <array>
#include <cmath>
#include <numbers>
#include <utility>

#include "drawing/PlanContext.h"

namespace sumpwright::drawing {
namespace {

/// Steps of the grid, metres: so that neighbouring lines stay at least 3 mm apart.
double gridStep_m(double mm_per_m) {
  double step = 1.0;
  while (step * mm_per_m < 3.0) step *= 5.0;
  return step;
}

void gridLines(Sketch& sketch, const SheetContext& c, double step, const Colour& colour) {
  const Point low = toPlan(c.view, {0.0, c.view.height_mm});
  const Point high = toPlan(c.view, {c.view.width_mm, 0.0});
  for (double x = std::ceil(low.x / step) * step; x <= high.x; x += step) {
    const double px = c.at({x, 0.0}).x;
    sketch.line({px, 0.0}, {px, c.view.height_mm}, solid(colour, 1.0));
  }
  for (double y = std::ceil(low.y / step) * step; y <= high.y; y += step) {
    const double py = c.at({0.0, y}).y;
    sketch.line({0.0, py}, {c.view.width_mm, py}, solid(colour, 1.0));
  }
}

void northPoint(Sketch& sketch, const SheetContext& c, Point p, const Voice& voice) {
  const double turn = c.north_deg * std::numbers::pi / 180.0;
  const Vec up{std::sin(turn), -std::cos(turn)};  // clockwise from the drawing's up
  const Vec right{-up.y, up.x};
  sketch.circle(p, 3.7, solid(c.theme.ink2, 1.1));
  const Point tip = p + 6.0 * up;
  const Point tail = p - 1.8 * up;
  const std::vector<Point> dark{tip, p - 3.0 * up + 1.8 * right, tail};
  const std::vector<Point> light{tip, p - 3.0 * up - 1.8 * right, tail};
  sketch.fill(dark, c.theme.ink);
  sketch.fill(light, c.theme.paper);
  sketch.outline(light, solid(c.theme.ink, 1.1));
  const double cap = voice.capHeight_mm(type::letter);
  const Point letter = p + 7.6 * up;
  sketch.text({letter.x, letter.y + cap / 2.0}, voice.say(base::Message("drawing.north")),
              type::letter, c.theme.ink, HAlign::centre);
}

/// Five alternate pieces of a round length, in metres or feet, that come to 25 to 60 mm together.
double pieceLength(double mm_per_unit) {
  double piece = 1.0;
  for (double next : {2.0, 5.0, 10.0, 20.0, 50.0, 100.0}) {
    if (5.0 * piece * mm_per_unit < 22.0) piece = next;
  }
  for (double next : {0.5, 0.2, 0.1, 0.05, 0.02, 0.01}) {
    if (5.0 * piece * mm_per_unit > 60.0) piece = next;
  }
  return piece;
}

void scaleBar(Sketch& sketch, const SheetContext& c, Point left, const Voice& voice) {
  const double unit_mm = c.mm(voice.markedIn_m());
  const double length = pieceLength(unit_mm);
  const double piece = length * unit_mm;
  const double high = 5.0 * kPx;
  for (int i = 0; i < 5; ++i) {
    const auto bar = rectangle(left.x + i * piece, left.y, piece, high);
    sketch.fill(bar, i % 2 == 0 ? c.theme.ink : c.theme.paper);
  }
  sketch.outline(rectangle(left.x, left.y, 5.0 * piece, high), solid(c.theme.ink, 1.0));
  const auto figure = [&](double x, const base::Message& words) {
    sketch.text({x, left.y - 1.1}, voice.say(words), type::small, c.theme.ink, HAlign::centre);
  };
  figure(left.x, base::Message("drawing.scale.mark", {base::number("length", 0.0)}));
  figure(left.x + piece, base::Message("drawing.scale.mark", {base::number("length", length)}));
  figure(left.x + 5.0 * piece,
         base::Message(voice.inFeet() ? "drawing.scale.end-feet" : "drawing.scale.end",
                       {base::number("length", 5.0 * length)}));
}

/// Where a corner's letter may stand: further from the corner, aside; millimetres.
constexpr std::array<std::pair<double, double>, 9> kCornerTries = {{{0.0, 0.0},
                                                                    {0.0, 2.5},
                                                                    {0.0, -2.5},
                                                                    {2.5, 0.0},
                                                                    {2.5, 3.5},
                                                                    {2.5, -3.5},
                                                                    {5.0, 0.0},
                                                                    {5.0, 5.0},
                                                                    {5.0, -5.0}}};

}  // namespace

void paintGrid(Sketch& sketch, const SheetContext& c) {
  if (!c.view.grid) return;
  sketch.tagged("grid");
  const double step = gridStep_m(c.view.mm_per_m);
  gridLines(sketch, c, step, c.theme.grid1);
  gridLines(sketch, c, 5.0 * step, c.theme.grid5);
}

void paintCornerLetters(Sketch& sketch, PlanContext& c, const Voice& voice) {
  if (c.view.mm_per_m < kNameScale) return;
  const double cap = voice.capHeight_mm(type::letter);
  for (const PageRing& ring : c.rings) {
    for (std::size_t i = 0; i < ring.edges.size(); ++i) {
      const PageEdge& after = ring.edges[i];
      const PageEdge& before = ring.edges[(i + ring.edges.size() - 1) % ring.edges.size()];
      if (std::abs(geometry::cross(before.along, after.along)) < 0.15)
        continue;  // no corner to see
      const Vec out = unit(before.out + after.out);
      // Where the corner stands in, the letter stands inside, clear of both walls.
      const bool stands_out = geometry::cross(before.along, after.along) < 0.0;  // y down
      const double thick = std::max(before.thick_mm, after.thick_mm);
      const Point usual =
          stands_out ? after.from + 7.2 * out : after.from - (1.5 * thick + 2.6) * out;
      const std::string letter = c.study.perimeter().cornerLetter(ring.ring, after.edge->edge);
      sketch.tagged("corner " + letter);
      for (const auto& [further, aside] : kCornerTries) {
        const Point p =
            usual + (stands_out ? further : -further) * out + aside * geometry::left(out);
        const Text text{{p.x, p.y + cap / 2.0}, letter,         type::letter,
                        c.theme.ink3,           HAlign::centre, 0.0};
        const Box box = grown(boxOf(text, voice), 0.4);
        if (!c.occupied.isFree(box) || !c.labels.isFree(box) || !c.dimensions.isFree(box) ||
            !holds(c.page, box)) {
          continue;
        }
        sketch.text(text.at, text.text, text.font, text.colour, text.align);
        c.occupied.take(box);
        c.labels.take(box);  // no name of a room over it, however small the plan
        break;
      }
    }
  }
}

void paintFurniture(Sketch& sketch, const SheetContext& c, const Voice& voice) {
  if (!c.view.furniture) return;
  northPoint(sketch.tagged("north"), c, {9.0, 11.5}, voice);
  scaleBar(sketch.tagged("scale"), c, {20.5, 12.0}, voice);
}

}  // namespace sumpwright::drawing
