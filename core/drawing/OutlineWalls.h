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

/// One per wall there is, those without length included (their direction is none). The house lies
/// on the side the outline turns to. Inside faces meet unless the walls run on nearly straight or
/// would meet further off than four times the thickest wall.
std::vector<OutlineWall> outlineWalls(const plan::Job& job, const plan::Ring& ring, bool outer,
                                      const SheetContext& c);

/// A wall standing alone.
OutlineWall outlineWall(const geometry::Segment& face, double thickness_m, bool house_left,
                        const SheetContext& c);

/// Whether the house lies to the left of the walls as walked; fewer than three corners: it does.
bool houseOnLeft(const plan::Ring& ring, bool outer);

}  // namespace sumpwright::drawing
