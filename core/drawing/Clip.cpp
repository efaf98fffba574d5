#include "drawing/Clip.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "drawing/Sketch.h"

namespace sumpwright::drawing {
namespace {

struct HalfPlane {
  Point at;
  Vec inward;
  double depth(Point p) const { return geometry::dot(p - at, inward); }
};

std::vector<HalfPlane> sidesOf(const Box& b) {
  return {{{b.left, b.top}, {1.0, 0.0}},
          {{b.right, b.top}, {-1.0, 0.0}},
          {{b.left, b.top}, {0.0, 1.0}},
          {{b.left, b.bottom}, {0.0, -1.0}}};
}

std::vector<Point> cut(const std::vector<Point>& polygon, const HalfPlane& side) {
  std::vector<Point> out;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point a = polygon[i];
    const Point b = polygon[(i + 1) % polygon.size()];
    const double da = side.depth(a);
    const double db = side.depth(b);
    if (da >= 0.0) out.push_back(a);
    if ((da < 0.0) != (db < 0.0)) out.push_back(geometry::lerp(a, b, da / (da - db)));
  }
  return out;
}

/// The part [from, to] of a-b inside the box, as shares of its length.
std::optional<std::pair<double, double>> inside(Point a, Point b, const Box& box) {
  double from = 0.0;
  double to = 1.0;
  for (const HalfPlane& side : sidesOf(box)) {
    const double da = side.depth(a);
    const double db = side.depth(b);
    if (da < 0.0 && db < 0.0) return std::nullopt;
    if (da < 0.0) from = std::max(from, da / (da - db));
    if (db < 0.0) to = std::min(to, da / (da - db));
  }
  if (from > to) return std::nullopt;
  return std::pair{from, to};
}

class Cutter {
 public:
  Cutter(DrawList& out, const Box& box, const Voice& voice)
      : m_out(out), m_box(box), m_voice(voice) {}

  void item(const Item& item) {
    m_tag = item.tag;
    const Box bounds = boxOf(item.shape, m_voice);
    if (holds(m_box, bounds)) {
      m_out.items.push_back(item);
    } else if (overlap(m_box, grown(bounds, 1e-6))) {
      std::visit(*this, item.shape);
    }
  }

  void operator()(const Text&) {}  // half a word says nothing

  void operator()(const Fill& fill) {
    Fill kept{{}, fill.colour};
    for (const auto& ring : fill.rings) {
      auto part = clipped(ring, m_box);
      if (part.size() >= 3) kept.rings.push_back(std::move(part));
    }
    if (!kept.rings.empty()) add(std::move(kept));
  }

  void operator()(const Arc& arc) {
    const auto points = arcPoints(arc.centre, arc.radius_mm, arc.start_deg, arc.sweep_deg);
    if (arc.filled) (*this)(Fill{{points}, arc.fill});
    if (arc.pen.width_mm > 0.0) (*this)(Stroke{points, false, arc.pen});
  }

  void operator()(const Stroke& stroke) {
    std::vector<Point> points = stroke.points;
    if (stroke.closed && !points.empty()) points.push_back(points.front());
    // The ends' own thickness stays in the box as well.
    const Box box = grown(m_box, -stroke.pen.width_mm / 2.0);
    std::vector<Point> run;
    double run_start = 0.0;
    double walked = 0.0;
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
      const Point a = points[i];
      const Point b = points[i + 1];
      const double length = geometry::distance(a, b);
      if (const auto part = inside(a, b, box)) {
        if (run.empty() || part->first > 0.0) {
          flush(stroke, run, run_start);
          run.push_back(geometry::lerp(a, b, part->first));
          run_start = walked + part->first * length;
        }
        run.push_back(geometry::lerp(a, b, part->second));
        if (part->second < 1.0) flush(stroke, run, run_start);
      } else {
        flush(stroke, run, run_start);
      }
      walked += length;
    }
    flush(stroke, run, run_start);
  }

 private:
  void add(Shape shape) { m_out.items.push_back({std::move(shape), m_tag}); }

  void flush(const Stroke& from, std::vector<Point>& run, double start_mm) {
    if (run.size() >= 2) {
      Stroke part{std::move(run), false, from.pen};
      double pattern = 0.0;
      for (double dash : part.pen.dash_mm) pattern += dash;
      if (pattern > 0.0) {
        part.pen.dash_offset_mm = std::fmod(part.pen.dash_offset_mm + start_mm, pattern);
      }
      add(std::move(part));
    }
    run.clear();
  }

  DrawList& m_out;
  Box m_box;
  const Voice& m_voice;
  std::string m_tag;
};

}  // namespace

std::vector<Point> clipped(const std::vector<Point>& polygon, const Box& box) {
  std::vector<Point> out = polygon;
  for (const HalfPlane& side : sidesOf(box)) out = cut(out, side);
  return out;
}

DrawList clipped(const DrawList& list, const Box& box, const Voice& voice) {
  DrawList out{list.width_mm, list.height_mm, {}};
  Cutter cutter(out, box, voice);
  for (const Item& item : list.items) cutter.item(item);
  return out;
}

}  // namespace sumpwright::drawing
