#pragma once
// Figures of the drill section with their sources. Lengths in metres, falls as the tangent of the
// angle.

#include <numbers>

namespace sumpwright::build {

/// Solid ground between the edge of the hole and the slab above, and the footing below (common
/// practice: the centre stays half a core and 50 mm off both).
inline constexpr double kCover_m = 0.05;
/// Under a radon barrier (common practice).
inline constexpr double kUnderBarrier_m = 0.05;
/// Under the damp-proof course, which lies in a joint that is not quite level (own figure).
inline constexpr double kUnderDpc_m = 0.05;
/// So that water runs back to the sump: 1/8 in per foot (ANSI/AARST SGM-SF 2017, revision 12/20,
/// §6.2.2).
inline constexpr double kLeastFall = 1.0 / 96.0;
/// Common practice: level to some 5 degrees from below the ground ...
inline constexpr double kUsualFall = 0.08748866352592401;  // tan 5 degrees
/// ... and 15 to 45 degrees from above it.
inline constexpr double kLeastFallAbove = 0.2679491924311227;  // tan 15 degrees
inline constexpr double kMostFall = 1.0;                       // tan 45 degrees
/// A drill set by hand and level is out by a degree or two, and so far a hole wanders over a wall:
/// with less fall, or less room, it may come out wrong (own figures).
inline constexpr double kSureFall = 0.03492076949174773;  // tan 2 degrees
inline constexpr double kWander_m = 0.010;
/// The pipe ends this far past the inner face, in the fill (own figure; common practice asks for
/// 50 mm at least).
inline constexpr double kPastInner_m = 0.10;
/// The pipe's end so far outside the hollow is worth a word (own figure).
inline constexpr double kOffHollow_m = 0.02;
/// A dig is not deeper without support (from memory), and from the second on it is said.
inline constexpr double kDeepestDig_m = 1.20;
inline constexpr double kDeepDig_m = 0.60;
/// A pit beside a shallow or rubble footing takes no more of the wall at a time (common practice).
inline constexpr double kPitAlong_m = 0.60;
/// Room to work below the hole (own figure).
inline constexpr double kBelowHole_m = 0.15;
/// More to spare than this is worth less than a shallower dig (own figure).
inline constexpr double kEnough_m = 0.05;
/// A strip footing stands this far out from either face of its wall, and is this thick (from
/// memory: 600 mm wide under 300 mm; 200 to 225 mm thick).
inline constexpr double kFootingOut_m = 0.15;
inline constexpr double kFootingThick_m = 0.225;
inline constexpr double kFootingThin_m = 0.200;
/// Less between hole and pipe jams, and cannot be sealed (own figure, after common practice:
/// cores of 117 to 127 mm for a pipe of 110 mm).
inline constexpr double kLeastGap_m = 0.003;
/// A gap over this takes a backer before the sealant: 1/2 in (ANSI/AARST RMS-LB 2018, §6.1.1).
inline constexpr double kBackerGap_m = 0.013;
/// An arm reaches so far through the hole (own figure).
inline constexpr double kArm_m = 0.70;

constexpr double radians(double degrees) { return degrees * std::numbers::pi / 180.0; }
constexpr double degrees(double radians) { return radians * 180.0 / std::numbers::pi; }

}  // namespace sumpwright::build
