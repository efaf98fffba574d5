#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

#include "suction/Fit.h"
#include "suction/Presets.h"
#include "suction/Sensitivity.h"
#include "support/Fields.h"
#include "support/PlanBuilder.h"

namespace sumpwright::suction {

namespace {

using support::box;
using support::PlanBuilder;
using support::region;

constexpr double kFlow = 60.0 / 3600.0;
const Sink kPit{{3, 4}, 0.25};

SuctionModel ground(double t, double lambda_m, double joint = 0.0) {
  SuctionModel model;
  model.regions = {region(box(0, 0, 12, 10), joint)};
  model.layer = {t, t / (lambda_m * lambda_m)};
  return model;
}

/// What holes of a ground would read.
Measured measuredOn(const SuctionModel& truth, const std::vector<Point>& holes) {
  const FieldSolver solver = FieldSolver::of(truth, {.cell_m = 0.1});
  const auto unit = solver.unit(kPit);
  Measured measured{kPit, kFlow, kFlow * unit->resistance_pa_s_m3 + 7.0};
  for (std::size_t k = 0; k < holes.size(); ++k) {
    measured.readings.push_back({"h" + std::to_string(k), holes[k],
                                 kFlow * *sampleAt(solver.network(), unit->suction, holes[k])});
  }
  return measured;
}

const std::vector<Point> kSpread{{3, 5.5}, {5, 4}, {6, 8}, {8, 2}, {11, 9}};

bool says(const Fit& fit, const std::string& id) {
  return std::any_of(fit.statements.begin(), fit.statements.end(),
                     [&](const base::Message& m) { return m.id == id; });
}

TEST(SuctionFit, SensitivityIsTheDifferenceOfTwoSolves) {
  SuctionModel model = ground(8e-5, 4.0, 3e-6);
  model.barriers = {{"w", {{6, 0}, {6, 10}}, 1e-5}};
  const FieldSolver at = FieldSolver::of(model, {.cell_m = 0.2});
  const auto unit = at.unit(kPit);
  struct Case {
    GroundPart part;
    double Scales::*scale;
  };
  for (const Case& c :
       {Case{GroundPart::transmissivity, &Scales::transmissivity},
        Case{GroundPart::leakage, &Scales::leakage}, Case{GroundPart::joints, &Scales::edges}}) {
    const auto change = sensitivity(at.network(), at.factor(), {}, unit->suction, c.part);
    Scales up;
    Scales down;
    up.*c.scale = std::exp(1e-4);
    down.*c.scale = std::exp(-1e-4);
    Factoriser factoriser(at.network());
    Factor higher;
    Factor lower;
    ASSERT_EQ(factoriser.factor(at.network(), up, higher), FactorState::made);
    ASSERT_EQ(factoriser.factor(at.network(), down, lower), FactorState::made);
    const auto more = higher.solve(unit->port.weights);
    const auto less = lower.solve(unit->port.weights);
    for (std::size_t k = 0; k < change.size(); k += 97) {
      EXPECT_NEAR(change[k], (more[k] - less[k]) / 2e-4, 1e-5 * unit->resistance_pa_s_m3);
    }
  }
}

TEST(SuctionFit, FindsTheGroundAgainFromAFarGuess) {
  const Measured measured = measuredOn(ground(8e-5, 4.0), kSpread);
  FitOptions options;
  options.prior_sd = 1e3;  // as good as none
  const Fit fit = fitGround(ground(3e-4, 1.5), measured, options);
  EXPECT_EQ(fit.state, FitState::settled);
  EXPECT_NEAR(fit.transmissivity_m3_s_pa.value / 8e-5, 1.0, 1e-6);
  EXPECT_NEAR(fit.lambda_m.value / 4.0, 1.0, 1e-6);
  EXPECT_LT(fit.steps, 25);
  EXPECT_NEAR(*fit.pit_excess_pa, 7.0, 1e-3);
  for (const Misfit& hole : fit.holes) {
    EXPECT_NEAR(hole.off_sd, 0.0, 1e-4);
    EXPECT_FALSE(hole.outlier);
  }
  EXPECT_TRUE(fit.statements.empty());
  // The plan predicted anew with it reads what was measured.
  const FieldSolver anew = FieldSolver::of(ground(3e-4, 1.5), {.cell_m = 0.1}, fit.scales);
  const auto unit = anew.unit(kPit);
  EXPECT_NEAR(kFlow * *sampleAt(anew.network(), unit->suction, {8, 2}),
              measured.readings[3].suction_pa, 1e-4);
}

TEST(SuctionFit, BandsHoldTheTruthAndAreNarrowWhereHolesAreSpread) {
  Measured measured = measuredOn(ground(8e-5, 4.0), kSpread);
  const double noise[5] = {0.04, -0.03, 0.05, -0.02, 0.01};
  for (std::size_t k = 0; k < 5; ++k) measured.readings[k].suction_pa *= 1.0 + noise[k];
  const Fit fit = fitGround(ground(1e-4, 3.0), measured, {});
  EXPECT_LE(fit.transmissivity_m3_s_pa.low, 8e-5);
  EXPECT_GE(fit.transmissivity_m3_s_pa.high, 8e-5);
  EXPECT_LT(fit.transmissivity_m3_s_pa.high / fit.transmissivity_m3_s_pa.low, 2.0);
  EXPECT_LE(fit.lambda_m.low, 4.0);
  EXPECT_GE(fit.lambda_m.high, 4.0);
}

TEST(SuctionFit, AHoleMoreThatAgreesNeverWidensTheBand) {
  const SuctionModel truth = ground(8e-5, 4.0);
  double before = 1e9;
  for (std::size_t count = 2; count <= kSpread.size(); ++count) {
    const std::vector<Point> holes(kSpread.begin(),
                                   kSpread.begin() + static_cast<std::ptrdiff_t>(count));
    const Fit fit = fitGround(truth, measuredOn(truth, holes), {});
    const double width = fit.transmissivity_m3_s_pa.high / fit.transmissivity_m3_s_pa.low;
    EXPECT_LT(width, before) << count << " holes";
    before = width;
  }
}

/// Readings off by as much as their errors allow: the bands of 95 % hold the truth about as often.
TEST(SuctionFit, BandsHoldTheTruthAsOftenAsTheySay) {
  const SuctionModel truth = ground(8e-5, 4.0);
  const Measured exact = measuredOn(truth, {{3, 5.5}, {6, 8}, {11, 9}});
  std::mt19937 dice(7);
  const auto share = [&] { return (static_cast<double>(dice() >> 4U) + 0.5) * 0x1.0p-28; };
  FitOptions options;
  options.cell_m = 0.25;
  constexpr int kTrials = 60;
  int held = 0;
  for (int k = 0; k < kTrials; ++k) {
    Measured measured = exact;
    for (Reading& reading : measured.readings) {
      reading.sd_pa = readingSd_pa(reading.suction_pa);
      reading.suction_pa += *reading.sd_pa * std::sqrt(-2.0 * std::log(share())) *
                            std::cos(2.0 * std::numbers::pi * share());
    }
    const Fit fit = fitGround(truth, measured, options);
    const Banded& t = fit.transmissivity_m3_s_pa;
    held += t.low <= 8e-5 && 8e-5 <= t.high ? 1 : 0;
  }
  EXPECT_GE(held, 0.88 * kTrials);
}

/// Standard deviations of the linearised problem on this floor with five spread holes and lambda
/// 4 m: 0.07 of ln T, 0.03 of ln lambda, correlation 0.94 (derived).
TEST(SuctionFit, LinearisedStandardDeviationsAreThoseDerived) {
  FitOptions options;
  options.prior_sd = 1e3;
  const Fit fit = fitGround(ground(8e-5, 4.0), measuredOn(ground(8e-5, 4.0), kSpread), options);
  EXPECT_NEAR(fit.transmissivity_m3_s_pa.sd_ln, 0.07, 0.01);
  EXPECT_NEAR(fit.lambda_m.sd_ln, 0.03, 0.006);
  const double sd_t = fit.transmissivity_m3_s_pa.sd_ln;
  const double with_lambda = 0.5 * (sd_t * sd_t - fit.correlation * sd_t * fit.leak_m_s_pa.sd_ln);
  EXPECT_NEAR(with_lambda / (sd_t * fit.lambda_m.sd_ln), 0.94, 0.02);
}

TEST(SuctionFit, SaysWhatItCannotTell) {
  const SuctionModel truth = ground(8e-5, 4.0);
  Measured measured = measuredOn(truth, {{10.5, 8.5}, {11, 9}, {11, 8}});
  Fit fit = fitGround(truth, measured, {});
  EXPECT_TRUE(says(fit, "suction.fit.tied"));
  measured = measuredOn(truth, {{3, 5.5}, {11, 9}});
  fit = fitGround(truth, measured, {});
  EXPECT_TRUE(says(fit, "suction.fit.few"));
  EXPECT_FALSE(says(fit, "suction.fit.tied"));
  measured.flow_m3_s.reset();
  EXPECT_TRUE(says(fitGround(truth, measured, {}), "suction.fit.no-flow"));
  measured.readings.pop_back();
  fit = fitGround(truth, measured, {});
  EXPECT_EQ(fit.state, FitState::too_few);
  EXPECT_TRUE(says(fit, "suction.fit.too-few"));
}

/// Without the flow the leakage length is still told: suctions scale alike.
TEST(SuctionFit, WithoutFlowTheShapeIsStillTold) {
  Measured measured = measuredOn(ground(8e-5, 4.0), kSpread);
  measured.flow_m3_s.reset();
  FitOptions options;
  options.prior_sd = 1e3;
  const Fit fit = fitGround(ground(1e-4, 2.0), measured, options);
  EXPECT_NEAR(fit.lambda_m.value / 4.0, 1.0, 1e-5);
}

TEST(SuctionFit, AHoleBehindABlockedCellStandsOut) {
  Measured measured = measuredOn(ground(8e-5, 4.0), kSpread);
  measured.readings[2].suction_pa = 0.4;
  const Fit fit = fitGround(ground(1e-4, 3.0), measured, {});
  for (const Misfit& hole : fit.holes) EXPECT_EQ(hole.outlier, hole.hole == "h2") << hole.hole;
  EXPECT_TRUE(says(fit, "suction.fit.outlier"));
}

/// Of three readings one may be a slip of the pen: what the other two say is enough to tell.
TEST(SuctionFit, AmongThreeASlipOfThePenStandsOutAndIsLeftOut) {
  const SuctionModel truth = ground(8e-5, 4.0);
  Measured measured = measuredOn(truth, {{3, 5.5}, {6, 8}, {11, 9}});
  measured.readings[2].suction_pa *= 100.0;
  measured.pit_pa.reset();
  const Fit fit = fitGround(ground(1e-4, 3.0), measured, {});
  ASSERT_EQ(fit.holes.size(), 3U);
  EXPECT_TRUE(fit.holes[2].outlier);
  EXPECT_FALSE(fit.holes[0].outlier || fit.holes[1].outlier);
  EXPECT_TRUE(fit.usable());
  EXPECT_NEAR(std::log(fit.transmissivity_m3_s_pa.value / 8e-5), 0.0, 0.3);
  EXPECT_NEAR(std::log(fit.holes[2].fitted_pa / (0.01 * fit.holes[2].measured_pa)), 0.0, 0.3);
}

/// Two of three that go together whichever is taken out: none is called wrong.
TEST(SuctionFit, WhichOfThreeIsOddIsNotGuessed) {
  const SuctionModel model = ground(8e-5, 4.0);
  Measured measured = measuredOn(model, {{6, 8}, {6.5, 8}, {3, 5.6}});
  measured.pit_pa.reset();
  measured.readings[1].suction_pa = 0.3 * measured.readings[0].suction_pa;
  const Fit fit = fitGround(model, measured, {});
  for (const Misfit& hole : fit.holes) EXPECT_FALSE(hole.outlier) << hole.hole;
  EXPECT_TRUE(says(fit, "suction.fit.suspect"));
  EXPECT_TRUE(says(fit, "suction.fit.misfit") || says(fit, "suction.fit.contradictory"));
}

TEST(SuctionFit, AHoleWithoutSuctionSaysThatThereIsLittle) {
  const SuctionModel truth = ground(8e-5, 1.0);
  Measured measured = measuredOn(truth, {{3, 5.5}, {5, 4}, {11, 9}});
  ASSERT_LT(measured.readings[2].suction_pa, kGaugeStep_pa);
  measured.readings[2].suction_pa = 0.0;
  const Fit fit = fitGround(ground(1e-4, 3.0), measured, {});
  EXPECT_EQ(fit.state, FitState::settled);
  EXPECT_NEAR(fit.lambda_m.value, 1.0, 0.15);
  EXPECT_LT(fit.holes[2].fitted_pa, kGaugeStep_pa);
  EXPECT_FALSE(fit.holes[2].outlier);
  // It is told from a hole at the gauge's step: any less will do as well.
  measured.readings[2].suction_pa = 0.2;
  EXPECT_EQ(fitGround(ground(1e-4, 3.0), measured, {}).lambda_m.value, fit.lambda_m.value);
}

/// Nothing anywhere, less than nothing, and readings that contradict each other: what is fitted
/// stays a ground that can be.
TEST(SuctionFit, WhateverIsReadTheGroundStaysOne) {
  const std::vector<std::vector<double>> all{{0, 0, 0},   {12, 6, -5},        {12, 6, 70},
                                             {900, 6, 7}, {4000, 4000, 4000}, {0, 0, 3000}};
  const SuctionModel model = ground(1e-6, 3.0, 3e-6);
  for (const auto& read : all) {
    Measured measured = measuredOn(model, {{3, 5.5}, {6, 8}, {11, 9}});
    for (std::size_t k = 0; k < read.size(); ++k) measured.readings[k].suction_pa = read[k];
    const Fit fit = fitGround(model, measured, {});
    SCOPED_TRACE(read[0] + 1e-3 * read[2]);
    EXPECT_GE(fit.transmissivity_m3_s_pa.value, 0.999 * kTransmissivities_m3_s_pa.low);
    EXPECT_LE(fit.transmissivity_m3_s_pa.value, 1.001 * kTransmissivities_m3_s_pa.high);
    EXPECT_GE(fit.leak_m_s_pa.value, 0.999 * kLeakages_m_s_pa.low);
    EXPECT_LE(fit.leak_m_s_pa.value, 1.001 * kLeakages_m_s_pa.high);
    EXPECT_TRUE(fit.usable() || says(fit, "suction.fit.contradictory"));
  }
}

TEST(SuctionFit, AReadingAboveThePitsOwnIsLeftOutAndSaid) {
  Measured measured = measuredOn(ground(8e-5, 4.0), kSpread);
  measured.readings[1].suction_pa = 2.0 * *measured.pit_pa;
  const Fit fit = fitGround(ground(1e-4, 3.0), measured, {});
  EXPECT_EQ(fit.holes.size(), 4U);
  EXPECT_TRUE(says(fit, "suction.fit.not-read"));
  EXPECT_NEAR(fit.lambda_m.value, 4.0, 0.1);
}

/// Grounds that leak at joints and soil in any proportion, as wide as nobody knows them: the bands
/// of the leakage and of the one length made of it hold the truth about as often as they say.
TEST(SuctionFit, BandsHoldTheTruthHoweverItLeaks) {
  const SuctionModel guess = ground(1e-5, 6.0, 3e-6);
  std::mt19937 dice(11);
  const auto normal = [&] {
    const auto share = [&] { return (static_cast<double>(dice() >> 4U) + 0.5) * 0x1.0p-28; };
    const double radius = std::sqrt(-2.0 * std::log(share()));
    return radius * std::cos(2.0 * std::numbers::pi * share());
  };
  constexpr int kTrials = 60;
  int lambda = 0, leak = 0, fill = 0;
  for (int k = 0; k < kTrials; ++k) {
    const double t = 1e-5 * std::exp(1.3 * normal());
    const double soil = 1e-5 / 36.0 * std::exp(1.7 * normal());
    const double joint = 3e-6 * std::exp(1.4 * normal());
    const SuctionModel truth = ground(t, std::sqrt(t / soil), joint);
    Measured measured = measuredOn(truth, {{3, 6.5}, {6, 8}, {11, 9}, {9, 2}});
    for (Reading& reading : measured.readings) {
      reading.suction_pa += readingSd_pa(reading.suction_pa) * normal();
    }
    const Fit fit = fitGround(guess, measured, {.cell_m = 0.2});
    const double all = soil + joint * 44.0 / 120.0;  // over the floor of 12 m by 10 m
    const auto holds = [](const Banded& b, double v) { return b.low <= v && v <= b.high ? 1 : 0; };
    lambda += holds(fit.lambda_m, std::sqrt(t / all));
    leak += holds(fit.leak_m_s_pa, all);
    fill += holds(fit.transmissivity_m3_s_pa, t);
  }
  RecordProperty("lambda", lambda);
  EXPECT_GE(lambda, 0.85 * kTrials);
  EXPECT_GE(leak, 0.85 * kTrials);
  EXPECT_GE(fill, 0.85 * kTrials);
}

TEST(SuctionFit, JointsAndLeakageArePartedByHolesAtTheEdge) {
  const SuctionModel truth = ground(8e-5, 6.0, 8e-6);
  std::vector<Point> holes = kSpread;
  holes.push_back({0.4, 9.6});
  holes.push_back({11.7, 0.4});
  FitOptions options;
  options.prior_sd = 1e3;
  options.split_sd = 1e3;
  SuctionModel guess = ground(1e-4, 4.0, 3e-6);
  const Fit fit = fitGround(guess, measuredOn(truth, holes), options);
  EXPECT_NEAR(fit.transmissivity_m3_s_pa.value / 8e-5, 1.0, 1e-4);
  EXPECT_NEAR(fit.scales.edges * 3e-6 / 8e-6, 1.0, 1e-3);
}

double spreadOf(const SuctionModel& model, const std::vector<Point>& holes) {
  FitOptions options;
  options.prior_sd = 2.3;
  const Fit fit = fitGround(model, measuredOn(model, holes), options);
  const double t = fit.transmissivity_m3_s_pa.sd_ln;
  const double l = fit.leak_m_s_pa.sd_ln;
  return t * l * std::sqrt(1.0 - fit.correlation * fit.correlation);
}

TEST(SuctionHoles, TeachMoreThanARowOfThemOnOneSide) {
  const SuctionModel model = ground(8e-5, 4.0);
  const FieldSolver solver = FieldSolver::of(model, {.cell_m = 0.1});
  const HoleOptions options;
  const auto proposed = proposeHoles(solver, kPit, kFlow, options, {});
  ASSERT_EQ(proposed.size(), 3U);
  std::vector<Point> places;
  for (const ProposedHole& hole : proposed) {
    places.push_back(hole.at);
    EXPECT_GT(hole.gain, 0.0);
    EXPECT_GE(geometry::distance(hole.at, kPit.at), options.from_sump_m);
    EXPECT_GT(hole.expected_pa, 0.0);
  }
  EXPECT_LT(spreadOf(model, places), 0.5 * spreadOf(model, {{10, 8}, {10.5, 8.5}, {11, 9}}));
  EXPECT_LT(spreadOf(model, places), 1.05 * spreadOf(model, {{3, 5.5}, {6, 8}, {11, 9}}));
}

/// Rooms one beside the other, and a hole that is there already.
TEST(SuctionHoles, StandApartAndInRoomsOfTheirOwn) {
  SuctionModel model = ground(8e-5, 4.0, 3e-6);
  model.barriers = {{"w", {{6, 0}, {6, 10}}, 1e-6}};
  const FieldSolver solver = FieldSolver::of(model, {.cell_m = 0.1});
  HoleOptions options;
  options.room_of = [](Point p) { return (p.x < 6.0 ? 0 : 2) + (p.y < 5.0 ? 0 : 1); };
  const double apart = std::hypot(12.0, 10.0) / 6.0;
  for (const int count : {1, 2, 3, 4, 5, 9}) {
    options.count = count;
    options.there.clear();
    const auto proposed = proposeHoles(solver, kPit, kFlow, options, {});
    ASSERT_EQ(proposed.size(), static_cast<std::size_t>(std::clamp(count, 2, 5)));
    std::vector<int> rooms;
    for (std::size_t k = 0; k < proposed.size(); ++k) {
      rooms.push_back(options.room_of(proposed[k].at));
      for (std::size_t l = 0; l < k; ++l) {
        EXPECT_GE(geometry::distance(proposed[k].at, proposed[l].at), apart - 0.05);
      }
    }
    std::sort(rooms.begin(), rooms.end());
    rooms.erase(std::unique(rooms.begin(), rooms.end()), rooms.end());
    EXPECT_GE(rooms.size(), std::min<std::size_t>(3, proposed.size()));
    options.there = {proposed[0].at};
    for (const ProposedHole& more : proposeHoles(solver, kPit, kFlow, options, {})) {
      EXPECT_GE(geometry::distance(more.at, proposed[0].at), apart - 0.05);
    }
  }
}

TEST(SuctionHoles, KeepOutOfWhereNoneMayBe) {
  const SuctionModel model = ground(8e-5, 4.0);
  const FieldSolver solver = FieldSolver::of(model, {.cell_m = 0.1});
  const auto proposed =
      proposeHoles(solver, kPit, kFlow, {.count = 5}, [](Point p) { return p.x < 6.0; });
  ASSERT_EQ(proposed.size(), 5U);
  for (const ProposedHole& hole : proposed) EXPECT_LT(hole.at.x, 6.0);
  EXPECT_TRUE(proposeHoles(solver, kPit, kFlow, {}, [](Point) { return false; }).empty());
}

TEST(SuctionHoles, NoDrillSaysWhy) {
  const plan::Job job = PlanBuilder::rectangle(10, 8)
                            .noRooms()
                            .room("bath", plan::RoomUse::bathroom, {{1, 1}, {3, 1}, {3, 3}, {1, 3}})
                            .room("living", plan::RoomUse::living, {{3, 1}, {9, 1}, {9, 7}, {3, 7}})
                            .heatingPipe("pipe", {{4, 1}, {4, 7}})
                            .fitting("sink", plan::FittingKind::sink, {8, 6})
                            .service("water", plan::ServiceKind::water, 0, 6.0)
                            .run("water", {{6, 0}, {6, 4}});
  const auto why = [&](Point p) {
    const auto reason = noDrill(job.plan, p);
    return reason ? reason->id : std::string();
  };
  EXPECT_EQ(why({2, 2}), "suction.hole.wet-room");
  EXPECT_EQ(why({4.2, 5}), "suction.hole.heating-pipe");
  EXPECT_EQ(why({8.1, 6.2}), "suction.hole.fitting");
  EXPECT_EQ(why({6.2, 3}), "suction.hole.service");
  EXPECT_EQ(why({5, 5}), "");
  plan::Plan heated = job.plan;
  heated.floor_zones[0].underfloor_heating = true;
  EXPECT_EQ(noDrill(heated, {5, 5})->id, "suction.hole.underfloor-heating");
}

TEST(SuctionHoles, NoneThroughOldTilesOrWhereNobodyLookedInAnOldFloor) {
  plan::Job job = PlanBuilder::rectangle(10, 8).noRooms().room("living", plan::RoomUse::living,
                                                               {{3, 1}, {9, 1}, {9, 7}, {3, 7}});
  const auto why = [&] {
    const auto reason = noDrill(job, {5, 5});
    return reason ? reason->id : std::string();
  };
  job.house.year_built = 1999;
  EXPECT_EQ(why(), "suction.hole.old-tiles-unknown");
  job.house.year_built.reset();
  EXPECT_EQ(why(), "suction.hole.old-tiles-unknown");
  job.plan.floor_zones[0].year_built = 2003;
  EXPECT_EQ(why(), "") << "an extension's floor has a year of its own";
  job.plan.rooms[0].old_tiles = plan::YesNo::yes;
  EXPECT_EQ(why(), "suction.hole.old-tiles");
  job.plan.floor_zones[0].year_built.reset();
  job.plan.rooms[0].old_tiles = plan::YesNo::no;
  EXPECT_EQ(why(), "");
}

TEST(SuctionGuesses, NarrowedOnesLieInTheBandAndKeepTheCorrelation) {
  const GroundRanges ranges = rangesOf(plan::Fill::graded, {});
  Narrowed narrowed;
  narrowed.mean = {std::log(2.0), std::log(0.5), 0.0, 0.0};
  narrowed.covariance[0] = {0.4 * 0.4, 0.9 * 0.4 * 0.6, 0.0, 0.0};
  narrowed.covariance[1] = {0.9 * 0.4 * 0.6, 0.6 * 0.6, 0.0, 0.0};
  const Ground middle = ranges.middle();
  EXPECT_NEAR(middleOf(ranges, narrowed).permeability_m2, 2.0 * middle.permeability_m2, 1e-20);
  double t1 = 0.0, t2 = 0.0, l1 = 0.0, l2 = 0.0, tl = 0.0;
  int within = 0;
  constexpr int kCount = 1024;
  for (const Ground& draw : drawsOf(ranges, narrowed, kCount)) {
    const Scales scales = scalesFrom(middle, draw);
    const double t = std::log(scales.transmissivity / 2.0) / 0.4;
    const double l = std::log(scales.leakage / 0.5) / 0.6;
    EXPECT_NEAR(scales.edges, scales.leakage, 1e-9 * scales.leakage) << "joints go with it";
    t1 += t / kCount, t2 += t * t / kCount, l1 += l / kCount, l2 += l * l / kCount;
    tl += t * l / kCount;
    within += std::abs(t) < 1.96 ? 1 : 0;
  }
  EXPECT_NEAR(t1, 0.0, 0.01);
  EXPECT_NEAR(l1, 0.0, 0.05);
  EXPECT_NEAR(t2, 1.0, 0.02);
  EXPECT_NEAR(l2, 1.0, 0.05);
  EXPECT_NEAR(tl, 0.9, 0.03);
  EXPECT_NEAR(within / static_cast<double>(kCount), 0.95, 0.005);
}

TEST(SuctionGuesses, WithoutAFlowOnlyTheRatioIsNarrow) {
  const GroundRanges ranges = rangesOf(plan::Fill::graded, {});
  Narrowed narrowed;
  narrowed.mean = {std::log(5.0), std::log(0.5), 0.0, 0.0};
  narrowed.covariance[0] = {2.0, 2.0, 0.0, 0.0};
  narrowed.covariance[1] = {2.0, 2.0001, 0.0, 0.0};
  narrowed.flow_known = false;
  const Ground middle = ranges.middle();
  double low = 1e9, high = 0.0;
  for (const Ground& draw : drawsOf(ranges, narrowed, 64)) {
    const Scales scales = scalesFrom(middle, draw);
    EXPECT_NEAR(scales.leakage / scales.transmissivity, 0.1, 0.005);
    low = std::min(low, scales.transmissivity);
    high = std::max(high, scales.transmissivity);
  }
  EXPECT_GT(high / low, 50.0) << "as wide as the ranges";
}

}  // namespace

}  // namespace sumpwright::suction
