#include <gtest/gtest.h>

#include "support/PlanBuilder.h"
#include "tools/Faces.h"
#include "tools/Measuring.h"

namespace sumpwright::tools {
namespace {

using support::PlanBuilder;

// 10 x 8, walls 0.35 m thick: the inner corners stand at 0.35 and 9.65, 7.65.

TEST(Faces, APlaceOutsideIsTapedAlongTheWallFromItsNearestCorner) {
  const auto from = fromNearestCorner(PlanBuilder::rectangle(), {1.2, -0.45});
  ASSERT_TRUE(from.has_value());
  EXPECT_EQ(from->corner, (Point{0, 0}));
  EXPECT_EQ(from->face.edge, 0);
  EXPECT_NEAR(from->along_m, 1.2, 1e-12);
  EXPECT_NEAR(from->off_m, 0.45, 1e-12);
  const Point typed = placeAt(*from, 1.25, 0.5);
  EXPECT_NEAR(typed.x, 1.25, 1e-12);
  EXPECT_NEAR(typed.y, -0.5, 1e-12);
}

TEST(Faces, APlaceInsideIsTapedOffTheInnerFaces) {
  const auto from = fromNearestCorner(PlanBuilder::rectangle(), {9.0, 7.5});
  ASSERT_TRUE(from.has_value());
  EXPECT_NEAR(from->corner.x, 9.65, 1e-12);
  EXPECT_NEAR(from->corner.y, 7.65, 1e-12);
  EXPECT_EQ(from->face.edge, 2);  // the nearer of the two walls
  EXPECT_NEAR(from->along_m, 0.65, 1e-12);
  EXPECT_NEAR(from->off_m, 0.15, 1e-12);
}

TEST(Faces, APlaceInACourtyardIsOutside) {
  const plan::Job job = PlanBuilder::courtyard();
  EXPECT_FALSE(isInside(job.plan, {7, 6}));
  EXPECT_TRUE(isInside(job.plan, {3, 3}));
  const auto from = fromNearestCorner(job, {5.5, 5.1});
  ASSERT_TRUE(from.has_value());
  EXPECT_EQ(from->face.ring, 1);
  EXPECT_NEAR(from->off_m, 0.1, 1e-12);
}

TEST(Faces, TheTwoNearestWallsAreNotInOneLine) {
  const auto lines = toNearestWalls(PlanBuilder::rectangle(), {5.0, 1.0});
  ASSERT_EQ(lines.size(), 2U);
  EXPECT_NEAR(geometry::distance(lines[0].a, lines[0].b), 0.65, 1e-12);  // front, not the rear
  EXPECT_NEAR(geometry::distance(lines[1].a, lines[1].b), 4.65, 1e-12);  // a gable
}

TEST(Faces, InnerWallsCountInside) {
  const plan::Job job = PlanBuilder::rectangle().innerWall("iw", {{4, 0.35}, {4, 7.65}});
  const auto lines = toNearestWalls(job, {5.0, 4.5});
  ASSERT_FALSE(lines.empty());
  EXPECT_NEAR(geometry::distance(lines[0].a, lines[0].b), 0.95, 1e-12);  // 0.1 m thick: its face
}

TEST(Faces, NoWallsNoLines) {
  EXPECT_TRUE(toNearestWalls(plan::Job{}, {1, 1}).empty());
  EXPECT_FALSE(fromNearestCorner(plan::Job{}, {1, 1}).has_value());
}

TEST(Measuring, DistanceSidesAndBearing) {
  const TapeReading r = measured({{1, 1}, {4, 5}}, 0.0);
  EXPECT_NEAR(r.distance_m, 5.0, 1e-12);
  EXPECT_NEAR(r.right_m, 3.0, 1e-12);
  EXPECT_NEAR(r.up_m, 4.0, 1e-12);
  EXPECT_NEAR(r.slope_deg, 53.130102354, 1e-9);    // atan(4/3)
  EXPECT_NEAR(r.bearing_deg, 36.869897646, 1e-9);  // atan(3/4)
  // With true north 90 degrees round from up the sheet, up is west.
  EXPECT_NEAR(measured({{0, 0}, {0, 2}}, 90.0).bearing_deg, 270.0, 1e-9);
}

TEST(Measuring, ATapeWithoutLengthPointsNowhere) {
  const TapeReading r = measured({{1, 1}, {1, 1}}, 30.0);
  EXPECT_EQ(r.distance_m, 0.0);
  EXPECT_EQ(r.bearing_deg, 0.0);
}

}  // namespace
}  // namespace sumpwright::tools
