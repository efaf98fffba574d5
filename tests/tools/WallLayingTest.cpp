#include "WallHouse.h"
#include "tools/WallLaying.h"

namespace sumpwright::tools {
namespace {

std::optional<WallGhost> ghostAt(const plan::Job& job, WallLaying& laying, Point at) {
  laying.point(at, 0.5);
  return laying.ghost(job, 0.05, 0.10);
}

TEST(WallStop, RestsOnTheGridOfTheNearestWall) {
  const auto stop = wallStop(wallHouse().plan, {3.07, -0.4}, 1.0, {});
  ASSERT_TRUE(stop.has_value());
  EXPECT_EQ(stop->at.edge, 0);
  EXPECT_EQ(stop->kind, StopKind::grid);
  EXPECT_NEAR(stop->at.offset_m, 2.55, 1e-12);  // 2.57 on a grid of 5 cm
  const auto west = wallStop(wallHouse().plan, {-0.2, 6.0}, 1.0, {});
  EXPECT_EQ(west->at.edge, 3);  // goes down: its left end is the top corner
  EXPECT_NEAR(west->at.offset_m, 1.5, 1e-12);
}

TEST(WallStop, RestsInTheMiddleOfAWallAndInLineWithAWindowAcross) {
  EXPECT_EQ(wallStop(wallHouse().plan, {5.06, 0.0}, 1.0, {})->kind, StopKind::middle);
  EXPECT_NEAR(wallStop(wallHouse().plan, {5.06, 0.0}, 1.0, {})->at.offset_m, 4.5, 1e-12);
  // On the north wall, walked west: its middle stands at x = 10 - 6.83 - 0.5 = 2.67.
  const plan::Job job = withWindow(wallHouse(), "north", 2, 6.83, 1.0);
  const auto stop = wallStop(job.plan, {2.72, 0.0}, 1.6, {});
  EXPECT_EQ(stop->kind, StopKind::in_line);
  EXPECT_NEAR(stop->at.offset_m + 0.8, 2.67, 1e-12);
  ASSERT_EQ(stop->guides.size(), 1U);
  EXPECT_NEAR(stop->guides[0].a.y, 8.0, 1e-12);
  EXPECT_EQ(wallStop(job.plan, {2.90, 0.0}, 1.6, {})->kind, StopKind::grid) << "out of reach";
}

TEST(WallStop, OnlyOpeningsOfOtherStoreysCountOnItsOwnWall) {
  const plan::Job same = withWindow(wallHouse(), "beside", 0, 2.01, 1.0);
  EXPECT_EQ(wallStop(same.plan, {2.53, 0.0}, 1.0, {})->kind, StopKind::grid);
  const plan::Job above = withWindow(wallHouse(), "above", 0, 2.01, 1.0, 1);
  const auto stop = wallStop(above.plan, {2.53, 0.0}, 1.0, {});
  EXPECT_EQ(stop->kind, StopKind::in_line);
  EXPECT_NEAR(stop->at.offset_m, 2.01, 1e-12);
}

TEST(WallStop, AHandsTrembleCrossesNoCorner) {
  WallSnapField field;
  field.on = plan::OnWall{0, 0, 9.0};
  EXPECT_EQ(wallStop(wallHouse().plan, {9.95, 0.1}, 0.5, field)->at.edge, 0);
  EXPECT_EQ(wallStop(wallHouse().plan, {9.95, 0.4}, 0.5, field)->at.edge, 1);
}

TEST(WallStop, APlanWithoutWallsHasNone) {
  EXPECT_FALSE(wallStop(plan::Plan{}, {0, 0}, 1.0, {}).has_value());
}

TEST(WallThing, GapsAreToTheNeighboursAndToTheCorners) {
  const plan::Job job = withWindow(withWindow(wallHouse(), "a", 0, 1.0, 1.0), "b", 0, 6.0, 1.5);
  const auto gaps = gapsBeside(job, {0, 0, 3.0}, 0.8, 0, {});
  ASSERT_TRUE(gaps.has_value());
  EXPECT_NEAR(gaps->left_m, 3.0, 1e-12);
  EXPECT_NEAR(gaps->right_m, 6.2, 1e-12);
  ASSERT_TRUE(gaps->left && gaps->right);
  EXPECT_EQ(gaps->left->id, "a");
  EXPECT_NEAR(gaps->left->gap_m, 1.0, 1e-12);
  EXPECT_NEAR(gaps->right->gap_m, 2.2, 1e-12);
  EXPECT_FALSE(gapsBeside(job, {0, 0, 3.0}, 0.8, 1, {})->left) << "another storey";
  EXPECT_FALSE(gapsBeside(job, {0, 0, 1.0}, 1.0, 0, "a")->left) << "itself";
  EXPECT_FALSE(gapsBeside(job, {0, 9, 1.0}, 1.0, 0, {}).has_value());
}

TEST(WallLaying, EveryKindIsLaidWhereItsGhostStood) {
  for (int i = static_cast<int>(Task::lay_window); i <= static_cast<int>(Task::lay_stepped_footing);
       ++i) {
    SCOPED_TRACE(i);
    const plan::Job job = wallHouse();
    WallLaying laying(static_cast<Task>(i));
    const auto ghost = ghostAt(job, laying, {3.0, -0.2});
    ASSERT_TRUE(ghost.has_value());
    ASSERT_FALSE(ghost->refusal.has_value()) << ghost->refusal->message.id;
    const auto after = laid(job, *ghost);
    ASSERT_TRUE(after.ok());
    const auto& p = after->plan;
    EXPECT_EQ(p.openings.size() + p.services.size() + p.radiators.size() + p.wall_features.size(),
              1U);
    EXPECT_EQ(openingKindOf(laying.task()).has_value(), p.openings.size() == 1);
    EXPECT_EQ(serviceKindOf(laying.task()).has_value(), p.services.size() == 1);
    EXPECT_EQ(featureKindOf(laying.task()).has_value(), p.wall_features.size() == 1);
  }
}

TEST(WallLaying, TheNextIsLikeTheLast) {
  plan::Job job = withWindow(wallHouse(), "first", 0, 1.0, 1.05);
  job.plan.openings[0].sill_m = 0.9;
  job.plan.openings[0].head_m = 2.1;
  job.plan.openings[0].name = "Kitchen";
  WallLaying laying(Task::lay_window);
  const auto ghost = ghostAt(job, laying, {5.6, 0.0});
  EXPECT_EQ(ghost->width_m, 1.05);
  const auto& next = std::get<plan::Opening>(ghost->thing);
  EXPECT_EQ(next.sill_m, 0.9);
  EXPECT_EQ(next.head_m, 2.1);
  EXPECT_TRUE(next.name.empty());
  EXPECT_TRUE(next.id.empty());
}

TEST(WallLaying, WhetherItOpensIsNotTakenFromTheLast) {
  plan::Job job = withWindow(wallHouse(), "first", 0, 1.0, 1.05);
  job.plan.openings[0].opens = plan::Opens::fixed;
  EXPECT_EQ(std::get<plan::Opening>(nextLike(job, Task::lay_window)).opens, plan::Opens::yes);
  job.plan.openings[0].kind = plan::OpeningKind::air_vent;
  job.plan.openings[0].opens = plan::Opens::intake;
  const auto vent = std::get<plan::Opening>(nextLike(job, Task::lay_air_vent));
  EXPECT_EQ(vent.opens, plan::Opens::vent);
  EXPECT_EQ(vent.width_m, 1.05) << "the rest is like the last";
}

TEST(WallLaying, TypedNumbersHoldWhileThePointerGoesOn) {
  const plan::Job job = wallHouse();
  WallLaying laying(Task::lay_door);
  ASSERT_TRUE(ghostAt(job, laying, {3.0, 0.0}));
  laying.hold(job);
  laying.fix(1.234, 1.1);
  const auto ghost = ghostAt(job, laying, {10.0, 6.0});
  ASSERT_TRUE(ghost.has_value());
  EXPECT_EQ(ghost->at, (plan::OnWall{0, 0, 1.234}));
  EXPECT_EQ(ghost->width_m, 1.1);
  laying.letGo();
  EXPECT_EQ(ghostAt(job, laying, {10.0, 6.0})->at.edge, 1);
}

TEST(WallLaying, WhatCannotBeIsRefusedWithItsReason) {
  const plan::Job job = withWindow(wallHouse(), "there", 0, 2.0, 1.0);
  WallLaying laying(Task::lay_door);
  const auto over = ghostAt(job, laying, {2.6, 0.0});
  ASSERT_TRUE(over && over->refusal);
  EXPECT_EQ(over->refusal->message.id, "plan.opening.overlap");
  EXPECT_FALSE(laid(job, *over).ok());
  ASSERT_TRUE(ghostAt(job, laying, {8.0, 0.0}));
  laying.hold(job);
  laying.fix(9.5, 0.9);
  const auto past = laying.ghost(job, 0.05, 0.1);
  ASSERT_TRUE(past && past->refusal);
  EXPECT_EQ(past->refusal->message.id, "place.past-end");
}

TEST(WallLaying, FarFromAnyWallThereIsNoGhost) {
  WallLaying laying(Task::lay_window);
  EXPECT_FALSE(ghostAt(wallHouse(), laying, {5.0, 4.0}));
  EXPECT_TRUE(ghostAt(wallHouse(), laying, {5.0, 0.6})) << "the wall's body is the wall";
}

}  // namespace
}  // namespace sumpwright::tools
