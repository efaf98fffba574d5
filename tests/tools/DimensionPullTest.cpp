#include <gtest/gtest.h>

#include "plan/Dimensions.h"
#include "plan/OutlineEdits.h"
#include "plan/ThingEdits.h"
#include "support/PlanBuilder.h"
#include "tools/DimensionPull.h"

namespace sumpwright::tools {
namespace {

using support::PlanBuilder;

plan::Job pulledHouse() {
  return PlanBuilder::rectangle()
      .window("win", 0, 2.0, 1.2)
      .outside("gully", plan::OutsideKind::gully, {{2, -1}});
}

/// From the front's first corner to the near jamb of the window, 0.6 m outside.
plan::Job dimensioned() {
  DimensionPull pull(pulledHouse());
  EXPECT_FALSE(pull.click({0.1, 0.1}, 0.3, 0.05));
  EXPECT_FALSE(pull.click({2.1, 0.0}, 0.3, 0.05));
  EXPECT_TRUE(pull.click({1.0, -0.61}, 0.3, 0.05));
  const auto job = pull.finished();
  EXPECT_TRUE(job.ok());
  return *job;
}

TEST(DimensionPull, TwoPlacesAndHowFarOff) {
  const plan::Job job = dimensioned();
  ASSERT_EQ(job.plan.dimensions.size(), 1U);
  const plan::Dimension& d = job.plan.dimensions.front();
  EXPECT_EQ(d.from.thing, job.plan.rings[0].walls[0].id);
  EXPECT_EQ(d.to.thing, "win");
  EXPECT_NEAR(d.off_m, -0.6, 1e-12);
  const auto line = plan::lineOf(job, d);
  ASSERT_TRUE(line.has_value());
  EXPECT_NEAR(line->a.y, -0.6, 1e-12);
  EXPECT_NEAR(line->b.x, 2.0, 1e-12);
}

TEST(DimensionPull, ItStaysTiedToWhatItMeasures) {
  const plan::Job before = dimensioned();
  const auto moved = plan::moveCorner(before, 0, 0, {-1.0, 0.0});
  ASSERT_TRUE(moved.ok());
  const auto line = plan::lineOf(*moved, moved->plan.dimensions.front());
  ASSERT_TRUE(line.has_value());
  EXPECT_NEAR(geometry::distance(line->a, line->b), 3.0, 1e-9);  // the window kept its place
  const auto out = plan::moveWall(before, 0, 0, 0.5);
  ASSERT_TRUE(out.ok());
  EXPECT_NEAR(plan::lineOf(*out, out->plan.dimensions.front())->a.y, -1.1, 1e-9);
}

TEST(DimensionPull, ItIsGoneWithWhatItMeasures) {
  const auto job = plan::removeThing(dimensioned(), "win");
  ASSERT_TRUE(job.ok());
  EXPECT_TRUE(job->plan.dimensions.empty());
}

TEST(DimensionPull, ATypedOffsetGoesToThePointersSide) {
  DimensionPull pull(pulledHouse());
  pull.click({0, 0}, 0.3, 0.05);
  pull.click({10, 0}, 0.3, 0.05);
  pull.move({5, -0.8}, 0.3, 0.05);
  pull.setOff(1.25);
  EXPECT_NEAR(pull.finished()->plan.dimensions.front().off_m, -1.25, 1e-12);
}

TEST(DimensionPull, NoEndsInOnePlaceAndBackTakesTheLastOff) {
  DimensionPull pull(pulledHouse());
  pull.click({0, 0}, 0.3, 0.05);
  EXPECT_FALSE(pull.click({0, 0}, 0.3, 0.05));
  EXPECT_FALSE(pull.to().has_value());
  EXPECT_TRUE(pull.back());
  EXPECT_FALSE(pull.from().has_value());
  EXPECT_FALSE(pull.back());
}

TEST(DimensionPull, TheLineIsFoundAndDraggedAside) {
  const plan::Job job = dimensioned();
  const std::string id = dimensionAt(job, {1.0, -0.55}, 0.2);
  ASSERT_EQ(id, job.plan.dimensions.front().id);
  EXPECT_EQ(dimensionAt(job, {1.0, -2.0}, 0.2), "");
  const auto moved = dimensionThrough(job, id, {0.4, -1.02}, 0.05);
  ASSERT_TRUE(moved.ok());
  EXPECT_NEAR(moved->plan.dimensions.front().off_m, -1.0, 1e-12);
  EXPECT_FALSE(dimensionThrough(job, "none", {0, 0}, 0.05).ok());
}

TEST(DimensionPull, CornersComeBeforeWhatIsNearThem) {
  const plan::Job job = PlanBuilder::rectangle().window("win", 0, 0.05, 1.0);
  const auto at = tiePlaceAt(job, {0.05, 0.0}, 0.3);
  ASSERT_TRUE(at.has_value());
  EXPECT_EQ(at->at, (Point{0, 0}));
  EXPECT_EQ(tiePlaceAt(job, {1.05, 0.0}, 0.3)->end.thing, "win");
  EXPECT_FALSE(tiePlaceAt(job, {5.0, 20.0}, 0.3).has_value());
}

}  // namespace
}  // namespace sumpwright::tools
