#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "core/plan/JobCases.h"
#include "plan/JobText.h"

namespace sumpwright::plan {
namespace {

using Json = nlohmann::ordered_json;
using support::PlanBuilder;

std::string fileText(const std::string& name) {
  std::ifstream file(std::string(SUMPWRIGHT_TESTS_DIR) + "/core/plan/" + name);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

/// Equal values with equal key order; integers stay integers.
void expectSame(const Json& a, const Json& b, const std::string& pointer = "") {
  ASSERT_EQ(a.is_number_float(), b.is_number_float()) << pointer;
  ASSERT_EQ(a.is_object(), b.is_object()) << pointer;
  ASSERT_EQ(a.size(), b.size()) << pointer;
  if (!a.is_structured()) {
    EXPECT_EQ(a, b) << pointer;
    return;
  }
  for (auto i = a.begin(), j = b.begin(); i != a.end(); ++i, ++j) {
    std::string at = pointer + "/";
    if (a.is_object()) {
      EXPECT_EQ(i.key(), j.key()) << pointer;
      at += i.key();
    } else {
      at += std::to_string(i - a.begin());
    }
    expectSame(*i, *j, at);
  }
}

ReadJob readSound(const std::string& text) {
  auto read = readJob(text);
  EXPECT_TRUE(read.ok()) << text.substr(0, 200);
  return std::move(read).value();
}

TEST(JobWrite, UnchangedJobsComeBackEqualUnknownFieldsIncluded) {
  for (const char* name : {"every-field.sump.json", "strange.sump.json"}) {
    SCOPED_TRACE(name);
    const std::string text = fileText(name);
    const ReadJob read = readSound(text);
    const std::string written = writeJob(read.job, read.source);
    expectSame(Json::parse(text), Json::parse(written));
    EXPECT_EQ(written.back(), '\n');
    const ReadJob again = readSound(written);
    EXPECT_EQ(again.job, read.job);
    EXPECT_EQ(again.problems, read.problems);
    EXPECT_EQ(writeJob(again.job, again.source), written);
  }
}

TEST(JobWrite, WithoutASourceAllThatWasReadIsWritten) {
  const ReadJob read = readSound(fileText("every-field.sump.json"));
  const ReadJob again = readSound(writeJob(read.job));
  EXPECT_EQ(again.job, read.job);
}

TEST(JobWrite, ANewJobStatesOnlyWhatIsNotTheDefault) {
  Job job;
  job.id = "new";
  EXPECT_EQ(writeJob(job), "{\"format\": \"sumpwright.job\", \"version\": 1, \"id\": \"new\"}\n");
}

TEST(JobWrite, EveryCheckedJobCanBeWrittenAndRead) {
  for (const CheckCase& c : checkCases()) {
    SCOPED_TRACE(c.id + " " + c.pointer);
    if (c.id == "plan.walls.count") continue;  // no such file can be read
    const auto read = readJob(writeJob(c.job));
    ASSERT_TRUE(read.ok());
    if (c.id == "plan.id.empty" || c.id == "plan.id.twice") continue;
    EXPECT_EQ(read->job, c.job);
  }
}

TEST(JobWrite, ThingsAreMatchedToTheirSourceById) {
  ReadJob read = readSound(jobText(
      "", R"(,"openings":[{"id":"a","kind":"door","edge":0,"offset_m":1,"width_m":1,"x_n":1},)"
          R"({"id":"b","kind":"door","edge":0,"offset_m":3,"width_m":1,"x_n":2},)"
          R"({"id":"c","kind":"door","edge":0,"offset_m":5,"width_m":1,"x_n":3}])"));
  auto& openings = read.job.plan.openings;
  openings.erase(openings.begin());
  std::swap(openings[0], openings[1]);
  openings.push_back(openings[0]);
  openings.back().id = "new";
  const Json written = Json::parse(writeJob(read.job, read.source));
  const Json& list = written["plan"]["openings"];
  ASSERT_EQ(list.size(), 3U);
  EXPECT_EQ(list[0]["x_n"], 3);
  EXPECT_EQ(list[1]["x_n"], 2);
  EXPECT_FALSE(list[2].contains("x_n"));
}

TEST(JobWrite, WallsFindTheirSourceWhenOneIsTakenOut) {
  ReadJob read = readSound(
      R"({"format":"sumpwright.job","version":1,"id":"j","plan":{"rings":[{"corners_m":)"
      R"([[0,0],[9,0],[9,6],[0,6]],"walls":[{"x_n":0},{"x_n":1},{"x_n":2},{"x_n":3}]}]}})");
  Ring& ring = read.job.plan.rings[0];
  ring.corners.erase(ring.corners.begin() + 1);
  ring.walls.erase(ring.walls.begin() + 1);
  const std::string text = writeJob(read.job, read.source);
  const Json walls = Json::parse(text)["plan"]["rings"][0]["walls"];
  ASSERT_EQ(walls.size(), 3U);
  EXPECT_EQ(walls[1]["x_n"], 2);
  EXPECT_EQ(readSound(text).job, read.job);  // ids that would change are written out
}

TEST(JobWrite, ChangedMembersChangeAndNoOthers) {
  ReadJob read = readSound(jobText(R"(,"x_mine":[1.50,2],"design":{"core_mm":127})"));
  read.job.design.core_mm = 112.5;
  read.job.client = "C. Invented";
  Json expected = Json::parse(jobText(R"(,"x_mine":[1.50,2],"design":{"core_mm":112.5})"));
  expected["client"] = "C. Invented";
  expectSame(expected, Json::parse(writeJob(read.job, read.source)));
}

TEST(JobWrite, AnOptionalThatIsNoLongerKnownLosesItsKey) {
  ReadJob read = readSound(jobText(R"(,"house":{"slab_m":0.15,"year_built":1990})"));
  read.job.house.slab_m.reset();
  const Json house = Json::parse(writeJob(read.job, read.source))["house"];
  EXPECT_FALSE(house.contains("slab_m"));
  EXPECT_EQ(house["year_built"], 1990);
}

TEST(JobWrite, TextThatIsNotUtf8DoesNotThrow) {
  Job job;
  job.id = "a\xFF";
  EXPECT_NE(writeJob(job).find("\xEF\xBF\xBD"), std::string::npos);
}

TEST(JobWrite, AnOpenRingMayLeaveOutItsLastWall) {
  const std::string text =
      R"({"format":"sumpwright.job","version":1,"id":"j","plan":{"rings":[{"closed":false,)"
      R"("corners_m":[[0,0],[9,0],[9,6]],"walls":[{"id":"a"},{}]}]}})";
  const ReadJob read = readSound(text);
  EXPECT_EQ(read.job.plan.rings[0].walls.size(), 3U);
  expectSame(Json::parse(text), Json::parse(writeJob(read.job, read.source)));
}

}  // namespace
}  // namespace sumpwright::plan
