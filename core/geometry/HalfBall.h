#pragma once
// A dug hollow, taken for half a ball.

#include <cmath>
#include <numbers>

namespace sumpwright::geometry {

/// Radius of a half ball of a volume: (3 V / 2 pi)^(1/3).
inline double halfBallRadius_m(double volume_m3) {
  return std::cbrt(3.0 * volume_m3 / (2.0 * std::numbers::pi));
}

}  // namespace sumpwright::geometry
