#pragma once
// What the cost of a year is counted with, where the job knows better than the program. Prices are
// decimal text, as in Quote.h.

#include <optional>
#include <string>

namespace sumpwright::plan {

/// Absent or "": the figures and prices of price/RunningYear.h.
struct Running {
  std::optional<double> degree_days;  ///< heating degree days of the place, K d a year
  std::optional<double> house_air;    ///< share of the drawn air that comes from heated rooms, 0..1
  std::string per_kwh;                ///< of electricity, in the price book's currency
  std::string heat_per_kwh;           ///< of heat as it is made in this house
  bool operator==(const Running&) const = default;
};

}  // namespace sumpwright::plan
