#pragma once
// Distances along lines, and what runs along what. Any unit of length. Internal to core/suction.

#include <optional>

#include "suction/Model.h"

namespace sumpwright::suction {

double lengthOf(const Polyline& line);
/// Beyond the end: the last point. Contract: the line has a point.
Point pointAlong(const Polyline& line, double s);
/// The part of a line between two distances from its start.
Polyline partOf(const Polyline& line, double from, double to);

/// Where `other` runs along `line`, that near to it and within some 15 degrees of its direction
/// (own figure), by distance from line.a. Nothing where it does not, or one has no length.
std::optional<Stretch> alongside(const geometry::Segment& line, const geometry::Segment& other,
                                 double within);

}  // namespace sumpwright::suction
