#include <gtest/gtest.h>

#include <cmath>
#include <utility>

#include "airflow/FanCurve.h"
#include "support/Seed.h"

namespace sumpwright::airflow {
namespace {

using base::Flow;
using base::Pressure;

std::vector<CurvePoint> points(std::vector<std::pair<double, double>> rows) {
  std::vector<CurvePoint> out;
  for (const auto& [q, p] : rows) out.push_back({Flow::ofM3PerH(q), Pressure::ofPa(p), {}});
  return out;
}

std::string onlyId(const base::Problems& problems) {
  return problems.size() == 1 ? problems[0].message.id + " " + problems[0].pointer
                              : std::to_string(problems.size()) + " problems";
}

TEST(FanCurve, RefusesWhatIsNoFallingCurve) {
  const auto refusal = [](std::vector<CurvePoint> rows) {
    return onlyId(FanCurve::through(std::move(rows)).problems());
  };
  EXPECT_EQ(refusal(points({{0, 100}, {100, 0}})), "fans.points.few /points");
  EXPECT_EQ(refusal(points({{0, 100}, {100, 120}, {200, 0}})),
            "fans.points.not-falling /points/1/pressure_pa");
  EXPECT_EQ(refusal(points({{0, 100}, {100, 100}, {200, 0}})),
            "fans.points.not-falling /points/1/pressure_pa");
  EXPECT_EQ(refusal(points({{0, 100}, {100, 50}, {100, 0}})),
            "fans.points.flow-order /points/2/flow_m3_h");
  EXPECT_EQ(refusal(points({{0, 100}, {100, 50}, {200, -5}})), "fans.number /points/2/pressure_pa");
  EXPECT_EQ(refusal(points({{std::nan(""), 100}, {100, 50}, {200, 0}})),
            "fans.number /points/0/flow_m3_h");
  std::vector<CurvePoint> half = points({{0, 100}, {100, 50}, {200, 0}});
  half[2].power_w = 20.0;
  EXPECT_EQ(refusal(half), "fans.points.power-missing /points/2");
  EXPECT_EQ(refusal(std::vector<CurvePoint>(kMostPoints + 1)), "fans.points.many /points");
  EXPECT_EQ(onlyId(FanCurve::through(points({{0, 9}, {5, 5}, {9, 0}}), 12.0, "/fans/3").problems()),
            "fans.number /fans/3/density_kg_m3");
}

TEST(FanCurve, RefusesALawThatIsNone) {
  const auto refusal = [](double p0, double q0, double m) {
    return onlyId(FanCurve::byLaw({Pressure::ofPa(p0), Flow::ofM3PerH(q0), m, {}, {}}).problems());
  };
  EXPECT_EQ(refusal(0.0, 300.0, 2.0), "fans.number /law/shut_off_pa");
  EXPECT_EQ(refusal(100.0, -3.0, 2.0), "fans.number /law/free_flow_m3_h");
  EXPECT_EQ(refusal(100.0, 300.0, 0.5), "fans.number /law/exponent");
  EXPECT_EQ(refusal(100.0, 300.0, std::nan("")), "fans.number /law/exponent");
}

/// Random falling points: the curve passes through them, falls throughout, stays between its
/// neighbours, and its slope is that of its values and does not jump.
TEST(FanCurve, ThroughRandomPointsFallsAndStaysBetweenThem) {
  support::forEachSeed(200, [](std::uint64_t seed) {
    support::Random random(seed);
    std::vector<CurvePoint> rows;
    double q = random.chance(0.5) ? 0.0 : random.uniform(0.0, 50.0);
    double p = random.uniform(50.0, 1000.0);
    const int count = random.between(3, 12);
    for (int i = 0; i < count; ++i) {
      rows.push_back({Flow::ofM3PerH(q), Pressure::ofPa(p), {}});
      q += std::pow(10.0, random.uniform(-1.0, 2.0));
      p *= random.uniform(0.05, 0.999);
    }
    const auto curve = FanCurve::through(rows);
    ASSERT_TRUE(curve.ok());
    for (const CurvePoint& row : rows)
      EXPECT_NEAR(curve->at(row.flow, 1.2).pressure.pa(), row.pressure.pa(), 1e-9);
    const double end = q * 1.2;
    double before = curve->at(Flow::ofM3PerH(-5.0), 1.2).pressure.pa();
    constexpr int kSteps = 3000;
    for (int i = 0; i <= kSteps; ++i) {
      const Flow flow = Flow::ofM3PerH(-4.0 + (end + 4.0) * i / kSteps);
      const FanPoint at = curve->at(flow, 1.2);
      EXPECT_LT(at.pressure.pa(), before);
      EXPECT_LE(at.slope_pa_s_m3, 0.0);
      EXPECT_EQ(at.outside, flow < rows.front().flow || flow > rows.back().flow);
      before = at.pressure.pa();
    }
    for (std::size_t i = 0; i + 1 < rows.size(); ++i) {
      const Flow middle = 0.5 * (rows[i].flow + rows[i + 1].flow);
      const Flow h = 1e-6 * (rows[i + 1].flow - rows[i].flow);
      const double slope =
          (curve->at(middle + h, 1.2).pressure - curve->at(middle - h, 1.2).pressure).pa() /
          (2.0 * h.m3PerS());
      EXPECT_NEAR(curve->at(middle, 1.2).slope_pa_s_m3, slope, 1e-4 * std::abs(slope) + 1e-3);
      // No jump at a point: the last and the first double beside it.
      const double knot = rows[i + 1].flow.m3PerS();
      const FanPoint left = curve->at(Flow::ofM3PerS(std::nextafter(knot, 0.0)), 1.2);
      const FanPoint right = curve->at(Flow::ofM3PerS(std::nextafter(knot, 1.0)), 1.2);
      EXPECT_NEAR(left.slope_pa_s_m3, right.slope_pa_s_m3, 1e-6 * std::abs(left.slope_pa_s_m3));
    }
  });
}

// By hand: secants -1 and -3 give the middle slope -2; alpha, beta are within the circle, so the
// first piece at its middle is (100 + 99)/2 + (1/8)(-1 - -2) = 99.625.
TEST(FanCurve, SlopesOfFritschAndCarlsonByHand) {
  EXPECT_EQ(monotoneSlopes({0, 1, 2}, {100, 99, 96}), (std::vector<double>{-1, -2, -3}));
  const auto curve = FanCurve::through({{Flow::ofM3PerS(0), Pressure::ofPa(100), {}},
                                        {Flow::ofM3PerS(1), Pressure::ofPa(99), {}},
                                        {Flow::ofM3PerS(2), Pressure::ofPa(96), {}}});
  ASSERT_TRUE(curve.ok());
  EXPECT_DOUBLE_EQ(curve->at(Flow::ofM3PerS(0.5), 1.2).pressure.pa(), 99.625);
  // Secants -1 and -100: the mean -50.5 is 50.5 times the first, drawn back to 3/sqrt(1 + 50.5²).
  const std::vector<double> drawn = monotoneSlopes({0, 1, 2}, {200, 199, 99});
  const double tau = 3.0 / std::hypot(1.0, 50.5);
  EXPECT_DOUBLE_EQ(drawn[0], -tau);
  EXPECT_DOUBLE_EQ(drawn[1], -tau * 50.5);
  // Level and turning data: level there.
  EXPECT_EQ(monotoneSlopes({0, 1, 2, 3}, {5, 5, 3, 4})[1], 0.0);
  EXPECT_EQ(monotoneSlopes({0, 1, 2, 3}, {5, 5, 3, 4})[2], 0.0);
}

TEST(FanCurve, PowerIsStraightBetweenPointsAndLevelBeyond) {
  std::vector<CurvePoint> rows = points({{0, 100}, {100, 50}, {200, 0}});
  rows[0].power_w = 10.0;
  rows[1].power_w = 20.0;
  rows[2].power_w = 25.0;
  const auto curve = FanCurve::through(rows);
  ASSERT_TRUE(curve.ok());
  EXPECT_DOUBLE_EQ(*curve->at(Flow::ofM3PerH(50), 1.2).power_w, 15.0);
  EXPECT_DOUBLE_EQ(*curve->at(Flow::ofM3PerH(400), 1.2).power_w, 25.0);
  EXPECT_FALSE(FanCurve::through(points({{0, 9}, {5, 5}, {9, 0}}))->at(Flow(), 1.2).power_w);
}

// Fan laws: flow with n, pressure with density and n², power with density and n³.
TEST(FanCurve, DensityAndSpeedByTheFanLaws) {
  const auto curve = FanCurve::byLaw({Pressure::ofPa(400), Flow::ofM3PerH(300), 2.0, 40.0, 60.0});
  ASSERT_TRUE(curve.ok());
  const FanPoint plain = curve->at(Flow::ofM3PerH(150), 1.2);
  EXPECT_DOUBLE_EQ(plain.pressure.pa(), 300.0);
  EXPECT_DOUBLE_EQ(*plain.power_w, 50.0);
  const FanPoint slow = curve->at(Flow::ofM3PerH(75), 1.08, 0.5);
  EXPECT_DOUBLE_EQ(slow.pressure.pa(), 300.0 * 0.9 * 0.25);
  EXPECT_DOUBLE_EQ(*slow.power_w, 50.0 * 0.9 * 0.125);
  EXPECT_DOUBLE_EQ(slow.slope_pa_s_m3, plain.slope_pa_s_m3 * 0.9 * 0.5);
}

TEST(FanCurve, AStandingFanDoesNothing) {
  const FanPoint still = FanCurve().at(Flow::ofM3PerH(100), 1.2);
  EXPECT_EQ(still.pressure, Pressure());
  EXPECT_EQ(still.power_w, 0.0);
  EXPECT_EQ(FanCurve().lastFlow(), Flow());
}

}  // namespace
}  // namespace sumpwright::airflow
