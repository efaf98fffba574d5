#include "core/airflow/RandomSystem.h"

#include <cmath>
#include <utility>

namespace sumpwright::airflow {

namespace {

using base::Flow;
using base::Pressure;

double logUniform(support::Random& random, double low, double high) {
  return low * std::pow(high / low, random.uniform(0.0, 1.0));
}

Pipe randomPipe(support::Random& random, FittingKind end, bool only_fittings) {
  Pipe pipe;
  pipe.bore_m = random.uniform(0.05, 0.15);
  if (!only_fittings) pipe.length_m = random.uniform(0.0, 15.0);
  pipe.roughness_m = random.uniform(0.0, 1e-5);
  pipe.fittings = {{end, 1, {}},
                   {FittingKind::bend_90, random.between(0, 4), {}},
                   {FittingKind::cowl, random.between(0, 1), random.uniform(0.5, 1.5)}};
  return pipe;
}

/// Own answers on the diagonal and a part shared by all: positive definite, and each sump feels the
/// others less than itself.
std::vector<double> randomGround(support::Random& random, int legs) {
  const auto n = static_cast<std::size_t>(legs);
  const double shared = logUniform(random, 10.0, 2e4);
  std::vector<double> ground(n * n, shared);
  for (std::size_t i = 0; i < n; ++i) ground[i * n + i] += logUniform(random, 200.0, 5e4);
  return ground;
}

}  // namespace

FanCurve randomCurve(support::Random& random) {
  const Pressure shut_off = Pressure::ofPa(random.uniform(100.0, 1200.0));
  const Flow free_flow = Flow::ofM3PerH(random.uniform(100.0, 500.0));
  if (random.chance(0.5))
    return FanCurve::byLaw({shut_off, free_flow, random.uniform(1.0, 3.0), 20.0, 60.0}).value();
  std::vector<CurvePoint> points;
  const int count = random.between(3, 8);
  double share = 1.0;
  for (int i = 0; i < count; ++i) {
    points.push_back({(static_cast<double>(i) / (count - 1)) * free_flow, share * shut_off, {}});
    share = i + 2 == count ? 0.0 : share * random.uniform(0.4, 0.98);
  }
  return FanCurve::through(std::move(points)).value();
}

DutyOptions randomSystem(support::Random& random, const SystemShape& shape) {
  DutyOptions options;
  options.air = {random.uniform(-10.0, 30.0), random.uniform(85e3, 104e3)};
  options.house = Pressure::ofPa(random.uniform(-8.0, 4.0));
  for (int f = 0; f < shape.lines; ++f) {
    options.lines.push_back({"fan " + std::to_string(f + 1), randomCurve(random),
                             random.chance(0.7) ? 1.0 : random.uniform(0.5, 1.2),
                             randomPipe(random, FittingKind::exit, shape.only_fittings)});
  }
  for (int i = 0; i < shape.legs; ++i) {
    Leg leg;
    leg.sump = std::to_string(i + 1);
    leg.line = static_cast<std::size_t>(i < shape.lines ? i : random.between(0, shape.lines - 1));
    leg.pipe = randomPipe(random, FittingKind::sharp_inlet, shape.only_fittings);
    leg.valve = random.oneOf<ValvePosition>(
        {ValvePosition::none, ValvePosition::open, ValvePosition::half, ValvePosition::quarter});
    if (shape.leaks && random.chance(0.4))
      leg.annulus = {0.127, 0.110, random.uniform(0.05, 0.3), random.uniform(0.0, 1.0)};
    leg.inertia_pa_s2_m6 = random.chance(0.3) ? 0.0 : logUniform(random, 100.0, 1e5);
    leg.background = Pressure::ofPa(random.uniform(-3.0, 0.0));
    options.legs.push_back(leg);
  }
  options.ground_pa_s_m3 = randomGround(random, shape.legs);
  return options;
}

}  // namespace sumpwright::airflow
