#include "airflow/Duty.h"

#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstdint>
#include <limits>
#include <numbers>
#include <utility>
#include <vector>

#include "airflow/DutyCheck.h"
#include "airflow/DutyEquations.h"
#include "airflow/DutyRemarks.h"

namespace sumpwright::airflow {

namespace {

using base::Flow;
using base::Pressure;

struct Root {
  std::vector<double> q;
  int iterations = 0;
};

double largest(const std::vector<double>& residual) {
  double most = 0.0;
  for (const double r : residual) {
    if (!std::isfinite(r)) return std::numeric_limits<double>::infinity();
    most = std::max(most, std::abs(r));
  }
  return most;
}

double squared(const std::vector<double>& residual) {
  double sum = 0.0;
  for (const double r : residual) sum += r * r;
  return sum;
}

std::vector<double> moved(std::vector<double> q, double share, const std::vector<double>& step) {
  for (std::size_t i = 0; i < q.size(); ++i) q[i] += share * step[i];
  return q;
}

/// One leg: the residual rises strictly with q, from below nothing to above it.
Root byBracket(const DutyEquations& equations, int max_iterations) {
  Root root{{0.0}};
  const auto residual = [&](double q) {
    ++root.iterations;
    return equations.at({q}).residual[0];
  };
  const double still = residual(0.0);
  if (still == 0.0) return root;
  // Outwards from nothing until the sign turns: 1 m³/h, then twice as much each time.
  const double outwards = still < 0.0 ? 1.0 : -1.0;
  double near = 0.0;
  double at_near = still;
  double far = outwards / 3600.0;
  double at_far = residual(far);
  while (at_far * still > 0.0 && root.iterations < max_iterations) {
    near = far;
    at_near = at_far;
    far *= 2.0;
    at_far = residual(far);
  }
  root.q[0] = far;
  if (at_far * still > 0.0 || at_far == 0.0) return root;
  if (far < near) {
    std::swap(far, near);
    std::swap(at_far, at_near);
  }
  auto most = static_cast<std::uintmax_t>(std::max(1, max_iterations - root.iterations));
  const boost::math::tools::eps_tolerance<double> full(std::numeric_limits<double>::digits);
  const auto [low, high] =
      boost::math::tools::toms748_solve(residual, near, far, at_near, at_far, full, most);
  root.q[0] = std::abs(residual(low)) <= std::abs(residual(high)) ? low : high;
  return root;
}

/// Newton's method; a step is halved until the sum of squares falls. [R] being positive definite,
/// the derivative is regular everywhere, so that every step is downhill and only the solution is
/// level.
Root byNewton(const DutyEquations& equations, const DutyOptions& options) {
  Root root{std::vector<double>(equations.size())};
  DutyEquations::State state = equations.at(root.q);
  constexpr int kMostHalvings = 60;
  // Past the tolerance a few more steps cost little and reach the last digits.
  const double aim = 1e-3 * options.tolerance.pa();
  while (root.iterations < options.max_iterations && largest(state.residual) > aim) {
    ++root.iterations;
    const std::vector<double> step = equations.step(root.q, state);
    const double before = squared(state.residual);
    double share = 1.0;
    std::vector<double> q = moved(root.q, share, step);
    DutyEquations::State next = equations.at(q);
    for (int i = 0; i < kMostHalvings && !(squared(next.residual) < before); ++i) {
      share *= 0.5;
      q = moved(root.q, share, step);
      next = equations.at(q);
    }
    if (!(squared(next.residual) < before)) break;  // as near as doubles come
    root.q = std::move(q);
    state = std::move(next);
  }
  return root;
}

void fill(const DutyOptions& options, const DutyEquations& equations, const Root& root,
          DutySummary& out) {
  const DutyEquations::State state = equations.at(root.q);
  out.iterations = root.iterations;
  out.residual = Pressure::ofPa(largest(state.residual));
  for (std::size_t i = 0; i < options.legs.size(); ++i) {
    const bool closed = equations.closed(i);
    out.legs.push_back({Flow::ofM3PerS(root.q[i]), state.leak[i].flow,
                        closed ? Flow() : Flow::ofM3PerS(state.total[i]),
                        Pressure::ofPa(state.pit[i]), state.leg[i].loss, state.leg[i].speed_m_s});
  }
  for (std::size_t f = 0; f < options.lines.size(); ++f) {
    const FanPoint& fan = state.fan[f];
    out.lines.push_back({Flow::ofM3PerS(state.line_flow[f]), fan.pressure,
                         fan.pressure + options.house - state.line[f].loss, state.line[f].loss,
                         state.line[f].speed_m_s, fan.power_w, fan.outside});
  }
}

DutyStop stopOf(const DutyOptions& options, const DutyEquations& equations,
                const DutySummary& out) {
  if (!(out.residual <= options.tolerance)) return DutyStop::not_solved;
  return equations.allClosed() ? DutyStop::no_flow : DutyStop::converged;
}

}  // namespace

DutySummary solveDuty(const DutyOptions& options) {
  DutySummary out;
  out.problems = dutyProblems(options);
  if (!out.problems.empty()) return out;
  const DutyEquations equations(options);
  const bool bracket = equations.size() == 1 && options.method == DutyMethod::automatic;
  const Root root =
      bracket ? byBracket(equations, options.max_iterations) : byNewton(equations, options);
  fill(options, equations, root, out);
  out.stop = stopOf(options, equations, out);
  out.remarks = dutyRemarks(options, out);
  return out;
}

double inertia_pa_s2_m6(double beta_per_m, double fill_depth_m, double pit_radius_m,
                        const Air& air) {
  if (!(fill_depth_m > 0.0 && pit_radius_m > 0.0)) return std::numeric_limits<double>::quiet_NaN();
  constexpr double kPi = std::numbers::pi;
  return beta_per_m * density_kg_m3(air) /
         (4.0 * kPi * kPi * fill_depth_m * fill_depth_m * pit_radius_m);
}

}  // namespace sumpwright::airflow
