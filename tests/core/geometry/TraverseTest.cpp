// Taped outlines: closing, both ways of sharing the gap out, and the wall that was misread.

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "geometry/Traverse.h"

namespace sumpwright::geometry {
namespace {

double degrees(double d, double m, double s) { return d + m / 60.0 + s / 3600.0; }

// The five-sided traverse of C. Ghilani and P. Wolf, Elementary Surveying, chapter on traverse
// computations (feet; numbers from memory, recomputed here by hand: they agree with each other).
std::vector<Leg> textbook() {
  return {{degrees(126, 55, 17), 647.25, false},
          {degrees(178, 18, 58), 203.03, false},
          {degrees(15, 31, 54), 720.35, false},
          {degrees(284, 35, 20), 610.24, false},
          {degrees(206, 9, 41), 285.13, false}};
}

TEST(Traverse, TextbookClosing) {
  const Closing c = closingOf(textbook());
  // Bearings are to a second: 0.0035 over the longest course.
  EXPECT_NEAR(-c.gap.x, 0.026, 0.0035);  // departures
  EXPECT_NEAR(-c.gap.y, 0.077, 0.0035);  // latitudes
  EXPECT_NEAR(c.gap_m, 0.081, 0.0035);
  EXPECT_NEAR(c.round_m, 2466.00, 1e-9);
  ASSERT_TRUE(c.one_in);
  EXPECT_NEAR(*c.one_in, 30'000, 1500);
}

TEST(Traverse, TextbookCompassRule) {
  const auto all = closedByCompassRule({0, 0}, textbook());
  ASSERT_EQ(all.size(), 6U);
  // Balanced departure and latitude of each course, same source.
  const std::vector<Vec> balanced{{517.444, -388.835},
                                  {5.964, -202.948},
                                  {192.881, 694.022},
                                  {-590.571, 153.689},
                                  {-125.718, -255.928}};
  for (std::size_t i = 0; i < 5; ++i) {
    EXPECT_NEAR(all[i + 1].x - all[i].x, balanced[i].x, 0.0011) << i;
    EXPECT_NEAR(all[i + 1].y - all[i].y, balanced[i].y, 0.0011) << i;
  }
  EXPECT_NEAR(all[5].x, 0.0, 1e-9);
  EXPECT_NEAR(all[5].y, 0.0, 1e-9);
}

std::vector<Leg> rectangle(double a, double b, double c, double d) {
  return {{90, a}, {0, b}, {270, c}, {180, d}};
}

TEST(Traverse, NothingHasNoGap) {
  const Closing c = closingOf({});
  EXPECT_EQ(c.gap_m, 0.0);
  EXPECT_FALSE(c.one_in);
  EXPECT_EQ(corners({1, 2}, {}), (std::vector<Point>{{1, 2}}));
  EXPECT_EQ(closedByCompassRule({1, 2}, {}), (std::vector<Point>{{1, 2}}));
}

TEST(Traverse, RightAnglesCloseWithoutRounding) {
  const Closing c = closingOf(rectangle(12.34, 7.1, 12.34, 7.1));
  EXPECT_EQ(c.gap_m, 0.0);
  EXPECT_FALSE(c.one_in);
}

TEST(Traverse, GapIsTheWayBackToTheStart) {
  const Closing c = closingOf(rectangle(12.3, 7.1, 12.0, 7.1));
  EXPECT_NEAR(c.gap.x, -0.3, 1e-12);
  EXPECT_NEAR(c.bearing_deg, 270.0, 1e-9);
  EXPECT_NEAR(*c.one_in, (12.3 + 12.0 + 14.2) / 0.3, 1e-6);
}

TEST(Traverse, LeastSquaresKeepsRightAnglesAndSharesAlongTheGap) {
  const auto closed = closedByLeastSquares(rectangle(12.3, 7.1, 12.0, 7.1), {});
  ASSERT_TRUE(closed);
  const auto& legs = *closed;
  EXPECT_LT(closingOf(legs).gap_m, 1e-9);
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_EQ(legs[i].bearing_deg, rectangle(1, 1, 1, 1)[i].bearing_deg);
  }
  EXPECT_EQ(legs[1].length_m, 7.1);
  EXPECT_EQ(legs[3].length_m, 7.1);
  // The longer wall is a little less sure and gives a little more.
  EXPECT_GT(12.3 - legs[0].length_m, legs[2].length_m - 12.0);
  EXPECT_NEAR(legs[0].length_m, 12.15, 0.002);
}

TEST(Traverse, HeldLengthStays) {
  auto legs = rectangle(12.3, 7.1, 12.0, 7.1);
  legs[0].length_held = true;
  const auto closed = closedByLeastSquares(legs, {});
  ASSERT_TRUE(closed);
  EXPECT_EQ((*closed)[0].length_m, 12.3);
  EXPECT_NEAR((*closed)[2].length_m, 12.3, 1e-9);
}

TEST(Traverse, WhatCannotCloseIsSaid) {
  EXPECT_FALSE(closedByLeastSquares({{90, 5}, {270, 4}}, {}));  // nothing can move north
  auto legs = rectangle(12.3, 7.1, 12.0, 7.1);
  for (Leg& leg : legs) leg.length_held = true;
  EXPECT_FALSE(closedByLeastSquares(legs, {}));
  EXPECT_FALSE(closedByLeastSquares({}, {}));
}

// Where a leg is equally unsure along and across, by the root of its length, least squares is the
// compass rule (derived; to first order in the gap).
TEST(Traverse, LeastSquaresIsTheCompassRuleWhereErrorsGrowSo) {
  const std::vector<Leg> legs = textbook();
  const auto by_rule = closedByCompassRule({0, 0}, legs);
  // One leg at a time has its own bearing error, so unit lengths: each leg cut into pieces of one
  // length makes the bearing's share across grow as the root of the length too.
  std::vector<Leg> pieces;
  std::vector<std::size_t> ends;
  for (const Leg& leg : legs) {
    const int count = static_cast<int>(std::lround(leg.length_m));
    for (int i = 0; i < count; ++i) {
      pieces.push_back({leg.bearing_deg, leg.length_m / count, false});
    }
    ends.push_back(pieces.size());
  }
  const double across_deg = 0.002 * 180.0 / 3.14159265358979323846;
  const auto closed = closedByLeastSquares(pieces, {0.0, 0.002, across_deg});
  ASSERT_TRUE(closed);
  const auto points = corners({0, 0}, *closed);
  for (std::size_t i = 0; i < ends.size(); ++i) {
    EXPECT_NEAR(points[ends[i]].x, by_rule[i + 1].x, 2e-4) << i;
    EXPECT_NEAR(points[ends[i]].y, by_rule[i + 1].y, 2e-4) << i;
  }
}

// No other change of the observations that closes the outline is smaller (random outlines, seeded).
TEST(Traverse, NoSmallerChangeCloses) {
  std::mt19937 random(20260501);
  std::uniform_real_distribution<double> length(1.0, 12.0);
  std::uniform_real_distribution<double> error(-0.03, 0.03);
  for (int round = 0; round < 50; ++round) {
    std::vector<Leg> legs;
    for (int i = 0; i < 6; ++i) {
      legs.push_back({60.0 * i + 20.0 * error(random), 6.0 + error(random), i % 2 == 0});
    }
    const Precision p;
    const auto closed = closedByLeastSquares(legs, p);
    ASSERT_TRUE(closed);
    const auto cost = [&](const std::vector<Leg>& moved) {
      double sum = 0.0;
      for (std::size_t i = 0; i < legs.size(); ++i) {
        const double along = moved[i].length_m - legs[i].length_m;
        const double turn = moved[i].bearing_deg - legs[i].bearing_deg;
        sum += along * along /
               (p.length_m * p.length_m +
                p.length_per_root_m * p.length_per_root_m * legs[i].length_m);
        if (!legs[i].bearing_held) sum += turn * turn / (p.bearing_deg * p.bearing_deg);
      }
      return sum;
    };
    EXPECT_LT(closingOf(*closed).gap_m, 1e-8);
    // Move two lengths and let the other two that can close it again.
    for (int trial = 0; trial < 20; ++trial) {
      std::vector<Leg> other = *closed;
      other[0].length_m += error(random) / 10.0;
      other[3].length_m += error(random) / 10.0;
      const Vec gap = closingOf(other).gap;
      const Vec a = walked({other[1].bearing_deg, 1.0});
      const Vec b = walked({other[2].bearing_deg, 1.0});
      other[1].length_m += cross(gap, b) / cross(a, b);
      other[2].length_m += cross(a, gap) / cross(a, b);
      ASSERT_LT(closingOf(other).gap_m, 1e-9);
      EXPECT_GE(cost(other), cost(*closed) - 1e-9);
    }
  }
}

// ---- the misread wall ----

std::vector<Leg> lShape() {
  return {{90, 12.40}, {0, 5.27}, {270, 4.15}, {0, 3.60}, {270, 8.25}, {180, 8.87}};
}

TEST(Misread, TransposedDigitsAreFound) {
  auto legs = lShape();
  legs[1].length_m = 5.72;  // 5.27 read the other way round
  const auto found = misreadsThatExplain(legs, 0.02);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].leg, 1U);
  EXPECT_EQ(found[0].kind, MisreadKind::transposed);
  EXPECT_NEAR(found[0].length_m, 5.27, 1e-12);
  EXPECT_NEAR(found[0].left_m, 0.0, 1e-12);
}

TEST(Misread, AMetreLostPointsToEveryWallThatWay) {
  auto legs = lShape();
  legs[0].length_m -= 1.0;
  const auto found = misreadsThatExplain(legs, 0.02);
  std::vector<std::size_t> walls;
  for (const Misread& m : found) walls.push_back(m.leg);
  EXPECT_EQ(walls, (std::vector<std::size_t>{0, 2, 4}));
  EXPECT_NEAR(found[0].length_m, 12.40, 1e-12);
}

TEST(Misread, WithinTheAccuracyNothingIsSuspected) {
  auto legs = lShape();
  legs[0].length_m += 0.01;
  EXPECT_TRUE(misreadsThatExplain(legs, 0.02).empty());
}

TEST(Misread, TwoFaultsAreNoSingleOne) {
  auto legs = lShape();
  legs[0].length_m -= 1.0;
  legs[1].length_m += 0.37;
  EXPECT_TRUE(misreadsThatExplain(legs, 0.02).empty());
}

TEST(Misread, LeadingDigitToo) {
  auto legs = lShape();
  legs[0].length_m = 21.40;  // 12.40
  const auto found = misreadsThatExplain(legs, 0.02);
  ASSERT_FALSE(found.empty());
  EXPECT_EQ(found[0].leg, 0U);
  EXPECT_NEAR(found[0].length_m, 12.40, 1e-12);
}

}  // namespace
}  // namespace sumpwright::geometry
