// The cable along walls: lengths worked out by hand on a house with two rooms.

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "build/CableAlong.h"
#include "build/CableRoute.h"
#include "core/build/CableLength.h"
#include "core/build/Sites.h"
#include "geometry/Distance.h"
#include "geometry/Shapes.h"

namespace sumpwright::build {
namespace {

using support::PlanBuilder;

/// 10 by 8 m, walls of 0.3 m; west room to x = 4.95, east room from x = 5.05, a wall of 0.1 m
/// between.
PlanBuilder twoRooms() {
  PlanBuilder house = PlanBuilder::bare();
  house.with([](plan::Job& job) {
    for (plan::Wall& w : job.plan.rings[0].walls) w.thickness_m = 0.3;
    job.house.dpc_height_m = 0.0;
    job.plan.rooms.clear();
  });
  house.room("west", plan::RoomUse::living, {{0.3, 0.3}, {4.95, 0.3}, {4.95, 7.7}, {0.3, 7.7}});
  house.room("east", plan::RoomUse::bedroom, {{5.05, 0.3}, {9.7, 0.3}, {9.7, 7.7}, {5.05, 7.7}});
  house.with([](plan::Job& job) {
    job.plan.inner_walls.push_back({"iw", {{5, 0.3}, {5, 7.7}}, 0.1, plan::BelowFloor::on_slab});
  });
  return house;
}

// Run outside and sleeve at 0.20 m (lowest sleeve), skirting 0.10, socket 0.45.
constexpr double kDrop = 1.2 - 0.2;
constexpr double kSleeve = 0.3 + 0.1;
constexpr double kRise = 0.35;

CableAnswer from(const plan::Job& job, double chainage_m, const std::string& wish = {}) {
  CableAsk ask;
  ask.fan = {0, chainage_m};
  ask.wish = wish;
  return cableRoutes(siteOf(job), ask);
}

double sumOf(const CableRoute& route) {
  return std::accumulate(route.parts.begin(), route.parts.end(), 0.0,
                         [](double sum, const CablePart& p) { return sum + p.length_m; });
}

TEST(CableRoute, StraightThroughTheWallAndAlongTheSkirting) {
  const plan::Job job = twoRooms().supply("s", plan::SupplyKind::socket, {4.0, 0.3});
  const CableAnswer answer = from(job, 2.0);
  ASSERT_TRUE(answer.chosen);
  const CableRoute& route = answer.routes[0];
  EXPECT_NEAR(route.length_m, kDrop + kSleeve + 2.0 + kRise, 1e-9);
  EXPECT_NEAR(sumOf(route), route.length_m, 1e-12);
  EXPECT_EQ(route.sleeves, 1);
  EXPECT_EQ(route.drillings, 0);
  EXPECT_NEAR(route.drop_v, 2.0 * route.length_m * (75.0 / 230.0) * 0.0225 / 1.5, 1e-12);
  EXPECT_NEAR(route.to_buy_m, 1.1 * route.length_m + 1.0, 1e-12);
}

TEST(CableRoute, ItsHoleIsSetOutByPlaceAndHeight) {
  // Across an inner wall: outside along to x = 5.10, in there.
  const plan::Job job = twoRooms().supply("s", plan::SupplyKind::socket, {5.05, 4.0});
  const rules::Site site = siteOf(job);
  const CableRoute route = from(job, 2.0).routes.at(0);
  const auto sleeves = cableSleeves(site, route);
  ASSERT_EQ(sleeves.size(), 1U);
  EXPECT_EQ(sleeves[0].place.ring, 0);
  EXPECT_NEAR(sleeves[0].place.chainage_m, 5.10, 1e-9);
  EXPECT_NEAR(sleeves[0].height_m, 0.20, 1e-9);
  EXPECT_NEAR(route.parts.front().height_m, 0.20, 1e-9);  // down to the run
  EXPECT_NEAR(route.parts.back().height_m, 0.45, 1e-9);   // up to the socket
}

TEST(CableRoute, ASupplyWithoutANameIsToldByWhatItIsAndWhere) {
  const plan::Job job = twoRooms().supply("socket-1", plan::SupplyKind::socket, {4.0, 0.3});
  const base::Message label = from(job, 2.0).routes.at(0).label;
  EXPECT_EQ(label.id, "cable.supply.in");
  EXPECT_EQ(std::get<base::Message>(label.find("supply")->value).id, "thing.socket");
  EXPECT_EQ(std::get<base::Message>(label.find("room")->value).id, "room.living");
}

TEST(CableRoute, OverAHeadItsLevelPartIsOverTheHead) {
  PlanBuilder house = twoRooms().supply("s", plan::SupplyKind::socket, {9.0, 0.3});
  house.door("d", 0, 5.5, 0.9);
  house.with([](plan::Job& job) { job.plan.openings.back().head_m = 2.0; });
  const CableRoute route = from(house, 2.0).routes.at(0);
  int over = 0;
  for (const CablePart& part : route.parts) {
    if (part.kind != CablePartKind::over_opening) continue;
    ++over;
    EXPECT_NEAR(part.height_m, 2.1, 1e-9);
  }
  EXPECT_EQ(over, 1);
}

TEST(CableRoute, ThroughTheInnerWallWhereThatIsShorter) {
  const plan::Job job = twoRooms().supply("s", plan::SupplyKind::socket, {5.05, 4.0});
  const CableRoute route = from(job, 2.0).routes.at(0);
  // Outside along to x = 5.10 (5 cm past the inner wall's face), in, and 3.7 m up the wall; or in
  // at once, round the corner and through the inner wall. The first needs no second hole.
  EXPECT_EQ(route.drillings, 0);
  EXPECT_NEAR(route.length_m, kDrop + 3.1 + kSleeve + 0.05 + 3.7 + kRise, 1e-9);
}

TEST(CableRoute, OverTheHeadOfADoorAndUnderASill) {
  PlanBuilder house = twoRooms().supply("s", plan::SupplyKind::socket, {9.0, 0.3});
  house.window("w", 0, 6.0, 1.0);
  house.with([](plan::Job& job) { job.plan.openings.back().sill_m = 0.9; });
  const CableRoute under = from(house, 2.0).routes.at(0);
  EXPECT_NEAR(under.length_m, kDrop + kSleeve + 7.0 + kRise, 1e-9);
  house.with([](plan::Job& job) {
    job.plan.openings.back().sill_m = 0.25;
    job.plan.openings.back().head_m = 2.4;
  });
  const CableRoute inside = from(house, 2.0).routes.at(0);
  EXPECT_NEAR(inside.length_m, under.length_m, 1e-9);  // outside to the door, inside under the sill
  house.door("d", 0, 7.5, 0.9);
  house.with([](plan::Job& job) { job.plan.openings.back().head_m = 2.0; });
  const CableRoute over = from(house, 2.0).routes.at(0);
  EXPECT_EQ(over.over_openings, 1);
  // Inside, at 0.10 m: outside, where the run lies higher, the window with its head at 2.4 m is in
  // the way too.
  EXPECT_NEAR(over.length_m - under.length_m, 2.0 * (2.0 + 0.1 - 0.1), 1e-9);
}

TEST(CableRoute, StaysUpOverNeighboursAndComesDownBetweenThoseFarApart) {
  const auto overTwo = [](double gap_m) {
    PlanBuilder house = twoRooms().supply("s", plan::SupplyKind::socket, {9.5, 0.3});
    house.door("d", 0, 5.5, 0.9);
    house.with([](plan::Job& job) { job.plan.openings.back().head_m = 2.0; });
    house.window("w", 0, 6.4 + gap_m, 1.0);
    house.with([](plan::Job& job) {
      job.plan.openings.back().sill_m = 0.05;
      job.plan.openings.back().head_m = 2.2;
    });
    return from(house, 2.0).routes.at(0);
  };
  const double level = kDrop + kSleeve + 7.5 + kRise;
  // Outside at 0.20 m, 0.10 m over the heads: 1.9 up to the door's, 2.1 to the window's.
  const CableRoute near = overTwo(1.0);
  EXPECT_NEAR(near.length_m, level + 2.0 * 2.1, 1e-9);
  EXPECT_EQ(near.over_openings, 2);
  int parts = 0;
  for (const CablePart& part : near.parts) {
    if (part.kind != CablePartKind::over_opening) continue;
    ++parts;
    EXPECT_EQ(part.things, (std::vector<std::string>{"d", "w"}));
    EXPECT_NEAR(part.height_m, 2.3, 1e-9);
  }
  EXPECT_EQ(parts, 1);
  EXPECT_NEAR(overTwo(1.1).length_m, level + 2.0 * 1.9 + 2.0 * 2.1, 1e-9);
}

TEST(CableRoute, NeverThroughABathroom) {
  PlanBuilder house = twoRooms();
  house.with([](plan::Job& job) { job.plan.rooms[1].use = plan::RoomUse::bathroom; });
  const plan::Job job = house.supply("wet", plan::SupplyKind::socket, {9.0, 0.4})
                            .supply("dry", plan::SupplyKind::socket, {0.3, 7.0});
  const CableAnswer answer = from(job, 8.0);
  ASSERT_EQ(answer.routes.size(), 1U);
  EXPECT_EQ(answer.routes[0].supply, "dry");
  ASSERT_EQ(answer.none.size(), 1U);
  EXPECT_EQ(answer.none[0].reason.id, "cable.no.wet");
}

TEST(CableRoute, ARoomWithABathIsNotWiredWhateverItIsCalled) {
  const plan::Job job = twoRooms()
                            .fitting("bath", plan::FittingKind::bath, {3.0, 0.7})
                            .supply("wet", plan::SupplyKind::socket, {0.3, 7.0})
                            .supply("dry", plan::SupplyKind::socket, {9.0, 0.3});
  const CableAnswer answer = from(job, 2.0);
  ASSERT_EQ(answer.routes.size(), 1U);
  EXPECT_EQ(answer.routes[0].supply, "dry");
  EXPECT_EQ(answer.none.at(0).reason.id, "cable.no.wet");
  for (const CablePart& part : answer.routes[0].parts) {
    if (part.kind == CablePartKind::skirting) {
      for (const geometry::Point p : part.line_m) EXPECT_GT(p.x, 5.0);
    }
  }
}

TEST(CableRoute, KeepsOffTheEdgeOfAShowerInNoRoom) {
  const plan::Job job = twoRooms()
                            .fitting("shower", plan::FittingKind::shower, {5.0, 0.5})
                            .supply("near", plan::SupplyKind::socket, {4.2, 0.3})
                            .supply("far", plan::SupplyKind::socket, {1.0, 0.3});
  const CableAnswer answer = from(job, 4.0);
  ASSERT_EQ(answer.routes.size(), 1U);
  EXPECT_EQ(answer.none.at(0).supply, "near");
  // Outside past the shower: the skirting there is no way.
  EXPECT_NEAR(answer.routes[0].length_m, kDrop + kSleeve + 3.0 + kRise, 1e-9);
  for (const CablePart& part : answer.routes[0].parts) {
    if (part.kind != CablePartKind::skirting) continue;
    for (const geometry::Point p : part.line_m) EXPECT_LT(p.x, 5.0 - 1.2);
  }
}

/// A terrace: the right wall (chainage 10 to 18) is shared with the neighbour.
PlanBuilder endOfTerrace() {
  PlanBuilder house = twoRooms();
  house.with([](plan::Job& job) { job.plan.rings[0].walls[1].kind = plan::WallKind::party; });
  return house;
}

TEST(CableRoute, NeverInTheNeighboursHouse) {
  // On the back wall, and the way round by the right would be the shorter one.
  const plan::Job job = endOfTerrace().supply("s", plan::SupplyKind::socket, {9.7, 7.0});
  const CableAnswer answer = from(job, 9.0);
  ASSERT_TRUE(answer.chosen);
  for (const CablePart& part : answer.routes[*answer.chosen].parts) {
    for (const geometry::Point p : part.line_m) EXPECT_LT(p.x, 10.0 - 1e-9) << "on the party wall";
  }
  const plan::Job shared = endOfTerrace().supply("s", plan::SupplyKind::socket, {10.05, 4.0});
  const CableAnswer inside = from(shared, 2.0);
  ASSERT_EQ(inside.routes.size(), 1U);  // the socket is on the room's side of the wall
  for (const CablePart& part : inside.routes[0].parts) {
    if (part.kind == CablePartKind::outside) {
      for (const geometry::Point p : part.line_m) EXPECT_NEAR(p.y, 0.0, 1e-9);
    }
  }
}

TEST(CableRoute, NoSleeveBesideTheEntryOfAService) {
  PlanBuilder house = twoRooms().supply("s", plan::SupplyKind::socket, {2.0, 0.3});
  const double free = from(house, 2.0).routes.at(0).length_m;
  house.with([](plan::Job& job) {
    plan::Service gas;
    gas.id = "gas";
    gas.kind = plan::ServiceKind::gas;
    gas.entry = plan::OnWall{0, 0, 2.1};
    job.plan.services.push_back(gas);
  });
  const CableRoute route = from(house, 2.0).routes.at(0);
  // The sleeve at 1.8 m, 0.3 m from the pipe: 0.2 m to it outside, and 0.2 m back inside.
  EXPECT_NEAR(route.length_m, free + 0.4, 1e-9);
}

TEST(CableRoute, AboveTheGroundAndTheDampProofCourseThatTheSectionTakes) {
  plan::Job job = twoRooms().supply("s", plan::SupplyKind::socket, {4.0, 0.3});
  job.house.dpc_height_m.reset();
  job.house.ground_level_m = 0.45;
  for (plan::Wall& wall : job.plan.rings[0].walls) wall.ground_level_m.reset();
  const CableAnswer answer = from(job, 2.0);
  // Damp-proof course at 0.60, the run 0.15 m above it: from the fan at 1.20 down, and down inside.
  EXPECT_NEAR(answer.routes.at(0).length_m, 0.45 + 2.0 + (0.3 + 0.65) + 0.35, 1e-9);
}

TEST(CableRoute, ASocketInsideAWallThatNoRoomIsDrawnBehindIsNotOutside) {
  PlanBuilder house = twoRooms().supply("s", plan::SupplyKind::socket, {4.0, 0.3});
  house.with([](plan::Job& job) { job.plan.rooms.clear(); });
  const CableRoute route = from(house, 2.0).routes.at(0);
  EXPECT_EQ(route.sleeves, 1);
  EXPECT_NEAR(route.length_m, kDrop + 2.0 + 0.3 + (0.45 - 0.2), 1e-9);
  EXPECT_NEAR(sumOf(route), route.length_m, 1e-12);
}

TEST(CableRoute, BesideADoorItIsGoneOverOnce) {
  PlanBuilder house = twoRooms().supply("s", plan::SupplyKind::socket, {9.0, 0.3});
  house.door("d", 0, 6.0, 1.0);
  const plan::Job job = house;
  const rules::Site site = siteOf(job);
  CableAsk ask;
  ask.figures.per_drilling_m = std::sqrt(0.2);  // no two ways cost the same
  // Fans in front of the door do not make it dearer for one beside it.
  const CableAlong along = CableAlong::of(site, ask);
  for (const CableAlong::Node& node : along.nodes()) {
    CableAsk alone = ask;
    alone.fan = {node.ring, node.chainage_m};
    EXPECT_NEAR(*cableLength_m(site, alone), *node.length_m, 1e-5) << node.chainage_m;
  }
}

CableAnswer fromSump(const plan::Job& job, const plan::Sump& sump) {
  const rules::Site site = siteOf(job);
  return cableRoutes(site, cableAskOf(site, sump, {sump.ring, sump.chainage_m}));
}

std::vector<CablePartKind> kindsOf(const CableRoute& route) {
  std::vector<CablePartKind> kinds;
  for (const CablePart& part : route.parts) kinds.push_back(part.kind);
  return kinds;
}

TEST(CableRoute, BeginsAtTheFanNotAtTheHole) {
  plan::Job job = twoRooms().supply("s", plan::SupplyKind::socket, {9.0, 0.3});
  plan::Sump sump;
  sump.id = "p";
  sump.chainage_m = 2.0;
  sump.fan_place = plan::FanPlace::outside_high;
  sump.fan_height_m = 4.0;
  sump.discharge = plan::Discharge{0, 6.0, 5.0};
  job.design.sumps = {sump};
  // High over 6.0: from there down and in.
  EXPECT_NEAR(fromSump(job, sump).routes.at(0).length_m, 3.8 + kSleeve + 3.0 + kRise, 1e-9);
  // Low: beside the hole, whatever the discharge does.
  sump.fan_place = plan::FanPlace::outside_low;
  sump.fan_height_m.reset();
  job.design.sumps = {sump};
  EXPECT_NEAR(fromSump(job, sump).routes.at(0).length_m, kDrop + kSleeve + 7.0 + kRise, 1e-9);
}

TEST(CableRoute, AFanInTheRoofSpaceIsNotOutside) {
  plan::Job job = twoRooms().supply("s", plan::SupplyKind::socket, {9.7, 4.0});
  plan::Sump sump;
  sump.id = "p";
  sump.chainage_m = 2.0;
  sump.fan_place = plan::FanPlace::roof_space;
  sump.fan_height_m = 3.1;
  job.design.sumps = {sump};
  const CableRoute route = fromSump(job, sump).routes.at(0);
  // Over the inner face at 2.0, straight to over the socket, down to the skirting and up to it.
  EXPECT_NEAR(route.length_m, std::hypot(7.7, 3.7) + 3.0 + kRise, 1e-9);
  EXPECT_NEAR(sumOf(route), route.length_m, 1e-12);
  EXPECT_EQ(route.sleeves, 0);
  EXPECT_EQ(kindsOf(route),
            (std::vector{CablePartKind::roof, CablePartKind::descent, CablePartKind::rise}));
}

TEST(CableRoute, ThroughTheRoofSpaceOfTheHouseItself) {
  // A court of 4 by 4 m in the middle of an L: straight across it is no roof space.
  PlanBuilder house = PlanBuilder::lShape();
  const plan::Job empty = house;
  const rules::Site bare = siteOf(empty);
  std::size_t inward = 0;
  const auto& edges = bare.perimeter.edges(0);
  for (std::size_t i = 0; i < edges.size(); ++i) {
    const auto& before = edges[(i + edges.size() - 1) % edges.size()];
    if (geometry::cross(before.along, edges[i].along) < 0.0) inward = i;
  }
  ASSERT_NE(inward, 0U);
  const auto& arm = edges[(inward + edges.size() - 2) % edges.size()];  // end of one arm
  const auto& other = edges[(inward + 1) % edges.size()];               // and of the other
  const geometry::Point socket =
      geometry::lerp(other.from, other.to, 0.1) + (other.thickness_m + 0.01) * other.inward;
  plan::Job job = house.supply("s", plan::SupplyKind::socket, socket);
  plan::Sump sump;
  sump.id = "p";
  sump.chainage_m = arm.start_m + 0.9 * arm.length_m;
  sump.fan_place = plan::FanPlace::roof_space;
  sump.fan_height_m = 3.1;
  job.design.sumps = {sump};
  const rules::Site site = siteOf(job);
  for (const CableRoute& route : fromSump(job, sump).routes) {
    for (const CablePart& part : route.parts) {
      if (part.kind != CablePartKind::roof) continue;
      const geometry::Segment way{part.line_m.front(), part.line_m.back()};
      for (double t = 0.05; t < 1.0; t += 0.05) {
        const geometry::Point p = geometry::lerp(way.a, way.b, t);
        geometry::Polygon outline;
        for (const auto& edge : site.perimeter.edges(0)) outline.push_back(edge.from);
        EXPECT_TRUE(geometry::contains(outline, p)) << p.x << ' ' << p.y;
      }
    }
  }
}

TEST(CableRoute, OfSeveralTheLeastAndTheWishAndConsumerUnitsLast) {
  const plan::Job job = twoRooms()
                            .supply("board", plan::SupplyKind::consumer_unit, {2.0, 0.3})
                            .supply("far", plan::SupplyKind::fused_spur, {0.3, 7.0})
                            .supply("near", plan::SupplyKind::socket, {4.0, 0.3});
  const CableAnswer answer = from(job, 2.0);
  ASSERT_EQ(answer.routes.size(), 3U);
  EXPECT_EQ(answer.routes[0].supply, "near");
  EXPECT_EQ(answer.routes[1].supply, "far");
  EXPECT_EQ(answer.routes[2].supply, "board");
  EXPECT_EQ(answer.chosen, 0U);
  EXPECT_EQ(from(job, 2.0, "far").chosen, 1U);
  EXPECT_EQ(from(job, 2.0, "gone").chosen, 0U);
}

TEST(CableRoute, SaysWhereNothingCanBeSaid) {
  EXPECT_EQ(from(twoRooms(), 2.0).sentence.id, "cable.sentence.no-supply");
  const plan::Job far = twoRooms().supply("s", plan::SupplyKind::socket, {50, 50});
  const CableAnswer answer = from(far, 2.0);
  EXPECT_FALSE(answer.chosen);
  EXPECT_EQ(answer.none.at(0).reason.id, "cable.no.room");
  EXPECT_EQ(answer.sentence.id, "cable.sentence.no-way");
  CableAsk ask;
  ask.fan = {0, 2.0};
  EXPECT_FALSE(cableLength_m(siteOf(far), ask));
}

TEST(CableRoute, AnOutsideSupplyNeedsNoSleeve) {
  const plan::Job job = twoRooms().supply("s", plan::SupplyKind::socket, {6.0, -0.05});
  const CableRoute route = from(job, 2.0).routes.at(0);
  EXPECT_EQ(route.sleeves, 0);
  EXPECT_NEAR(route.length_m, kDrop + 4.0 + (0.45 - 0.2) + 0.05, 1e-9);
}

}  // namespace
}  // namespace sumpwright::build
