#pragma once
// How fast air may go in the pipe.

#include "base/Quantities.h"
#include "base/Source.h"

namespace sumpwright::airflow {

struct SpeedLimits {
  /// From here on the rush of air at the outlet is objectionable: 1600 ft/min.
  double noise_m_s = 1600.0 * 0.3048 / 60.0;
  /// From here on condensate does not run back down a rising pipe: 2000 ft/min.
  double condensate_m_s = 2000.0 * 0.3048 / 60.0;
  bool operator==(const SpeedLimits&) const = default;
};

/// Source of both.
inline constexpr const char* kSpeedSource = "ANSI/AARST SGM-SF 2017 (revision 12/20), §6.3.8";

/// The flow at a speed in a bore.
base::Flow flowAt(double speed_m_s, double bore_m);

}  // namespace sumpwright::airflow
