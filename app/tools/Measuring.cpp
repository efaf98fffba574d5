#include "tools/Measuring.h"

#include <cmath>
#include <numbers>

namespace sumpwright::tools {

TapeReading measured(const geometry::Segment& tape, double north_deg) {
  constexpr double kToDegrees = 180.0 / std::numbers::pi;
  const geometry::Vec v = tape.b - tape.a;
  TapeReading reading;
  reading.distance_m = geometry::norm(v);
  reading.right_m = std::abs(v.x);
  reading.up_m = std::abs(v.y);
  if (reading.distance_m <= 0.0) return reading;
  reading.slope_deg = std::atan2(reading.up_m, reading.right_m) * kToDegrees;
  const double sheet_deg = std::atan2(v.x, v.y) * kToDegrees;
  reading.bearing_deg = std::fmod(std::fmod(sheet_deg - north_deg, 360.0) + 360.0, 360.0);
  return reading;
}

}  // namespace sumpwright::tools
