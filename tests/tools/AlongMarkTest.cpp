#include <gtest/gtest.h>

#include "support/PlanBuilder.h"
#include "tools/AlongMark.h"

namespace sumpwright::tools {
namespace {

using support::PlanBuilder;

TEST(AlongMark, AWallIsMarkedOnTheGridFromItsFirstCorner) {
  const auto mark = wallMarkAt(PlanBuilder::rectangle(), {3.224, 0.1}, 0.15, 0.05);
  ASSERT_TRUE(mark.has_value());
  EXPECT_EQ(mark->edge, 0);
  EXPECT_NEAR(mark->offset_m, 3.2, 1e-9);
  EXPECT_NEAR(mark->at.x, 3.2, 1e-9);
  EXPECT_FALSE(wallMarkAt(PlanBuilder::rectangle(), {5, 4}, 0.15, 0.05).has_value());
}

TEST(AlongMark, ItSnapsSquareAcrossFromACorner) {
  // The L's inner corner stands at x = 6 (support/PlanBuilder.h).
  const auto mark = wallMarkAt(PlanBuilder::lShape(), {6.04, 0.0}, 0.15, 0.05);
  ASSERT_TRUE(mark.has_value());
  EXPECT_NEAR(mark->offset_m, 6.0, 1e-12);
}

TEST(AlongMark, ATypedOffsetMustBeOnTheWall) {
  const auto mark = wallMarkAt(PlanBuilder::rectangle(), {3, 0}, 0.15, 0.05);
  ASSERT_TRUE(mark.has_value());
  EXPECT_NEAR(withOffset(*mark, 4.37)->at.x, 4.37, 1e-12);
  EXPECT_FALSE(withOffset(*mark, 10.5).has_value());
}

TEST(AlongMark, AGapIsMarkedAlongARisingWall) {
  const plan::Job job = PlanBuilder::rectangle().with([](plan::Job& j) {
    j.plan.rising_walls.push_back({"rw", {{2, 1}, {2, 4}, {6, 4}}, 0.2, {}});
  });
  const auto mark = risingMarkAt(job, {3.02, 4.05}, 0.15, 0.05);
  ASSERT_TRUE(mark.has_value());
  EXPECT_EQ(mark->wall, "rw");
  EXPECT_NEAR(mark->along_m, 4.0, 1e-9);  // 3 m up, 1 m along
  EXPECT_NEAR(mark->at.x, 3.0, 1e-9);
  EXPECT_NEAR(withAlong(job, *mark, 5.5).at.x, 4.5, 1e-9);
  EXPECT_NEAR(withAlong(job, *mark, 99.0).along_m, 7.0, 1e-9);  // kept on it
  EXPECT_FALSE(risingMarkAt(job, {8, 1}, 0.15, 0.05).has_value());
}

}  // namespace
}  // namespace sumpwright::tools
