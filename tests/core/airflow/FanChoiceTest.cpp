#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <iterator>

#include "airflow/FanChoice.h"

namespace sumpwright::airflow {
namespace {

using base::Flow;
using base::Pressure;
using testing::ElementsAre;
using testing::IsEmpty;

/// The invented classes that come with the program: low, medium, high suction.
std::vector<Fan> demoFans() {
  std::ifstream file(SUMPWRIGHT_SOURCE_DIR "/resources/fans/demo-fans.json");
  return readFanTable(std::string{std::istreambuf_iterator<char>(file), {}}).value().fans;
}

FanChoiceOptions floorOf(double ground, double corner_share, double needed_pa) {
  FanChoiceOptions options;
  Leg leg;
  leg.sump = "S1";
  leg.pipe.length_m = 6.0;
  leg.pipe.fittings = {{FittingKind::sharp_inlet, 1, {}}, {FittingKind::bend_90, 3, {}}};
  options.system.legs = {leg};
  FanLine line;
  line.pipe.fittings = {{FittingKind::exit, 1, {}}};
  options.system.lines = {line};
  options.system.ground_pa_s_m3 = {ground};
  options.watch = {{"by the sump", {0.9 * ground}, {}, Pressure::ofPa(needed_pa)},
                   {"the far corner", {corner_share * ground}, {}, Pressure::ofPa(needed_pa)}};
  return options;
}

std::vector<std::string> order(const std::vector<Fan>& fans, const FanChoice& choice) {
  std::vector<std::string> out;
  for (const FanVerdict& verdict : choice.ranked) out.push_back(fans[verdict.fan].id);
  return out;
}

TEST(FanChoice, TheLeastPowerThatHoldsTheFloorComesFirst) {
  const std::vector<Fan> fans = demoFans();
  const FanChoice choice = chooseFan(fans, floorOf(4000.0, 0.1, 5.0));
  EXPECT_THAT(order(fans, choice), ElementsAre("demo-low", "demo-medium", "demo-high"));
  const FanVerdict& first = choice.ranked[0];
  EXPECT_EQ(first.suits, FanSuits::yes);
  EXPECT_EQ(first.weakest, 1U);
  EXPECT_GE(first.least, Pressure::ofPa(5.0));
  EXPECT_NEAR(first.least.pa(), 400.0 * first.duty.legs[0].ground.m3PerS(), 1e-9);
  EXPECT_EQ(first.reasons[0].id, "airflow.choice.least-power");
  EXPECT_EQ(first.reasons[1].id, "airflow.choice.holds");
}

TEST(FanChoice, TightGroundNeedsTheStrongFan) {
  const std::vector<Fan> fans = demoFans();
  const FanChoice choice = chooseFan(fans, floorOf(60000.0, 0.03, 20.0));
  EXPECT_THAT(order(fans, choice), ElementsAre("demo-high", "demo-medium", "demo-low"));
  EXPECT_EQ(choice.ranked[0].suits, FanSuits::yes);
  EXPECT_EQ(choice.ranked[0].reasons[0].id, "airflow.choice.only-one");
  EXPECT_EQ(choice.ranked[1].suits, FanSuits::no);
  EXPECT_EQ(choice.ranked[1].reasons[0].id, "airflow.choice.falls-short");
  EXPECT_GT(choice.ranked[1].least_share, choice.ranked[2].least_share);
}

TEST(FanChoice, WhereNoneSuitsTheNearestIsNamed) {
  const std::vector<Fan> fans = demoFans();
  const FanChoice choice = chooseFan(fans, floorOf(4000.0, 0.001, 5.0));
  for (const FanVerdict& verdict : choice.ranked) EXPECT_EQ(verdict.suits, FanSuits::no);
  EXPECT_EQ(choice.ranked[0].reasons[0].id, "airflow.choice.none");
}

TEST(FanChoice, ANoisyFanComesAfterAQuietOne) {
  const std::vector<Fan> fans = demoFans();
  FanChoiceOptions options = floorOf(800.0, 0.2, 5.0);
  options.system.limits.noise_m_s = 5.5;
  const FanChoice choice = chooseFan(fans, options);
  ASSERT_EQ(choice.ranked[0].suits, FanSuits::yes);
  EXPECT_EQ(fans[choice.ranked[0].fan].id, "demo-high");
  EXPECT_EQ(choice.ranked[1].suits, FanSuits::noisy);
  // Quiet by nobody: said so.
  options.system.limits.noise_m_s = 1.0;
  EXPECT_EQ(chooseFan(fans, options).ranked[0].reasons[0].id, "airflow.choice.least-power-noisy");
  // Condensate carried up is no fan for this pipe.
  options.system.limits.condensate_m_s = 1.0;
  EXPECT_EQ(chooseFan(fans, options).ranked[0].suits, FanSuits::no);
}

TEST(FanChoice, WithoutWatchPointsPowerDecides) {
  const std::vector<Fan> fans = demoFans();
  FanChoiceOptions options = floorOf(60000.0, 0.1, 5.0);
  options.watch.clear();
  const FanChoice choice = chooseFan(fans, options);
  EXPECT_THAT(order(fans, choice), ElementsAre("demo-low", "demo-medium", "demo-high"));
  EXPECT_EQ(choice.ranked[0].least_share, 1.0);
}

/// Share held as a floor of ten equal parts, each with its own share of the pit's suction.
double tenths(const DutySummary& duty, double ground, double needed_pa) {
  int held = 0;
  for (int part = 1; part <= 10; ++part) {
    if (0.01 * part * ground * duty.legs[0].ground.m3PerS() >= needed_pa) ++held;
  }
  return 0.1 * held;
}

TEST(FanChoice, TheShareOfTheFloorDecidesWhereItIsAskedFor) {
  const std::vector<Fan> fans = demoFans();
  FanChoiceOptions options = floorOf(20000.0, 0.1, 5.0);
  options.watch.clear();
  options.held_needed = 0.95;
  double needed_pa = 1.0;
  options.held = [&](const DutySummary& duty) { return tenths(duty, 20000.0, needed_pa); };
  const FanChoice easy = chooseFan(fans, options);
  EXPECT_EQ(easy.ranked[0].suits, FanSuits::yes);
  EXPECT_EQ(easy.ranked[0].held, 1.0);
  needed_pa = 15.0;  // too much for any of them: the one that holds most comes first
  const FanChoice hard = chooseFan(fans, options);
  EXPECT_EQ(fans[hard.ranked[0].fan].id, "demo-high");
  EXPECT_EQ(hard.ranked[0].reasons[0].id, "airflow.choice.none");
  EXPECT_EQ(hard.ranked[0].reasons[1].id, "airflow.choice.floor-short");
  for (std::size_t k = 1; k < hard.ranked.size(); ++k) {
    EXPECT_GE(*hard.ranked[k - 1].held, *hard.ranked[k].held);
    EXPECT_EQ(hard.ranked[k].suits, FanSuits::no);
  }
}

/// Four times the power for a quarter of a percent of the floor is no better fan.
TEST(FanChoice, OfThoseThatHoldAsMuchToWholePercentTheLeastPowerIsNearest) {
  const std::vector<Fan> fans = demoFans();
  FanChoiceOptions options = floorOf(20000.0, 0.1, 5.0);
  options.watch.clear();
  options.held_needed = 0.95;
  options.held = [](const DutySummary& duty) { return 0.75 + 1e-6 * duty.lines[0].fan.pa(); };
  EXPECT_THAT(order(fans, chooseFan(fans, options)),
              ElementsAre("demo-low", "demo-medium", "demo-high"));
}

TEST(FanChoice, OfSeveralAnswersTheWorstCounts) {
  const std::vector<Fan> fans = demoFans();
  std::vector<FanChoiceOptions> cases;
  for (const double ground : {4000.0, 60000.0, 20000.0}) {
    cases.push_back(floorOf(ground, 0.1, 5.0));
    cases.back().watch.clear();
    cases.back().held_needed = 0.95;
    cases.back().held = [](const DutySummary& duty) { return tenths(duty, 4000.0, 5.0); };
  }
  const FanChoice choice = chooseFan(fans, cases);
  for (const FanVerdict& verdict : choice.ranked) {
    EXPECT_EQ(verdict.which, 1U) << "the least air";
    const FanChoice alone = chooseFan(std::span(&fans[verdict.fan], 1), cases[1]);
    EXPECT_EQ(verdict.held, alone.ranked[0].held);
    EXPECT_EQ(verdict.duty.lines, alone.ranked[0].duty.lines);
  }
  EXPECT_THAT(chooseFan(fans, std::span<const FanChoiceOptions>()).ranked, IsEmpty());
}

TEST(FanChoice, FaultsOfTheInputAreNamed) {
  FanChoiceOptions options = floorOf(4000.0, 0.1, 5.0);
  options.watch[1].needed = Pressure();
  options.watch[0].per_flow_pa_s_m3.clear();
  options.system.air.pressure_pa = 0.0;
  const FanChoice choice = chooseFan(demoFans(), options);
  EXPECT_THAT(choice.ranked, IsEmpty());
  std::vector<std::string> found;
  for (const base::Problem& problem : choice.problems)
    found.push_back(problem.message.id + " " + problem.pointer);
  EXPECT_THAT(found, ElementsAre("airflow.input.air /system/air", "airflow.input.watch /watch/0",
                                 "airflow.input.watch /watch/1"));
  EXPECT_THAT(chooseFan({}, floorOf(4000.0, 0.1, 5.0)).ranked, IsEmpty());
}

}  // namespace
}  // namespace sumpwright::airflow
