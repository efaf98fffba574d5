// The Irish sheet's parts: reach 35, margin 20 (full at 0.60 m), wall 15, supply 10, room 10, pipe
// 10. Without reach and cable, and with the figures of the hole taken out, margin, wall and room
// are judged: 45, scaled to 100. An advisory costs 15.
#include "build/CableAlong.h"
#include "build/SectionAlong.h"
#include "core/build/CableLength.h"
#include "core/siting/Studied.h"

namespace sumpwright::siting {

namespace {

using plan::RoomUse;
using support::PlanBuilder;

Study withoutHole(const plan::Job& job) {
  rules::RuleSheet sheet = support::builtInSheet("ie-practice");
  for (rules::ScorePart& part : sheet.score) part.none_at_m.reset();
  return studied(job, sheet);
}

double total(const plan::Job& job, double s) { return withoutHole(job).assess({0, s}).score.total; }

const ScoredPart& partOf(const Assessment& a, rules::PartKind kind) {
  return *std::find_if(a.score.parts.begin(), a.score.parts.end(),
                       [&](const ScoredPart& part) { return part.kind == kind; });
}

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
  const Assessment a = withoutHole(PlanBuilder::rectangle()).assess({0, 5.0});
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
        part.reason.id == "score.supply-not-drawn" || part.reason.id == "score.reach-not-yet";
    EXPECT_EQ(part.judged, !left_out) << part.title;
    EXPECT_LE(part.points, part.weight);
  }
  EXPECT_EQ(judged, 55.0);
}

TEST(Score, TheHoleEarnsByWhetherItFitsAndByTheDig) {
  plan::Job job = PlanBuilder::rectangle();
  job.house.screed_m = 0.065;
  job.house.insulation_m = 0.1;
  job.house.footing_top_low_m = job.house.footing_top_high_m = -0.75;
  const auto hole = [&] { return partOf(studied(job).assess({0, 14.0}), rules::PartKind::pipe); };
  const Study study = studied(job);
  const double dig = study.section().read({0, 14.0}).dig_m;
  ASSERT_GT(dig, 0.3);
  ASSERT_LT(dig, 1.2);
  EXPECT_EQ(hole().reason.id, "score.hole-fits");
  EXPECT_NEAR(hole().points, 10.0 * (1.2 - dig) / 0.9, 1e-9);
  // A footing that may stand too high: 0.6 of it, and of a dig of its own.
  job.house.footing_top_high_m = -0.35;
  const build::SectionNode node = studied(job).section().read({0, 14.0});
  EXPECT_EQ(hole().reason.id, "score.hole-if");
  EXPECT_NEAR(hole().points, 6.0 * (1.2 - node.dig_m) / 0.9, 1e-9);
  job.house.footing_top_low_m = job.house.footing_top_high_m = -0.2;
  EXPECT_EQ(hole().reason.id, "score.hole-never");
  EXPECT_EQ(hole().points, 0.0);
}

TEST(Score, TheCableEarnsByItsLength) {
  const plan::Job job = PlanBuilder::rectangle().supply("s", plan::SupplyKind::socket, {9.6, 4.0});
  const Study study = studied(job);
  const build::CableAlong* cable = study.cable();
  ASSERT_NE(cable, nullptr);
  for (double s = 0.4; s < 36.0; s += 1.7) {
    const auto length = cable->length_m({0, s});
    ASSERT_TRUE(length) << s;
    const Assessment a = study.assess({0, s});
    const ScoredPart& part = partOf(a, rules::PartKind::supply);
    EXPECT_TRUE(part.judged);
    EXPECT_NEAR(part.points, 10.0 * std::clamp((25.0 - *length) / 22.0, 0.0, 1.0), 1e-9);
    EXPECT_EQ(part.reason.id, "score.supply");
    EXPECT_DOUBLE_EQ(study.scoreAt({0, s}), a.score.total);
  }
  // Beside the socket it is shorter than across the house, and the best place moves there.
  EXPECT_LT(*cable->length_m({0, 14.0}), *cable->length_m({0, 32.0}));
  EXPECT_EQ(study.withReach(nullptr).cable(), cable);
  EXPECT_EQ(partOf(studied(PlanBuilder::rectangle()).assess({0, 14.0}), rules::PartKind::supply)
                .reason.id,
            "score.supply-not-drawn");
}

TEST(Score, TheCableIsThatOfTheSumpsOwnFanAndSupply) {
  plan::Job job = PlanBuilder::rectangle()
                      .supply("near", plan::SupplyKind::socket, {9.6, 4.0})
                      .supply("far", plan::SupplyKind::socket, {0.4, 4.0});
  plan::Sump low;
  low.id = "low";
  low.chainage_m = 14.0;
  plan::Sump wired = low;
  wired.id = "wired";
  wired.supply = "far";
  plan::Sump high = low;
  high.id = "high";
  high.fan_place = plan::FanPlace::outside_high;
  high.discharge = plan::Discharge{0, 16.0, 5.0};
  job.design.sumps = {low, wired, high};
  const Study study = studied(job);
  for (const plan::Sump& sump : job.design.sumps) {
    SCOPED_TRACE(sump.id);
    const auto length =
        build::cableLength_m(study.site(), build::cableAskOf(study.site(), sump, {0, 14.0}));
    ASSERT_TRUE(length);
    const Assessment there = study.assess({0, 14.0}, sump.id);
    EXPECT_NEAR(partOf(there, rules::PartKind::supply).points,
                10.0 * std::clamp((25.0 - *length) / 22.0, 0.0, 1.0), 0.5);
  }
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
