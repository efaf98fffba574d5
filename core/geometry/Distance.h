#pragma once
// Straight distances in plan, metres. Exact up to rounding; total (no input is refused).

#include "geometry/Point.h"

namespace sumpwright::geometry {

double distance(Point p, const Segment& s);
/// Nearest point of s to p.
Point nearest(Point p, const Segment& s);
/// 0 where they meet.
double distance(const Segment& a, const Segment& b);
/// To the polyline; +inf if it has no points.
double distance(Point p, const Polyline& line);
double distance(const Segment& s, const Polyline& line);
Point nearest(Point p, const Polyline& line);
/// 0 inside or on the edge. Fewer than three corners: as the polyline.
double distanceToArea(Point p, const Polygon& area);
double distanceToArea(const Segment& s, const Polygon& area);

}  // namespace sumpwright::geometry
