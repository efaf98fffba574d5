#pragma once
// How much of each cell, and of each side between two cells, lies inside a polygon: exactly, by
// Green's theorem along its edges. Grid coordinates (Frame.h). Internal to core/suction.

#include <cstddef>
#include <functional>
#include <vector>

#include "geometry/Point.h"

namespace sumpwright::suction {

/// Place of cell (i, j) in an array by rows of `columns`.
inline std::size_t slotOf(int i, int j, int columns) {
  return static_cast<std::size_t>(j) * static_cast<std::size_t>(columns) +
         static_cast<std::size_t>(i);
}

/// The parts of a straight line, cut at the lines of the grid, in order. `i`, `j`: the cell of the
/// part's middle.
struct CellPart {
  int i = 0;
  int j = 0;
  geometry::Point from;
  geometry::Point to;
};
void forEachCellPart(geometry::Point a, geometry::Point b,
                     const std::function<void(const CellPart&)>& visit);

struct Coverage {
  int nx = 0;
  int ny = 0;
  std::vector<double> area;     ///< of cell (i, j), 0..1, at j * nx + i
  std::vector<double> upright;  ///< of the side between (i-1, j) and (i, j), 0..1
  std::vector<double> level;    ///< of the side between (i, j-1) and (i, j), 0..1
  Coverage(int columns, int rows);
  /// Adds `sign` times the inside of a polygon walked either way round. Parts off the grid are cut.
  void add(const geometry::Polygon& polygon, double sign);
};

}  // namespace sumpwright::suction
