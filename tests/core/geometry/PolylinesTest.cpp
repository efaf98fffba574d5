#include <gtest/gtest.h>

#include "geometry/Polylines.h"

namespace sumpwright::geometry {
namespace {

const Polyline kBent{{0, 0}, {3, 0}, {3, 4}};

TEST(Polylines, LengthIsThatOfAllLegs) {
  EXPECT_EQ(lengthOf(kBent), 7.0);
  EXPECT_EQ(lengthOf({{1, 1}}), 0.0);
  EXPECT_EQ(lengthOf({}), 0.0);
}

TEST(Polylines, APointAlongIsOnItsLegAndTheLastOneBeyondTheEnd) {
  EXPECT_EQ(pointAlong(kBent, 0.0), (Point{0, 0}));
  EXPECT_EQ(pointAlong(kBent, 3.0), (Point{3, 0}));
  EXPECT_EQ(pointAlong(kBent, 5.0), (Point{3, 2}));
  EXPECT_EQ(pointAlong(kBent, 9.0), (Point{3, 4}));
  EXPECT_EQ(pointAlong({{0, 0}, {0, 0}, {2, 0}}, 1.0), (Point{1, 0}));  // a leg of no length
  EXPECT_EQ(pointAlong({{1, 1}}, 1.0), (Point{1, 1}));
}

TEST(Polylines, APartKeepsTheCornersWithin) {
  EXPECT_EQ(partOf(kBent, 1.0, 5.0), (Polyline{{1, 0}, {3, 0}, {3, 2}}));
  EXPECT_EQ(partOf(kBent, 3.0, 5.0), (Polyline{{3, 0}, {3, 2}}));
  EXPECT_EQ(partOf(kBent, 0.0, 7.0), kBent);
}

}  // namespace
}  // namespace sumpwright::geometry
