// Projective maps from four corners: by hand, by round trip, against Qt's; similarities.

#include <gtest/gtest.h>

#include <QPolygonF>
#include <QTransform>
#include <algorithm>
#include <limits>

#include "geometry/Homography.h"
#include "support/Seed.h"

namespace sumpwright::geometry {
namespace {

using support::Random;

constexpr Quad kUnitSquare{{{0, 0}, {1, 0}, {1, 1}, {0, 1}}};

/// A rectangle with each corner moved by up to a fifth of a side: always proper.
Quad shakenQuad(Random& random) {
  const double width = random.uniform(0.5, 4000);
  const double height = width * random.uniform(0.3, 3);
  const Vec shift{width * random.uniform(-1, 1), height * random.uniform(-1, 1)};
  Quad quad = kUnitSquare;
  for (Point& p : quad) {
    p = Point{(p.x + random.uniform(-0.2, 0.2)) * width,
              (p.y + random.uniform(-0.2, 0.2)) * height} +
        shift;
  }
  if (random.chance(0.5)) std::reverse(quad.begin(), quad.end());
  return quad;
}

double sizeOf(const Quad& quad) {
  double size = 0;
  for (const Point p : quad) size = std::max({size, std::abs(p.x), std::abs(p.y)});
  return size;
}

Point inQuad(const Quad& quad, Random& random) {
  return lerp(lerp(quad[0], quad[1], random.uniform(0, 1)),
              lerp(quad[3], quad[2], random.uniform(0, 1)), random.uniform(0, 1));
}

QPolygonF qtQuad(const Quad& quad) {
  QPolygonF polygon;
  for (const Point p : quad) polygon << QPointF(p.x, p.y);
  return polygon;
}

void expectAt(const std::optional<Point>& p, Point expected, double tolerance) {
  ASSERT_TRUE(p);
  EXPECT_NEAR(p->x, expected.x, tolerance);
  EXPECT_NEAR(p->y, expected.y, tolerance);
}

// Derived by hand: (x, y) -> (x, y)/(1 + x) takes the unit square to this quad, the line x = -1 to
// infinity; the depth 1 + x is 1.5 in the middle.
TEST(Homography, WorkedByHand) {
  const auto map = Homography::between(kUnitSquare, {{{0, 0}, {0.5, 0}, {0.5, 0.5}, {0, 1}}});
  ASSERT_TRUE(map);
  expectAt(map->at({3, 1}), {0.75, 0.25}, 1e-14);
  expectAt(map->at({-0.5, 2}), {-1, 4}, 1e-13);
  EXPECT_NEAR(map->depth({3, 1}), 4 / 1.5, 1e-14);
  EXPECT_NEAR(map->depth({-1, 7}), 0, 1e-14);
  EXPECT_FALSE(map->at({-1.5, 0}));  // behind the camera
  expectAt(map->inverse().at({0.75, 0.25}), {3, 1}, 1e-12);
  EXPECT_NEAR(map->inverse().depth({0.75, 0.25}), 1.5 / 4, 1e-13);
}

TEST(Homography, OfAParallelogramIsAffine) {
  const auto map = Homography::between(kUnitSquare, {{{1, 1}, {4, 2}, {5, 6}, {2, 5}}});
  ASSERT_TRUE(map);
  for (const Point p : {Point{9, -7}, Point{-100, 3}}) {
    expectAt(map->at(p), {1 + 3 * p.x + p.y, 1 + p.x + 4 * p.y}, 1e-11);
    EXPECT_NEAR(map->depth(p), 1, 1e-12);
  }
}

TEST(Homography, TheIdentityStaysInPlace) {
  expectAt(Homography().at({-3, 1e6}), {-3, 1e6}, 0);
  expectAt(Homography().inverse().at({2, 5}), {2, 5}, 0);
}

TEST(HomographyProperty, CornersAndRoundTrips) {
  support::forEachSeed(2000, [](std::uint64_t seed) {
    Random random(seed);
    const Quad from = shakenQuad(random);
    const Quad to = shakenQuad(random);
    const auto map = Homography::between(from, to);
    ASSERT_TRUE(map);
    for (std::size_t i = 0; i < 4; ++i) expectAt(map->at(from[i]), to[i], 1e-12 * sizeOf(to));
    const Point p = inQuad(from, random);
    const auto there = map->at(p);
    ASSERT_TRUE(there);
    expectAt(map->inverse().at(*there), p, 1e-9);
    EXPECT_NEAR(map->inverse().depth(*there) * map->depth(p), 1, 1e-9);
    const auto back = Homography::between(to, from);
    ASSERT_TRUE(back);
    expectAt(back->at(*there), p, 1e-9);
  });
}

TEST(HomographyProperty, AsQtsQuadToQuad) {
  support::forEachSeed(500, [](std::uint64_t seed) {
    Random random(seed);
    const Quad from = shakenQuad(random);
    const Quad to = shakenQuad(random);
    const auto map = Homography::between(from, to);
    ASSERT_TRUE(map);
    QTransform qt;
    ASSERT_TRUE(QTransform::quadToQuad(qtQuad(from), qtQuad(to), qt));
    const Point p = inQuad(from, random);
    const QPointF q = qt.map(QPointF(p.x, p.y));
    expectAt(map->at(p), {q.x(), q.y()}, 1e-8 * sizeOf(to));
  });
}

TEST(HomographyProperty, OneAfterTheOtherIsOne) {
  support::forEachSeed(500, [](std::uint64_t seed) {
    Random random(seed);
    const Quad a = shakenQuad(random);
    const Quad b = shakenQuad(random);
    const Quad c = shakenQuad(random);
    const auto ab = Homography::between(a, b);
    const auto bc = Homography::between(b, c);
    const auto ac = Homography::between(a, c);
    ASSERT_TRUE(ab && bc && ac);
    const Point p = inQuad(a, random);
    const auto whole = ab->then(*bc).at(p);
    ASSERT_TRUE(whole);
    expectAt(ac->at(p), *whole, 1e-9);
    const auto half_way = ab->at(p);
    ASSERT_TRUE(half_way);
    EXPECT_NEAR(ab->then(*bc).depth(p), ab->depth(p) * bc->depth(*half_way), 1e-9);
  });
}

TEST(HomographyProperty, StraightLinesStayStraight) {
  support::forEachSeed(500, [](std::uint64_t seed) {
    Random random(seed);
    const Quad from = shakenQuad(random);
    const Quad to = shakenQuad(random);
    const auto map = Homography::between(from, to);
    ASSERT_TRUE(map);
    const Point a = inQuad(from, random);
    const Point b = inQuad(from, random);
    const auto ends = std::array{map->at(a), map->at(lerp(a, b, 0.3)), map->at(b)};
    ASSERT_TRUE(ends[0] && ends[1] && ends[2]);
    EXPECT_NEAR(cross(*ends[1] - *ends[0], *ends[2] - *ends[0]), 0,
                1e-10 * sizeOf(to) * sizeOf(to));
  });
}

TEST(Homography, WhatIsNoProperQuad) {
  EXPECT_TRUE(properQuad(kUnitSquare));
  EXPECT_TRUE(properQuad({{{0, 1}, {1, 1}, {1, 0}, {0, 0}}}));         // the other way round
  EXPECT_FALSE(properQuad({{{0, 0}, {1, 1}, {1, 0}, {0, 1}}}));        // folded
  EXPECT_FALSE(properQuad({{{0, 0}, {1, 0}, {0.2, 0.2}, {0, 1}}}));    // a corner points inwards
  EXPECT_FALSE(properQuad({{{0, 0}, {0.5, 0}, {1, 0}, {0, 1}}}));      // three in a line
  EXPECT_FALSE(properQuad({{{0, 0}, {0.5, -1e-6}, {1, 0}, {0, 1}}}));  // nearly
  EXPECT_TRUE(properQuad({{{0, 0}, {0.5, -1e-5}, {1, 0}, {0, 1}}}));
  EXPECT_FALSE(properQuad({{{0, 0}, {1, 0}, {1, 0}, {0, 1}}}));  // two are one
  EXPECT_FALSE(properQuad({}));
  EXPECT_FALSE(properQuad({{{0, 0}, {1e-7, 0}, {1e-7, 1e-7}, {0, 1e-7}}}));
  EXPECT_FALSE(properQuad({{{0, 0}, {1e10, 0}, {1e10, 1e10}, {0, 1e10}}}));
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_FALSE(properQuad({{{0, 0}, {1, 0}, {1, nan}, {0, 1}}}));
  EXPECT_FALSE(Homography::between(kUnitSquare, {}));
  EXPECT_FALSE(Homography::between({}, kUnitSquare));
}

TEST(Similarity, PutsTwoPointsAtTheirTrueDistance) {
  // Derived: 5 drawn units are 10 m, and run along +y.
  const auto map = similarity({1, 1}, {4, 5}, {100, 200}, 10, 90);
  ASSERT_TRUE(map);
  EXPECT_DOUBLE_EQ(map->scale, 2);
  expectAt(map->at({1, 1}), {100, 200}, 1e-12);
  expectAt(map->at({4, 5}), {100, 210}, 1e-12);
  expectAt(map->inverse().at({100, 210}), {4, 5}, 1e-12);
}

TEST(Similarity, WithoutADirectionOnlyScales) {
  const auto map = similarity({1, 1}, {4, 5}, {1, 1}, 10);
  ASSERT_TRUE(map);
  EXPECT_NEAR(map->turn_deg, 0, 1e-12);
  expectAt(map->at({4, 5}), {7, 9}, 1e-12);
}

TEST(Similarity, TurnsTheShortWay) {
  const auto map = similarity({0, 0}, {1, 0}, {0, 0}, 1, 270);
  ASSERT_TRUE(map);
  EXPECT_NEAR(map->turn_deg, -90, 1e-12);
  EXPECT_EQ(similarity({0, 0}, {1, 0}, {0, 0}, 1, -180)->turn_deg, 180);
}

TEST(Similarity, NothingOfNoLength) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_FALSE(similarity({1, 1}, {1, 1}, {0, 0}, 1));
  EXPECT_FALSE(similarity({0, 0}, {1, 1}, {0, 0}, 0));
  EXPECT_FALSE(similarity({0, 0}, {1, 1}, {0, 0}, -1));
  EXPECT_FALSE(similarity({0, nan}, {1, 1}, {0, 0}, 1));
  EXPECT_FALSE(similarity({0, 0}, {1, 1}, {0, 0}, 1, nan));
  EXPECT_FALSE(similarity({0, 0}, {1e-300, 0}, {0, 0}, 1e300));
}

}  // namespace
}  // namespace sumpwright::geometry
