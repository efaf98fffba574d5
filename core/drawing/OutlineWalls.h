#pragma once
// Walls of a ring that need not close: bodies between outside and inside face. Internal.

#include <vector>

#include "drawing/SheetContext.h"
#include "plan/Job.h"

namespace sumpwright::drawing {

struct OutlineWall {
  Point from;  ///< outside face, page
  Point to;
  Point inner_from;  ///< inside face, mitred to the neighbour where there is one
  Point inner_to;
  Vec along;  ///< unit, page
  Vec out;    ///< unit, away from the house, page
  double length_m = 0.0;
  bool party = false;
};

/// One per wall there is; walls without length are left out only where they have no neighbours to
/// meet. The house lies on the side the outline turns to.
std::vector<OutlineWall> outlineWalls(const plan::Job& job, const plan::Ring& ring, bool outer,
                                      const SheetContext& c);

/// A wall standing alone.
OutlineWall outlineWall(const geometry::Segment& face, double thickness_m, bool house_left,
                        const SheetContext& c);

/// +1: the house lies to the left of the walls as walked (outer ring); -1: to the right.
bool houseOnLeft(const plan::Ring& ring, bool outer);

double thicknessShown_m(const plan::Job& job, const plan::Ring& ring, std::size_t wall);

}  // namespace sumpwright::drawing
