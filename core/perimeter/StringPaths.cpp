#include "perimeter/StringPaths.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "geometry/Distance.h"
#include "geometry/Shapes.h"

namespace sumpwright::perimeter {

namespace {

using geometry::Interval;
using geometry::Intervals;
using geometry::Line;
using geometry::Polygon;
using geometry::Polyline;

constexpr double kInf = std::numeric_limits<double>::infinity();
constexpr double kTouch_m = 1e-7;    // this near to a wall is on it, not inside (own figure)
constexpr double kIndoors_m = 1e-3;  // and a thing this far past it is indoors (own figure)
constexpr double kOverlap_m = 1e-9;  // so that ways which meet leave no place between them

double toRing(Point p, const Polygon& ring) {
  double least = kInf;
  for (std::size_t k = 0; k < ring.size(); ++k) {
    least = std::min(least, geometry::distance(p, Segment{ring[k], ring[(k + 1) % ring.size()]}));
  }
  return least;
}

/// Parameter along a-b where it crosses the line of c-d, if that is on c-d; parallel: nothing.
std::optional<double> crossing(Point a, Point b, Point c, Point d) {
  const Vec ab = b - a;
  const Vec cd = d - c;
  const double turn = geometry::cross(ab, cd);
  if (turn == 0.0) return std::nullopt;
  const double along = geometry::cross(c - a, cd) / turn;
  const double on = geometry::cross(c - a, ab) / turn;
  const double slack = kTouch_m / std::max(geometry::norm(cd), kTouch_m);
  if (on < -slack || on > 1.0 + slack) return std::nullopt;
  return along;
}

/// Parameter of the line where the ray from p through w meets it; nothing where it does not.
std::optional<double> rayAt(const Line& line, Point p, Point w) {
  const Vec ray = w - p;
  const double turn = geometry::cross(line.direction, ray);
  if (std::abs(turn) <= 1e-15 * geometry::norm(ray)) return std::nullopt;
  return geometry::cross(p - line.origin, ray) / turn;
}

/// The window in parts between cuts; ends of it included.
Intervals partsOf(Interval window, std::vector<double> cuts) {
  cuts.push_back(window.from);
  cuts.push_back(window.to);
  std::sort(cuts.begin(), cuts.end());
  Intervals parts;
  for (std::size_t k = 1; k < cuts.size(); ++k) {
    const Interval part = geometry::clip({cuts[k - 1], cuts[k]}, window);
    if (part.length() > kOverlap_m) parts.push_back(part);
  }
  return parts;
}

Interval widened(Interval i) { return {i.from - kOverlap_m, i.to + kOverlap_m}; }

std::vector<Segment> sidesOf(const Polyline& shape, bool closed) {
  std::vector<Segment> sides;
  if (shape.size() == 1) sides.push_back({shape[0], shape[0]});
  for (std::size_t k = 1; k < shape.size(); ++k) sides.push_back({shape[k - 1], shape[k]});
  if (closed && shape.size() > 2) sides.push_back({shape.back(), shape.front()});
  return sides;
}

/// Cuts of a line between which the sight of the nearest point of a segment does not change: where
/// that point leaves an end, and where the sight passes a corner.
std::vector<double> sightCuts(const Line& line, const Segment& s, const std::vector<Point>& all) {
  std::vector<double> cuts;
  const Vec d = s.b - s.a;
  const double slope = geometry::dot(line.direction, d);
  const auto square = [&](Point p) {
    if (slope != 0.0) cuts.push_back(geometry::dot(p - line.origin, d) / slope);
  };
  square(s.a);
  square(s.b);
  for (const Point w : all) {
    square(w);
    cuts.push_back(geometry::dot(w - line.origin, line.direction));
    for (const Point end : {s.a, s.b}) {
      if (const auto t = rayAt(line, end, w)) cuts.push_back(*t);
    }
  }
  return cuts;
}

}  // namespace

StringPaths::StringPaths(const Perimeter& perimeter) : m_perimeter(perimeter) {
  takeCorners();
  joinCorners();
  m_seen.resize(m_corners.size());
  for (std::size_t i = 0; i < m_corners.size(); ++i) {
    for (int ring = 0; ring < perimeter.ringCount(); ++ring) {
      for (const Edge& edge : perimeter.edges(ring)) {
        auto where = seenFrom(m_corners[i], edge);
        if (!where.empty()) m_seen[i].push_back({ring, edge.edge, std::move(where)});
      }
    }
  }
}

void StringPaths::takeCorners() {
  for (int ring = 0; ring < m_perimeter.ringCount(); ++ring) {
    m_rings.emplace_back();
    for (const Edge& edge : m_perimeter.edges(ring)) {
      m_rings.back().push_back(edge.from);
      m_all.push_back(edge.from);
      if (edge.turn_rad > 0.0) m_corners.push_back(edge.from);
    }
  }
}

/// All shortest ways (Floyd 1962, Warshall 1962; from memory).
void StringPaths::joinCorners() {
  const std::size_t n = m_corners.size();
  auto& between = m_between_m;
  between.assign(n, std::vector<double>(n, kInf));
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = 0; j < n; ++j) {
      if (!isFree(m_corners[i], m_corners[j])) continue;
      between[i][j] = geometry::distance(m_corners[i], m_corners[j]);
    }
  }
  for (std::size_t k = 0; k < n; ++k) {
    for (std::size_t i = 0; i < n; ++i) {
      for (std::size_t j = 0; j < n; ++j) {
        between[i][j] = std::min(between[i][j], between[i][k] + between[k][j]);
      }
    }
  }
}

bool StringPaths::isInside(Point p) const {
  if (!geometry::contains(m_rings[0], p)) return false;
  for (std::size_t k = 1; k < m_rings.size(); ++k) {
    if (geometry::contains(m_rings[k], p)) return false;
  }
  return std::all_of(m_rings.begin(), m_rings.end(),
                     [&](const Polygon& ring) { return toRing(p, ring) > kTouch_m; });
}

bool StringPaths::isFree(Point a, Point b) const {
  const double length = geometry::distance(a, b);
  std::vector<double> cuts;
  for (const Polygon& ring : m_rings) {
    for (std::size_t k = 0; k < ring.size(); ++k) {
      if (const auto t = crossing(a, b, ring[k], ring[(k + 1) % ring.size()])) cuts.push_back(*t);
    }
  }
  for (const Interval& part : partsOf({0.0, 1.0}, std::move(cuts))) {
    if (part.length() * length <= 2.0 * kTouch_m) continue;
    if (isInside(geometry::lerp(a, b, 0.5 * (part.from + part.to)))) return false;
  }
  return true;
}

/// Indoors by more than a hair, somewhere along it.
bool StringPaths::isIndoors(const Segment& s) const {
  const auto deep = [&](Point p) {
    return isInside(p) && std::all_of(m_rings.begin(), m_rings.end(), [&](const Polygon& ring) {
             return toRing(p, ring) > kIndoors_m;
           });
  };
  if (deep(s.a) || deep(s.b)) return true;
  std::vector<double> cuts;
  for (const Polygon& ring : m_rings) {
    for (std::size_t k = 0; k < ring.size(); ++k) {
      const auto t = crossing(s.a, s.b, ring[k], ring[(k + 1) % ring.size()]);
      if (t) cuts.push_back(*t);
    }
  }
  const Intervals parts = partsOf({0.0, 1.0}, std::move(cuts));
  return std::any_of(parts.begin(), parts.end(), [&](const Interval& part) {
    return deep(geometry::lerp(s.a, s.b, 0.5 * (part.from + part.to)));
  });
}

StringTarget StringPaths::targetOf(const std::vector<Polyline>& shapes, bool area) const {
  StringTarget target;
  for (const Polyline& shape : shapes) {
    for (const Segment& side : sidesOf(shape, area)) {
      target.segments.push_back(side);
      target.indoors.push_back(isIndoors(side));
    }
    if (area && shape.size() > 2) target.areas.push_back(shape);
  }
  std::vector<double> straight;
  for (const Point corner : m_corners) straight.push_back(straightTo(corner, target));
  target.from_corner_m.assign(m_corners.size(), kInf);
  for (std::size_t i = 0; i < m_corners.size(); ++i) {
    for (std::size_t j = 0; j < m_corners.size(); ++j) {
      target.from_corner_m[i] = std::min(target.from_corner_m[i], m_between_m[i][j] + straight[j]);
    }
  }
  return target;
}

/// Without bends; +inf where nothing nearest is seen.
double StringPaths::straightTo(Point p, const StringTarget& target) const {
  for (const Polygon& area : target.areas) {
    if (geometry::contains(area, p)) return 0.0;
  }
  double least = kInf;
  for (std::size_t k = 0; k < target.segments.size(); ++k) {
    const Point q = geometry::nearest(p, target.segments[k]);
    const double off = geometry::distance(p, q);
    if (off < least && (target.indoors[k] || isFree(p, q))) least = off;
  }
  return least;
}

Intervals StringPaths::seenFrom(Point p, const Edge& edge) const {
  std::vector<double> cuts;
  for (const Point w : m_all) {
    if (const auto t = rayAt(edge.line(), p, w)) cuts.push_back(*t);
  }
  Intervals seen;
  for (const Interval& part : partsOf({0.0, edge.length_m}, std::move(cuts))) {
    const Point middle = edge.line().at(0.5 * (part.from + part.to));
    if (isFree(p, middle)) seen.push_back(widened(part));
  }
  return geometry::unite(std::move(seen));
}

Intervals StringPaths::seenDirectly(const Edge& edge, const Segment& s, Interval window) const {
  Intervals seen;
  for (const Interval& part : partsOf(window, sightCuts(edge.line(), s, m_all))) {
    const Point p = edge.line().at(0.5 * (part.from + part.to));
    if (isFree(p, geometry::nearest(p, s))) seen.push_back(widened(part));
  }
  return geometry::unite(std::move(seen));
}

Intervals StringPaths::within(const Edge& edge, const StringTarget& target, double r) const {
  const Line line = edge.line();
  const Interval whole{0.0, edge.length_m};
  Intervals found;
  const auto add = [&](const Interval& reached, const Intervals& seen) {
    for (const Interval& part : seen) {
      const Interval both = geometry::clip(reached, part);
      if (!both.empty()) found.push_back(both);
    }
  };
  for (const Polygon& area : target.areas) add(whole, geometry::inside(line, area));
  for (std::size_t k = 0; k < target.segments.size(); ++k) {
    const auto reached = geometry::within(line, target.segments[k], r);
    if (!reached) continue;
    const Interval window = geometry::clip(*reached, whole);
    if (window.empty()) continue;
    add(*reached,
        target.indoors[k] ? Intervals{*reached} : seenDirectly(edge, target.segments[k], whole));
  }
  for (std::size_t i = 0; i < m_corners.size(); ++i) {
    const auto reached = geometry::within(line, m_corners[i], r - target.from_corner_m[i]);
    if (!reached) continue;
    for (const Seen& seen : m_seen[i]) {
      if (seen.ring == edge.ring && seen.edge == edge.edge) add(*reached, seen.where);
    }
  }
  return geometry::unite(std::move(found));
}

double StringPaths::distance(Place place, const StringTarget& target) const {
  const Point p = m_perimeter.pointAt(place);
  double least = straightTo(p, target);
  for (std::size_t i = 0; i < m_corners.size(); ++i) {
    const double way = geometry::distance(p, m_corners[i]) + target.from_corner_m[i];
    if (way < least && isFree(p, m_corners[i])) least = way;
  }
  return least;
}

double StringPaths::leastOn(const Edge& edge, Interval piece, const StringTarget& target) const {
  const Line line = edge.line();
  double least = kInf;
  const auto take = [&](const Interval& seen, auto&& from) {
    const Interval part = geometry::clip(seen, piece);
    if (!part.empty()) least = std::min(least, from(Segment{line.at(part.from), line.at(part.to)}));
  };
  for (const Polygon& area : target.areas) {
    for (const Interval& in : geometry::inside(line, area)) {
      take(in, [](const Segment&) { return 0.0; });
    }
  }
  for (std::size_t k = 0; k < target.segments.size(); ++k) {
    const Segment& s = target.segments[k];
    const auto seen = target.indoors[k] ? Intervals{piece} : seenDirectly(edge, s, piece);
    for (const Interval& part : seen) {
      take(part, [&](const Segment& on) { return geometry::distance(on, s); });
    }
  }
  for (std::size_t i = 0; i < m_corners.size(); ++i) {
    for (const Seen& seen : m_seen[i]) {
      if (seen.ring != edge.ring || seen.edge != edge.edge) continue;
      for (const Interval& part : seen.where) {
        take(part, [&](const Segment& on) {
          return geometry::distance(m_corners[i], on) + target.from_corner_m[i];
        });
      }
    }
  }
  return least;
}

double StringPaths::least(int ring, double from_m, double to_m, const StringTarget& target) const {
  if (!(from_m < to_m)) return distance(m_perimeter.wrapped({ring, from_m}), target);
  double least = std::min(distance(m_perimeter.wrapped({ring, from_m}), target),
                          distance(m_perimeter.wrapped({ring, to_m}), target));
  for (const Edge& edge : m_perimeter.edges(ring)) {
    const Interval piece{std::max(from_m, edge.start_m) - edge.start_m,
                         std::min(to_m, edge.end_m()) - edge.start_m};
    if (!piece.empty()) least = std::min(least, leastOn(edge, piece, target));
  }
  return least;
}

}  // namespace sumpwright::perimeter
