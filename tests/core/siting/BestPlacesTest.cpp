#include "core/siting/Studied.h"
#include "siting/BestPlaces.h"

namespace sumpwright::siting {

namespace {

using plan::Looked;
using plan::ServiceKind;
using support::PlanBuilder;

TEST(BestPlaces, OneForEachClearRunSorted) {
  const Study study = studied(PlanBuilder::rectangle().noRooms().room(
      "k", plan::RoomUse::kitchen, {{0.35, 0.35}, {9.65, 0.35}, {9.65, 4}, {0.35, 4}}));
  ASSERT_EQ(study.best().size(), 3U);  // east, rear, west
  EXPECT_FALSE(study.leastBad());
  for (std::size_t i = 0; i < 3; ++i) {
    const BestPlace& b = study.best()[i];
    EXPECT_EQ(study.stateAt(b.place), State::clear);
    EXPECT_NEAR(b.score, study.assess(b.place).score.total, 1e-9);
    EXPECT_LE(b.score, study.best()[i > 0 ? i - 1 : 0].score);
  }
}

TEST(BestPlaces, NoSampleOfARunScoresBetter) {
  const Study study = studied(PlanBuilder::lShape()
                                  .window("w", 2, 1.0, 1.0)
                                  .service("g", ServiceKind::gas, 1, 1.5)
                                  .radiator("r", 4, 2.0, 1.0));
  ASSERT_FALSE(study.best().empty());
  for (const BestPlace& b : study.best()) {
    const Inset inset = insetOf(b.run, study.accuracy_m());
    for (int i = 0; i <= 500; ++i) {
      const double s = inset.from_m + (inset.to_m - inset.from_m) * i / 500;
      EXPECT_LE(study.scoreAt(study.perimeter().wrapped({b.run.ring, s})), b.score + 1e-6);
    }
  }
}

TEST(BestPlaces, LieInsideByTheSurveysAccuracy) {
  const Study study = studied(PlanBuilder::rectangle().with(
      [](plan::Job& job) { job.survey_method = plan::SurveyMethod::traced_picture; }));
  for (const BestPlace& b : study.best()) {
    const double into =
        study.perimeter().wrapped({0, b.place.chainage_m - b.run.from_m}).chainage_m;
    EXPECT_GE(into, 0.20 - kMicrometre);
    EXPECT_LE(into, b.run.to_m - b.run.from_m - 0.20 + kMicrometre);
  }
}

TEST(BestPlaces, ShortRunGivesItsMiddle) {
  const Inset inset = insetOf({0, 4.0, 4.03, State::clear}, 0.02);
  EXPECT_NEAR(inset.from_m, 4.015, 1e-12);
  EXPECT_EQ(inset.from_m, inset.to_m);
  const Inset longer = insetOf({0, 4.0, 5.0, State::clear}, 0.02);
  EXPECT_NEAR(longer.from_m, 4.02, 1e-12);
  EXPECT_NEAR(longer.to_m, 4.98, 1e-12);
}

// Refused for 1.555 m on either side of a window, 1.5 m and half the pipe; accuracy 0.02 m.
TEST(BestPlaces, AStretchNarrowerThanTwiceTheAccuracyIsTooCloseToCall) {
  const auto closeBetween = [](double free) {
    const double first = 1.0;  // the rear wall begins at chainage 20
    const double second = first + 0.6 + 2 * 1.555 + free;
    const Study study = studied(
        PlanBuilder::rectangle(12, 8).window("a", 2, first, 0.6).window("b", 2, second, 1.0));
    for (const BestPlace& b : study.best()) {
      if (b.run.from_m > 20.0 + first && b.run.to_m < 20.0 + second) return b.close ? 1 : 0;
    }
    return -1;
  };
  EXPECT_EQ(closeBetween(0.010), 1);
  EXPECT_EQ(closeBetween(0.039), 1);
  EXPECT_EQ(closeBetween(0.10), 0);
  EXPECT_EQ(closeBetween(-0.01), -1);
}

// Where the floors on either side refuse there is no distance that could be too small.
TEST(BestPlaces, TooCloseToCallAlsoBetweenWhatHasNoDistance) {
  using plan::FloorKind;
  const auto closeOn = [](double width) {
    const Study study =
        studied(PlanBuilder::rectangle()
                    .noZones()
                    .zone("a", FloorKind::suspended_timber, {{0, 0}, {4, 0}, {4, 8}, {0, 8}})
                    .zone("b", FloorKind::ground_bearing_slab,
                          {{4, 0}, {4 + width, 0}, {4 + width, 8}, {4, 8}})
                    .zone("c", FloorKind::suspended_timber,
                          {{4 + width, 0}, {10, 0}, {10, 8}, {4 + width, 8}})
                    .with([](plan::Job& job) {
                      for (auto& z : job.plan.floor_zones) z.oversite = plan::Oversite::open;
                    }));
    EXPECT_FALSE(study.best().empty());
    for (const BestPlace& b : study.best()) {
      EXPECT_FALSE(study.assess(b.place).close);
      if (b.close) return true;
    }
    return false;
  };
  EXPECT_TRUE(closeOn(0.03));
  EXPECT_FALSE(closeOn(0.5));
}

TEST(BestPlaces, AdvisedAgainstWhereNothingIsClear) {
  const Study study = studied(PlanBuilder::rectangle().with([](plan::Job& job) {
    for (auto& wall : job.plan.rings[0].walls) wall.elevation = plan::Elevation::front;
  }));
  ASSERT_EQ(study.best().size(), 4U);
  for (const BestPlace& b : study.best()) EXPECT_EQ(b.run.state, State::advised_against);
  EXPECT_FALSE(study.leastBad());
}

// ---- least bad ----

/// Every wall within 1.5 m of a window.
PlanBuilder windowsAllRound() {
  return PlanBuilder::rectangle(6, 5)
      .window("a", 0, 1.5, 3.0)
      .window("b", 1, 1.4, 2.2)
      .window("c", 2, 1.5, 3.0)
      .window("d", 3, 1.4, 2.2);
}

TEST(LeastBad, ProposesWhatWaiversMayCover) {
  const Study study = studied(windowsAllRound());
  EXPECT_TRUE(study.best().empty());
  ASSERT_TRUE(study.leastBad());
  ASSERT_TRUE(study.leastBad()->place);
  EXPECT_EQ(study.leastBad()->state, State::refused);
  ASSERT_FALSE(study.leastBad()->changes.empty());
  for (const Finding& f : study.leastBad()->changes) {
    EXPECT_TRUE(f.least_bad || f.weight == rules::Weight::advisory) << f.rule;
  }
  EXPECT_EQ(study.leastBad()->advice.id, "study.least-bad");
}

TEST(LeastBad, NeverStandsAgainstWhatMayHurt) {
  const std::vector<std::function<void(plan::Job&)>> harm{
      [](plan::Job& job) { job.looked_for.gas = Looked::not_looked; },
      [](plan::Job& job) { job.looked_for.electricity = Looked::not_looked; },
      [](plan::Job& job) { job.looked_for.drain = Looked::not_looked; },
      [](plan::Job& job) { job.looked_for.flue_terminal = Looked::not_looked; },
      [](plan::Job& job) {
        for (auto& w : job.plan.rings[0].walls) w.foundation = plan::Foundation::raft_edge;
      },
      [](plan::Job& job) {
        for (auto& w : job.plan.rings[0].walls) w.kind = plan::WallKind::party;
      },
      [](plan::Job& job) { job.plan.floor_zones[0].kind = plan::FloorKind::unknown; }};
  for (std::size_t i = 0; i < harm.size(); ++i) {
    const Study study = studied(PlanBuilder::rectangle().with(harm[i]));
    EXPECT_TRUE(study.best().empty()) << i;
    ASSERT_TRUE(study.leastBad()) << i;
    EXPECT_FALSE(study.leastBad()->place) << i;
  }
}

TEST(LeastBad, KeepsAwayFromTheOneWallWithGas) {
  const Study study = studied(windowsAllRound()
                                  .service("g", ServiceKind::gas, 1, 2.5)
                                  .service("e", ServiceKind::electricity, 3, 2.5));
  ASSERT_TRUE(study.leastBad() && study.leastBad()->place);
  const Assessment a = study.assess(*study.leastBad()->place);
  for (const Finding& f : a.findings) EXPECT_NE(f.rule, "services");
}

TEST(LeastBad, SaysWhatToDoInstead) {
  const Study gas = studied(PlanBuilder::rectangle().with(
      [](plan::Job& job) { job.looked_for.gas = Looked::not_looked; }));
  EXPECT_EQ(gas.leastBad()->advice.id, "study.look-first");
  const Study floor = studied(PlanBuilder::rectangle().with(
      [](plan::Job& job) { job.plan.floor_zones[0].kind = plan::FloorKind::unknown; }));
  EXPECT_EQ(floor.leastBad()->advice.id, "study.look-further");
  const Study party = studied(PlanBuilder::rectangle().with([](plan::Job& job) {
    for (auto& w : job.plan.rings[0].walls) w.kind = plan::WallKind::party;
  }));
  EXPECT_EQ(party.leastBad()->advice.id, "study.other-remedy");
}

TEST(LeastBad, RiserSaysThatItsOutletIsWhatStandsOpen) {
  const Study study = studied(PlanBuilder::rectangle().outlet(plan::OutletMode::riser));
  ASSERT_TRUE(study.leastBad());
  EXPECT_FALSE(study.leastBad()->place);
  EXPECT_EQ(study.leastBad()->advice.id, "study.riser-left-open");
  // All but what the corners refuse: 0.3635 either side of each.
  const auto runs = study.runsLeftOpen();
  ASSERT_EQ(runs.size(), 4U);
  EXPECT_NEAR(runs[0].from_m, 0.3635, kMicrometre);
  EXPECT_NEAR(runs[0].to_m, 10.0 - 0.3635, kMicrometre);
  const Study unseen =
      studied(PlanBuilder::rectangle().outlet(plan::OutletMode::riser).with([](plan::Job& job) {
        job.looked_for.gas = Looked::not_looked;
      }));
  EXPECT_EQ(unseen.leastBad()->advice.id, "study.look-first-riser");
  EXPECT_TRUE(unseen.runsLeftOpen().empty());
}

TEST(LeastBad, AnOutletThatIsRefusedEverywhereMayTryARiser) {
  const rules::RuleSheet us = support::builtInSheet("us-practice");
  const Study low = studied(PlanBuilder::rectangle(), us);
  ASSERT_TRUE(low.leastBad());
  EXPECT_EQ(low.leastBad()->advice.id, "study.try-riser");
  StudyOptions riser;
  riser.outlet = plan::OutletMode::riser;
  EXPECT_EQ(studied(PlanBuilder::rectangle(), us, riser).leastBad()->advice.id,
            "study.riser-left-open");
  const auto party = [](plan::Job& job) {
    for (auto& w : job.plan.rings[0].walls) w.kind = plan::WallKind::party;
  };
  EXPECT_EQ(studied(PlanBuilder::rectangle().with(party), us).leastBad()->advice.id,
            "study.other-remedy");
}

// ---- jumps ----

// Clear: 10.3635..17.6365, 18.3635..27.6365, 28.3635..35.6365; accuracy 0.02.
TEST(NextAllowed, FirstPlaceInsideTheNextRun) {
  const Study study = studied(PlanBuilder::rectangle());
  const auto next = [&](double s, int direction) {
    const auto found = study.nextAllowed({0, s}, direction);
    return found ? found->chainage_m : -1.0;
  };
  EXPECT_NEAR(next(5.0, +1), 10.3835, kMicrometre);
  EXPECT_NEAR(next(5.0, -1), 35.6165, kMicrometre);  // over the start
  EXPECT_NEAR(next(14.0, +1), 18.3835, kMicrometre);
  EXPECT_NEAR(next(14.0, -1), 35.6165, kMicrometre);
  EXPECT_NEAR(next(30.0, +1), 10.3835, kMicrometre);
  EXPECT_NEAR(next(18.0, -1), 17.6165, kMicrometre);
}

TEST(NextAllowed, NothingWhereTheRingHasNone) {
  const Study study = studied(PlanBuilder::bare());
  EXPECT_FALSE(study.nextAllowed({0, 3.0}, +1));
  EXPECT_FALSE(study.nextAllowed({0, 3.0}, -1));
}

TEST(NextAllowed, StaysOnItsRing) {
  rules::RuleSheet sheet = support::builtInSheet("ie-practice");
  std::erase_if(sheet.rules, [](const rules::Rule& r) { return r.id == "low-outlet-enclosed"; });
  const Study study = studied(PlanBuilder::courtyard(), sheet);
  const auto found = study.nextAllowed({1, 4.0}, +1);
  ASSERT_TRUE(found);
  EXPECT_EQ(found->ring, 1);
}

}  // namespace

}  // namespace sumpwright::siting
