// The field that follows a drag gives what the whole study gives at the same place.

#include <gtest/gtest.h>

#include "siting/SuctionLive.h"
#include "suction/Presets.h"
#include "support/PlanBuilder.h"
#include "support/RandomPlan.h"

namespace sumpwright::siting {
namespace {

using support::PlanBuilder;

plan::Job liveHouse() {
  return PlanBuilder::lShape()
      .sump("a", 0, 3.0)
      .sump("b", 0, 20.0)
      .with([](plan::Job& job) {
        job.house.fill = plan::Fill::graded;
        job.design.sumps[1].pit_l = 30.0;
      })
      .job();
}

Study liveStudy(const plan::Job& job) {
  return Study::of(job, support::builtInSheet("ie-practice")).value();
}

SuctionSystem liveSystem(const Study& study) {
  airflow::Fan fan;
  fan.id = "test";
  airflow::CurveLaw law;
  law.shut_off = base::Pressure::ofPa(300.0);
  law.free_flow = base::Flow::ofM3PerS(0.06);
  fan.curve = airflow::FanCurve::byLaw(law).value();
  return usualSystem(study.site(), fan, true);
}

TEST(SuctionLive, GivesWhatTheStudyGives) {
  const plan::Job job = liveHouse();
  const Study study = liveStudy(job);
  SuctionOptions options = suctionOptionsOf(job);
  options.cell_m = 0.2;
  const auto live = SuctionLive::of(study, liveSystem(study), options);
  ASSERT_TRUE(live.ok());
  const auto field = live->at(live->sumpsOf(job.design, "", std::nullopt));
  ASSERT_TRUE(field);
  const auto answer = studySuction(study, liveSystem(study), options);
  ASSERT_TRUE(answer.ok());
  const MiddleCase& middle = answer->middle[answer->worst];
  EXPECT_EQ(field->reach.floor, middle.reach.floor);
  EXPECT_EQ(field->reach.least.suction_pa, middle.reach.least.suction_pa);
  ASSERT_EQ(field->duty.legs.size(), 2U);
  EXPECT_EQ(field->duty.legs[0].ground.m3PerS(), middle.duty.legs[0].ground.m3PerS());
  EXPECT_EQ(field->sumps, (std::vector<std::string>{"a", "b"}));
}

TEST(SuctionLive, FollowsTheSumpThatIsMoved) {
  const plan::Job job = liveHouse();
  const Study study = liveStudy(job);
  SuctionOptions options = suctionOptionsOf(job);
  options.cell_m = 0.2;
  const SuctionLive live = SuctionLive::of(study, liveSystem(study), options).value();
  plan::Job there = job;
  there.design.sumps[0].chainage_m = 8.0;
  const auto moved = live.at(live.sumpsOf(job.design, "a", Place{0, 8.0}));
  const auto stands = live.at(live.sumpsOf(there.design, "", std::nullopt));
  ASSERT_TRUE(moved && stands);
  EXPECT_EQ(moved->suction, stands->suction);
}

TEST(SuctionLive, TwoPitsInOneHaveNoFieldAndItIsSaid) {
  const plan::Job job = liveHouse();
  const Study study = liveStudy(job);
  SuctionOptions options = suctionOptionsOf(job);
  options.cell_m = 0.3;
  const SuctionLive live = SuctionLive::of(study, liveSystem(study), options).value();
  const auto apart = live.sumpsOf(job.design, "a", Place{0, 18.0});
  EXPECT_TRUE(live.at(apart));
  EXPECT_FALSE(SuctionLive::problemOf(apart));
  const auto in_one = live.sumpsOf(job.design, "a", Place{0, 19.9});
  EXPECT_FALSE(live.at(in_one));
  ASSERT_TRUE(SuctionLive::problemOf(in_one));
  EXPECT_EQ(SuctionLive::problemOf(in_one)->message.id, "suction.pits-in-one");
}

TEST(SuctionLive, NothingWithoutSumpsOrWithoutALayer) {
  plan::Job job = liveHouse();
  SuctionOptions options = suctionOptionsOf(job);
  options.cell_m = 0.3;
  const Study study = liveStudy(job);
  const SuctionLive live = SuctionLive::of(study, liveSystem(study), options).value();
  EXPECT_FALSE(live.at({}));
  job.house.fill = plan::Fill::none;
  const Study bare = liveStudy(job);
  const SuctionLive none = SuctionLive::of(bare, liveSystem(bare), suctionOptionsOf(job)).value();
  EXPECT_FALSE(none.layered());
  EXPECT_FALSE(none.at(none.sumpsOf(job.design, "", std::nullopt)));
  options.target.limit_pa = 9.0;
  EXPECT_FALSE(SuctionLive::of(study, liveSystem(study), options).ok());
}

TEST(SuctionStudy, GuessesAskedAgainGiveTheSame) {
  const plan::Job job = liveHouse();
  const Study study = liveStudy(job);
  SuctionOptions options = suctionOptionsOf(job);
  options.cell_m = 0.3;
  options.along = true;
  const auto first = studySuction(study, liveSystem(study), options);
  ASSERT_TRUE(first.ok());
  SuctionOptions again = options;
  again.guesses = first->guesses;
  again.reach = first->along;
  const auto second = studySuction(study, liveSystem(study), again);
  ASSERT_TRUE(second.ok());
  EXPECT_EQ(second->whole_floor, first->whole_floor);
  EXPECT_EQ(second->floor_held.low, first->floor_held.low);
  EXPECT_EQ(second->along, first->along);
  EXPECT_LE(first->floor_held.low, first->floor_held.middle);
  EXPECT_LE(first->floor_held.middle, first->floor_held.high);
}

}  // namespace
}  // namespace sumpwright::siting
