#include "drawing/Box.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace sumpwright::drawing {
namespace {

constexpr double kDescender = 0.30;  // of the cap height, B612 and DejaVu alike (measured)

struct Bounds {
  const Voice& voice;
  Box operator()(const Stroke& s) const { return grown(boxOf(s.points), s.pen.width_mm / 2.0); }
  Box operator()(const Fill& f) const {
    std::vector<Point> all;
    for (const auto& ring : f.rings) all.insert(all.end(), ring.begin(), ring.end());
    return boxOf(all);
  }
  Box operator()(const Arc& a) const {
    const double r = a.radius_mm + a.pen.width_mm / 2.0;
    return around(a.centre, r, r);
  }
  Box operator()(const Text& t) const { return boxOf(t, voice); }
};

}  // namespace

Box around(Point centre, double half_width, double half_height) {
  return {centre.x - half_width, centre.y - half_height, centre.x + half_width,
          centre.y + half_height};
}

Box grown(const Box& box, double by) {
  return {box.left - by, box.top - by, box.right + by, box.bottom + by};
}

Box join(const Box& a, const Box& b) {
  return {std::min(a.left, b.left), std::min(a.top, b.top), std::max(a.right, b.right),
          std::max(a.bottom, b.bottom)};
}

bool overlap(const Box& a, const Box& b) {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

bool holds(const Box& outer, const Box& inner) {
  return outer.left <= inner.left && inner.right <= outer.right && outer.top <= inner.top &&
         inner.bottom <= outer.bottom;
}

bool holds(const Box& box, Point p) {
  return box.left <= p.x && p.x <= box.right && box.top <= p.y && p.y <= box.bottom;
}

Box boxOf(const std::vector<Point>& points) {
  constexpr double kFar = std::numeric_limits<double>::infinity();
  Box box{kFar, kFar, -kFar, -kFar};
  for (const Point& p : points) box = join(box, {p.x, p.y, p.x, p.y});
  return box;
}

Box boxOf(const Text& text, const Voice& voice) {
  const double width = voice.width_mm(text.text, text.font);
  const double cap = voice.capHeight_mm(text.font);
  const double left = text.align == HAlign::left     ? 0.0
                      : text.align == HAlign::centre ? -width / 2.0
                                                     : -width;
  const double turn = text.turn_deg * std::numbers::pi / 180.0;
  std::vector<Point> corners;
  for (const Point& p : {Point{left, -cap}, Point{left + width, -cap},
                         Point{left + width, kDescender * cap}, Point{left, kDescender * cap}}) {
    corners.push_back({text.at.x + p.x * std::cos(turn) + p.y * std::sin(turn),
                       text.at.y - p.x * std::sin(turn) + p.y * std::cos(turn)});
  }
  return boxOf(corners);
}

Box boxOf(const Shape& shape, const Voice& voice) { return std::visit(Bounds{voice}, shape); }

std::vector<Box> wordsOf(const DrawList& list, const Voice& voice) {
  std::vector<Box> boxes;
  for (const Item& item : list.items) {
    if (std::holds_alternative<Text>(item.shape)) boxes.push_back(boxOf(item.shape, voice));
  }
  return boxes;
}

bool crosses(const Box& box, Point a, Point b) {
  double from = 0.0;
  double to = 1.0;
  const auto cut = [&](double start, double step, double low, double high) {
    if (step == 0.0) return low < start && start < high;
    double t0 = (low - start) / step;
    double t1 = (high - start) / step;
    if (t0 > t1) std::swap(t0, t1);
    from = std::max(from, t0);
    to = std::min(to, t1);
    return from < to;
  };
  return cut(a.x, b.x - a.x, box.left, box.right) && cut(a.y, b.y - a.y, box.top, box.bottom);
}

void Occupied::takeLine(Point a, Point b) {
  // As a chain of small boxes, so that a slant line does not take its whole bounding box.
  const double length = geometry::distance(a, b);
  const int steps = std::max(1, static_cast<int>(std::ceil(length / 1.5)));
  for (int i = 0; i < steps; ++i) {
    const Point p = geometry::lerp(a, b, static_cast<double>(i) / steps);
    const Point q = geometry::lerp(a, b, static_cast<double>(i + 1) / steps);
    take(grown(boxOf({p, q}), 0.25));
  }
}

bool Occupied::isFree(const Box& box) const { return clashes(box) == 0; }

int Occupied::clashes(const Box& box) const {
  return static_cast<int>(std::count_if(m_boxes.begin(), m_boxes.end(),
                                        [&](const Box& taken) { return overlap(taken, box); }));
}

}  // namespace sumpwright::drawing
