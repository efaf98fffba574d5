#pragma once
// A mark on a wall: where an outside wall is split in two, where a gap in a rising wall begins.

#include <optional>
#include <string>

#include "base/Result.h"
#include "plan/Job.h"
#include "tools/Faces.h"

namespace sumpwright::tools {

/// A place along a wall.
struct WallMark {
  int ring = 0;
  int edge = 0;
  double offset_m = 0.0;  ///< from the wall's first corner: the left one, seen from outside
  Segment wall;           ///< its outside face
  Point at;
};

/// On the wall whose body is within reach of the pointer, the offset brought to the grid, or square
/// to a corner elsewhere where one is within reach. Nothing off all walls.
std::optional<WallMark> wallMarkAt(const plan::Job& job, Point pointer, double reach_m,
                                   double grid_m);
/// The same wall with a typed offset; nothing where that is not within its length.
std::optional<WallMark> withOffset(const WallMark& mark, double offset_m);

/// A place along a rising wall.
struct RisingMark {
  std::string wall;
  double along_m = 0.0;
  Point at;
};

/// On the rising wall nearest within reach (and half its thickness), brought to the grid along it.
std::optional<RisingMark> risingMarkAt(const plan::Job& job, Point pointer, double reach_m,
                                       double grid_m);
/// The same wall at a typed distance from its first point, kept on it.
RisingMark withAlong(const plan::Job& job, const RisingMark& mark, double along_m);

}  // namespace sumpwright::tools
