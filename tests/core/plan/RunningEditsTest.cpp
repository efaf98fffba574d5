#include <gtest/gtest.h>

#include "plan/JobText.h"
#include "plan/RunningEdits.h"

namespace sumpwright::plan {
namespace {

TEST(RunningEdits, SetsAndSurvivesTheFile) {
  Running running;
  running.degree_days = 2450.5;
  running.house_air = 0.4;
  running.per_kwh = "0.31";
  running.heat_per_kwh = "0.12";
  const auto job = setRunning({}, running);
  ASSERT_TRUE(job.ok());
  EXPECT_EQ(job->design.running, running);
  EXPECT_EQ(readJob(writeJob(*job))->job.design.running, running);
}

TEST(RunningEdits, SaysWhatIsNone) {
  const auto refused = [](auto change) {
    Running running;
    change(running);
    const auto job = setRunning({}, running);
    return job.ok() ? std::string() : job.problems().front().message.id;
  };
  EXPECT_EQ(refused([](Running& r) { r.degree_days = -1.0; }), "plan.edit.not-a-place");
  EXPECT_EQ(refused([](Running& r) { r.degree_days = 20001.0; }), "plan.running.degree-days");
  EXPECT_EQ(refused([](Running& r) { r.house_air = 1.2; }), "plan.running.share");
  EXPECT_EQ(refused([](Running& r) { r.per_kwh = "0,3"; }), "plan.quote.not-decimal");
  EXPECT_EQ(refused([](Running& r) { r.heat_per_kwh = "-0.3"; }), "plan.quote.negative");
  EXPECT_EQ(refused([](Running&) {}), "");
}

}  // namespace
}  // namespace sumpwright::plan
