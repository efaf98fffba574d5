#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "core/plan/JobCases.h"
#include "perimeter/Perimeter.h"
#include "plan/Checks.h"
#include "plan/PlanCheck.h"
#include "plan/WallThickness.h"
#include "support/Listed.h"

namespace sumpwright::plan {
namespace {

using support::PlanBuilder;

/// Stated, else its own layers together, else the house's; assumed only where nobody knows any.
TEST(WallThickness, IsThatOfTheLayersWhereNoneIsStated) {
  Wall wall;
  House house;
  EXPECT_FALSE(knownThickness_m(wall, house));
  EXPECT_EQ(thicknessTaken_m(wall, house), kAssumedWallThickness_m);
  house.wall_layers = {
      {LayerKind::brick, 0.10}, {LayerKind::cavity, 0.10}, {LayerKind::block, 0.17}};
  EXPECT_NEAR(*knownThickness_m(wall, house), 0.37, 1e-12);
  house.wall_thickness_m = 0.40;
  EXPECT_EQ(knownThickness_m(wall, house), 0.40);
  wall.layers = {{LayerKind::block, 0.215}};
  EXPECT_EQ(knownThickness_m(wall, house), 0.215);
  wall.thickness_m = 0.23;
  EXPECT_EQ(knownThickness_m(wall, house), 0.23);
}

TEST(WallThickness, OfLayersAloneIsKnownToTheCheckAndBounded) {
  plan::Job job = PlanBuilder::rectangle().job();
  for (Wall& wall : job.plan.rings[0].walls) wall.thickness_m.reset();
  job.house.wall_thickness_m.reset();
  const auto has = [&](const char* id) {
    return support::listed(checkJob(job)).find(id) != std::string::npos;
  };
  EXPECT_TRUE(has("plan.wall.thickness-unknown at"));
  job.house.wall_layers = {{LayerKind::block, 0.20}, {LayerKind::insulation, 0.10}};
  EXPECT_FALSE(has("plan.wall.thickness-unknown at"));
  job.house.wall_layers[0].thickness_m = 3.0;
  EXPECT_TRUE(has("plan.wall.thickness at"));
}

TEST(PlanCheck, HousesOfTheBuilderHaveNoProblem) {
  for (const PlanBuilder& builder :
       {PlanBuilder::rectangle(), PlanBuilder::lShape(), PlanBuilder::courtyard()}) {
    EXPECT_TRUE(checkJob(builder).empty()) << support::listed(checkJob(builder));
  }
}

TEST(PlanCheck, EveryProblemIsGivenOnceWithItsPlace) {
  for (const CheckCase& c : checkCases()) {
    SCOPED_TRACE(c.id + " " + c.pointer);
    const base::Problems problems = checkJob(c.job);
    ASSERT_EQ(problems.size(), 1U) << support::listed(problems);
    EXPECT_EQ(problems[0].message.id, c.id);
    EXPECT_EQ(problems[0].pointer, c.pointer);
    EXPECT_EQ(problems[0].gravity, c.gravity);
  }
}

TEST(PlanCheck, ABareSurveyIsSoundAndEverythingMissingIsNamed) {
  const base::Problems problems = checkJob(PlanBuilder::bare());
  EXPECT_FALSE(base::any(problems, base::Gravity::unsound)) << support::listed(problems);
  EXPECT_EQ(problems.size(), 21U) << support::listed(problems);
}

TEST(PlanCheck, ProblemsComeInFileOrder) {
  const Job job = PlanBuilder::rectangle()
                      .window("w", 0, 9.5, 1)
                      .sump("s", 4, 0)
                      .with([](Job& j) {
                        j.surveyed_on = "soon";
                        j.house.slab_m = -1;
                        j.plan.rings[0].walls[3].thickness_m = 9;
                        j.looked_for.gas = Looked::not_looked;
                      })
                      .job();
  std::vector<std::string> places;
  for (const base::Problem& p : checkJob(job)) places.push_back(p.pointer);
  EXPECT_EQ(places,
            (std::vector<std::string>{"/surveyed_on", "/looked_for/gas", "/house/slab_m",
                                      "/plan/rings/0/walls/3/thickness_m",
                                      "/plan/openings/0/offset_m", "/design/sumps/0/chainage_m"}));
}

TEST(PlanCheck, WhatOnlyLooksWrongIsLeftAlone) {
  const PlanBuilder house = PlanBuilder::rectangle();
  const std::vector<std::pair<std::string, Job>> fine = {
      {"openings that touch", PlanBuilder(house).window("a", 0, 1, 1).window("b", 0, 2, 1)},
      {"openings of two storeys",
       PlanBuilder(house).window("a", 0, 1, 1).window("b", 0, 1, 1).with([](Job& j) {
         j.plan.openings[1].storey = 1;
         j.plan.openings[1].sill_m = 3.6;
         j.plan.openings[1].head_m = 4.8;
       })},
      {"a grille high up in the wall of the ground storey",
       PlanBuilder(house).vent("a", 0, 1).with([](Job& j) {
         j.plan.openings[0].sill_m = 2.4;
         j.plan.openings[0].head_m = 2.6;
       })},
      {"a window over a window of the same storey",
       PlanBuilder(house).window("a", 0, 1, 1).window("b", 0, 1, 1).with([](Job& j) {
         j.plan.openings[1].sill_m = 2.2;
         j.plan.openings[1].head_m = 2.6;
       })},
      {"an air brick of unknown height under a window",
       PlanBuilder(house).window("a", 0, 1, 1).vent("b", 0, 1.2)},
      {"an opening to the very corners", PlanBuilder(house).window("a", 0, 0, 10)},
      {"a sump at the end of the ring", PlanBuilder(house).sump("s", 0, 36)},
      {"a standby sump whose cap is outside", PlanBuilder(house).sump("s", 0, 0).with([](Job& j) {
         j.design.sumps[0].kind = SumpKind::standby;
         j.design.sumps[0].at_m = geometry::Point{-1, 2};
       })},
      {"a party wall with nothing known of its outside",
       PlanBuilder(house).wall(1,
                               [](Wall& w) {
                                 w.kind = WallKind::party;
                                 w.foundation = Foundation::unknown;
                                 w.ground = OutsideGround::unknown;
                                 w.free_depth_m.reset();
                               })},
      {"a room drawn to the outside face of an outside wall",
       PlanBuilder(house).noRooms().room("r", RoomUse::hall, {{0, 0}, {10, 0}, {10, 8}, {0, 8}})},
      {"rooms the other way round",
       PlanBuilder(house).noRooms().room("r", RoomUse::hall, {{1, 1}, {1, 2}, {2, 2}, {2, 1}})},
      {"a sump beside a party wall at which the fill is cut off", PlanBuilder(house)
                                                                      .sump("s", 0, 9.5)
                                                                      .wall(1,
                                                                            [](Wall& w) {
                                                                              w.kind =
                                                                                  WallKind::party;
                                                                              w.party_below =
                                                                                  PartyBelow::cut;
                                                                            })},
      {"a leap day", PlanBuilder(house).with([](Job& j) { j.surveyed_on = "2028-02-29"; })},
  };
  for (const auto& [what, job] : fine) {
    EXPECT_TRUE(checkJob(job).empty()) << what << "\n" << support::listed(checkJob(job));
  }
}

TEST(PlanCheck, IsTotalOnWildNumbers) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const double inf = std::numeric_limits<double>::infinity();
  for (const double wild : {nan, inf, -inf, 1e308, -1e308}) {
    const Job job = PlanBuilder::courtyard()
                        .window("w", 0, wild, wild)
                        .sump("s", 0, wild)
                        .with([&](Job& j) {
                          j.plan.rings[0].corners[1].x = wild;
                          j.plan.rooms[0].outline_m[2].y = wild;
                        })
                        .job();
    EXPECT_TRUE(base::any(checkJob(job), base::Gravity::unsound));
  }
}

}  // namespace
}  // namespace sumpwright::plan
