// The Irish sheet's parts: reach 35, margin 20 (full at 0.60 m), wall 15, supply 10, room 10, pipe
// 10. Judged so far: margin, wall, room: 45, scaled to 100. An advisory costs 15.
#include "core/siting/Studied.h"

namespace sumpwright::siting {

namespace {

using plan::RoomUse;
using support::PlanBuilder;

double total(const plan::Job& job, double s) { return studied(job).assess({0, s}).score.total; }

TEST(Score, EverythingBestIsAHundred) {
  // Gable, living room behind, 3.9 m to the nearest corner.
  EXPECT_NEAR(total(PlanBuilder::rectangle(), 14.0), 100.0, 1e-9);
}

// 0.15 m over what corner B needs: 20 * 0.15 / 0.60 = 5 of 20. (5 + 15 + 10) / 45.
TEST(Score, MarginEarnsInProportion) {
  EXPECT_NEAR(total(PlanBuilder::rectangle(), 10.3635 + 0.15), 100.0 * 30 / 45, 1e-6);
  EXPECT_NEAR(total(PlanBuilder::rectangle(), 10.3635), 100.0 * 25 / 45, 1e-6);
}

// Front: 0 of 15, and advised against: (20 + 0 + 10) / 45 less 15.
TEST(Score, FrontEarnsNothingAndCostsAnAdvisory) {
  const Assessment a = studied(PlanBuilder::rectangle()).assess({0, 5.0});
  EXPECT_NEAR(a.score.total, 100.0 * 30 / 45 - 15, 1e-9);
  EXPECT_EQ(a.score.advisory_cost, 15.0);
  EXPECT_EQ(a.sentence.id, "verdict.advised");
}

TEST(Score, RoomsEarnByUseAndTheWorstBehindCounts) {
  const auto withRooms = [](RoomUse left, RoomUse right) {
    return PlanBuilder::rectangle()
        .noRooms()
        .room("a", left, {{9, 0.35}, {9.65, 0.35}, {9.65, 4}, {9, 4}})
        .room("b", right, {{9, 4}, {9.65, 4}, {9.65, 7.65}, {9, 7.65}})
        .job();
  };
  const plan::Job job = withRooms(RoomUse::bedroom, RoomUse::kitchen);
  EXPECT_NEAR(total(job, 12.0), 100.0, 1e-9);
  EXPECT_NEAR(total(job, 16.0), 100.0 * 40 / 45, 1e-9);  // kitchen: half of 10
  EXPECT_NEAR(total(job, 14.0), 100.0 * 40 / 45, 1e-9);  // both: the kitchen counts
  // Named in no list: "other", 0.3. No room drawn: as much.
  EXPECT_NEAR(total(withRooms(RoomUse::stairs, RoomUse::stairs), 12.0), 100.0 * 38 / 45, 1e-9);
  EXPECT_NEAR(total(PlanBuilder::rectangle().noRooms(), 14.0), 100.0 * 38 / 45, 1e-9);
}

TEST(Score, PartsNotYetJudgedAreLeftOutAndSaid) {
  const Score score = studied(PlanBuilder::rectangle()).assess({0, 14.0}).score;
  ASSERT_EQ(score.parts.size(), 6U);
  EXPECT_FALSE(score.complete);
  double judged = 0.0;
  for (const ScoredPart& part : score.parts) {
    if (part.judged) judged += part.weight;
    const bool left_out =
        part.reason.id == "score.not-judged" || part.reason.id == "score.reach-not-yet";
    EXPECT_EQ(part.judged, !left_out) << part.title;
    EXPECT_LE(part.points, part.weight);
  }
  EXPECT_EQ(judged, 45.0);
}

TEST(Score, StaysBetweenNothingAndAHundred) {
  rules::RuleSheet sheet = support::builtInSheet("ie-practice");
  sheet.advisory_cost.value = 500.0;
  const Study study = studied(PlanBuilder::rectangle(), sheet);
  EXPECT_EQ(study.assess({0, 5.0}).score.total, 0.0);
}

TEST(Score, CurveIsTheAssessmentsScore) {
  const Study study = studied(PlanBuilder::lShape().window("w", 2, 1.0, 1.0));
  for (double s = 0.0; s < 36.0; s += 0.173) {
    EXPECT_DOUBLE_EQ(study.scoreAt({0, s}), study.assess({0, s}).score.total) << s;
  }
}

}  // namespace

}  // namespace sumpwright::siting
