#pragma once
// How figures that may not be told too large are rounded down.

#include <cmath>

namespace sumpwright::base {

/// The whole number at or below it. A hair (1e-6) below one is that one: 100 x 0.29 is
/// 28.999999999999996 in binary, and a met distance of 1.5 m is not 1.49 m.
inline double roundedDown(double value) {
  constexpr double kHair = 1e-6;
  return std::floor(value + kHair);
}

}  // namespace sumpwright::base
