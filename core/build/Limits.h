#pragma once
// What keeps a hole from being drilled, as limits on its entry height h (centre at the outside
// face) and its fall t, the tangent of the angle by which it goes down into the house.
//
// The axis is y = h - t x; the hole's edges stand r sqrt(1 + t^2) above and below it, upright. So
// every limit has the one form
//
//   a + b t + c h - k sqrt(1 + t^2) >= 0,   k >= 0,  c one of -1, 0, 1,
//
// a half plane where k is 0, else the side of one branch of a hyperbola; convex in both cases. For
// distances square to the hole (slab, footing, barrier) the needed distance is part of k; they are
// taken to the drill's line as if it went on past its end. All of it is exact (derived).

#include <vector>

#include "build/BuildUp.h"

namespace sumpwright::build {

enum class LimitKind {
  slab,         ///< under slab and insulation, with cover
  barrier,      ///< under a radon barrier
  dpc,          ///< the hole stays below the damp-proof course
  ground,       ///< from below the ground: wholly below it; from above: wholly above it
  footing,      ///< over the footing top, with cover
  fill,         ///< the middle of the pipe's end lies in the hardcore
  dig,          ///< the dig outside is no deeper than is dug without support
  gentle_fall,  ///< water runs back to the sump; from above the ground 15 degrees
  steep_fall,   ///< no steeper than 45 degrees
  barrel        ///< the drill reaches through the wall
};

/// Whether the hole starts below the ground outside, in a dig, or above it.
enum class Start { below_ground, above_ground };

/// A hole at a limit keeps it: this much is rounding (own figure).
inline constexpr double kSlackRounding_m = 1e-9;

struct Limit {
  LimitKind kind = LimitKind::slab;
  double a = 0.0, b = 0.0, c = 0.0, k = 0.0;
  double needed_m = 0.0;  ///< the distance asked for, part of k (square) or of a
  bool square = false;    ///< the distance is measured square to the hole, else upright
  bool advisory = false;  ///< costs, but refuses nothing
  /// Upright slack of the form above; negative where it fails.
  double slack(double entry_m, double fall) const;
  bool keptBy(double entry_m, double fall) const {
    return slack(entry_m, fall) >= -kSlackRounding_m;
  }
};

/// All limits of a build-up with its footing top at a height. `least_fall` instead of the usual
/// least from below the ground.
std::vector<Limit> limitsOf(const BuildUp& up, Start start, double footing_top_m,
                            double least_fall);

}  // namespace sumpwright::build
