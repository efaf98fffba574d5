#include "airflow/SpeedLimits.h"

#include <numbers>

namespace sumpwright::airflow {

base::Flow flowAt(double speed_m_s, double bore_m) {
  return base::Flow::ofM3PerS(speed_m_s * std::numbers::pi / 4.0 * bore_m * bore_m);
}

}  // namespace sumpwright::airflow
