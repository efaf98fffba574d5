#include "geometry/Interval.h"

#include <algorithm>
#include <limits>

namespace sumpwright::geometry {

namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// {t : low < a + b t < high}.
Interval solveBand(double a, double b, double low, double high) {
  if (b == 0.0) return low < a && a < high ? Interval{-kInfinity, kInfinity} : Interval{};
  const double t1 = (low - a) / b;
  const double t2 = (high - a) / b;
  return {std::min(t1, t2), std::max(t1, t2)};
}

void widen(std::optional<Interval>& hull, const std::optional<Interval>& part) {
  if (!part) return;
  hull = hull ? Interval{std::min(hull->from, part->from), std::max(hull->to, part->to)} : *part;
}

/// The straight sides of the capsule: a rectangle 2r wide along the segment.
std::optional<Interval> withinRectangle(const Line& line, Point a, Vec along, double length,
                                        double r) {
  const Vec o = line.origin - a;
  const Interval beside = solveBand(cross(along, o), cross(along, line.direction), -r, r);
  // The ends of the rectangle lie inside the discs, so open or closed there makes no difference.
  const Interval between = solveBand(dot(along, o), dot(along, line.direction), 0.0, length);
  const Interval both = clip(beside, between);
  if (both.empty()) return std::nullopt;
  return both;
}

}  // namespace

Interval clip(Interval interval, Interval window) {
  const Interval both{std::max(interval.from, window.from), std::min(interval.to, window.to)};
  return both.empty() ? Interval{} : both;
}

Intervals unite(Intervals intervals) {
  std::erase_if(intervals, [](const Interval& i) { return i.empty(); });
  std::sort(intervals.begin(), intervals.end(),
            [](const Interval& a, const Interval& b) { return a.from < b.from; });
  Intervals united;
  for (const Interval& next : intervals) {
    if (!united.empty() && next.from < united.back().to) {
      united.back().to = std::max(united.back().to, next.to);
    } else {
      united.push_back(next);
    }
  }
  return united;
}

std::optional<Interval> within(const Line& line, Point centre, double r) {
  const Vec o = centre - line.origin;
  const double height = std::abs(cross(line.direction, o));
  if (!(height < r)) return std::nullopt;
  const double foot = dot(line.direction, o);
  // (r - h)(r + h), not r^2 - h^2: keeps the digits of a grazing line.
  const double reach = std::sqrt((r - height) * (r + height));
  const Interval found{foot - reach, foot + reach};
  if (found.empty()) return std::nullopt;
  return found;
}

std::optional<Interval> within(const Line& line, const Segment& segment, double r) {
  if (!(r > 0.0)) return std::nullopt;
  // A capsule is convex: whatever parts of it the line meets join into one interval.
  std::optional<Interval> hull = within(line, segment.a, r);
  const double length = distance(segment.a, segment.b);
  if (length == 0.0) return hull;
  widen(hull, within(line, segment.b, r));
  const Vec along = (1.0 / length) * (segment.b - segment.a);
  widen(hull, withinRectangle(line, segment.a, along, length, r));
  return hull;
}

Intervals within(const Line& line, const Polyline& polyline, double r) {
  Intervals found;
  const auto add = [&](const Segment& s) {
    if (const auto part = within(line, s, r)) found.push_back(*part);
  };
  if (polyline.size() == 1) add({polyline[0], polyline[0]});
  for (std::size_t i = 1; i < polyline.size(); ++i) add({polyline[i - 1], polyline[i]});
  return unite(std::move(found));
}

Intervals inside(const Line& line, const Polygon& area) {
  // Crossings by the half-open rule (above or not), so that a corner on the line counts once.
  std::vector<double> crossings;
  for (std::size_t i = 0, j = area.size() - 1; i < area.size(); j = i++) {
    const Vec a = area[j] - line.origin;
    const Vec b = area[i] - line.origin;
    const double ha = cross(line.direction, a);
    const double hb = cross(line.direction, b);
    if ((ha > 0.0) == (hb > 0.0)) continue;
    const double ta = dot(line.direction, a);
    const double tb = dot(line.direction, b);
    crossings.push_back(ta + (tb - ta) * (ha / (ha - hb)));
  }
  std::sort(crossings.begin(), crossings.end());
  Intervals found;
  for (std::size_t i = 1; i < crossings.size(); i += 2) {
    found.push_back({crossings[i - 1], crossings[i]});
  }
  return unite(std::move(found));
}

Intervals withinArea(const Line& line, const Polygon& area, double r) {
  if (area.size() < 3) return within(line, area, r);
  Intervals found = inside(line, area);
  if (r > 0.0) {
    Polyline edge = area;
    edge.push_back(area.front());
    const Intervals near = within(line, edge, r);
    found.insert(found.end(), near.begin(), near.end());
  }
  return unite(std::move(found));
}

}  // namespace sumpwright::geometry
