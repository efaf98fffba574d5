#include <gtest/gtest.h>

#include <cmath>

#include "build/Curves.h"

namespace sumpwright::build {

namespace {

TEST(Curves, OneCurvePeaksWhereItIsLevel) {
  // 3 t - 5 sqrt(1 + t^2) is level where sin a = 3/5: t = 3/4, value -4.
  const Peak peak = peakOf({{0.0, 3.0, 5.0}}, {0.0, 2.0});
  EXPECT_NEAR(peak.t, 0.75, 1e-12);
  EXPECT_NEAR(peak.value, -4.0, 1e-12);
}

TEST(Curves, PeakLiesAtTheEndOfTheRangeOrWhereTwoMeet) {
  EXPECT_DOUBLE_EQ(peakOf({{0.0, -1.0, 0.0}}, {0.2, 0.8}).t, 0.2);
  const Peak peak = peakOf({{0.0, 1.0, 0.0}, {1.0, -1.0, 0.0}}, {0.0, 1.0});
  EXPECT_NEAR(peak.t, 0.5, 1e-12);
  EXPECT_NEAR(peak.value, 0.5, 1e-12);
}

TEST(Curves, NotBelowEndsWhereTheCurveCrosses) {
  // 1 - sqrt(1 + t^2) / 1.25 >= 0: t up to 0.75.
  const auto range = notBelow({{1.0, 0.0, 0.8}}, 0.0, {0.0, 2.0});
  ASSERT_TRUE(range);
  EXPECT_DOUBLE_EQ(range->from, 0.0);
  EXPECT_NEAR(range->to, 0.75, 1e-12);
  EXPECT_FALSE(notBelow({{0.5, 0.0, 0.8}}, 0.0, {0.0, 2.0}));
}

TEST(Curves, TouchingIsEnough) {
  const auto range = notBelow({{0.25, -1.0, 0.0}}, 0.0, {0.25, 1.0});
  ASSERT_TRUE(range);
  EXPECT_DOUBLE_EQ(range->from, 0.25);
  EXPECT_DOUBLE_EQ(range->to, 0.25);
}

TEST(Curves, EqualSlopesAndNoCurvatureAreNoTrouble) {
  const Peak peak = peakOf({{0.1, 0.5, 0.5}, {0.2, 0.5, 0.5}, {0.1, 0.5, 0.5}}, {0.0, 1.0});
  EXPECT_EQ(peak.curve, 0U);
  EXPECT_TRUE(std::isfinite(peak.value));
  EXPECT_DOUBLE_EQ(peak.t, 1.0);
}

}  // namespace

}  // namespace sumpwright::build
