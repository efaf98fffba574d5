#pragma once
// How thick an outside wall is, over all its leaves. Metres.

#include <cstddef>
#include <optional>
#include <vector>

#include "plan/Job.h"

namespace sumpwright::plan {

/// Taken where nobody knows (common practice: cavity walls of 300 to 350 mm); said to be.
inline constexpr double kAssumedWallThickness_m = 0.35;

/// All layers together; nothing without any.
std::optional<double> thicknessOf(const std::vector<Layer>& layers);
/// Of the house's walls: as stated, else its layers together; nothing where neither is known.
std::optional<double> knownThickness_m(const House& house);
/// Of a wall: as stated, else its own layers together, else the house's.
std::optional<double> knownThickness_m(const Wall& wall, const House& house);
/// The same, assumed where it is not known.
double usualThickness_m(const House& house);
double thicknessTaken_m(const Wall& wall, const House& house);
/// Of the wall along an edge of a ring; of one that has none yet the usual.
double thicknessTaken_m(const Ring& ring, std::size_t edge, const House& house);

}  // namespace sumpwright::plan
