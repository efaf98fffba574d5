#pragma once
// What barriers do to the links between cells. Grid coordinates. Internal to core/suction.

#include <cstddef>
#include <vector>

#include "suction/Coverage.h"
#include "suction/Frame.h"
#include "suction/Model.h"

namespace sumpwright::suction {

/// Of one side between two cells.
struct SideCut {
  double wall_m2_s_pa;  ///< conductance of the barriers across the link, per link; infinite: none
  double factor = 1.0;  ///< what the fill's conductance is multiplied by, where not cut
  double bypass = 0.0;  ///< share of the fill's conductance that passes round the end of a wall
  double from = 0.0;    ///< the side as the wall beside it leaves it, along growing x or y;
  double to = 1.0;      ///< not the grid's where a wall runs along the grid off its lines
  bool cut() const;
  SideCut();
};

/// A small opening: joins the cells on both sides of its middle with this share of the fill's
/// conductance.
struct Slit {
  geometry::Point middle;
  geometry::Vec across;  ///< unit
  double share = 0.0;
};

/// Area of one cell that lies beyond a wall and so belongs to the next, in cells.
struct AreaMove {
  int from_i = 0;
  int from_j = 0;
  int to_i = 0;
  int to_j = 0;
  double area = 0.0;
};

/// A part of a barrier that stands, ends made good.
struct BarrierPiece {
  geometry::Point a;
  geometry::Point b;
  std::size_t barrier = 0;
};

struct Cuts {
  int nx = 0;
  std::vector<SideCut> upright;  ///< side between (i-1, j) and (i, j), at j * nx + i
  std::vector<SideCut> level;    ///< side between (i, j-1) and (i, j)
  std::vector<Slit> slits;
  std::vector<AreaMove> moves;
  std::vector<BarrierPiece> pieces;
  const SideCut& uprightAt(int i, int j) const { return upright[slotOf(i, j, nx)]; }
  const SideCut& levelAt(int i, int j) const { return level[slotOf(i, j, nx)]; }
};

/// A link whose centre-to-centre line a barrier crosses carries the barrier's conductance
/// G_w h / (|cos a| + |sin a|), a being the barrier's angle to the grid: a barrier of length l cuts
/// l (|cos a| + |sin a|) / h links (derived). Where a barrier runs along the grid, but not on one
/// of its lines, what it takes from a cell goes to the cell on its other side. Ends within reach of
/// an edge are led past it, of another barrier up to it; ends beyond the floor are none. What ends
/// freely within gets the correction of TipFactor.h, where nothing bars the way round; openings
/// narrower than kSlit cells are lumped.
Cuts cutsOf(const SuctionModel& model, const Frame& frame);

}  // namespace sumpwright::suction
