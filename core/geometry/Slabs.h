#pragma once
// The slow, obvious way to the overlap of two outlines: it needs nothing of them, and is the twin
// that tests compare overlapArea() with.

#include "geometry/Point.h"

namespace sumpwright::geometry {

/// Area inside both outlines (even-odd), m2; any outlines, crossing ones too. The plane is cut into
/// vertical slabs at every corner and crossing; within a slab the common height is linear, so its
/// middle times the width is exact up to rounding.
double overlapAreaBySlabs(const Polygon& a, const Polygon& b);

}  // namespace sumpwright::geometry
