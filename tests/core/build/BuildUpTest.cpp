#include <gtest/gtest.h>

#include "core/build/Sites.h"

namespace sumpwright::build {

namespace {

using support::PlanBuilder;

std::vector<std::string> assumedIds(const BuildUp& up) {
  std::vector<std::string> ids;
  for (const Assumption& one : up.assumed) ids.push_back(one.what.id);
  return ids;
}

bool assumes(const BuildUp& up, const std::string& id) {
  const auto ids = assumedIds(up);
  return std::find(ids.begin(), ids.end(), id) != ids.end();
}

plan::Job measured() {
  return PlanBuilder::rectangle()
      .with([](plan::Job& job) {
        plan::House& house = job.house;
        house.wall_thickness_m = 0.30;
        house.wall_layers = {{plan::LayerKind::render, 0.015},
                             {plan::LayerKind::block, 0.10},
                             {plan::LayerKind::cavity, 0.085},
                             {plan::LayerKind::block, 0.10}};
        house.screed_m = 0.07;
        house.insulation_m = 0.06;
        house.slab_m = 0.12;
        house.hardcore_m = 0.20;
        house.fill = plan::Fill::clean_stone;
        house.ground_level_m = -0.20;
        house.dpc_height_m = -0.02;
        house.footing_top_low_m = -0.80;
        house.footing_top_high_m = -0.70;
        house.barrier = plan::Barrier::in_floor;
        house.barrier_level_m = -0.13;
        job.design.barrel_length_m = 0.45;
        for (plan::Wall& wall : job.plan.rings[0].walls) {
          wall.thickness_m.reset();
          wall.ground_level_m.reset();
        }
      })
      .job();
}

TEST(BuildUp, TakesWhatTheJobSays) {
  const BuildUp up = buildUpAt(siteOf(measured()), {0, 4.0});
  EXPECT_DOUBLE_EQ(up.wall_m, 0.30);
  EXPECT_NEAR(up.underside_m(), -0.25, 1e-12);
  EXPECT_NEAR(up.fillBottom_m(), -0.50, 1e-12);
  EXPECT_DOUBLE_EQ(up.ground_m, -0.20);
  EXPECT_DOUBLE_EQ(up.dpc_m, -0.02);
  EXPECT_DOUBLE_EQ(up.footing_high_m, -0.70);
  EXPECT_DOUBLE_EQ(up.barrier_m, -0.13);
  ASSERT_EQ(up.leaves.size(), 4U);
  EXPECT_DOUBLE_EQ(up.leaves.front().from_m, 0.0);
  EXPECT_DOUBLE_EQ(up.leaves.back().to_m, 0.30);
  EXPECT_EQ(assumedIds(up), std::vector<std::string>{"section.assumed.blinding"});
}

TEST(BuildUp, SaysEverythingItAssumesWithItsSource) {
  const BuildUp up = buildUpAt(siteOf(PlanBuilder::bare()), {0, 4.0});
  for (const char* id :
       {"section.assumed.wall", "section.assumed.leaves", "section.assumed.floor",
        "section.assumed.screed", "section.assumed.insulation", "section.assumed.slab",
        "section.assumed.blinding", "section.assumed.hardcore", "section.assumed.ground",
        "section.assumed.dpc", "section.assumed.barrier", "section.assumed.footing",
        "section.assumed.barrel"}) {
    EXPECT_TRUE(assumes(up, id)) << id;
  }
  for (const Assumption& one : up.assumed) EXPECT_FALSE(one.source.text.empty()) << one.what.id;
  EXPECT_DOUBLE_EQ(up.footing_low_m, -0.75);
  EXPECT_DOUBLE_EQ(up.footing_high_m, -0.35);
  EXPECT_DOUBLE_EQ(up.dpc_m, up.ground_m + 0.15);
}

TEST(BuildUp, OldSolidHousesHaveThinnerFloorsAndOneLeaf) {
  const plan::Job job = PlanBuilder::bare()
                            .with([](plan::Job& j) {
                              j.house.build_type = plan::BuildType::stone_rubble;
                              j.house.wall_thickness_m = 0.55;
                            })
                            .job();
  const BuildUp up = buildUpAt(siteOf(job), {0, 4.0});
  ASSERT_EQ(up.leaves.size(), 1U);
  EXPECT_EQ(up.leaves[0].kind, plan::LayerKind::stone);
  EXPECT_NEAR(up.underside_m(), -0.15, 1e-12);
}

TEST(BuildUp, WallsOwnGroundWinsAndSlopesBetweenItsPoints) {
  const plan::Job job =
      PlanBuilder::rectangle()
          .with([](plan::Job& j) { j.house.ground_level_m = -0.6; })
          .wall(0,
                [](plan::Wall& wall) {
                  wall.ground_level_m = -0.5;
                  wall.ground_points = {{6.0, -0.40, plan::GroundSurface::soil},
                                        {2.0, -0.20, plan::GroundSurface::paving}};
                })
          .wall(1, [](plan::Wall& wall) { wall.ground_level_m = -0.3; })
          .wall(2, [](plan::Wall& wall) { wall.ground_level_m.reset(); })
          .job();
  const rules::Site site = siteOf(job);
  EXPECT_NEAR(buildUpAt(site, {0, 4.0}).ground_m, -0.30, 1e-12);
  EXPECT_NEAR(buildUpAt(site, {0, 4.0}).ground_slope, -0.05, 1e-12);
  EXPECT_NEAR(buildUpAt(site, {0, 3.0}).ground_m, -0.25, 1e-12);
  EXPECT_EQ(buildUpAt(site, {0, 3.0}).surface, plan::GroundSurface::paving);
  EXPECT_NEAR(buildUpAt(site, {0, 1.0}).ground_m, -0.20, 1e-12);
  EXPECT_NEAR(buildUpAt(site, {0, 1.0}).ground_slope, 0.0, 1e-12);
  EXPECT_NEAR(buildUpAt(site, {0, 9.0}).ground_m, -0.40, 1e-12);
  EXPECT_NEAR(buildUpAt(site, {0, 12.0}).ground_m, -0.30, 1e-12);
  EXPECT_NEAR(buildUpAt(site, {0, 22.0}).ground_m, -0.60, 1e-12);
}

TEST(BuildUp, OneGroundPointIsLevelGround) {
  const plan::Job job = PlanBuilder::rectangle()
                            .wall(0,
                                  [](plan::Wall& w) {
                                    w.ground_points = {{3.0, -0.25}};
                                  })
                            .job();
  EXPECT_NEAR(buildUpAt(siteOf(job), {0, 8.0}).ground_m, -0.25, 1e-12);
  EXPECT_DOUBLE_EQ(buildUpAt(siteOf(job), {0, 8.0}).ground_slope, 0.0);
}

TEST(BuildUp, ZonesSetFloorLevelSlabAndBarrier) {
  const plan::Job job = PlanBuilder::rectangle()
                            .with([](plan::Job& j) {
                              plan::FloorZone& zone = j.plan.floor_zones.at(0);
                              zone.level_m = -0.15;
                              zone.slab_m = 0.10;
                              zone.barrier = plan::Barrier::lapped_through_wall;
                              j.house.slab_m = 0.2;
                            })
                            .job();
  const BuildUp up = buildUpAt(siteOf(job), {0, 4.0});
  EXPECT_DOUBLE_EQ(up.floor_m, -0.15);
  EXPECT_DOUBLE_EQ(up.slab_m, 0.10);
  EXPECT_EQ(up.barrier, plan::Barrier::lapped_through_wall);
  EXPECT_NEAR(up.barrier_m, up.underside_m(), 1e-12);
  EXPECT_TRUE(assumes(up, "section.assumed.barrier-level"));
}

TEST(BuildUp, FootingEndsMayComeAloneOrSwapped) {
  plan::Job job = PlanBuilder::rectangle().job();
  job.house.footing_top_low_m.reset();
  job.house.footing_top_high_m = -0.6;
  BuildUp up = buildUpAt(siteOf(job), {0, 4.0});
  EXPECT_DOUBLE_EQ(up.footing_low_m, -0.75);
  EXPECT_DOUBLE_EQ(up.footing_high_m, -0.6);
  EXPECT_FALSE(up.footing_known);
  EXPECT_TRUE(assumes(up, "section.assumed.footing"));  // the low end is a guess
  job.house.footing_top_high_m = -0.9;
  EXPECT_DOUBLE_EQ(buildUpAt(siteOf(job), {0, 4.0}).footing_low_m, -0.9);
  job.house.footing_top_high_m.reset();
  job.house.footing_top_low_m = -0.75;
  up = buildUpAt(siteOf(job), {0, 4.0});
  EXPECT_DOUBLE_EQ(up.footing_high_m, -0.35);  // a low end alone does not make a deep footing
  EXPECT_TRUE(assumes(up, "section.assumed.footing"));
  job.house.footing_top_high_m = -0.6;
  job.house.footing_top_low_m = -0.4;
  up = buildUpAt(siteOf(job), {0, 4.0});
  EXPECT_DOUBLE_EQ(up.footing_low_m, -0.6);
  EXPECT_DOUBLE_EQ(up.footing_high_m, -0.4);
}

std::string whyNot(const plan::Job& job, double s = 4.0) {
  const rules::Site site = siteOf(job);
  const auto why = noCores(site, {0, s});
  return why.empty() ? "" : noCoreWords(why.front(), site, {0, s}).id;
}

TEST(NotCored, SaysWhy) {
  EXPECT_EQ(whyNot(PlanBuilder::rectangle()), "");
  const auto floor = [](plan::FloorKind kind) {
    return PlanBuilder::rectangle()
        .with([kind](plan::Job& j) { j.plan.floor_zones.at(0).kind = kind; })
        .job();
  };
  EXPECT_EQ(whyNot(floor(plan::FloorKind::suspended_timber)), "section.none.timber");
  EXPECT_EQ(whyNot(floor(plan::FloorKind::suspended_concrete)), "section.none.concrete");
  EXPECT_EQ(whyNot(floor(plan::FloorKind::unknown)), "");
  const auto wall = [](const std::function<void(plan::Wall&)>& change) {
    return PlanBuilder::rectangle().wall(0, change).job();
  };
  EXPECT_EQ(whyNot(wall([](plan::Wall& w) { w.kind = plan::WallKind::party; })),
            "section.none.party");
  EXPECT_EQ(whyNot(wall([](plan::Wall& w) { w.foundation = plan::Foundation::raft_edge; })),
            "section.none.foundation");
  EXPECT_EQ(whyNot(wall([](plan::Wall& w) { w.ground_level_m = 1.01; })), "section.none.deep");
  EXPECT_EQ(whyNot(wall([](plan::Wall& w) { w.ground_level_m = 0.99; })), "");
}

TEST(NotCored, SealedGroundUnderASuspendedFloorIsCoredUnderItsConcrete) {
  plan::Job job = PlanBuilder::rectangle().job();
  plan::FloorZone& zone = job.plan.floor_zones.at(0);
  zone.kind = plan::FloorKind::suspended_timber;
  zone.oversite = plan::Oversite::sealed;
  job.house.footing_top_low_m = job.house.footing_top_high_m = -1.2;
  EXPECT_EQ(whyNot(job), "");
  const DrillSection section = drillSection(siteOf(job), {0, 4.0}, {});
  EXPECT_NEAR(section.up.underside_m(), -0.45, 1e-12);
  EXPECT_TRUE(assumes(section.up, "section.assumed.oversite"));
  EXPECT_EQ(section.fit, Fit::fits);
  EXPECT_LT(section.bore->entry_m, -0.45);
  zone.oversite = plan::Oversite::open;
  EXPECT_EQ(whyNot(job), "section.none.timber");
}

TEST(NotCored, SectionHasNoBoreButItsBuildUp) {
  plan::Job job = PlanBuilder::rectangle().job();
  job.plan.floor_zones.at(0).kind = plan::FloorKind::suspended_timber;
  const DrillSection section = drillSection(siteOf(job), {0, 4.0}, {});
  EXPECT_EQ(section.fit, Fit::not_cored);
  EXPECT_FALSE(section.bore);
  EXPECT_TRUE(section.margins.empty());
  EXPECT_GT(section.up.wall_m, 0.0);
}

TEST(NoCore, IsToldByTheNameOfItsReasonInEveryTheme) {
  plan::Wall wall;
  wall.foundation = plan::Foundation::raft_edge;
  const auto idOf = [&](NoCore why) { return noCoreMessage("section.none.", why, wall).id; };
  EXPECT_EQ(idOf(NoCore::party), "section.none.party");
  EXPECT_EQ(idOf(NoCore::dwarf), "section.none.dwarf");
  EXPECT_EQ(idOf(NoCore::timber), "section.none.timber");
  EXPECT_EQ(idOf(NoCore::concrete), "section.none.concrete");
  EXPECT_EQ(idOf(NoCore::deep), "section.none.deep");
  const base::Message cut = noCoreMessage("rule.no-core.", NoCore::foundation, wall);
  EXPECT_EQ(cut.id, "rule.no-core.foundation");
  EXPECT_EQ(std::get<base::Message>(cut.find("foundation")->value).id, "value.raft_edge");
}

}  // namespace

}  // namespace sumpwright::build
