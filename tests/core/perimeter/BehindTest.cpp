// Rooms and zones behind the walls. Edge 0 of the rectangle runs along y = 0 with the house above;
// walls 0.35 m, so a drill line ends 0.55 m in.
#include <gtest/gtest.h>

#include "perimeter/Behind.h"
#include "support/PlanBuilder.h"

namespace sumpwright::perimeter {

namespace {

using plan::FloorKind;
using plan::RoomUse;
using support::PlanBuilder;
using support::Polygon;

constexpr double kSpanEnd_m = 1e-6;
constexpr double kCore_m = 0.12;  // half: 0.06, easy to add by hand

Polygon box(double x0, double y0, double x1, double y1) {
  return {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}};
}

std::vector<Span> rooms(const plan::Job& job, std::size_t edge = 0) {
  return roomsBehind(Perimeter::of(job).value().edges(0)[edge], job.plan.rooms, kCore_m);
}

std::vector<Span> zones(const plan::Job& job, std::size_t edge = 0) {
  return zonesBehind(Perimeter::of(job).value().edges(0)[edge], job.plan.floor_zones);
}

void expectSpan(const Span& span, const std::string& id, double from, double to, bool from_in) {
  EXPECT_EQ(span.id, id);
  EXPECT_NEAR(span.from_m, from, kSpanEnd_m);
  EXPECT_NEAR(span.to_m, to, kSpanEnd_m);
  EXPECT_EQ(span.from_in, from_in);
}

// A room from x = 3 to 5 is met by a band of half 0.06 from 2.94 to 5.06.
TEST(Behind, RoomIsAsWideAsItselfAndTheCore) {
  const auto spans =
      rooms(PlanBuilder::rectangle().noRooms().room("bath", RoomUse::bathroom, box(3, 0.35, 5, 3)));
  ASSERT_EQ(spans.size(), 1U);
  expectSpan(spans[0], "bath", 2.94, 5.06, false);
}

TEST(Behind, BandOverTwoRoomsHasBoth) {
  const auto spans = rooms(PlanBuilder::rectangle()
                               .noRooms()
                               .room("a", RoomUse::living, box(0.35, 0.35, 4, 3))
                               .room("b", RoomUse::wc, box(4.1, 0.35, 9.65, 3)));
  ASSERT_EQ(spans.size(), 2U);
  expectSpan(spans[0], "a", 0.29, 4.06, false);
  expectSpan(spans[1], "b", 4.04, 9.71, false);
}

TEST(Behind, OnlyTheRoomEnteredFirst) {
  // A store 0.1 m deep in front of the living room; both within reach of the drill line.
  const auto spans = rooms(PlanBuilder::rectangle()
                               .noRooms()
                               .room("store", RoomUse::store, box(3, 0.35, 5, 0.45))
                               .room("living", RoomUse::living, box(2, 0.45, 6, 3)));
  // Living room behind the store is entered second between 3 and 5: (1.94, 3.06) and (4.94, 6.06).
  ASSERT_EQ(spans.size(), 3U);
  expectSpan(spans[0], "living", 1.94, 3.06, false);
  expectSpan(spans[1], "store", 2.94, 5.06, false);
  expectSpan(spans[2], "living", 4.94, 6.06, false);
}

TEST(Behind, RoomBeyondTheDrillLineIsNotBehind) {
  const auto at = [](double y) {
    return rooms(PlanBuilder::rectangle().noRooms().room("r", RoomUse::wc, box(3, y, 5, 3)));
  };
  EXPECT_EQ(at(0.549).size(), 1U);
  EXPECT_TRUE(at(0.55).empty());  // the line ends on its outline, and enters nothing
  EXPECT_TRUE(at(0.6).empty());
}

// A slanted front from (3, 0.35) to (5, 0.75) is 0.55 deep at x = 4: entered from 3 to 4.
TEST(Behind, SlantedRoomIsBehindAsFarAsTheLineReaches) {
  const auto spans = rooms(PlanBuilder::rectangle().noRooms().room(
      "r", RoomUse::wc, {{3, 0.35}, {5, 0.75}, {5, 3}, {3, 3}}));
  ASSERT_EQ(spans.size(), 1U);
  expectSpan(spans[0], "r", 2.94, 4.06, false);
}

TEST(Behind, SpansAreCutToTheirWall) {
  const auto spans = rooms(
      PlanBuilder::rectangle(10, 8).noRooms().room("r", RoomUse::wc, box(0.02, 0.35, 9.98, 3)));
  ASSERT_EQ(spans.size(), 1U);
  expectSpan(spans[0], "r", 0.0, 10.0, true);  // 0.02 - 0.06 lies before the corner
}

TEST(Behind, UnknownThicknessIsTakenAsThirtyFiveCentimetres) {
  const auto unknown = [](plan::Wall& wall) { wall.thickness_m.reset(); };
  const auto noHouse = [](plan::Job& job) { job.house.wall_thickness_m.reset(); };
  const auto at = [&](double y) {
    return rooms(PlanBuilder::rectangle()
                     .noRooms()
                     .wall(0, unknown)
                     .with(noHouse)
                     .room("r", RoomUse::wc, box(3, y, 5, 3)));
  };
  EXPECT_EQ(at(0.549).size(), 1U);
  EXPECT_TRUE(at(0.551).empty());
}

TEST(Behind, ThickWallReachesFurther) {
  const auto spans = rooms(PlanBuilder::rectangle()
                               .noRooms()
                               .wall(0, [](plan::Wall& wall) { wall.thickness_m = 0.6; })
                               .room("r", RoomUse::wc, box(3, 0.7, 5, 3)));
  EXPECT_EQ(spans.size(), 1U);
}

TEST(Behind, NoRoomsNoSpans) {
  EXPECT_TRUE(rooms(PlanBuilder::rectangle().noRooms()).empty());
  EXPECT_TRUE(zones(PlanBuilder::rectangle().noZones()).empty());
}

TEST(Behind, ZoneIsThatOfTheInnerEnd) {
  // Zones meet at x = 4; the second starts 0.54 in and so holds the inner end at 0.55.
  const auto spans = zones(PlanBuilder::rectangle()
                               .noZones()
                               .zone("slab", FloorKind::ground_bearing_slab, box(0, 0, 4, 8))
                               .zone("timber", FloorKind::suspended_timber, box(4, 0.54, 9, 8))
                               .zone("far", FloorKind::suspended_timber, box(9, 0.56, 10, 8)));
  ASSERT_EQ(spans.size(), 2U);
  expectSpan(spans[0], "slab", 0.0, 4.0, true);
  expectSpan(spans[1], "timber", 4.0, 9.0, true);
}

TEST(Behind, ZonesThatShareAnOutlineLeaveNoPlaceBetween) {
  const auto spans = zones(PlanBuilder::rectangle()
                               .noZones()
                               .zone("a", FloorKind::suspended_timber, box(0, 0, 4, 8))
                               .zone("b", FloorKind::suspended_timber, box(4, 0, 10, 8)));
  ASSERT_EQ(spans.size(), 2U);
  EXPECT_EQ(spans[0].to_m, spans[1].from_m);
  EXPECT_TRUE(spans[1].from_in);
}

TEST(Behind, ZonesOfANotchedOutlineComeInParts) {
  const auto spans = zones(PlanBuilder::rectangle().noZones().zone(
      "u", FloorKind::suspended_timber,
      {{0, 0}, {3, 0}, {3, 2}, {6, 2}, {6, 0}, {10, 0}, {10, 8}, {0, 8}}));
  ASSERT_EQ(spans.size(), 2U);
  expectSpan(spans[0], "u", 0.0, 3.0, true);
  expectSpan(spans[1], "u", 6.0, 10.0, true);
}

TEST(Behind, CourtyardWallsLookAwayFromTheCourt) {
  const plan::Job job = PlanBuilder::courtyard();  // west wall of the court: x = 5, y 5..8
  const Perimeter p = Perimeter::of(job).value();
  const auto spans = roomsBehind(p.edges(1)[0], job.plan.rooms, kCore_m);
  ASSERT_EQ(spans.size(), 1U);
  EXPECT_EQ(spans[0].id, "room-w");
}

}  // namespace

}  // namespace sumpwright::perimeter
