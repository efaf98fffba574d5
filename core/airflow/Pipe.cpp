#include "airflow/Pipe.h"

#include <cmath>
#include <numbers>

#include "airflow/Friction.h"

namespace sumpwright::airflow {

bool plausible(const Pipe& pipe) {
  const bool size = pipe.bore_m >= 0.01 && pipe.bore_m <= 1.0 && pipe.length_m >= 0.0 &&
                    pipe.length_m <= 1000.0 && pipe.roughness_m >= 0.0 &&
                    pipe.roughness_m <= 0.05 * pipe.bore_m;
  if (!size) return false;
  for (const Fitting& fitting : pipe.fittings) {
    if (fitting.count < 0 || fitting.count > 1000) return false;
    if (fitting.k && !(*fitting.k >= 0.0 && *fitting.k <= 1000.0)) return false;
  }
  return true;
}

PipeLoss pipeLoss(const Pipe& pipe, base::Flow flow, const Air& air, double extra_k) {
  const double area = std::numbers::pi / 4.0 * pipe.bore_m * pipe.bore_m;
  const double rho = density_kg_m3(air);
  const double mu = viscosity_pa_s(air);
  const double speed = std::abs(flow.m3PerS()) / area;
  const double k = sumOfK(pipe.fittings) + extra_k;
  const double slender = pipe.length_m / pipe.bore_m;

  PipeLoss out;
  out.speed_m_s = speed;
  out.reynolds = rho * speed * pipe.bore_m / mu;
  double loss = 0.5 * rho * speed * speed * k;
  double slope = rho * speed * k;  // d loss / d speed
  if (out.reynolds <= kLaminarUpTo) {
    // 64/Re written out, so that still air divides by nothing.
    const double wall = 32.0 * mu * slender / pipe.bore_m;
    loss += wall * speed;
    slope += wall;
    out.friction = out.reynolds > 0.0 ? 64.0 / out.reynolds : 0.0;
  } else {
    const Friction f = friction(out.reynolds, pipe.roughness_m / pipe.bore_m);
    loss += 0.5 * rho * speed * speed * f.factor * slender;
    slope += 0.5 * rho * speed * slender * (2.0 * f.factor + out.reynolds * f.slope);
    out.friction = f.factor;
  }
  out.loss = base::Pressure::ofPa(std::copysign(loss, flow.m3PerS()));
  out.slope_pa_s_m3 = slope / area;
  return out;
}

}  // namespace sumpwright::airflow
