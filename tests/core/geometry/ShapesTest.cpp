#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <string>

#include "geometry/Distance.h"
#include "geometry/Shapes.h"
#include "geometry/Slabs.h"

namespace sumpwright::geometry {
namespace {

const Polygon kSquare = {{0, 0}, {4, 0}, {4, 4}, {0, 4}};
const Polygon kL = {{0, 0}, {10, 0}, {10, 2}, {2, 2}, {2, 8}, {0, 8}};

Polygon turned(const Polygon& polygon, double angle, Vec shift) {
  Polygon result;
  for (const Point p : polygon) {
    result.push_back({std::cos(angle) * p.x - std::sin(angle) * p.y + shift.x,
                      std::sin(angle) * p.x + std::cos(angle) * p.y + shift.y});
  }
  return result;
}

Polygon reversed(Polygon polygon) {
  std::reverse(polygon.begin(), polygon.end());
  return polygon;
}

/// A star about a centre: simple by construction, of either turn.
Polygon randomStar(std::mt19937_64& random) {
  std::uniform_real_distribution<double> radius(0.5, 5.0);
  std::uniform_real_distribution<double> shift(-4.0, 4.0);
  const int corners = std::uniform_int_distribution<int>(3, 12)(random);
  const Point centre{shift(random), shift(random)};
  Polygon star;
  for (int i = 0; i < corners; ++i) {
    const double angle = 2 * M_PI * i / corners;
    star.push_back(centre + radius(random) * Vec{std::cos(angle), std::sin(angle)});
  }
  return random() % 2 == 0 ? star : reversed(star);
}

TEST(Shapes, AreaIsSignedByTurn) {
  EXPECT_DOUBLE_EQ(signedArea(kSquare), 16.0);
  EXPECT_DOUBLE_EQ(signedArea(reversed(kSquare)), -16.0);
  EXPECT_DOUBLE_EQ(signedArea(kL), 32.0);
  EXPECT_EQ(signedArea({}), 0.0);
  EXPECT_EQ(signedArea({{0, 0}, {1, 1}}), 0.0);
}

TEST(Shapes, CentroidOfDegenerateInputIsTheMean) {
  EXPECT_EQ(centroid({}), (Point{0, 0}));
  EXPECT_EQ(centroid({{1, 1}, {3, 1}}), (Point{2, 1}));
  EXPECT_EQ(centroid({{0, 0}, {2, 0}, {4, 0}}), (Point{2, 0}));
  const Point c = centroid(kL);
  EXPECT_NEAR(c.x, (20 * 5 + 12 * 1) / 32.0, 1e-12);
  EXPECT_NEAR(c.y, (20 * 1 + 12 * 5) / 32.0, 1e-12);
}

TEST(Shapes, LabelPointLiesDeepInside) {
  // The centre of area of a crescent lies outside it; a label must not.
  Polygon crescent;
  for (int i = 0; i <= 20; ++i) {
    const double a = M_PI * (0.1 + 1.8 * i / 20);
    crescent.push_back({5 * std::cos(a), 5 * std::sin(a)});
  }
  for (int i = 20; i >= 0; --i) {
    const double a = M_PI * (0.1 + 1.8 * i / 20);
    crescent.push_back({4 * std::cos(a), 4 * std::sin(a)});
  }
  EXPECT_FALSE(contains(crescent, centroid(crescent)));
  EXPECT_TRUE(contains(crescent, labelPoint(crescent)));
  // The largest circle of the L touches both outer walls and the inner corner (2, 2): centre (r, r)
  // with r = sqrt(2) (2 - r), so r = 4 - sqrt(8) (derived).
  const double deepest = 4 - std::sqrt(8.0);
  const Point label = labelPoint(kL);
  double depth = 1e9;
  for (std::size_t i = 0; i < kL.size(); ++i) {
    depth = std::min(depth, distance(label, Segment{kL[i], kL[(i + 1) % kL.size()]}));
  }
  EXPECT_TRUE(contains(kL, label));
  EXPECT_GE(depth, deepest - 0.05);
  EXPECT_LE(depth, deepest + 1e-9);
}

TEST(Shapes, LabelPointOfDegenerateInputIsTheCentroid) {
  EXPECT_EQ(labelPoint({}), (Point{0, 0}));
  EXPECT_EQ(labelPoint({{1, 1}, {3, 1}}), (Point{2, 1}));
  const Point sliver = labelPoint({{0, 0}, {1e4, 0}, {1e4, 1e-3}, {0, 1e-3}});
  EXPECT_TRUE(contains({{0, 0}, {1e4, 0}, {1e4, 1e-3}, {0, 1e-3}}, sliver));
}

TEST(Shapes, ContainsIsStrictAndEvenOdd) {
  EXPECT_TRUE(contains(kSquare, {2, 2}));
  EXPECT_TRUE(contains(reversed(kSquare), {2, 2}));
  EXPECT_FALSE(contains(kSquare, {4, 2}));
  EXPECT_FALSE(contains(kSquare, {0, 0}));
  EXPECT_FALSE(contains(kSquare, {5, 4}));
  EXPECT_FALSE(contains({}, {0, 0}));
  const Polygon twiceRound = {{0, 0}, {9, 0}, {9, 9}, {0, 9}, {0, 0}, {6, 0}, {6, 6}, {0, 6}};
  EXPECT_FALSE(contains(twiceRound, {3, 3}));
  EXPECT_TRUE(contains(twiceRound, {7, 7}));
}

TEST(Shapes, FirstSelfContactNamesThePlace) {
  EXPECT_FALSE(firstSelfContact(kSquare));
  EXPECT_FALSE(firstSelfContact(reversed(kL)));
  EXPECT_EQ(firstSelfContact({{0, 0}, {4, 0}, {0, 4}, {6, 6}}), (Point{2, 2}));          // crosses
  EXPECT_EQ(firstSelfContact({{0, 0}, {8, 0}, {8, 4}, {4, 0}, {0, 4}}), (Point{4, 0}));  // touches
  EXPECT_EQ(firstSelfContact({{0, 0}, {8, 0}, {8, 4}, {8, 1}}), (Point{8, 4}));  // doubles back
  EXPECT_EQ(firstSelfContact({{3, 0}, {1, 0}, {1, 4}, {5, 4}, {5, 0}, {2, 0}}), (Point{2, 0}));
  EXPECT_EQ(firstSelfContact({{1, 2}, {3, 4}}), (Point{1, 2}));
  EXPECT_EQ(firstSelfContact({{1, 2}, {3, 4}, {5, 6}}), (Point{1, 2}));
  EXPECT_FALSE(firstSelfContact({}));
  // A corner typed twice is a short edge, not a contact.
  EXPECT_FALSE(firstSelfContact({{0, 0}, {4, 0}, {4, 0}, {4, 4}, {0, 4}, {0, 0}}));
}

TEST(Shapes, OverlapOfRectanglesIsExact) {
  const Polygon other = {{3, 1}, {9, 1}, {9, 3}, {3, 3}};
  EXPECT_NEAR(overlapArea(kSquare, other), 2.0, 1e-12);
  EXPECT_NEAR(overlapArea(kSquare, reversed(other)), 2.0, 1e-12);
  EXPECT_NEAR(areaOutside(other, kSquare), 10.0, 1e-12);
  EXPECT_EQ(overlapArea(kSquare, {{4, 0}, {8, 0}, {8, 4}, {4, 4}}), 0.0);  // side by side
  EXPECT_NEAR(overlapArea(kSquare, kSquare), 16.0, 1e-12);
  EXPECT_EQ(overlapArea(kSquare, {}), 0.0);
}

TEST(Shapes, OverlapAgreesWithItsSlowTwin) {
  std::mt19937_64 random(20260301);
  for (int i = 0; i < 2000; ++i) {
    const Polygon a = randomStar(random);
    const Polygon b = randomStar(random);
    // Boost snaps crossings to a grid of the input's size over 1e7 or so; 1e-5 m2 is its error
    // here.
    ASSERT_NEAR(overlapArea(a, b), overlapAreaBySlabs(a, b), 1e-5) << "case " << i;
    ASSERT_NEAR(overlapArea(a, b), overlapArea(b, a), 1e-5) << "case " << i;
  }
}

TEST(Shapes, OverlapStaysUnderTurningAndShifting) {
  std::mt19937_64 random(7);
  for (int i = 0; i < 300; ++i) {
    const Polygon a = randomStar(random);
    const Polygon b = randomStar(random);
    const double angle = 0.02 * i;
    const Vec shift{10.0 * i, -3.0 * i};
    ASSERT_NEAR(overlapArea(a, b), overlapArea(turned(a, angle, shift), turned(b, angle, shift)),
                1e-4)
        << "case " << i;
  }
}

TEST(Shapes, SlabsTakeOutlinesThatCrossThemselves) {
  const Polygon bow = {{0, 0}, {4, 4}, {4, 0}, {0, 4}};  // two triangles of 4 m2
  EXPECT_NEAR(overlapAreaBySlabs(bow, kSquare), 8.0, 1e-12);
  EXPECT_NEAR(overlapAreaBySlabs(bow, {{0, 0}, {2, 0}, {2, 4}, {0, 4}}), 4.0, 1e-12);
}

TEST(Shapes, MeetIsClosed) {
  EXPECT_TRUE(meet({{0, 0}, {2, 0}}, {{2, 0}, {2, 2}}));
  EXPECT_TRUE(meet({{0, 0}, {2, 0}}, {{1, -1}, {1, 1}}));
  EXPECT_TRUE(meet({{0, 0}, {3, 0}}, {{1, 0}, {2, 0}}));
  EXPECT_FALSE(meet({{0, 0}, {2, 0}}, {{2.001, 0}, {2.001, 2}}));
  EXPECT_TRUE(meet({{1, 1}, {1, 1}}, {{0, 0}, {2, 2}}));
}

TEST(Shapes, BoxesApart) {
  EXPECT_TRUE(boxesApart(kSquare, {{5, 0}, {6, 0}, {6, 1}}));
  EXPECT_FALSE(boxesApart(kSquare, {{4, 4}, {6, 4}, {6, 6}}));
  EXPECT_TRUE(boxesApart(kSquare, {}));
}

}  // namespace
}  // namespace sumpwright::geometry
