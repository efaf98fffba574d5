#pragma once
// Where something on a wall comes to rest under a pointer: the nearest wall, and along it in line
// with an opening across the house or of another storey, in the middle of the wall, or on the grid.

#include <optional>
#include <string>
#include <vector>

#include "tools/WallThing.h"

namespace sumpwright::tools {

struct WallSnapField {
  double reach_m = 0.10;  ///< no stop but the grid moves a thing further
  double grid_m = 0.05;   ///< 0: none
  std::string self;       ///< id of what moves; in line with itself is no news
  int storey = 0;         ///< of what moves
  std::optional<plan::OnWall> on =
      {};  ///< the wall it is on: another must be nearer by kWallJump_m
};

/// Own figure, as for a sump: half a cavity wall, so that a hand's tremble never crosses one.
inline constexpr double kWallJump_m = 0.15;

enum class StopKind { none, grid, middle, in_line };

struct WallStop {
  plan::OnWall at;
  StopKind kind = StopKind::none;
  std::vector<Segment> guides;  ///< from what it is in line with
};

/// For something `width_m` wide with its middle at `middle`. Nearest first of what is in reach;
/// ties go to the earlier in the job. Kept on its wall; where that is too short, at its left end.
/// Nothing where the plan has no wall.
std::optional<WallStop> wallStop(const plan::Plan& plan, Point middle, double width_m,
                                 const WallSnapField& field);

}  // namespace sumpwright::tools
