// Verdicts once the discharge is placed. Rectangle 10 x 8, everything looked for. Invented.

#include <gtest/gtest.h>

#include "core/siting/Studied.h"
#include "plan/DesignEdits.h"

namespace sumpwright::siting {

namespace {

using support::PlanBuilder;

plan::Job riser(std::optional<double> height_m) {
  plan::Job job =
      PlanBuilder::rectangle().window("w", 1, 1.0, 1.2).sump("s", 0, 15.0).sump("t", 0, 22.0).job();
  job.plan.openings[0].sill_m = 0.9;
  job.plan.openings[0].head_m = 2.1;
  job.house.eaves_m = 2.6;
  job.design.outlet = plan::OutletMode::riser;
  if (height_m) job.design.sumps[0].discharge = plan::Discharge{0, 15.0, *height_m};
  return job;
}

TEST(PlacedRun, MayBeClearAndSaysWhatIsNearest) {
  const Study study = studied(riser(3.2));
  const Assessment a = study.assess({0, 15.0}, "s");
  EXPECT_EQ(a.state, State::clear);
  ASSERT_EQ(a.sentence.id, "verdict.clear-part");
  EXPECT_EQ(std::get<base::Message>(a.sentence.find("part")->value).id, "part.outlet");
  EXPECT_TRUE(study.unjudged().empty());
  EXPECT_FALSE(study.best().empty());
  // The fan stands 1.2 m up, 2.8 m beside the window: 2.745 m from the edge of its pipe.
  const Margin* openings = nullptr;
  for (const Margin& m : a.margins) {
    if (m.rule == "openings") openings = &m;
  }
  ASSERT_NE(openings, nullptr);
  EXPECT_NEAR(openings->distance_m, 2.745, kMicrometre);
  EXPECT_EQ(openings->thing, "w");
}

// The hole stands on the east wall, the outlet round corner B on a party wall.
TEST(PlacedRun, OutletOnAPartyWallIsRefused) {
  plan::Job job = riser(3.2);
  job.plan.rings[0].walls[0].kind = plan::WallKind::party;
  job.design.sumps[0].discharge->chainage_m = 8.0;
  const Study study = studied(job);
  const Assessment a = study.assess({0, 15.0}, "s");
  EXPECT_EQ(a.state, State::refused);
  EXPECT_EQ(study.stateAt({0, 15.0}), State::refused);
  const Finding* party = findingOf(a, "party-wall", job.plan.rings[0].walls[0].id);
  ASSERT_NE(party, nullptr);
  EXPECT_EQ(party->reason.id, "rule.run-wall");
  EXPECT_FALSE(party->waivable.allowed);
  // Until it is placed nobody knows whether it comes onto that wall.
  job.design.sumps[0].discharge.reset();
  const Assessment unplaced = studied(job).assess({0, 15.0}, "s");
  EXPECT_EQ(unplaced.state, State::not_proven);
  EXPECT_NE(findingOf(unplaced, "party-wall", ""), nullptr);
}

TEST(PlacedRun, FanInALivedInRoofSpaceIsRefused) {
  plan::Job job = riser(3.2);
  job.design.sumps[0].fan_place = plan::FanPlace::roof_space;
  EXPECT_EQ(studied(job).assess({0, 15.0}, "s").state, State::not_proven);
  job.house.roof_lived_in = plan::YesNo::yes;
  EXPECT_EQ(studied(job).assess({0, 15.0}, "s").state, State::refused);
  job.house.roof_lived_in = plan::YesNo::no;
  EXPECT_EQ(studied(job).assess({0, 15.0}, "s").state, State::clear);
}

TEST(PlacedRun, UnplacedIsNotProven) {
  EXPECT_EQ(studied(riser({})).assess({0, 15.0}, "s").state, State::not_proven);
  // Another sump of the same job has no discharge yet.
  const Study study = studied(riser(3.2));
  EXPECT_EQ(study.assess({0, 22.0}, "t").state, State::not_proven);
  EXPECT_EQ(study.assess({0, 22.0}, "s").state, State::clear);
}

TEST(PlacedRun, EachSumpIsJudgedByItsOwn) {
  plan::Job job = riser(3.2);
  job.design.sumps[1].discharge = plan::Discharge{0, 22.0, 1.9};  // 0.70 m under the eaves
  const Study study = studied(job);
  EXPECT_EQ(study.assess({0, 15.0}, "s").state, State::clear);
  const Assessment low = study.assess({0, 22.0}, "t");
  EXPECT_EQ(low.state, State::refused);
  EXPECT_EQ(low.findings[0].rule, "outlet-under-eaves");
  EXPECT_EQ(low.sentence.id, "verdict.refused");
  EXPECT_TRUE(findingOf(low, "outlet-under-eaves", "")->distance_m.has_value());
}

TEST(PlacedRun, StretchesAreThoseOfTheHoleWithItsRun) {
  const Study study = studied(riser(3.0));  // 0.9 above the head
  // Fan at 1.2 m: 1.555 off the jambs; the outlet alone would be let nearer.
  const Assessment at = study.assess({0, 12.2 + 1.554}, "s");
  EXPECT_EQ(at.state, State::refused);
  EXPECT_EQ(at.findings[0].reason.id, "rule.run-near");
  EXPECT_EQ(study.assess({0, 12.2 + 1.556}, "s").state, State::clear);
  EXPECT_EQ(study.stateAt({0, 12.2 + 1.554}), State::refused);
}

TEST(PlacedRun, GoesAlongWhenTheSumpIsMoved) {
  const auto moved = plan::moveSump(riser(3.2), "s", 0, 11.5);
  ASSERT_TRUE(moved);
  const Study study = studied(*moved);
  const Assessment a = study.assess({0, 11.5}, "s");
  EXPECT_EQ(a.state, State::refused);
  EXPECT_NE(findingOf(a, "openings", "w"), nullptr);
  EXPECT_NE(findingOf(a, "riser-before-opening", "w"), nullptr);
}

// A reason on record accepts an outlet under the eaves, and it stays refused.
TEST(PlacedRun, MayBeWaivedWhereTheSheetSaysSo) {
  plan::Job job = riser(1.9);
  plan::Waiver waiver;
  waiver.id = "w1";
  waiver.sump = "s";
  waiver.rule = "outlet-under-eaves";
  waiver.chainage_m = 15.0;
  waiver.reason = "no eaves on this side";
  waiver.name = "A. Surveyor";
  waiver.date = "2026-03-01";
  job.design.waivers.push_back(waiver);
  const Assessment a = studied(job).assess({0, 15.0}, "s");
  EXPECT_EQ(a.state, State::refused);
  EXPECT_TRUE(a.waived);
}

}  // namespace

}  // namespace sumpwright::siting
