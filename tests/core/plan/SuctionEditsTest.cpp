// Suction, fan, pipe, what a sump is besides its place, and price: what verbs change and refuse.

#include <limits>

#include "core/plan/EditChecks.h"
#include "plan/DesignEdits.h"
#include "plan/OutlineEdits.h"
#include "plan/SuctionEdits.h"
#include "plan/SumpEdits.h"
#include "plan/ThingEdits.h"
#include "plan/WallEdits.h"
#include "plan/WholePlanEdits.h"
#include "support/PlanBuilder.h"

namespace sumpwright::plan {
namespace {

using support::PlanBuilder;

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();

/// A sump at 5 m of the front wall, a test hole, a socket.
Job suckedHouse() {
  return PlanBuilder::rectangle(10, 8).sump("s", 0, 5.0).with([](Job& j) {
    j.plan.test_holes.push_back({"th", "", {3, 3}});
    j.plan.supplies.push_back({"so", "", SupplyKind::socket, {1, 1}, YesNo::unknown, ""});
  });
}

PressureTest someTest() {
  return {"pt", "2026-03-01", "s", "vacuum (invented)", 0.02, 200.0, {{"th", 8.0, {}}}, ""};
}

TEST(SuctionEdits, WhatIsAskedForIsSetAndTakenBack) {
  const Job asked = doneWell(setTarget(suckedHouse(), 4.0, 1.5));
  EXPECT_EQ(asked.suction.target_pa, 4.0);
  EXPECT_EQ(asked.suction.limit_pa, 1.5);
  EXPECT_EQ(doneWell(setTarget(asked, {}, {})), suckedHouse());
  EXPECT_EQ(problemIdOf(setTarget(asked, 0.0, {})), "plan.suction.none");
  EXPECT_EQ(problemIdOf(setTarget(asked, {}, -2.0)), "plan.suction.none");
  EXPECT_EQ(problemIdOf(setTarget(asked, 1.0, 2.0)), "plan.suction.limit-above-target");
  // Without a target its usual one counts, and is not raised behind anybody's back.
  EXPECT_EQ(problemIdOf(setTarget(asked, {}, 20.0)), "plan.edit.limit-above-usual");
  EXPECT_EQ(doneWell(setTarget(asked, {}, kUsualTarget_pa)).suction.limit_pa, kUsualTarget_pa);
  EXPECT_EQ(problemIdOf(setTarget(asked, kNan, {})), "plan.edit.not-a-place");
  EXPECT_EQ(problemIdOf(setUsualPit(asked, 0.5)), "plan.pit.size");
  EXPECT_EQ(doneWell(setUsualPit(asked, 28.0)).suction.pit_l, 28.0);
}

TEST(SuctionEdits, AGuessOfTheGroundIsARange) {
  GroundGuess guess;
  guess.permeability_m2 = Spread{1e-9, 1e-8};
  EXPECT_EQ(doneWell(setGroundGuess(suckedHouse(), guess)).suction.ground, guess);
  guess.joint_width_mm = Spread{1.0, 0.5};
  EXPECT_EQ(problemIdOf(setGroundGuess(suckedHouse(), guess)), "plan.ground.spread");
}

TEST(SuctionEdits, PressureTestsAreAddedChangedAndRemoved) {
  PressureTest unnamed = someTest();
  unnamed.id.clear();
  const Job one = doneWell(addPressureTest(suckedHouse(), unnamed));
  EXPECT_EQ(one.suction.tests[0].id, "pressure-test-1");
  EXPECT_EQ(problemIdOf(addPressureTest(one, one.suction.tests[0])), "plan.id.twice");
  PressureTest stranger = someTest();
  stranger.id = "s";  // the sump's
  EXPECT_EQ(problemIdOf(addPressureTest(one, stranger)), "plan.id.twice");
  PressureTest changed = one.suction.tests[0];
  changed.flow_m3_s.reset();
  const Job without = doneWell(changePressureTest(one, changed));
  EXPECT_FALSE(without.suction.tests[0].flow_m3_s);
  changed.sump = "x";
  EXPECT_EQ(problemIdOf(changePressureTest(one, changed)), "plan.test.no-sump");
  changed = someTest();
  EXPECT_EQ(problemIdOf(changePressureTest(one, changed)), "plan.test.unknown");
  EXPECT_EQ(doneWell(removePressureTest(one, "pressure-test-1")), suckedHouse());
  EXPECT_EQ(problemIdOf(removePressureTest(one, "x")), "plan.test.unknown");
  EXPECT_FALSE(setUseTests(one, false).suction.use_tests);
}

TEST(SuctionEdits, AReadingIsPutAndTakenOut) {
  const Job tested = doneWell(addPressureTest(suckedHouse(), someTest()));
  Job read = doneWell(setReading(tested, "pt", "th", 6.5, 0.4));
  ASSERT_EQ(read.suction.tests[0].readings.size(), 1U);
  EXPECT_EQ(read.suction.tests[0].readings[0], (HoleReading{"th", 6.5, 0.4}));
  read = doneWell(setReading(read, "pt", "th", 6.0));
  EXPECT_EQ(read.suction.tests[0].readings[0], (HoleReading{"th", 6.0, 0.4}));
  read = doneWell(setReading(read, "pt", "th", {}));
  EXPECT_TRUE(read.suction.tests[0].readings.empty());
  EXPECT_EQ(doneWell(setReading(read, "pt", "th", {})), read);
  EXPECT_EQ(problemIdOf(setReading(read, "pt", "nowhere", 3.0)), "plan.test.no-hole");
  EXPECT_EQ(problemIdOf(setReading(read, "x", "th", 3.0)), "plan.test.unknown");
  EXPECT_EQ(problemIdOf(setReading(read, "pt", "th", 9600.0)), "plan.test.reading-most");
  PressureTest pitted = read.suction.tests[0];
  pitted.pit_pa = 318.0;
  read = doneWell(changePressureTest(read, pitted));
  EXPECT_EQ(problemIdOf(setReading(read, "pt", "th", 740.0)), "plan.test.over-pit");
  // The pit as well cannot come to less than a hole; two gauges may differ by a little.
  read = doneWell(setReading(read, "pt", "th", 320.0));
  pitted = read.suction.tests[0];
  pitted.pit_pa = 150.0;
  EXPECT_EQ(problemIdOf(changePressureTest(read, pitted)), "plan.test.over-pit");
  EXPECT_EQ(problemIdOf(setReading(read, "pt", "th", 3.0, -1.0)), "plan.test.sd");
}

TEST(SuctionEdits, WhatATestSpeaksOfTakesItsReadingsWithIt) {
  const Job tested = doneWell(addPressureTest(suckedHouse(), someTest()));
  EXPECT_TRUE(doneWell(removeThing(tested, "th")).suction.tests[0].readings.empty());
  EXPECT_EQ(doneWell(removeSump(tested, "s")).suction.tests[0].sump, "");
  const Job wired = doneWell(setSumpSupply(tested, "s", "so"));
  EXPECT_EQ(doneWell(removeThing(wired, "so")).design.sumps[0].supply, "");
}

TEST(SuctionEdits, ATestKeepsWhereItsSumpStood) {
  const Job tested = doneWell(addPressureTest(suckedHouse(), someTest()));
  const auto stood = [](const Job& job) { return job.suction.tests[0].stood; };
  const SumpPlace here{0, 5.0, std::nullopt};
  EXPECT_EQ(stood(tested), here) << "taken down with the test";
  EXPECT_EQ(stood(doneWell(moveSump(tested, "s", 0, 12.0))), here);
  EXPECT_EQ(stood(doneWell(removeSump(tested, "s"))), here);
  PressureTest elsewhere = someTest();
  elsewhere.stood = SumpPlace{0, 0.0, geometry::Point{4, 4}};
  const Job typed = doneWell(addPressureTest(suckedHouse(), elsewhere));
  EXPECT_EQ(stood(typed), elsewhere.stood) << "what is said is kept";
  elsewhere.stood->at_m = geometry::Point{-1, 4};
  EXPECT_EQ(problemIdOf(addPressureTest(suckedHouse(), elsewhere)), "plan.test.stood-outside");
  elsewhere.stood = SumpPlace{1, 2.0, std::nullopt};
  EXPECT_EQ(problemIdOf(addPressureTest(suckedHouse(), elsewhere)), "plan.test.stood-off-ring");
}

/// Of a file that does not say it: until the sump is moved, where it stands is where it stood.
TEST(SuctionEdits, AnOldTestLearnsWhereItsSumpStoodWhenThatIsMoved) {
  Job old = suckedHouse();
  old.suction.tests.push_back(someTest());
  const SumpPlace here{0, 5.0, std::nullopt};
  const Job moved = doneWell(moveSump(old, "s", 0, 12.0));
  EXPECT_EQ(moved.suction.tests[0].stood, here);
  EXPECT_EQ(doneWell(moveSump(moved, "s", 0, 14.0)).suction.tests[0].stood, here);
  EXPECT_EQ(doneWell(removeSump(old, "s")).suction.tests[0].stood, here);
  old.suction.tests[0].sump.clear();
  // With a second sump it is no more plain which one was meant.
  EXPECT_EQ(doneWell(moveSump(old, "t", 0, 12.0)).suction.tests[0].stood, here);
  EXPECT_EQ(doneWell(moveSumpInside(old, "i", SumpKind::internal, {4, 4})).suction.tests[0].stood,
            here);
  Job inside = doneWell(moveSumpInside(suckedHouse(), "i", SumpKind::internal, {4, 4}));
  inside.suction.tests.push_back(someTest());
  inside.suction.tests[0].sump = "i";
  const Job pushed = doneWell(moveSumpInside(inside, "i", SumpKind::internal, {6, 5}));
  EXPECT_EQ(pushed.suction.tests[0].stood, (SumpPlace{0, 0.0, geometry::Point{4, 4}}));
}

TEST(SuctionEdits, WhereASumpStoodGoesWithItsWall) {
  PressureTest test = someTest();
  test.stood = SumpPlace{0, 14.0, std::nullopt};  // 4 m up the east wall
  const Job house = doneWell(addPressureTest(suckedHouse(), test));
  const Job longer = doneWell(moveWall(house, 0, 1, 1.0));
  EXPECT_NEAR(longer.suction.tests[0].stood->chainage_m, 15.0, 1e-9);
  EXPECT_EQ(unsoundIn(doneWell(mirrorPlan(house))), 0U);
  test.stood = SumpPlace{0, 0.0, geometry::Point{3, 2}};
  const Job inside = doneWell(addPressureTest(suckedHouse(), test));
  const Job turned = doneWell(turnPlan(inside, 180.0));
  EXPECT_NEAR(turned.suction.tests[0].stood->at_m->x, 7.0, 1e-9);
  EXPECT_NEAR(turned.suction.tests[0].stood->at_m->y, 6.0, 1e-9);
}

TEST(SuctionEdits, WhereASumpStoodInACourtyardGoesWithIt) {
  PressureTest test{"pt", "", "s", "", 0.02, {}, {}, "", SumpPlace{1, 1.0, std::nullopt}};
  const Job house =
      doneWell(addPressureTest(PlanBuilder::courtyard().sump("s", 0, 3.0), std::move(test)));
  EXPECT_FALSE(doneWell(removeRing(house, 1)).suction.tests[0].stood.has_value());
}

TEST(SuctionEdits, FanAndPipeAreChecked) {
  FanPick fan{"demo", "demo-m", "", {{0.0, 300.0, 40.0}, {0.03, 180.0, {}}, {0.05, 0.0, {}}}, 0.8};
  EXPECT_EQ(doneWell(setFan(suckedHouse(), fan)).design.fan, fan);
  fan.points[1].pressure_pa = 310.0;
  EXPECT_EQ(problemIdOf(setFan(suckedHouse(), fan)), "plan.fan.curve");
  EXPECT_EQ(problemIdOf(setFan(suckedHouse(), {"", "", "", {}, 1.2})), "plan.fan.speed");
  const PipeRun pipe{1.0, 4.5, 1, 3};
  EXPECT_EQ(doneWell(setPipeRun(suckedHouse(), pipe)).design.pipe, pipe);
  EXPECT_EQ(problemIdOf(setPipeRun(suckedHouse(), {-1.0, {}, {}, {}})), "plan.pipe.length");
  EXPECT_EQ(problemIdOf(setPipeRun(suckedHouse(), {{}, {}, -1, {}})), "plan.edit.not-a-place");
  EXPECT_TRUE(setSharedFan(suckedHouse(), true).design.shared_fan);
  EXPECT_EQ(setAnnulus(suckedHouse(), AnnulusSeal::sealed).design.annulus, AnnulusSeal::sealed);
  EXPECT_EQ(setSilencer(suckedHouse(), YesNo::yes).design.silencer, YesNo::yes);
}

TEST(SumpEdits, EachPartIsSetAndRefused) {
  const Job house = suckedHouse();
  EXPECT_EQ(doneWell(setEntry(house, "s", -0.3, 2.0)).design.sumps[0].entry_m, -0.3);
  EXPECT_EQ(problemIdOf(setEntry(house, "s", {}, 60.0)), "plan.sump.fall");
  EXPECT_EQ(problemIdOf(setEntry(house, "x", {}, {})), "plan.sump.unknown");
  EXPECT_EQ(doneWell(setPit(house, "s", 20.0)).design.sumps[0].pit_l, 20.0);
  EXPECT_EQ(problemIdOf(setPit(house, "s", 0.0)), "plan.pit.size");
  const Discharge out{0, 6.0, 2.8};
  EXPECT_EQ(doneWell(setDischarge(house, "s", out)).design.sumps[0].discharge, out);
  EXPECT_EQ(problemIdOf(setDischarge(house, "s", Discharge{1, 6.0, 2.8})),
            "plan.discharge.off-ring");
  const Job high = doneWell(setFanPlace(house, "s", FanPlace::outside_high, 2.2));
  EXPECT_EQ(high.design.sumps[0].fan_place, FanPlace::outside_high);
  EXPECT_EQ(problemIdOf(setSumpSupply(house, "s", "th")), "plan.sump.no-supply");
  EXPECT_EQ(doneWell(setSumpSupply(house, "s", "so")).design.sumps[0].supply, "so");
}

TEST(SumpEdits, ASumpInsideIsPlacedInTheHouse) {
  const Job house = suckedHouse();
  const Job inside = doneWell(moveSumpInside(house, "i", SumpKind::internal, {4, 4}));
  ASSERT_EQ(inside.design.sumps.size(), 2U);
  EXPECT_EQ(inside.design.sumps[1].kind, SumpKind::internal);
  EXPECT_EQ(doneWell(moveSumpInside(house, "", SumpKind::internal, {4, 4})).design.sumps.back().id,
            "sump-1");
  const Job moved = doneWell(moveSumpInside(inside, "i", SumpKind::standby, {5, 4}));
  EXPECT_EQ(moved.design.sumps[1].kind, SumpKind::internal) << "it keeps its own";
  EXPECT_EQ(problemIdOf(moveSumpInside(inside, "i", SumpKind::internal, {-1, 4})),
            "plan.sump.outside");
  EXPECT_EQ(problemIdOf(moveSumpInside(house, "s", SumpKind::internal, {4, 4})), "plan.sump.cored");
  EXPECT_EQ(problemIdOf(moveSumpInside(house, "th", SumpKind::internal, {4, 4})), "plan.id.twice");
}

/// Where the air leaves stays where it is in the world when the outline is edited.
TEST(SumpEdits, TheDischargeGoesWithItsWall) {
  const Job house = doneWell(setDischarge(suckedHouse(), "s", Discharge{0, 14.0, 2.8}));
  // The front wall's far corner goes out by 1 m: 14 m was 4 m up the east wall, at (10, 4).
  const Job longer = doneWell(moveWall(house, 0, 1, 1.0));
  EXPECT_NEAR(longer.design.sumps[0].discharge->chainage_m, 15.0, 1e-9);
  const Job mirrored = doneWell(mirrorPlan(house));
  EXPECT_TRUE(mirrored.design.sumps[0].discharge.has_value());
  EXPECT_EQ(unsoundIn(mirrored), 0U);
}

TEST(SumpEdits, ADischargeInACourtyardGoesWithIt) {
  // On another ring than its hole it is unsound, but a file may say so.
  Job house = PlanBuilder::courtyard().sump("s", 0, 3.0).job();
  house.design.sumps[0].discharge = Discharge{1, 1.0, 2.8};
  EXPECT_FALSE(doneWell(removeRing(house, 1)).design.sumps[0].discharge.has_value());
}

TEST(Quote, DecimalsAreTextOfTheFormWritten) {
  for (const char* text : {"0", "12", "12.5", "-3.25", "999999999999.999999", "007"}) {
    EXPECT_TRUE(isDecimal(text)) << text;
  }
  for (const char* text : {"", "-", ".5", "5.", "1,5", "1e3", " 1", "1 ", "+1", "--1", "1.2.3",
                           "1234567890123", "1.1234567", "0x1", "inf"}) {
    EXPECT_FALSE(isDecimal(text)) << text;
  }
}

TEST(Quote, IsPutAsAWhole) {
  Quote quote;
  quote.price_book = "demo";
  quote.tax_percent = "13.5";
  quote.lines = {{"", "core", "", "2", "", false}, {"", "", "a discount", "1", "-50.00", false}};
  const Job priced = doneWell(setQuote(suckedHouse(), quote));
  EXPECT_EQ(priced.design.quote.lines[0].id, "price-line-1");
  EXPECT_EQ(priced.design.quote.lines[1].id, "price-line-2");
  quote.lines[1].unit_price = "fifty";
  EXPECT_EQ(problemIdOf(setQuote(suckedHouse(), quote)), "plan.quote.not-decimal");
  quote.lines[1] = {"s", "", "twice", "", "", false};
  EXPECT_EQ(problemIdOf(setQuote(suckedHouse(), quote)), "plan.id.twice");
}

}  // namespace
}  // namespace sumpwright::plan
