#pragma once
// Links near the free end of a thin tight wall. Internal to core/suction.
//
// Near the end the field is c + K r^(1/2) sin(theta/2), theta = +-pi being the wall. Its flow
// through any side is known in closed form, since its conjugate is -r^(1/2) cos(theta/2); so is its
// difference between two cell centres. Their ratio is what the link's conductance must be
// multiplied by for this field to be exact, wherever the end lies in the grid and however the wall
// is turned. Derived. For an end on a corner of the grid, wall along it, the three open links get
// F = 1 / (2 * 2^(-1/4) sin(pi/8)) = 1.553774.

#include "geometry/Point.h"

namespace sumpwright::suction {

/// The free end of a wall, grid coordinates.
struct Tip {
  geometry::Point at;
  geometry::Vec into_wall;  ///< unit, from the end along the wall
};

/// How far from the end links are corrected, in cells.
inline constexpr double kTipReach = 2.0;

/// Ratio of exact flow to difference of the end's field for the link from centre `a` to centre `b`,
/// per cell of its side, which runs from `right` to `left` as seen along the link. `cut`: the wall
/// crosses the link; then what the end lets pass beside it, 0 where that is nothing. 1 (0 where
/// cut) where the field hardly changes along the link.
double tipFactor(const Tip& tip, const geometry::Segment& link, geometry::Point right,
                 geometry::Point left, bool cut);

}  // namespace sumpwright::suction
