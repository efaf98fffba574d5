// What lies at the edges of the floor: which wall, and how far its foundation stands free.

#include <gtest/gtest.h>

#include <functional>

#include "geometry/Shapes.h"
#include "suction/ModelOf.h"
#include "support/PlanBuilder.h"

namespace sumpwright::suction {

namespace {

using support::PlanBuilder;

SuctionModel edgedModel(const plan::Job& job, const ModelChoices& choices = {}) {
  auto model = modelOf(job, {}, choices);
  EXPECT_TRUE(model);
  return model ? *model : SuctionModel{};
}

double edgeLength_m(const Region& region, std::size_t k) {
  return geometry::distance(region.outline[k], region.outline[(k + 1) % region.outline.size()]);
}

struct StandingFree {
  double length_m = 0.0;
  double mean_m = 0.0;
};

/// Of one wall's foundation.
StandingFree freeOf(const SuctionModel& model, int wall) {
  StandingFree free;
  for (const Region& region : model.regions) {
    for (std::size_t k = 0; k < region.edges.size(); ++k) {
      const Edge& edge = region.edges[k];
      if (edge.wall != wall || !(edge.outdoors_m2_s_pa > 0.0)) continue;
      free.length_m += edgeLength_m(region, k);
      free.mean_m += edgeLength_m(region, k) * edge.outdoors_m2_s_pa / Ground{}.exposed_m_s_pa;
    }
  }
  if (free.length_m > 0.0) free.mean_m /= free.length_m;
  return free;
}

/// Underside of the floor 0.30 m down: 0.05 screed, 0.10 insulation, 0.15 slab.
PlanBuilder layeredHouse() {
  return PlanBuilder::rectangle(10, 8).with([](plan::Job& j) {
    j.house.screed_m = 0.05;
    j.house.insulation_m = 0.10;
    j.house.slab_m = 0.15;
    j.house.ground_level_m = -0.15;
  });
}

TEST(FloorEdges, ExposedFoundationLeaksToOutdoors) {
  const plan::Job job =
      layeredHouse().wall(1, [](plan::Wall& wall) { wall.ground_level_m = -0.9; });
  const SuctionModel model = edgedModel(job);
  EXPECT_NEAR(freeOf(model, 1).length_m, 7.3, 1e-6);
  EXPECT_NEAR(freeOf(model, 1).mean_m, 0.6, 1e-9);
  for (const int buried : {0, 2, 3}) EXPECT_EQ(freeOf(model, buried).length_m, 0.0) << buried;
}

/// Every layer of the floor counts, not the slab alone; old solid floors have fewer.
TEST(FloorEdges, AFoundationStandsFreeBelowTheFloorsUnderside) {
  const auto height = [](double ground_m, const std::function<void(plan::Job&)>& change) {
    plan::Job job = layeredHouse();
    for (plan::Wall& wall : job.plan.rings[0].walls) wall.ground_level_m = ground_m;
    change(job);
    return freeOf(edgedModel(job), 0).mean_m;
  };
  EXPECT_EQ(height(-0.29, [](plan::Job&) {}), 0.0);
  EXPECT_NEAR(height(-0.35, [](plan::Job&) {}), 0.05, 1e-9);
  EXPECT_NEAR(height(-0.35, [](plan::Job& j) { j.plan.floor_zones[0].level_m = 0.2; }), 0.25, 1e-9);
  EXPECT_NEAR(height(-0.35, [](plan::Job& j) { j.plan.floor_zones[0].slab_m = 0.1; }), 0.10, 1e-9);
  const auto unknown = [](plan::Job& j) {
    j.house.screed_m = j.house.insulation_m = j.house.slab_m = std::nullopt;
  };
  EXPECT_EQ(height(-0.30, unknown), 0.0) << "0.315 m down as usually built";
  const auto old = [&](plan::Job& j) {
    unknown(j);
    j.house.build_type = plan::BuildType::solid_masonry;
  };
  EXPECT_NEAR(height(-0.30, old), 0.15, 1e-9) << "0.15 m down";
}

/// Ground that falls along the wall: the foundation comes out where it passes the underside.
TEST(FloorEdges, OnlyWhatStandsFreeOfSlopingGroundLeaks) {
  const plan::Job job = layeredHouse().wall(0, [](plan::Wall& wall) {
    // The underside is passed at 4 m; from 8 m on the ground is level, 0.3 m below it.
    wall.ground_points = {{8.0, -0.6, {}}, {0.0, 0.0, {}}};
  });
  const SuctionModel model = edgedModel(job);
  EXPECT_NEAR(freeOf(model, 0).length_m, 9.65 - 4.0, 1e-6);
  EXPECT_NEAR(freeOf(model, 0).mean_m, (4.0 * 0.15 + 1.65 * 0.3) / 5.65, 1e-6);
  EXPECT_NEAR(floorArea_m2(model), 9.3 * 7.3, 1e-4);
}

/// Two floors behind one wall, one lower than the other.
TEST(FloorEdges, EachFloorBehindAWallHasItsOwnUnderside) {
  const plan::Job job =
      layeredHouse()
          .noZones()
          .zone("low", plan::FloorKind::ground_bearing_slab, {{0, 0}, {6, 0}, {6, 8}, {0, 8}})
          .zone("high", plan::FloorKind::ground_bearing_slab, {{6, 0}, {10, 0}, {10, 8}, {6, 8}})
          .with([](plan::Job& j) { j.plan.floor_zones[1].level_m = 0.25; });
  EXPECT_NEAR(freeOf(edgedModel(job), 0).length_m, 3.65, 1e-6);
  EXPECT_NEAR(freeOf(edgedModel(job), 0).mean_m, 0.1, 1e-9);
}

/// Two walls in one straight line, one of them shared: each has its own facts.
TEST(FloorEdges, WallsInLineAreToldApart) {
  const plan::Job job = PlanBuilder::outline({{0, 0}, {10, 0}, {10, 3}, {10, 8}, {0, 8}})
                            .wall(1, [](plan::Wall& wall) { wall.ground_level_m = -0.9; })
                            .wall(2, [](plan::Wall& wall) { wall.kind = plan::WallKind::party; });
  const SuctionModel model = edgedModel(job, {.party_open = true});
  EXPECT_NEAR(freeOf(model, 1).length_m, 3.0 - 0.35, 1e-6);
  const Region& own = model.regions[0];
  double open = 0.0;
  for (std::size_t k = 0; k < own.edges.size(); ++k) {
    if (own.edges[k].goes_on) {
      EXPECT_EQ(own.edges[k].wall, 2);
      open += edgeLength_m(own, k);
    }
  }
  EXPECT_NEAR(open, 5.0 - 0.35, 1e-6);
  // Next door begins at the party wall, and not where ours looks out.
  ASSERT_EQ(model.regions.size(), 2U);
  EXPECT_FALSE(geometry::contains(model.regions[1].outline, {9.8, 1.5}));
  EXPECT_TRUE(geometry::contains(model.regions[1].outline, {9.8, 5.0}));
  EXPECT_TRUE(geometry::contains(model.regions[1].outline, {12.0, 1.5}));
}

/// Walls of one line and one kind are edges of their own, and the joint keeps its length.
TEST(FloorEdges, TheJointKeepsItsLengthWhereAWallIsParted) {
  const auto joint = [](const plan::Job& job) {
    double length = 0.0;
    const Region region = edgedModel(job).regions[0];
    for (std::size_t k = 0; k < region.edges.size(); ++k) {
      if (region.edges[k].room_m2_s_pa > 0.0) length += edgeLength_m(region, k);
    }
    return length;
  };
  const double whole =
      joint(PlanBuilder::outline({{0, 0}, {10, 0}, {10, 8}, {6, 8}, {6, 5}, {0, 5}}));
  const double parted = joint(
      PlanBuilder::outline({{0, 0}, {4, 0}, {10, 0}, {10, 8}, {6, 8}, {6, 6}, {6, 5}, {0, 5}}));
  EXPECT_NEAR(parted, whole, 1e-6);
  EXPECT_NEAR(whole, 2.0 * (9.3 + 7.3), 1e-6);
}

}  // namespace

}  // namespace sumpwright::suction
