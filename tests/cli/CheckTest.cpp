#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "cli/Run.h"
#include "support/Golden.h"

namespace sumpwright::cli {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;

struct Case {
  const char* name;
  int code;
  const char* id;  ///< that must be among the problems; "" for a sound job
};

class Check : public ::testing::TestWithParam<Case> {};

TEST_P(Check, CodeIdAndStreams) {
  const Case expected = GetParam();
  const Ran check = ran({"check", data(expected.name)});
  EXPECT_EQ(check.code, expected.code);
  // What keeps a file from being read is an error; what is wrong inside is the report.
  const std::string& told = expected.code == kUnusable ? check.err : check.out;
  EXPECT_THAT(told, HasSubstr(expected.id));
  if (expected.code != kUnusable) {
    EXPECT_THAT(check.err, IsEmpty());
  }
  support::expectGolden(std::string("cli/data/") + expected.name + ".check.txt",
                        portable(check.out + "--- stderr\n" + check.err));
}

TEST_P(Check, JsonHoldsTheSame) {
  const Case expected = GetParam();
  const Ran check = ran({"check", "--json", data(expected.name)});
  EXPECT_EQ(check.code, expected.code);
  const auto report = nlohmann::json::parse(check.out);
  EXPECT_EQ(report["format"], "sumpwright.check/1");
  ASSERT_EQ(report["jobs"].size(), 1U);
  const auto& job = report["jobs"][0];
  const std::array<const char*, 3> verdicts{"sound", "unsound", "unreadable"};
  EXPECT_EQ(job["verdict"], verdicts.at(static_cast<std::size_t>(expected.code)));
  bool found = *expected.id == '\0';
  for (const auto& problem : job["problems"]) {
    found = found || problem["id"] == expected.id;
    EXPECT_FALSE(problem["sentence"].get<std::string>().empty());
    EXPECT_THAT(problem["sentence"].get<std::string>(), ::testing::Not(HasSubstr("[")));
    EXPECT_THAT(problem["sentence"].get<std::string>(), ::testing::Not(HasSubstr("{")));
  }
  EXPECT_TRUE(found) << expected.id << " in\n" << check.out;
}

INSTANTIATE_TEST_SUITE_P(
    Jobs, Check,
    ::testing::Values(Case{"sound", kDone, ""}, Case{"imperial", kDone, ""},
                      Case{"nothing-looked-for", kDone, "plan.looked.not"},
                      Case{"idle-waivers", kDone, "waiver.evidence"},
                      Case{"outline-crosses-itself", kUnsound, "plan.ring.self-contact"},
                      Case{"opening-off-its-wall", kUnsound, "plan.opening.off-wall"},
                      Case{"newer-version", kUnusable, "job.version.newer"},
                      Case{"not-json", kUnusable, "job.not-json"},
                      Case{"wrong-type-and-word", kUnusable, "job.type"},
                      Case{"unknown-rule-sheet", kUnusable, "file.sheet-unknown"},
                      Case{"broken-sheet-copy", kUnusable, "file.sheet-copy-unusable"}),
    [](const auto& each) {
      std::string name = each.param.name;
      std::replace(name.begin(), name.end(), '-', '_');
      return name;
    });

TEST(CheckMany, TheWorstCounts) {
  EXPECT_EQ(ran({"check", data("sound"), data("opening-off-its-wall")}).code, kUnsound);
  EXPECT_EQ(ran({"check", data("not-json"), data("sound")}).code, kUnusable);
}

TEST(CheckFiles, WhatIsNoFileIsAnError) {
  const Ran absent = ran({"check", data("absent")});
  EXPECT_EQ(absent.code, kUnusable);
  EXPECT_THAT(absent.err, HasSubstr("file.not-found"));
  const Ran folder = ran({"check", SUMPWRIGHT_TESTS_DIR});
  EXPECT_EQ(folder.code, kUnusable);
  EXPECT_THAT(folder.err, HasSubstr("file.folder"));
}

}  // namespace
}  // namespace sumpwright::cli
