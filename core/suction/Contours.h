#pragma once
// Lines of equal suction.

#include <vector>

#include "suction/Network.h"

namespace sumpwright::suction {

struct Contour {
  double level_pa = 0.0;
  Polyline line;        ///< plan coordinates; suction above the level to the left
  bool closed = false;  ///< the last point is not the first again
};

/// By marching squares between the cells' centres (Lorensen and Cline 1987 in the plane, from
/// memory), straight within a square. A line never crosses a barrier: squares that one cuts are
/// done once for each side, with what lies beyond taken as on this side, and the line is cut at the
/// barrier. So are edges of the floor: lines run up to them square. Saddles are parted by the mean
/// of the four. Ordered by level, then place. Next door has lines too.
std::vector<Contour> contoursOf(const Network& network, const std::vector<double>& suction,
                                const std::vector<double>& levels_pa);

}  // namespace sumpwright::suction
