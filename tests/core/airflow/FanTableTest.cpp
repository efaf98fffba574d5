#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <string>

#include "airflow/FanTable.h"

namespace sumpwright::airflow {
namespace {

using nlohmann::json;
using testing::ElementsAre;

json soundTable() {
  return json::parse(R"({
    "format": "sumpwright.fans", "version": 1, "id": "firm", "title": "Our invented fans",
    "invented": true,
    "fans": [{"id": "a", "title": "Fan A", "source": {"mark": "own", "text": "measured, invented"},
              "points": [{"flow_m3_h": 0, "pressure_pa": 300, "power_w": 30},
                         {"flow_m3_h": 100, "pressure_pa": 200, "power_w": 40},
                         {"flow_m3_h": 200, "pressure_pa": 0, "power_w": 45}]},
             {"id": "b", "title": "Fan B", "source": {"mark": "published", "text": "sheet 1"},
              "density_kg_m3": 1.225,
              "law": {"shut_off_pa": 500, "free_flow_m3_h": 250, "exponent": 1.5}}]})");
}

/// "id pointer" of every problem after a change to the sound table.
template <class Change>
std::vector<std::string> problemsAfter(Change change) {
  json table = soundTable();
  change(table);
  std::vector<std::string> out;
  for (const base::Problem& problem : readFanTable(table.dump()).problems()) {
    EXPECT_EQ(problem.gravity, base::Gravity::unreadable);
    out.push_back(problem.message.id + " " + problem.pointer);
  }
  return out;
}

TEST(FanTable, ReadsPointsAndLaws) {
  const auto table = readFanTable(soundTable().dump());
  ASSERT_TRUE(table.ok());
  EXPECT_TRUE(table->invented);
  ASSERT_EQ(table->fans.size(), 2U);
  const Fan* a = table->find("a");
  ASSERT_NE(a, nullptr);
  EXPECT_EQ(a->source.text, "measured, invented");
  EXPECT_DOUBLE_EQ(a->curve.at(base::Flow::ofM3PerH(100), 1.2).pressure.pa(), 200.0);
  EXPECT_DOUBLE_EQ(*a->curve.at(base::Flow::ofM3PerH(100), 1.2).power_w, 40.0);
  const Fan* b = table->find("b");
  ASSERT_NE(b, nullptr);
  EXPECT_EQ(b->source.mark, base::Mark::published);
  EXPECT_DOUBLE_EQ(b->curve.at(base::Flow(), 1.225).pressure.pa(), 500.0);
  EXPECT_EQ(table->find("c"), nullptr);
}

TEST(FanTable, TellsWhatIsWrongAndWhere) {
  EXPECT_THAT(problemsAfter([](json& t) { t["fans"][0]["points"][1]["pressure_pa"] = 310; }),
              ElementsAre("fans.points.not-falling /fans/0/points/1/pressure_pa"));
  EXPECT_THAT(problemsAfter([](json& t) { t["fans"][0].erase("source"); }),
              ElementsAre("fans.no-source /fans/0"));
  EXPECT_THAT(problemsAfter([](json& t) { t["fans"][1]["source"]["mark"] = "rumour"; }),
              ElementsAre("fans.unknown-word /fans/1/source/mark"));
  EXPECT_THAT(problemsAfter([](json& t) { t["fans"][1]["source"]["text"] = ""; }),
              ElementsAre("fans.empty /fans/1/source/text"));
  EXPECT_THAT(problemsAfter([](json& t) { t["fans"][0]["law"] = t["fans"][1]["law"]; }),
              ElementsAre("fans.points-or-law /fans/0"));
  EXPECT_THAT(problemsAfter([](json& t) { t["fans"][0].erase("points"); }),
              ElementsAre("fans.points-or-law /fans/0"));
  EXPECT_THAT(problemsAfter([](json& t) { t["fans"][1]["law"]["exponent"] = "two"; }),
              ElementsAre("fans.wrong-type /fans/1/law/exponent"));
  EXPECT_THAT(problemsAfter([](json& t) { t["fans"][1]["law"]["exponent"] = 0.2; }),
              ElementsAre("fans.number /fans/1/law/exponent"));
  EXPECT_THAT(problemsAfter([](json& t) { t["fans"][1]["id"] = "a"; }),
              ElementsAre("fans.repeated /fans/1/id"));
  EXPECT_THAT(problemsAfter([](json& t) { t["fans"] = json::array(); }),
              ElementsAre("fans.empty /fans"));
  EXPECT_THAT(problemsAfter([](json& t) { t["fans"][0]["a~b/c"] = 1; }),
              ElementsAre("fans.unknown-key /fans/0/a~0b~1c"));
  EXPECT_THAT(problemsAfter([](json& t) { t["fans"][0]["points"][2] = 5; }),
              ElementsAre("fans.wrong-type /fans/0/points/2"));
  EXPECT_THAT(problemsAfter([](json& t) { t["fans"][0]["points"][2].erase("flow_m3_h"); }),
              ElementsAre("fans.missing-key /fans/0/points/2"));
  EXPECT_THAT(problemsAfter([](json& t) { t.erase("title"); }), ElementsAre("fans.missing-key "));
  EXPECT_THAT(problemsAfter([](json& t) { t["invented"] = "yes"; }),
              ElementsAre("fans.wrong-type /invented"));
  EXPECT_THAT(problemsAfter([](json& t) { t["version"] = 2; }),
              ElementsAre("fans.version /version"));
  EXPECT_THAT(problemsAfter([](json& t) { t["format"] = "sumpwright.rules"; }),
              ElementsAre("fans.not-a-table "));
  EXPECT_THAT(problemsAfter([](json& t) { t["fans"].get_ref<json::array_t&>().resize(501); }),
              ElementsAre("fans.too-many /fans"));
}

TEST(FanTable, TextThatIsNoJson) {
  const auto first = [](const std::string& text) {
    return readFanTable(text).problems().at(0).message.id;
  };
  EXPECT_EQ(first(""), "fans.not-json");
  EXPECT_EQ(first("{"), "fans.not-json");
  EXPECT_EQ(first(soundTable().dump() + std::string("\0 more", 6)), "fans.not-json");
  EXPECT_EQ(first("{\"version\": 1e999}"), "fans.not-json");
  EXPECT_EQ(first("[]"), "fans.not-a-table");
  EXPECT_EQ(first(std::string(kMostFanBytes + 1, ' ')), "fans.too-large");
}

// What comes with the program: three invented classes, each marked so where it is shown.
TEST(FanTable, DemoClassesAreReadableAndMarkedInvented) {
  std::ifstream file(SUMPWRIGHT_SOURCE_DIR "/resources/fans/demo-fans.json");
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  const auto table = readFanTable(text);
  ASSERT_TRUE(table.ok());
  EXPECT_TRUE(table->invented);
  ASSERT_EQ(table->fans.size(), 3U);
  for (const Fan& fan : table->fans) {
    EXPECT_NE(fan.title.find("invented"), std::string::npos) << fan.id;
    EXPECT_NE(fan.source.text.find("Invented"), std::string::npos) << fan.id;
    EXPECT_NE(fan.source.mark, base::Mark::published) << fan.id;
    EXPECT_TRUE(fan.curve.at(base::Flow(), 1.2).power_w) << fan.id;
  }
}

}  // namespace
}  // namespace sumpwright::airflow
