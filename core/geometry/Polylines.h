#pragma once
// Distances along polylines. Any unit of length.

#include "geometry/Point.h"

namespace sumpwright::geometry {

/// 0 for fewer than two points.
double lengthOf(const Polyline& line);
/// The point `s` along from the start; beyond the end the last point, before the start a point
/// on the first leg's line. Contract: the line has a point.
Point pointAlong(const Polyline& line, double s);
/// The part between two distances from the start. Contract: the line has a point.
Polyline partOf(const Polyline& line, double from, double to);

}  // namespace sumpwright::geometry
