#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>

#include "geometry/Distance.h"
#include "geometry/Interval.h"

namespace sumpwright::geometry {

namespace {

constexpr double kMicrometre = 1e-6;
const Line kEast{{0, 0}, {1, 0}};  // P(t) = (t, 0)

void expectOne(const Intervals& found, double from, double to) {
  ASSERT_EQ(found.size(), 1U);
  EXPECT_NEAR(found[0].from, from, kMicrometre);
  EXPECT_NEAR(found[0].to, to, kMicrometre);
}

void expectInterval(const std::optional<Interval>& found, double from, double to) {
  ASSERT_TRUE(found);
  expectOne({*found}, from, to);
}

TEST(Interval, EmptyAndLength) {
  EXPECT_TRUE(Interval{}.empty());
  EXPECT_TRUE((Interval{2, 1}).empty());
  EXPECT_EQ((Interval{2, 1}).length(), 0.0);
  EXPECT_EQ((Interval{1, 3}).length(), 2.0);
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_TRUE((Interval{nan, 1}).empty());
}

TEST(Interval, ClipKeepsTheOverlap) {
  EXPECT_EQ(clip({0, 5}, {2, 9}), (Interval{2, 5}));
  EXPECT_TRUE(clip({0, 2}, {2, 4}).empty());
  EXPECT_TRUE(clip({0, 1}, {3, 4}).empty());
}

TEST(Interval, UniteMergesOverlapsAndKeepsTouchingApart) {
  EXPECT_EQ(unite({{4, 6}, {0, 2}, {1, 3}, {5, 5}}), (Intervals{{0, 3}, {4, 6}}));
  EXPECT_EQ(unite({{0, 2}, {2, 4}}), (Intervals{{0, 2}, {2, 4}}));  // 2 belongs to neither
  EXPECT_EQ(unite({{0, 9}, {1, 2}, {3, 4}}), (Intervals{{0, 9}}));
  EXPECT_TRUE(unite({}).empty());
}

// A point h off the line is within r over t = foot -+ sqrt(r^2 - h^2): 3-4-5.
TEST(Interval, WithinOfAPoint) {
  expectInterval(within(kEast, Point{10, 3}, 5.0), 6.0, 14.0);
  expectInterval(within(kEast, Point{10, -3}, 5.0), 6.0, 14.0);
  expectInterval(within(kEast, Point{10, 0}, 2.0), 8.0, 12.0);
}

TEST(Interval, WithinIsStrict) {
  EXPECT_FALSE(within(kEast, Point{10, 5}, 5.0));  // touches in one place, exactly 5 away
  EXPECT_FALSE(within(kEast, Point{10, 6}, 5.0));
  EXPECT_FALSE(within(kEast, Point{10, 0}, 0.0));
  EXPECT_FALSE(within(kEast, Point{10, 0}, -1.0));
  EXPECT_FALSE(within(kEast, Segment{{0, 5}, {9, 5}}, 5.0));  // runs along, exactly 5 away
  EXPECT_FALSE(within(kEast, Segment{{0, 0}, {9, 0}}, 0.0));
}

// Grazing: r - h = 1e-10 m gives half of sqrt(2 r 1e-10) = 1.7320508e-5 m for r = 1.5.
TEST(Interval, GrazingLineKeepsItsDigits) {
  expectInterval(within(kEast, Point{10, 1.5 - 1e-10}, 1.5), 10 - 1.7320508e-5, 10 + 1.7320508e-5);
}

TEST(Interval, WithinOfASegmentIsACapsule) {
  // Along the line, 3 off it: its length and 4 beyond either end.
  expectInterval(within(kEast, Segment{{10, 3}, {20, 3}}, 5.0), 6.0, 24.0);
  // Square to the line: as its nearer end.
  expectInterval(within(kEast, Segment{{10, 3}, {10, 30}}, 5.0), 6.0, 14.0);
  // Crossing it at 45 degrees: sides of the capsule, r / sin 45 either way.
  const double r = 1.0;
  expectInterval(within(kEast, Segment{{5, -5}, {15, 5}}, r), 10 - r * std::numbers::sqrt2,
                 10 + r * std::numbers::sqrt2);
  // On the line itself.
  expectInterval(within(kEast, Segment{{10, 0}, {20, 0}}, 2.0), 8.0, 22.0);
  // No length: a point.
  expectInterval(within(kEast, Segment{{10, 3}, {10, 3}}, 5.0), 6.0, 14.0);
  EXPECT_FALSE(within(kEast, Segment{{10, 6}, {20, 7}}, 5.0));
}

TEST(Interval, WithinOfAPolylineUnitesItsPieces) {
  const Polyline u{{10, 0}, {10, 20}, {30, 20}, {30, 0}};
  const Intervals found = within(kEast, u, 3.0);
  ASSERT_EQ(found.size(), 2U);
  expectOne({found[0]}, 7.0, 13.0);
  expectOne({found[1]}, 27.0, 33.0);
  expectOne(within(kEast, Polyline{{10, 3}}, 5.0), 6.0, 14.0);
  EXPECT_TRUE(within(kEast, Polyline{}, 5.0).empty());
}

TEST(Interval, InsideFollowsEveryCrossing) {
  const Polygon u{{0, -1}, {9, -1}, {9, 5}, {6, 5}, {6, 2}, {3, 2}, {3, 5}, {0, 5}};
  EXPECT_EQ(inside({{-5, 0}, {1, 0}}, u), (Intervals{{5, 14}}));
  EXPECT_EQ(inside({{-5, 3}, {1, 0}}, u), (Intervals{{5, 8}, {11, 14}}));
  EXPECT_TRUE(inside({{-5, 9}, {1, 0}}, u).empty());
  EXPECT_TRUE(inside(kEast, {}).empty());
  // Through corners: a square on its tip is entered and left once.
  EXPECT_EQ(inside(kEast, {{2, 0}, {4, -2}, {6, 0}, {4, 2}}), (Intervals{{2, 6}}));
  // Touching a tip is not inside.
  EXPECT_TRUE(inside({{0, 2}, {1, 0}}, {{2, 0}, {4, -2}, {6, 0}, {4, 2}}).empty());
}

TEST(Interval, WithinAreaCountsTheInsideAsNear) {
  const Polygon square{{10, -4}, {18, -4}, {18, 4}, {10, 4}};
  expectOne(withinArea(kEast, square, 2.0), 8.0, 20.0);
  expectOne(withinArea(kEast, square, 0.0), 10.0, 18.0);  // r = 0: the open inside
  const Polygon clockwise(square.rbegin(), square.rend());
  expectOne(withinArea(kEast, clockwise, 2.0), 8.0, 20.0);
  // 3 below the line: as a segment 3 off it.
  const Polygon below{{10, -7}, {18, -7}, {18, -3}, {10, -3}};
  expectOne(withinArea(kEast, below, 5.0), 6.0, 22.0);
  EXPECT_TRUE(withinArea(kEast, below, 0.0).empty());
  // Fewer than three corners: the line, and the point.
  expectOne(withinArea(kEast, {{10, 3}, {20, 3}}, 5.0), 6.0, 24.0);
  expectOne(withinArea(kEast, {{10, 3}}, 5.0), 6.0, 14.0);
  EXPECT_TRUE(withinArea(kEast, {}, 5.0).empty());
}

TEST(Interval, DegenerateInputGivesNoNaN) {
  const Polygon flat{{3, 0}, {7, 0}, {5, 0}};  // no area, on the line
  for (const Interval& i : withinArea(kEast, flat, 1.0)) {
    EXPECT_FALSE(std::isnan(i.from) || std::isnan(i.to));
  }
  expectOne(withinArea(kEast, flat, 1.0), 2.0, 8.0);
  const Polyline repeated{{3, 0}, {3, 0}, {3, 0}};
  expectOne(within(kEast, repeated, 1.0), 2.0, 4.0);
}

// Far from the origin a micrometre is still kept (Interval.h: within 10 km, 2.4 um when grazing).
TEST(Interval, TenKilometresAway) {
  const Line far{{9000, -9000}, {0.6, 0.8}};
  const Point centre = far.at(10.0) + 3.0 * Vec{-0.8, 0.6};
  expectInterval(within(far, centre, 5.0), 6.0, 14.0);
}

}  // namespace

}  // namespace sumpwright::geometry
