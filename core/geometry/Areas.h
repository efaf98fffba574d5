#pragma once
// Areas taken from and out of one another. Boost.Geometry does the work; it stays behind Areas.cpp.

#include <optional>
#include <vector>

#include "geometry/Point.h"

namespace sumpwright::geometry {

/// An area in one piece: outline counter-clockwise, holes clockwise, each simple.
struct Face {
  Polygon outline;
  std::vector<Polygon> holes;
};

/// What is left of `area` without `taken`, in pieces; polygons either way round, those with fewer
/// than three corners or no area take nothing. Corners on a straight line are left out, and
/// coordinates are rounded to the micrometre. Nothing at all where the outlines are such that it
/// cannot be said (they cross themselves, or their numbers are wild).
std::optional<std::vector<Face>> without(const Polygon& area, const std::vector<Polygon>& taken);

/// What two areas have in common, as above.
std::optional<std::vector<Face>> common(const Polygon& a, const Polygon& b);

/// Area of a face without its holes, m2.
double faceArea(const Face& face);

}  // namespace sumpwright::geometry
