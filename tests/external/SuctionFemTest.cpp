// The program's finite volumes beside finite elements of SciPy (suction_fem.py), which share no
// code.

#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <fstream>
#include <nlohmann/json.hpp>
#include <string>

#include "suction/Field.h"
#include "support/Fields.h"

namespace sumpwright {
namespace {

using nlohmann::json;
using suction::Point;

constexpr double kAgreement = 0.005;
const std::string kCases = SUMPWRIGHT_TESTS_DIR "/external/suction_fem_cases.json";

std::string outputOf(const std::string& command) {
  std::string output;
  std::FILE* pipe = popen(command.c_str(), "r");
  if (pipe == nullptr) return output;
  std::array<char, 4096> part{};
  while (std::fgets(part.data(), part.size(), pipe) != nullptr) output += part.data();
  return pclose(pipe) == 0 ? output : std::string();
}

Point pointFrom(const json& pair) { return {pair[0], pair[1]}; }

suction::Polyline lineFrom(const json& points) {
  suction::Polyline line;
  for (const json& point : points) line.push_back(pointFrom(point));
  return line;
}

suction::SuctionModel modelFrom(const json& c) {
  suction::SuctionModel model;
  model.layer = {c["transmissivity_m3_s_pa"], c["leakage_m_s_pa"], 0.0};
  model.regions = {support::region(lineFrom(c["outline_m"]), c["joint_m2_s_pa"])};
  if (!c["wall_m"].empty()) {
    model.barriers = {{"wall", lineFrom(c["wall_m"]), c["wall_m2_s_pa"]}};
  }
  return model;
}

TEST(SuctionFem, AgreesWithinHalfAPercent) {
  if (std::string(SUMPWRIGHT_SCIPY_PYTHON).empty()) {
    GTEST_SKIP() << "SciPy (python3-scipy) is not installed";
  }
  const std::string script = SUMPWRIGHT_TESTS_DIR "/external/suction_fem.py";
  const std::string output =
      outputOf(SUMPWRIGHT_SCIPY_PYTHON " -B '" + script + "' '" + kCases + "'");
  ASSERT_FALSE(output.empty()) << "the script failed";
  const json fem = json::parse(output);
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
