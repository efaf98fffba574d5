#pragma once
// Outside ground and eaves along the walls, metres above finished floor level.

#include <optional>
#include <vector>

#include "rules/Judge.h"

namespace sumpwright::build {

/// The outside ground along one wall: straight between its points, level beyond the first and last.
struct GroundLine {
  struct At {
    double along_m = 0.0;  ///< from the edge's first corner
    double level_m = 0.0;
  };
  std::vector<At> points;  ///< one or more, in order
  bool assumed = false;    ///< nobody said: one step below the floor
  double at(double along_m) const;
};

GroundLine groundAlong(const rules::Site& site, const perimeter::Edge& edge);
double groundAt(const rules::Site& site, perimeter::Place place);

/// Of the wall, else of the house; nothing where neither is known.
std::optional<double> eavesOf(const rules::Site& site, const perimeter::Edge& edge);

}  // namespace sumpwright::build
