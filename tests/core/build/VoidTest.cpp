#include <gtest/gtest.h>

#include "build/Void.h"
#include "core/build/Sites.h"
#include "suction/ModelOf.h"

namespace sumpwright::build {

namespace {

bool noted(const Void& made, const std::string& id) {
  return std::any_of(made.notes.begin(), made.notes.end(),
                     [&](const base::Message& m) { return m.id == id; });
}

TEST(Void, IsABucketInStoneAndMoreWithout) {
  BuildUp up = knownBuildUp();
  EXPECT_NEAR(voidOf(up, {}, 0.0).volume_m3, 0.012, 1e-12);
  EXPECT_FALSE(voidOf(up, {}, 0.0).volume_stated);
  up.fill = plan::Fill::none;
  EXPECT_NEAR(voidOf(up, {}, 0.0).volume_m3, 0.0283, 1e-12);
  EXPECT_FALSE(noted(voidOf(up, {}, 0.0), "section.void.tight"));
  EXPECT_TRUE(noted(voidOf(up, 12.0, 0.0), "section.void.tight"));
}

TEST(Void, HasTheRadiusThatSuctionIsComputedWith) {
  const Void made = voidOf(knownBuildUp(), 20.0, 0.0);
  EXPECT_DOUBLE_EQ(made.radius_m, suction::pitRadius_m(0.020));
  EXPECT_TRUE(made.volume_stated);
  EXPECT_DOUBLE_EQ(made.past_inner_m, 2.0 * made.radius_m);
}

TEST(Void, SaysWhatIsSmallOutOfReachOrUnderTheFooting) {
  BuildUp up = knownBuildUp();
  EXPECT_TRUE(noted(voidOf(up, 5.0, 0.0), "section.void.small"));
  EXPECT_FALSE(noted(voidOf(up, 8.0, 0.0), "section.void.small"));
  EXPECT_TRUE(noted(voidOf(up, 28.0, 0.0), "section.void.reach"));
  EXPECT_FALSE(noted(voidOf(up, 8.0, 0.0), "section.void.reach"));
  EXPECT_FALSE(noted(voidOf(up, 40.0, 0.0), "section.void.footing"));
  up.footing_high_m = -0.35;  // of a range that begins at -0.75: its underside may be at -0.55
  EXPECT_TRUE(noted(voidOf(up, 40.0, 0.0), "section.void.footing"));
}

}  // namespace

}  // namespace sumpwright::build
