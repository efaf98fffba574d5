#include <gtest/gtest.h>

#include <string>

#include "core/plan/JobCases.h"
#include "plan/JobText.h"
#include "plan/PlanCheck.h"
#include "support/Listed.h"

namespace sumpwright::plan {
namespace {

base::Problems with(const base::Problems& problems, const std::string& id) {
  base::Problems found;
  for (const base::Problem& p : problems) {
    if (p.message.id == id) found.push_back(p);
  }
  return found;
}

TEST(JobRead, EveryUnreadableProblemIsGivenOnceWithItsPlace) {
  for (const ReadCase& c : unreadableCases()) {
    SCOPED_TRACE(c.id + " " + c.text.substr(0, 200));
    const auto read = readJob(c.text);
    ASSERT_FALSE(read.ok());
    ASSERT_EQ(read.problems().size(), 1U) << support::listed(read.problems());
    EXPECT_EQ(read.problems()[0].message.id, c.id);
    EXPECT_EQ(read.problems()[0].pointer, c.pointer);
    EXPECT_EQ(read.problems()[0].gravity, base::Gravity::unreadable);
  }
}

TEST(JobRead, ANewerVersionIsToldAsItIsWritten) {
  for (const std::string version : {"2", "1.5", "1e300", "1E+400", "99999999999999999999999"}) {
    const auto read =
        readJob(R"({"format":"sumpwright.job","id":"j","version":)" + version + "}").problems();
    ASSERT_EQ(read.size(), 1U) << version;
    EXPECT_EQ(read[0].message, base::Message("job.version.newer", {base::text("version", version),
                                                                   base::count("known", 1)}));
  }
}

TEST(JobRead, WhatFollowsTheDocumentIsPointedAt) {
  const auto read = readJob(jobText() + "\n" + std::string(1, '\0') + "more").problems();
  ASSERT_EQ(read.size(), 1U);
  EXPECT_EQ(read[0].message,
            base::Message("job.not-json", {base::count("line", 2), base::count("column", 1),
                                           base::text("near", "NUL")}));
}

TEST(JobRead, NotesOnTheFileLeaveItReadable) {
  for (const ReadCase& c : notedCases()) {
    SCOPED_TRACE(c.id + " " + c.text);
    const auto read = readJob(c.text);
    ASSERT_TRUE(read.ok()) << support::listed(read.problems());
    const base::Problems found = with(read->problems, c.id);
    ASSERT_EQ(found.size(), 1U) << support::listed(read->problems);
    EXPECT_EQ(found[0].pointer, c.pointer);
  }
}

TEST(JobRead, CollectsAllProblemsInDocumentOrder) {
  const auto read =
      readJob(R"({"format":"sumpwright.job","plan":{"rooms":[{"id":1,"outline_m":[[0],[1,"x"]]}],)"
              R"("north_deg":"up"},"id":[],"id":"j","house":{"slab_m":1e9},"version":1})");
  ASSERT_FALSE(read.ok());
  const std::vector<std::string> places = {"/plan/rooms/0/id",
                                           "/plan/rooms/0/outline_m/0",
                                           "/plan/rooms/0/outline_m/1/1",
                                           "/plan/north_deg",
                                           "/id",
                                           "/id",
                                           "/house/slab_m"};
  std::vector<std::string> found;
  for (const base::Problem& p : read.problems()) found.push_back(p.pointer);
  EXPECT_EQ(found, places) << support::listed(read.problems());
}

TEST(JobRead, DepthUpToTheLimitIsRead) {
  const auto n = static_cast<std::size_t>(kMaxJobDepth - 1);
  const std::string deep = std::string(n, '[') + std::string(n, ']');
  EXPECT_TRUE(readJob(jobText(",\"x_deep\":" + deep)).ok());
}

TEST(JobRead, ByteOrderMarkIsReadOverAndNotWritten) {
  const auto read = readJob("\xEF\xBB\xBF" + jobText());
  ASSERT_TRUE(read.ok());
  EXPECT_EQ(writeJob(read->job, read->source).front(), '{');
}

TEST(JobRead, AbsentKeysMeanDefaults) {
  const auto read = readJob(jobText("", R"(,"openings":[{"id":"o","kind":"door","edge":1,)"
                                        R"("offset_m":1,"width_m":0.9}])"));
  ASSERT_TRUE(read.ok());
  Job expected;
  expected.id = "j";
  Ring ring;
  ring.corners = {{0, 0}, {9, 0}, {9, 6}, {0, 6}};
  for (int i = 0; i < 4; ++i) {
    ring.walls.emplace_back();
    ring.walls.back().id = "w0." + std::to_string(i);
  }
  expected.plan.rings.push_back(ring);
  Opening door;
  door.id = "o";
  door.kind = OpeningKind::door;
  door.at = {0, 1, 1.0};
  door.width_m = 0.9;
  expected.plan.openings.push_back(door);
  EXPECT_EQ(read->job, expected);
}

TEST(JobRead, GivenWallIdsDoNotCollide) {
  const auto read =
      readJob(jobText("", R"(,"rooms":[{"id":"w0.1","outline_m":[[1,1],[2,1],[2,2]]},)"
                          R"({"id":"w0.1_","outline_m":[[3,1],[4,1],[4,2]]}])"));
  ASSERT_TRUE(read.ok());
  EXPECT_EQ(read->job.plan.rings[0].walls[0].id, "w0.0");
  EXPECT_EQ(read->job.plan.rings[0].walls[1].id, "w0.1__");
  EXPECT_TRUE(with(read->problems, "plan.id.twice").empty());
}

TEST(JobRead, AnEmptyWallIdIsNotReplaced) {
  const auto read =
      readJob(R"({"format":"sumpwright.job","version":1,"id":"j","plan":{"rings":[{"corners_m":)"
              R"([[0,0],[9,0],[0,6]],"walls":[{"id":""},{},{}]}]}})");
  ASSERT_TRUE(read.ok());
  EXPECT_EQ(with(read->problems, "plan.id.empty").size(), 1U);
}

TEST(JobRead, ProblemsOfTheCheckComeInDocumentOrder) {
  // The plan stands before the house here.
  const auto read = readJob(jobText(R"(,"house":{"slab_m":-1})", R"(,"radiators":[{"id":"r"}])"));
  ASSERT_TRUE(read.ok());
  std::vector<std::string> unsound;
  for (const base::Problem& p : read->problems) {
    if (p.gravity == base::Gravity::unsound) unsound.push_back(p.pointer);
  }
  EXPECT_EQ(unsound, (std::vector<std::string>{"/plan/radiators/0/line_m", "/house/slab_m"}));
}

TEST(JobRead, ProblemsAreLimitedAndTheRestCounted) {
  std::string keys;
  for (int i = 0; i < 3000; ++i) keys += ",\"k" + std::to_string(i) + "\":0";
  const auto read = readJob(jobText(keys));
  ASSERT_TRUE(read.ok());
  ASSERT_EQ(read->problems.size(), 1001U);
  EXPECT_EQ(read->problems.back().message.id, "job.more");
  EXPECT_FALSE(base::any(read->problems, base::Gravity::unsound));
}

TEST(JobRead, ManyKeysInOneObjectTakeNoLongerPerKey) {
  // 200,000 keys: with a search per key this would take minutes.
  std::string keys;
  for (int i = 0; i < 200'000; ++i) keys += ",\"x_" + std::to_string(i) + "\":0";
  const auto read = readJob(jobText(keys));
  ASSERT_TRUE(read.ok());
  EXPECT_GT(writeJob(read->job, read->source).size(), keys.size());
}

TEST(JobRead, EmbeddedRuleSheetIsGivenAsText) {
  const auto read = readJob(jobText(R"(,"rule_sheet_copy":{"id":"own"})"));
  ASSERT_TRUE(read.ok());
  EXPECT_EQ(embeddedRuleSheet(read->source), "{\"id\": \"own\"}\n");
  EXPECT_EQ(embeddedRuleSheet(JobSource()), "");
}

}  // namespace
}  // namespace sumpwright::plan
