#pragma once
// How the four states are drawn, once for plan, tape, legend and paper: clear solid with ring ends,
// advised against open hatch with arrow ends, not proven empty with dotted edge, sparse dots and
// half-ring ends, refused close hatch without ends (it is a wall's normal state).

#include <optional>

#include "drawing/Box.h"
#include "drawing/PageRing.h"
#include "drawing/Sketch.h"
#include "drawing/Theme.h"

namespace sumpwright::drawing {

/// Off the wall's face, millimetres: 6 to 14 px.
inline constexpr double kBandNear_mm = 1.5;
inline constexpr double kBandFar_mm = 3.5;

/// The end of a band: middle of its width, and the direction into the band.
struct BandEnd {
  Point at;
  Vec into;
};

/// The area of a band. Hatches are made for the part inside `view` only.
void bandArea(Sketch& sketch, const Theme& theme, rules::State state,
              const std::vector<Point>& area, const Box& view);
/// Its end marks; `length_mm` of the band keeps the marks of short ones apart.
void bandEnds(Sketch& sketch, const Theme& theme, rules::State state,
              const std::vector<BandEnd>& ends, double length_mm);
/// A straight sample from x to x for legends: area, ends and all, `height_mm` high.
void bandSample(Sketch& sketch, const Theme& theme, rules::State state, double left, double right,
                double middle_y, double height_mm = 2.0);

/// The stretches of all rings along the walls.
void bands(Sketch& sketch, const Theme& theme, const siting::Study& study,
           const std::vector<PageRing>& rings, const Box& view);

}  // namespace sumpwright::drawing
