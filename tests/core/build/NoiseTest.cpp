#include <gtest/gtest.h>

#include "build/CableRoute.h"
#include "build/Noise.h"
#include "build/Run.h"
#include "core/build/Sites.h"

namespace sumpwright::build {
namespace {

using support::PlanBuilder;

/// 50 dB into a quarter of space: 50 - 10 log10(4 pi) = 39.0 at 2 m; 6.0 dB less where it is twice
/// as far.
TEST(Noise, FallsSixDecibelsWhereTheDistanceDoubles) {
  EXPECT_NEAR(levelAt_db(50.0, 2.0), 39.01, 0.005);
  EXPECT_NEAR(levelAt_db(50.0, 2.0) - levelAt_db(50.0, 4.0), 6.02, 0.005);
  EXPECT_NEAR(levelAt_db(60.0, 4.0) - levelAt_db(50.0, 4.0), 10.0, 1e-12);
}

/// A bedroom window at 1 .. 2 m of the first wall, sill 0.9, head 2.1; the hole at 5 m.
plan::Job besideABedroom() {
  auto b = PlanBuilder::rectangle(8.0, 6.0);
  b.window("w", 0, 1.0, 1.0).sump("s", 0, 5.0);
  b.with([](plan::Job& job) {
    job.plan.rooms.clear();
    job.plan.openings.back().sill_m = 0.9;
    job.plan.openings.back().head_m = 2.1;
  });
  b.room("bed", plan::RoomUse::bedroom, {{0.3, 0.3}, {7.7, 0.3}, {7.7, 5.7}, {0.3, 5.7}});
  plan::Job job = b.job();
  job.design.outlet = plan::OutletMode::riser;
  plan::Sump& sump = job.design.sumps.front();
  sump.discharge = plan::Discharge{0, 5.0, 4.0};
  sump.fan_height_m = 1.5;
  return job;
}

rules::Site placed(const plan::Job& job) {
  rules::Site site = siteOf(job);
  site.run = placedRun(site, "s");
  return site;
}

TEST(Noise, FindsWhoSleepsNearTheFan) {
  const rules::Site site = placed(besideABedroom());
  const auto hearer = nearestHearer(site, {0, 5.0});
  ASSERT_TRUE(hearer);
  EXPECT_NEAR(hearer->distance_m, 3.0 - site.pipe_od_m / 2.0, 1e-9);  // at the window's height
}

TEST(Noise, NobodyHearsAFanInTheRoofSpaceOrOneThatIsNotPlaced) {
  plan::Job job = besideABedroom();
  EXPECT_FALSE(nearestHearer(siteOf(job), {0, 5.0}));
  job.design.sumps.front().fan_place = plan::FanPlace::roof_space;
  EXPECT_FALSE(nearestHearer(placed(job), {0, 5.0}));
}

TEST(CableAsk, StandsWhereTheFanDoes) {
  plan::Job job = besideABedroom();
  plan::Sump& sump = job.design.sumps.front();
  sump.discharge->chainage_m = 6.5;
  const CableAsk low = cableAskOf(siteOf(job), sump, {0, 5.0});
  EXPECT_NEAR(low.fan.chainage_m, 5.0, 1e-12);
  EXPECT_NEAR(low.fan_height_m, 1.5, 1e-12);
  sump.fan_place = plan::FanPlace::outside_high;
  sump.fan_height_m.reset();
  const CableAsk high = cableAskOf(siteOf(job), sump, {0, 5.0});
  EXPECT_NEAR(high.fan.chainage_m, 6.5, 1e-12);
  EXPECT_NEAR(high.fan_height_m, 4.0 - kFanUnderOutlet_m, 1e-12);
  // Not placed: under an outlet as it would be proposed; low, at a height to be worked on.
  sump.discharge.reset();
  job.house.eaves_m = 2.6;
  for (plan::Wall& wall : job.plan.rings[0].walls) wall.eaves_m.reset();
  EXPECT_NEAR(cableAskOf(siteOf(job), sump, {0, 5.0}).fan_height_m, 2.6 + 0.4 - 0.6, 1e-12);
  sump.fan_place = plan::FanPlace::outside_low;
  EXPECT_EQ(cableAskOf(siteOf(job), sump, {0, 5.0}).fan_height_m, CableAsk().fan_height_m);
}

TEST(OutletMode, IsWhereTheDischargeIsPlaced) {
  plan::Job job = besideABedroom();
  plan::Sump& sump = job.design.sumps.front();
  job.design.outlet = plan::OutletMode::low;
  EXPECT_EQ(outletModeOf(siteOf(job), sump), plan::OutletMode::riser);  // it ends at 4 m
  sump.discharge->height_m = 0.4;
  job.design.outlet = plan::OutletMode::riser;
  EXPECT_EQ(outletModeOf(siteOf(job), sump), plan::OutletMode::low);
  sump.discharge.reset();
  EXPECT_EQ(outletModeOf(siteOf(job), sump), plan::OutletMode::riser);
}

}  // namespace
}  // namespace sumpwright::build
