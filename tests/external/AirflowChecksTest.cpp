// Published and independently computed figures of air, pipes and fans.

#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <nlohmann/json.hpp>
#include <numbers>

#include "airflow/Duty.h"
#include "airflow/Friction.h"
#include "airflow/Pipe.h"
#include "airflow/RunningCost.h"

namespace sumpwright::airflow {
namespace {

using nlohmann::json;

/// The rows of one table; an absent or empty one fails.
const json& rowsOf(const char* table) {
  static const json all = [] {
    std::ifstream file(SUMPWRIGHT_TESTS_DIR "/external/airflow_checks.json");
    return json::parse(file);
  }();
  const json& rows = all.at(table);
  EXPECT_FALSE(rows.empty()) << table;
  return rows;
}

void expectWithin(double value, double wanted, double rel) {
  EXPECT_NEAR(value, wanted, rel * std::abs(wanted));
}

TEST(AirflowChecks, Air) {
  for (const json& row : rowsOf("air")) {
    SCOPED_TRACE(row.dump());
    const Air air{row["temperature_c"], row["pressure_pa"]};
    expectWithin(viscosity_pa_s(air), row["viscosity_pa_s"], row["rel"]);
    expectWithin(density_kg_m3(air), row["density_kg_m3"], row["rel"]);
  }
}

/// (-1.8 log10((e/(3.7 D))^1.11 + 6.9/Re))^-2 (S. E. Haaland, J. Fluids Engineering 105, 1983).
double haaland(double reynolds, double roughness) {
  const double root = -1.8 * std::log10(std::pow(roughness / 3.7, 1.11) + 6.9 / reynolds);
  return 1.0 / (root * root);
}

TEST(AirflowChecks, FrictionByThreeFormulas) {
  for (const json& row : rowsOf("friction")) {
    SCOPED_TRACE(row.dump());
    const double re = row["reynolds"];
    const double roughness = row["roughness"];
    expectWithin(colebrook(re, roughness).factor, row["colebrook"], row["rel"]);
    expectWithin(friction(re, roughness).factor, row["colebrook"], row["rel"]);
    expectWithin(haaland(re, roughness), row["haaland"], row["rel"]);
    expectWithin(swameeJain(re, roughness), row["swamee_jain"], row["rel"]);
  }
}

TEST(AirflowChecks, FrictionOfTextbookExamples) {
  for (const json& row : rowsOf("books")) {
    SCOPED_TRACE(row["source"].get<std::string>());
    expectWithin(friction(row["reynolds"], row["roughness"]).factor, row["factor"], row["rel"]);
  }
}

// White's examples are of oil and water: f from the program, the head by hand.
TEST(AirflowChecks, HeadLostInTextbookExamples) {
  const json& rows = rowsOf("heads");
  constexpr double kGravity_m_s2 = 9.80665;
  const json& oil = rows[0];
  const double bore = oil["bore_m"];
  const double speed = oil["flow_m3_s"].get<double>() / (std::numbers::pi / 4.0 * bore * bore);
  const double f =
      friction(speed * bore / oil["nu_m2_s"].get<double>(), oil["roughness_m"].get<double>() / bore)
          .factor;
  expectWithin(f * oil["length_m"].get<double>() / bore * speed * speed / (2.0 * kGravity_m_s2),
               oil["head_m"], oil["rel"]);
  const json& water = rows[1];
  const double feet = water["bore_ft"];
  const double fps = water["speed_ft_s"];
  const double fw = friction(fps * feet / water["nu_ft2_s"].get<double>(),
                             water["roughness_ft"].get<double>() / feet)
                        .factor;
  expectWithin(
      fw * water["length_ft"].get<double>() / feet * fps * fps / (2.0 * kGravity_m_s2 / 0.3048),
      water["head_ft"], water["rel"]);
}

TEST(AirflowChecks, LossOfARadonPipe) {
  for (const json& row : rowsOf("pipe")) {
    SCOPED_TRACE(row.dump());
    Pipe pipe;
    pipe.bore_m = row["bore_m"];
    pipe.length_m = row["length_m"];
    pipe.roughness_m = row["roughness_m"];
    pipe.fittings = {{FittingKind::sharp_inlet, 1, {}},
                     {FittingKind::bend_90, 3, {}},
                     {FittingKind::exit, 1, {}}};
    EXPECT_DOUBLE_EQ(sumOfK(pipe.fittings), row["k"]);
    const PipeLoss loss =
        pipeLoss(pipe, base::Flow::ofM3PerH(row["flow_m3_h"]), {row["temperature_c"], 101325.0});
    expectWithin(loss.speed_m_s, row["speed_m_s"], row["rel"]);
    expectWithin(loss.reynolds, row["reynolds"], row["rel"]);
    expectWithin(loss.friction, row["factor"], row["rel"]);
    expectWithin(loss.loss.pa(), row["loss_pa"], row["rel"]);
  }
}

TEST(AirflowChecks, DutyPointInClosedForm) {
  for (const json& row : rowsOf("duty")) {
    SCOPED_TRACE(row["source"].get<std::string>());
    const auto curve = FanCurve::byLaw({base::Pressure::ofPa(row["shut_off_pa"]),
                                        base::Flow::ofM3PerH(row["free_flow_m3_h"]),
                                        2.0,
                                        {},
                                        {}});
    ASSERT_TRUE(curve.ok());
    DutyOptions options;
    // Air of the curve's own density: p/(287.05287 T) = 1.2 kg/m3.
    options.air = {20.0, 1.2 * 287.05287 * 293.15};
    Pipe none;  // costs nothing: no length, no fitting
    options.legs.push_back({"1", 0, none, ValvePosition::none, {}, row["inertia_pa_s2_m6"], {}});
    options.lines.push_back({"fan", *curve, 1.0, none});
    options.ground_pa_s_m3 = {row["ground_pa_s_m3"]};
    for (const DutyMethod method : {DutyMethod::automatic, DutyMethod::newton}) {
      options.method = method;
      const DutySummary duty = solveDuty(options);
      ASSERT_EQ(duty.stop, DutyStop::converged);
      expectWithin(duty.legs[0].ground.m3PerH(), row["flow_m3_h"], row["rel"]);
      expectWithin(duty.lines[0].fan.pa(), row["fan_pa"], row["rel"]);
      expectWithin(row["ground_pa_s_m3"].get<double>() * duty.legs[0].ground.m3PerS(),
                   row["linear_part_pa"], row["rel"]);
    }
  }
}

TEST(AirflowChecks, InertiaAtThePit) {
  for (const json& row : rowsOf("inertia")) {
    // Air of the density of the row.
    const Air air{20.0, row["density_kg_m3"].get<double>() * 287.05287 * 293.15};
    const double q = base::Flow::ofM3PerH(row["flow_m3_h"]).m3PerS();
    // From r1 outwards without end, less the part beyond r2.
    const double b = inertia_pa_s2_m6(row["beta_per_m"], row["depth_m"], row["r1_m"], air) -
                     inertia_pa_s2_m6(row["beta_per_m"], row["depth_m"], row["r2_m"], air);
    expectWithin(b * q * q, row["inertial_pa"], row["rel"]);
  }
}

TEST(AirflowChecks, SpeedLimitsAsFlows) {
  const json& rows = rowsOf("speeds");
  constexpr double kCubicFoot_m3 = 0.3048 * 0.3048 * 0.3048;
  const SpeedLimits limits;
  for (std::size_t i = 0; i < rows[0]["bores_in"].size(); ++i) {
    const double bore = rows[0]["bores_in"][i].get<double>() * 0.0254;
    expectWithin(flowAt(limits.noise_m_s, bore).m3PerS() * 60.0 / kCubicFoot_m3,
                 rows[0]["flows_cfm"][i], rows[0]["rel"]);
  }
  EXPECT_NEAR(flowAt(limits.noise_m_s, rows[1]["bore_m"]).m3PerH(), rows[1]["noise_m3_h"], 0.5);
  EXPECT_NEAR(flowAt(limits.condensate_m_s, rows[1]["bore_m"]).m3PerH(), rows[1]["condensate_m3_h"],
              0.5);
}

TEST(AirflowChecks, EnergyOfAYear) {
  for (const json& row : rowsOf("energy"))
    EXPECT_NEAR(runningCost(row["watts"], {}).energy_kwh, row["kWh"], 0.5);
}

}  // namespace
}  // namespace sumpwright::airflow
