// What the job says of suction is what is counted with. Houses, fans and readings are invented.

#include <algorithm>
#include <cmath>
#include <numeric>

#include "build/BuildUp.h"
#include "core/siting/Studied.h"
#include "plan/DesignEdits.h"
#include "plan/SuctionEdits.h"
#include "siting/RunDuty.h"
#include "siting/SuctionLive.h"
#include "siting/SuctionStudy.h"
#include "suction/ModelOf.h"

namespace sumpwright::siting {
namespace {

using support::PlanBuilder;

airflow::Fan inventedFan() {
  airflow::Fan fan{"law", "Invented fan", "", {base::Mark::own, "invented"}, {}};
  airflow::CurveLaw law;
  law.shut_off = base::Pressure::ofPa(400.0);
  law.free_flow = base::Flow::ofM3PerH(300.0);
  fan.curve = airflow::FanCurve::byLaw(law).value();
  return fan;
}

SuctionOptions coarsely(const plan::Job& job) {
  SuctionOptions options = suctionOptionsOf(job);
  options.cell_m = 0.25;
  options.threads = 1;
  options.propose_second = false;
  return options;
}

SuctionAnswer answered(const plan::Job& job, const SuctionOptions& options) {
  const Study study = studied(job);
  auto answer = studySuction(study, usualSystem(study.site(), inventedFan(), false), options);
  EXPECT_TRUE(answer) << answer.problems()[0].message.id;
  return std::move(answer).value();
}
SuctionAnswer answered(const plan::Job& job) { return answered(job, coarsely(job)); }
/// On the cells the readings were made on.
SuctionAnswer answeredFinely(const plan::Job& job) {
  SuctionOptions options = coarsely(job);
  options.cell_m = 0.1;
  return answered(job, options);
}

bool holds(const std::vector<base::Message>& messages, const std::string& id) {
  return std::any_of(messages.begin(), messages.end(),
                     [&](const base::Message& m) { return m.id == id; });
}

bool assumesIt(const SuctionAnswer& answer, const std::string& id) {
  return std::any_of(answer.assumptions.begin(), answer.assumptions.end(),
                     [&](const Assumption& a) { return a.what.id == id; });
}

PlanBuilder gradedHouse() {
  return PlanBuilder::rectangle(10, 8).sump("s", 0, 3.0).with([](plan::Job& j) {
    j.house.fill = plan::Fill::graded;
  });
}

TEST(SuctionFacts, TheJobSaysWhatIsAskedFor) {
  plan::Job job = gradedHouse();
  EXPECT_EQ(suctionOptionsOf(job).target.design_pa, suction::Target{}.design_pa);
  job.suction.target_pa = 0.5;
  EXPECT_EQ(suctionOptionsOf(job).target.limit_pa, 0.5) << "a limit never above its target";
  job.suction = {};
  job.suction.limit_pa = 8.0;
  EXPECT_EQ(suctionOptionsOf(job).target.design_pa, 8.0);
  job.suction.pit_l = 28.0;
  EXPECT_NEAR(suctionOptionsOf(job).pit_m3, 0.028, 1e-12);
  const auto larger = answered(job).sumps[0].sink.radius_m;
  EXPECT_NEAR(larger, suction::pitRadius_m(0.028), 1e-12);
  job.design.sumps[0].pit_l = 40.0;
  EXPECT_NEAR(answered(job).sumps[0].sink.radius_m, suction::pitRadius_m(0.040), 1e-12);
}

TEST(SuctionFacts, AGuessOfTheGroundTakesThePlaceOfThePreset) {
  plan::Job job = gradedHouse();
  job.suction.ground.permeability_m2 = plan::Spread{2e-9, 4e-9};
  job.suction.ground.joint_width_mm = plan::Spread{0.3, 0.4};
  const auto ranges = suction::rangesOf(job);
  EXPECT_EQ(ranges.permeability_m2, (suction::Range{2e-9, 4e-9}));
  EXPECT_NEAR(ranges.joint_width_m.low, 0.0003, 1e-15);
  EXPECT_EQ(ranges.thickness_m, suction::rangesOf(plan::Fill::graded, job.house).thickness_m);
  const auto answer = answered(job);
  for (const Assumption& one : answer.assumptions) {
    if (one.what.id != "suction.assumed.permeability") continue;
    EXPECT_EQ(one.source.text, "The job's own range");
  }
  const auto usual = answered(gradedHouse());
  EXPECT_LT(answer.flow_m3_s.high - answer.flow_m3_s.low,
            usual.flow_m3_s.high - usual.flow_m3_s.low);
}

TEST(SuctionFacts, PipeFanSpeedAndBendsAreThoseOfTheDesign) {
  plan::Job job = gradedHouse();
  job.design.pipe = {2.5, 6.0, 3, 4};
  job.design.fan.speed = 0.5;
  const Study study = studied(job);
  const SuctionSystem system = usualSystem(study.site(), inventedFan(), false);
  EXPECT_EQ(system.before.length_m, 2.5);
  EXPECT_EQ(system.after.length_m, 6.0);
  const auto bends = [](const airflow::Pipe& pipe) {
    int sum = 0;
    for (const auto& f : pipe.fittings) {
      if (f.kind == airflow::FittingKind::bend_90) sum += f.count;
    }
    return sum;
  };
  EXPECT_EQ(bends(system.before), 3);
  EXPECT_EQ(bends(system.after), 4);
  const auto has = [&](const SuctionSystem& s, const char* id) {
    return std::any_of(s.assumptions.begin(), s.assumptions.end(),
                       [&](const Assumption& a) { return a.what.id == id; });
  };
  EXPECT_TRUE(has(system, "suction.stated.pipe"));
  EXPECT_TRUE(has(system, "suction.stated.speed"));
  job.design.pipe.after_m.reset();
  const Study partly = studied(job);
  EXPECT_TRUE(has(usualSystem(partly.site(), inventedFan(), false), "suction.assumed.pipe"));
  // Half the speed is a quarter of the pressure (fan laws; textbook, from memory).
  plan::Job slow = gradedHouse();
  slow.design.fan.speed = 0.5;
  const auto full = answered(gradedHouse());
  const auto half = answered(slow);
  // Soil gas is heavier than the air curves are drawn for.
  const double heavier = airflow::density_kg_m3({}) / airflow::kFanDensity_kg_m3;
  EXPECT_LT(half.pit_pa->high, heavier * 100.0 + 1e-9);
  EXPECT_LT(half.flow_m3_s.middle, full.flow_m3_s.middle);
}

TEST(SuctionFacts, ThePipeIsThatOfTheRunAsDrawn) {
  plan::Job job = gradedHouse();
  ASSERT_FALSE(job.design.sumps.empty());
  plan::Sump& sump = job.design.sumps.front();
  ASSERT_EQ(sump.kind, plan::SumpKind::cored);
  sump.fan_place = plan::FanPlace::outside_high;
  sump.discharge = plan::Discharge{sump.ring, sump.chainage_m, 6.0};
  const Study study = studied(job);
  const auto counted = build::countedPipe(study.site(), sump, {sump.ring, sump.chainage_m}).value();
  SuctionSystem system = usualSystem(study.site(), inventedFan(), false);
  EXPECT_EQ(system.before.length_m, counted.before_m);
  EXPECT_EQ(system.after.length_m, counted.after_m);
  EXPECT_GT(system.before.length_m, 5.0);
  // What the job states wins.
  job.design.pipe.before_m = 2.5;
  system = usualSystem(studied(job).site(), inventedFan(), false);
  EXPECT_EQ(system.before.length_m, 2.5);
  EXPECT_EQ(system.after.length_m, counted.after_m);
}

TEST(SuctionFacts, DutyOfARunIsThatOfTheAnswerAndUnderTheMost) {
  const plan::Job job = gradedHouse();
  const std::string id = job.design.sumps.front().id;
  const auto answer = answered(job);
  const auto duty = dutyIn(answer, id);
  ASSERT_TRUE(duty);
  EXPECT_FALSE(duty->at_most);
  const auto& worst = answer.middle[answer.worst].duty;
  EXPECT_EQ(duty->flow.m3PerS(), worst.legs[0].total.m3PerS());
  EXPECT_EQ(duty->pit.pa(), worst.legs[0].pit.pa());
  EXPECT_FALSE(dutyIn(answer, "gone"));
  const SuctionSystem system = usualSystem(studied(job).site(), inventedFan(), false);
  const auto most = mostAir(system);
  ASSERT_TRUE(most);
  EXPECT_TRUE(most->at_most);
  EXPECT_GT(most->flow.m3PerS(), duty->flow.m3PerS());
  EXPECT_NEAR(most->pit.pa(), 0.0, 0.1);
  EXPECT_GT(most->speed_m_s, duty->speed_m_s);
  // Speeds over the limits are told: the same air through a thin pipe.
  SuctionSystem thin = system;
  thin.before.bore_m = thin.after.bore_m = 0.040;
  EXPECT_EQ(mostAir(thin)->verdict, PipeSpeed::condensate);
}

TEST(SuctionFacts, ASealNobodySpokeOfIsAlsoToldAsOpen) {
  const auto unknown = answered(gradedHouse());
  ASSERT_TRUE(unknown.leak);
  const auto& sealed_leg = unknown.middle[unknown.worst].duty.legs[0];
  const auto& open_leg = unknown.leak->duty.legs[0];
  EXPECT_EQ(sealed_leg.leak, base::Flow());
  EXPECT_GT(open_leg.leak, base::Flow());
  EXPECT_LT(open_leg.pit, sealed_leg.pit);
  EXPECT_LE(unknown.leak->reach.floor, unknown.middle[unknown.worst].reach.floor);
  EXPECT_TRUE(assumesIt(unknown, "suction.assumed.sealed"));

  const auto sealed = answered(
      gradedHouse().with([](plan::Job& j) { j.design.annulus = plan::AnnulusSeal::sealed; }));
  EXPECT_FALSE(sealed.leak);
  EXPECT_EQ(sealed.mean_floor, unknown.mean_floor);

  const auto open = answered(
      gradedHouse().with([](plan::Job& j) { j.design.annulus = plan::AnnulusSeal::not_sealed; }));
  EXPECT_FALSE(open.leak);
  EXPECT_LT(open.mean_floor, sealed.mean_floor);
  EXPECT_TRUE(holds(open.remarks, "airflow.annulus-leaks"));
  EXPECT_LT(open.pit_pa->middle, sealed.pit_pa->middle);
}

/// The pit's suction told of the flow is the one the duty point has, with a gap and without.
TEST(SuctionFacts, ThePitsSuctionIsThatOfTheDutyPoint) {
  for (const auto seal : {plan::AnnulusSeal::sealed, plan::AnnulusSeal::not_sealed}) {
    const Study study = studied(gradedHouse().with([&](plan::Job& j) { j.design.annulus = seal; }));
    const SuctionSystem system = usualSystem(study.site(), inventedFan(), false);
    for (const double resistance : {500.0, 5e3, 5e4}) {
      const auto duty = airflow::solveDuty(dutyOptions(system, {"s"}, {resistance}, {1e4}));
      EXPECT_NEAR(pitSuctionAt(system, duty.legs[0].ground).pa(), duty.legs[0].pit.pa(), 1e-4);
    }
  }
}

PlanBuilder twoSumps(bool shared) {
  return gradedHouse().sump("t", 0, 21.0).with([&](plan::Job& j) { j.design.shared_fan = shared; });
}

TEST(SuctionFacts, SumpsOnOneFanShareItsAir) {
  const auto apart = answered(twoSumps(false));
  const auto together = answered(twoSumps(true));
  EXPECT_TRUE(apart.shared.legs.empty());
  ASSERT_EQ(together.shared.legs.size(), 2U);
  const auto& duty = together.middle[together.worst].duty;
  ASSERT_EQ(duty.lines.size(), 1U);
  EXPECT_NEAR(duty.lines[0].flow.m3PerS(),
              duty.legs[0].total.m3PerS() + duty.legs[1].total.m3PerS(), 1e-9);
  EXPECT_LT(together.flow_m3_s.middle, apart.flow_m3_s.middle);
  EXPECT_LE(together.mean_floor, apart.mean_floor);
  EXPECT_TRUE(holds(together.shared.sentences, "suction.shared.leg"));
  EXPECT_TRUE(holds(suctionPaperLines(together).crew, "suction.line.shared"));
  EXPECT_FALSE(holds(suctionPaperLines(apart).crew, "suction.line.shared"));
}

/// Two legs into ground as unlike as a factor of a hundred: where the tight one counts, the leaky
/// one is trimmed.
TEST(SuctionFacts, TheLeakyLegIsTrimmedAndStuckOpenItRobsTheOther) {
  const Study study = studied(twoSumps(true));
  const SuctionSystem system = usualSystem(study.site(), inventedFan(), false);
  const auto tightPit = [](const airflow::DutySummary& duty) {
    return duty.legs[1].pit.pa() / 400;
  };
  const SharedFan shared = sharedFan(
      dutyOptions(system, {"leaky", "tight"}, {300.0, 0.0, 0.0, 3e4}, {0.0, 0.0}), tightPit);
  ASSERT_EQ(shared.legs.size(), 2U);
  EXPECT_TRUE(shared.trims);
  EXPECT_EQ(shared.legs[0].valve, airflow::ValvePosition::quarter);
  EXPECT_EQ(shared.legs[1].valve, airflow::ValvePosition::open);
  EXPECT_LT(shared.legs[0].pit, shared.legs[1].pit);
  EXPECT_GT(shared.legs[1].trimmed, shared.legs[1].pit);
  EXPECT_GT(shared.trimmed_held, shared.held);
  EXPECT_TRUE(holds(shared.sentences, "airflow.stuck-open"));
  const auto lesser = [](const airflow::DutySummary& duty) {
    return std::min(duty.legs[0].pit, duty.legs[1].pit).pa() / 400;
  };
  const SharedFan even =
      sharedFan(dutyOptions(system, {"a", "b"}, {3e3, 0.0, 0.0, 3e3}, {0.0, 0.0}), lesser);
  EXPECT_FALSE(even.trims);
  EXPECT_TRUE(holds(even.sentences, "suction.shared.even"));
}

PlanBuilder halfOfAPair(plan::PartyBelow below) {
  return gradedHouse()
      .wall(1,
            [&](plan::Wall& w) {
              w.kind = plan::WallKind::party;
              w.party_below = below;
            })
      .with([](plan::Job& j) { j.design.sumps[0].chainage_m = 8.0; });
}

TEST(SuctionFacts, AtAPartyWallTheFillEndsOrGoesOnAsSaid) {
  const auto both = answered(halfOfAPair(plan::PartyBelow::unknown));
  const auto cut = answered(halfOfAPair(plan::PartyBelow::cut));
  const auto open = answered(halfOfAPair(plan::PartyBelow::continuous));
  ASSERT_EQ(both.middle.size(), 2U);
  ASSERT_EQ(cut.middle.size(), 1U);
  ASSERT_EQ(open.middle.size(), 1U);
  EXPECT_EQ(cut.middle[0].reach.least.suction_pa, both.middle[0].reach.least.suction_pa);
  EXPECT_EQ(open.middle[0].reach.least.suction_pa, both.middle[1].reach.least.suction_pa);
  // Air from next door: more of it, and less suction in the pit.
  EXPECT_GT(open.middle[0].duty.legs[0].ground, cut.middle[0].duty.legs[0].ground);
  EXPECT_LT(open.middle[0].duty.legs[0].pit, cut.middle[0].duty.legs[0].pit);
  EXPECT_LE(both.mean_floor, std::min(cut.mean_floor, open.mean_floor));
  for (const auto* answer : {&both, &open}) {
    EXPECT_TRUE(holds(answer->cautions, "suction.caution.neighbour"));
    EXPECT_TRUE(holds(suctionPaperLines(*answer).client, "suction.line.neighbour"));
    EXPECT_TRUE(holds(suctionPaperLines(*answer).crew, "suction.line.party-far"));
  }
  EXPECT_FALSE(holds(cut.cautions, "suction.caution.neighbour"));
  const auto near = answered(halfOfAPair(plan::PartyBelow::unknown).with([](plan::Job& j) {
    j.design.sumps[0].chainage_m = 9.5;
  }));
  EXPECT_TRUE(holds(suctionPaperLines(near).crew, "suction.line.party-near"));
}

// ---- ground fitted to readings ----

const std::vector<geometry::Point> kHoles{
    {2.2, 2.6}, {5.0, 2.0}, {4.5, 5.5}, {8.5, 2.5}, {7.5, 6.8}};

/// A house whose test holes read what a ground of known figures gives.
plan::Job measuredHouse(const suction::Ground& truth, std::optional<double> flow_m3_s = 0.012) {
  plan::Job job = gradedHouse();
  const Study study = studied(job);
  const auto model = suction::modelOf(job, truth).value();
  const auto solver = suction::FieldSolver::of(model, {.cell_m = 0.1});
  const auto sink =
      suction::sinkOf(study.perimeter(), job.design.sumps[0], suction::pitRadius_m(kPit_m3));
  const auto unit = solver.unit(*sink);
  plan::PressureTest test;
  test.id = "pt";
  test.sump = "s";
  test.flow_m3_s = flow_m3_s;
  for (std::size_t k = 0; k < kHoles.size(); ++k) {
    const std::string id = "h" + std::to_string(k);
    job.plan.test_holes.push_back({id, "", kHoles[k]});
    test.readings.push_back(
        {id, 0.012 * *suction::sampleAt(solver.network(), unit->suction, kHoles[k]), {}});
  }
  job.suction.tests.push_back(test);
  return job;
}

suction::Ground trueGround() {
  suction::Ground truth = suction::rangesOf(gradedHouse().job()).middle();
  truth.permeability_m2 *= 3.0;
  truth.leak_ground_m_s_pa *= 0.5;
  truth.exposed_m_s_pa *= 0.5;
  truth.joint_width_m *= std::cbrt(0.5);
  return truth;
}

TEST(SuctionFacts, MeasuredSuctionTakesThePlaceOfGuesses) {
  const plan::Job job = measuredHouse(trueGround());
  const auto guessed = answeredFinely(gradedHouse());
  const auto fitted = answeredFinely(job);
  ASSERT_TRUE(fitted.fitted && fitted.fitted->usable());
  EXPECT_FALSE(guessed.fitted);
  const suction::Fit& fit = fitted.fitted->fit;
  // A prior of a factor of ten draws them a little.
  EXPECT_NEAR(fit.scales.transmissivity, 3.0, 0.03);
  EXPECT_NEAR(fit.scales.leakage, 0.5, 0.005);
  EXPECT_EQ(fitted.fitted->readings, 5);
  for (const suction::Misfit& hole : fit.holes) EXPECT_FALSE(hole.outlier) << hole.hole;
  // The guesses agree with each other far better than without readings.
  const auto width = [](const Band& b) { return std::log(b.high / b.low); };
  EXPECT_LT(width(fitted.flow_m3_s), 0.3 * width(guessed.flow_m3_s));
  EXPECT_TRUE(assumesIt(fitted, "suction.assumed.fitted"));
  EXPECT_FALSE(assumesIt(fitted, "suction.assumed.permeability"));
  EXPECT_TRUE(holds(fitted.cautions, "suction.caution.prediction-fitted"));
  // Predicted with the fitted ground is what the true ground would give.
  const auto truth = [&] {
    plan::Job known = gradedHouse();
    const auto pin = [](double v) { return plan::Spread{v, v}; };
    const suction::Ground g = trueGround();
    known.suction.ground = {pin(g.permeability_m2),    pin(g.thickness_m),
                            pin(g.leak_ground_m_s_pa), pin(1000.0 * g.joint_width_m),
                            pin(g.footing_m2_s_pa),    pin(g.exposed_m_s_pa)};
    return answeredFinely(known);
  }();
  EXPECT_NEAR(fitted.middle[0].reach.least.suction_pa, truth.middle[0].reach.least.suction_pa,
              0.02 * truth.middle[0].reach.least.suction_pa);
  EXPECT_GT(truth.flow_m3_s.middle, 0.9 * fitted.flow_m3_s.low);
  EXPECT_LT(truth.flow_m3_s.middle, 1.1 * fitted.flow_m3_s.high);
}

TEST(SuctionFacts, TestsAreLeftOutWhereNobodyWantsThem) {
  plan::Job job = measuredHouse(trueGround());
  auto options = coarsely(job);
  options.use_tests = false;
  EXPECT_FALSE(answered(job, options).fitted);
  job.suction.use_tests = false;
  EXPECT_FALSE(answered(job).fitted);
  EXPECT_EQ(answered(job).mean_floor, answered(gradedHouse()).mean_floor);
}

TEST(SuctionFacts, WithoutAFlowOnlyTheShapeIsTold) {
  const auto answer = answered(measuredHouse(trueGround(), std::nullopt));
  ASSERT_TRUE(answer.fitted && answer.fitted->usable());
  EXPECT_FALSE(answer.fitted->fit.flow_known);
  EXPECT_TRUE(holds(answer.fitted->sentences, "suction.fit.no-flow"));
  EXPECT_FALSE(holds(answer.fitted->sentences, "suction.fitted.permeability"));
  EXPECT_TRUE(assumesIt(answer, "suction.assumed.fitted-shape"));
  // How much air the ground gives is as open as before.
  const auto guessed = answered(gradedHouse());
  const auto width = [](const Band& b) { return std::log(b.high / b.low); };
  EXPECT_GT(width(answer.flow_m3_s), 0.5 * width(guessed.flow_m3_s));
}

TEST(SuctionFacts, AHoleThatContradictsTheOthersIsNamed) {
  plan::Job job = measuredHouse(trueGround());
  job.plan.test_holes[2].name = "hall cupboard";
  job.suction.tests[0].readings[2].suction_pa *= 0.1;
  const auto answer = answered(job);
  ASSERT_TRUE(answer.fitted);
  EXPECT_TRUE(answer.fitted->fit.holes[2].outlier);
  EXPECT_EQ(answer.fitted->fit.holes[2].hole, "hall cupboard");
  EXPECT_TRUE(holds(answer.fitted->sentences, "suction.fitted.hole-outlier-low"));
}

/// What is read on a site, behind walls that shut the fill off: whatever it is, there is a
/// prediction, and what it rests on is said.
TEST(SuctionFacts, NoReadingsTakeThePredictionAway) {
  plan::Job job = gradedHouse().with([](plan::Job& j) {
    j.plan.inner_walls.push_back({"w", {{5.5, 0}, {5.5, 8}}, 0.1, plan::BelowFloor::own_footing});
    j.plan.test_holes = {{"h0", "", {3.5, 3.5}}, {"h1", "", {4.5, 6.0}}, {"h2", "", {8.5, 6.0}}};
  });
  job.suction.tests = {{"pt", "", "s", "", 0.012, {}, {}, ""}};
  const std::vector<std::vector<double>> all{{12, 6, 1.5}, {0, 0, 0},  {12, 6, -5},
                                             {12, 6, 70},  {12, 6, 0}, {900, 6, 7}};
  for (const auto& read : all) {
    auto& readings = job.suction.tests[0].readings;
    readings.clear();
    for (std::size_t k = 0; k < read.size(); ++k) {
      readings.push_back({"h" + std::to_string(k), read[k], {}});
    }
    SCOPED_TRACE(read[0] + 1e-3 * read[2]);
    const auto answer = answered(job);
    EXPECT_EQ(answer.state, SuctionState::answered);
    ASSERT_TRUE(answer.fitted);
    EXPECT_NE(answer.fitted->usable(), holds(answer.fitted->sentences, "suction.fitted.not-used"));
  }
}

/// A wall whose footing nobody knows, and readings as the fill behind it gives them.
plan::Job measuredAcross(const std::vector<geometry::Point>& holes, bool stands) {
  plan::Job job = gradedHouse().with([](plan::Job& j) {
    j.plan.inner_walls.push_back({"w", {{5.5, 0}, {5.5, 8}}, 0.1, plan::BelowFloor::unknown});
  });
  const Study study = studied(job);
  const auto model = suction::modelOf(job, suction::rangesOf(job).middle(), {stands, false});
  const auto solver = suction::FieldSolver::of(*model, {.cell_m = 0.1});
  const auto unit = solver.unit(
      *suction::sinkOf(study.perimeter(), job.design.sumps[0], suction::pitRadius_m(kPit_m3)));
  plan::PressureTest test{"pt", "", "s", "", 0.012, {}, {}, ""};
  for (std::size_t k = 0; k < holes.size(); ++k) {
    const std::string id = "h" + std::to_string(k);
    job.plan.test_holes.push_back({id, "", holes[k]});
    test.readings.push_back(
        {id, 0.012 * *suction::sampleAt(solver.network(), unit->suction, holes[k]), {}});
  }
  job.suction.tests.push_back(test);
  return job;
}

/// Holes on both sides of it tell whether a wall goes through the fill; on one side they do not,
/// and each answer then has the ground that it would take.
TEST(SuctionFacts, ReadingsTellWhetherAWallStandsWhereTheyCan) {
  const std::vector<geometry::Point> both{
      {2.2, 3.2}, {4.6, 2.2}, {4.0, 6.0}, {7.0, 2.0}, {8.5, 6.0}};
  for (const bool stands : {true, false}) {
    const auto answer = answeredFinely(measuredAcross(both, stands));
    ASSERT_TRUE(answer.fitted && answer.fitted->usable());
    EXPECT_EQ(answer.fitted->choices.unknown_walls_stand, stands);
    EXPECT_NEAR(answer.fitted->fit.scales.transmissivity, 1.0, 0.02);
    EXPECT_TRUE(holds(answer.fitted->sentences, "suction.fitted.case-ruled-out"));
    ASSERT_EQ(answer.middle.size(), 1U) << "the other answer counts no more";
    EXPECT_EQ(answer.middle[0].choices.unknown_walls_stand, stands);
  }
  const std::vector<geometry::Point> near{{2.2, 3.2}, {4.6, 2.2}, {4.0, 6.0}};
  const auto open = answeredFinely(measuredAcross(near, true));
  ASSERT_TRUE(open.fitted && open.fitted->usable());
  EXPECT_TRUE(holds(open.fitted->sentences, "suction.fitted.case-open"));
  ASSERT_EQ(open.middle.size(), 2U);
  ASSERT_EQ(open.fitted->cases.size(), 2U);
  // Without a wall it takes a leakier ground to hold as little back: not that of the other answer
  // (by 5 %; the least that counts as another is an own figure).
  const auto lambda = [&](std::size_t k) { return open.fitted->cases[k].fit.lambda_m.value; };
  EXPECT_GT(std::abs(std::log(lambda(0) / lambda(1))), 0.03);
}

/// The live field and the answer count with one fit.
TEST(SuctionFacts, AFitThatIsThereIsNotMadeAgain) {
  const plan::Job job = measuredHouse(trueGround());
  const Study study = studied(job);
  const auto live =
      SuctionLive::of(study, usualSystem(study.site(), inventedFan(), false), coarsely(job));
  ASSERT_TRUE(live && live->fitted());
  SuctionOptions options = coarsely(job);
  options.fitted = live->fitted();
  const auto with = answered(job, options);
  const auto without = answered(job);
  EXPECT_EQ(with.mean_floor, without.mean_floor);
  EXPECT_EQ(with.fitted->sentences, without.fitted->sentences);
  options.fitted->fit.steps = -7;
  EXPECT_EQ(answered(job, options).fitted->fit.steps, -7) << "it is that one";
}

/// Two runs at different flows say what one says; a run without flow beside one with is left out.
TEST(SuctionFacts, SeveralTestsAreFittedTogether) {
  plan::Job job = measuredHouse(trueGround());
  plan::PressureTest second = job.suction.tests[0];
  second.id = "pt2";
  *second.flow_m3_s *= 2.0;
  for (plan::HoleReading& reading : second.readings) reading.suction_pa *= 2.0;
  job.suction.tests.push_back(second);
  const auto once = answered(measuredHouse(trueGround()));
  const auto twice = answered(job);
  EXPECT_EQ(twice.fitted->readings, 10);
  EXPECT_NEAR(twice.fitted->fit.scales.transmissivity, once.fitted->fit.scales.transmissivity,
              0.05 * once.fitted->fit.scales.transmissivity);
  EXPECT_LT(twice.fitted->fit.transmissivity_m3_s_pa.sd_ln,
            once.fitted->fit.transmissivity_m3_s_pa.sd_ln);
  job.suction.tests[1].flow_m3_s.reset();
  const auto left_out = answered(job);
  EXPECT_EQ(left_out.fitted->readings, 5);
  EXPECT_TRUE(holds(left_out.fitted->sentences, "suction.fit.left-out"));
}

/// The readings were taken where the sump stood: moved later, or taken away, it changes nothing.
TEST(SuctionFacts, AMovedSumpLeavesItsTestWhereItWas) {
  plan::Job job = measuredHouse(trueGround());
  const auto before = answered(job);
  EXPECT_TRUE(holds(before.fitted->sentences, "suction.fitted.stood-unknown"));
  const auto expectAlike = [&](const SuctionAnswer& answer) {
    ASSERT_TRUE(answer.fitted && answer.fitted->usable());
    EXPECT_EQ(answer.fitted->fit.scales.transmissivity, before.fitted->fit.scales.transmissivity);
    EXPECT_EQ(answer.fitted->fit.scales.leakage, before.fitted->fit.scales.leakage);
    EXPECT_TRUE(holds(answer.fitted->sentences, "suction.fitted.stood"));
    EXPECT_FALSE(holds(answer.fitted->sentences, "suction.fitted.stood-unknown"));
  };
  plan::Job moved = plan::moveSump(job, "s", 0, 21.0).value();
  expectAlike(answered(moved));
  moved.design.sumps[0].id = "another";
  moved.suction.tests[0].sump.clear();
  expectAlike(answered(moved));
  // Without it the fit is of a sump that was never tested.
  moved.suction.tests[0].stood.reset();
  const auto spoilt = answered(moved);
  EXPECT_GT(std::abs(std::log(spoilt.fitted->fit.scales.transmissivity /
                              before.fitted->fit.scales.transmissivity)),
            0.3);
  EXPECT_TRUE(holds(spoilt.fitted->sentences, "suction.fit.misfit"));
  EXPECT_FALSE(holds(before.fitted->sentences, "suction.fit.misfit"));
}

/// What can stand beside a reading is of the test's own sump and flow, and of no fit to it.
TEST(SuctionFacts, WhatWasExpectedInATestIsOfItsOwnSumpAndFlow) {
  plan::Job job = measuredHouse(trueGround());
  job.suction.tests[0].stood = plan::placeOf(job.design.sumps[0]);
  const auto before = answered(job);
  ASSERT_EQ(before.expected.size(), 1U);
  const ExpectedTest& test = before.expected[0];
  EXPECT_EQ(test.flow_m3_s, *job.suction.tests[0].flow_m3_s);
  ASSERT_EQ(test.holes.size(), job.plan.test_holes.size());
  EXPECT_FALSE(test.in("nowhere"));
  // Of the middle of the ranges, leakier than the true ground: a fit would have met the reading.
  const std::string hole = job.suction.tests[0].readings[0].hole;
  EXPECT_LT(*test.in(hole), 0.9 * job.suction.tests[0].readings[0].suction_pa);
  plan::Job moved = plan::moveSump(job, "s", 0, 21.0).value();
  moved.suction.tests[0].readings[0].suction_pa *= 2.0;
  moved.design.fan.speed = 0.5;
  EXPECT_EQ(answered(moved).expected[0].in(hole), test.in(hole));
  moved.suction.use_tests = false;
  EXPECT_EQ(answered(moved).expected[0].in(hole), test.in(hole));
  *moved.suction.tests[0].flow_m3_s *= 2.0;
  EXPECT_NEAR(*answered(moved).expected[0].in(hole), 2.0 * *test.in(hole), 1e-9);
  moved.suction.tests[0].flow_m3_s.reset();
  EXPECT_TRUE(answered(moved).expected.empty());
}

TEST(SuctionFacts, ATestWhoseSumpStoodInNoFillIsLeftOutAndSaid) {
  plan::Job job = measuredHouse(trueGround());
  plan::FloorZone zone;
  zone.id = "void";
  zone.kind = plan::FloorKind::suspended_timber;
  zone.outline_m = {{0, 0}, {4, 0}, {4, 2}, {0, 2}};
  plan::FloorZone slab;
  slab.id = "slab";
  slab.kind = plan::FloorKind::ground_bearing_slab;
  slab.outline_m = {{0, 2}, {4, 2}, {4, 0}, {10, 0}, {10, 8}, {0, 8}};
  job.plan.floor_zones = {zone, slab};
  job.suction.tests[0].stood = plan::SumpPlace{0, 0.0, geometry::Point{2, 1}};
  const auto answer = answered(job);
  ASSERT_TRUE(answer.fitted);
  EXPECT_FALSE(answer.fitted->usable());
  EXPECT_TRUE(holds(answer.fitted->sentences, "suction.fit.sump-off-floor"));
}

TEST(SuctionFacts, ATestOfNoSumpIsSaidAndTellsNothing) {
  plan::Job job = measuredHouse(trueGround());
  job.suction.tests[0].sump.clear();
  EXPECT_TRUE(answered(job).fitted->usable()) << "there is only one";
  job.design.sumps.push_back(job.design.sumps[0]);
  job.design.sumps[1].id = "t";
  job.design.sumps[1].chainage_m = 21.0;
  const auto answer = answered(job);
  ASSERT_TRUE(answer.fitted);
  EXPECT_FALSE(answer.fitted->usable());
  EXPECT_TRUE(holds(answer.fitted->sentences, "suction.fitted.no-sump"));
  EXPECT_TRUE(assumesIt(answer, "suction.assumed.permeability"));
}

// ---- lines for the papers ----

TEST(SuctionLines, SayWhatTheHouseAsksFor) {
  plan::Job job = gradedHouse().with([](plan::Job& j) {
    j.plan.test_holes.push_back({"h", "", {4, 4}});
    for (plan::Room& room : j.plan.rooms) room.old_tiles = plan::YesNo::no;
  });
  const auto plain = suctionPaperLines(answered(job));
  EXPECT_TRUE(holds(plain.client, "suction.line.holes-consent"));
  EXPECT_FALSE(holds(plain.client, "suction.line.neighbour"));
  EXPECT_TRUE(holds(plain.crew, "suction.line.annulus"));
  EXPECT_TRUE(holds(plain.crew, "suction.line.holes-where"));
  EXPECT_TRUE(holds(plain.crew, "suction.line.holes-patch"));
  EXPECT_FALSE(holds(plain.crew, "suction.line.hole-not-there"));
  EXPECT_FALSE(holds(plain.crew, "suction.line.internal"));
  job.plan.rooms[0].old_tiles = plan::YesNo::unknown;
  job.house.year_built = 1975;
  job.design.sumps.push_back({});
  job.design.sumps[1].id = "i";
  job.design.sumps[1].kind = plan::SumpKind::internal;
  job.design.sumps[1].at_m = geometry::Point{5, 4};
  const auto more = suctionPaperLines(answered(job));
  EXPECT_TRUE(holds(more.crew, "suction.line.hole-not-there"));
  EXPECT_TRUE(holds(more.crew, "suction.line.internal"));
  EXPECT_TRUE(holds(more.client, "suction.line.internal-client"));
  EXPECT_TRUE(holds(more.crew, "suction.line.internal-not-there")) << "old tiles may lie there";
  plan::Job seen = job;
  for (plan::Room& room : seen.plan.rooms) room.old_tiles = plan::YesNo::no;
  EXPECT_FALSE(holds(suctionPaperLines(answered(seen)).crew, "suction.line.internal-not-there"));
  job.house.fill = plan::Fill::none;
  const auto clay = answered(job);
  EXPECT_EQ(clay.state, SuctionState::not_layered);
  EXPECT_TRUE(holds(suctionPaperLines(clay).crew, "suction.line.no-layer"));
}

/// Underside of the floor 0.275 m down, as in the bungalow among the samples.
PlanBuilder buriedHouse() {
  return gradedHouse().with([](plan::Job& j) {
    j.house.slab_m = 0.15;
    j.house.screed_m = 0.065;
    j.house.insulation_m = 0.06;
    j.house.ground_level_m = -0.15;
  });
}

TEST(SuctionLines, SayWhereTheFoundationStandsFreeAndOnlyThere) {
  const plan::Job buried = buriedHouse();
  EXPECT_FALSE(holds(suctionPaperLines(answered(buried)).crew, "suction.line.exposed"));
  plan::Job free = buried;
  free.plan.rings[0].walls[2].ground_points = {{0.0, -0.275, {}}, {10.0, -0.675, {}}};
  const auto lines = suctionPaperLines(answered(free)).crew;
  const auto line = std::find_if(lines.begin(), lines.end(), [](const base::Message& m) {
    return m.id == "suction.line.exposed";
  });
  ASSERT_NE(line, lines.end());
  // The ground falls by 0.4 m over 10 m of the wall; the floor begins 0.35 m in from its corners.
  const auto metresOf = [&](std::size_t k) {
    return std::get<base::Quantity>(line->args[k].value).value;
  };
  EXPECT_EQ(std::get<std::string>(line->args[0].value), "C-D");
  EXPECT_NEAR(metresOf(1), 9.3, 1e-6);
  EXPECT_NEAR(metresOf(2), 0.2, 1e-6);
}

/// Nobody has looked into the trench of a drain: both answers are worked out and told.
TEST(SuctionFacts, ADrainUnderTheFloorIsAskedBothWays) {
  const plan::Job job = gradedHouse()
                            .service("wc", plan::ServiceKind::drain, 1, 4.0)
                            .run("wc", {{12, 4}, {10, 4}, {3, 4}});
  const auto answer = answered(job);
  ASSERT_EQ(answer.middle.size(), 2U);
  EXPECT_EQ(answer.middle[0].label.id, "suction.case.trenches-filled");
  EXPECT_EQ(answer.middle[1].label.id, "suction.case.trenches-open");
  EXPECT_TRUE(assumesIt(answer, "suction.assumed.trenches"));
  EXPECT_NE(answer.middle[0].duty.lines[0].flow, answer.middle[1].duty.lines[0].flow);
  EXPECT_FALSE(assumesIt(answered(gradedHouse()), "suction.assumed.trenches"));
}

/// One underside for the drill section and for what stands free.
TEST(SuctionLines, TheFoundationStandsFreeFromTheDrillSectionsUnderside) {
  const plan::Job job = buriedHouse();
  const Study study = studied(job);
  const double underside = build::buildUpAt(study.site(), {0, 3.0}).underside_m();
  EXPECT_NEAR(underside, -0.275, 1e-12);
  for (const double below : {-0.001, 0.001}) {
    plan::Job level = job;
    for (plan::Wall& wall : level.plan.rings[0].walls) wall.ground_level_m = underside + below;
    EXPECT_EQ(holds(suctionPaperLines(answered(level)).crew, "suction.line.exposed"), below < 0.0);
  }
}

}  // namespace
}  // namespace sumpwright::siting
