#pragma once
// What lies at or above each of several levels, as areas to be painted one upon another.

#include <vector>

#include "suction/Network.h"

namespace sumpwright::suction {

struct LevelArea {
  double level = 0.0;
  /// Plan coordinates, even-odd. Runs on past the floor by up to a cell and a half: whoever paints
  /// it hides what is no floor.
  std::vector<Polygon> rings;
};

/// The same field as contoursOf(): straight within a square of centres, so that its lines are these
/// outlines, and never smoothed over a barrier. Of our own floor; next door is left out. One area
/// for each level in rising order, without rings where nothing is so high. Contract: one value per
/// cell.
std::vector<LevelArea> areasAbove(const Network& network, const std::vector<double>& values,
                                  std::vector<double> levels);

}  // namespace sumpwright::suction
