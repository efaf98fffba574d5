#include <gtest/gtest.h>

#include <cmath>

#include "airflow/Annulus.h"
#include "airflow/Friction.h"
#include "airflow/Pipe.h"
#include "airflow/RunningCost.h"

namespace sumpwright::airflow {
namespace {

using base::Flow;
using base::Pressure;

Pipe usualPipe() {
  Pipe pipe;
  pipe.length_m = 8.0;
  pipe.fittings = {{FittingKind::sharp_inlet, 1, {}}, {FittingKind::exit, 1, {}}};
  return pipe;
}

TEST(Air, ImplausibleAirIsTold) {
  EXPECT_TRUE(plausible(Air{}));
  EXPECT_FALSE(plausible(Air{std::nan(""), 101325.0}));
  EXPECT_FALSE(plausible(Air{10.0, 1013.25}));
  EXPECT_FALSE(plausible(Air{283.15, 101325.0}));
  EXPECT_TRUE(std::isnan(density_kg_m3({-300.0, 101325.0})));
  EXPECT_TRUE(std::isnan(viscosity_pa_s({-273.15, 101325.0})));
}

TEST(Friction, ColebrookSolvesItsEquation) {
  for (double re = 100.0; re < 2e9; re *= 1.7) {
    for (const double roughness : {0.0, 1e-6, 1e-3, 0.05}) {
      const double x = 1.0 / std::sqrt(colebrook(re, roughness).factor);
      EXPECT_NEAR(x, -2.0 * std::log10(roughness / 3.7 + 2.51 * x / re), 1e-13 * x)
          << re << ' ' << roughness;
    }
  }
}

TEST(Friction, SlopeIsThatOfTheFactor) {
  for (const double re : {500.0, 2299.0, 2301.0, 2800.0, 3500.0, 3999.0, 4001.0, 5e4, 1e6}) {
    const double h = 1e-4 * re < 0.5 ? 1e-4 * re : 0.5;
    const double slope =
        (friction(re + h, 1e-4).factor - friction(re - h, 1e-4).factor) / (2.0 * h);
    EXPECT_NEAR(friction(re, 1e-4).slope, slope, 2e-3 * std::abs(slope) + 1e-9) << re;
  }
}

TEST(Friction, NeitherFactorNorSlopeJumps) {
  for (const double re : {kLaminarUpTo, kTurbulentFrom}) {
    const Friction below = friction(re * (1.0 - 1e-12), 1e-3);
    const Friction above = friction(re * (1.0 + 1e-12), 1e-3);
    EXPECT_NEAR(below.factor, above.factor, 1e-12);
    EXPECT_NEAR(below.slope, above.slope, 1e-12);
  }
}

TEST(Friction, StillAirHasNone) {
  EXPECT_EQ(friction(0.0, 0.0).factor, 0.0);
  EXPECT_EQ(friction(-5.0, 0.0).slope, 0.0);
}

TEST(Pipe, LaminarFlowIsPoiseuilles) {
  Pipe pipe = usualPipe();
  pipe.fittings.clear();
  const Air air;
  const Flow q = Flow::ofM3PerH(2.0);
  const double d = pipe.bore_m;
  EXPECT_NEAR(pipeLoss(pipe, q, air).loss.pa(),
              128.0 * viscosity_pa_s(air) * pipe.length_m * q.m3PerS() / (M_PI * d * d * d * d),
              1e-12);
}

TEST(Pipe, LossIsOddRisesAndHasItsSlope) {
  const Pipe pipe = usualPipe();
  const Air air;
  double before = 0.0;
  for (double q = 0.5; q < 600.0; q *= 1.05) {
    const PipeLoss loss = pipeLoss(pipe, Flow::ofM3PerH(q), air);
    EXPECT_GT(loss.loss.pa(), before) << q;
    before = loss.loss.pa();
    EXPECT_EQ(pipeLoss(pipe, Flow::ofM3PerH(-q), air).loss, -loss.loss);
    const Flow h = Flow::ofM3PerH(1e-4 * q);
    const double slope = (pipeLoss(pipe, Flow::ofM3PerH(q) + h, air).loss -
                          pipeLoss(pipe, Flow::ofM3PerH(q) - h, air).loss)
                             .pa() /
                         (2.0 * h.m3PerS());
    EXPECT_NEAR(loss.slope_pa_s_m3, slope, 1e-5 * slope) << q;
  }
}

TEST(Pipe, StillAirCostsNothing) {
  const PipeLoss loss = pipeLoss(usualPipe(), Flow(), {});
  EXPECT_EQ(loss.loss, Pressure());
  EXPECT_EQ(loss.speed_m_s, 0.0);
  EXPECT_GT(loss.slope_pa_s_m3, 0.0);
  EXPECT_EQ(pipeLoss(Pipe{}, Flow::ofM3PerH(100.0), {}).loss, Pressure());
}

TEST(Pipe, ImplausiblePipesAreTold) {
  EXPECT_TRUE(plausible(usualPipe()));
  const auto broken = [](auto change) {
    Pipe pipe = usualPipe();
    change(pipe);
    return !plausible(pipe);
  };
  EXPECT_TRUE(broken([](Pipe& p) { p.bore_m = 110.0; }));
  EXPECT_TRUE(broken([](Pipe& p) { p.bore_m = std::nan(""); }));
  EXPECT_TRUE(broken([](Pipe& p) { p.length_m = -1.0; }));
  EXPECT_TRUE(broken([](Pipe& p) { p.roughness_m = 0.02; }));
  EXPECT_TRUE(broken([](Pipe& p) { p.fittings[0].count = -1; }));
  EXPECT_TRUE(broken([](Pipe& p) { p.fittings[0].k = -0.1; }));
}

TEST(Fittings, TableIsInOrderAndSourced) {
  const auto table = fittingTable();
  ASSERT_EQ(table.size(), std::size(kFittingNames));
  for (std::size_t i = 0; i < table.size(); ++i) {
    EXPECT_EQ(static_cast<std::size_t>(table[i].kind), i);
    EXPECT_EQ(table[i].name, kFittingNames[i]);
    EXPECT_GT(table[i].k, 0.0);
    EXPECT_FALSE(table[i].source.empty());
  }
}

// Crane TP 410: flush sharp inlet 0.5, projecting 0.78; Munson: flanged bend 0.3; exit 1.
TEST(Fittings, OwnKReplacesTheTables) {
  const std::vector<Fitting> fittings = {{FittingKind::projecting_inlet, 1, {}},
                                         {FittingKind::bend_90, 2, {}},
                                         {FittingKind::exit, 1, 1.4},
                                         {FittingKind::bend_45, 0, {}}};
  EXPECT_DOUBLE_EQ(sumOfK(fittings), 0.78 + 2 * 0.3 + 1.4);
  EXPECT_EQ(sumOfK({}), 0.0);
}

TEST(Fittings, AValveThrottlesMoreTheMoreItIsShut) {
  double before = -1.0;
  for (const auto position :
       {ValvePosition::none, ValvePosition::open, ValvePosition::three_quarters,
        ValvePosition::half, ValvePosition::quarter, ValvePosition::closed}) {
    EXPECT_GT(valveK(position), before);
    before = valveK(position);
  }
  EXPECT_TRUE(std::isinf(before));
}

TEST(Annulus, LeakSolvesItsEquation) {
  const Annulus gap{0.127, 0.110, 0.1, 0.5};
  const Air air;
  for (const double dp : {1e-9, 0.1, 5.0, 300.0}) {
    const LeakFlow leak = leakFlow(gap, Pressure::ofPa(dp), air);
    const double w = 0.0085;
    const double round = 0.5 * M_PI * 0.1185;
    const double g = round * w * w * w / (12.0 * viscosity_pa_s(air) * 0.1);
    const double a = 0.6 * round * w;
    const double q = leak.flow.m3PerS();
    EXPECT_NEAR(q / g + 0.5 * density_kg_m3(air) * q * q / (a * a), dp, 1e-12 * dp);
    EXPECT_EQ(leakFlow(gap, Pressure::ofPa(-dp), air).flow, -leak.flow);
    const double h = 1e-3 * dp;
    const double slope = (leakFlow(gap, Pressure::ofPa(dp + h), air).flow.m3PerS() -
                          leakFlow(gap, Pressure::ofPa(dp - h), air).flow.m3PerS()) /
                         (2.0 * h);
    EXPECT_NEAR(leak.slope_m3_s_pa, slope, 1e-5 * slope);
  }
}

TEST(Annulus, SealedOrTightHasNoLeak) {
  EXPECT_EQ(leakFlow({0.127, 0.110, 0.1, 0.0}, Pressure::ofPa(100.0), {}).flow, Flow());
  EXPECT_EQ(leakFlow({0.110, 0.110, 0.1, 1.0}, Pressure::ofPa(100.0), {}).flow, Flow());
  EXPECT_FALSE(plausible(Annulus{0.127, 0.11, 0.1, 1.5}));
  EXPECT_FALSE(plausible(Annulus{0.127, 0.11, 0.0, 1.0}));
}

TEST(RunningCost, NeedsATariffForMoney) {
  EXPECT_DOUBLE_EQ(runningCost(45.0, {}).energy_kwh, 394.2);
  EXPECT_FALSE(runningCost(45.0, {}).cost_per_year);
  EXPECT_DOUBLE_EQ(*runningCost(45.0, 0.35).cost_per_year, 394.2 * 0.35);
  EXPECT_EQ(*runningCost(45.0, 0.0).cost_per_year, 0.0);
  EXPECT_FALSE(runningCost(45.0, -1.0).cost_per_year);
  EXPECT_FALSE(runningCost(std::nan(""), 0.35).cost_per_year);
}

}  // namespace
}  // namespace sumpwright::airflow
