#include "drawing/Sketch.h"

#include <cmath>
#include <numbers>
#include <utility>

namespace sumpwright::drawing {

Pen solid(const Colour& colour, double width_px) {
  Pen pen;
  pen.colour = colour;
  pen.width_mm = width_px * kPx;
  return pen;
}

Pen dashed(const Colour& colour, double width_px, std::vector<double> dash_px) {
  Pen pen = solid(colour, width_px);
  for (double& part : dash_px) part *= kPx;
  pen.dash_mm = std::move(dash_px);
  return pen;
}

double leading_mm(const Font& font) { return 1.35 * font.size_pt * 25.4 / 72.0; }

Sketch& Sketch::tagged(std::string tag) {
  m_tag = std::move(tag);
  return *this;
}

void Sketch::add(Shape shape) { m_list.items.push_back({std::move(shape), m_tag}); }

void Sketch::line(Point a, Point b, const Pen& pen) { add(Stroke{{a, b}, false, pen}); }

void Sketch::path(std::vector<Point> points, const Pen& pen) {
  if (points.size() >= 2) add(Stroke{std::move(points), false, pen});
}

void Sketch::outline(std::vector<Point> points, const Pen& pen) {
  if (points.size() >= 2) add(Stroke{std::move(points), true, pen});
}

void Sketch::fill(std::vector<Point> ring, const Colour& colour) {
  if (ring.size() >= 3) add(Fill{{std::move(ring)}, colour});
}

void Sketch::fill(std::vector<std::vector<Point>> rings, const Colour& colour) {
  if (!rings.empty()) add(Fill{std::move(rings), colour});
}

void Sketch::circle(Point centre, double radius_mm, const Pen& pen) {
  add(Arc{centre, radius_mm, 0.0, 360.0, pen, false, {}});
}

void Sketch::disc(Point centre, double radius_mm, const Colour& colour) {
  Pen none;
  none.width_mm = 0.0;
  add(Arc{centre, radius_mm, 0.0, 360.0, none, true, colour});
}

void Sketch::ring(Point centre, double radius_mm, const Pen& pen, const Colour& inside) {
  add(Arc{centre, radius_mm, 0.0, 360.0, pen, true, inside});
}

void Sketch::arc(Point centre, double radius_mm, double start_deg, double sweep_deg,
                 const Pen& pen) {
  add(Arc{centre, radius_mm, start_deg, sweep_deg, pen, false, {}});
}

void Sketch::text(Point at, std::string words, const Font& font, const Colour& colour, HAlign align,
                  double turn_deg) {
  if (!words.empty()) add(Text{at, std::move(words), font, colour, align, turn_deg});
}

std::vector<Point> rectangle(double x, double y, double width, double height) {
  return {{x, y}, {x + width, y}, {x + width, y + height}, {x, y + height}};
}

std::vector<Point> roundedRectangle(double x, double y, double width, double height,
                                    double radius) {
  std::vector<Point> out;
  const Point centres[] = {{x + width - radius, y + radius},
                           {x + radius, y + radius},
                           {x + radius, y + height - radius},
                           {x + width - radius, y + height - radius}};
  for (int quarter = 0; quarter < 4; ++quarter) {
    const auto points = arcPoints(centres[quarter], radius, 90.0 * quarter, 90.0);
    out.insert(out.end(), points.begin(), points.end());
  }
  return out;
}

std::vector<Point> arcPoints(Point centre, double radius, double start_deg, double sweep_deg) {
  // Steps fine enough that the chord leaves the arc by under 0.02 mm.
  const double step_deg =
      radius > 0.02 ? std::min(30.0, 2.0 * std::acos(1.0 - 0.02 / std::max(radius, 0.04)) * 180.0 /
                                         std::numbers::pi)
                    : 90.0;
  const int steps = std::max(1, static_cast<int>(std::ceil(std::abs(sweep_deg) / step_deg)));
  std::vector<Point> out;
  for (int i = 0; i <= steps; ++i) {
    const double angle = (start_deg + sweep_deg * i / steps) * std::numbers::pi / 180.0;
    out.push_back({centre.x + radius * std::cos(angle), centre.y - radius * std::sin(angle)});
  }
  return out;
}

std::vector<Point> bezier(Point a, Point b, Point c, Point d) {
  constexpr int kSteps = 8;
  std::vector<Point> out;
  for (int i = 0; i <= kSteps; ++i) {
    const double t = static_cast<double>(i) / kSteps;
    const double u = 1.0 - t;
    const double wa = u * u * u;
    const double wb = 3.0 * u * u * t;
    const double wc = 3.0 * u * t * t;
    const double wd = t * t * t;
    out.push_back(
        {wa * a.x + wb * b.x + wc * c.x + wd * d.x, wa * a.y + wb * b.y + wc * c.y + wd * d.y});
  }
  return out;
}

Vec unit(Vec v) {
  const double length = geometry::norm(v);
  return length > 0.0 ? (1.0 / length) * v : Vec{1.0, 0.0};
}

}  // namespace sumpwright::drawing
