#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <set>

#include "perimeter/Perimeter.h"
#include "support/PlanBuilder.h"

namespace sumpwright::perimeter {

namespace {

using support::PlanBuilder;

constexpr double kMicrometre = 1e-6;

Perimeter of(const plan::Job& job) {
  auto made = Perimeter::of(job);
  EXPECT_TRUE(made);
  return std::move(made).value();
}

void expectPoint(Point got, double x, double y) {
  EXPECT_NEAR(got.x, x, kMicrometre);
  EXPECT_NEAR(got.y, y, kMicrometre);
}

// 10 x 8: corners at chainage 0, 10, 18, 28; round 36.
TEST(Perimeter, ChainageRunsCounterClockwiseFromTheFirstCorner) {
  const Perimeter p = of(PlanBuilder::rectangle(10, 8));
  ASSERT_EQ(p.ringCount(), 1);
  EXPECT_NEAR(p.length_m(0), 36.0, kMicrometre);
  expectPoint(p.pointAt({0, 0.0}), 0, 0);
  expectPoint(p.pointAt({0, 4.0}), 4, 0);
  expectPoint(p.pointAt({0, 10.0}), 10, 0);
  expectPoint(p.pointAt({0, 15.0}), 10, 5);
  expectPoint(p.pointAt({0, 20.0}), 8, 8);
  expectPoint(p.pointAt({0, 30.0}), 0, 6);
  const Edge& east = p.edges(0)[1];
  EXPECT_NEAR(east.start_m, 10.0, kMicrometre);
  EXPECT_NEAR(east.end_m(), 18.0, kMicrometre);
  expectPoint(Point{} + east.inward, -1, 0);
  EXPECT_NEAR(east.turn_rad, std::numbers::pi / 2, kMicrometre);
}

TEST(Perimeter, ChainageWraps) {
  const Perimeter p = of(PlanBuilder::rectangle(10, 8));
  EXPECT_NEAR(p.wrapped({0, 36.0}).chainage_m, 0.0, kMicrometre);
  EXPECT_NEAR(p.wrapped({0, -1.0}).chainage_m, 35.0, kMicrometre);
  EXPECT_NEAR(p.wrapped({0, 75.0}).chainage_m, 3.0, kMicrometre);
  EXPECT_EQ(p.wrapped({0, 3.5}).chainage_m, 3.5);
  const double hair = p.wrapped({0, -1e-20}).chainage_m;
  EXPECT_TRUE(hair >= 0.0 && hair < p.length_m(0));
  expectPoint(p.pointAt({0, -2.0}), 0, 2);
}

TEST(Perimeter, CornerBelongsToTheEdgeThatStartsThere) {
  const Perimeter p = of(PlanBuilder::rectangle(10, 8));
  EXPECT_EQ(p.edgeAt({0, 0.0}).edge, 0);
  EXPECT_EQ(p.edgeAt({0, std::nextafter(10.0, 0.0)}).edge, 0);
  EXPECT_EQ(p.edgeAt({0, 10.0}).edge, 1);
  EXPECT_EQ(p.edgeAt({0, 36.0}).edge, 0);
}

TEST(Perimeter, ApartIsTheShorterWayRound) {
  const Perimeter p = of(PlanBuilder::rectangle(10, 8));
  EXPECT_NEAR(p.apart_m(0, 1.0, 35.0), 2.0, kMicrometre);
  EXPECT_NEAR(p.apart_m(0, 35.0, 1.0), 2.0, kMicrometre);
  EXPECT_NEAR(p.apart_m(0, 0.0, 18.0), 18.0, kMicrometre);
  EXPECT_NEAR(p.apart_m(0, 4.0, 40.0), 0.0, kMicrometre);
}

// Courtyard 4 x 3 at (5,5)..(9,8), clockwise from (5,5): up the west side first, house on the left.
TEST(Perimeter, CourtyardsAreWalkedClockwise) {
  const Perimeter p = of(PlanBuilder::courtyard());
  ASSERT_EQ(p.ringCount(), 2);
  EXPECT_NEAR(p.length_m(1), 14.0, kMicrometre);
  expectPoint(p.pointAt({1, 1.0}), 5, 6);
  expectPoint(Point{} + p.edgeAt({1, 1.0}).inward, -1, 0);  // away from the court
  expectPoint(p.pointAt({1, 4.0}), 6, 8);
  expectPoint(Point{} + p.edgeAt({1, 4.0}).inward, 0, 1);
  EXPECT_NEAR(p.edges(1)[1].turn_rad, -std::numbers::pi / 2, kMicrometre);
}

TEST(Perimeter, InnerCornerTurnsRight) {
  const Perimeter p = of(PlanBuilder::lShape());
  EXPECT_NEAR(p.edges(0)[3].turn_rad, -std::numbers::pi / 2, kMicrometre);
  EXPECT_NEAR(p.edges(0)[2].turn_rad, std::numbers::pi / 2, kMicrometre);
}

TEST(Perimeter, CornerLettersGoOnOverCourtyardsAndPastZ) {
  const Perimeter court = of(PlanBuilder::courtyard());
  EXPECT_EQ(court.cornerLetter(0, 0), "A");
  EXPECT_EQ(court.cornerLetter(0, 3), "D");
  EXPECT_EQ(court.cornerLetter(1, 0), "E");
  EXPECT_EQ(court.cornerLetter(1, 3), "H");
  // 30 corners on a circle: Z is the 26th, AD the 30th.
  support::Polygon circle;
  for (int i = 0; i < 30; ++i) {
    const double a = 2 * std::numbers::pi * i / 30;
    circle.push_back({9 * std::cos(a), 9 * std::sin(a)});
  }
  const Perimeter p = of(PlanBuilder::outline(circle));
  EXPECT_EQ(p.cornerLetter(0, 25), "Z");
  EXPECT_EQ(p.cornerLetter(0, 26), "AA");
  EXPECT_EQ(p.cornerLetter(0, 29), "AD");
  // Past ZZ there are three letters, and no two corners share a name.
  support::Polygon many;
  for (int i = 0; i < 800; ++i) {
    const double a = 2 * std::numbers::pi * i / 800;
    many.push_back({90 * std::cos(a), 90 * std::sin(a)});
  }
  const Perimeter round = of(PlanBuilder::outline(many));
  EXPECT_EQ(round.cornerLetter(0, 701), "ZZ");
  EXPECT_EQ(round.cornerLetter(0, 702), "AAA");
  std::set<std::string> names;
  for (int i = 0; i < 800; ++i) names.insert(round.cornerLetter(0, i));
  EXPECT_EQ(names.size(), 800U);
}

// Edge 0 of the rectangle faces the drawing's -y. north_deg is true north clockwise from +y.
TEST(Perimeter, CompassSideFollowsNorth) {
  const auto side = [](double north_deg, int edge) {
    const Perimeter p =
        of(PlanBuilder::rectangle().with([&](plan::Job& job) { job.plan.north_deg = north_deg; }));
    return p.compassSide(p.edges(0)[static_cast<std::size_t>(edge)]);
  };
  EXPECT_EQ(side(0, 0), "south");
  EXPECT_EQ(side(0, 1), "east");
  EXPECT_EQ(side(0, 2), "north");
  EXPECT_EQ(side(0, 3), "west");
  EXPECT_EQ(side(90, 0), "east");  // north is to the right: down on paper is east
  EXPECT_EQ(side(180, 0), "north");
  EXPECT_EQ(side(-90, 0), "west");
  EXPECT_EQ(side(45, 0), "south-east");
  EXPECT_EQ(side(45, 1), "north-east");
  EXPECT_EQ(side(360 + 20, 0), "south");  // within 22.5 degrees
  EXPECT_EQ(side(25, 0), "south-east");
}

TEST(Perimeter, WallLabelIsItsNameOrItsSide) {
  const Perimeter p =
      of(PlanBuilder::rectangle().wall(2, [](plan::Wall& wall) { wall.name = "garden wall"; }));
  EXPECT_EQ(p.wallLabel(p.edges(0)[2]), base::plainText("garden wall"));
  EXPECT_EQ(p.wallLabel(p.edges(0)[1]),
            base::Message("wall.compass", {base::text("side", "east")}));
}

TEST(Perimeter, NearestPlaceOverAllRings) {
  const Perimeter p = of(PlanBuilder::courtyard());
  EXPECT_EQ(p.nearest({7, -3}).ring, 0);
  EXPECT_NEAR(p.nearest({7, -3}).chainage_m, 7.0, kMicrometre);
  EXPECT_EQ(p.nearest({5.5, 6.5}).ring, 1);  // in the court, by its west side
  EXPECT_NEAR(p.nearest({5.5, 6.5}).chainage_m, 1.5, kMicrometre);
  EXPECT_EQ(p.nearest({4.0, 6.5}).ring, 1);  // indoors, 1 m from the court, 4 m from outside
  EXPECT_EQ(p.nearest({0.5, 6.5}).ring, 0);
  EXPECT_NEAR(p.nearest({-1, -1}).chainage_m, 0.0, kMicrometre);  // off a corner
  EXPECT_NEAR(p.nearest({15, -1}).chainage_m, 14.0, kMicrometre);
  EXPECT_NEAR(p.nearestOn(1, {-20, 6.5}).chainage_m, 1.5, kMicrometre);
}

TEST(Perimeter, PlacesAndFacesOfAnchors) {
  const Perimeter p = of(PlanBuilder::rectangle(10, 8));
  EXPECT_NEAR(p.placeOf({0, 1, 2.5}).chainage_m, 12.5, kMicrometre);
  EXPECT_NEAR(p.placeOf({0, 1, 2.5}, 0.9).chainage_m, 13.4, kMicrometre);
  EXPECT_NEAR(p.placeOf({0, 3, 8.0}).chainage_m, 0.0, kMicrometre);  // the ring's end is its start
  const Segment face = p.faceOf({0, 2, 3.0}, 1.2);
  expectPoint(face.a, 7, 8);
  expectPoint(face.b, 5.8, 8);
}

TEST(Perimeter, ThicknessOfWallThenHouseThenAssumed) {
  const auto thick = [](std::optional<double> wall, std::optional<double> house) {
    return of(PlanBuilder::rectangle()
                  .wall(0, [&](plan::Wall& w) { w.thickness_m = wall; })
                  .with([&](plan::Job& job) { job.house.wall_thickness_m = house; }))
        .edges(0)[0];
  };
  EXPECT_EQ(thick(0.45, 0.30).thickness_m, 0.45);
  EXPECT_EQ(thick({}, 0.30).thickness_m, 0.30);
  EXPECT_FALSE(thick({}, 0.30).thickness_assumed);
  EXPECT_EQ(thick({}, {}).thickness_m, 0.35);
  EXPECT_TRUE(thick({}, {}).thickness_assumed);
}

TEST(Perimeter, DrillLineGoesThroughTheWallAndTwentyCentimetresOn) {
  const Perimeter p = of(PlanBuilder::rectangle(10, 8));  // walls 0.35
  const Segment drill = p.drillLine({0, 12.0});
  expectPoint(drill.a, 10, 2);
  expectPoint(drill.b, 10 - 0.55, 2);
}

TEST(Perimeter, RefusesWhatHasNoChainage) {
  const auto problem = [](const plan::Job& job) {
    const auto made = Perimeter::of(job);
    return made ? std::string() : made.problems()[0].message.id + made.problems()[0].pointer;
  };
  EXPECT_EQ(problem(plan::Job{}), "plan.ring.none/plan/rings");
  EXPECT_EQ(problem(PlanBuilder::outline({{0, 0}, {1, 0}})),
            "plan.ring.corners/plan/rings/0/corners_m");
  EXPECT_EQ(problem(PlanBuilder::rectangle().with(
                [](plan::Job& job) { job.plan.rings[0].closed = false; })),
            "plan.ring.open/plan/rings/0");
  EXPECT_EQ(problem(PlanBuilder::outline({{0, 0}, {0.0009, 0}, {5, 0}, {5, 5}})),
            "plan.ring.short-edge/plan/rings/0/corners_m/0");
  EXPECT_EQ(problem(PlanBuilder::rectangle().with([](plan::Job& job) {
              job.plan.rings[0].corners[2].x = std::numeric_limits<double>::quiet_NaN();
            })),
            "plan.ring.short-edge/plan/rings/0/corners_m/1");
}

TEST(Perimeter, ContainsAsksRingAndFiniteness) {
  const Perimeter p = of(PlanBuilder::rectangle());
  EXPECT_TRUE(p.contains({0, -400.0}));
  EXPECT_FALSE(p.contains({1, 0.0}));
  EXPECT_FALSE(p.contains({-1, 0.0}));
  EXPECT_FALSE(p.contains({0, std::numeric_limits<double>::infinity()}));
}

}  // namespace

}  // namespace sumpwright::perimeter
