#pragma once
// How far down the floor goes and how high the ground stands outside it: the one place for both.
// Metres; heights above finished floor level. What nobody knows is taken as usually built.

#include <optional>
#include <vector>

#include "plan/House.h"

namespace sumpwright::plan {

/// Over a hollow, not on fill.
bool isSuspended(FloorKind kind);

/// A thickness, and whether somebody said it.
struct Taken {
  double m = 0.0;
  bool known = false;
  bool operator==(const Taken&) const = default;
};

/// A floor from its finished level down.
struct FloorLayers {
  double floor_m = 0.0;  ///< finished level
  /// A suspended floor over ground sealed with concrete: from finished floor down to that concrete,
  /// which then is the slab. Else 0.
  double under_floor_m = 0.0;
  Taken screed;
  Taken insulation;  ///< over or under the slab: the lowest underside is the same
  Taken slab;
  /// Lowest underside of slab and insulation.
  double underside_m() const { return floor_m - under_floor_m - screed.m - insulation.m - slab.m; }
};

/// Of a zone, or of the house where none is drawn there (nullptr).
FloorLayers floorLayers(const House& house, const FloorZone* zone);

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

GroundLine groundAlong(const House& house, const Wall& wall);

}  // namespace sumpwright::plan
