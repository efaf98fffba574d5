// The curve of reach along the wall, against solving place by place. Houses and fans are invented.

#include <algorithm>
#include <cmath>

#include "core/siting/Studied.h"
#include "property/Moved.h"
#include "siting/BestPlaces.h"
#include "siting/ReachAlong.h"
#include "siting/SuctionStudy.h"
#include "suction/ModelOf.h"
#include "support/Seed.h"

namespace sumpwright::siting {
namespace {

using support::PlanBuilder;

airflow::Fan curveFan() {
  airflow::Fan fan{"curve", "Invented fan", "", {base::Mark::own, "invented"}, {}};
  airflow::CurveLaw law;
  law.shut_off = base::Pressure::ofPa(400.0);
  law.free_flow = base::Flow::ofM3PerH(300.0);
  law.power_at_shut_off_w = 40.0;
  law.power_at_free_flow_w = 60.0;
  fan.curve = airflow::FanCurve::byLaw(law).value();
  return fan;
}

SuctionSystem systemOf(const Study& study) { return usualSystem(study.site(), curveFan(), false); }

ReachOptions coarse(plan::Fill fill = plan::Fill::graded) {
  ReachOptions options;
  options.fill = fill;
  options.cell_m = 0.2;
  return options;
}

ReachAlong reachOf(const Study& study, const ReachOptions& options = coarse()) {
  auto reach = ReachAlong::of(study, systemOf(study), options);
  EXPECT_TRUE(reach) << reach.problems()[0].message.id;
  return std::move(reach).value();
}

plan::Job cutHouse(plan::BelowFloor below = plan::BelowFloor::own_footing) {
  return PlanBuilder::rectangle(12, 7).with([&](plan::Job& j) {
    j.plan.inner_walls.push_back({"w", {{5, 0.35}, {5, 6.65}}, 0.1, below});
  });
}

/// One place solved by itself for every answer, as studySuction() does; the least floor held.
std::optional<double> floorSolvedAt(const Study& study, const ReachOptions& options, double cell_m,
                                    Place place) {
  const auto ranges = suction::rangesOf(*options.fill, study.job().house);
  const double radius = suction::pitRadius_m(options.pit_m3);
  const auto fan = flowOf(systemOf(study));
  std::optional<double> least;
  for (const auto& choices : suction::choicesOf(study.job().plan)) {
    const auto model = suction::modelOf(study.job(), ranges.middle(), choices);
    const auto solver = suction::FieldSolver::of(*model, {.cell_m = cell_m});
    const auto unit = solver.unit(suction::sinkAt(study.perimeter(), place, radius));
    if (!unit) return std::nullopt;
    const double flow = fan({unit->resistance_pa_s_m3, ranges.middle().inertia_pa_s2_m6(radius)});
    const auto suction = suction::superposed({*unit}, {flow});
    const double floor = suction::reachOf(solver.network(), suction, options.target).floor;
    least = std::min(least.value_or(1.0), floor);
  }
  return least;
}

/// On one fan for all a place is reckoned beside the sumps that stay: as the whole study gives it
/// with a sump there, and its chance, too.
TEST(ReachAlong, OnOneFanForAllCountsTheOthersWhereTheyStand) {
  plan::Job job = PlanBuilder::lShape().sump("a", 0, 2.6).sump("b", 0, 13.0).with([](plan::Job& j) {
    j.house.fill = plan::Fill::graded;
    j.design.shared_fan = true;
  });
  SuctionOptions options;
  options.cell_m = 0.2;
  options.threads = 1;
  options.along = true;
  options.along_of = "b";
  const auto at = [&](double chainage_m) {
    plan::Job moved = job;
    moved.design.sumps[1].chainage_m = chainage_m;
    const Study study = studied(moved);
    auto answer = studySuction(study, systemOf(study), options);
    EXPECT_TRUE(answer);
    return std::move(answer).value();
  };
  const SuctionAnswer first = at(13.0);
  ASSERT_NE(first.along, nullptr);
  ASSERT_EQ(first.along->others().size(), 1U);
  EXPECT_EQ(first.along->others()[0], first.sumps[0].sink);
  options.along = false;
  int looked = 0;
  for (const ReachPlace& place : first.along->places()) {
    if (place.place.ring != 0 || !place.read.on_floor || ++looked % 25 != 0) continue;
    const double off = std::abs(place.place.chainage_m - 2.6);
    if (off < 1.0) continue;  // in the other's pit
    const SuctionAnswer there = at(place.place.chainage_m);
    const MiddleCase& middle = there.middle[there.worst];
    EXPECT_NEAR(place.read.floor, middle.reach.floor, 0.01) << place.place.chainage_m;
    EXPECT_NEAR(place.read.flow_m3_s, middle.duty.legs[1].ground.m3PerS(),
                0.02 * place.read.flow_m3_s);
    ASSERT_TRUE(place.read.chance);
    EXPECT_NEAR(place.read.chance->mean_floor, there.mean_floor, 0.05) << place.place.chainage_m;
  }
  EXPECT_GT(looked, 100);
  // Another sump stands elsewhere: the curve before is no more true.
  options.along = true;
  options.reach = first.along;
  job.design.sumps[0].chainage_m = 4.0;
  const SuctionAnswer after = at(13.0);
  EXPECT_NE(after.along, first.along);
  EXPECT_EQ(after.along->others()[0], after.sumps[0].sink);
  job.design.sumps[0].chainage_m = 2.6;
  EXPECT_EQ(at(15.0).along, first.along) << "its own place does not matter";
}

/// Between solved places the curve misses by no more than it says, with room for an estimate.
TEST(ReachAlong, SaysWhatSolvingEachPlaceSays) {
  support::Random random(support::baseSeed());
  for (const plan::Job& job :
       {plan::Job(PlanBuilder::lShape()), cutHouse(), cutHouse(plan::BelowFloor::unknown)}) {
    const Study study = studied(job);
    ReachOptions options = coarse();
    options.cell_m = 0.1;
    const ReachAlong reach = reachOf(study, options);
    ASSERT_LE(reach.summary().miss, 2.0 * options.tolerance);
    for (int k = 0; k < 60; ++k) {
      const Place place{0, random.uniform(0.0, study.perimeter().length_m(0))};
      SCOPED_TRACE(place.chainage_m);
      const auto solved = floorSolvedAt(study, options, reach.summary().cell_m, place);
      const ReachRead read = reach.at(place);
      if (!solved) {
        // The edge of the floor is known to one step of the curve.
        const ReachRead before = reach.at({0, place.chainage_m - options.step_m});
        const ReachRead after = reach.at({0, place.chainage_m + options.step_m});
        EXPECT_TRUE(!read.on_floor || !before.on_floor || !after.on_floor);
        continue;
      }
      if (!read.on_floor) continue;
      // Where a wall through the fill is passed the share jumps within a few centimetres.
      const bool at_jump = std::abs(study.perimeter().pointAt(place).x - 5.0) < 0.25;
      if (reach.summary().jumps > 0 && at_jump) continue;
      EXPECT_NEAR(read.floor, *solved, 2.0 * options.tolerance);
    }
  }
}

TEST(ReachAlong, AWallThroughTheFillIsAJumpAndTheLesserCounts) {
  const Study study = studied(PlanBuilder::rectangle(12, 7).with([](plan::Job& j) {
    j.plan.rising_walls.push_back({"w", {{5, 0.35}, {5, 6.65}}});
  }));
  ReachOptions options = coarse(plan::Fill::clean_stone);
  options.ranges = suction::rangesOf(plan::Fill::clean_stone, study.job().house);
  options.ranges->footing_m2_s_pa = {1e-13, 1e-12};
  const ReachAlong reach = reachOf(study, options);
  EXPECT_EQ(reach.summary().jumps, 2);
  EXPECT_NEAR(reach.at({0, 2.5}).floor, 5.0 / 12.0, 0.06);
  EXPECT_NEAR(reach.at({0, 8.5}).floor, 7.0 / 12.0, 0.06);
}

TEST(ReachAlong, OfAnswersNobodyKnowsTheWorstCounts) {
  const Study unknown = studied(cutHouse(plan::BelowFloor::unknown));
  const Study stands = studied(cutHouse(plan::BelowFloor::own_footing));
  const Study none = studied(cutHouse(plan::BelowFloor::on_slab));
  const ReachAlong both = reachOf(unknown);
  EXPECT_EQ(both.summary().cases, 2);
  for (double s = 1.0; s < 37.0; s += 1.7) {
    const double least = std::min(reachOf(stands).at({0, s}).floor, reachOf(none).at({0, s}).floor);
    EXPECT_NEAR(both.at({0, s}).floor, least, 0.011) << s;
  }
}

TEST(ReachAlong, TheSameBitsWhateverTheThreads) {
  const Study study = studied(cutHouse(plan::BelowFloor::unknown));
  ReachOptions options = coarse();
  options.threads = 1;
  const ReachAlong one = reachOf(study, options);
  options.threads = 2;
  const ReachAlong two = reachOf(study, options);
  ASSERT_EQ(one.places().size(), two.places().size());
  for (std::size_t k = 0; k < one.places().size(); ++k) {
    EXPECT_EQ(one.places()[k].read.floor, two.places()[k].read.floor);
    EXPECT_EQ(one.places()[k].at_weak_pa, two.places()[k].at_weak_pa);
  }
}

TEST(ReachAlong, NoGranularLayerNoFigure) {
  const Study study = studied(PlanBuilder::rectangle(9, 7));
  const ReachAlong reach = reachOf(study, coarse(plan::Fill::none));
  EXPECT_EQ(reach.summary().state, ReachState::not_layered);
  EXPECT_FALSE(reach.at({0, 3.0}).on_floor);
  EXPECT_TRUE(reach.places().empty());
}

TEST(ReachAlong, StopsWhenTold) {
  const Study study = studied(cutHouse(plan::BelowFloor::unknown));
  ReachOptions options = coarse();
  options.going = [](double) { return false; };
  const auto reach = ReachAlong::of(study, systemOf(study), options);
  ASSERT_FALSE(reach);
  EXPECT_EQ(reach.problems()[0].message.id, "suction.chance.stopped");
}

TEST(ReachAlong, AnUnfairTargetIsRefused) {
  const Study study = studied(PlanBuilder::rectangle(9, 7));
  ReachOptions options = coarse();
  options.target = {1.0, 5.0};
  const auto reach = ReachAlong::of(study, systemOf(study), options);
  ASSERT_FALSE(reach);
  EXPECT_EQ(reach.problems()[0].message.id, "suction.target");
}

TEST(ReachAlong, FitsItsOwnWallOnly) {
  const Study study = studied(PlanBuilder::rectangle(9, 7));
  const ReachAlong reach = reachOf(study);
  EXPECT_TRUE(reach.fits(study.perimeter()));
  EXPECT_FALSE(reach.fits(studied(PlanBuilder::rectangle(9, 7.001)).perimeter()));
  EXPECT_FALSE(reach.fits(studied(PlanBuilder::lShape()).perimeter()));
}

TEST(ReachAlong, ChainagePastTheEndIsTheSamePlace) {
  const Study study = studied(PlanBuilder::lShape());
  const ReachAlong reach = reachOf(study);
  const double length = study.perimeter().length_m(0);
  EXPECT_EQ(reach.at({0, 3.1}).floor, reach.at({0, 3.1 + length}).floor);
  EXPECT_GT(reach.at({0, 3.1}).floor, 0.0);
}

std::shared_ptr<const ReachAlong> shared(ReachAlong reach) {
  return std::make_shared<const ReachAlong>(std::move(reach));
}

const ScoredPart& reachPart(const Assessment& a) {
  return *std::find_if(a.score.parts.begin(), a.score.parts.end(),
                       [](const ScoredPart& part) { return part.kind == rules::PartKind::reach; });
}

TEST(ReachAlong, TheScoreCountsItAndSaysWhy) {
  const Study bare = studied(cutHouse());
  const auto reach = shared(reachOf(bare));
  const Study study = bare.withReach(reach);
  EXPECT_EQ(reachPart(bare.assess({0, 14.0})).reason.id, "score.reach-not-yet");
  for (double s = 1.0; s < 37.0; s += 0.7) {
    const Assessment a = study.assess({0, s});
    const ScoredPart& part = reachPart(a);
    const ReachRead read = reach->at({0, s});
    EXPECT_TRUE(part.judged);
    EXPECT_NEAR(part.points, part.weight * std::min(1.0, read.floor / 0.95), 1e-9);
    EXPECT_EQ(part.reason.id, read.on_floor ? "score.reach" : "score.reach-off-floor");
    EXPECT_DOUBLE_EQ(a.score.total, study.scoreAt({0, s}));
    // 55 points were judged without it (margin, wall, room, hole), 90 with it.
    const Score& before = bare.assess({0, s}).score;
    if (before.advisory_cost == 0.0) {
      EXPECT_NEAR(90.0 * a.score.total, 55.0 * before.total + 100.0 * part.points, 1e-6);
    }
  }
  // What was there before does not know it.
  EXPECT_EQ(bare.reach(), nullptr);
}

TEST(ReachAlong, OfAnotherWallOrWithoutALayerItIsLeftOut) {
  const Study bare = studied(cutHouse());
  const auto other = shared(reachOf(studied(PlanBuilder::lShape())));
  EXPECT_EQ(bare.withReach(other).reach(), nullptr);
  EXPECT_EQ(bare.withReach(nullptr).reach(), nullptr);
  const Study none = bare.withReach(shared(reachOf(bare, coarse(plan::Fill::none))));
  const ScoredPart part = reachPart(none.assess({0, 14.0}));
  EXPECT_FALSE(part.judged);
  EXPECT_EQ(part.reason.id, "score.reach-not-layered");
  EXPECT_DOUBLE_EQ(none.scoreAt({0, 14.0}), bare.scoreAt({0, 14.0}));
}

suction::ChanceStudy chanceOf(const Study& study, const ReachOptions& options) {
  suction::ChanceOptions chance;
  chance.cell_m = options.cell_m;
  chance.target = options.target;
  chance.fan = flowOf(systemOf(study));
  return suction::ChanceStudy::of(study.job(), suction::rangesOf(*options.fill, study.job().house),
                                  chance)
      .value();
}

TEST(ReachAlong, TheChanceIsWhatTheGuessesSayOfAPlace) {
  const Study study = studied(cutHouse(plan::BelowFloor::unknown));
  const ReachOptions options = coarse(plan::Fill::unknown);
  const auto chance = chanceOf(study, options);
  const auto reach = reachOf(study, options).withChance(chance);
  ASSERT_TRUE(reach);
  EXPECT_TRUE(reach->hasChance());
  const double radius = suction::pitRadius_m(options.pit_m3);
  double worst = 0.0;
  for (double s = 0.9; s < 37.0; s += 1.3) {
    const auto asked = chance.ask({suction::sinkAt(study.perimeter(), {0, s}, radius)});
    const ReachRead read = reach->at({0, s});
    if (!read.on_floor) continue;  // the guesses move a pit by a cell or two where it takes that
    ASSERT_TRUE(asked) << s;
    worst = std::max(worst, std::abs(asked->mean_floor - read.chance->mean_floor));
    EXPECT_NEAR(asked->whole_floor, read.chance->whole_floor, 0.06) << s;
  }
  EXPECT_LT(worst, 0.03);
}

double mostFloor(const Study& study, const ReachAlong& reach) {
  double most = 0.0;
  for (double s = 0.0; s < study.perimeter().length_m(0); s += 0.05) {
    if (study.stateAt({0, s}) == allowedState(study)) most = std::max(most, reach.at({0, s}).floor);
  }
  return most;
}

/// A wall across, so that one side reaches more than the other: the best place is over there,
/// whatever earns points on this side.
TEST(ReachAlong, BestPlacesByReachAreWhereItIsGreatest) {
  const plan::Job job = PlanBuilder::rectangle(12, 7).with([](plan::Job& j) {
    j.plan.rising_walls.push_back({"w", {{4, 0.35}, {4, 6.65}}});
  });
  const Study bare = studied(job);
  ReachOptions options = coarse(plan::Fill::clean_stone);
  options.ranges = suction::rangesOf(plan::Fill::clean_stone, job.house);
  options.ranges->footing_m2_s_pa = {1e-13, 1e-12};
  const ReachAlong middle = reachOf(bare, options);
  const Study by_floor = bare.withReach(shared(middle), RankBy::reach);
  ASSERT_FALSE(by_floor.best().empty());
  const BestPlace& best = by_floor.best().front();
  EXPECT_GT(best.point.x, 4.0);
  EXPECT_NEAR(*best.floor, mostFloor(bare, middle), 0.01);
  EXPECT_FALSE(best.chance.has_value());
  for (std::size_t k = 1; k < by_floor.best().size(); ++k) {
    EXPECT_LE(*by_floor.best()[k].floor, *by_floor.best()[k - 1].floor + 1e-9);
  }
  suction::ChanceOptions asked;
  asked.cell_m = options.cell_m;
  asked.fan = flowOf(systemOf(bare));
  const auto chance = suction::ChanceStudy::of(job, *options.ranges, asked).value();
  const auto with = middle.withChance(chance);
  ASSERT_TRUE(with);
  const Study by_chance = bare.withReach(shared(*with), RankBy::reach);
  ASSERT_FALSE(by_chance.best().empty());
  EXPECT_GT(by_chance.best().front().point.x, 4.0);
  EXPECT_TRUE(by_chance.best().front().chance.has_value());
  EXPECT_EQ(reachPart(by_chance.assess({0, 9.0})).reason.id, "score.reach-chance");
}

TEST(ReachAlong, ChanceCanBeStopped) {
  const Study study = studied(PlanBuilder::rectangle(9, 7));
  const ReachOptions options = coarse();
  const auto stopped =
      reachOf(study, options).withChance(chanceOf(study, options), [](double) { return false; });
  ASSERT_FALSE(stopped);
  EXPECT_EQ(stopped.problems()[0].message.id, "suction.chance.stopped");
}

}  // namespace
}  // namespace sumpwright::siting
