// Published figures of the radon trade against what the program reads, holds and measures.

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <nlohmann/json.hpp>
#include <string>

#include "geometry/Distance.h"
#include "resources/BuiltIn.h"
#include "siting/Study.h"
#include "support/PlanBuilder.h"
#include "tools/LengthText.h"

namespace sumpwright {
namespace {

using nlohmann::json;

const json& checks() {
  static const json all = [] {
    std::ifstream file(SUMPWRIGHT_TESTS_DIR "/external/trade_checks.json");
    return json::parse(file);
  }();
  return all;
}

rules::RuleSheet sheetOf(const std::string& id) {
  const auto files = resources::builtInRuleSheets();
  const auto file = std::find_if(files.begin(), files.end(),
                                 [&](const resources::BuiltInFile& f) { return f.id == id; });
  return rules::readRuleSheet(file->text).value();
}

TEST(TradeChecks, FeetAndInchesAreThePrintedMetres) {
  for (const json& row : checks()["lengths"]) {
    SCOPED_TRACE(row["source"].get<std::string>());
    const tools::LengthReading reading = tools::readLength(row["typed"].get<std::string>());
    ASSERT_TRUE(reading.ok());
    EXPECT_NEAR(reading.metres[0], row["metres"], row["tolerance_m"]);
  }
}

TEST(TradeChecks, SheetsHoldThePublishedClearances) {
  for (const json& row : checks()["clearances"]) {
    SCOPED_TRACE(row["source"].get<std::string>());
    const rules::RuleSheet sheet = sheetOf(row["sheet"]);
    const rules::Rule* rule = sheet.find(row["rule"].get<std::string>());
    ASSERT_NE(rule, nullptr);
    ASSERT_TRUE(rule->needed_m);
    EXPECT_NEAR(rule->needed_m->value, row["needed_m"], row["tolerance_m"]);
    EXPECT_EQ(rule->needed_m->source.mark, rules::Mark::published);
    EXPECT_NE(rule->needed_m->source.text.find(row["cites"].get<std::string>()), std::string::npos);
  }
}

// District of Columbia Construction Codes Supplement 2017, 12-B, AF103.3.2: 2 feet, 610 mm.
TEST(TradeChecks, OpeningsFarBelowAnAmericanOutletAreClear) {
  const rules::RuleSheet sheet = sheetOf("us-practice");
  const auto& below = sheet.find("openings")->clear_below_m;
  ASSERT_TRUE(below);
  EXPECT_NEAR(below->value, 0.61, 1e-9);
  EXPECT_EQ(below->source.mark, rules::Mark::published);
}

/// Where the rule "openings" first stops refusing on the long wall beside one window.
double endOfRefusal(const rules::RuleSheet& sheet, double jamb_m) {
  const plan::Job job =
      support::PlanBuilder::rectangle(20.0, 10.0).window("win", 0, jamb_m - 1.0, 1.0).job();
  const auto study = siting::Study::of(job, sheet);
  double end = 0.0;
  for (const rules::FindingSpan& span : study->spans()) {
    if (span.finding.rule == "openings" && span.finding.weight == rules::Weight::binding) {
      end = std::max(end, span.to_m);
    }
  }
  return end;
}

TEST(TradeChecks, PipeEdgeStandsThePublishedDistanceOffTheWindow) {
  for (const char* id : {"uk-practice", "us-practice"}) {
    rules::RuleSheet sheet = sheetOf(id);
    const auto rule = std::find_if(sheet.rules.begin(), sheet.rules.end(),
                                   [](const rules::Rule& r) { return r.id == "openings"; });
    // The sheets' pipes: 110 mm (UKHSA, UKradon, radon sump page); 4 in, 114.3 mm (from memory).
    const double half_pipe = sheet.default_pipe_od_mm.value / 2000.0;
    EXPECT_NEAR(endOfRefusal(sheet, 8.0) - 8.0 - half_pipe, rule->needed_m->value, 1e-9) << id;
  }
}

TEST(TradeChecks, UsSheetRefusesALowOutletEverywhere) {
  const auto study =
      siting::Study::of(support::PlanBuilder::rectangle(20.0, 10.0).job(), sheetOf("us-practice"));
  for (const siting::Stretch& stretch : study->stretches()[0]) {
    EXPECT_EQ(stretch.state, rules::State::refused);
  }
}

TEST(TradeChecks, UsSheetWithARiserIsNotProvenRatherThanRefused) {
  siting::StudyOptions riser;
  riser.outlet = plan::OutletMode::riser;
  const auto study = siting::Study::of(support::PlanBuilder::rectangle(20.0, 10.0).job(),
                                       sheetOf("us-practice"), riser);
  EXPECT_EQ(study->stateAt({0, 25.0}), rules::State::not_proven);
}

TEST(TradeChecks, FarthestFloorFromTheMiddleOfAShortSide) {
  const json& row = checks()["farthest_floor"];
  const double length = row["length_m"];
  const double width = row["width_m"];
  const auto perimeter = perimeter::Perimeter::of(support::PlanBuilder::rectangle(length, width));
  const geometry::Point middle = perimeter->pointAt({0, length + width / 2.0});
  double farthest = 0.0;
  for (const perimeter::Edge& edge : perimeter->edges(0)) {
    farthest = std::max(farthest, geometry::distance(middle, edge.from));
  }
  EXPECT_NEAR(farthest, row["from_middle_of_short_side_m"], row["tolerance_m"]);
}

}  // namespace
}  // namespace sumpwright
