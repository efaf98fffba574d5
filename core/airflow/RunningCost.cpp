#include "airflow/RunningCost.h"

#include <cmath>

namespace sumpwright::airflow {

namespace {

bool known(double value) { return std::isfinite(value) && value >= 0.0; }

}  // namespace

RunningCost runningCost(double power_w, std::optional<double> tariff_per_kwh,
                        double hours_per_year) {
  RunningCost out;
  if (!known(power_w) || !known(hours_per_year)) return out;
  out.energy_kwh = power_w * hours_per_year / 1000.0;
  if (tariff_per_kwh && known(*tariff_per_kwh))
    out.cost_per_year = out.energy_kwh * *tariff_per_kwh;
  return out;
}

}  // namespace sumpwright::airflow
