#pragma once
// What a fan that never stops uses and costs in a year.

#include <optional>

namespace sumpwright::airflow {

/// 365 days of 24 hours.
inline constexpr double kHoursPerYear = 8760.0;

struct RunningCost {
  double energy_kwh = 0.0;              ///< in a year
  std::optional<double> cost_per_year;  ///< in the tariff's currency; absent without a tariff
  bool operator==(const RunningCost&) const = default;
};

/// `tariff_per_kwh`: what a kilowatt hour costs; there is no default. Power, hours or a tariff
/// below nothing, or not finite, counts as not known: no energy, no cost.
RunningCost runningCost(double power_w, std::optional<double> tariff_per_kwh,
                        double hours_per_year = kHoursPerYear);

}  // namespace sumpwright::airflow
