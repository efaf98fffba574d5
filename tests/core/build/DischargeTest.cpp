// Outlet, fan and riser in height. Rectangle 10 x 8: front y = 0 is chainage 0..10, east 10..18,
// rear 18..28, west 28..36. Pipe 110 mm: half 0.055 m. Openings 1.50 m (Irish sheet). Invented.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "build/Discharge.h"
#include "build/Enclosure.h"
#include "build/Levels.h"
#include "build/OutletLevels.h"
#include "build/RefusedZone.h"
#include "build/Run.h"
#include "core/build/Sites.h"

namespace sumpwright::build {

namespace {

using plan::OpeningKind;
using rules::FindingSpan;
using rules::Weight;
using support::PlanBuilder;

constexpr double kHalf_m = 0.055;
constexpr double kExact_m = 1e-9;

plan::Opening at(const std::string& id, int edge, double offset, double width, double sill,
                 double head, int storey = 0, OpeningKind kind = OpeningKind::window) {
  plan::Opening o;
  o.id = id;
  o.kind = kind;
  o.at = {0, edge, offset};
  o.width_m = width;
  o.sill_m = sill;
  o.head_m = head;
  o.storey = storey;
  return o;
}

plan::Job placed(PlanBuilder builder, double s, double outlet, double height) {
  builder.sump("sump", 0, s);
  plan::Job job = builder.job();
  job.design.outlet = plan::OutletMode::riser;
  job.house.eaves_m = 2.6;
  job.house.ground_level_m = -0.15;
  job.design.sumps[0].discharge = plan::Discharge{0, outlet, height};
  return job;
}

rules::Site siteWithRun(const plan::Job& job, const std::string& sheet = "ie-practice") {
  const rules::RuleSheet rules = support::builtInSheet(sheet);
  rules::Site site =
      rules::makeSite(perimeter::Perimeter::of(job).value(), job, rules, job.design.outlet, 0.127);
  site.run = placedRun(site, "");
  return site;
}

std::vector<FindingSpan> spansOf(const rules::Site& site, const std::string& rule) {
  std::vector<FindingSpan> spans;
  addRunSpans(*site.sheet.find(rule), site, spans);
  return spans;
}

// Window 4.0..5.2, 0.9..2.1. An outlet at 3.0 m is 0.9 above its head: in plan it must keep
// 0.055 + sqrt(1.5^2 - 0.9^2) = 0.055 + 1.2.
TEST(Discharge, ClearanceIsSmallerInPlanTheHigherTheOutlet) {
  plan::Job job =
      placed(PlanBuilder::rectangle().opening(at("w", 0, 4.0, 1.2, 0.9, 2.1)), 8.0, 8.0, 3.0);
  job.design.sumps[0].fan_place = plan::FanPlace::roof_space;  // only the outlet is judged
  const rules::Site site = siteWithRun(job);
  const auto spans = spansOf(site, "openings");
  ASSERT_EQ(spans.size(), 1U);
  EXPECT_NEAR(spans[0].from_m, 4.0 - 1.255, kExact_m);
  EXPECT_NEAR(spans[0].to_m, 5.2 + 1.255, kExact_m);
  EXPECT_EQ(spans[0].finding.weight, Weight::binding);
  EXPECT_TRUE(spans[0].of_run);
  EXPECT_NEAR(*spans[0].finding.distance_m, 0.9, kExact_m);
  const rules::Finding here =
      runFindingAt(*site.sheet.find("openings"), site, spans[0].finding, {0, 6.0});
  EXPECT_NEAR(*here.distance_m, std::hypot(0.8 - kHalf_m, 0.9), kExact_m);
}

TEST(Discharge, ExactlyFarEnoughAboveIsClear) {
  plan::Job job =
      placed(PlanBuilder::rectangle().opening(at("w", 0, 4.0, 1.2, 0.9, 2.1)), 4.5, 4.5, 3.6);
  job.design.sumps[0].fan_place = plan::FanPlace::roof_space;
  EXPECT_TRUE(spansOf(siteWithRun(job), "openings").empty());
}

// Upper storeys count, and a window straight over the outlet lies in the way of its jet.
TEST(Discharge, UpperWindowsAreJudged) {
  plan::Job job =
      placed(PlanBuilder::rectangle().opening(at("up", 0, 4.0, 1.2, 3.6, 4.8, 1)), 4.6, 4.6, 2.9);
  job.house.eaves_m = 5.2;
  const rules::Site site = siteWithRun(job);
  ASSERT_EQ(spansOf(site, "openings").size(), 1U);
  const auto jet = spansOf(site, "discharge-jet");
  ASSERT_EQ(jet.size(), 1U);
  EXPECT_NEAR(jet[0].from_m, 4.0 - 0.555, kExact_m);
  EXPECT_NEAR(jet[0].to_m, 5.2 + 0.555, kExact_m);
  EXPECT_NEAR(*jet[0].finding.distance_m, 0.7, kExact_m);
}

// What stands on one part is asked of that part: the low fan is near the window, the outlet is not.
TEST(Discharge, FanAndOutletAreTwoPlaces) {
  const plan::Job job =
      placed(PlanBuilder::rectangle().opening(at("w", 0, 4.0, 1.2, 0.9, 2.1)), 6.0, 6.0, 4.5);
  const rules::Site site = siteWithRun(job);
  const auto spans = spansOf(site, "openings");
  ASSERT_EQ(spans.size(), 1U);
  EXPECT_NEAR(spans[0].to_m, 5.2 + 1.5 + kHalf_m, kExact_m);
  const rules::Finding here =
      runFindingAt(*site.sheet.find("openings"), site, spans[0].finding, {0, 6.0});
  EXPECT_NEAR(*here.distance_m, 0.8 - kHalf_m, kExact_m);
  const auto* part = here.reason.find("part");
  ASSERT_NE(part, nullptr);
  EXPECT_EQ(std::get<base::Message>(part->value).id, "part.fan");
}

// The outlet stands 2 m to the right of the hole: what it is too near to is so much to the left.
TEST(Discharge, SidewaysOutletIsBroughtBackToTheHole) {
  plan::Job job =
      placed(PlanBuilder::rectangle().opening(at("w", 0, 4.0, 1.2, 0.9, 2.1)), 1.0, 3.0, 2.1);
  job.design.sumps[0].fan_place = plan::FanPlace::roof_space;
  const auto spans = spansOf(siteWithRun(job), "openings");
  ASSERT_EQ(spans.size(), 1U);
  EXPECT_NEAR(spans[0].from_m, 4.0 - 1.555 - 2.0, kExact_m);
  EXPECT_NEAR(spans[0].to_m, 5.2 + 1.555 - 2.0, kExact_m);
}

TEST(Discharge, UnknownHeightsAreEveryHeight) {
  plan::Opening o = at("w", 0, 4.0, 1.2, 0.0, 0.0);
  o.sill_m.reset();
  o.head_m.reset();
  plan::Job job = placed(PlanBuilder::rectangle().opening(o), 8.0, 8.0, 9.0);
  const auto spans = spansOf(siteWithRun(job), "openings");
  ASSERT_EQ(spans.size(), 1U);
  EXPECT_NEAR(spans[0].from_m, 4.0 - 1.555, kExact_m);
  EXPECT_EQ(spans[0].finding.reason.id, "rule.run-near-any-height");
}

TEST(Discharge, NoRunOnAnotherRingOrWithoutDischarge) {
  plan::Job job = placed(PlanBuilder::rectangle(), 4.0, 4.0, 3.0);
  EXPECT_TRUE(siteWithRun(job).run.has_value());
  job.design.sumps[0].discharge->ring = 1;
  EXPECT_FALSE(siteWithRun(job).run.has_value());
  job.design.sumps[0].discharge.reset();
  EXPECT_FALSE(siteWithRun(job).run.has_value());
}

// ANSI/AARST RMS-MF 2018, 6.4.10: 6 in above the roof edge; US EPA 1994: 10 ft above the ground.
TEST(Discharge, AmericanHeights) {
  const auto ids = [](double height, double eaves) {
    plan::Job job = placed(PlanBuilder::rectangle(), 4.0, 4.0, height);
    job.house.eaves_m = eaves;
    const rules::Site site = siteWithRun(job, "us-practice");
    std::vector<std::string> found;
    for (const char* rule : {"outlet-above-ground", "outlet-above-eaves", "outlet-below-roof"}) {
      if (!spansOf(site, rule).empty()) found.emplace_back(rule);
    }
    return found;
  };
  using Ids = std::vector<std::string>;
  EXPECT_EQ(ids(2.85, 2.6), Ids{"outlet-above-ground"});  // 3.00 m above the ground
  EXPECT_EQ(ids(3.0, 2.6), Ids{});                        // 3.15 m
  EXPECT_EQ(ids(3.0, 2.9), Ids{"outlet-above-eaves"});
  EXPECT_EQ(ids(4.0, 5.2), (Ids{"outlet-above-eaves", "outlet-below-roof"}));
  EXPECT_EQ(ids(6.0, 7.0), Ids{"outlet-above-eaves"});  // 6.15 m above the ground
}

// AF103.3.2: openings less than 2 ft (0.61 m) below the outlet count, those further below do not.
TEST(Discharge, AmericanOpeningsFarBelowAreClear) {
  for (const double above : {0.60, 0.62}) {
    plan::Job job = placed(PlanBuilder::rectangle().opening(at("w", 0, 4.0, 1.2, 0.9, 2.1)), 8.0,
                           8.0, 2.1 + above);
    rules::RuleSheet sheet = support::builtInSheet("us-practice");
    rules::Site site = rules::makeSite(perimeter::Perimeter::of(job).value(), job, sheet,
                                       job.design.outlet, 0.127);
    for (rules::Rule& rule : site.sheet.rules) rule.applies_to = {rules::Part::outlet};
    site.run = placedRun(site, "");
    EXPECT_EQ(spansOf(site, "openings").empty(), above > 0.61) << above;
  }
}

TEST(Discharge, EavesNotKnownIsNotProven) {
  plan::Job job = placed(PlanBuilder::rectangle(), 4.0, 4.0, 3.0);
  job.house.eaves_m.reset();
  job.plan.rings[0].walls[1].eaves_m = 2.6;
  const auto spans = spansOf(siteWithRun(job), "outlet-under-eaves");
  ASSERT_EQ(spans.size(), 3U);  // all walls but the east one
  for (const FindingSpan& s : spans) EXPECT_EQ(s.finding.weight, Weight::unknown);
}

TEST(Discharge, JetUnderEaves) {
  plan::Job job = placed(PlanBuilder::rectangle(), 4.0, 4.0, 1.7);
  const auto spans = spansOf(siteWithRun(job), "outlet-under-eaves");  // 0.90 below 2.60
  ASSERT_FALSE(spans.empty());
  EXPECT_NEAR(*spans[0].finding.distance_m, 0.9, kExact_m);
  job.design.sumps[0].discharge->height_m = 1.6;
  EXPECT_TRUE(spansOf(siteWithRun(job), "outlet-under-eaves").empty());
  job.design.sumps[0].discharge->height_m = 2.6;
  EXPECT_TRUE(spansOf(siteWithRun(job), "outlet-under-eaves").empty());
}

// Ground from -0.5 at offset 0 to +0.5 at 10: an outlet at 0.4 is 0.3 over it where it is 0.1.
TEST(Discharge, SlopingGround) {
  plan::Job job = placed(PlanBuilder::rectangle(), 4.0, 4.0, 0.4);
  job.plan.rings[0].walls[0].ground_points = {{0.0, -0.5, {}}, {10.0, 0.5, {}}};
  const auto spans = spansOf(siteWithRun(job), "outlet-above-ground");
  ASSERT_EQ(spans.size(), 1U);
  EXPECT_NEAR(spans[0].from_m, 6.0, kExact_m);
  EXPECT_NEAR(spans[0].to_m, 10.0, kExact_m);
}

TEST(Discharge, RiserDoesNotCrossAWindow) {
  plan::Job job =
      placed(PlanBuilder::rectangle().opening(at("w", 0, 4.0, 1.2, 0.9, 2.1)), 4.5, 4.5, 4.0);
  const auto spans = spansOf(siteWithRun(job), "riser-before-opening");
  ASSERT_EQ(spans.size(), 1U);
  EXPECT_NEAR(spans[0].from_m, 4.0 - 0.105, kExact_m);
  EXPECT_NEAR(spans[0].to_m, 5.2 + 0.105, kExact_m);
  EXPECT_LE(*spans[0].finding.distance_m, 0.0);
}

// From the hole 6 m to the right at 1.40 m, across a window of 0.90 to 2.10 m: wherever any of that
// way is before it. Both uprights alone would leave the hole at 1 m free.
TEST(Discharge, WayAsideIsJudgedOverAllItsLength) {
  plan::Job job =
      placed(PlanBuilder::rectangle().opening(at("w", 0, 4.0, 1.2, 0.9, 2.1)), 1.0, 7.0, 2.0);
  const rules::Site site = siteWithRun(job);
  const auto spans = spansOf(site, "riser-before-opening");
  ASSERT_EQ(spans.size(), 2U);  // over chainage 0
  EXPECT_EQ(spans[0].from_m, 0.0);
  EXPECT_NEAR(spans[0].to_m, 5.2 + 0.105, kExact_m);
  EXPECT_NEAR(spans[1].from_m, 36.0 + 4.0 - 0.105 - 6.0, kExact_m);
  const rules::Finding here =
      runFindingAt(*site.sheet.find("riser-before-opening"), site, spans[0].finding, {0, 1.0});
  EXPECT_NEAR(*here.distance_m, -kHalf_m, kExact_m);
  EXPECT_NEAR(nearestOfRun(*site.sheet.find("riser-before-opening"), site, {0, 1.0})->distance_m,
              -kHalf_m, kExact_m);
}

// The leg at 2.30 m passes 0.245 m, from its edge, over a flue of 1.90 to 2.00 m.
TEST(Discharge, WayAsidePassesAFlue) {
  plan::Job job = placed(PlanBuilder::rectangle().opening(
                             at("f", 0, 4.0, 0.1, 1.9, 2.0, 0, OpeningKind::flue_terminal)),
                         2.0, 6.5, 2.9);
  const rules::Site site = siteWithRun(job);
  const rules::Rule& rule = *site.sheet.find("flue");
  const auto spans = spansOf(site, "flue");
  ASSERT_FALSE(spans.empty());
  EXPECT_NEAR(*runFindingAt(rule, site, spans[0].finding, {0, 2.0}).distance_m, 0.245, kExact_m);
}

// Round the corner B (chainage 10) and on to a window of the next wall.
TEST(Discharge, WayAsideGoesRoundCorners) {
  plan::Job job =
      placed(PlanBuilder::rectangle().opening(at("w", 1, 1.0, 1.2, 0.9, 2.1)), 9.0, 14.0, 2.0);
  const auto spans = spansOf(siteWithRun(job), "riser-before-opening");
  ASSERT_EQ(spans.size(), 1U);
  EXPECT_NEAR(spans[0].from_m, 11.0 - 0.105 - 5.0, kExact_m);
  EXPECT_NEAR(spans[0].to_m, 12.2 + 0.105, kExact_m);
}

PlanBuilder withPartyWall() {
  return PlanBuilder::rectangle().wall(1, [](plan::Wall& w) { w.kind = plan::WallKind::party; });
}

// Hole on the rear wall (18..28), outlet 4 m back on the party wall (10..18).
TEST(Discharge, NothingOfTheRunGoesOnAPartyWall) {
  const rules::Site site = siteWithRun(placed(withPartyWall(), 19.0, 15.0, 3.0));
  const rules::Rule& rule = *site.sheet.find("party-wall");
  const auto spans = spansOf(site, "party-wall");
  ASSERT_EQ(spans.size(), 1U);
  EXPECT_NEAR(spans[0].from_m, 10.0 - kHalf_m, 1e-8);
  EXPECT_NEAR(spans[0].to_m, 18.0 + kHalf_m + 4.0, 1e-8);
  EXPECT_EQ(spans[0].finding.weight, Weight::binding);
  EXPECT_FALSE(spans[0].finding.waivable.allowed);
  const auto part = [&](double hole) {
    const rules::Finding f = runFindingAt(rule, site, spans[0].finding, {0, hole});
    EXPECT_EQ(f.reason.id, "rule.run-wall");
    return std::get<base::Message>(f.reason.find("part")->value).id;
  };
  EXPECT_EQ(part(19.0), "part.outlet");
  EXPECT_EQ(part(13.0), "part.riser");  // the outlet is on the front wall, the way to it is not
  // From wall to wall across all of it.
  const rules::Site across = siteWithRun(placed(withPartyWall(), 20.0, 8.0, 3.0));
  const auto crossed = spansOf(across, "party-wall");
  ASSERT_EQ(crossed.size(), 1U);
  EXPECT_NEAR(crossed[0].from_m, 10.0 - kHalf_m, 1e-8);
  EXPECT_NEAR(crossed[0].to_m, 18.0 + kHalf_m + 12.0, 1e-8);
}

TEST(Discharge, WhatStandsAboveTheHoleIsJudgedWithTheHole) {
  EXPECT_TRUE(spansOf(siteWithRun(placed(withPartyWall(), 19.0, 19.0, 3.0)), "party-wall").empty());
  EXPECT_TRUE(spansOf(siteWithRun(placed(PlanBuilder::rectangle(), 19.0, 15.0, 3.0)), "party-wall")
                  .empty());
}

// An overhead line 5 cm off the west wall, and a telephone line that lands on it.
TEST(Discharge, RiserKeepsOffOverheadLines) {
  const PlanBuilder house = PlanBuilder::rectangle().outside("o", plan::OutsideKind::overhead_line,
                                                             {{-0.05, 2.0}, {-0.05, 5.0}});
  const rules::Site site = siteWithRun(placed(house, 32.5, 32.5, 6.4));
  const auto spans = spansOf(site, "overhead-line");
  ASSERT_EQ(spans.size(), 1U);
  EXPECT_EQ(spans[0].finding.weight, Weight::binding);
  EXPECT_EQ(spans[0].finding.thing, "o");
  EXPECT_NEAR(*spans[0].finding.distance_m, 0.05 - kHalf_m, kExact_m);
  const double along = std::sqrt(1.055 * 1.055 - 0.05 * 0.05);
  EXPECT_NEAR(spans[0].from_m, 36.0 - 5.0 - along, kExact_m);
  EXPECT_EQ(nearestOfRun(*site.sheet.find("overhead-line"), site, {0, 32.5})->thing, "o");
  // What ends well under it is clear: it hangs from 2.50 m up.
  EXPECT_TRUE(spansOf(siteWithRun(placed(house, 32.5, 32.5, 1.5)), "overhead-line").empty());
  EXPECT_FALSE(spansOf(siteWithRun(placed(house, 32.5, 32.5, 1.51)), "overhead-line").empty());
  const rules::Site wire = siteWithRun(placed(
      PlanBuilder::rectangle().service("t", plan::ServiceKind::telecom, 0, 5.0), 5.5, 5.5, 4.0));
  ASSERT_EQ(spansOf(wire, "overhead-line").size(), 1U);
  EXPECT_NEAR(spansOf(wire, "overhead-line")[0].from_m, 5.0 - 1.055, kExact_m);
}

plan::Job withFan(double height_m, double outlet_m = 3.0) {
  plan::Job job = placed(PlanBuilder::rectangle(), 4.0, 4.0, outlet_m);
  job.design.sumps[0].fan_height_m = height_m;
  return job;
}

// ANSI/AARST CCAH 2020, 701.2.1: not below ground, which is at -0.15 m here.
TEST(Discharge, FanStandsAboveTheGround) {
  const auto buried = spansOf(siteWithRun(withFan(-1.0)), "fan-above-ground");
  ASSERT_EQ(buried.size(), 1U);
  EXPECT_EQ(buried[0].finding.reason.id, "rule.fan-in-ground");
  EXPECT_NEAR(*buried[0].finding.distance_m, -0.85, kExact_m);
  EXPECT_FALSE(spansOf(siteWithRun(withFan(-0.01)), "fan-above-ground").empty());
  EXPECT_TRUE(spansOf(siteWithRun(withFan(0.0)), "fan-above-ground").empty());
}

// A high fan stands with its outlet, 3 m to the right, where the ground rises to 0.5 m.
TEST(Discharge, FanIsAskedOfTheGroundAtItsOwnPlace) {
  plan::Job job = placed(PlanBuilder::rectangle(), 4.0, 7.0, 1.4);
  job.plan.rings[0].walls[0].ground_points = {{0.0, -0.5, {}}, {10.0, 0.5, {}}};
  job.design.sumps[0].fan_height_m = 0.25;
  job.design.sumps[0].fan_place = plan::FanPlace::outside_high;
  const auto high = spansOf(siteWithRun(job), "fan-above-ground");
  ASSERT_EQ(high.size(), 1U);
  EXPECT_NEAR(high[0].from_m, 6.0 - 3.0, kExact_m);  // 0.10 m of ground at 6 m
  job.design.sumps[0].fan_place = plan::FanPlace::outside_low;
  EXPECT_NEAR(spansOf(siteWithRun(job), "fan-above-ground")[0].from_m, 6.0, kExact_m);
}

TEST(Discharge, FanStandsUnderTheOutlet) {
  const auto over = spansOf(siteWithRun(withFan(7.5, 6.4)), "fan-under-outlet");
  ASSERT_EQ(over.size(), 1U);
  EXPECT_EQ(over[0].finding.reason.id, "rule.fan-over-outlet");
  EXPECT_NEAR(over[0].to_m - over[0].from_m, 36.0, kExact_m);
  EXPECT_FALSE(spansOf(siteWithRun(withFan(2.86)), "fan-under-outlet").empty());
  EXPECT_TRUE(spansOf(siteWithRun(withFan(2.85)), "fan-under-outlet").empty());
}

TEST(Discharge, FanOfNoStatedHeightIsNeverPutIntoTheGround) {
  for (const plan::FanPlace place : {plan::FanPlace::outside_low, plan::FanPlace::outside_high}) {
    plan::Job job = placed(PlanBuilder::rectangle(), 4.0, 4.0, 0.15);  // 0.30 m over the ground
    job.design.sumps[0].fan_place = place;
    const rules::Site site = siteWithRun(job);
    EXPECT_NEAR(site.run->fan_m, 0.0, kExact_m);
    EXPECT_TRUE(spansOf(site, "fan-above-ground").empty());
    EXPECT_TRUE(spansOf(site, "fan-under-outlet").empty());
    // Where the ground stands high up the wall, over that.
    job.design.sumps[0].discharge->height_m = 4.0;
    job.plan.rings[0].walls[0].ground_level_m = 1.5;
    const bool low = place == plan::FanPlace::outside_low;
    EXPECT_NEAR(siteWithRun(job).run->fan_m, low ? 2.0 : 3.4, kExact_m);
  }
}

/// Its pipe goes out through the roof.
TEST(Discharge, OfAFanInTheRoofSpaceTheOutletIsNotOnTheWallUnderTheEaves) {
  const auto asked = [](double outlet_m, std::optional<double> eaves_m) {
    plan::Job job = placed(PlanBuilder::rectangle(), 4.0, 5.0, outlet_m);
    job.house.roof_lived_in = plan::YesNo::no;
    job.house.eaves_m = eaves_m;
    job.design.sumps[0].fan_place = plan::FanPlace::roof_space;
    return spansOf(siteWithRun(job), "fan-roof-space");
  };
  EXPECT_TRUE(asked(3.0, 2.6).empty());
  const auto low = asked(2.5, 2.6);
  ASSERT_FALSE(low.empty());
  EXPECT_EQ(low[0].finding.weight, Weight::binding);
  EXPECT_EQ(low[0].finding.reason.id, "rule.roof-outlet");
  double all = 0.0;
  for (const FindingSpan& span : low) all += span.to_m - span.from_m;
  EXPECT_NEAR(all, 36.0, 1e-9);  // every wall has the same eaves
  const auto unknown = asked(2.5, std::nullopt);
  ASSERT_FALSE(unknown.empty());
  EXPECT_EQ(unknown[0].finding.weight, Weight::unknown);
}

TEST(Discharge, NoFanInARoofSpaceWhereSomebodyLives) {
  const auto asked = [](plan::YesNo lived_in, std::vector<plan::Opening> openings) {
    PlanBuilder house = PlanBuilder::rectangle();
    for (plan::Opening& o : openings) house.opening(o);
    plan::Job job = placed(house, 4.0, 4.0, 3.4);
    job.house.roof_lived_in = lived_in;
    job.design.sumps[0].fan_place = plan::FanPlace::roof_space;
    job.design.sumps[0].fan_height_m = -1.0;  // of a place it does not have
    const rules::Site site = siteWithRun(job);
    EXPECT_TRUE(spansOf(site, "fan-above-ground").empty());
    return spansOf(site, "fan-roof-space");
  };
  using plan::YesNo;
  const auto unknown = asked(YesNo::unknown, {});
  ASSERT_EQ(unknown.size(), 1U);
  EXPECT_EQ(unknown[0].finding.weight, Weight::unknown);
  EXPECT_TRUE(asked(YesNo::no, {}).empty());
  EXPECT_EQ(asked(YesNo::yes, {})[0].finding.weight, Weight::binding);
  const plan::Opening roof = at("r", 0, 4.0, 0.6, 3.1, 3.9, 1, OpeningKind::roof_window);
  const plan::Opening gable = at("g", 1, 4.0, 0.6, 2.7, 3.5, 1);
  const plan::Opening upstairs = at("u", 1, 4.0, 0.6, 2.5, 3.5, 1);  // begins under the eaves
  const auto shown = asked(YesNo::unknown, {roof});
  EXPECT_EQ(shown[0].finding.weight, Weight::binding);
  EXPECT_EQ(shown[0].finding.thing, "r");
  EXPECT_EQ(asked(YesNo::unknown, {gable})[0].finding.thing, "g");
  EXPECT_EQ(asked(YesNo::unknown, {upstairs})[0].finding.weight, Weight::unknown);
  EXPECT_TRUE(asked(YesNo::no, {roof}).empty());
}

TEST(Discharge, PathBelowIsAdvisedAgainstWithinTwoMetresInPlan) {
  plan::Job job = placed(
      PlanBuilder::rectangle().outside("p", plan::OutsideKind::path, {{3.0, -1.0}, {5.0, -1.0}}),
      8.0, 8.0, 4.0);
  const auto spans = spansOf(siteWithRun(job), "over-path");
  ASSERT_EQ(spans.size(), 1U);
  const double aside = std::sqrt(2.055 * 2.055 - 1.0);
  EXPECT_NEAR(spans[0].from_m, 3.0 - aside, kExact_m);
  EXPECT_NEAR(spans[0].to_m, 5.0 + aside, kExact_m);
  EXPECT_EQ(spans[0].finding.weight, Weight::advisory);
}

// People sit up to 2 m: an outlet at 4.4 m is 2.4 above them.
TEST(Discharge, SittingPlace) {
  plan::Job job = placed(
      PlanBuilder::rectangle().outside("bench", plan::OutsideKind::sitting_place, {{5.0, -1.0}}),
      8.0, 8.0, 4.4);
  const auto spans = spansOf(siteWithRun(job), "sitting-place");
  ASSERT_EQ(spans.size(), 1U);
  const double plan = kHalf_m + std::sqrt(9.0 - 2.4 * 2.4);
  EXPECT_NEAR(spans[0].from_m, 5.0 - std::sqrt(plan * plan - 1.0), kExact_m);
}

TEST(Discharge, BedroomWindowsHearTheFan) {
  plan::Job job = placed(
      PlanBuilder::rectangle()
          .noRooms()
          .room("bed", plan::RoomUse::bedroom,
                {{0.35, 0.35}, {5.0, 0.35}, {5.0, 7.65}, {0.35, 7.65}})
          .room("hall", plan::RoomUse::hall, {{5.0, 0.35}, {9.65, 0.35}, {9.65, 7.65}, {5.0, 7.65}})
          .opening(at("bedroom", 0, 1.0, 1.2, 0.9, 2.1))
          .opening(at("hall-window", 0, 7.0, 1.2, 0.9, 2.1)),
      9.0, 9.0, 4.0);
  const auto spans = spansOf(siteWithRun(job), "fan-noise");
  ASSERT_EQ(spans.size(), 2U);  // over chainage 0
  for (const FindingSpan& s : spans) EXPECT_EQ(s.finding.thing, "bedroom");
}

TEST(Enclosure, CourtyardRecessAndPassage) {
  const rules::Site courtyard = siteOf(PlanBuilder::courtyard());
  const auto yard = enclosedSpans(courtyard);
  ASSERT_EQ(yard.size(), 1U);
  EXPECT_EQ(yard[0].ring, 1);
  EXPECT_EQ(yard[0].to_m, courtyard.perimeter.length_m(1));

  // A recess 2 m wide and 3 m deep in the rear wall.
  const rules::Site recess = siteOf(
      PlanBuilder::outline({{0, 0}, {10, 0}, {10, 8}, {6, 8}, {6, 5}, {4, 5}, {4, 8}, {0, 8}}));
  const auto in = enclosedSpans(recess);
  ASSERT_EQ(in.size(), 1U);
  // The back of the recess (25..27) has walls left, right and behind; of its sides the looks
  // straight out and to the back meet walls: all of them.
  EXPECT_NEAR(in[0].from_m, 22.0, kExact_m);
  EXPECT_NEAR(in[0].to_m, 30.0, kExact_m);
  EXPECT_TRUE(passageSpans(recess, 1.9).empty());
  EXPECT_FALSE(passageSpans(recess, 2.1).empty());
  EXPECT_TRUE(enclosedSpans(siteOf(PlanBuilder::lShape())).empty());
}

TEST(Enclosure, LowOutletIsRefusedThereAndOneAboveTheEavesIsNot) {
  plan::Job job = PlanBuilder::courtyard().job();
  job.design.outlet = plan::OutletMode::low;
  rules::Site site = siteOf(job);
  std::vector<FindingSpan> spans;
  kDischarge.spans(*site.sheet.find("low-outlet-enclosed"), site, spans);
  ASSERT_FALSE(spans.empty());
  EXPECT_EQ(spans[0].ring, 1);
  job.house.eaves_m = 2.6;
  job.design.sumps.push_back({});
  job.design.sumps[0].id = "sump";
  job.design.sumps[0].ring = 1;
  job.design.sumps[0].discharge = plan::Discharge{1, 0.0, 3.2};
  EXPECT_TRUE(spansOf(siteWithRun(job), "low-outlet-enclosed").empty());
  job.design.sumps[0].discharge->height_m = 1.2;
  EXPECT_FALSE(spansOf(siteWithRun(job), "low-outlet-enclosed").empty());
}

/// Between walls nothing may end below the eaves, and where nobody knows them nowhere.
TEST(RefusedZone, AYardIsClosedUpToTheEaves) {
  plan::Job job = PlanBuilder::courtyard().job();
  job.design.outlet = plan::OutletMode::riser;
  job.house.eaves_m = 4.0;
  rules::Site site = siteOf(job);
  const auto heights = heightsObjected(site, {1, 2.0}, Weight::binding);
  ASSERT_EQ(heights.size(), 1U);
  EXPECT_NEAR(heights[0].to, 4.0, kExact_m);
  const auto outlines =
      zoneOutlines(site, site.perimeter.edges(1)[0], Weight::binding, -1.0, 6.0, 0.001);
  const auto yard = std::find_if(outlines.begin(), outlines.end(), [](const ZoneOutline& one) {
    return one.rule == "low-outlet-enclosed";
  });
  ASSERT_NE(yard, outlines.end());
  for (const geometry::Point p : yard->outline) EXPECT_LE(p.y, 4.0);
  EXPECT_GT(proposedDischarge(site, {1, 2.0}, 0.02).height_m, 4.0);
  job.house.eaves_m.reset();
  const auto all = heightsObjected(siteOf(job), {1, 2.0}, Weight::binding);
  ASSERT_EQ(all.size(), 1U);
  EXPECT_FALSE(std::isfinite(all[0].to));
}

/// Of a wall with two hollows in the ground, each has its own least height.
TEST(OutletLevels, LeastIsOfTheSpanAndNotOfTheWall) {
  plan::Job job = PlanBuilder::rectangle().job();
  job.plan.rings[0].walls[0].ground_points = {
      {0.0, 0.9}, {2.0, -0.15}, {6.0, -0.15}, {8.0, 0.3}, {10.0, -0.15}};
  job.design.outlet = plan::OutletMode::riser;
  plan::Sump sump;
  sump.id = "s";
  sump.chainage_m = 4.0;
  sump.discharge = plan::Discharge{0, 4.0, 0.5};
  job.design.sumps.push_back(sump);
  const rules::Site site = siteWithRun(job);
  std::vector<double> least;
  for (const LevelSpan& one : levelSpans(*site.sheet.find("outlet-above-ground"), site)) {
    if (one.where.from_m < 10.0 && one.where.ring == 0) least.push_back(*one.distance_m);
  }
  ASSERT_EQ(least.size(), 2U);
  EXPECT_NEAR(least[0], 0.5 - 0.9, kExact_m);
  EXPECT_NEAR(least[1], 0.5 - 0.3, kExact_m);
}

TEST(RefusedZone, HeightsAtAChainage) {
  const rules::Site site = siteWithRun(
      placed(PlanBuilder::rectangle().opening(at("w", 0, 4.0, 1.2, 0.9, 2.1)), 8.0, 8.0, 3.0));
  // 0.955 beside the jamb: 0.9 from the edge of the pipe, so 1.2 above the head.
  const auto heights = heightsObjected(site, {0, 5.2 + 0.955}, Weight::binding);
  ASSERT_EQ(heights.size(), 1U);  // with the ground below and the eaves above
  EXPECT_NEAR(heights[0].to, 2.1 + 1.2, kExact_m);
  const auto aside = heightsObjected(site, {0, 8.5}, Weight::binding);
  ASSERT_EQ(aside.size(), 2U);
  EXPECT_NEAR(aside[0].to, -0.15 + 0.3, kExact_m);
  EXPECT_NEAR(aside[1].from, 1.6, kExact_m);
  EXPECT_NEAR(aside[1].to, 2.6, kExact_m);
}

TEST(RefusedZone, ChainagesAtAHeightMeetTheHeightsAtTheirEnds) {
  const rules::Site site = siteWithRun(
      placed(PlanBuilder::rectangle().opening(at("w", 0, 4.0, 1.2, 0.9, 2.1)), 8.0, 8.0, 3.0));
  const auto spans = chainagesObjected(site, 3.0, Weight::binding);
  ASSERT_EQ(spans.size(), 1U);
  EXPECT_NEAR(spans[0].from_m, 4.0 - 1.255, kExact_m);
  const auto heights = heightsObjected(site, {0, spans[0].from_m}, Weight::binding);
  EXPECT_NEAR(heights.back().to, 3.0, 1e-9);
}

// Over the middle of the window an outlet at 3 m is refused: it steps to the nearer side.
TEST(RefusedZone, LeastStepAside) {
  const rules::Site site = siteWithRun(
      placed(PlanBuilder::rectangle().opening(at("w", 0, 4.0, 1.2, 0.9, 2.1)), 8.0, 8.0, 3.0));
  EXPECT_NEAR(*leastStepAside(site, {0, 5.0}, 3.0, 3.0, 0.0), 5.2 + 1.255 - 5.0, kExact_m);
  EXPECT_NEAR(*leastStepAside(site, {0, 4.2}, 3.0, 3.0, 0.02), 4.0 - 1.275 - 4.2, kExact_m);
  EXPECT_EQ(*leastStepAside(site, {0, 8.0}, 3.0, 3.0, 0.0), 0.0);
  EXPECT_FALSE(leastStepAside(site, {0, 4.6}, 3.0, 1.0, 0.0).has_value());
  rules::PlacedRun run = *site.run;
  const auto bends = [&](double s, double shift_m) {
    run.shift_m = shift_m;
    return bendsOutside(site, run, {0, s});
  };
  EXPECT_EQ(bends(5.0, 0.0), 1);
  EXPECT_EQ(bends(5.0, 1.5), 3);
  EXPECT_EQ(bends(9.0, 1.5), 4);  // round corner B
}

// The run goes up at 1.0, aside to 8.0 at 4.4 m (0.6 under its outlet) past an upper window at 4 to
// 5.2, and up: neither upright stands before the window, the pipe between them does.
TEST(Discharge, WhatGoesAsideIsJudgedAsFarAsItGoes) {
  plan::Job job =
      placed(PlanBuilder::rectangle().opening(at("up", 0, 4.0, 1.2, 3.6, 4.9, 1)), 1.0, 8.0, 5.0);
  job.house.eaves_m = 5.2;
  const rules::Site site = siteWithRun(job);
  const auto spans = spansOf(site, "riser-before-opening");
  ASSERT_EQ(spans.size(), 2U);  // over chainage 0
  EXPECT_EQ(spans[0].finding.thing, "up");
  // Holes from which seven metres aside pass within 0.05 m of it.
  const double off = kHalf_m + 0.05;
  const auto held = [&](double s) {
    return std::any_of(spans.begin(), spans.end(),
                       [&](const FindingSpan& span) { return s > span.from_m && s < span.to_m; });
  };
  EXPECT_TRUE(held(1.0));
  EXPECT_TRUE(held(5.2 + off - 1e-6));
  EXPECT_FALSE(held(5.2 + off + 1e-6));
  EXPECT_TRUE(held(36.0 + 4.0 - off - 7.0 + 1e-6));
  EXPECT_FALSE(held(36.0 + 4.0 - off - 7.0 - 1e-6));
  const rules::Finding there =
      runFindingAt(*site.sheet.find("riser-before-opening"), site, spans[0].finding, {0, 1.0});
  EXPECT_LT(*there.distance_m, 0.0);
  // Lower than the sill it passes under.
  job.design.sumps[0].discharge->height_m = 4.0;
  for (const FindingSpan& span : spansOf(siteWithRun(job), "riser-before-opening")) {
    EXPECT_FALSE(span.from_m <= 1.0 && 1.0 <= span.to_m);
  }
}

TEST(Discharge, TheFootOfARiserStandsOnTheLowestGround) {
  plan::Job job =
      placed(PlanBuilder::rectangle().opening(at("low", 0, 4.0, 1.2, -1.4, -0.7)), 4.5, 4.5, 5.0);
  EXPECT_TRUE(spansOf(siteWithRun(job), "riser-before-opening").empty());
  job.house.ground_level_m = -1.6;
  for (plan::Wall& wall : job.plan.rings[0].walls) wall.ground_level_m.reset();
  EXPECT_EQ(spansOf(siteWithRun(job), "riser-before-opening").size(), 1U);
}

TEST(Run, PipeIsCountedAsItIsDrawn) {
  plan::Job job = placed(PlanBuilder::rectangle(), 5.0, 6.5, 5.0);
  plan::Sump& sump = job.design.sumps.front();
  sump.entry_m = -0.45;
  sump.fall_deg = 2.0;
  sump.fan_place = plan::FanPlace::outside_low;
  sump.fan_height_m = 1.2;
  const auto count = [&] {
    const rules::Site site = siteWithRun(job);
    return *countedPipe(site, job.design.sumps.front(), {0, 5.0});
  };
  const rules::Site site = siteWithRun(job);
  const double wall = site.perimeter.edgeAt({0, 5.0}).thickness_m;
  const double through = (wall + 0.10) / std::cos(2.0 * std::numbers::pi / 180.0);
  const double ground = groundAt(site, {0, 5.0});
  // Low: up to the fan; from there up and aside, two bends more.
  CountedPipe low = count();
  EXPECT_NEAR(low.before_m, through + 1.65, 1e-9);
  EXPECT_NEAR(low.after_m, 3.8 + 1.5, 1e-9);
  EXPECT_EQ(low.bends_before, 1);
  EXPECT_EQ(low.bends_after, 2);
  EXPECT_NEAR(low.exposed_m, 5.0 - ground + 1.5, 1e-9);
  // High: aside before the fan. The sum stays.
  sump.fan_place = plan::FanPlace::outside_high;
  sump.fan_height_m = 4.4;
  const CountedPipe high = count();
  EXPECT_NEAR(high.after_m, 0.6, 1e-9);
  EXPECT_NEAR(high.before_m + high.after_m, low.before_m + low.after_m, 1e-9);
  EXPECT_EQ(high.bends_before, 3);
  EXPECT_EQ(high.bends_after, 0);
  sump.discharge.reset();
  EXPECT_FALSE(countedPipe(siteWithRun(job), sump, {0, 5.0}));
}

TEST(Run, GoesRoundEavesThatStandOut) {
  plan::Job job = placed(PlanBuilder::rectangle(), 5.0, 5.0, 5.0);
  job.design.sumps.front().fan_place = plan::FanPlace::outside_low;
  const auto count = [&] {
    return *countedPipe(siteWithRun(job), job.design.sumps.front(), {0, 5.0});
  };
  const auto passed = [&] {
    const rules::Site site = siteWithRun(job);
    return eavesPassed(site, *site.run, {0, 5.0});
  };
  job.house.eaves_m.reset();
  for (plan::Wall& wall : job.plan.rings[0].walls) wall.eaves_m.reset();
  EXPECT_FALSE(passed().passed);
  const CountedPipe straight = count();
  EXPECT_EQ(straight.bends_after, 0);
  job.house.eaves_m = 4.8;
  EXPECT_TRUE(passed().passed);
  EXPECT_FALSE(passed().out_m);
  EXPECT_EQ(count().bends_after, 0);  // nobody knows: nothing is counted
  job.house.eaves_overhang_m = 0.0;
  EXPECT_EQ(count().bends_after, 0);
  EXPECT_NEAR(count().after_m, straight.after_m, 1e-12);
  job.house.eaves_overhang_m = 0.4;
  const double out = 0.4 + siteWithRun(job).pipe_od_m;
  EXPECT_EQ(count().bends_after, 2);
  EXPECT_EQ(count().bends_before, 1);
  EXPECT_NEAR(count().after_m, straight.after_m + out, 1e-12);
  EXPECT_NEAR(count().exposed_m, straight.exposed_m + out, 1e-12);
  job.house.eaves_m = 5.1;  // the outlet stays under them
  EXPECT_FALSE(passed().passed);
  EXPECT_EQ(count().bends_after, 0);
}

TEST(Run, IntoTheRoofSpaceItIsInTheOpenUpToTheEaves) {
  plan::Job job = placed(PlanBuilder::rectangle(), 5.0, 5.0, 5.0);
  plan::Sump& sump = job.design.sumps.front();
  sump.fan_place = plan::FanPlace::roof_space;
  job.house.eaves_m = 4.0;
  job.house.eaves_overhang_m = 0.4;  // goes in under them: nothing to go round
  const auto count = [&] { return *countedPipe(siteWithRun(job), sump, {0, 5.0}); };
  const CountedPipe in = count();
  const double ground = groundAt(siteWithRun(job), {0, 5.0});
  EXPECT_NEAR(in.exposed_m, 4.0 - ground, 1e-12);
  EXPECT_NEAR(in.in_roof_m, kIntoRoof_m + 1.0, 1e-12);
  EXPECT_EQ(in.bends_before + in.bends_after, 1 + kRoofBends);
  sump.fan_place = plan::FanPlace::outside_high;
  job.house.eaves_overhang_m = 0.0;
  const CountedPipe out = count();
  EXPECT_NEAR(out.exposed_m, 5.0 - ground, 1e-12);
  EXPECT_EQ(out.in_roof_m, 0.0);
  EXPECT_NEAR(in.before_m + in.after_m, out.before_m + out.after_m + kIntoRoof_m, 1e-12);
}

TEST(RefusedZone, ProposedDischarge) {
  const auto proposed = [](double s, double sill, double head) {
    return proposedDischarge(
        siteWithRun(placed(PlanBuilder::rectangle().opening(at("w", 0, 4.0, 1.2, sill, head)), 8.0,
                           8.0, 3.0)),
        {0, s}, 0.02);
  };
  // Away from the window: 0.40 m over the eaves of 2.60 m.
  EXPECT_NEAR(proposed(8.0, 0.9, 2.1).height_m, 3.0, kExact_m);
  // Over it: as low as nothing refuses, 1.50 m over the head.
  EXPECT_NEAR(proposed(4.5, 0.9, 2.1).height_m, 3.62, 1e-6);
  EXPECT_NEAR(proposed(4.5, 0.9, 2.1).chainage_m, 4.5, kExact_m);
  // Beside a window that goes up to 4.2 m: aside at 3.0 m.
  const plan::Discharge aside = proposed(3.7, 0.9, 4.2);
  EXPECT_NEAR(aside.height_m, 3.0, kExact_m);
  EXPECT_NEAR(aside.chainage_m, 4.0 - 1.555 - 0.02, 1e-6);
  // Under it no way leads aside: nothing better than straight above.
  EXPECT_NEAR(proposed(4.5, 0.9, 4.2).chainage_m, 4.5, kExact_m);
}

TEST(RefusedZone, PartyWallIsRefusedAtEveryHeight) {
  const rules::Site site = siteWithRun(placed(withPartyWall(), 24.0, 24.0, 3.0));
  for (const double s : {9.95, 10.0, 14.0, 17.99, 18.05}) {
    const auto heights = heightsObjected(site, {0, s}, Weight::binding);
    ASSERT_EQ(heights.size(), 1U) << s;
    EXPECT_FALSE(std::isfinite(heights[0].from) || std::isfinite(heights[0].to)) << s;
  }
  EXPECT_EQ(heightsObjected(site, {0, 9.94}, Weight::binding).size(), 2U);
  const auto spans = chainagesObjected(site, 3.0, Weight::binding);
  ASSERT_EQ(spans.size(), 1U);
  EXPECT_NEAR(spans[0].from_m, 10.0 - kHalf_m, 1e-8);
  const auto outlines =
      zoneOutlines(site, site.perimeter.edges(0)[1], Weight::binding, -1.0, 6.0, 0.001);
  EXPECT_TRUE(std::any_of(outlines.begin(), outlines.end(),
                          [](const ZoneOutline& z) { return z.rule == "party-wall"; }));
}

// Beside a window 0.6 m round the corner from a party wall the nearer side is next door's.
TEST(RefusedZone, NothingIsProposedOnAPartyWall) {
  const rules::Site site =
      siteWithRun(placed(withPartyWall().opening(at("w", 2, 0.6, 1.2, 0.9, 2.1)), 24.0, 24.0, 3.0));
  EXPECT_NEAR(*leastStepAside(site, {0, 18.2}, 3.0, 3.0, 0.02), 19.8 + 1.275 - 18.2, 1e-6);
  EXPECT_FALSE(leastStepAside(site, {0, 14.0}, 3.0, 3.0, 0.02).has_value());
}

TEST(RefusedZone, OutlineStaysWithinItsTolerance) {
  const rules::Site site = siteWithRun(
      placed(PlanBuilder::rectangle().opening(at("w", 0, 4.0, 1.2, 0.9, 2.1)), 8.0, 8.0, 3.0));
  const auto& edge = site.perimeter.edges(0)[0];
  const auto outlines = zoneOutlines(site, edge, Weight::binding, -1.0, 6.0, 0.001);
  const auto window = std::find_if(outlines.begin(), outlines.end(),
                                   [](const ZoneOutline& z) { return z.thing == "w"; });
  ASSERT_NE(window, outlines.end());
  for (std::size_t i = 0; i < window->outline.size(); ++i) {
    const auto a = window->outline[i];
    const auto b = window->outline[(i + 1) % window->outline.size()];
    const geometry::Point p = geometry::lerp(a, b, 0.5);
    const double up = std::max({0.0, 0.9 - p.y, p.y - 2.1});
    const double aside = std::max({0.0, 4.0 - p.x - kHalf_m, p.x - 5.2 - kHalf_m});
    if (p.y < -0.99) continue;  // cut by the window
    EXPECT_NEAR(std::hypot(up, aside), 1.5, 0.0011) << p.x << " " << p.y;
  }
  EXPECT_FALSE(zoneEdge(site, edge, Weight::binding, -1.0, 6.0, outlines).empty());
}

}  // namespace

}  // namespace sumpwright::build
