#pragma once
// What build/CableRoute.h promises, found again from nothing but squared paper: the squares of a
// house are air, wall, room or wet room, a cable runs along grid lines between wall and air, over
// openings one storey of the graph higher, and square through walls; Boost.Graph does the rest.
// Shares no line with core/build.

#include <map>
#include <optional>
#include <string>

#include "core/build/LatticeHouse.h"

namespace sumpwright::build {

/// As in CableFigures of build/CableRoute.h; the test hands the same to both.
struct LatticeFigures {
  double above_dpc_m = 0.15;
  double above_ground_m = 0.15;
  double lowest_sleeve_m = 0.20;
  double skirting_m = 0.10;
  double socket_m = 0.45;
  double board_m = 1.40;
  double over_head_m = 0.10;
  double door_head_m = 2.10;
  double sill_m = 0.90;
  double per_drilling_m = 0.50;
  int off_entry = 6;    ///< squares
  int thickest = 18;    ///< squares
  int stays_up = 20;    ///< squares
  double wet_m = 1.25;  ///< from the middle of a shower: 0.60 from its edge
};

struct LatticeFan {
  GridPoint at;
  double height_m = 1.2;
  bool in_roof = false;
};

/// By supply: cable and what its drillings are worth; nothing where no way leads there.
std::map<std::string, std::optional<double>> latticeCosts(const LatticeHouse& house,
                                                          const LatticeFan& fan,
                                                          const LatticeFigures& figures);

}  // namespace sumpwright::build
