#pragma once
// Cuts shapes to a rectangle, so that no painter needs a clip.

#include "drawing/Box.h"

namespace sumpwright::drawing {

/// The part of the polygon inside the box (Sutherland and Hodgman, Reentrant Polygon Clipping,
/// 1974); edges may run along the box. Empty when nothing is inside.
std::vector<Point> clipped(const std::vector<Point>& polygon, const Box& box);

/// Everything cut to the box: strokes keep their dashes in step, circles that cross the edge become
/// polylines, texts that do not fit whole are dropped.
DrawList clipped(const DrawList& list, const Box& box, const Voice& voice);

}  // namespace sumpwright::drawing
