// Where no outlet may be: hatched, with its exact edge dashed.

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include "build/RefusedZone.h"
#include "drawing/ElevationParts.h"
#include "drawing/Hatch.h"

namespace sumpwright::drawing {
namespace {

constexpr double kHatchEvery_mm = 9.0 * kPx;
/// Told apart without colour: dashes under the hatch, dots round what is only advised against.
const std::vector<double> kRefusedDash{5.0, 3.5};
const std::vector<double> kAdvisedDash{1.4, 2.6};

/// Zones overlap, and their hatches lie on the same lines: each line is drawn once.
class ZoneHatch {
 public:
  explicit ZoneHatch(double angle_deg, double every_mm) : m_style{angle_deg, every_mm} {}

  void add(const std::vector<Point>& area) {
    for (const auto& line : hatch({area}, m_style)) {
      const Vec along = unit(line.b - line.a);
      if (along.x < 0.0) {
        addLine({line.b, line.a});
      } else {
        addLine(line);
      }
    }
  }

  void paint(Sketch& sketch, const Pen& pen) const {
    for (const auto& [key, pieces] : m_lines) {
      for (const auto& piece : geometry::unite(pieces)) {
        const Point origin = m_origin.at(key);
        const Vec along = m_along.at(key);
        sketch.line(origin + piece.from * along, origin + piece.to * along, pen);
      }
    }
  }

 private:
  void addLine(const geometry::Segment& line) {
    const Vec along = unit(line.b - line.a);
    const double across = geometry::cross(along, Vec{line.a.x, line.a.y});
    const auto key = static_cast<long>(std::llround(across / (0.25 * m_style.spacing_mm)));
    const auto [at, fresh] = m_origin.emplace(key, line.a);
    if (fresh) m_along.emplace(key, along);
    const Vec dir = m_along.at(key);
    const double from = geometry::dot(line.a - at->second, dir);
    const double to = geometry::dot(line.b - at->second, dir);
    m_lines[key].push_back({from, to});
  }

  HatchStyle m_style;
  std::map<long, geometry::Intervals> m_lines;
  std::map<long, Point> m_origin;
  std::map<long, Vec> m_along;
};

/// Over the soil, up to the top of the picture.
geometry::Interval zoneWindow(const ElevationContext& c) {
  return {c.bottom_m, c.view.top_m + (c.view.head_mm > 8.0 ? 2.0 / c.view.mm_per_m : 0.0)};
}

struct EdgeZone {
  const perimeter::Edge& edge;
  rules::Weight weight;
  std::vector<build::ZoneOutline> outlines;
};

EdgeZone zoneAlong(const ElevationContext& c, const perimeter::Edge& e, rules::Weight weight) {
  const auto window = zoneWindow(c);
  const double tolerance = std::clamp(0.05 / c.view.mm_per_m, 0.001, 0.01);
  return {e, weight,
          build::zoneOutlines(c.study.site(), e, weight, window.from, window.to, tolerance)};
}

void paintEdge(Sketch& sketch, const ElevationContext& c, const EdgeZone& zone, const Pen& pen) {
  const auto window = zoneWindow(c);
  for (const auto& piece : build::zoneEdge(c.study.site(), zone.edge, zone.weight, window.from,
                                           window.to, zone.outlines)) {
    std::vector<Point> line;
    for (const Point& p : piece) line.push_back({c.x(zone.edge.ring, p.x), c.y(p.y)});
    sketch.path(std::move(line), pen);
  }
}

void hatchOf(const ElevationContext& c, const EdgeZone& zone, ZoneHatch& lines) {
  for (const build::ZoneOutline& outline : zone.outlines) {
    std::vector<Point> area;
    for (const Point& p : outline.outline) {
      area.push_back({c.x(zone.edge.ring, p.x), c.y(p.y)});
    }
    lines.add(area);
  }
}

void legend(Sketch& sketch, const ElevationContext& c, bool advised) {
  if (c.view.head_mm < 5.0) return;
  const double middle = 2.4;
  const double cap = c.voice.capHeight_mm(type::small);
  double x = c.view.label_mm;
  const auto entry = [&](const char* id, const Colour& colour, bool hatched,
                         const std::vector<double>& dash) {
    const auto box = rectangle(x, middle - 1.5, 7.0, 3.0);
    if (hatched) {
      for (const auto& line : hatch({box}, {-45.0, 1.6})) {
        sketch.line(line.a, line.b, solid(colour, 1.0));
      }
    }
    sketch.outline(box, dashed(colour, 1.3, dash));
    const std::string words = c.voice.say(base::Message(id));
    sketch.text({x + 8.6, middle + cap / 2.0}, words, type::small, c.theme.ink2);
    x += 8.6 + c.voice.width_mm(words, type::small) + 6.0;
  };
  entry("drawing.elevation.zone", c.theme.refused.band, true, kRefusedDash);
  if (advised) entry("drawing.elevation.zone-advised", c.theme.advised.band, false, kAdvisedDash);
}

}  // namespace

void paintZone(Sketch& sketch, const ElevationContext& c) {
  if (c.view.strip) return;
  std::vector<EdgeZone> refused;
  std::vector<EdgeZone> advised;
  for (int r = 0; r < c.study.perimeter().ringCount(); ++r) {
    for (const perimeter::Edge& e : c.study.perimeter().edges(r)) {
      if (!c.sees(e)) continue;
      refused.push_back(zoneAlong(c, e, rules::Weight::binding));
      advised.push_back(zoneAlong(c, e, rules::Weight::advisory));
    }
  }
  sketch.tagged("zone");
  ZoneHatch lines(-45.0, kHatchEvery_mm);
  for (const EdgeZone& zone : refused) hatchOf(c, zone, lines);
  Colour faint = c.theme.refused.band;
  faint.a = 190;
  lines.paint(sketch, solid(faint, 0.9));
  bool any = false;
  for (const EdgeZone& zone : advised) {
    any = any || !zone.outlines.empty();
    paintEdge(sketch, c, zone, dashed(c.theme.advised.band, 1.3, kAdvisedDash));
  }
  for (const EdgeZone& zone : refused) {
    paintEdge(sketch, c, zone, dashed(c.theme.refused.band, 1.4, kRefusedDash));
  }
  sketch.tagged("legend");
  legend(sketch, c, any);
}

}  // namespace sumpwright::drawing
