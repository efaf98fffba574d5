#pragma once
// Intervals of a line, and the set of places on a straight line nearer than r to something.
//
// All "within" sets are strict: a place exactly r away is not in the set (equality is clear), so
// an Interval is open at both ends. Each is the exact intersection of the line with a convex set
// (disc, capsule, convex polygon grown by r), in closed form; ends are right to 1 um for
// coordinates within 10 km (derived: double rounding of 2e-12 m there, amplified at most to
// sqrt(2 r e) = 2.4 um for a grazing line at that range; within 100 m of the origin 0.25 um).

#include <optional>
#include <vector>

#include "geometry/Point.h"

namespace sumpwright::geometry {

/// Open interval (from, to); empty unless from < to.
struct Interval {
  double from = 0.0;
  double to = 0.0;
  bool empty() const { return !(from < to); }
  double length() const { return empty() ? 0.0 : to - from; }
  bool operator==(const Interval&) const = default;
};

using Intervals = std::vector<Interval>;

/// Sorted, disjoint union. Intervals that overlap merge; those that only touch (a.to == b.from)
/// stay apart, since their common end belongs to neither.
Intervals unite(Intervals intervals);

/// Overlap of two, or empty.
Interval clip(Interval interval, Interval window);

/// A straight line: places P(t) = origin + t * direction, |direction| = 1.
struct Line {
  Point origin;
  Vec direction;
  Point at(double t) const { return origin + t * direction; }
};

/// {t : |P(t) - c| < r}. Empty for r <= 0.
std::optional<Interval> within(const Line& line, Point centre, double r);

/// {t : dist(P(t), segment) < r}. One interval, since the capsule is convex. A segment of no
/// length is a point. Empty for r <= 0.
std::optional<Interval> within(const Line& line, const Segment& segment, double r);

/// {t : dist(P(t), polyline) < r}: one interval per segment, united. One point: a point; none:
/// empty.
Intervals within(const Line& line, const Polyline& polyline, double r);

/// {t : dist(P(t), area) < r} where the distance is 0 inside. Any simple polygon, either turn.
/// For r = 0: the open inside. Fewer than three corners: as the polyline.
Intervals withinArea(const Line& line, const Polygon& area, double r);

/// {t : P(t) strictly inside the polygon}, ends exact at crossings.
Intervals inside(const Line& line, const Polygon& area);

}  // namespace sumpwright::geometry
