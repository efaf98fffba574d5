// Rectangle 10 x 8: front y = 0 is chainage 0..10, east x = 10 is 10..18, rear 18..28, west 28..36.
#include <gtest/gtest.h>

#include <cmath>

#include "core/rules/Judged.h"

namespace sumpwright::rules {

namespace {

using plan::OpeningKind;
using plan::Opens;
using plan::OutsideKind;
using plan::ServiceKind;
using support::PlanBuilder;

plan::Opening openingAt(double offset, double width, OpeningKind kind, Opens opens) {
  plan::Opening o;
  o.id = "o";
  o.kind = kind;
  o.opens = opens;
  o.at = {0, 0, offset};
  o.width_m = width;
  return o;
}

// 1.50 + 0.055 = 1.555 either side of the window from 2.0 to 3.2.
TEST(Clearance, WindowIsItsSegmentGrown) {
  const Judged j(PlanBuilder::rectangle().window("w", 0, 2.0, 1.2), "openings");
  ASSERT_EQ(j.spans.size(), 1U);
  expectSpan(j.spans[0], 0.445, 4.755);
  EXPECT_EQ(j.spans[0].finding.thing, "w");
  EXPECT_EQ(j.spans[0].finding.weight, Weight::binding);
  EXPECT_EQ(j.spans[0].finding.needed_m, 1.5);
  EXPECT_NEAR(*j.least(j.spans[0]), -kHalfPipe_m, kMicrometre);  // the outlet overlaps the window
}

/// The east wall is shared: 1.0 + 0.0635 along the front and the rear, unless its fill ends there.
TEST(Clearance, HoldsOffThePartyLineWhereTheFillMayGoOnNextDoor) {
  const auto shared = [](plan::PartyBelow below) {
    return PlanBuilder::rectangle().with([below](plan::Job& job) {
      job.plan.rings[0].walls[1].kind = plan::WallKind::party;
      job.plan.rings[0].walls[1].party_below = below;
    });
  };
  for (const auto below : {plan::PartyBelow::unknown, plan::PartyBelow::continuous}) {
    const Judged j(shared(below), "party-line");
    ASSERT_EQ(j.spans.size(), 1U);
    expectSpan(j.spans[0], 10.0 - 1.0635, 18.0 + 1.0635);
    EXPECT_EQ(j.spans[0].finding.weight, Weight::advisory);
  }
  EXPECT_TRUE(Judged(shared(plan::PartyBelow::cut), "party-line").spans.empty());
}

// The near jamb is 0.5 from corner A; up the west wall sqrt(1.555^2 - 0.5^2). Cut at chainage 0.
TEST(Clearance, RoundTheCornerAndOverTheStart) {
  const Judged j(PlanBuilder::rectangle().window("w", 0, 0.5, 1.2), "openings");
  ASSERT_EQ(j.spans.size(), 2U);
  expectSpan(j.spans[0], 0.0, 1.7 + 1.555, true);
  expectSpan(j.spans[1], 36.0 - std::sqrt(1.555 * 1.555 - 0.25), 36.0);
  EXPECT_NEAR(*j.least(j.spans[1]), 0.5 - kHalfPipe_m, kMicrometre);
}

// A window that ends in corner B: one span goes on round the corner.
TEST(Clearance, RoundACornerIsOneSpan) {
  const Judged j(PlanBuilder::rectangle().window("w", 0, 9.0, 1.0), "openings");
  ASSERT_EQ(j.spans.size(), 1U);
  expectSpan(j.spans[0], 9.0 - 1.555, 10.0 + 1.555);
}

// A house 1.5 m deep: a front window refuses the rear wall through the house, over its width and
// sqrt(1.555^2 - 1.5^2) more. Rear: chainage 11.5 + (10 - x).
TEST(Clearance, StraightThroughTheHouse) {
  const Judged j(PlanBuilder::rectangle(10, 1.5).window("w", 0, 4.0, 1.2), "openings");
  ASSERT_EQ(j.spans.size(), 2U);
  const double more = std::sqrt(1.555 * 1.555 - 1.5 * 1.5);
  expectSpan(j.spans[1], 11.5 + 10 - 5.2 - more, 11.5 + 10 - 4.0 + more);
  EXPECT_NEAR(*j.least(j.spans[1]), 1.5 - kHalfPipe_m, kMicrometre);
}

TEST(Clearance, KindsOfOpening) {
  const auto refused = [](OpeningKind kind, Opens opens, const char* rule) {
    const Judged j(PlanBuilder::rectangle().opening(openingAt(4.0, 1.0, kind, opens)), rule);
    return !j.spans.empty();
  };
  for (const auto kind : {OpeningKind::window, OpeningKind::door, OpeningKind::glazed_door,
                          OpeningKind::garage_door, OpeningKind::air_vent}) {
    EXPECT_TRUE(refused(kind, Opens::yes, "openings"));
    EXPECT_TRUE(refused(kind, Opens::vent, "openings"));
    EXPECT_FALSE(refused(kind, Opens::yes, "fixed-panes"));
    EXPECT_TRUE(refused(kind, Opens::intake, "intake"));
    EXPECT_FALSE(refused(kind, Opens::intake, "openings"));
  }
  EXPECT_TRUE(refused(OpeningKind::window, Opens::fixed, "fixed-panes"));
  EXPECT_FALSE(refused(OpeningKind::window, Opens::fixed, "openings"));
  EXPECT_TRUE(refused(OpeningKind::flue_terminal, Opens::yes, "flue"));
  EXPECT_FALSE(refused(OpeningKind::flue_terminal, Opens::yes, "openings"));
}

TEST(Clearance, FixedPaneIsAdvisoryAndIntakeNeedsThreeMetres) {
  const Judged pane(
      PlanBuilder::rectangle().opening(openingAt(4.0, 1.0, OpeningKind::window, Opens::fixed)),
      "fixed-panes");
  ASSERT_EQ(pane.spans.size(), 1U);
  expectSpan(pane.spans[0], 4.0 - 1.555, 5.0 + 1.555);
  EXPECT_EQ(pane.spans[0].finding.weight, Weight::advisory);
  const Judged intake(
      PlanBuilder::rectangle().opening(openingAt(4.0, 1.0, OpeningKind::window, Opens::intake)),
      "intake");
  ASSERT_EQ(intake.spans.size(), 1U);
  expectSpan(intake.spans[0], 4.0 - 3.055, 5.0 + 3.055);
  EXPECT_FALSE(intake.spans[0].finding.waivable.allowed);
}

TEST(Clearance, OtherStoreysAreLeftForLater) {
  plan::Opening o = openingAt(4.0, 1.0, OpeningKind::window, Opens::yes);
  o.storey = 1;
  const Judged j(PlanBuilder::rectangle().opening(o), "openings");
  EXPECT_TRUE(j.spans.empty());
  ASSERT_EQ(j.site().later.size(), 2U);  // as a window, and as one that may be a bedroom's
  EXPECT_EQ(j.site().later[0].id, "o");
  EXPECT_EQ(j.site().later[1].kind, ThingKind::bedroom_window);
}

// Gas: 1.00 + 0.0635 either side of the entry at chainage 12.
TEST(Clearance, EntryIsAPoint) {
  const Judged j(PlanBuilder::rectangle().service("g", ServiceKind::gas, 1, 2.0), "services");
  ASSERT_EQ(j.spans.size(), 1U);
  expectSpan(j.spans[0], 12 - 1.0635, 12 + 1.0635);
  EXPECT_EQ(j.spans[0].finding.waivable.not_within_m, 0.5);
}

TEST(Clearance, OnlyALocatedServiceMayBeWaived) {
  for (const bool located : {false, true}) {
    const Judged j(
        PlanBuilder::rectangle().service("g", ServiceKind::gas, 1, 2.0).with([&](plan::Job& job) {
          job.plan.services[0].located = located;
          job.plan.services[0].locating_record = "scan of 2 March (invented)";
        }),
        "services");
    EXPECT_EQ(j.spans[0].finding.waivable.allowed, located);
    EXPECT_EQ(j.spans[0].finding.waivable.evidence, plan::Evidence::locating_record);
  }
}

TEST(Clearance, LocatedWithoutARecordIsNotLocated) {
  for (const char* record : {"", " \t"}) {
    const Judged j(
        PlanBuilder::rectangle().service("g", ServiceKind::gas, 1, 2.0).with([&](plan::Job& job) {
          job.plan.services[0].located = true;
          job.plan.services[0].locating_record = record;
        }),
        "services");
    EXPECT_FALSE(j.spans[0].finding.waivable.allowed);
  }
}

// A run from 0.5 m off the rear wall at x = 3 straight out: 0.5635 reaches sqrt(0.5635^2 - 0.5^2).
TEST(Clearance, DrawnRunIsItsLine) {
  const Judged j(PlanBuilder::rectangle()
                     .service("d", ServiceKind::drain, 0, 5.0)
                     .run("d", {{3, 8.5}, {3, 20}})
                     .with([](plan::Job& job) { job.plan.services[0].entry.reset(); }),
                 "drains");
  ASSERT_EQ(j.spans.size(), 1U);
  const double reach = std::sqrt(0.5635 * 0.5635 - 0.25);
  expectSpan(j.spans[0], 18 + 7 - reach, 18 + 7 + reach);
  EXPECT_NEAR(*j.least(j.spans[0]), 0.5 - kHalfCore_m, kMicrometre);
}

TEST(Clearance, EntryAndRunAreOneThing) {
  const Judged j(
      PlanBuilder::rectangle().service("w", ServiceKind::water, 0, 5.0).run("w", {{5, 0}, {5, -3}}),
      "drains");
  ASSERT_EQ(j.spans.size(), 1U);
  expectSpan(j.spans[0], 5 - 0.5635, 5 + 0.5635);
}

// A chamber from 0.2 m outside to 0.2 m inside the east wall: no distance within its width.
TEST(Clearance, ChamberIsAnArea) {
  const Judged j(PlanBuilder::rectangle().outside("c", OutsideKind::inspection_chamber,
                                                  {{9.8, 3}, {10.2, 3}, {10.2, 3.6}, {9.8, 3.6}}),
                 "drains");
  ASSERT_EQ(j.spans.size(), 1U);
  expectSpan(j.spans[0], 13 - 0.5635, 13.6 + 0.5635);
  EXPECT_NEAR(*j.least(j.spans[0]), -kHalfCore_m, kMicrometre);
  EXPECT_NEAR(j.nearest(0, 13.3)->distance_m, -kHalfCore_m, kMicrometre);
}

TEST(Clearance, GullyIsAPointAndDeckIsNothing) {
  EXPECT_EQ(Judged(PlanBuilder::rectangle().outside("g", OutsideKind::gully, {{5, -0.1}}), "drains")
                .spans.size(),
            1U);
  for (const OutsideKind kind : {OutsideKind::soakaway, OutsideKind::septic_tank}) {
    const Judged area(
        PlanBuilder::rectangle().outside("s", kind, {{4, -2}, {6, -2}, {6, 0}, {4, 0}}), "drains");
    ASSERT_EQ(area.spans.size(), 1U);
    expectSpan(area.spans[0], 4 - 0.5635, 6 + 0.5635);
  }
  const Judged wires(
      PlanBuilder::rectangle().outside("o", OutsideKind::overhead_line, {{0, -0.2}, {9, -0.2}}),
      "drains");
  EXPECT_TRUE(wires.spans.empty());
  const Judged deck(
      PlanBuilder::rectangle().outside("d", OutsideKind::deck, {{4, -2}, {6, -2}, {6, 0}, {4, 0}}),
      "drains");
  EXPECT_TRUE(deck.spans.empty());
  EXPECT_FALSE(deck.nearest(0, 5.0));
}

// A neighbour's window 1 m off the rear wall, 1 m wide, parallel to it: sqrt(1.555^2 - 1) beyond.
TEST(Clearance, NeighboursOpeningIsALine) {
  const Judged j(
      PlanBuilder::rectangle().outside("n", OutsideKind::neighbour_opening, {{4, 9}, {5, 9}}),
      "openings");
  ASSERT_EQ(j.spans.size(), 1U);
  const double more = std::sqrt(1.555 * 1.555 - 1.0);
  expectSpan(j.spans[0], 18 + 5 - more, 18 + 6 + more);
}

// A neighbour's window that runs along the rear wall just 1.555 m off, wherever the house stands:
// the sum of the wall's place and the distance is not exact, the verdict is.
TEST(Clearance, WallExactlyAsFarAsNeededIsClear) {
  for (int i = 0; i < 200; ++i) {
    const double depth = 5.0 + 0.017 * i;
    const auto spans = [&](double off) {
      return Judged(PlanBuilder::rectangle(10, depth).outside("n", OutsideKind::neighbour_opening,
                                                              {{4, depth + off}, {5, depth + off}}),
                    "openings")
          .spans.size();
    };
    EXPECT_EQ(spans(1.555), 0U) << depth;
    EXPECT_EQ(spans(1.555 - 1e-9), 1U) << depth;
  }
}

// Parts: outlet and fan take the pipe's half, hole and dig the core's, both the larger of them.
TEST(Clearance, MeasuredFromTheEdgeOfWhatTheRuleIsAbout) {
  const auto reach = [](const std::function<void(Rule&)>& change) {
    const Judged j(PlanBuilder::rectangle().flue("f", 0, 5.0, 0.1), "flue", change);
    return 5.0 - j.spans.at(0).from_m;
  };
  EXPECT_NEAR(reach({}), 1.0635, kMicrometre);  // fan, outlet, riser and dig: the core is wider
  EXPECT_NEAR(reach([](Rule& r) { r.applies_to = {Part::fan}; }), 1.055, kMicrometre);
  EXPECT_NEAR(reach([](Rule& r) { r.from = MeasuredFrom::centre; }), 1.0, kMicrometre);
}

TEST(Clearance, SmallerCoreNeedsLess) {
  const Judged j(
      PlanBuilder::rectangle().service("g", ServiceKind::gas, 1, 2.0).with([](plan::Job& job) {
        job.design.core_mm = 112;
      }),
      "services");
  expectSpan(j.spans.at(0), 12 - 1.056, 12 + 1.056);
}

TEST(Clearance, NearestIsTheLeastOfAllThings) {
  const Judged j(PlanBuilder::rectangle().window("a", 0, 1.0, 1.0).window("b", 0, 7.0, 1.0),
                 "openings");
  const auto nearest = j.nearest(0, 4.0);  // 2 m from a, 3 m from b
  ASSERT_TRUE(nearest);
  EXPECT_NEAR(nearest->distance_m, 2.0 - kHalfPipe_m, kMicrometre);
  EXPECT_EQ(j.site().things[static_cast<std::size_t>(nearest->thing_index)].id, "a");
  EXPECT_FALSE(Judged(PlanBuilder::rectangle(), "openings").nearest(0, 4.0));
}

// ---- runs nobody drew ----

plan::Job gasRunUnknown(int edge, double offset) {
  return PlanBuilder::rectangle().service("g", ServiceKind::gas, edge, offset).runUnknown("g");
}

std::vector<FindingSpan> unknowns(const Judged& j) {
  std::vector<FindingSpan> found;
  for (const FindingSpan& s : j.spans) {
    if (s.finding.reason.id == "rule.run-unknown") found.push_back(s);
  }
  return found;
}

// Entry at chainage 20 on the rear wall: back to the front wall's end at 10 is 10, on to its start
// at 36 is 16. So 10..20 and the front, 0..10.
TEST(Clearance, UnknownRunTakesTheShorterWayToTheFront) {
  const auto found = unknowns(Judged(gasRunUnknown(2, 2.0), "services"));
  ASSERT_EQ(found.size(), 1U);
  expectSpan(found[0], 0.0, 20.0, true);
  EXPECT_EQ(found[0].finding.weight, Weight::unknown);
  EXPECT_EQ(found[0].finding.thing, "g");
  EXPECT_FALSE(found[0].finding.least_bad);
  EXPECT_FALSE(found[0].finding.needed_m);
}

// At chainage 27: on to 36 is 9, back to 10 is 17.
TEST(Clearance, UnknownRunTheOtherWay) {
  const auto found = unknowns(Judged(gasRunUnknown(2, 9.0), "services"));
  ASSERT_EQ(found.size(), 2U);
  expectSpan(found[0], 0.0, 10.0, true);
  expectSpan(found[1], 27.0, 36.0, true);
}

// At chainage 23 both ways are 13: neither is left out.
TEST(Clearance, UnknownRunBothWaysWhenTheyAreEqual) {
  const auto found = unknowns(Judged(gasRunUnknown(2, 5.0), "services"));
  double covered = 0.0;
  for (const FindingSpan& s : found) covered += s.to_m - s.from_m;
  EXPECT_NEAR(covered, 36.0, kMicrometre);
}

TEST(Clearance, UnknownRunFromAFrontWallIsTheFrontOnly) {
  const auto found = unknowns(Judged(gasRunUnknown(0, 4.0), "services"));
  ASSERT_EQ(found.size(), 1U);
  expectSpan(found[0], 0.0, 10.0, true);
}

TEST(Clearance, UnknownRunWithNoFrontIsTheWholeRing) {
  const auto found = unknowns(
      Judged(PlanBuilder::rectangle()
                 .service("g", ServiceKind::gas, 2, 2.0)
                 .runUnknown("g")
                 .wall(0, [](plan::Wall& wall) { wall.elevation = plan::Elevation::unmarked; }),
             "services"));
  ASSERT_EQ(found.size(), 1U);
  expectSpan(found[0], 0.0, 36.0, true);
}

// An entry in the courtyard, whose ring has no front: that ring, and the front of the outer one.
TEST(Clearance, UnknownRunFromACourtyard) {
  const auto found = unknowns(
      Judged(PlanBuilder::courtyard().service("g", ServiceKind::gas, 0, 1.0, 1).runUnknown("g"),
             "services"));
  ASSERT_EQ(found.size(), 2U);
  EXPECT_EQ(found[0].ring, 0);
  expectSpan(found[0], 0.0, 14.0, true);
  EXPECT_EQ(found[1].ring, 1);
  expectSpan(found[1], 0.0, 14.0, true);
}

TEST(Clearance, OverheadAndDrawnRunsAreKnown) {
  EXPECT_TRUE(
      unknowns(Judged(PlanBuilder::rectangle().service("g", ServiceKind::gas, 2, 2.0), "services"))
          .empty());
  EXPECT_TRUE(unknowns(Judged(PlanBuilder::rectangle()
                                  .service("g", ServiceKind::gas, 2, 2.0)
                                  .run("g", {{8, 8}, {8, 12}}),
                              "services"))
                  .empty());
}

TEST(Clearance, ServiceThatIsNowhereIsUnknownAllRound) {
  const Judged j(PlanBuilder::courtyard()
                     .service("g", ServiceKind::gas, 0, 1.0)
                     .service("h", ServiceKind::gas, 0, 2.0)
                     .with([](plan::Job& job) { job.plan.services[1].entry.reset(); }),
                 "services");
  const auto found = unknowns(j);
  ASSERT_EQ(found.size(), 2U);
  expectUnknownAllRound(found[0], 52.0, "rule.run-unknown");
  expectUnknownAllRound(found[1], 14.0, "rule.run-unknown");
  EXPECT_EQ(found[0].finding.thing, "h");
  EXPECT_TRUE(std::isfinite(j.nearest(0, 30.0)->distance_m));  // of the one that has a place
}

// ---- what cannot be judged yet ----

/// 10 by 8, a window from 9 to 9.6 on the front; 1.5 m and half a pipe of 110 mm. Round the corner
/// at 10 the string has 0.4 m to go first; straight it would be sqrt(1.555^2 - 0.4^2) beyond.
TEST(Clearance, AStringGoesRoundTheCorner) {
  const auto job = PlanBuilder::rectangle().window("w", 0, 9.0, 0.6);
  const Judged j(job, "openings", [](Rule& rule) { rule.path = PathKind::string; });
  ASSERT_EQ(j.spans.size(), 1U);
  EXPECT_NEAR(j.spans[0].from_m, 9.0 - 1.555, 1e-6);
  EXPECT_NEAR(j.spans[0].to_m, 10.0 + 1.155, 1e-6);
  EXPECT_NEAR(j.nearest(0, 12.0)->distance_m, 0.4 + 2.0 - 0.055, 1e-9);
  const Judged straight(job, "openings");
  EXPECT_NEAR(straight.spans[0].to_m, 10.0 + std::sqrt(1.555 * 1.555 - 0.16), 1e-6);
}

/// Nothing is measured through the house: a gable window refuses no place of the rear wall.
TEST(Clearance, AStringDoesNotGoThroughTheHouse) {
  const auto job = PlanBuilder::rectangle(10.0, 1.2).window("w", 0, 4.0, 1.0);
  const auto on_string = [](Rule& rule) { rule.path = PathKind::string; };
  const Judged j(job, "openings", on_string);
  const Judged straight(job, "openings");
  EXPECT_EQ(j.spans.size(), 1U);
  EXPECT_EQ(straight.spans.size(), 2U);
  // From a courtyard nothing outside is reached.
  const Judged court(PlanBuilder::courtyard().window("w", 0, 4.0, 1.0), "openings", on_string);
  EXPECT_FALSE(court.nearest(1, 2.0));
}

TEST(Clearance, RiserTakesTheOutletAwayFromTheWall) {
  const Judged openings(
      PlanBuilder::rectangle().window("w", 0, 2.0, 1.2).outlet(plan::OutletMode::riser),
      "openings");
  ASSERT_EQ(openings.spans.size(), 1U);
  expectUnknownAllRound(openings.spans[0], 36.0, "rule.unjudged.riser");
  EXPECT_FALSE(openings.nearest(0, 2.0));
  // The dig stays beside the flue whatever the outlet does.
  const Judged flue(PlanBuilder::rectangle().flue("f", 0, 5.0).outlet(plan::OutletMode::riser),
                    "flue");
  ASSERT_EQ(flue.spans.size(), 2U);
  expectUnknownAllRound(flue.spans[0], 36.0, "rule.unjudged.riser");
  expectSpan(flue.spans[1], 5 - 1.0635, 5.1 + 1.0635);
  // Services are about the ground only.
  const Judged gas(PlanBuilder::rectangle()
                       .service("g", ServiceKind::gas, 1, 2.0)
                       .outlet(plan::OutletMode::riser),
                   "services");
  ASSERT_EQ(gas.spans.size(), 1U);
  EXPECT_EQ(gas.spans[0].finding.weight, Weight::binding);
}

TEST(Clearance, RuleOfPipeOrCableAloneSaysThatItWaits) {
  const Judged j(PlanBuilder::rectangle().window("w", 0, 2.0, 1.2), "openings", [](Rule& rule) {
    rule.applies_to = {Part::pipe, Part::cable};
  });
  ASSERT_EQ(j.spans.size(), 1U);
  expectUnknownAllRound(j.spans[0], 36.0, "rule.unjudged.part");
}

}  // namespace

}  // namespace sumpwright::rules
