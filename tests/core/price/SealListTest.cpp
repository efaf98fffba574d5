#include "core/price/Priced.h"
#include "price/SealList.h"

namespace sumpwright::price {
namespace {

/// 8 by 6 m with walls of 0.35 m; west room to x = 4, east room from x = 4.1; a water main and a
/// gas pipe in the first wall, a sink in the west, a radiator on the last wall.
siting::Study twoRooms() {
  auto b = support::PlanBuilder::rectangle(8.0, 6.0);
  b.with([](plan::Job& job) {
    for (plan::Wall& wall : job.plan.rings[0].walls) wall.thickness_m = 0.35;
    job.plan.rooms.clear();
    job.plan.services.clear();
    job.plan.fittings.clear();
    job.plan.radiators.clear();
  });
  b.room("west", plan::RoomUse::kitchen, {{0.35, 0.35}, {4.0, 0.35}, {4.0, 5.65}, {0.35, 5.65}});
  b.room("east", plan::RoomUse::living, {{4.1, 0.35}, {7.65, 0.35}, {7.65, 5.65}, {4.1, 5.65}});
  b.service("water", plan::ServiceKind::water, 0, 2.0);
  b.service("gas", plan::ServiceKind::gas, 0, 6.0);
  plan::Job job = b.job();
  job.plan.fittings.push_back({"sink", "", plan::FittingKind::sink, {1.0, 1.0}});
  job.plan.fittings.push_back({"oven", "", plan::FittingKind::appliance, {2.0, 1.0}});
  plan::Radiator radiator;
  radiator.id = "r";
  radiator.line_m = {{4.1, 1.0}, {4.1, 2.0}};
  job.plan.radiators.push_back(radiator);
  job.looked_for.heating = plan::Looked::present;
  return siting::Study::of(job, support::builtInSheet("ie-practice")).value();
}

TEST(SealList, CountsByRoom) {
  const SealList list = sealList(twoRooms());
  ASSERT_EQ(list.rooms.size(), 2U);
  // 3.65 along the first and third wall each, 5.30 along the fourth; the band adds up to 1 cm a
  // side.
  EXPECT_NEAR(list.rooms[0].joint_m, 3.65 + 3.65 + 5.30, 0.05);
  EXPECT_NEAR(list.rooms[1].joint_m, 3.55 + 3.55 + 5.30, 0.05);
  EXPECT_NEAR(list.joint_m, list.rooms[0].joint_m + list.rooms[1].joint_m, 1e-12);
  EXPECT_EQ(list.rooms[0].entries.size(), 1U);
  EXPECT_EQ(list.rooms[0].wastes, 1);
  EXPECT_EQ(list.rooms[0].radiators, 0);
  EXPECT_EQ(list.rooms[1].entries.size(), 1U);
  EXPECT_EQ(list.rooms[1].radiators, 1);
  EXPECT_EQ(list.entries, 3);
}

TEST(SealList, KeepsEntriesBehindWhichNoRoomIsDrawn) {
  plan::Job job = twoRooms().job();
  job.plan.rooms.clear();
  const SealList list =
      sealList(siting::Study::of(job, support::builtInSheet("ie-practice")).value());
  ASSERT_EQ(list.rooms.size(), 1U);
  EXPECT_EQ(list.rooms[0].room, "");
  EXPECT_EQ(list.entries, 2);
  EXPECT_EQ(list.joint_m, 0.0);
}

TEST(SealList, IsWhatTheQuoteOffers) {
  plan::Job job = twoRooms().job();
  job.design.sumps.push_back({});
  job.design.sumps.back().id = "s";
  job.design.sumps.back().chainage_m = 2.0;
  const Needs needs = needsOfJob(job);
  EXPECT_EQ(quantityOf(needs, "seal_entry"), "3");
  EXPECT_EQ(quantityOf(needs, "seal_joint"),
            Decimal::upToTenth(sealList(twoRooms()).joint_m).text());
}

}  // namespace
}  // namespace sumpwright::price
