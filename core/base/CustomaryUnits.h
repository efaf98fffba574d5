#pragma once
// Units of the United States' trade in SI, for what is typed and printed.

namespace sumpwright::base {

/// Exactly: NIST Special Publication 811 (2008), appendix B.6 (from memory).
inline constexpr double kFoot_m = 0.3048;
inline constexpr double kInch_m = kFoot_m / 12.0;
/// Derived from the foot.
inline constexpr double kCubicFootPerMinute_m3_h = kFoot_m * kFoot_m * kFoot_m * 60.0;
/// Conventional inch of water: NIST Special Publication 811 (2008), appendix B.8 (from memory).
inline constexpr double kInchOfWater_pa = 249.0889;

}  // namespace sumpwright::base
