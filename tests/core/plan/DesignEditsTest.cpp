#include <gtest/gtest.h>

#include <limits>

#include "plan/DesignEdits.h"
#include "plan/PlanCheck.h"
#include "support/PlanBuilder.h"

namespace sumpwright::plan {
namespace {

using support::PlanBuilder;

Waiver waiverAt(double chainage_m, const std::string& thing = "w") {
  Waiver w;
  w.sump = "s";
  w.rule = "openings";
  w.thing = thing;
  w.chainage_m = chainage_m;
  w.reason = "fixed shut";
  w.name = "A. Tester (invented)";
  w.date = "2026-03-01";
  return w;
}

Job houseWithSump() { return PlanBuilder::rectangle(10, 8).sump("s", 0, 5.0).job(); }

std::string problemOf(const base::Result<Job>& result) {
  return result.ok() ? "" : result.problems()[0].message.id;
}

TEST(DesignEdits, MoveSumpPlacesItAndAddsItWhereThereIsNone) {
  Job riser = houseWithSump();
  riser.design.sumps[0].discharge = Discharge{0, riser.design.sumps[0].chainage_m + 1.5, 3.2};
  const auto along = moveSump(riser, "s", 0, 35.0);  // round the start: 36 m of wall
  ASSERT_TRUE(along);
  EXPECT_NEAR(along->design.sumps[0].discharge->chainage_m, 0.5, 1e-9);
  EXPECT_EQ(along->design.sumps[0].discharge->height_m, 3.2);
  const auto moved = moveSump(houseWithSump(), "s", 0, 7.5);
  ASSERT_TRUE(moved.ok());
  EXPECT_EQ(moved->design.sumps[0].chainage_m, 7.5);
  const auto added = moveSump(*moved, "t", 0, 36.0);
  ASSERT_TRUE(added.ok());
  ASSERT_EQ(added->design.sumps.size(), 2U);
  EXPECT_EQ(added->design.sumps[1].id, "t");
  EXPECT_TRUE(checkJob(*added).empty());
}

TEST(DesignEdits, MoveSumpRefusesWhatIsNotOnTheFootprint) {
  for (const double s : {-0.1, 36.1, std::numeric_limits<double>::quiet_NaN(),
                         std::numeric_limits<double>::infinity()}) {
    EXPECT_EQ(problemOf(moveSump(houseWithSump(), "s", 0, s)), "plan.sump.off-ring");
  }
  EXPECT_EQ(problemOf(moveSump(houseWithSump(), "s", 1, 1.0)), "plan.sump.off-ring");
  EXPECT_EQ(problemOf(moveSump(houseWithSump(), "s", -1, 1.0)), "plan.sump.off-ring");
  EXPECT_EQ(problemOf(moveSump(houseWithSump(), "", 0, 1.0)), "plan.id.empty");
  EXPECT_EQ(problemOf(moveSump(houseWithSump(), "room", 0, 1.0)), "plan.id.twice");
  Job standby = houseWithSump();
  standby.design.sumps[0].kind = SumpKind::standby;
  EXPECT_EQ(problemOf(moveSump(standby, "s", 0, 1.0)), "plan.sump.not-cored");
}

TEST(DesignEdits, WaiversLapseBeyondTheirReachAndStayLapsed) {
  const auto waived = recordWaiver(houseWithSump(), waiverAt(5.0));
  ASSERT_TRUE(waived.ok());
  EXPECT_EQ(waived->design.waivers[0].id, "waiver1");
  const auto near = moveSump(*waived, "s", 0, 5.010);
  EXPECT_FALSE(near->design.waivers[0].lapsed);
  const auto far = moveSump(*waived, "s", 0, 5.011);
  EXPECT_TRUE(far->design.waivers[0].lapsed);
  const auto back = moveSump(*far, "s", 0, 5.0);
  EXPECT_TRUE(back->design.waivers[0].lapsed);
}

TEST(DesignEdits, WaiversOfOtherSumpsStay) {
  const auto two = moveSump(houseWithSump(), "t", 0, 20.0);
  const auto waived = recordWaiver(*two, waiverAt(5.0));
  const auto moved = moveSump(*waived, "t", 0, 22.0);
  EXPECT_FALSE(moved->design.waivers[0].lapsed);
}

TEST(DesignEdits, AWaiverHoldsAcrossChainageZero) {
  const Waiver waiver = waiverAt(0.004);
  EXPECT_TRUE(waiverHolds(waiver, 0, 35.995, 36.0));
  EXPECT_FALSE(waiverHolds(waiver, 0, 35.990, 36.0));
  EXPECT_FALSE(waiverHolds(waiver, 1, 0.004, 36.0));
}

TEST(DesignEdits, RecordWaiverReplacesTheOneForTheSameThing) {
  const auto first = recordWaiver(houseWithSump(), waiverAt(5.0));
  Waiver better = waiverAt(5.0);
  better.reason = "bricked up";
  const auto second = recordWaiver(*first, better);
  ASSERT_EQ(second->design.waivers.size(), 1U);
  EXPECT_EQ(second->design.waivers[0].reason, "bricked up");
  EXPECT_EQ(second->design.waivers[0].id, "waiver1");
  const auto other = recordWaiver(*second, waiverAt(5.0, "other"));
  ASSERT_EQ(other->design.waivers.size(), 2U);
  EXPECT_EQ(other->design.waivers[1].id, "waiver2");
  // A lapsed one is history and stays.
  const auto moved = moveSump(*first, "s", 0, 6.0);
  EXPECT_EQ(recordWaiver(*moved, waiverAt(6.0))->design.waivers.size(), 2U);
}

TEST(DesignEdits, RecordWaiverAsksForReasonNameAndDate) {
  const auto broken = [](auto change) {
    Waiver w = waiverAt(5.0);
    change(w);
    return problemOf(recordWaiver(houseWithSump(), w));
  };
  EXPECT_EQ(broken([](Waiver& w) { w.reason = ""; }), "plan.waiver.no-reason");
  EXPECT_EQ(broken([](Waiver& w) { w.reason = " \t\n"; }), "plan.waiver.no-reason");
  EXPECT_EQ(broken([](Waiver& w) { w.name = ""; }), "plan.waiver.no-name");
  EXPECT_EQ(broken([](Waiver& w) { w.name = "  "; }), "plan.waiver.no-name");
  EXPECT_EQ(broken([](Waiver& w) { w.date = ""; }), "plan.waiver.no-date");
  EXPECT_EQ(broken([](Waiver& w) { w.date = "yesterday"; }), "plan.date.bad");
  EXPECT_EQ(broken([](Waiver& w) { w.rule = ""; }), "plan.waiver.no-rule");
  EXPECT_EQ(broken([](Waiver& w) { w.sump = "x"; }), "plan.sump.unknown");
  EXPECT_EQ(broken([](Waiver& w) { w.chainage_m = 40; }), "plan.waiver.off-ring");
  EXPECT_EQ(broken([](Waiver& w) { w.id = "room"; }), "plan.id.twice");
}

TEST(DesignEdits, WithdrawAndRemove) {
  const auto waived = recordWaiver(houseWithSump(), waiverAt(5.0));
  EXPECT_TRUE(withdrawWaiver(*waived, "waiver1")->design.waivers.empty());
  EXPECT_EQ(problemOf(withdrawWaiver(*waived, "x")), "plan.waiver.unknown");
  const auto removed = removeSump(*waived, "s");
  EXPECT_TRUE(removed->design.sumps.empty());
  EXPECT_TRUE(removed->design.waivers.empty());
  EXPECT_EQ(problemOf(removeSump(*waived, "x")), "plan.sump.unknown");
}

TEST(DesignEdits, Settings) {
  EXPECT_EQ(setOutlet(houseWithSump(), OutletMode::riser).design.outlet, OutletMode::riser);
  EXPECT_EQ(setRuleSheet(houseWithSump(), "uk-practice").rule_sheet, "uk-practice");
  EXPECT_EQ(setCore(houseWithSump(), 112)->design.core_mm, 112);
  for (const double bad : {39.9, 300.1, std::numeric_limits<double>::quiet_NaN()}) {
    EXPECT_EQ(problemOf(setCore(houseWithSump(), bad)), "plan.core.size");
  }
}

}  // namespace
}  // namespace sumpwright::plan
