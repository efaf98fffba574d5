// One place at a time: exact ends, margins, waivers.
#include <cmath>

#include "build/DrillSection.h"
#include "core/siting/Studied.h"

namespace sumpwright::siting {

namespace {

using plan::Evidence;
using plan::ServiceKind;
using support::PlanBuilder;

TEST(Assess, DistanceExactlyMetIsClear) {
  const Study study = studied(PlanBuilder::rectangle().window("w", 0, 4.0, 1.2));
  const auto span = std::find_if(study.spans().begin(), study.spans().end(),
                                 [](const auto& s) { return s.finding.rule == "openings"; });
  ASSERT_NE(span, study.spans().end());
  EXPECT_FALSE(has(study.assess({0, span->from_m}), "openings", "w"));
  EXPECT_FALSE(has(study.assess({0, span->to_m}), "openings", "w"));
  EXPECT_TRUE(has(study.assess({0, std::nextafter(span->from_m, 99.0)}), "openings", "w"));
  EXPECT_TRUE(has(study.assess({0, std::nextafter(span->to_m, 0.0)}), "openings", "w"));
}

TEST(Assess, FindingHasTheDistanceOfThePlace) {
  const Study study = studied(PlanBuilder::rectangle().window("w", 0, 4.0, 1.2));
  // 1.0 m from the near jamb, less half the pipe.
  const Assessment a = study.assess({0, 3.0});
  const Finding* f = findingOf(a, "openings", "w");
  ASSERT_NE(f, nullptr);
  EXPECT_NEAR(*f->distance_m, 1.0 - 0.055, kMicrometre);
  EXPECT_EQ(a.state, State::refused);
  EXPECT_EQ(a.sentence.id, "verdict.refused");
  EXPECT_NEAR(a.point.x, 3.0, kMicrometre);
  EXPECT_EQ(a.rooms_behind, std::vector<std::string>{"room"});
}

TEST(Assess, PlacesWrap) {
  const Study study = studied(PlanBuilder::rectangle());
  EXPECT_EQ(study.assess({0, 14.0 + 36.0}).place, (Place{0, 14.0}));
  EXPECT_EQ(study.assess({0, -22.0}).place, (Place{0, 14.0}));
}

// Jambs 2 x 0.2135 apart: their spans all but meet, wherever the window stands. Either is refused.
TEST(Assess, SpansOfOneThingThatAllButMeetBothHold) {
  const auto sheet = support::builtInSheet("ie-practice");
  for (int i = 0; i < 40; ++i) {
    const double at = 1.0 + 0.187 * i;
    const Study study = studied(PlanBuilder::rectangle(12, 8).window("w", 2, at, 0.427), sheet);
    const double first = 20 + at;
    EXPECT_TRUE(has(study.assess({0, first + 0.1}), "jambs", "w")) << at;
    EXPECT_TRUE(has(study.assess({0, first + 0.3}), "jambs", "w")) << at;
  }
}

// The arc from the entry to the front wall and the front wall itself are one unknown.
TEST(Assess, UnknownRunHoldsOnEitherSideOfTheCorner) {
  for (int i = 1; i < 90; ++i) {
    const double at = 0.0731 * i;
    const Study study = studied(
        PlanBuilder::rectangle(9.87, 7.31).service("g", ServiceKind::gas, 1, at).runUnknown("g"));
    if (at > 3.6) continue;  // further up the other way round is shorter
    EXPECT_TRUE(has(study.assess({0, 5.0}), "services", "g")) << at;
    EXPECT_TRUE(has(study.assess({0, 9.87 + 0.5 * at}), "services", "g")) << at;
  }
}

TEST(Assess, PlaceBetweenTwoRefusedFloorsIsRefused) {
  using plan::FloorKind;
  const Study study =
      studied(PlanBuilder::rectangle()
                  .noZones()
                  .zone("a", FloorKind::suspended_timber, {{0, 0}, {4, 0}, {4, 8}, {0, 8}})
                  .zone("b", FloorKind::suspended_timber, {{4, 0}, {10, 0}, {10, 8}, {4, 8}})
                  .with([](plan::Job& job) {
                    for (auto& z : job.plan.floor_zones) z.oversite = plan::Oversite::open;
                  }));
  EXPECT_EQ(study.stateAt({0, 4.0}), State::refused);
  EXPECT_EQ(study.assess({0, 4.0}).state, State::refused);
}

TEST(Assess, MarginsToEveryDistanceRule) {
  const Study study = studied(
      PlanBuilder::rectangle().window("w", 2, 1.0, 1.0).service("g", ServiceKind::gas, 1, 1.0));
  const Assessment a = study.assess({0, 15.0});
  const auto margin = [&](const std::string& rule) {
    const auto found = std::find_if(a.margins.begin(), a.margins.end(),
                                    [&](const Margin& m) { return m.rule == rule; });
    EXPECT_NE(found, a.margins.end()) << rule;
    return *found;
  };
  // The window's near jamb at (9, 8); the place at (10, 5).
  EXPECT_NEAR(margin("openings").distance_m, std::sqrt(1 + 9) - 0.055, kMicrometre);
  EXPECT_EQ(margin("openings").thing, "w");
  EXPECT_NEAR(margin("openings").margin_m, std::sqrt(10.0) - 0.055 - 1.5, kMicrometre);
  EXPECT_NEAR(margin("services").distance_m, 4.0 - 0.0635, kMicrometre);
  EXPECT_NEAR(margin("corners").distance_m, 3.0 - 0.0635, kMicrometre);
  EXPECT_EQ(margin("corners").thing, "corner.C");
  EXPECT_EQ(margin("free-depth").distance_m, 3.0);
  EXPECT_EQ(margin("free-depth").thing, "w0.1");
  EXPECT_FALSE(a.close);
}

// Tape: 0.02 m. Corner B is kept clear to 10.3635.
TEST(Assess, TooCloseToCallIsAFlag) {
  const Study study = studied(PlanBuilder::rectangle());
  const Assessment close = study.assess({0, 10.3635 + 0.019});
  EXPECT_EQ(close.state, State::clear);
  EXPECT_TRUE(close.close);
  EXPECT_EQ(close.sentence.id, "verdict.clear-close");
  const Assessment within = study.assess({0, 10.3635 - 0.019});
  EXPECT_EQ(within.state, State::refused);
  EXPECT_TRUE(within.close);
  const Assessment apart = study.assess({0, 10.3635 + 0.021});
  EXPECT_FALSE(apart.close);
  EXPECT_EQ(apart.sentence.id, "verdict.clear");
}

TEST(Assess, TheVerdictCountsWorkingRoomAmongItsMargins) {
  rules::RuleSheet sheet = support::builtInSheet("ie-practice");
  std::erase_if(sheet.rules, [](const rules::Rule& r) { return r.id == "low-outlet-enclosed"; });
  const auto at = [&](double free_m) {
    return studied(
               PlanBuilder::rectangle().wall(1, [&](plan::Wall& w) { w.free_depth_m = free_m; }),
               sheet)
        .assess({0, 14.0});
  };
  EXPECT_EQ(at(6.0).sentence.id, "verdict.clear");
  // 0.90 m is binding and 1.20 m advisory in the sheet: only the advisory's is left of 1.25 m.
  const Assessment near = at(1.25);
  EXPECT_EQ(near.state, State::clear);
  EXPECT_EQ(near.sentence.id, "verdict.clear-room");
  EXPECT_FALSE(near.close);
  const Assessment advisory = at(1.21);  // a centimetre more than is advised, 0.31 m than is needed
  EXPECT_EQ(advisory.state, State::clear);
  EXPECT_FALSE(advisory.close) << "no refusal is near";
}

TEST(Assess, AccuracyComesFromTheSheetByMethod) {
  const auto accuracy = [](plan::SurveyMethod method) {
    return studied(
               PlanBuilder::rectangle().with([&](plan::Job& job) { job.survey_method = method; }))
        .accuracy_m();
  };
  EXPECT_EQ(accuracy(plan::SurveyMethod::tape), 0.02);
  EXPECT_EQ(accuracy(plan::SurveyMethod::laser), 0.01);
  EXPECT_EQ(accuracy(plan::SurveyMethod::traced_picture), 0.20);
  EXPECT_EQ(accuracy(plan::SurveyMethod::map_outline), 0.75);
}

TEST(Assess, AssumedThicknessIsFlagged) {
  const auto flagged = [](const plan::Job& job) {
    return studied(job).assess({0, 14.0}).thickness_assumed;
  };
  EXPECT_FALSE(flagged(PlanBuilder::rectangle()));
  EXPECT_TRUE(flagged(PlanBuilder::rectangle()
                          .wall(1, [](plan::Wall& w) { w.thickness_m.reset(); })
                          .with([](plan::Job& job) { job.house.wall_thickness_m.reset(); })));
}

// ---- waivers ----

plan::Waiver waiver(const std::string& rule, const std::string& thing, double chainage,
                    Evidence evidence = Evidence::reason) {
  plan::Waiver w;
  w.id = rule + "-" + thing;
  w.sump = "s1";
  w.rule = rule;
  w.thing = thing;
  w.chainage_m = chainage;
  w.evidence = evidence;
  w.reason = "seen on site";
  w.name = "A. Tester (invented)";
  w.date = "2026-03-02";
  return w;
}

/// So near a corner the drill line ends within the next wall: the floor there is drawn too, or its
/// being unknown would stand against the waiver.
PlanBuilder atCorner(double chainage = 10.2) {
  return PlanBuilder::rectangle()
      .noZones()
      .zone("all", plan::FloorKind::ground_bearing_slab, {{0, 0}, {10, 0}, {10, 8}, {0, 8}})
      .sump("s1", 0, chainage);
}

TEST(Waiver, ChangesTheSentenceButNeverTheState) {
  const Study study = studied(atCorner().waiver(waiver("corners", "corner.B", 10.2)));
  const Assessment a = study.assess({0, 10.2}, "s1");
  EXPECT_EQ(a.state, State::refused);
  EXPECT_TRUE(a.waived);
  EXPECT_EQ(a.sentence.id, "verdict.waived");
  EXPECT_EQ(study.stateAt({0, 10.2}), State::refused);
  EXPECT_FALSE(study.assess({0, 10.2}).waived);        // no sump asked about
  EXPECT_FALSE(study.assess({0, 10.2}, "s2").waived);  // another sump
}

TEST(Waiver, HoldsWithinTenMillimetres) {
  const Study study = studied(atCorner().waiver(waiver("corners", "corner.B", 10.2)));
  EXPECT_TRUE(study.assess({0, 10.209}, "s1").waived);
  EXPECT_TRUE(study.assess({0, 10.191}, "s1").waived);
  EXPECT_FALSE(study.assess({0, 10.211}, "s1").waived);
  EXPECT_FALSE(study.assess({0, 10.189}, "s1").waived);
}

TEST(Waiver, NeverWhereAnythingIsUnknown) {
  const Study study = studied(atCorner().noZones().waiver(waiver("corners", "corner.B", 10.2)));
  EXPECT_FALSE(study.assess({0, 10.2}, "s1").waived);
}

TEST(Waiver, HoldsOverTheStartOfTheRing) {
  // The ring begins in the middle of the front wall, 0.15 m before a window.
  const Study study = studied(
      PlanBuilder::outline({{5, 0}, {10, 0}, {10, 8}, {0, 8}, {0, 0}})
          .zone("all", plan::FloorKind::ground_bearing_slab, {{0, 0}, {10, 0}, {10, 8}, {0, 8}})
          .window("w", 0, 0.15, 1.0)
          .sump("s1", 0, 35.998)
          .waiver(waiver("openings", "w", 35.998))
          .waiver(waiver("jambs", "w", 35.998)));
  EXPECT_TRUE(study.assess({0, 0.005}, "s1").waived);
  EXPECT_FALSE(study.assess({0, 0.011}, "s1").waived);
}

TEST(Waiver, IsForOneRuleAndOneThing) {
  EXPECT_FALSE(studied(atCorner().waiver(waiver("corners", "corner.A", 10.2)))
                   .assess({0, 10.2}, "s1")
                   .waived);
  EXPECT_FALSE(
      studied(atCorner().waiver(waiver("jambs", "corner.B", 10.2))).assess({0, 10.2}, "s1").waived);
  plan::Waiver lapsed = waiver("corners", "corner.B", 10.2);
  lapsed.lapsed = true;
  EXPECT_FALSE(studied(atCorner().waiver(lapsed)).assess({0, 10.2}, "s1").waived);
}

TEST(Waiver, EveryBindingFindingNeedsItsOwn) {
  // 0.1 from the window's jamb: openings and jambs both refuse.
  const auto base = [] {
    return PlanBuilder::rectangle().window("w", 1, 3.0, 1.2).sump("s1", 0, 12.9);
  };
  EXPECT_FALSE(
      studied(base().waiver(waiver("openings", "w", 12.9))).assess({0, 12.9}, "s1").waived);
  EXPECT_TRUE(
      studied(base().waiver(waiver("openings", "w", 12.9)).waiver(waiver("jambs", "w", 12.9)))
          .assess({0, 12.9}, "s1")
          .waived);
}

TEST(Waiver, TheVerdictNamesWhatIsNotAcceptedYet) {
  const auto at = [](const std::vector<const char*>& rules) {
    PlanBuilder house = PlanBuilder::rectangle().window("w", 1, 3.0, 1.2).sump("s1", 0, 12.9);
    for (const char* rule : rules) house.waiver(waiver(rule, "w", 12.9));
    return studied(house).assess({0, 12.9}, "s1");
  };
  const Assessment none = at({});
  EXPECT_EQ(std::count(none.accepted.begin(), none.accepted.end(), true), 0);
  const std::string first = none.findings.front().rule;
  const std::string other = first == "openings" ? "jambs" : "openings";
  const Assessment one = at({first.c_str()});
  EXPECT_TRUE(one.accepted.front());
  EXPECT_EQ(one.sentence.id, "verdict.refused");
  EXPECT_NE(one.sentence, none.sentence) << "it still names what a waiver accepts";
  const Assessment both = at({first.c_str(), other.c_str()});
  EXPECT_EQ(both.sentence.id, "verdict.waived");
}

/// Whatever is said for it: there is no wall in a door and none past a corner.
TEST(Waiver, NoneForAHoleInADoor) {
  const auto accepted = [](double chainage) {
    return studied(PlanBuilder::rectangle()
                       .door("d", 1, 3.0, 0.9)
                       .sump("s1", 0, chainage)
                       .waiver(waiver("openings", "d", chainage))
                       .waiver(waiver("jambs", "d", chainage)))
        .assess({0, chainage}, "s1")
        .waived;
  };
  EXPECT_FALSE(accepted(13.45));        // its middle
  EXPECT_FALSE(accepted(13.0 - 0.06));  // 127 mm core: 3.5 mm into it
  EXPECT_TRUE(accepted(13.0 - 0.07));
}

TEST(Waiver, WithTheEvidenceTheSheetAsksFor) {
  const auto waived = [](Evidence evidence) {
    return studied(PlanBuilder::rectangle()
                       .wall(1, [](plan::Wall& w) { w.foundation = plan::Foundation::raft_edge; })
                       .sump("s1", 0, 14.0)
                       .waiver(waiver("foundation", "w0.1", 14.0, evidence)))
        .assess({0, 14.0}, "s1")
        .waived;
  };
  EXPECT_TRUE(waived(Evidence::engineers_note));
  EXPECT_FALSE(waived(Evidence::reason));
}

/// Papers and section say of a waived hole what the verdict says.
TEST(Waiver, OfAFoundationOpensTheSection) {
  const auto section = [](bool waived) {
    PlanBuilder house =
        PlanBuilder::rectangle()
            .wall(1, [](plan::Wall& w) { w.foundation = plan::Foundation::raft_edge; })
            .sump("s1", 0, 14.0);
    if (waived) house.waiver(waiver("foundation", "w0.1", 14.0, Evidence::engineers_note));
    const Study study = studied(house);
    return build::drillSection(study.site(), {0, 14.0},
                               build::wishOf(study.job(), study.job().design.sumps[0]));
  };
  const build::DrillSection none = section(false);
  EXPECT_EQ(none.verdict.id, "section.none.foundation");
  EXPECT_TRUE(none.stopped);
  const build::DrillSection open = section(true);
  EXPECT_FALSE(open.stopped);
  EXPECT_TRUE(open.on_waiver);
  EXPECT_TRUE(open.bore);
  ASSERT_FALSE(open.notes.empty());
  EXPECT_EQ(open.notes.front().id, "section.note.on-waiver");
}

/// No hole fits between slab and footing.
void leaveNoHole(plan::Job& j) {
  j.house.screed_m = 0.065;
  j.house.insulation_m = 0.1;
  j.house.slab_m = 0.15;
  j.house.ground_level_m = -0.15;
  j.house.dpc_height_m = 0.0;
  j.house.barrier = plan::Barrier::none;
  j.house.footing_top_low_m = j.house.footing_top_high_m = -0.3;
}

/// A note on the foundation is none on a hole that does not fit: nobody is told to core by it.
TEST(Waiver, OfTheFoundationAloneTellsNobodyToCoreWhatNeverFits) {
  PlanBuilder house =
      PlanBuilder::rectangle()
          .wall(1, [](plan::Wall& w) { w.foundation = plan::Foundation::raft_edge; })
          .sump("s1", 0, 14.0)
          .with(leaveNoHole)
          .waiver(waiver("foundation", "w0.1", 14.0, Evidence::engineers_note));
  const auto section = [](const Study& study) {
    return build::drillSection(study.site(), {0, 14.0},
                               build::wishOf(study.job(), study.job().design.sumps[0]));
  };
  const build::DrillSection never = section(studied(house));
  EXPECT_EQ(never.fit, build::Fit::never);
  EXPECT_TRUE(never.stopped);
  EXPECT_FALSE(never.on_waiver);
  for (const base::Message& note : never.notes) {
    EXPECT_NE(note.id, "section.note.on-waiver");
    EXPECT_NE(note.id, "section.note.on-waiver-of-hole");
  }
  const build::DrillSection accepted =
      section(studied(house.waiver(waiver("hole", "w0.1", 14.0, Evidence::engineers_note))));
  EXPECT_FALSE(accepted.stopped);
  EXPECT_TRUE(accepted.on_waiver);
  EXPECT_EQ(accepted.notes.front().id, "section.note.on-waiver-of-hole");
}

TEST(Waiver, OfTheHoleLetsItBeDrilledThoughNoneFits) {
  PlanBuilder house = PlanBuilder::rectangle().sump("s1", 0, 14.0).with(leaveNoHole);
  const auto stopped = [](const Study& study) {
    return build::drillSection(study.site(), {0, 14.0},
                               build::wishOf(study.job(), study.job().design.sumps[0]))
        .stopped;
  };
  const Study refused = studied(house);
  EXPECT_EQ(refused.assess({0, 14.0}, "s1").state, State::refused);
  EXPECT_TRUE(stopped(refused));
  const Study accepted =
      studied(house.waiver(waiver("hole", "w0.1", 14.0, Evidence::engineers_note)));
  EXPECT_TRUE(accepted.assess({0, 14.0}, "s1").waived);
  EXPECT_FALSE(stopped(accepted));
}

TEST(Waiver, NeverForWhatTheSheetForbids) {
  EXPECT_FALSE(studied(PlanBuilder::rectangle()
                           .service("d", ServiceKind::drain, 1, 4.0)
                           .sump("s1", 0, 14.4)
                           .waiver(waiver("drains", "d", 14.4)))
                   .assess({0, 14.4}, "s1")
                   .waived);
}

// Gas at chainage 14, hole's edge at so many metres from it.
bool gasWaived(double distance, bool located,
               const std::string& record = "scan of 2 March (invented)") {
  const double at = 14.0 + distance + 0.0635;
  return studied(PlanBuilder::rectangle()
                     .service("g", ServiceKind::gas, 1, 4.0)
                     .with([&](plan::Job& job) {
                       job.plan.services[0].located = located;
                       job.plan.services[0].locating_record = record;
                     })
                     .sump("s1", 0, at)
                     .waiver(waiver("services", "g", at, Evidence::locating_record)))
      .assess({0, at}, "s1")
      .waived;
}

TEST(Waiver, ServicesOnlyWhenLocatedAndNeverWithinHalfAMetre) {
  EXPECT_TRUE(gasWaived(0.7, true));
  EXPECT_TRUE(gasWaived(0.501, true));
  EXPECT_FALSE(gasWaived(0.499, true));
  EXPECT_FALSE(gasWaived(0.1, true));
  EXPECT_FALSE(gasWaived(0.7, false));
  EXPECT_FALSE(gasWaived(0.7, true, ""));
  EXPECT_FALSE(gasWaived(0.7, true, "  "));
}

TEST(Waiver, WhatWasNotLookedForIsNotWaived) {
  const Study study =
      studied(PlanBuilder::rectangle()
                  .with([](plan::Job& job) { job.looked_for.gas = plan::Looked::not_looked; })
                  .sump("s1", 0, 14.0)
                  .waiver(waiver("services", "looked_for.gas", 14.0, Evidence::locating_record)));
  EXPECT_FALSE(study.assess({0, 14.0}, "s1").waived);
}

/// A pipe in the floor along the whole rear wall: in plan it refuses every hole there. A hole 0.50
/// m below the floor has it 0.435 m above its middle: more than 0.15 m and half a core of 127 mm.
TEST(Assess, AHoleWellBelowTheFloorPassesUnderHeating) {
  plan::Job job =
      PlanBuilder::rectangle().heatingPipe("pipe", {{0.6, 7.5}, {9.4, 7.5}}).sump("s", 0, 23.0);
  job.house.screed_m = 0.065;
  EXPECT_TRUE(has(studied(job).assess({0, 23.0}, "s"), "heating", "pipe"));
  job.design.sumps[0].entry_m = -0.50;
  const Study low = studied(job);
  EXPECT_FALSE(has(low.assess({0, 23.0}, "s"), "heating", "pipe"));
  const Assessment a = low.assess({0, 23.0}, "s");
  const auto margin = std::find_if(a.margins.begin(), a.margins.end(),
                                   [](const Margin& m) { return m.rule == "heating"; });
  ASSERT_NE(margin, a.margins.end());
  EXPECT_NEAR(margin->needed_m, 0.15, 1e-12);
  EXPECT_NEAR(margin->distance_m, 0.435 - 0.0635, 1e-9);
  // 0.20 m below the floor it is too near: 0.135 m from the middle.
  job.design.sumps[0].entry_m = -0.20;
  const Assessment near = studied(job).assess({0, 23.0}, "s");
  ASSERT_TRUE(has(near, "heating", "pipe"));
  EXPECT_NEAR(*findingOf(near, "heating", "pipe")->needed_m, 0.15, 1e-12);
  // Another sump whose hole's height is not stated is judged in plan.
  job.design.sumps[0].entry_m = -0.50;
  job.design.sumps.push_back(job.design.sumps[0]);
  job.design.sumps[1].id = "t";
  job.design.sumps[1].entry_m.reset();
  EXPECT_TRUE(has(studied(job).assess({0, 23.0}, "t"), "heating", "pipe"));
}

}  // namespace

}  // namespace sumpwright::siting
