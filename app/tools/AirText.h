#pragma once
// Suction and flow as a person types them: a figure alone is in the units on display, one with its
// unit means what it says: "5", "5 Pa", "0.02 in. w.c.", "0.02\"", "120 m³/h", "70 cfm", "33 l/s".
// A comma is a decimal mark; signs are refused. Total: any text gives a figure or nothing.

#include <optional>
#include <string>
#include <string_view>

namespace sumpwright::tools {

enum class AirUnits {
  metric,    ///< Pa, m³/h
  customary  ///< inches of water column, cubic feet a minute
};

std::optional<double> readPressure_pa(std::string_view text, AirUnits bare);
std::optional<double> readFlow_m3_h(std::string_view text, AirUnits bare);

/// The figure alone, as it is typed: at most `digits` that count, no trailing zeros.
std::string typedPressure(double pa, AirUnits units, int digits = 3);
std::string typedFlow(double m3_h, AirUnits units, int digits = 3);
/// "Pa", "in. w.c."; "m³/h", "cfm".
const char* pressureUnit(AirUnits units);
const char* flowUnit(AirUnits units);

}  // namespace sumpwright::tools
