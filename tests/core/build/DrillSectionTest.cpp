#include <gtest/gtest.h>

#include <cmath>

#include "build/DrillSection.h"
#include "build/Figures.h"
#include "build/SectionWords.h"
#include "core/build/Sites.h"

namespace sumpwright::build {

namespace {

constexpr double kMicron = 1e-6;

bool noted(const DrillSection& section, const std::string& id) {
  return std::any_of(section.notes.begin(), section.notes.end(),
                     [&](const base::Message& m) { return m.id == id; });
}

void expectAllPass(const DrillSection& section) {
  for (const Margin& margin : section.margins) {
    EXPECT_TRUE(margin.passes) << limitName(margin.kind) << ' ' << margin.spare();
  }
}

TEST(DrillSection, FitsWithAllMarginsKept) {
  const DrillSection section = drillSection(knownBuildUp(), {});
  EXPECT_EQ(section.fit, Fit::fits);
  EXPECT_EQ(section.start, Start::below_ground);
  ASSERT_TRUE(section.bore);
  expectAllPass(section);
  EXPECT_GE(section.bore->fall, kLeastFall - 1e-12);
  EXPECT_FALSE(section.clash);
  EXPECT_EQ(section.verdict.id, "section.verdict.fits");
}

TEST(DrillSection, DeepFillTakesTheUsualFallAndTheShallowestDigWithEnoughToSpare) {
  BuildUp up = knownBuildUp(-1.2, -1.2);
  up.hardcore_m = 0.8;
  const DrillSection section = drillSection(up, {});
  EXPECT_NEAR(degreesOfFall(section.bore->fall), 5.0, 1e-9);
  double least = 1.0;
  const Limit slab = limitsOf(up, Start::below_ground, -1.2, kLeastFall).front();
  least = slab.slack(section.bore->entry_m, section.bore->fall);
  EXPECT_NEAR(least, kEnough_m, 1e-9);
  EXPECT_NEAR(section.dig_m,
              -0.15 - (section.bore->entry_m - halfUpright_m(*section.bore, 0.127)) + kBelowHole_m,
              1e-12);
}

TEST(DrillSection, TightFillPutsTheHoleInTheMiddleOfItsRoom) {
  const DrillSection section = drillSection(knownBuildUp(), {});
  const FeasibleSet set(limitsOf(section.up, Start::below_ground, -0.75, kLeastFall));
  const auto range = set.entries(section.bore->fall);
  EXPECT_LT(range.high_m - range.low_m, 2.0 * kEnough_m);
  EXPECT_NEAR(section.bore->entry_m, 0.5 * (range.low_m + range.high_m), 1e-12);
}

/// The worked build-up with so much room between slab and footing for a hole that falls 5 degrees.
BuildUp withRoom(double room_m) {
  BuildUp up = knownBuildUp();
  const auto ceiling =
      footingCeiling(limitsOf(up, Start::below_ground, 0.0, kLeastFall), kUsualFall, kUsualFall);
  up.footing_low_m = up.footing_high_m = ceiling->footing_top_m - room_m;
  return up;
}

TEST(DrillSection, GivesUpFallOnlyWhereRoomIsShort) {
  const auto fall = [](double room_m) {
    const DrillSection section = drillSection(withRoom(room_m), {});
    EXPECT_EQ(section.fit, Fit::fits);
    return degreesOfFall(section.bore->fall);
  };
  EXPECT_NEAR(fall(0.030), 5.0, 1e-9);  // 15 mm to spare to either side
  EXPECT_NEAR(fall(0.020), 5.0, 1e-9);  // just enough
  EXPECT_LT(fall(0.016), 4.9);          // less fall, so that 10 mm stay
  EXPECT_GT(fall(0.016), 2.0);
  // Neither is enough: the same share of both is left.
  BuildUp up = withRoom(0.005);
  const DrillSection section = drillSection(up, {});
  const double t = section.bore->fall;
  EXPECT_GT(t, kLeastFall);
  EXPECT_LT(t, kSureFall);
  const FeasibleSet set(limitsOf(up, Start::below_ground, up.footing_high_m, kLeastFall));
  const double spare = 0.5 * set.tightest(t).room_m;
  EXPECT_NEAR(spare / kWander_m, (t - kLeastFall) / (kSureFall - kLeastFall), 1e-6);
}

TEST(DrillSection, FallsTwoDegreesWhereTheFootingDecides) {
  const DrillSection section = drillSection(knownBuildUp(-0.75, -0.35), {});
  EXPECT_EQ(section.fit, Fit::fits_if_footing);
  EXPECT_GE(degreesOfFall(section.bore->fall), 2.0 - 1e-9);
  // Where only a gentler fall fits over the lowest footing, that.
  const auto least =
      footingCeiling(limitsOf(section.up, Start::below_ground, 0.0, kLeastFall), kUsualFall);
  const double just_under = least->footing_top_m - 1e-4;
  const DrillSection gentle = drillSection(knownBuildUp(just_under, -0.35), {});
  EXPECT_EQ(gentle.fit, Fit::fits_if_footing);
  EXPECT_LT(degreesOfFall(gentle.bore->fall), 2.0);
}

TEST(DrillSection, SaysTheFootingTopItNeeds) {
  const DrillSection section = drillSection(knownBuildUp(-0.75, -0.35), {});
  EXPECT_EQ(section.fit, Fit::fits_if_footing);
  ASSERT_TRUE(section.footing_top_m);
  // A little lower than level coring would need, -0.315 - 2 (0.0635 + 0.05), since it falls.
  EXPECT_LT(*section.footing_top_m, -0.542);
  EXPECT_GT(*section.footing_top_m, -0.546);
  const Margin* footing = marginOf(section, LimitKind::footing);
  EXPECT_FALSE(footing->passes);
  // With the top there, it just fits; a little higher only with less fall.
  EXPECT_EQ(drillSection(knownBuildUp(-0.75, *section.footing_top_m - kMicron), {}).fit, Fit::fits);
  const DrillSection gentle =
      drillSection(knownBuildUp(-0.75, *section.footing_top_m + kMicron), {});
  EXPECT_EQ(gentle.fit, Fit::fits);
  EXPECT_LT(gentle.bore->fall, section.bore->fall);
  EXPECT_EQ(drillSection(knownBuildUp(-0.75, *section.footing_top_m + 0.01), {}).fit,
            Fit::fits_if_footing);
}

TEST(DrillSection, NeverSaysBetweenWhatAndByHowMuch) {
  const DrillSection section = drillSection(knownBuildUp(-0.45, -0.35), {});
  EXPECT_EQ(section.fit, Fit::never);
  ASSERT_TRUE(section.clash);
  EXPECT_EQ(section.clash->upper, LimitKind::slab);
  EXPECT_EQ(section.clash->lower, LimitKind::footing);
  EXPECT_NEAR(section.clash->room_m, *section.footing_top_m - -0.45, 1e-9);
  EXPECT_EQ(section.verdict.id, "section.verdict.never");
  EXPECT_TRUE(noted(section, "section.note.elsewhere"));
}

TEST(DrillSection, GroundLowByTheWallIsCoredFromAboveIt) {
  BuildUp up = knownBuildUp(-0.95, -0.95);
  up.ground_m = -0.80;  // below it there is no room over the footing
  up.wall_m = 0.30;
  const DrillSection section = drillSection(up, {});
  EXPECT_EQ(section.fit, Fit::fits);
  EXPECT_EQ(section.start, Start::above_ground);
  EXPECT_GE(degreesOfFall(section.bore->fall), 15.0 - 1e-9);
  EXPECT_DOUBLE_EQ(section.dig_m, 0.0);
}

TEST(DrillSection, HoleNeverGoesThroughTheDampProofCourse) {
  BuildUp up = knownBuildUp(-1.5, -1.5);
  up.hardcore_m = 1.0;
  up.dpc_m = -0.60;
  const DrillSection section = drillSection(up, {});
  EXPECT_EQ(section.fit, Fit::fits);
  EXPECT_LE(section.bore->entry_m + halfUpright_m(*section.bore, up.core_m), -0.65 + 1e-12);
}

TEST(DrillSection, BarrierLappedThroughTheWallCountsFromTheOutsideFace) {
  BuildUp up = knownBuildUp(-1.2, -1.2);
  up.hardcore_m = 0.8;
  up.barrier = plan::Barrier::lapped_through_wall;
  up.barrier_m = -0.45;
  const DrillSection section = drillSection(up, {});
  const Margin* barrier = marginOf(section, LimitKind::barrier);
  ASSERT_NE(barrier, nullptr);
  const double w = std::hypot(1.0, section.bore->fall);
  EXPECT_NEAR(barrier->clear, (-0.45 - section.bore->entry_m) / w - 0.0635, 1e-12);
  EXPECT_GE(barrier->clear, 0.05);
}

TEST(DrillSection, ThinHardcoreAndThickWallsAreAdvice) {
  BuildUp up = knownBuildUp();
  up.hardcore_m = 0.05;
  DrillSection section = drillSection(up, {});
  EXPECT_EQ(section.fit, Fit::fits);
  EXPECT_TRUE(noted(section, "section.note.fill"));
  up = knownBuildUp();
  up.wall_m = 0.60;
  section = drillSection(up, {});
  EXPECT_EQ(section.fit, Fit::fits);
  EXPECT_TRUE(noted(section, "section.note.barrel"));
  EXPECT_FALSE(noted(drillSection(knownBuildUp(), {}), "section.note.barrel"));
}

TEST(DrillSection, WithoutHardcoreTheFillIsNotAsked) {
  BuildUp up = knownBuildUp();
  up.hardcore_m = 0.0;
  EXPECT_EQ(marginOf(drillSection(up, {}), LimitKind::fill), nullptr);
}

TEST(DrillSection, TheContractorsHoleIsJudgedAsItStands) {
  SectionWish wish;
  wish.bore = {-0.30, fallOfDegrees(5.0)};
  const DrillSection section = drillSection(knownBuildUp(), wish);
  EXPECT_EQ(section.fit, Fit::never);
  EXPECT_DOUBLE_EQ(section.bore->entry_m, -0.30);
  EXPECT_EQ(section.verdict.id, "section.verdict.wish-fails");
  EXPECT_FALSE(marginOf(section, LimitKind::slab)->passes);
  wish.bore = {-0.44, fallOfDegrees(2.0)};
  EXPECT_EQ(drillSection(knownBuildUp(), wish).fit, Fit::fits);
  wish.bore = {-0.44, fallOfDegrees(-2.0)};  // water would run to the fan
  const DrillSection wrong = drillSection(knownBuildUp(), wish);
  EXPECT_EQ(wrong.fit, Fit::never);
  EXPECT_FALSE(marginOf(wrong, LimitKind::gentle_fall)->passes);
}

TEST(DrillSection, TheContractorsHoleOverADoubtfulFooting) {
  SectionWish wish;
  wish.bore = {-0.45, fallOfDegrees(2.0)};
  const DrillSection section = drillSection(knownBuildUp(-0.75, -0.35), wish);
  EXPECT_EQ(section.fit, Fit::fits_if_footing);
  const double t = wish.bore.fall.value();
  EXPECT_NEAR(*section.footing_top_m,
              -0.45 - t * (0.35 + kPastInner_m) - (0.0635 + kCover_m) * std::hypot(1.0, t), 1e-12);
  const DrillSection low = drillSection(knownBuildUp(-0.5, -0.35), wish);
  EXPECT_EQ(low.fit, Fit::never);
  EXPECT_EQ(low.verdict.id, "section.verdict.wish-footing");
}

TEST(DrillSection, OneOfTheTwoFixedLeavesTheOtherToBeChosen) {
  SectionWish wish;
  wish.bore.fall = fallOfDegrees(8.0);
  DrillSection section = drillSection(knownBuildUp(), wish);
  EXPECT_EQ(section.fit, Fit::fits);
  EXPECT_DOUBLE_EQ(section.bore->fall, *wish.bore.fall);
  wish.bore = {};
  wish.bore.entry_m = -0.44;
  section = drillSection(knownBuildUp(), wish);
  EXPECT_EQ(section.fit, Fit::fits);
  EXPECT_DOUBLE_EQ(section.bore->entry_m, -0.44);
}

TEST(DrillSection, GapRoundThePipeIsSaid) {
  BuildUp up = knownBuildUp();
  up.core_m = 0.112;
  EXPECT_TRUE(noted(drillSection(up, {}), "section.note.tight-gap"));
  up.core_m = 0.127;
  EXPECT_FALSE(noted(drillSection(up, {}), "section.note.tight-gap"));
  up.core_m = 0.152;
  EXPECT_TRUE(noted(drillSection(up, {}), "section.note.backer"));
}

TEST(DrillSection, APipeThatEndsOutsideItsHollowIsSaid) {
  BuildUp up = knownBuildUp(-1.2, -1.2);
  up.hardcore_m = 0.8;
  EXPECT_FALSE(noted(drillSection(up, {}), "section.note.hollow-off"));
  SectionWish steep;
  steep.bore.fall = fallOfDegrees(35.0);
  EXPECT_TRUE(noted(drillSection(up, steep), "section.note.hollow-off"));
  steep.pit_l = 120.0;  // large enough to hold it
  EXPECT_FALSE(noted(drillSection(up, steep), "section.note.hollow-off"));
}

TEST(DrillSection, DeepDigsAreSaid) {
  BuildUp up = knownBuildUp(-1.4, -1.4);
  up.ground_m = 0.1;
  up.hardcore_m = 0.6;
  EXPECT_TRUE(noted(drillSection(up, {}), "section.note.dig-deep"));
  up.ground_m = 0.9;  // more than 1.2 m down to the room under the hole
  const DrillSection section = drillSection(up, {});
  EXPECT_NE(section.fit, Fit::fits);
  ASSERT_TRUE(section.clash);
  EXPECT_EQ(section.clash->lower, LimitKind::dig);
}

TEST(DrillSection, CoreWiderThanTheRoomAndNoWallAtAll) {
  BuildUp up = knownBuildUp();
  up.core_m = 2.0;
  EXPECT_EQ(drillSection(up, {}).fit, Fit::never);
  up = knownBuildUp();
  up.wall_m = 0.0;
  up.leaves.clear();
  EXPECT_EQ(drillSection(up, {}).fit, Fit::fits);
}

TEST(DrillSection, OfTheUnsurveyedHouseNeedsTheFootingSeen) {
  const DrillSection section =
      drillSection(siteOf(support::PlanBuilder::bare()), {0, 4.0}, SectionWish{});
  EXPECT_EQ(section.fit, Fit::fits_if_footing);
  EXPECT_TRUE(noted(section, "section.note.trial-pit"));
  EXPECT_TRUE(noted(section, "section.note.seal-leaves"));
}

TEST(DrillSection, AMarginThatIsMissedIsNotSaidToBeClear) {
  const Margin past{LimitKind::ground, -0.023, 0.0};
  EXPECT_EQ(marginWords(past).id, "section.past.ground");
  EXPECT_EQ(std::get<base::Quantity>(marginWords(past).find("clear")->value).value, 23.0);
  EXPECT_EQ(marginWords({LimitKind::ground, 0.023, 0.0}).id, "section.limit.ground");
}

}  // namespace

}  // namespace sumpwright::build
