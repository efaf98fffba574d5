// The program's finite volumes beside finite elements of SciPy (suction_fem.py), which share no
// code.

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <fstream>
#include <nlohmann/json.hpp>
#include <string>

#include "external/RunPython.h"
#include "suction/Field.h"
#include "support/Fields.h"

namespace sumpwright {
namespace {

using nlohmann::json;
using suction::Point;

constexpr double kAgreement = 0.005;
const std::string kCases = SUMPWRIGHT_TESTS_DIR "/external/suction_fem_cases.json";

Point pointFrom(const json& pair) { return {pair[0], pair[1]}; }

suction::Polyline lineFrom(const json& points) {
  suction::Polyline line;
  for (const json& point : points) line.push_back(pointFrom(point));
  return line;
}

suction::SuctionModel modelFrom(const json& c) {
  suction::SuctionModel model;
  model.layer = {c["transmissivity_m3_s_pa"], c["leakage_m_s_pa"]};
  model.regions = {support::region(lineFrom(c["outline_m"]), c["joint_m2_s_pa"])};
  if (!c["wall_m"].empty()) {
    model.barriers = {{"wall", lineFrom(c["wall_m"]), c["wall_m2_s_pa"]}};
  }
  return model;
}

TEST(SuctionFem, AgreesWithinHalfAPercent) {
  const support::PythonRun ran = support::runPython("suction_fem.py", "'" + kCases + "'");
  if (ran.skipped()) GTEST_SKIP() << "python3-scipy is not installed";
  ASSERT_EQ(ran.status, 0);
  const json fem = json::parse(ran.output);
  std::ifstream file(kCases);
  const json cases = json::parse(file)["cases"];
  ASSERT_EQ(fem.size(), cases.size());
  for (const auto& [name, c] : cases.items()) {
    for (const bool align : {true, false}) {
      SCOPED_TRACE(name + (align ? ", the house's own grid" : ", the plan's grid"));
      const support::OneSink field(modelFrom(c), {pointFrom(c["sump_m"]), 0.05}, 1.0,
                                   {.cell_m = 0.05, .align = align});
      ASSERT_TRUE(field.ok());
      double worst = 0.0;
      for (const auto& [place, value] : fem[name].items()) {
        const std::size_t comma = place.find(',');
        const Point at{std::stod(place.substr(0, comma)), std::stod(place.substr(comma + 1))};
        const double off = field.at(at) / value.get<double>() - 1.0;
        EXPECT_NEAR(off, 0.0, kAgreement) << place;
        worst = std::max(worst, std::abs(off));
      }
      std::printf("%s: worst %.2f %%\n", name.c_str(), 100.0 * worst);
    }
  }
}

}  // namespace
}  // namespace sumpwright
