#pragma once
// A tape laid between two places of the plan; nothing in the job changes.

#include "geometry/Point.h"

namespace sumpwright::tools {

struct TapeReading {
  double distance_m = 0.0;
  double right_m = 0.0;      ///< across the sheet, >= 0
  double up_m = 0.0;         ///< up the sheet, >= 0
  double bearing_deg = 0.0;  ///< from true north, clockwise, [0, 360); 0 for no distance
  double slope_deg = 0.0;    ///< to the sheet's horizontal, [0, 90]
};

/// `north_deg` is Plan::north_deg.
TapeReading measured(const geometry::Segment& tape, double north_deg);

}  // namespace sumpwright::tools
