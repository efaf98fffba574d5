#pragma once
// Points and vectors in the plan: metres, x east (or as drawn), y north, right-handed.

#include <cmath>
#include <vector>

namespace sumpwright::geometry {

struct Point {
  double x = 0.0;
  double y = 0.0;
  bool operator==(const Point&) const = default;
};

/// A displacement, metres.
struct Vec {
  double x = 0.0;
  double y = 0.0;
  bool operator==(const Vec&) const = default;
};

inline Vec operator-(Point a, Point b) { return {a.x - b.x, a.y - b.y}; }
inline Point operator+(Point p, Vec v) { return {p.x + v.x, p.y + v.y}; }
inline Point operator-(Point p, Vec v) { return {p.x - v.x, p.y - v.y}; }
inline Vec operator+(Vec a, Vec b) { return {a.x + b.x, a.y + b.y}; }
inline Vec operator-(Vec a, Vec b) { return {a.x - b.x, a.y - b.y}; }
inline Vec operator*(double k, Vec v) { return {k * v.x, k * v.y}; }
inline Vec operator-(Vec v) { return {-v.x, -v.y}; }
inline double dot(Vec a, Vec b) { return a.x * b.x + a.y * b.y; }
/// z of a x b: > 0 when b turns left from a.
inline double cross(Vec a, Vec b) { return a.x * b.y - a.y * b.x; }
/// Not hypot: coordinates within 10 km square without overflow, and this is ten times faster.
inline double norm(Vec v) { return std::sqrt(v.x * v.x + v.y * v.y); }
/// v turned a quarter left.
inline Vec left(Vec v) { return {-v.y, v.x}; }
inline double distance(Point a, Point b) { return norm(b - a); }
inline Point lerp(Point a, Point b, double t) {
  return {a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)};
}

struct Segment {
  Point a;
  Point b;
  bool operator==(const Segment&) const = default;
};

/// Corners in order; first not repeated. A polyline is the same, open.
using Polygon = std::vector<Point>;
using Polyline = std::vector<Point>;

}  // namespace sumpwright::geometry
