// What outlets are kept out of, as outlines for drawing.

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>
#include <utility>

#include "build/Discharge.h"
#include "build/Enclosure.h"
#include "build/Levels.h"
#include "build/RefusedZone.h"
#include "build/RunWalls.h"
#include "build/ZoneHeights.h"
#include "rules/InPlan.h"

namespace sumpwright::build {

namespace {

using geometry::Interval;
using geometry::Intervals;
using geometry::Point;
using perimeter::Edge;
using rules::RingSpan;
using rules::Rule;
using rules::RuleKind;
using rules::Site;
using rules::Thing;

using Curve = std::function<double(double)>;

bool isFlat(const Curve& curve, double s1, double y1, double s2, double y2, double tolerance) {
  for (const double t : {0.25, 0.5, 0.75}) {
    const double chord = y1 + t * (y2 - y1);
    if (std::abs(curve(s1 + t * (s2 - s1)) - chord) > tolerance) return false;
  }
  return true;
}

void refine(const Curve& curve, double s1, double y1, double s2, double y2, double tolerance,
            int deeper, std::vector<Point>& out) {
  if (deeper == 0 || isFlat(curve, s1, y1, s2, y2, tolerance)) {
    out.push_back({s2, y2});
    return;
  }
  const double s = 0.5 * (s1 + s2);
  const double y = curve(s);
  refine(curve, s1, y1, s, y, tolerance, deeper - 1, out);
  refine(curve, s, y, s2, y2, tolerance, deeper - 1, out);
}

/// A curve over [from, to] as straight pieces. The ends are upright where the zone closes, so the
/// pieces are laid out as on a half circle first.
std::vector<Point> lineOf(const Curve& curve, double from, double to, double tolerance) {
  constexpr int kFirst = 24;    // pieces to begin with
  constexpr int kDeepest = 12;  // halvings of each
  std::vector<Point> line{{from, curve(from)}};
  for (int i = 1; i <= kFirst; ++i) {
    const double turn = std::numbers::pi * i / kFirst;
    const double s = i == kFirst ? to : 0.5 * (from + to) - 0.5 * (to - from) * std::cos(turn);
    const Point last = line.back();
    refine(curve, last.x, last.y, s, curve(s), tolerance, kDeepest, line);
  }
  return line;
}

/// One thing's zone over one interval of an edge: heights are one interval at every chainage.
geometry::Polygon outlineOf(const Site& site, const Rule& rule, const Thing& thing,
                            const Edge& edge, Interval where, Interval window, double tolerance) {
  const auto at = [&](double along) -> Interval {
    const double in_plan = rules::distanceInPlan(
        site, thing, rule.path, {edge.ring, std::min(edge.start_m + along, edge.end_m())});
    const auto heights = heightsFor(rule, site, thing, in_plan);
    if (heights) return geometry::clip(*heights, window);
    const double low = std::isfinite(thing.low_m) ? thing.low_m : window.from;
    const double high = std::isfinite(thing.high_m) ? thing.high_m : window.to;
    return {std::clamp(low, window.from, window.to), std::clamp(high, window.from, window.to)};
  };
  // The corner at an edge's end belongs to the next one: stay a hair inside.
  const double to = std::min(where.to, std::nextafter(edge.length_m, 0.0));
  auto low = lineOf([&](double s) { return at(s).from; }, where.from, to, tolerance);
  auto high =
      lineOf([&](double s) { return std::max(at(s).from, at(s).to); }, where.from, to, tolerance);
  for (Point& p : low) p.x += edge.start_m;
  for (Point& p : high) p.x += edge.start_m;
  low.insert(low.end(), high.rbegin(), high.rend());
  return low;
}

void addThingOutlines(const Site& site, const Rule& rule, const Edge& edge, Interval window,
                      double tolerance, std::vector<ZoneOutline>& out) {
  for (const Thing* thing : thingsInHeight(rule, site)) {
    for (const Interval& i : rules::nearAlong(site, edge, *thing, rule.path, widest(rule, site))) {
      const Interval where = geometry::clip(i, {0.0, edge.length_m});
      if (where.empty()) continue;
      out.push_back(
          {rule.id, thing->id, outlineOf(site, rule, *thing, edge, where, window, tolerance)});
    }
  }
}

/// A wall on which nothing may end, over all of its height.
void addWallOutlines(const Site& site, const Rule& rule, const Edge& edge, Interval window,
                     std::vector<ZoneOutline>& out) {
  for (const RingSpan& s : refusedWalls(rule, site, halfOf(rule, site))) {
    const Interval where = geometry::clip({s.from_m, s.to_m}, {edge.start_m, edge.end_m()});
    if (s.ring != edge.ring || where.empty()) continue;
    out.push_back({rule.id,
                   "",
                   {{where.from, window.from},
                    {where.to, window.from},
                    {where.to, window.to},
                    {where.from, window.to}}});
  }
}

/// Between walls: all below the eaves.
void addEnclosedOutlines(const Site& site, const Rule& rule, const Edge& edge, Interval window,
                         std::vector<ZoneOutline>& out) {
  const Interval heights = geometry::clip(heightsBetweenWalls(eavesOf(site, edge)), window);
  if (heights.empty()) return;
  for (const Interval& i : betweenWalls(site, edge, rule.needed_m->value)) {
    const Interval where = geometry::clip(i, {0.0, edge.length_m});
    if (where.empty()) continue;
    const double from = edge.start_m + where.from;
    const double to = edge.start_m + where.to;
    out.push_back(
        {rule.id,
         "",
         {{from, heights.from}, {to, heights.from}, {to, heights.to}, {from, heights.to}}});
  }
}

void addLevelOutlines(const Site& site, const Rule& rule, const Edge& edge, Interval window,
                      std::vector<ZoneOutline>& out) {
  const GroundLine ground = groundAlong(site, edge);
  std::vector<double> kinks{0.0};
  for (const auto& p : ground.points) {
    if (p.along_m > 0.0 && p.along_m < edge.length_m) kinks.push_back(p.along_m);
  }
  kinks.push_back(edge.length_m);
  const auto eaves = eavesOf(site, edge);
  for (std::size_t i = 1; i < kinks.size(); ++i) {
    const auto at = [&](double along) {
      const Intervals list = levelHeights(rule, ground.at(along), eaves);
      return list.empty() ? Interval{} : geometry::clip(list.front(), window);
    };
    const Interval a = at(kinks[i - 1]);
    const Interval b = at(kinks[i]);
    if (a.empty() && b.empty()) continue;
    const double s1 = edge.start_m + kinks[i - 1];
    const double s2 = edge.start_m + kinks[i];
    out.push_back(
        {rule.id,
         "",
         {{s1, a.from}, {s2, b.from}, {s2, std::max(b.from, b.to)}, {s1, std::max(a.from, a.to)}}});
  }
}

/// Walks along an outline and keeps what stands free.
struct Shown {
  const Site& site;
  const Edge& edge;
  rules::Weight weight;
  Interval window;

  /// On an end of the wall, or on the upper or lower edge of what is shown.
  bool isFrame(Point a, Point b) const {
    constexpr double kSame_m = 1e-9;
    const auto on = [](double u, double v, double line) {
      return std::abs(u - line) < kSame_m && std::abs(v - line) < kSame_m;
    };
    return on(a.x, b.x, edge.start_m) || on(a.x, b.x, edge.end_m()) || on(a.y, b.y, window.from) ||
           on(a.y, b.y, window.to);
  }

  /// A little outside the line on either side: free where not both sides are objected to.
  bool isFree(Point a, Point b, double t) const {
    constexpr double kAside_m = 0.004;  // own figure: over the tolerance of the curves
    const Point p = geometry::lerp(a, b, t);
    const geometry::Vec way = b - a;
    const double length = geometry::norm(way);
    if (length == 0.0) return false;
    const geometry::Vec aside = (kAside_m / length) * geometry::left(way);
    return !isIn(p + aside) || !isIn(p - aside);
  }

  void addOpen(Point a, Point b, std::vector<geometry::Polyline>& out) const {
    constexpr double kStep_m = 0.05;  // own figure: no gap in an edge is shorter
    const int steps = std::max(1, static_cast<int>(std::ceil(geometry::distance(a, b) / kStep_m)));
    std::optional<double> from;
    double last = 0.0;
    for (int i = 0; i <= steps; ++i) {
      const double t = static_cast<double>(i) / steps;
      const bool free = isFree(a, b, t);
      if (free && !from) from = i == 0 ? 0.0 : turnsAt(a, b, last, t);
      if (!free && from) {
        out.push_back({geometry::lerp(a, b, *from), geometry::lerp(a, b, turnsAt(a, b, t, last))});
        from.reset();
      }
      last = t;
    }
    if (from) addTo(geometry::lerp(a, b, *from), b, out);
  }

 private:
  bool isIn(Point p) const {
    const double s = std::clamp(p.x, edge.start_m, std::nextafter(edge.end_m(), edge.start_m));
    const auto objected = heightsObjected(site, {edge.ring, s}, weight);
    return std::any_of(objected.begin(), objected.end(),
                       [&](const Interval& i) { return p.y > i.from && p.y < i.to; });
  }

  /// Between a place that is not free and one that is.
  double turnsAt(Point a, Point b, double covered, double free) const {
    for (int i = 0; i < 8; ++i) {
      const double middle = 0.5 * (covered + free);
      (isFree(a, b, middle) ? free : covered) = middle;
    }
    return free;
  }

  /// Goes on with the last piece where it ends there.
  static void addTo(Point from, Point to, std::vector<geometry::Polyline>& out) {
    if (!out.empty() && out.back().back() == from) {
      out.back().push_back(to);
    } else {
      out.push_back({from, to});
    }
  }
};

}  // namespace

std::vector<ZoneOutline> zoneOutlines(const Site& site, const Edge& edge, rules::Weight weight,
                                      double low_m, double high_m, double tolerance_m) {
  std::vector<ZoneOutline> outlines;
  const Interval window{low_m, high_m};
  for (const Rule& rule : site.sheet.rules) {
    if (!isMeant(rule, weight)) continue;
    if (rule.kind == RuleKind::wall) {
      addWallOutlines(site, rule, edge, window, outlines);
    } else if (isOfWallsRound(rule)) {
      addEnclosedOutlines(site, rule, edge, window, outlines);
    } else if (isOfThings(rule)) {
      addThingOutlines(site, rule, edge, window, tolerance_m, outlines);
    } else {
      addLevelOutlines(site, rule, edge, window, outlines);
    }
  }
  return outlines;
}

std::vector<geometry::Polyline> zoneEdge(const Site& site, const Edge& edge, rules::Weight weight,
                                         double low_m, double high_m,
                                         const std::vector<ZoneOutline>& outlines) {
  const Shown shown{site, edge, weight, {low_m, high_m}};
  std::vector<geometry::Polyline> pieces;
  for (const ZoneOutline& zone : outlines) {
    for (std::size_t i = 0; i < zone.outline.size(); ++i) {
      const Point a = zone.outline[i];
      const Point b = zone.outline[(i + 1) % zone.outline.size()];
      if (!shown.isFrame(a, b)) shown.addOpen(a, b, pieces);
    }
  }
  return pieces;
}

}  // namespace sumpwright::build
