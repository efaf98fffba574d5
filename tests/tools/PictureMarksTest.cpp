#include <gtest/gtest.h>

#include "tools/PictureMarks.h"

namespace sumpwright::tools {
namespace {

using geometry::Point;
using geometry::Segment;

constexpr double kReach = 0.2;

TEST(PictureMarks, TwoPressesSetTwoPoints) {
  TwoPoints two;
  EXPECT_TRUE(two.press({1, 1}, kReach));
  two.release(kReach);
  EXPECT_FALSE(two.line());
  EXPECT_TRUE(two.press({4, 5}, kReach));
  two.release(kReach);
  EXPECT_EQ(two.line(), (Segment{{1, 1}, {4, 5}}));
  EXPECT_FALSE(two.press({9, 9}, kReach)) << "both stand: the plan may be panned";
}

TEST(PictureMarks, ADragDrawsTheLine) {
  TwoPoints two;
  two.press({1, 1}, kReach);
  two.drag({2, 2});
  two.drag({4, 5});
  two.release(kReach);
  EXPECT_EQ(two.line(), (Segment{{1, 1}, {4, 5}}));
}

TEST(PictureMarks, AHandThatTremblesDrawsNoLine) {
  TwoPoints two;
  two.press({1, 1}, kReach);
  two.drag({1.05, 1.05});
  two.release(kReach);
  EXPECT_FALSE(two.line());
  EXPECT_EQ(two.first(), (Point{1, 1}));
}

TEST(PictureMarks, APointIsTakenHoldOfAgain) {
  TwoPoints two;
  two.press({1, 1}, kReach);
  two.drag({4, 5});
  two.release(kReach);
  ASSERT_TRUE(two.press({1.1, 1}, kReach));
  two.drag({0, 0});
  two.release(kReach);
  EXPECT_EQ(two.line(), (Segment{{0, 0}, {4, 5}}));
  EXPECT_TRUE(two.nudge({0.5, 0}));
  EXPECT_EQ(two.first(), (Point{0.5, 0}));
  two.clear();
  EXPECT_FALSE(two.first());
  EXPECT_FALSE(two.nudge({1, 0}));
}

FourCorners square() { return FourCorners({{{0, 0}, {4, 0}, {4, 3}, {0, 3}}}); }

TEST(PictureMarks, TheNearestCornerIsTaken) {
  FourCorners four = square();
  EXPECT_FALSE(four.press({2, 1}, kReach));
  ASSERT_TRUE(four.press({3.9, 2.9}, kReach));
  EXPECT_EQ(four.current(), 2U);
  four.drag({5, 4});
  four.release();
  EXPECT_FALSE(four.isHeld());
  EXPECT_EQ(four.corners()[2], (Point{5, 4}));
  EXPECT_TRUE(four.isProper());
}

TEST(PictureMarks, CornersOutOfOrderAreNoRectangle) {
  FourCorners four = square();
  four.press({0, 0}, kReach);
  four.drag({5, 5});
  EXPECT_FALSE(four.isProper());
  four.put(square().corners());
  EXPECT_TRUE(four.isProper());
}

TEST(PictureMarks, KeysGoRoundTheCorners) {
  FourCorners four = square();
  four.step(-1);
  EXPECT_EQ(four.current(), 3U);
  four.nudge({0.1, 0.2});
  EXPECT_EQ(four.corners()[3], (Point{0.1, 3.2}));
  four.step(1);
  EXPECT_EQ(four.current(), 0U);
}

}  // namespace
}  // namespace sumpwright::tools
