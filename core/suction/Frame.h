#pragma once
// The square grid of a model: where it lies and how it is turned.

#include "geometry/Point.h"
#include "suction/Model.h"

namespace sumpwright::suction {

/// Grid coordinates are in cells: cell (i, j) is [i, i+1) x [j, j+1), its centre (i+0.5, j+0.5).
struct Frame {
  Point origin;                  ///< of the grid, in plan
  geometry::Vec axis{1.0, 0.0};  ///< unit, along growing i
  double h_m = 0.1;              ///< side of a cell
  int nx = 0;
  int ny = 0;
  Point toGrid(Point plan) const;
  Point toPlan(Point grid) const;
  bool operator==(const Frame&) const = default;
};

/// A frame that covers every region with a cell to spare on each side. With `align` it is turned
/// as most of the edges and barriers run, and shifted so that most of what runs along it lies on
/// lines of the grid; without, it runs with the plan from the corner of least x and y.
Frame frameOf(const SuctionModel& model, double h_m, bool align);

}  // namespace sumpwright::suction
