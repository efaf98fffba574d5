#include "drawing/TiedDimensions.h"

#include <cmath>
#include <numbers>

#include "plan/Dimensions.h"

namespace sumpwright::drawing {

namespace {

constexpr double kPast_mm = 1.0;     // own figures, all: extension lines run on past the line
constexpr double kOffFace_mm = 0.8;  // and keep off what they start at
constexpr double kTick_mm = 0.9;
constexpr double kShortest_mm = 0.5;  // a line this short on the page is a smudge

/// Degrees that make words along a line read from below or from the right.
double readingTurn(Vec along) {
  double turn = std::atan2(-along.y, along.x) * 180.0 / std::numbers::pi;
  if (turn > 90.0 + 1e-6) turn -= 180.0;
  if (turn <= -90.0 + 1e-6) turn += 180.0;
  return turn;
}

void placeWords(TiedDimension& d, const SheetContext& c, double length_m, const Voice& voice) {
  const Vec along = unit(d.line.b - d.line.a);
  const double turn = readingTurn(along);
  const double angle = turn * std::numbers::pi / 180.0;
  const Vec up{-std::sin(angle), -std::cos(angle)};
  const Vec right{-up.y, up.x};
  d.words = {{},
             voice.say(base::Message("drawing.outline.length", {base::metres("length", length_m)})),
             type::body,
             c.theme.ink,
             HAlign::centre,
             turn};
  const double half = voice.width_mm(d.words.text, d.words.font) / 2.0;
  const double cap = voice.capHeight_mm(d.words.font);
  Point middle = geometry::lerp(d.line.a, d.line.b, 0.5);
  // Too short to hold its words: they stand above it.
  if (geometry::distance(d.line.a, d.line.b) < 2.0 * half + 4.0) middle = middle + 1.2 * cap * up;
  d.words.at = middle - (cap / 2.0) * up;
  const Vec r = (half + 0.8) * right;
  const Vec u = (cap / 2.0 + 0.5) * up;
  d.plate = {middle - r - u, middle + r - u, middle + r + u, middle - r + u};
}

/// From what is measured to the line, and a little past it.
void extensionTo(Sketch& sketch, Point from, Point to, const Pen& pen) {
  if (geometry::distance(from, to) <= kOffFace_mm) return;
  const Vec way = unit(to - from);
  sketch.line(from + kOffFace_mm * way, to + kPast_mm * way, pen);
}

}  // namespace

std::vector<TiedDimension> tiedDimensions(const SheetContext& c, const plan::Job& job,
                                          const Voice& voice) {
  std::vector<TiedDimension> all;
  for (const plan::Dimension& dimension : job.plan.dimensions) {
    const auto line = plan::lineOf(job, dimension);
    if (!line) continue;
    TiedDimension d;
    d.dimension = &dimension;
    d.line = {c.at(line->a), c.at(line->b)};
    if (geometry::distance(d.line.a, d.line.b) < kShortest_mm) continue;
    d.measured = {c.at(*plan::placeOf(job, dimension.from)),
                  c.at(*plan::placeOf(job, dimension.to))};
    placeWords(d, c, geometry::distance(line->a, line->b), voice);
    all.push_back(std::move(d));
  }
  return all;
}

void paintTiedDimensions(Sketch& sketch, const SheetContext& c,
                         const std::vector<TiedDimension>& dimensions) {
  for (const TiedDimension& d : dimensions) {
    const bool chosen = d.dimension->id == c.view.selected;
    const Colour& ink = chosen ? c.theme.selection : c.theme.ink2;
    const Vec along = unit(d.line.b - d.line.a);
    const Vec tick = kTick_mm * unit(along + geometry::left(along));
    sketch.tagged(d.dimension->id);
    extensionTo(sketch, d.measured.a, d.line.a, solid(ink, 0.8));
    extensionTo(sketch, d.measured.b, d.line.b, solid(ink, 0.8));
    sketch.line(d.line.a, d.line.b, solid(ink, chosen ? 2.4 : 1.1));
    for (const Point end : {d.line.a, d.line.b}) {
      sketch.line(end - tick, end + tick, solid(chosen ? ink : c.theme.ink, 1.3));
    }
    sketch.fill(d.plate, c.theme.paper);
    sketch.text(d.words.at, d.words.text, d.words.font, chosen ? ink : d.words.colour,
                d.words.align, d.words.turn_deg);
  }
}

}  // namespace sumpwright::drawing
