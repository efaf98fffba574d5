// Openings as they are taped: from a corner, seen from outside.

#include <cmath>

#include "core/plan/EditChecks.h"
#include "plan/OpeningEdits.h"
#include "support/PlanBuilder.h"

namespace sumpwright::plan {
namespace {

using support::PlanBuilder;

Opening window(const std::string& id = "") {
  Opening o;
  o.id = id;
  o.sill_m = 0.9;
  o.head_m = 2.1;
  return o;
}

const Opening& last(const Job& job) { return job.plan.openings.back(); }

TEST(AddOpening, OnePointTwoFromTheLeftCornerOnePointOhFiveWide) {
  const Job job = PlanBuilder::rectangle();
  const Job left = doneWell(addOpening(job, 0, 0, Side::left, 1.20, 1.05, window()));
  EXPECT_EQ(last(left).at, (OnWall{0, 0, 1.20}));
  EXPECT_EQ(last(left).width_m, 1.05);
  EXPECT_EQ(last(left).sill_m, 0.9);
  EXPECT_FALSE(last(left).id.empty());
  const Job right = doneWell(addOpening(job, 0, 0, Side::right, 1.20, 1.05, window()));
  EXPECT_NEAR(last(right).at.offset_m, 10 - 1.20 - 1.05, 1e-12);
  EXPECT_NEAR(tapedOffset_m(right.plan, last(right).at, 1.05, Side::right), 1.20, 1e-12);
}

// The front wall, edge 0, faces south: who stands in the garden and looks north has west at the
// left hand.
TEST(AddOpening, LeftIsTheLeftHandOfWhoLooksAtTheWall) {
  const Job job =
      doneWell(addOpening(PlanBuilder::rectangle(), 0, 0, Side::left, 0.0, 1.0, window()));
  EXPECT_EQ(last(job).at.offset_m, 0.0);  // at corner 0, the south-west one
}

TEST(AddOpening, DoesNotGoWhereThereIsNoRoom) {
  const Job job = PlanBuilder::rectangle();
  const auto add = [&](double offset, double width, int edge = 0) {
    return problemIdOf(addOpening(job, 0, edge, Side::left, offset, width, window()));
  };
  EXPECT_EQ(add(9.5, 0.6), "plan.edit.no-room");
  EXPECT_EQ(add(9.5, 0.5005), "");  // a tape's rounding
  EXPECT_EQ(add(-0.1, 0.6), "plan.edit.not-a-place");
  EXPECT_EQ(add(0.1, 0.0), "plan.edit.not-a-place");
  EXPECT_EQ(add(NAN, 0.6), "plan.edit.not-a-place");
  EXPECT_EQ(add(1, 1, 9), "plan.edit.no-edge");
}

TEST(PlaceOpening, OntoAnotherWall) {
  const Job job = PlanBuilder::rectangle().window("w", 0, 2.0, 1.2);
  const Job placed = doneWell(placeOpening(job, "w", 0, 1, Side::right, 0.5));
  EXPECT_EQ(last(placed).at.edge, 1);
  EXPECT_NEAR(last(placed).at.offset_m, 8 - 0.5 - 1.2, 1e-12);
  EXPECT_EQ(doneWell(placeOpening(placed, "w", 0, 0, Side::left, 2.0)), job);
  EXPECT_EQ(problemIdOf(placeOpening(job, "x", 0, 0, Side::left, 2.0)), "plan.edit.no-thing");
}

TEST(SlideOpening, IsPushedBackOntoItsWall) {
  const Job job = PlanBuilder::rectangle().window("w", 0, 2.0, 1.2);
  EXPECT_NEAR(last(doneWell(slideOpening(job, "w", {0, 1, 99}))).at.offset_m, 6.8, 1e-12);
  EXPECT_EQ(last(doneWell(slideOpening(job, "w", {0, 2, -3}))).at, (OnWall{0, 2, 0.0}));
  EXPECT_EQ(problemIdOf(slideOpening(job, "w", {3, 0, 1})), "plan.edit.no-edge");
  EXPECT_EQ(problemIdOf(slideOpening(job, "w", {0, 0, NAN})), "plan.edit.not-a-place");
}

TEST(SetOpeningWidth, TheKeptJambStays) {
  const Job job = PlanBuilder::rectangle().window("w", 0, 2.0, 1.2);
  EXPECT_EQ(last(doneWell(setOpeningWidth(job, "w", 1.8, Side::left))).at.offset_m, 2.0);
  const Opening right = last(doneWell(setOpeningWidth(job, "w", 1.8, Side::right)));
  EXPECT_NEAR(right.at.offset_m + right.width_m, 3.2, 1e-12);
  EXPECT_EQ(problemIdOf(setOpeningWidth(job, "w", 4.0, Side::right)), "plan.edit.no-room");
}

TEST(RepeatOpening, AtEqualPitchOrNotAtAll) {
  const Job job = PlanBuilder::rectangle().window("w", 0, 1.0, 1.2);
  const Job three = doneWell(repeatOpening(job, "w", 2, 2.5));
  ASSERT_EQ(three.plan.openings.size(), 3U);
  EXPECT_NEAR(three.plan.openings[1].at.offset_m, 3.5, 1e-12);
  EXPECT_NEAR(three.plan.openings[2].at.offset_m, 6.0, 1e-12);
  EXPECT_EQ(three.plan.openings[2].sill_m, job.plan.openings[0].sill_m);
  EXPECT_EQ(problemIdOf(repeatOpening(job, "w", 4, 2.5)), "plan.edit.no-room");
  EXPECT_EQ(problemIdOf(repeatOpening(job, "w", 1, -2.5)), "plan.edit.no-room");
  EXPECT_EQ(problemIdOf(repeatOpening(job, "w", 0, 2.5)), "plan.edit.not-a-place");
  EXPECT_EQ(problemIdOf(repeatOpening(job, "w", 1, 0.0)), "plan.edit.not-a-place");
}

TEST(AlignOpening, MiddleAcrossFromMiddle) {
  const Job job = PlanBuilder::rectangle().window("front", 0, 2.0, 1.2).window("rear", 2, 1.0, 2.0);
  const Job aligned = doneWell(alignOpening(job, "rear", "front"));
  // The rear wall runs from (10, 8) to (0, 8); the front window's middle is at x = 2.6.
  EXPECT_NEAR(last(aligned).at.offset_m + 1.0, 10 - 2.6, 1e-12);
  const Job corner = PlanBuilder::rectangle().window("front", 0, 0.0, 0.4).window("rear", 2, 1, 2);
  EXPECT_EQ(problemIdOf(alignOpening(corner, "rear", "front")), "plan.edit.no-room");
  EXPECT_EQ(problemIdOf(alignOpening(job, "rear", "x")), "plan.edit.no-thing");
}

}  // namespace
}  // namespace sumpwright::plan
