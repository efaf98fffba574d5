#include <gtest/gtest.h>

#include "plan/ThingEdits.h"
#include "support/PlanBuilder.h"
#include "tools/PointDrag.h"

namespace sumpwright::tools {
namespace {

using support::PlanBuilder;

plan::Job garden() {
  return PlanBuilder::rectangle()
      .outside("path", plan::OutsideKind::path, {{0, -2}, {4, -2}, {4, -6}})
      .outside("deck", plan::OutsideKind::deck, {{11, 1}, {13, 1}, {13, 4}, {11, 4}})
      .outside("gully", plan::OutsideKind::gully, {{2, -0.5}});
}

std::vector<Point> pointsOf(const plan::Job& job, const std::string& id) {
  return laidPointsOf(job, id).points;
}

TEST(PointDrag, AVertexIsNearerThanASideThanTheWhole) {
  const plan::Job job = garden();
  EXPECT_EQ(pointGripAt(job, "path", {3.95, -2.05}, 0.2)->kind, PointGripKind::vertex);
  EXPECT_EQ(pointGripAt(job, "path", {2.05, -2.05}, 0.2),
            (PointGrip{"path", PointGripKind::side, 0}));
  EXPECT_EQ(pointGripAt(job, "path", {1.0, -2.1}, 0.2)->kind, PointGripKind::whole);
  EXPECT_EQ(pointGripAt(job, "deck", {12, 2}, 0.2)->kind, PointGripKind::whole);
  EXPECT_EQ(pointGripAt(job, "deck", {11, 2.5}, 0.2), (PointGrip{"deck", PointGripKind::side, 3}));
  EXPECT_FALSE(pointGripAt(job, "path", {8, -2}, 0.2).has_value());
  EXPECT_FALSE(pointGripAt(job, "nothing", {0, 0}, 0.2).has_value());
}

TEST(PointDrag, AVertexGoesSquareToTheSideBefore) {
  PointDrag drag(garden(), {"path", PointGripKind::vertex, 2}, {4, -6}, 0.15, 0.05);
  const auto job = drag.move({4.08, -4.52});
  ASSERT_TRUE(job.ok());
  EXPECT_EQ(drag.snapped().kind, SnapKind::square);
  EXPECT_NEAR(pointsOf(*job, "path").back().x, 4.0, 1e-9);
  EXPECT_NEAR(pointsOf(*job, "path").back().y, -4.5, 1e-9);
}

TEST(PointDrag, ATypedLengthIsThatOfTheSideBefore) {
  PointDrag drag(garden(), {"path", PointGripKind::vertex, 2}, {4, -6}, 0.15, 0.05);
  ASSERT_TRUE(drag.move({4.0, -5.0}).ok());
  const auto job = drag.type("3.33", BareUnit::metre);
  ASSERT_TRUE(job && job->ok());
  EXPECT_NEAR(pointsOf(**job, "path").back().y, -5.33, 1e-9);
  EXPECT_FALSE(drag.type("far", BareUnit::metre).has_value());
}

TEST(PointDrag, ANewPointComesOutOfTheMiddleOfASide) {
  PointDrag drag(garden(), {"deck", PointGripKind::side, 3}, {11, 2.5}, 0.0, 0.0);
  const auto job = drag.move({10.5, 2.5});
  ASSERT_TRUE(job.ok());
  EXPECT_EQ(pointsOf(*job, "deck").size(), 5U);
  EXPECT_EQ(pointsOf(*job, "deck").back(), (Point{10.5, 2.5}));
}

TEST(PointDrag, AllOfAThingKeepsItsShape) {
  PointDrag drag(garden(), {"deck", PointGripKind::whole, 0}, {12, 2}, 0.0, 0.0);
  const auto job = drag.move({12.5, 2.25});
  ASSERT_TRUE(job.ok());
  EXPECT_EQ(pointsOf(*job, "deck"),
            (std::vector<Point>{{11.5, 1.25}, {13.5, 1.25}, {13.5, 4.25}, {11.5, 4.25}}));
}

TEST(PointDrag, APointTakesTypedDistancesFromTheNearestCorner) {
  PointDrag drag(garden(), {"gully", PointGripKind::vertex, 0}, {2, -0.5}, 0.15, 0.05);
  ASSERT_TRUE(drag.move({1.5, -0.5}).ok());
  const auto job = drag.type("1.23, 0.40", BareUnit::metre);
  ASSERT_TRUE(job && job->ok());
  EXPECT_NEAR(pointsOf(**job, "gully").front().x, 1.23, 1e-9);
  EXPECT_NEAR(pointsOf(**job, "gully").front().y, -0.40, 1e-9);
}

TEST(PointDrag, TheStartOfARunStaysAtItsEntry) {
  const plan::Job job = PlanBuilder::rectangle()
                            .service("gas", plan::ServiceKind::gas, 0, 2.0)
                            .run("gas", {{2, 0}, {2, -4}});
  EXPECT_EQ(laidPointsOf(job, "gas").first, 1U);
  EXPECT_FALSE(pointGripAt(job, "gas", {2, 0}, 0.2).has_value());
  EXPECT_EQ(pointGripAt(job, "gas", {2, -4}, 0.2)->index, 1);
}

}  // namespace
}  // namespace sumpwright::tools
