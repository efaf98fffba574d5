#include "drawing/Signs.h"

namespace sumpwright::drawing {
namespace {

/// Places a sign's own coordinates (px at scale 1) on the page.
struct Local {
  Point centre;
  double scale;
  Point operator()(double x, double y) const {
    return {centre.x + x * scale * kPx, centre.y + y * scale * kPx};
  }
};

Pen roundPen(const Colour& colour, double width_px) {
  Pen pen = solid(colour, width_px);
  pen.cap = Cap::round;
  return pen;
}

void append(std::vector<Point>& to, const std::vector<Point>& more) {
  to.insert(to.end(), more.begin(), more.end());
}

std::vector<Point> drop(const Local& at) {
  std::vector<Point> out = bezier(at(0, -8.6), at(2.0, -4.0), at(4.6, -3.0), at(4.6, 0.0));
  append(out, arcPoints(at(0, 0), 4.6 * at.scale * kPx, 360.0, -180.0));
  append(out, bezier(at(-4.6, 0.0), at(-4.6, -3.0), at(-2.0, -4.0), at(0, -8.6)));
  return out;
}

std::vector<Point> wave(const Local& at, double y) {
  std::vector<Point> out = bezier(at(-6, y), at(-4, y - 2.8), at(-2, y - 2.8), at(0, y));
  append(out, bezier(at(0, y), at(2, y + 2.8), at(4, y + 2.8), at(6, y)));
  return out;
}

std::vector<Point> strand(const Local& at, double way) {
  std::vector<Point> out = bezier(at(-6, -3 * way), at(-3, -3 * way), at(-3, 3 * way), at(0, 0));
  append(out, bezier(at(0, 0), at(3, -3 * way), at(3, -3.9 * way), at(6, -3 * way)));
  return out;
}

void bars(Sketch& sketch, const Local& at, const Colour& colour, std::initializer_list<double> xs) {
  sketch.outline({at(-5, -5), at(5, -5), at(5, 5), at(-5, 5)}, solid(colour, 1.7 * at.scale));
  for (double x : xs) sketch.line(at(x, -5), at(x, 5), solid(colour, 1.7 * at.scale));
}

void questionMark(Sketch& sketch, const Local& at, const Colour& colour, double width_px) {
  std::vector<Point> hook = arcPoints(at(0, -2.1), 2.3 * at.scale * kPx, 180.0, -215.0);
  append(hook, {at(0.1, 0.6), at(0, 1.7)});
  sketch.path(hook, roundPen(colour, width_px * at.scale));
  sketch.disc(at(0, 4.3), 0.66 * width_px * at.scale * kPx, colour);
}

}  // namespace

void stateSign(Sketch& sketch, const Theme& theme, rules::State state, Point centre,
               double size_mm) {
  const Local at{centre, size_mm / (18.0 * kPx)};  // drawn on 18 px
  const Colour colour = theme.of(state).band;
  const Pen stroke = roundPen(theme.paper, 1.9 * at.scale);
  switch (state) {
    case rules::State::clear:
      sketch.disc(centre, size_mm / 2.0, colour);
      sketch.path({at(-4.1, 0.2), at(-1.1, 3.4), at(4.3, -3.0)}, stroke);
      break;
    case rules::State::advised_against: {
      const std::vector<Point> triangle{at(0, -8.8), at(9.8, 8.4), at(-9.8, 8.4)};
      sketch.fill(triangle, colour);
      sketch.outline(triangle, roundPen(colour, 1.4 * at.scale));
      const Colour dark = theme.paper.r < 128 ? theme.paper : theme.ink;
      sketch.line(at(0, -2.8), at(0, 2.6), roundPen(dark, 2.0 * at.scale));
      sketch.disc(at(0, 5.7), 1.2 * at.scale * kPx, dark);
      break;
    }
    case rules::State::not_proven:
      sketch.fill({at(0, -10.4), at(10.4, 0), at(0, 10.4), at(-10.4, 0)}, colour);
      questionMark(sketch, at, theme.paper, 1.9);
      break;
    case rules::State::refused:
      sketch.fill(roundedRectangle(centre.x - size_mm / 2.0, centre.y - size_mm / 2.0, size_mm,
                                   size_mm, 2.0 * at.scale * kPx),
                  colour);
      sketch.line(at(-3.6, -3.6), at(3.6, 3.6), stroke);
      sketch.line(at(-3.6, 3.6), at(3.6, -3.6), stroke);
      break;
  }
}

void serviceSign(Sketch& sketch, plan::ServiceKind kind, const Colour& colour, Point centre,
                 double scale) {
  const Local at{centre, scale};
  const Pen pen = roundPen(colour, 1.7 * scale);
  switch (kind) {
    case plan::ServiceKind::electricity:
      sketch.path({at(1.8, -6.2), at(-3.6, 1.0), at(3.0, -0.6), at(-1.8, 6.2)}, pen);
      break;
    case plan::ServiceKind::gas:
      sketch.outline(drop({at(0, 1.8), scale}), pen);
      break;
    case plan::ServiceKind::oil:
      sketch.fill(drop({at(0, 1.8), scale}), colour);
      break;
    case plan::ServiceKind::water:
      sketch.path(wave(at, -2.4), pen);
      sketch.path(wave(at, 2.4), pen);
      break;
    case plan::ServiceKind::telecom:
      sketch.path(strand(at, 1.0), pen);
      sketch.path(strand(at, -1.0), pen);
      break;
    case plan::ServiceKind::drain:
      bars(sketch, at, colour, {-1.7, 1.7});
      break;
    case plan::ServiceKind::waste:
      bars(sketch, at, colour, {0.0});
      break;
  }
}

void servicePlate(Sketch& sketch, const Theme& theme, plan::ServiceKind kind, Point centre,
                  double scale) {
  const Colour colour = theme.service(kind);
  const double half = kPlateHalf_mm * scale;
  const auto plate =
      roundedRectangle(centre.x - half, centre.y - half, 2 * half, 2 * half, 4 * kPx * scale);
  sketch.fill(plate, theme.paper);
  sketch.outline(plate, solid(colour, 2.0 * scale));
  serviceSign(sketch, kind, colour, centre, scale);
}

}  // namespace sumpwright::drawing
