// Areas taken out of one another, above all where edges all but coincide.

#include <gtest/gtest.h>

#include <cmath>

#include "geometry/Areas.h"
#include "geometry/Shapes.h"
#include "geometry/Slabs.h"
#include "support/Seed.h"

namespace sumpwright::geometry {
namespace {

double sumOf(const std::optional<std::vector<Face>>& faces) {
  double sum = 0.0;
  if (faces) {
    for (const Face& f : *faces) sum += faceArea(f);
  }
  return sum;
}

TEST(Areas, ABandAlongASlantedEdgeTakesNoMoreThanItself) {
  // Where the library alone gave nothing at all: an edge of the outline, and a band that overhangs
  // it by a millimetre.
  const Polygon house{{0, 0}, {10, 0}, {10, 8}, {5, 8}, {5.7618952029980255, 5.5607662309963768},
                      {0, 5}};
  const Vec along = (1.0 / distance(house[4], house[5])) * (house[5] - house[4]);
  const Vec out = -left(along);
  const Polygon band{house[4] + 0.001 * out, house[4] - 0.255 * out, house[5] - 0.255 * out,
                     house[5] + 0.001 * out};
  const auto rest = without(house, {band});
  ASSERT_TRUE(rest);
  ASSERT_EQ(rest->size(), 1U);
  const double whole = std::abs(signedArea(house));
  EXPECT_NEAR(sumOf(rest) + sumOf(common(house, band)), whole, 1e-4);
  EXPECT_LT(sumOf(rest), whole - 1.0);
}

/// A ring of places about the origin: simple, any number of corners, not convex.
Polygon someShape(support::Random& random, Point centre) {
  const int corners = random.between(3, 9);
  Polygon shape;
  for (int i = 0; i < corners; ++i) {
    const double angle = 2.0 * 3.14159265358979 * i / corners;
    const double radius = random.uniform(2.0, 6.0);
    shape.push_back(centre + radius * Vec{std::cos(angle), std::sin(angle)});
  }
  return shape;
}

TEST(Areas, PartsMakeUpTheWhole) {
  support::forEachSeed(300, [](std::uint64_t seed) {
    support::Random random(seed);
    Polygon a = someShape(random, {0, 0});
    // A neighbour that all but shares an edge: what house walls, floors and rooms do.
    Polygon b = someShape(random, {random.uniform(-4, 4), random.uniform(-4, 4)});
    if (random.between(0, 1) == 1) {
      b = a;
      for (Point& p : b) p = p + Vec{random.uniform(-0.002, 0.002), random.uniform(-0.002, 0.002)};
    }
    const auto rest = without(a, {b});
    const auto both = common(a, b);
    ASSERT_TRUE(rest && both);
    EXPECT_NEAR(sumOf(rest) + sumOf(both), std::abs(signedArea(a)), 1e-3);
    EXPECT_NEAR(sumOf(both), overlapAreaBySlabs(a, b), 1e-3);
  });
}

TEST(Areas, NothingTakenOutOfNothing) {
  const Polygon square{{0, 0}, {1, 0}, {1, 1}, {0, 1}};
  EXPECT_EQ(sumOf(without({}, {square})), 0.0);
  EXPECT_EQ(sumOf(without(square, {{{0, 0}, {1, 0}}})), 1.0);
  EXPECT_FALSE(without({{0, 0}, {1, 1}, {1, 0}, {0, 1}, {0.2, 3}}, {square}));
}

}  // namespace
}  // namespace sumpwright::geometry
