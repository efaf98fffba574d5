#pragma once
// Hatches as real lines, cut to a polygon. Lines are anchored to the page, never to the shape, so
// that they neither crawl while a thing is dragged nor jump between neighbours.

#include <vector>

#include "geometry/Point.h"

namespace sumpwright::drawing {

using geometry::Point;

struct HatchStyle {
  double angle_deg = 45.0;   ///< of the lines, counter-clockwise on the page from 3 o'clock
  double spacing_mm = 1.15;  ///< between neighbouring lines, square to them; > 0
};

/// Pieces of the lines {p : p . normal = k * spacing} inside the even-odd area of the rings. Empty
/// for no area or a spacing that is not positive.
std::vector<geometry::Segment> hatch(const std::vector<std::vector<Point>>& rings,
                                     const HatchStyle& style);

/// Dots of a square lattice turned by 45 degrees, `spacing_mm` apart, that lie inside by at least
/// `inset_mm` of the polygon's edges.
std::vector<Point> dots(const std::vector<Point>& polygon, double spacing_mm, double inset_mm);

}  // namespace sumpwright::drawing
