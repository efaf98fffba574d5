#include "files/import/DxfOutline.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include "files/import/LineJoin.h"

namespace sumpwright::files {

namespace {

using geometry::Point;
using geometry::Polyline;
using geometry::Vec;

/// Chords of one arc; a full circle of 100 m at 1 mm takes 350.
constexpr double kMostChords = 512;

/// Corners between a and b on the arc whose quarter angle has the tangent `bulge`.
void addArc(Polyline& line, Point a, Point b, double bulge, double sagitta_m) {
  const Vec chord = b - a;
  const double length = norm(chord);
  if (length <= 0 || bulge == 0.0) return;
  const double angle = 4 * std::atan(bulge);
  // Radius and centre from the chord: r = c (1 + k^2) / 4|k|, and the centre lies
  // c (1 - k^2) / 4k to the left of its middle (derived).
  const double radius = length * (1 + bulge * bulge) / (4 * std::abs(bulge));
  if (!std::isfinite(radius)) return;
  const Vec to_centre = ((1 - bulge * bulge) / (4 * bulge)) * geometry::left(chord);
  const Point centre = geometry::lerp(a, b, 0.5) + to_centre;
  // A chord over the angle t leaves its arc by r (1 - cos(t/2)); at least 8 to the circle.
  const double widest = 2 * std::acos(std::clamp(1 - sagitta_m / radius, -1.0, 1.0));
  const double step = std::min(widest, std::numbers::pi / 4);
  // Not before the arc is that deep: a bulge of a hair is a straight side.
  if (length * std::abs(bulge) / 2 <= sagitta_m) return;
  const double chords = std::min(std::ceil(std::abs(angle) / step), kMostChords);
  const Vec start = a - centre;
  for (double i = 1; i < chords; ++i) {
    const double turn = angle * i / chords;
    line.push_back(centre + std::cos(turn) * start + std::sin(turn) * geometry::left(start));
  }
}

/// In metres from the origin, arcs as chords. A closed path does not repeat its first corner.
Polyline flattened(const DxfPath& path, const DxfChoice& choice, Point origin) {
  const auto place = [&](const DxfVertex& v) {
    return Point{v.at.x * choice.metres_per_unit - origin.x,
                 v.at.y * choice.metres_per_unit - origin.y};
  };
  Polyline line;
  for (std::size_t i = 0; i < path.vertices.size(); ++i) {
    line.push_back(place(path.vertices[i]));
    if (i + 1 == path.vertices.size() && !path.closed) break;
    const DxfVertex& next = path.vertices[(i + 1) % path.vertices.size()];
    addArc(line, line.back(), place(next), path.vertices[i].bulge, choice.sagitta_m);
  }
  return line;
}

bool chosen(const DxfPath& path, const DxfChoice& choice) {
  return choice.layers.empty() ||
         std::find(choice.layers.begin(), choice.layers.end(), path.layer) != choice.layers.end();
}

/// Where most of what was chosen lies: the median, which a stray line far off does not move.
Point middleOfChosen(const DxfDrawing& drawing, const DxfChoice& choice) {
  std::vector<double> xs;
  std::vector<double> ys;
  for (const DxfPath& path : drawing.paths) {
    if (!chosen(path, choice)) continue;
    for (const DxfVertex& v : path.vertices) {
      xs.push_back(v.at.x);
      ys.push_back(v.at.y);
    }
  }
  if (xs.empty()) return {};
  const auto middle = static_cast<std::ptrdiff_t>(xs.size() / 2);
  std::nth_element(xs.begin(), xs.begin() + middle, xs.end());
  std::nth_element(ys.begin(), ys.begin() + middle, ys.end());
  return {std::floor(xs[xs.size() / 2] * choice.metres_per_unit),
          std::floor(ys[ys.size() / 2] * choice.metres_per_unit)};
}

bool usable(const DxfChoice& choice) {
  for (const double figure : {choice.metres_per_unit, choice.join_m, choice.sagitta_m}) {
    if (!std::isfinite(figure) || figure <= 0) return false;
  }
  return true;
}

}  // namespace

base::Result<ImportedOutlines> outlinesOf(const DxfDrawing& drawing, const DxfChoice& choice) {
  if (!usable(choice)) {
    return base::Problem{base::Message("import.choice"), "", base::Gravity::unreadable};
  }
  const Point middle = middleOfChosen(drawing, choice);
  OutlineList list;
  std::map<std::string, std::vector<geometry::Segment>> open_sides;
  for (const DxfPath& path : drawing.paths) {
    if (!chosen(path, choice)) continue;
    const Polyline line = flattened(path, choice, middle);
    if (path.closed) {
      list.add(line, {}, path.layer);
      continue;
    }
    auto& sides = open_sides[path.layer];
    for (std::size_t i = 1; i < line.size(); ++i) sides.push_back({line[i - 1], line[i]});
  }
  for (const auto& [layer, sides] : open_sides) {
    const JoinedLines joined = joinLines(sides, choice.join_m);
    for (const geometry::Polygon& ring : joined.rings) list.add(ring, {}, layer);
    list.leaveOut(base::Message("import.line.loose"), static_cast<std::int64_t>(joined.loose));
    list.leaveOut(base::Message("import.line.inner"), static_cast<std::int64_t>(joined.inner));
  }
  ImportedOutlines found = std::move(list).finish();
  found.origin = found.origin + (middle - Point{});
  return found;
}

}  // namespace sumpwright::files
