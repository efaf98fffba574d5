#pragma once
// Questions about polygons. Boost.Geometry answers most of them; it stays behind Shapes.cpp.

#include <optional>
#include <vector>

#include "geometry/Point.h"

namespace sumpwright::geometry {

/// Signed area, m2: > 0 counter-clockwise. 0 for fewer than three corners.
double signedArea(const Polygon& polygon);
/// Centre of area; the mean of the corners where the area is 0; {0,0} for no corners.
Point centroid(const Polygon& polygon);
/// A point well inside, for a label: the centre of a large inscribed circle (to 5 cm), even for
/// L-shapes and crescents. As centroid() for degenerate input.
Point labelPoint(const Polygon& polygon);
/// Strictly inside (even-odd); the edge is not inside.
bool contains(const Polygon& polygon, Point p);
/// Where the outline first crosses, touches or doubles back on itself; nothing when it is simple.
/// Fewer than three corners or zero area: the first corner.
std::optional<Point> firstSelfContact(const Polygon& polygon);
/// Area of the overlap of two simple polygons, m2.
double overlapArea(const Polygon& a, const Polygon& b);
/// Area of `inner` that lies outside `outer`, m2.
double areaOutside(const Polygon& inner, const Polygon& outer);
/// Whether their upright bounding rectangles have no point in common: a quick no to any contact.
/// True where one has no corners.
bool boxesApart(const Polygon& a, const Polygon& b);
/// Whether the closed segments share a point.
bool meet(const Segment& a, const Segment& b);

}  // namespace sumpwright::geometry
