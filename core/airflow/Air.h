#pragma once
// What moist, dusty soil gas is counted as: dry air.

namespace sumpwright::airflow {

struct Air {
  /// Soil gas in the pipe; own figure, near the yearly mean of the ground under a house.
  double temperature_c = 10.0;
  /// Standard atmosphere at sea level (US Standard Atmosphere 1976). 1000 m up it is 11 % less.
  double pressure_pa = 101325.0;
  bool operator==(const Air&) const = default;
};

/// Whether both are finite, the temperature between -60 and 80 °C and the pressure between 50 and
/// 120 kPa (own figures: anything else is a slip of the pen).
bool plausible(const Air& air);

/// Dynamic viscosity, Pa s: Sutherland's law 1.458e-6 T^1.5 / (T + 110.4), T in kelvin
/// (US Standard Atmosphere 1976). It does not depend on pressure. Not a number at or below 0 K.
double viscosity_pa_s(const Air& air);

/// Density, kg/m³: p / (287.05287 T), dry air as an ideal gas (US Standard Atmosphere 1976). Not a
/// number at or below 0 K.
double density_kg_m3(const Air& air);

/// The density that fan curves are drawn for unless they say otherwise, kg/m³ (common practice).
inline constexpr double kFanDensity_kg_m3 = 1.2;

}  // namespace sumpwright::airflow
