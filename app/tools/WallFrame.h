#pragma once
// A wall as somebody faces it from outside: along it, into the house, how long, how thick.

#include <optional>
#include <vector>

#include "plan/Job.h"

namespace sumpwright::tools {

struct WallFrame {
  int ring = 0;
  int edge = 0;
  geometry::Segment face;  ///< outside face, left to right
  geometry::Vec along;
  geometry::Vec inward;
  double length_m = 0.0;
  double thickness_m = 0.0;  ///< the wall's, the house's, or what is taken for an unknown one

  /// `along_m` from the left corner, `in_m` from the outside face into the house (negative: out).
  geometry::Point at(double along_m, double in_m) const {
    return face.a + along_m * along + in_m * inward;
  }
};

/// Nothing where there is no such wall, or it has no length.
std::optional<WallFrame> wallFrame(const plan::Job& job, int ring, int edge);

/// How far it is from a point straight on to the next inner face or inner wall; nothing where there
/// is none.
std::optional<double> reachInside(const plan::Job& job, geometry::Point from, geometry::Vec along);

}  // namespace sumpwright::tools
