#pragma once
// What is taken for something nobody knows, wherever it is needed. Metres; heights above finished
// floor level.

namespace sumpwright::plan {

/// Unknown footing top (common practice).
inline constexpr double kAssumedFootingLow_m = -0.75;
inline constexpr double kAssumedFootingHigh_m = -0.35;
/// Unknown ground level outside (common practice: one step down).
inline constexpr double kAssumedGround_m = -0.15;
/// Usual core drill barrel (common practice).
inline constexpr double kAssumedBarrel_m = 0.40;
/// A damp-proof course stands at least this high above the ground outside (Approved Document C,
/// England, as quoted elsewhere; the document itself was not at hand).
inline constexpr double kGroundUnderDpc_m = 0.15;
/// A floor more than this under the ground outside is not cored from outside (common practice).
inline constexpr double kDeepestFloor_m = 1.0;

}  // namespace sumpwright::plan
