#include "drawing/Hatch.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "geometry/Distance.h"
#include "geometry/Shapes.h"

namespace sumpwright::drawing {
namespace {

using geometry::Vec;

constexpr double kShortestLine_mm = 0.05;  // shorter pieces are specks

struct HatchFrame {
  Vec along;
  Vec normal;
  Point at(double along_mm, double across_mm) const {
    return {along_mm * along.x + across_mm * normal.x, along_mm * along.y + across_mm * normal.y};
  }
};

HatchFrame hatchFrameOf(double angle_deg) {
  const double angle = angle_deg * std::numbers::pi / 180.0;
  const Vec along{std::cos(angle), -std::sin(angle)};  // y runs down the page
  return {along, geometry::left(along)};
}

double dotWith(Point p, Vec v) { return p.x * v.x + p.y * v.y; }

/// Where the line at `across` meets the rings, sorted along it.
std::vector<double> crossings(const std::vector<std::vector<Point>>& rings, const HatchFrame& frame,
                              double across) {
  std::vector<double> out;
  for (const auto& ring : rings) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const Point a = ring[i];
      const Point b = ring[(i + 1) % ring.size()];
      const double da = dotWith(a, frame.normal) - across;
      const double db = dotWith(b, frame.normal) - across;
      if ((da < 0.0) == (db < 0.0)) continue;  // half open: a corner counts once
      out.push_back(dotWith(geometry::lerp(a, b, da / (da - db)), frame.along));
    }
  }
  std::sort(out.begin(), out.end());
  return out;
}

}  // namespace

std::vector<geometry::Segment> hatch(const std::vector<std::vector<Point>>& rings,
                                     const HatchStyle& style) {
  std::vector<geometry::Segment> out;
  if (!(style.spacing_mm > 0.0)) return out;
  const HatchFrame frame = hatchFrameOf(style.angle_deg);
  double low = std::numeric_limits<double>::infinity();
  double high = -low;
  for (const auto& ring : rings) {
    for (const Point& p : ring) {
      low = std::min(low, dotWith(p, frame.normal));
      high = std::max(high, dotWith(p, frame.normal));
    }
  }
  for (double k = std::ceil(low / style.spacing_mm); k * style.spacing_mm <= high; k += 1.0) {
    const double across = k * style.spacing_mm;
    const std::vector<double> cuts = crossings(rings, frame, across);
    for (std::size_t i = 0; i + 1 < cuts.size(); i += 2) {
      if (cuts[i + 1] - cuts[i] < kShortestLine_mm) continue;
      out.push_back({frame.at(cuts[i], across), frame.at(cuts[i + 1], across)});
    }
  }
  return out;
}

std::vector<Point> dots(const std::vector<Point>& polygon, double spacing_mm, double inset_mm) {
  std::vector<Point> out;
  if (!(spacing_mm > 0.0)) return out;
  geometry::Polyline edge = polygon;
  if (!edge.empty()) edge.push_back(edge.front());
  for (const auto& line : hatch({polygon}, {45.0, spacing_mm})) {
    const Vec along = line.b - line.a;
    const double length = geometry::norm(along);
    const HatchFrame frame = hatchFrameOf(45.0);
    const double start = dotWith(line.a, frame.along);
    const double across = dotWith(line.a, frame.normal);
    for (double k = std::ceil(start / spacing_mm); k * spacing_mm <= start + length; k += 1.0) {
      const Point p = frame.at(k * spacing_mm, across);
      if (geometry::distance(p, edge) >= inset_mm) out.push_back(p);
    }
  }
  return out;
}

}  // namespace sumpwright::drawing
