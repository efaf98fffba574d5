#include "airflow/Friction.h"

#include <cmath>
#include <numbers>

namespace sumpwright::airflow {

double swameeJain(double reynolds, double roughness) {
  const double log = std::log10(roughness / 3.7 + 5.74 / std::pow(reynolds, 0.9));
  return 0.25 / (log * log);
}

Friction colebrook(double reynolds, double roughness) {
  // With x = 1/sqrt f: g(x) = x + 2 log10(e/(3.7 D) + 2.51 x/Re) rises and bends little, so that
  // Newton's method settles in a few steps from any sound start.
  constexpr double kScale = 2.0 / std::numbers::ln10;
  constexpr int kMostSteps = 20;
  const double b = 2.51 / reynolds;
  double x = 1.0 / std::sqrt(swameeJain(reynolds, roughness));
  for (int i = 0; i < kMostSteps; ++i) {
    const double inside = roughness / 3.7 + b * x;
    const double step = (x + kScale * std::log(inside)) / (1.0 + kScale * b / inside);
    x -= step;
    if (std::abs(step) <= 1e-15 * x) break;
  }
  // dx/dRe from g(x, Re) = 0.
  const double inside = roughness / 3.7 + b * x;
  const double gain = kScale * b / inside;
  const double dx = gain * x / reynolds / (1.0 + gain);
  return {1.0 / (x * x), -2.0 * dx / (x * x * x)};
}

Friction friction(double reynolds, double roughness) {
  if (reynolds <= 0.0) return {};
  const Friction laminar{64.0 / reynolds, -64.0 / (reynolds * reynolds)};
  if (reynolds <= kLaminarUpTo) return laminar;
  const Friction turbulent = colebrook(reynolds, roughness);
  if (reynolds >= kTurbulentFrom) return turbulent;
  constexpr double kWidth = kTurbulentFrom - kLaminarUpTo;
  const double t = (reynolds - kLaminarUpTo) / kWidth;
  const double w = t * t * (3.0 - 2.0 * t);
  const double dw = 6.0 * t * (1.0 - t) / kWidth;
  return {
      (1.0 - w) * laminar.factor + w * turbulent.factor,
      (1.0 - w) * laminar.slope + w * turbulent.slope + dw * (turbulent.factor - laminar.factor)};
}

}  // namespace sumpwright::airflow
