#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "airflow/Duty.h"
#include "airflow/DutyRemarks.h"

namespace sumpwright::airflow {
namespace {

using base::Flow;
using base::Pressure;
using testing::Contains;
using testing::IsEmpty;
using testing::Not;

FanCurve mediumFan() {
  return FanCurve::byLaw({Pressure::ofPa(420), Flow::ofM3PerH(330), 2.0, 45.0, 70.0}).value();
}

/// `n` equal sumps on one fan, far from each other.
DutyOptions system(std::size_t n, double ground = 5000.0) {
  DutyOptions options;
  Leg leg;
  leg.pipe.length_m = 3.0;
  leg.pipe.fittings = {{FittingKind::sharp_inlet, 1, {}}, {FittingKind::bend_90, 2, {}}};
  for (std::size_t i = 0; i < n; ++i) {
    leg.sump = "S" + std::to_string(i + 1);
    options.legs.push_back(leg);
  }
  FanLine line{"Fan", mediumFan(), 1.0, {}};
  line.pipe.length_m = 4.0;
  line.pipe.fittings = {{FittingKind::exit, 1, {}}};
  options.lines = {line};
  options.ground_pa_s_m3.assign(n * n, 0.1 * ground);
  for (std::size_t i = 0; i < n; ++i) options.ground_pa_s_m3[i * n + i] = ground;
  return options;
}

std::vector<std::string> ids(const std::vector<base::Message>& messages) {
  std::vector<std::string> out;
  for (const base::Message& message : messages) out.push_back(message.id);
  return out;
}

TEST(Duty, ASoundSystemHasNothingToRemark) {
  const DutySummary duty = solveDuty(system(1));
  EXPECT_EQ(duty.stop, DutyStop::converged);
  EXPECT_TRUE(duty.ok());
  EXPECT_THAT(duty.problems, IsEmpty());
  EXPECT_THAT(duty.remarks, IsEmpty());
  EXPECT_LE(duty.residual, Pressure::ofPa(1e-8));
  EXPECT_GT(duty.legs[0].ground, Flow::ofM3PerH(100.0));
  EXPECT_EQ(duty.legs[0].ground, duty.lines[0].flow);
  EXPECT_NEAR(*duty.lines[0].power_w, 45.0 * density_kg_m3({}) / 1.2, 25.0);
}

TEST(Duty, EveryFaultOfTheInputIsNamed) {
  const auto fault = [](auto change) {
    DutyOptions options = system(2);
    change(options);
    const DutySummary duty = solveDuty(options);
    EXPECT_EQ(duty.stop, DutyStop::unusable_input);
    EXPECT_THAT(duty.legs, IsEmpty());
    return duty.problems.size() == 1 ? duty.problems[0].message.id + " " + duty.problems[0].pointer
                                     : std::to_string(duty.problems.size()) + " problems";
  };
  EXPECT_EQ(fault([](DutyOptions& o) { o.legs.clear(); }), "airflow.input.count /legs");
  EXPECT_EQ(fault([](DutyOptions& o) { o.lines.clear(); }), "airflow.input.count /lines");
  EXPECT_EQ(fault([](DutyOptions& o) { o.legs.resize(51); }), "airflow.input.count /legs");
  EXPECT_EQ(fault([](DutyOptions& o) { o.legs[1].line = 1; }), "airflow.input.line /legs/1/line");
  EXPECT_EQ(fault([](DutyOptions& o) { o.legs[1].pipe.bore_m = 0.0; }),
            "airflow.input.pipe /legs/1/pipe");
  EXPECT_EQ(fault([](DutyOptions& o) { o.lines[0].pipe.length_m = std::nan(""); }),
            "airflow.input.pipe /lines/0/pipe");
  EXPECT_EQ(fault([](DutyOptions& o) { o.legs[0].annulus.open_share = 2.0; }),
            "airflow.input.annulus /legs/0/annulus");
  EXPECT_EQ(fault([](DutyOptions& o) { o.legs[0].inertia_pa_s2_m6 = -1.0; }),
            "airflow.input.number /legs/0/inertia_pa_s2_m6");
  EXPECT_EQ(fault([](DutyOptions& o) { o.legs[0].background = Pressure::ofPa(std::nan("")); }),
            "airflow.input.number /legs/0/background");
  EXPECT_EQ(fault([](DutyOptions& o) { o.lines[0].speed = 0.0; }),
            "airflow.input.number /lines/0/speed");
  EXPECT_EQ(fault([](DutyOptions& o) { o.house = Pressure::ofPa(INFINITY); }),
            "airflow.input.number /house");
  EXPECT_EQ(fault([](DutyOptions& o) { o.max_iterations = 0; }),
            "airflow.input.number /max_iterations");
  EXPECT_EQ(fault([](DutyOptions& o) { o.air.temperature_c = 300.0; }), "airflow.input.air /air");
  EXPECT_EQ(fault([](DutyOptions& o) { o.ground_pa_s_m3.pop_back(); }),
            "airflow.input.ground-size /ground_pa_s_m3");
  EXPECT_EQ(fault([](DutyOptions& o) { o.ground_pa_s_m3[1] = o.ground_pa_s_m3[2] = 9000.0; }),
            "airflow.input.ground /ground_pa_s_m3");
  EXPECT_EQ(fault([](DutyOptions& o) { o.ground_pa_s_m3[0] = std::nan(""); }),
            "airflow.input.ground /ground_pa_s_m3");
}

TEST(Duty, ASecondSumpStealsFromTheFirst) {
  const Flow alone = solveDuty(system(1)).legs[0].ground;
  const DutySummary both = solveDuty(system(2));
  EXPECT_LT(both.legs[0].ground, alone);
  EXPECT_GT(both.lines[0].flow, alone);
}

TEST(Duty, TheLeakyLegTakesMost) {
  DutyOptions options = system(3, 20000.0);
  options.ground_pa_s_m3[0] = 1500.0;
  options.ground_pa_s_m3[1] = options.ground_pa_s_m3[2] = 100.0;
  options.ground_pa_s_m3[3] = options.ground_pa_s_m3[6] = 100.0;
  const DutySummary duty = solveDuty(options);
  ASSERT_THAT(ids(duty.remarks), Contains("airflow.leg-takes-most"));
  EXPECT_EQ(std::get<std::string>(duty.remarks[0].find("sump")->value), "S1");
  // Throttled, it does no longer.
  options.legs[0].valve = ValvePosition::quarter;
  const DutySummary throttled = solveDuty(options);
  EXPECT_LT(throttled.legs[0].ground, duty.legs[0].ground);
  EXPECT_GT(throttled.legs[1].ground, duty.legs[1].ground);
}

TEST(Duty, AnUnsealedPipeDrawsFromBesideIt) {
  DutyOptions options = system(1);
  const DutySummary sealed = solveDuty(options);
  options.legs[0].annulus = {0.127, 0.110, 0.1, 1.0};
  const DutySummary leaky = solveDuty(options);
  EXPECT_GT(leaky.lines[0].flow, sealed.lines[0].flow);
  EXPECT_LT(leaky.legs[0].ground, sealed.legs[0].ground);
  EXPECT_LT(leaky.legs[0].pit, sealed.legs[0].pit);
  EXPECT_EQ(leaky.legs[0].total, leaky.legs[0].ground + leaky.legs[0].leak);
  EXPECT_THAT(ids(leaky.remarks), Contains("airflow.annulus-leaks"));
  EXPECT_THAT(ids(sealed.remarks), Not(Contains("airflow.annulus-leaks")));
}

TEST(Duty, FastAirIsRemarkedOnce) {
  DutyOptions options = system(1, 200.0);
  const SpeedLimits limits;
  const DutySummary open = solveDuty(options);
  ASSERT_GT(open.lines[0].speed_m_s, limits.noise_m_s);
  ASSERT_LT(open.lines[0].speed_m_s, limits.condensate_m_s);
  EXPECT_THAT(ids(open.remarks),
              testing::ElementsAre("airflow.speed.noise", "airflow.speed.noise"));
  options.lines[0].pipe.bore_m = options.legs[0].pipe.bore_m = 0.08;
  const DutySummary narrow = solveDuty(options);
  ASSERT_GT(narrow.lines[0].speed_m_s, limits.condensate_m_s);
  EXPECT_THAT(ids(narrow.remarks),
              testing::ElementsAre("airflow.speed.condensate", "airflow.speed.condensate"));
}

TEST(Duty, ClosedValvesStopTheAir) {
  DutyOptions options = system(2);
  options.legs[0].valve = ValvePosition::closed;
  const DutySummary half = solveDuty(options);
  EXPECT_EQ(half.stop, DutyStop::converged);
  EXPECT_NEAR(half.legs[0].ground.m3PerH(), 0.0, 1e-9);
  EXPECT_EQ(half.legs[0].total, Flow());
  // The idle pit still feels the other sump: 500 Pa s/m3 times its flow.
  EXPECT_NEAR(half.legs[0].pit.pa(), 500.0 * half.legs[1].ground.m3PerS(), 1e-6);
  options.legs[1].valve = ValvePosition::closed;
  const DutySummary none = solveDuty(options);
  EXPECT_EQ(none.stop, DutyStop::no_flow);
  EXPECT_TRUE(none.ok());
  EXPECT_EQ(none.lines[0].flow, Flow());
  EXPECT_NEAR(none.lines[0].fan.pa(), 420.0 * density_kg_m3({}) / 1.2, 1e-9);
  EXPECT_THAT(ids(none.remarks), testing::ElementsAre("airflow.no-flow"));
}

// A closed leg whose pipe is not sealed: what leaks in goes into the ground.
TEST(Duty, AClosedLeakyLegFeedsTheGround) {
  DutyOptions options = system(2);
  options.legs[0].valve = ValvePosition::closed;
  options.legs[0].annulus = {0.127, 0.110, 0.1, 1.0};
  const DutySummary duty = solveDuty(options);
  ASSERT_EQ(duty.stop, DutyStop::converged);
  EXPECT_LT(duty.legs[0].ground, Flow());
  EXPECT_NEAR((duty.legs[0].ground + duty.legs[0].leak).m3PerH(), 0.0, 1e-6);
}

TEST(Duty, AStandingFanInAColdHouseBlowsIntoTheGround) {
  DutyOptions options = system(1);
  options.lines[0].curve = FanCurve();
  options.house = Pressure::ofPa(-5.0);
  const DutySummary duty = solveDuty(options);
  ASSERT_EQ(duty.stop, DutyStop::converged);
  EXPECT_LT(duty.lines[0].flow, Flow());
  EXPECT_THAT(ids(duty.remarks), Contains("airflow.flows-back"));
}

TEST(Duty, BeyondItsPointsAFanIsDrawnOnAndSaid) {
  DutyOptions options = system(1);
  options.lines[0].curve = FanCurve::through({{Flow::ofM3PerH(0), Pressure::ofPa(420), {}},
                                              {Flow::ofM3PerH(30), Pressure::ofPa(415), {}},
                                              {Flow::ofM3PerH(60), Pressure::ofPa(405), {}}})
                               .value();
  const DutySummary duty = solveDuty(options);
  EXPECT_TRUE(duty.lines[0].outside_curve);
  EXPECT_THAT(ids(duty.remarks), Contains("airflow.outside-curve"));
}

TEST(Duty, TooFewIterationsAreSaid) {
  DutyOptions options = system(2);
  options.max_iterations = 1;
  const DutySummary duty = solveDuty(options);
  EXPECT_EQ(duty.stop, DutyStop::not_solved);
  EXPECT_FALSE(duty.ok());
  EXPECT_THAT(ids(duty.remarks), Contains("airflow.not-solved"));
}

TEST(Duty, TwoFansServeTheirOwnSumps) {
  DutyOptions options = system(2);
  options.lines.push_back(options.lines[0]);
  options.legs[1].line = 1;
  const DutySummary two = solveDuty(options);
  ASSERT_EQ(two.stop, DutyStop::converged);
  EXPECT_NEAR(two.legs[0].ground.m3PerH(), two.legs[1].ground.m3PerH(), 1e-6);
  EXPECT_GT(two.legs[0].ground, solveDuty(system(2)).legs[0].ground);
}

TEST(StuckOpen, NamesTheLegThatLoses) {
  DutyOptions options = system(3, 2000.0);
  options.legs[1].valve = ValvePosition::quarter;
  const std::vector<StuckLeg> stuck = stuckOpen(options);
  ASSERT_EQ(stuck.size(), 1U);
  EXPECT_EQ(stuck[0].leg, 1U);
  EXPECT_NE(stuck[0].robbed, 1U);
  EXPECT_LT(stuck[0].after, stuck[0].before);
  EXPECT_EQ(stuck[0].remark.id, "airflow.stuck-open");
  EXPECT_GT(stuck[0].duty.legs[1].total, solveDuty(options).legs[1].total);
}

TEST(StuckOpen, NothingToSayWithoutThrottledLegs) {
  EXPECT_THAT(stuckOpen(system(3)), IsEmpty());
  DutyOptions broken = system(2);
  broken.legs[0].valve = ValvePosition::half;
  broken.ground_pa_s_m3.clear();
  EXPECT_THAT(stuckOpen(broken), IsEmpty());
}

TEST(Inertia, NeedsADepthAndARadius) {
  EXPECT_GT(inertia_pa_s2_m6(1000.0, 0.15, 0.3, {}), 0.0);
  EXPECT_TRUE(std::isnan(inertia_pa_s2_m6(1000.0, 0.0, 0.3, {})));
  EXPECT_TRUE(std::isnan(inertia_pa_s2_m6(1000.0, 0.15, -0.3, {})));
}

}  // namespace
}  // namespace sumpwright::airflow
