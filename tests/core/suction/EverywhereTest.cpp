#include <gtest/gtest.h>

#include <algorithm>

#include "suction/Everywhere.h"
#include "support/Fields.h"
#include "support/PlanBuilder.h"

namespace sumpwright::suction {

namespace {

using perimeter::Perimeter;
using perimeter::Place;
using support::PlanBuilder;

struct Site {
  Perimeter perimeter;
  FieldSolver solver;
};

Site siteOf(const plan::Job& job, const Ground& ground = {}) {
  return {Perimeter::of(job).value(),
          FieldSolver::of(modelOf(job, ground).value(), {.cell_m = 0.1})};
}

plan::Job cutInTwo() {
  return PlanBuilder::rectangle(12, 7)
      .with([](plan::Job& j) {
        j.plan.inner_walls.push_back({"w", {{6, 0}, {6, 7}}, 0.1, plan::BelowFloor::own_footing});
      })
      .job();
}

const Allowed kAnywhere = [](const Place&) { return true; };

TEST(SuctionFlow, ConstantSuctionIsTheRootOfItsLoad) {
  const auto fan = constantSuction(150.0);
  EXPECT_NEAR(fan({5000.0, 0.0}), 0.03, 1e-15);
  const double q = fan({5000.0, 40000.0});
  EXPECT_NEAR(5000.0 * q + 40000.0 * q * q, 150.0, 1e-9);
}

TEST(SuctionFlow, SumpsThatSeeEachOtherDrawLessEach) {
  const auto fan = constantSuction(100.0);
  const std::vector<double> matrix{6000.0, 1500.0, 1500.0, 5000.0};
  const auto flows = flowsTogether(matrix, {20000.0, 20000.0}, fan);
  for (std::size_t i = 0; i < 2; ++i) {
    const double there =
        matrix[2 * i] * flows[0] + matrix[2 * i + 1] * flows[1] + 20000.0 * flows[i] * flows[i];
    EXPECT_NEAR(there, 100.0, 1e-6);
    EXPECT_LT(flows[i], fan({matrix[3 * i], 20000.0}));
  }
}

/// The curve by reciprocity says what a solve at that very place says.
TEST(SuctionEverywhere, TheCurveIsWhatASolveThereWouldSay) {
  const Site site = siteOf(PlanBuilder::lShape());
  const EverywhereOptions options;
  const Everywhere all = everywhereOf(site.solver, site.perimeter, options);
  ASSERT_EQ(all.weak.size(), 4U);
  ASSERT_GT(all.curve.size(), 300U);
  for (std::size_t k = 3; k < all.curve.size(); k += 41) {
    const CurvePlace& one = all.curve[k];
    SCOPED_TRACE(one.place.chainage_m);
    const auto unit = site.solver.unit(sinkAt(site.perimeter, one.place, options.radius_m));
    ASSERT_EQ(unit.has_value(), one.on_floor);
    if (!unit) continue;
    // Between places a metre apart the resistance is read, not solved.
    EXPECT_NEAR(one.resistance_pa_s_m3 / unit->resistance_pa_s_m3, 1.0, 0.03);
    for (std::size_t w = 0; w < all.weak.size(); ++w) {
      const double there =
          unit->suction[static_cast<std::size_t>(site.solver.network().cellNear(all.weak[w]))];
      EXPECT_NEAR(one.at_weak_pa[w], one.flow_m3_s * there, 1e-9 * one.at_weak_pa[w] + 1e-12);
    }
  }
}

TEST(SuctionEverywhere, WeakPointsAreTheFarCorners) {
  const Site site = siteOf(PlanBuilder::rectangle(14, 6));
  const Everywhere all = everywhereOf(site.solver, site.perimeter, {});
  for (const Point p : all.weak) {
    EXPECT_GT(p.x, 0.0);
    EXPECT_LT(p.x, 14.0);
    for (const Point q : all.weak) {
      EXPECT_TRUE(p == q || geometry::distance(p, q) > 3.0);
    }
  }
}

TEST(SuctionEverywhere, NoFloorBehindTheWallNoSuction) {
  const Site site = siteOf(PlanBuilder::rectangle(10, 8).noZones().zone(
      "timber", plan::FloorKind::suspended_timber, {{5, 0}, {10, 0}, {10, 8}, {5, 8}}));
  const Everywhere all = everywhereOf(site.solver, site.perimeter, {});
  for (const CurvePlace& one : all.curve) {
    const Point p = site.perimeter.pointAt(one.place);
    EXPECT_FALSE(one.on_floor && p.x > 6.0);
    const bool corner = p.x < 0.7 && (p.y < 0.7 || p.y > 7.3);
    EXPECT_TRUE(one.on_floor || corner || p.x > 4.0);
  }
}

TEST(SuctionEverywhere, AWallThroughTheFloorAsksForASumpOnEitherSide) {
  const Site site = siteOf(cutInTwo());
  EverywhereOptions options;
  options.fan = constantSuction(300.0);
  const Everywhere all = everywhereOf(site.solver, site.perimeter, options);
  const auto single = bestSingle(all, kAnywhere);
  ASSERT_TRUE(single);
  EXPECT_LT(single->reach.floor, 0.55);
  const auto pair = bestPair(site.solver, all, options, kAnywhere);
  ASSERT_TRUE(pair);
  EXPECT_GT(pair->reach.floor, 1.5 * single->reach.floor);
  EXPECT_LT(std::min(pair->first.sink.at.x, pair->second.sink.at.x), 6.0);
  EXPECT_GT(std::max(pair->first.sink.at.x, pair->second.sink.at.x), 6.0);
  // Behind a tight wall the two do not see each other.
  EXPECT_NEAR(pair->matrix[1], 0.0, 1e-6);
  // With one given on the left, the other comes on the right.
  const auto partner = bestPair(site.solver, all, options, kAnywhere, Sink{{2, 3}, 0.3});
  ASSERT_TRUE(partner);
  EXPECT_GT(partner->second.sink.at.x, 6.0);
  // And none where none may stand.
  EXPECT_FALSE(bestPair(site.solver, all, options, [](const Place&) { return false; }));
}

/// Exhaustive on a small floor: no pair of solved places reaches more.
TEST(SuctionEverywhere, NoPairReachesMoreThanTheBest) {
  Ground ground;
  ground.leak_ground_m_s_pa = 2e-5;
  const Site site = siteOf(PlanBuilder::lShape(), ground);
  EverywhereOptions options;
  options.solve_step_m = 3.0;
  const Everywhere all = everywhereOf(site.solver, site.perimeter, options);
  const auto best = bestPair(site.solver, all, options, kAnywhere);
  ASSERT_TRUE(best);
  for (const SolvedPlace& a : all.solved) {
    for (const SolvedPlace& b : all.solved) {
      if (geometry::distance(a.sink.at, b.sink.at) < 0.6) continue;
      std::vector<UnitField> units{*site.solver.unit(a.sink), *site.solver.unit(b.sink)};
      const auto flows = flowsTogether(resistances(units), {0.0, 0.0}, options.fan);
      const Reach reach = reachOf(site.solver.network(), superposed(units, flows), options.target);
      EXPECT_LE(reach.floor, best->reach.floor + 1e-4);
    }
  }
}

}  // namespace

}  // namespace sumpwright::suction
