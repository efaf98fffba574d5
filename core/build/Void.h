#pragma once
// The hollow dug under the slab through the hole: a half ball that touches the inner face of the
// wall and the underside of the slab.

#include <optional>
#include <vector>

#include "build/BuildUp.h"

namespace sumpwright::build {

struct Void {
  double volume_m3 = 0.0;
  double radius_m = 0.0;
  double buckets = 0.0;       ///< of kBucket_l
  double past_inner_m = 0.0;  ///< how far its far side lies past the inner face
  double reach_m = 0.0;       ///< and past the outside face, along the hole
  double bottom_m = 0.0;      ///< its lowest place, above finished floor
  bool volume_stated = false;
  std::vector<base::Message> notes;
  bool operator==(const Void&) const = default;
};

/// A bucket (common practice: 10 to 15 l).
inline constexpr double kBucket_l = 12.0;
/// Least at a suction point, 0.25 cubic foot, and advised in tight fill, 1 cubic foot (ANSI/AARST
/// RMS-LB 2018, §6.1.1).
inline constexpr double kLeastVoid_l = 7.08;
inline constexpr double kTightVoid_l = 28.3;

/// `litres`: as stated, positive; else a bucket, or kTightVoid_l where there is no stone. `fall` is
/// that of the hole.
Void voidOf(const BuildUp& up, std::optional<double> litres, double fall);

}  // namespace sumpwright::build
