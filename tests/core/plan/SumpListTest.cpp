#include <gtest/gtest.h>

#include "plan/SumpList.h"

namespace sumpwright::plan {
namespace {

Job jobWith(const std::vector<std::pair<std::string, SumpKind>>& sumps) {
  Job job;
  for (const auto& [id, kind] : sumps) {
    Sump sump;
    sump.id = id;
    sump.kind = kind;
    job.design.sumps.push_back(sump);
  }
  return job;
}

TEST(SumpList, OneAloneNeedsNoNumber) {
  const Job job = jobWith({{"standby", SumpKind::standby}, {"a", SumpKind::cored}});
  ASSERT_EQ(coredSumps(job).size(), 1u);
  EXPECT_EQ(neededNumber(job, "a"), 0);
}

TEST(SumpList, ThoseInsideAreCountedAlong) {
  const Job job =
      jobWith({{"a", SumpKind::cored}, {"standby", SumpKind::standby}, {"b", SumpKind::cored}});
  EXPECT_EQ(neededNumber(job, "a"), 1);
  EXPECT_EQ(neededNumber(job, "b"), 3);
  EXPECT_EQ(neededNumber(job, "standby"), 0);
  EXPECT_EQ(neededNumber(job, "x"), 0);
}

}  // namespace
}  // namespace sumpwright::plan
