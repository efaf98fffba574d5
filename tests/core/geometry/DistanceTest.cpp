#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "geometry/Distance.h"

namespace sumpwright::geometry {

namespace {

constexpr double kExact = 1e-12;
const Polygon kSquare{{0, 0}, {4, 0}, {4, 4}, {0, 4}};

TEST(Distance, PointToSegmentIsToItsFootOrItsEnds) {
  const Segment s{{1, 1}, {5, 1}};
  EXPECT_NEAR(distance(Point{3, 4}, s), 3.0, kExact);
  EXPECT_NEAR(distance(Point{-2, 5}, s), 5.0, kExact);  // 3-4-5 from the first end
  EXPECT_NEAR(distance(Point{8, -3}, s), 5.0, kExact);
  EXPECT_EQ(distance(Point{2, 1}, s), 0.0);
  EXPECT_EQ(nearest({3, 4}, s), (Point{3, 1}));
  EXPECT_EQ(nearest({9, 9}, s), (Point{5, 1}));  // the end itself, to the bit
}

TEST(Distance, SegmentOfNoLengthIsAPoint) {
  const Segment dot{{2, 3}, {2, 3}};
  EXPECT_NEAR(distance(Point{5, 7}, dot), 5.0, kExact);
  EXPECT_EQ(nearest({5, 7}, dot), (Point{2, 3}));
  EXPECT_NEAR(distance(dot, Segment{{5, 7}, {5, 7}}), 5.0, kExact);
  EXPECT_NEAR(distance(dot, Segment{{0, 0}, {4, 0}}), 3.0, kExact);
}

TEST(Distance, SegmentsThatMeetAreNoDistanceApart) {
  const Segment s{{0, 0}, {4, 0}};
  EXPECT_EQ(distance(s, Segment{{2, -1}, {2, 1}}), 0.0);           // cross
  EXPECT_EQ(distance(s, Segment{{4, 0}, {6, 5}}), 0.0);            // share an end
  EXPECT_EQ(distance(s, Segment{{3, 0}, {9, 0}}), 0.0);            // overlap
  EXPECT_NEAR(distance(s, Segment{{0, 2}, {4, 2}}), 2.0, kExact);  // parallel
  EXPECT_NEAR(distance(s, Segment{{7, 4}, {9, 8}}), 5.0, kExact);  // end to end
  EXPECT_NEAR(distance(s, Segment{{6, 0}, {9, 0}}), 2.0, kExact);  // in line
}

TEST(Distance, PolylineTakesItsNearestPiece) {
  const Polyline line{{0, 0}, {4, 0}, {4, 4}};
  EXPECT_NEAR(distance(Point{6, 3}, line), 2.0, kExact);
  EXPECT_NEAR(distance(Point{0, 4}, line), 4.0, kExact);  // open: the way back is no part of it
  EXPECT_NEAR(distance(Segment{{6, 1}, {9, 1}}, line), 2.0, kExact);
  EXPECT_EQ(nearest({6, 3}, line), (Point{4, 3}));
  EXPECT_NEAR(distance(Point{3, 4}, Polyline{{0, 0}}), 5.0, kExact);
  EXPECT_EQ(distance(Point{0, 0}, Polyline{}), std::numeric_limits<double>::infinity());
  EXPECT_EQ(distance(Segment{{0, 0}, {1, 0}}, Polyline{}), std::numeric_limits<double>::infinity());
  EXPECT_EQ(nearest({1, 2}, Polyline{}), (Point{1, 2}));
}

TEST(Distance, AreaIsNoDistanceInsideAndOnItsEdge) {
  EXPECT_EQ(distanceToArea(Point{2, 2}, kSquare), 0.0);
  EXPECT_EQ(distanceToArea(Point{4, 2}, kSquare), 0.0);
  EXPECT_EQ(distanceToArea(Point{4, 4}, kSquare), 0.0);
  EXPECT_NEAR(distanceToArea(Point{7, 8}, kSquare), 5.0, kExact);
  const Polygon clockwise(kSquare.rbegin(), kSquare.rend());
  EXPECT_EQ(distanceToArea(Point{2, 2}, clockwise), 0.0);
  EXPECT_NEAR(distanceToArea(Point{-3, 2}, clockwise), 3.0, kExact);
}

TEST(Distance, SegmentToAreaSeesWhatLiesWithin) {
  EXPECT_EQ(distanceToArea(Segment{{1, 1}, {3, 3}}, kSquare), 0.0);   // wholly inside
  EXPECT_EQ(distanceToArea(Segment{{-1, 2}, {9, 2}}, kSquare), 0.0);  // right through
  EXPECT_NEAR(distanceToArea(Segment{{6, -5}, {6, 9}}, kSquare), 2.0, kExact);
}

TEST(Distance, AreaOfFewerThanThreeCornersIsItsLine) {
  EXPECT_NEAR(distanceToArea(Point{3, 4}, Polygon{{0, 0}}), 5.0, kExact);
  EXPECT_NEAR(distanceToArea(Point{2, 3}, Polygon{{0, 0}, {4, 0}}), 3.0, kExact);
  EXPECT_EQ(distanceToArea(Point{2, 3}, Polygon{}), std::numeric_limits<double>::infinity());
}

TEST(Distance, NotchOfAnLIsOutside) {
  const Polygon l{{0, 0}, {4, 0}, {4, 1}, {1, 1}, {1, 4}, {0, 4}};
  EXPECT_EQ(distanceToArea(Point{0.5, 3}, l), 0.0);
  EXPECT_NEAR(distanceToArea(Point{2, 3}, l), 1.0, kExact);
  EXPECT_NEAR(distanceToArea(Point{1.5, 1.25}, l), 0.25, kExact);
}

}  // namespace

}  // namespace sumpwright::geometry
