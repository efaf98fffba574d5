// The numbered properties of airflow/Duty.h on random systems, and a slow twin that knows no
// derivative: bisection within bisection.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>

#include "airflow/Duty.h"
#include "core/airflow/RandomSystem.h"

namespace sumpwright::airflow {
namespace {

using base::Flow;
using base::Pressure;
using support::Random;

/// Pressure too much in leg i when the ground gives these flows, straight from the equations.
double disagreement(const DutyOptions& options, const std::vector<double>& q, std::size_t leg) {
  const std::size_t n = options.legs.size();
  std::vector<double> total(n);
  double pit_of_leg = 0.0;
  Flow line_flow;
  for (std::size_t i = 0; i < n; ++i) {
    double pit =
        options.legs[i].background.pa() + options.legs[i].inertia_pa_s2_m6 * q[i] * std::abs(q[i]);
    for (std::size_t j = 0; j < n; ++j) pit += options.ground_pa_s_m3[i * n + j] * q[j];
    total[i] =
        q[i] + leakFlow(options.legs[i].annulus, Pressure::ofPa(pit) - options.house, options.air)
                   .flow.m3PerS();
    if (i == leg) pit_of_leg = pit;
    if (options.legs[i].line == options.legs[leg].line) line_flow += Flow::ofM3PerS(total[i]);
  }
  const FanLine& line = options.lines[options.legs[leg].line];
  const double rho = density_kg_m3(options.air);
  return pit_of_leg +
         pipeLoss(options.legs[leg].pipe, Flow::ofM3PerS(total[leg]), options.air,
                  valveK(options.legs[leg].valve))
             .loss.pa() +
         pipeLoss(line.pipe, line_flow, options.air).loss.pa() - options.house.pa() -
         line.curve.at(line_flow, rho, line.speed).pressure.pa();
}

/// Flows by nested bisection: for each q_0 the others are solved first, and the disagreement of
/// leg 0 then rises with q_0 (its slope is a ratio of positive determinants).
void bisect(const DutyOptions& options, std::vector<double>& q, std::size_t leg) {
  double low = -2.0;
  double high = 2.0;  // m³/s: no fan here comes near
  for (int i = 0; i < 55; ++i) {
    q[leg] = 0.5 * (low + high);
    if (leg + 1 < q.size()) bisect(options, q, leg + 1);
    (disagreement(options, q, leg) > 0.0 ? high : low) = q[leg];
  }
}

double total(const DutySummary& duty) {
  Flow sum;
  for (const LineDuty& line : duty.lines) sum += line.flow;
  return sum.m3PerS();
}

void expectNear(Flow a, Flow b, double m3_h) { EXPECT_NEAR(a.m3PerH(), b.m3PerH(), m3_h); }

TEST(DutyProperty, AgreesWithNestedBisection) {
  support::forEachSeed(60, [](std::uint64_t seed) {
    Random random(seed);
    const int legs = random.between(1, 2);
    const DutyOptions options = randomSystem(random, {legs, random.between(1, legs)});
    std::vector<double> twin(options.legs.size());
    bisect(options, twin, 0);
    const DutySummary duty = solveDuty(options);
    ASSERT_EQ(duty.stop, DutyStop::converged);
    for (std::size_t i = 0; i < twin.size(); ++i)
      expectNear(duty.legs[i].ground, Flow::ofM3PerS(twin[i]), 1e-6);
  });
}

TEST(DutyProperty, ThreeSumpsAgreeWithNestedBisection) {
  support::forEachSeed(2, [](std::uint64_t seed) {
    Random random(seed);
    const DutyOptions options = randomSystem(random, {3, random.between(1, 2)});
    std::vector<double> twin(3);
    bisect(options, twin, 0);
    const DutySummary duty = solveDuty(options);
    ASSERT_EQ(duty.stop, DutyStop::converged);
    for (std::size_t i = 0; i < 3; ++i)
      expectNear(duty.legs[i].ground, Flow::ofM3PerS(twin[i]), 1e-5);
  });
}

TEST(DutyProperty, BracketAndNewtonAgreeOnOneSump) {
  support::forEachSeed(300, [](std::uint64_t seed) {
    Random random(seed);
    DutyOptions options = randomSystem(random, {1, 1});
    const DutySummary bracket = solveDuty(options);
    options.method = DutyMethod::newton;
    const DutySummary newton = solveDuty(options);
    ASSERT_EQ(bracket.stop, DutyStop::converged);
    ASSERT_EQ(newton.stop, DutyStop::converged);
    expectNear(bracket.legs[0].ground, newton.legs[0].ground, 1e-7);
    EXPECT_LT(newton.iterations, 40);
    EXPECT_LT(bracket.iterations, 60);
  });
}

TEST(DutyProperty, AlwaysSolvedAndTheSameTwice) {
  support::forEachSeed(400, [](std::uint64_t seed) {
    Random random(seed);
    const int legs = random.between(2, 8);
    const DutyOptions options = randomSystem(random, {legs, random.between(1, 2)});
    const DutySummary duty = solveDuty(options);
    ASSERT_EQ(duty.stop, DutyStop::converged);
    EXPECT_LT(duty.iterations, 40);
    EXPECT_LE(duty.residual, options.tolerance);
    const DutySummary again = solveDuty(options);
    EXPECT_EQ(duty.legs, again.legs);
    EXPECT_EQ(duty.lines, again.lines);
  });
}

// Property 1.
TEST(DutyProperty, MoreResistanceNeverGivesMoreFlow) {
  support::forEachSeed(300, [](std::uint64_t seed) {
    Random random(seed);
    const DutyOptions options = randomSystem(random, {1, 1});
    const DutySummary before = solveDuty(options);
    if (before.legs[0].ground <= Flow() || before.legs[0].total <= Flow()) return;
    DutyOptions harder = options;
    switch (random.between(0, 5)) {
      case 0:
        harder.ground_pa_s_m3[0] *= random.uniform(1.01, 5.0);
        break;
      case 1:
        harder.legs[0].inertia_pa_s2_m6 += random.uniform(10.0, 1e5);
        break;
      case 2:
        harder.legs[0].pipe.length_m += random.uniform(0.1, 20.0);
        break;
      case 3:
        harder.lines[0].pipe.fittings.push_back({FittingKind::cowl, 3, {}});
        break;
      case 4:
        harder.legs[0].pipe.bore_m *= 0.8;
        break;
      default:
        harder.legs[0].valve = ValvePosition::quarter;
    }
    const DutySummary after = solveDuty(harder);
    ASSERT_EQ(after.stop, DutyStop::converged);
    EXPECT_LE(after.legs[0].ground.m3PerS(), before.legs[0].ground.m3PerS() * (1.0 + 1e-12));
    EXPECT_LE(after.legs[0].total.m3PerS(), before.legs[0].total.m3PerS() * (1.0 + 1e-12));
  });
}

// Property 2.
TEST(DutyProperty, AStrongerFanGivesMoreFlow) {
  support::forEachSeed(300, [](std::uint64_t seed) {
    Random random(seed);
    DutyOptions options = randomSystem(random, {1, 1});
    const double p0 = random.uniform(100.0, 800.0);
    const double q0 = random.uniform(100.0, 400.0);
    const auto curve = [](double p, double q) {
      return FanCurve::byLaw({Pressure::ofPa(p), Flow::ofM3PerH(q), 2.0, {}, {}}).value();
    };
    options.lines[0].curve = curve(p0, q0);
    DutyOptions stronger = options;
    stronger.lines[0].curve = curve(p0 * random.uniform(1.01, 2.0), q0 * random.uniform(1.0, 2.0));
    DutyOptions faster = options;
    faster.lines[0].speed *= random.uniform(1.01, 1.5);
    const double flow = total(solveDuty(options));
    if (flow <= 0.0) return;
    EXPECT_GT(total(solveDuty(stronger)), flow);
    EXPECT_GT(total(solveDuty(faster)), flow);
  });
}

// Property 3.
TEST(DutyProperty, RelabellingRelabels) {
  support::forEachSeed(100, [](std::uint64_t seed) {
    Random random(seed);
    const int legs = random.between(2, 5);
    const DutyOptions options = randomSystem(random, {legs, 2});
    const std::size_t n = options.legs.size();
    DutyOptions turned = options;
    std::reverse(turned.legs.begin(), turned.legs.end());
    std::swap(turned.lines[0], turned.lines[1]);
    for (Leg& leg : turned.legs) leg.line = 1 - leg.line;
    std::reverse(turned.ground_pa_s_m3.begin(), turned.ground_pa_s_m3.end());
    const DutySummary a = solveDuty(options);
    const DutySummary b = solveDuty(turned);
    for (std::size_t i = 0; i < n; ++i)
      expectNear(a.legs[i].ground, b.legs[n - 1 - i].ground, 1e-6);
    expectNear(a.lines[0].flow, b.lines[1].flow, 1e-6);
  });
}

// Property 4: fan pressure times flow = what each part takes, every part computed anew.
TEST(DutyProperty, FanPowerIsWhatThePartsTake) {
  support::forEachSeed(200, [](std::uint64_t seed) {
    Random random(seed);
    const DutyOptions options = randomSystem(random, {random.between(1, 5), 1});
    const std::size_t n = options.legs.size();
    const DutySummary duty = solveDuty(options);
    double taken = pipeLoss(options.lines[0].pipe, duty.lines[0].flow, options.air).loss.pa() *
                   duty.lines[0].flow.m3PerS();
    for (std::size_t i = 0; i < n; ++i) {
      const LegDuty& leg = duty.legs[i];
      const double q = leg.ground.m3PerS();
      double ground = options.legs[i].background.pa() * q +
                      options.legs[i].inertia_pa_s2_m6 * q * std::abs(q) * q;
      for (std::size_t j = 0; j < n; ++j)
        ground += options.ground_pa_s_m3[i * n + j] * q * duty.legs[j].ground.m3PerS();
      taken += ground + leg.pit.pa() * leg.leak.m3PerS() - options.house.pa() * leg.total.m3PerS() +
               pipeLoss(options.legs[i].pipe, leg.total, options.air, valveK(options.legs[i].valve))
                       .loss.pa() *
                   leg.total.m3PerS();
    }
    const double given = duty.lines[0].fan.pa() * duty.lines[0].flow.m3PerS();
    EXPECT_NEAR(taken, given, 1e-7 + 1e-9 * std::abs(given));
  });
}

// Property 5.
TEST(DutyProperty, EqualSumpsShareEqually) {
  support::forEachSeed(50, [](std::uint64_t seed) {
    Random random(seed);
    const int n = random.between(2, 6);
    DutyOptions options = randomSystem(random, {n, 1});
    for (Leg& leg : options.legs) leg = options.legs[0];
    for (std::size_t i = 0; i < options.ground_pa_s_m3.size(); ++i) {
      const bool own = i % static_cast<std::size_t>(n + 1) == 0;
      options.ground_pa_s_m3[i] = own ? options.ground_pa_s_m3[0] : 0.0;
    }
    const DutySummary duty = solveDuty(options);
    ASSERT_EQ(duty.stop, DutyStop::converged);
    for (const LegDuty& leg : duty.legs) {
      expectNear(leg.ground, duty.legs[0].ground, 1e-7);
      expectNear(n * leg.total, duty.lines[0].flow, 1e-6);
    }
  });
}

// Pressures of all parts times a: the same flows. Flows times c: ground by 1/c, squares by 1/c².
TEST(DutyProperty, ScalesAsItsPartsDo) {
  support::forEachSeed(200, [](std::uint64_t seed) {
    Random random(seed);
    const int n = random.between(1, 4);
    DutyOptions options = randomSystem(random, {n, 1, false, true});
    const double p0 = random.uniform(100.0, 800.0);
    const double q0 = random.uniform(100.0, 400.0);
    const double a = random.uniform(0.3, 3.0);
    const double c = random.uniform(0.5, 2.0);
    DutyOptions scaled = options;
    const auto curve = [](double p, double q) {
      return FanCurve::byLaw({Pressure::ofPa(p), Flow::ofM3PerH(q), 1.7, {}, {}}).value();
    };
    options.lines[0].curve = curve(p0, q0);
    options.lines[0].speed = scaled.lines[0].speed = 1.0;
    scaled.lines[0].curve = curve(a * p0, c * q0);
    const auto square = [&](Pipe& pipe, ValvePosition valve) {
      const double k = sumOfK(pipe.fittings) + valveK(valve);
      pipe.fittings = {{FittingKind::cowl, 1, a / (c * c) * k}};
    };
    for (Leg& leg : scaled.legs) {
      square(leg.pipe, leg.valve);
      leg.valve = ValvePosition::none;
      leg.inertia_pa_s2_m6 *= a / (c * c);
      leg.background = a * leg.background;
    }
    square(scaled.lines[0].pipe, ValvePosition::none);
    scaled.house = a * scaled.house;
    for (double& r : scaled.ground_pa_s_m3) r *= a / c;
    const DutySummary plain = solveDuty(options);
    const DutySummary other = solveDuty(scaled);
    ASSERT_EQ(other.stop, DutyStop::converged);
    for (std::size_t i = 0; i < options.legs.size(); ++i) {
      expectNear(other.legs[i].ground, c * plain.legs[i].ground, 1e-6);
      EXPECT_NEAR(other.legs[i].pit.pa(), a * plain.legs[i].pit.pa(), 1e-6);
    }
  });
}

}  // namespace
}  // namespace sumpwright::airflow
