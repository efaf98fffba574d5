// Random systems of sumps, pipes and fans against SciPy (airflow_reference.py).

#include <gtest/gtest.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <string>

#include "airflow/Duty.h"
#include "core/airflow/RandomSystem.h"
#include "external/RunPython.h"

namespace sumpwright::airflow {
namespace {

using nlohmann::json;

json toJson(const Pipe& pipe) {
  return {{"bore_m", pipe.bore_m},
          {"length_m", pipe.length_m},
          {"roughness_m", pipe.roughness_m},
          {"k", sumOfK(pipe.fittings)}};
}

json toJson(const DutyOptions& options, const CurveLaw& law) {
  json out = {
      {"air",
       {{"temperature_c", options.air.temperature_c}, {"pressure_pa", options.air.pressure_pa}}},
      {"house_pa", options.house.pa()},
      {"ground", json::array()},
      {"legs", json::array()},
      {"lines", json::array()}};
  const std::size_t n = options.legs.size();
  for (std::size_t i = 0; i < n; ++i) {
    const auto row = options.ground_pa_s_m3.begin() + static_cast<std::ptrdiff_t>(i * n);
    out["ground"].push_back(std::vector<double>(row, row + static_cast<std::ptrdiff_t>(n)));
    const Leg& leg = options.legs[i];
    out["legs"].push_back({{"line", leg.line},
                           {"pipe", toJson(leg.pipe)},
                           {"valve_k", valveK(leg.valve)},
                           {"inertia", leg.inertia_pa_s2_m6},
                           {"background_pa", leg.background.pa()},
                           {"annulus",
                            {{"hole_m", leg.annulus.hole_m},
                             {"pipe_od_m", leg.annulus.pipe_od_m},
                             {"depth_m", leg.annulus.depth_m},
                             {"open_share", leg.annulus.open_share}}}});
  }
  for (const FanLine& line : options.lines) {
    out["lines"].push_back({{"pipe", toJson(line.pipe)},
                            {"speed", line.speed},
                            {"fan",
                             {{"shut_off_pa", law.shut_off.pa()},
                              {"free_flow_m3_s", law.free_flow.m3PerS()},
                              {"exponent", law.exponent}}}});
  }
  return out;
}

TEST(AirflowScipy, DutyPointsAgree) {
  std::vector<DutyOptions> systems;
  json cases = json::array();
  for (int i = 0; i < 60; ++i) {
    support::Random random(support::baseSeed() + static_cast<std::uint64_t>(i));
    const int legs = random.between(1, 5);
    DutyOptions options = randomSystem(random, {legs, random.between(1, std::min(legs, 2))});
    const CurveLaw law{base::Pressure::ofPa(random.uniform(150.0, 1000.0)),
                       base::Flow::ofM3PerH(random.uniform(120.0, 400.0)),
                       random.uniform(1.2, 2.5),
                       {},
                       {}};
    for (FanLine& line : options.lines) line.curve = FanCurve::byLaw(law).value();
    cases.push_back(toJson(options, law));
    systems.push_back(std::move(options));
  }
  const std::filesystem::path file = std::filesystem::temp_directory_path() /
                                     ("sumpwright-airflow-" + std::to_string(getpid()) + ".json");
  std::ofstream(file) << cases.dump();
  const support::PythonRun ran = support::runPython("airflow_reference.py", file.string());
  std::filesystem::remove(file);
  if (ran.skipped()) GTEST_SKIP() << "python3-scipy is not installed";
  ASSERT_EQ(ran.status, 0) << ran.output;
  const json flows = json::parse(ran.output);
  ASSERT_EQ(flows.size(), systems.size());
  for (std::size_t i = 0; i < systems.size(); ++i) {
    SCOPED_TRACE("case " + std::to_string(i));
    const DutySummary duty = solveDuty(systems[i]);
    ASSERT_EQ(duty.stop, DutyStop::converged);
    ASSERT_EQ(flows[i].size(), duty.legs.size());
    for (std::size_t leg = 0; leg < duty.legs.size(); ++leg)
      EXPECT_NEAR(duty.legs[leg].ground.m3PerH(), 3600.0 * flows[i][leg].get<double>(), 1e-5);
  }
}

}  // namespace
}  // namespace sumpwright::airflow
