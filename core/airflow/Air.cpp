#include "airflow/Air.h"

#include <cmath>
#include <limits>

namespace sumpwright::airflow {

namespace {

double kelvin(const Air& air) {
  const double kelvin = air.temperature_c + 273.15;
  return kelvin > 0.0 ? kelvin : std::numeric_limits<double>::quiet_NaN();
}

}  // namespace

bool plausible(const Air& air) {
  return air.temperature_c >= -60.0 && air.temperature_c <= 80.0 && air.pressure_pa >= 50e3 &&
         air.pressure_pa <= 120e3;
}

double viscosity_pa_s(const Air& air) {
  const double t = kelvin(air);
  return 1.458e-6 * t * std::sqrt(t) / (t + 110.4);
}

double density_kg_m3(const Air& air) { return air.pressure_pa / (287.05287 * kelvin(air)); }

}  // namespace sumpwright::airflow
