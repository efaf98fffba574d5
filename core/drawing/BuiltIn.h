#pragma once
// What is built into walls and floor: wall features, rising walls. Drawn alike on every plan.
// Internal.

#include "drawing/SheetContext.h"
#include "plan/Plan.h"

namespace sumpwright::drawing {

/// A wall's own axes on the page: along the outside face from a place on it, and into the house.
struct WallSlot {
  Point from;
  Vec along;  ///< unit
  Vec in;     ///< unit
  double thick_mm = 0.0;
  Point at(double along_mm, double in_mm) const { return from + along_mm * along + in_mm * in; }
};

/// pier: block outside; chimney breast: block inside; beam bearing: triangle; movement joint: two
/// lines across; weep hole: dots at the outside face; stepped footing: a stair.
void wallFeature(Sketch& sketch, const SheetContext& c, const plan::WallFeature& feature,
                 const WallSlot& slot);

/// Two thin broken lines, open at its gaps.
void risingWall(Sketch& sketch, const SheetContext& c, const plan::RisingWall& wall);

/// The part of a polyline between two distances along it; empty where there is none.
std::vector<Point> linePart(const std::vector<Point>& line, double from, double to);

}  // namespace sumpwright::drawing
