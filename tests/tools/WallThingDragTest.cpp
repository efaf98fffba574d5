#include <random>

#include "WallHouse.h"
#include "plan/PlanCheck.h"
#include "tools/BesideEdits.h"
#include "tools/WallThingDrag.h"

namespace sumpwright::tools {
namespace {

plan::Job dragHouse() { return withWindow(wallHouse(), "w", 0, 2.0, 1.2); }

const plan::Opening& openingNamed(const plan::Job& job, const std::string& id) {
  for (const plan::Opening& o : job.plan.openings) {
    if (o.id == id) return o;
  }
  ADD_FAILURE() << "no opening " << id;
  static const plan::Opening none;
  return none;
}

TEST(WallThingDrag, FollowsThePointerAsIfHeldByARod) {
  WallThingDrag drag(dragHouse(), {"w", WallPart::body}, {2.1, 0.2}, {});
  const auto after = drag.move({4.11, 0.25});
  ASSERT_TRUE(after.ok());
  EXPECT_NEAR(openingNamed(*after, "w").at.offset_m, 4.0, 1e-12);  // 4.01 on the grid
  EXPECT_EQ(openingNamed(*after, "w").width_m, 1.2);
}

TEST(WallThingDrag, GoesToAnotherWall) {
  WallThingDrag drag(dragHouse(), {"w", WallPart::body}, {2.6, 0.1}, {});
  const auto after = drag.move({10.0, 4.1});
  ASSERT_TRUE(after.ok());
  EXPECT_EQ(openingNamed(*after, "w").at.edge, 1);
  EXPECT_NEAR(openingNamed(*after, "w").at.offset_m, 3.4, 1e-12);
}

TEST(WallThingDrag, ANumberIsTheDistanceFromTheLeftCornerThenTheWidth) {
  WallThingDrag drag(dragHouse(), {"w", WallPart::body}, {2.6, 0.1}, {});
  EXPECT_EQ(openingNamed(*drag.set(3.456, std::nullopt), "w").at, (plan::OnWall{0, 0, 3.456}));
  const auto both = drag.set(3.456, 0.9);
  EXPECT_EQ(openingNamed(*both, "w").width_m, 0.9);
  const auto past = drag.set(9.5, std::nullopt);
  ASSERT_FALSE(past.ok());
  EXPECT_EQ(past.problems().front().message.id, "place.past-end");
}

TEST(WallThingDrag, AnEndChangesTheWidthAndTheOtherStays) {
  const plan::Job job = dragHouse();
  const auto right = wallEndAt(job, "w", {3.22, 0.05}, 0.1);
  ASSERT_TRUE(right.has_value());
  EXPECT_EQ(right->part, WallPart::right_end);
  WallThingDrag drag(job, *right, {3.22, 0.05}, {});
  const auto wider = drag.move({3.83, 0.0});
  EXPECT_NEAR(openingNamed(*wider, "w").width_m, 1.8, 1e-12);
  EXPECT_EQ(openingNamed(*wider, "w").at.offset_m, 2.0);
  const auto left = wallEndAt(job, "w", {2.0, 0.0}, 0.1);
  EXPECT_EQ(left->part, WallPart::left_end);
  WallThingDrag other(job, *left, {2.0, 0.0}, {});
  const auto typed = other.set(0.7, std::nullopt);
  EXPECT_NEAR(openingNamed(*typed, "w").at.offset_m, 2.5, 1e-12);
  EXPECT_NEAR(openingNamed(*typed, "w").width_m, 0.7, 1e-12);
  EXPECT_FALSE(wallEndAt(job, "w", {2.6, 0.0}, 0.1).has_value());
  EXPECT_TRUE(other.move({9.0, 0.0}).ok()) << "never less than a hand's width";
}

TEST(WallThingDrag, DoesNotStandInAnother) {
  const plan::Job job = withWindow(dragHouse(), "there", 0, 6.0, 1.0);
  WallThingDrag drag(job, {"w", WallPart::body}, {2.6, 0.0}, {});
  const auto onto = drag.move({6.4, 0.0});
  ASSERT_FALSE(onto.ok());
  EXPECT_EQ(onto.problems().front().message.id, "plan.opening.overlap");
  EXPECT_NEAR(drag.stop().at.offset_m, 5.8, 1e-12) << "where it would be is still shown";
  EXPECT_TRUE(drag.move({4.0, 0.0}).ok());
}

TEST(WallThingDrag, TheRunOfAServiceGoesAlongAndTurnsWithTheWall) {
  plan::Service gas;
  gas.id = "gas";
  gas.kind = plan::ServiceKind::gas;
  gas.entry = plan::OnWall{0, 0, 3.0};
  gas.run = plan::RunKnown::drawn;
  gas.run_m = {{3.0, 0.0}, {3.0, -5.0}};
  const plan::Job job = *plan::addThing(wallHouse(), gas);
  WallThingDrag drag(job, {"gas", WallPart::body}, {3.0, -0.5}, {});
  const auto along = drag.move({4.0, -0.5});
  ASSERT_TRUE(along.ok());
  EXPECT_NEAR(along->plan.services[0].run_m[1].x, 4.0, 1e-9);
  EXPECT_NEAR(along->plan.services[0].run_m[1].y, -5.0, 1e-9);
  const auto east = drag.move({10.0, 3.5});
  ASSERT_TRUE(east.ok());
  EXPECT_EQ(east->plan.services[0].entry->edge, 1);
  EXPECT_NEAR(east->plan.services[0].run_m[1].x, 15.0, 1e-9);
  EXPECT_NEAR(east->plan.services[0].run_m[1].y, 4.0, 1e-9);
}

// Whatever the hand does, a job it gives is as sound as before, and is made from the first one.
TEST(WallThingDrag, RandomHandsKeepThePlanSound) {
  constexpr unsigned kSeed = 20261;
  std::mt19937 random(kSeed);
  const auto within = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(random()) / 4294967295.0;
  };
  const plan::Job job = withWindow(dragHouse(), "there", 1, 3.0, 2.0);
  int refused = 0;
  for (int i = 0; i < 200; ++i) {
    const auto part = static_cast<WallPart>(i % 3);
    WallThingDrag drag(job, {"w", part}, {2.6, 0.0}, {});
    base::Result<plan::Job> last = job;
    for (int k = 0; k < 5; ++k) {
      last = drag.move({within(-3.0, 13.0), within(-3.0, 11.0)});
      if (!last) {
        ++refused;
        continue;
      }
      EXPECT_FALSE(newFault(job, *last).has_value()) << "seed " << kSeed << " hand " << i;
      EXPECT_EQ(last->plan.openings.size(), 2U);
      EXPECT_EQ(last->plan.openings[1], job.plan.openings[1]);
    }
  }
  EXPECT_GT(refused, 0) << "the other window is met at times";
}

TEST(BesideEdits, ACopyStandsBesideAndTheNextByTheSameStep) {
  const plan::Job job = dragHouse();
  const auto one = copiedBeside(job, "w", {});
  ASSERT_TRUE(one.ok());
  const std::string copy = copyOf(job, *one, "w");
  EXPECT_NEAR(openingNamed(*one, copy).at.offset_m, 3.5, 1e-12);
  const plan::Job moved = *withWallThing(*one, copy, {0, 0, 4.0}, 1.2);
  const auto two = copiedBeside(moved, copy, "w");
  ASSERT_TRUE(two.ok());
  EXPECT_NEAR(openingNamed(*two, copyOf(moved, *two, copy)).at.offset_m, 6.0, 1e-12);
}

TEST(BesideEdits, WhereThereIsNoRoomAtTheRightItGoesLeftOrNotAtAll) {
  const plan::Job end = withWindow(wallHouse(), "e", 0, 8.5, 1.2);
  const auto left = copiedBeside(end, "e", {});
  ASSERT_TRUE(left.ok());
  EXPECT_NEAR(openingNamed(*left, copyOf(end, *left, "e")).at.offset_m, 7.0, 1e-12);
  const plan::Job wide = withWindow(wallHouse(), "e", 0, 0.5, 9.0);
  EXPECT_EQ(copiedBeside(wide, "e", {}).problems().front().message.id, "place.past-end");
}

TEST(BesideEdits, InLineAcrossTheHouseAndByTheCornerRoundIt) {
  const plan::Job job = withWindow(withWindow(dragHouse(), "n", 2, 1.0, 0.8), "e", 1, 5.0, 0.8);
  const auto across = inLineWith(job, "n", "w");
  ASSERT_TRUE(across.ok());
  // The middle of "w" stands at x = 2.6; the north wall runs west from x = 10.
  EXPECT_NEAR(openingNamed(*across, "n").at.offset_m, 10.0 - 2.6 - 0.4, 1e-9);
  const auto round = inLineWith(job, "e", "w");
  ASSERT_TRUE(round.ok());
  EXPECT_NEAR(openingNamed(*round, "e").at.offset_m, 2.0, 1e-12);
  EXPECT_EQ(inLineWith(job, "w", "w").problems().front().message.id, "place.both-on-walls");
}

TEST(BesideEdits, OneSizeKeepsTheMiddle) {
  plan::Job job = withWindow(dragHouse(), "n", 2, 1.0, 0.8);
  job.plan.openings[0].sill_m = 0.85;
  const auto sized = sizedLike(job, "n", "w");
  ASSERT_TRUE(sized.ok());
  EXPECT_NEAR(openingNamed(*sized, "n").at.offset_m, 0.8, 1e-12);
  EXPECT_EQ(openingNamed(*sized, "n").width_m, 1.2);
  EXPECT_EQ(openingNamed(*sized, "n").sill_m, 0.85);
  EXPECT_EQ(sizedLike(job, "n", "no such").problems().front().message.id, "place.both-openings");
}

}  // namespace
}  // namespace sumpwright::tools
