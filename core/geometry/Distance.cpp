#include "geometry/Distance.h"

#include <algorithm>
#include <limits>

#include "geometry/Shapes.h"

namespace sumpwright::geometry {

namespace {

/// Even-odd, edge counted as either side: used only where the edge distance is taken as well.
bool roughlyInside(const Polygon& area, Point p) {
  bool in = false;
  for (std::size_t i = 0, j = area.size() - 1; i < area.size(); j = i++) {
    const Point a = area[i];
    const Point b = area[j];
    if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y)) in = !in;
  }
  return in;
}

template <class From>
double leastTo(const From& from, const Polyline& line, bool closed) {
  if (line.empty()) return std::numeric_limits<double>::infinity();
  if (line.size() == 1) return distance(from, Segment{line[0], line[0]});
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 1; i < line.size(); ++i) {
    least = std::min(least, distance(from, Segment{line[i - 1], line[i]}));
  }
  if (closed) least = std::min(least, distance(from, Segment{line.back(), line.front()}));
  return least;
}

}  // namespace

Point nearest(Point p, const Segment& s) {
  const Vec along = s.b - s.a;
  const double squared = dot(along, along);
  if (squared == 0.0) return s.a;
  const double t = std::clamp(dot(p - s.a, along) / squared, 0.0, 1.0);
  return t == 1.0 ? s.b : s.a + t * along;
}

double distance(Point p, const Segment& s) { return distance(p, nearest(p, s)); }

double distance(const Segment& a, const Segment& b) {
  if (meet(a, b)) return 0.0;
  return std::min({distance(a.a, b), distance(a.b, b), distance(b.a, a), distance(b.b, a)});
}

double distance(Point p, const Polyline& line) { return leastTo(p, line, false); }

double distance(const Segment& s, const Polyline& line) { return leastTo(s, line, false); }

Point nearest(Point p, const Polyline& line) {
  if (line.empty()) return p;
  Point best = line[0];
  double least = distance(p, best);
  for (std::size_t i = 1; i < line.size(); ++i) {
    const Point near = nearest(p, Segment{line[i - 1], line[i]});
    const double d = distance(p, near);
    if (d < least) {
      least = d;
      best = near;
    }
  }
  return best;
}

double distanceToArea(Point p, const Polygon& area) {
  if (area.size() >= 3 && roughlyInside(area, p)) return 0.0;
  return leastTo(p, area, area.size() >= 3);
}

double distanceToArea(const Segment& s, const Polygon& area) {
  if (area.size() >= 3 && roughlyInside(area, s.a)) return 0.0;
  return leastTo(s, area, area.size() >= 3);
}

}  // namespace sumpwright::geometry
