#include <gtest/gtest.h>

#include "plan/Job.h"
#include "tools/SiteDrag.h"

namespace sumpwright::tools {
namespace {

constexpr double kTight_m = 1e-9;

Perimeter perimeterOf(std::vector<std::vector<Point>> rings) {
  plan::Job job;
  for (std::vector<Point>& corners : rings) {
    plan::Ring ring;
    ring.walls.resize(corners.size());
    ring.corners = std::move(corners);
    job.plan.rings.push_back(std::move(ring));
  }
  return Perimeter::of(job).value();
}

/// 10 m x 6 m, first corner at the origin, walked counter-clockwise.
Perimeter house() { return perimeterOf({{{0, 0}, {10, 0}, {10, 6}, {0, 6}}}); }
/// A U whose two arms stand 1 m apart: a nook 1 m wide and 4 m deep between x = 4 and x = 5.
Perimeter nook() {
  return perimeterOf({{{0, 0}, {9, 0}, {9, 6}, {5, 6}, {5, 2}, {4, 2}, {4, 6}, {0, 6}}});
}

TEST(SiteDrag, TheGrabbedDistanceIsKept) {
  const Perimeter p = house();
  SiteDrag drag = SiteDrag::hold(p, {0, 3.0}, {3.4, -0.8});
  EXPECT_FALSE(drag.moved());
  EXPECT_NEAR(drag.move(p, {3.4, -0.8}).chainage_m, 3.0, kTight_m);
  EXPECT_NEAR(drag.move(p, {5.4, -0.8}).chainage_m, 5.0, kTight_m);
  EXPECT_NEAR(drag.move(p, {5.4, -2.0}).chainage_m, 5.0, kTight_m) << "square to the wall: no move";
  EXPECT_TRUE(drag.moved());
  EXPECT_NEAR(drag.start().chainage_m, 3.0, kTight_m);
}

TEST(SiteDrag, APressPutsTheSumpThere) {
  const Perimeter p = house();
  const SiteDrag drag = SiteDrag::press(p, {0, 3.0}, {10.2, 2.5});
  EXPECT_NEAR(drag.place().chainage_m, 12.5, kTight_m);
  EXPECT_NEAR(drag.start().chainage_m, 3.0, kTight_m);
}

TEST(SiteDrag, RunsRoundAConvexCornerWithoutABreak) {
  const Perimeter p = house();
  SiteDrag drag = SiteDrag::press(p, {0, 9.0}, {9.0, 0.0});
  double before = 9.0;
  for (int i = 0; i <= 100; ++i) {  // quarter circle of 0.5 m round the corner (10, 0)
    const double turn = i / 100.0 * 1.5707963267948966;
    const Point pointer{10.0 + 0.5 * std::sin(turn), -0.5 * std::cos(turn)};
    const double s = drag.move(p, pointer).chainage_m;
    EXPECT_GE(s, before - kTight_m);
    EXPECT_LT(s - before, i == 0 ? 1.1 : 0.05);
    before = s;
  }
  EXPECT_NEAR(drag.move(p, {10.5, 1.0}).chainage_m, 11.0, kTight_m);
}

TEST(SiteDrag, TakesTheWrapOverTheRingsStart) {
  const Perimeter p = house();
  SiteDrag drag = SiteDrag::press(p, {0, 0.5}, {0.5, -0.1});
  EXPECT_NEAR(drag.move(p, {-0.1, 0.5}).chainage_m, 31.5, kTight_m);
}

TEST(SiteDrag, StaysOnItsWallInANookUntilTheOtherIsClearlyNearer) {
  const Perimeter p = nook();
  const Place left_wall = p.nearest({4.0, 4.0});
  SiteDrag drag = SiteDrag::press(p, left_wall, {4.0, 4.0});
  EXPECT_NEAR(drag.move(p, {4.55, 4.0}).chainage_m, left_wall.chainage_m, kTight_m)
      << "0.55 m off this wall, 0.45 m off the other: not clearly there";
  const Place right_wall = p.nearest({5.0, 4.0});
  EXPECT_NEAR(drag.move(p, {4.60, 4.0}).chainage_m, right_wall.chainage_m, kTight_m);
  EXPECT_NEAR(drag.move(p, {4.45, 4.0}).chainage_m, right_wall.chainage_m, kTight_m)
      << "and back only when this one is clearly nearer";
  EXPECT_NEAR(drag.move(p, {4.40, 4.0}).chainage_m, left_wall.chainage_m, kTight_m);
}

TEST(SiteDrag, DoesNotCrossAThinPartByAccident) {
  const Perimeter p = perimeterOf({{{0, 0}, {10, 0}, {10, 0.2}, {0, 0.2}}});
  SiteDrag drag = SiteDrag::press(p, {0, 5.0}, {5.0, 0.0});
  EXPECT_NEAR(drag.move(p, {5.0, 0.15}).chainage_m, 5.0, kTight_m);
  EXPECT_NEAR(drag.move(p, {5.0, 0.25}).chainage_m, 15.2, kTight_m) << "0.25 m against 0.05 m";
}

TEST(SiteDrag, ReachesACourtyardWhenDraggedThere) {
  const Perimeter p =
      perimeterOf({{{0, 0}, {10, 0}, {10, 8}, {0, 8}}, {{4, 3}, {4, 5}, {6, 5}, {6, 3}}});
  SiteDrag drag = SiteDrag::press(p, {0, 5.0}, {5.0, 0.0});
  EXPECT_EQ(drag.move(p, {5.0, 1.4}).ring, 0);
  EXPECT_EQ(drag.move(p, {5.0, 3.2}).ring, 1);
  EXPECT_EQ(drag.move(p, {5.0, 2.0}).ring, 1);
}

TEST(SiteDrag, StepsWrap) {
  const Perimeter p = house();
  EXPECT_NEAR(stepped(p, {0, 0.05}, -kStep_m).chainage_m, 31.95, kTight_m);
  EXPECT_NEAR(stepped(p, {0, 31.95}, kStep_m).chainage_m, 0.05, kTight_m);
}

}  // namespace
}  // namespace sumpwright::tools
