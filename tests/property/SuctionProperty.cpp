// What holds of every suction field, on random outlines with random walls through the fill.

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "geometry/Shapes.h"
#include "suction/Field.h"
#include "support/Seed.h"

namespace sumpwright::property {

namespace {

using geometry::Vec;
using suction::FieldSolver;
using suction::Point;
using suction::Polygon;
using suction::Scales;
using suction::SuctionModel;
using support::Random;

Polygon randomFootprint(Random& random) {
  const int corners = random.between(3, 9);
  Polygon outline;
  for (int k = 0; k < corners; ++k) {
    const double turn = 2.0 * std::numbers::pi * (k + random.uniform(-0.3, 0.3)) / corners;
    const double radius = random.uniform(2.5, 6.0);
    outline.push_back({radius * std::cos(turn), radius * std::sin(turn)});
  }
  return outline;
}

Point somewhere(Random& random) { return {random.uniform(-5, 5), random.uniform(-5, 5)}; }

suction::Barrier randomWall(Random& random) {
  suction::Barrier wall{"w", {somewhere(random), somewhere(random)}};
  if (random.chance(0.3)) wall.line.push_back(somewhere(random));
  if (random.chance(0.5)) wall.conductance_m2_s_pa = std::pow(10.0, random.uniform(-7.0, -4.0));
  if (random.chance(0.5)) wall.joint_m2_s_pa = 1e-6;
  if (random.chance(0.5)) {
    const double from = random.uniform(0.0, 3.0);
    wall.gaps.push_back({from, from + random.uniform(0.02, 2.0)});
  }
  return wall;
}

SuctionModel randomModel(Random& random) {
  SuctionModel model;
  suction::Region region;
  region.outline = randomFootprint(random);
  for (std::size_t k = 0; k < region.outline.size(); ++k) {
    region.edges.push_back({random.chance(0.5) ? random.uniform(0.0, 5e-5) : 0.0,
                            random.chance(0.2) ? random.uniform(0.0, 5e-5) : 0.0});
  }
  if (random.chance(0.3)) {
    region.holes = {{{-0.7, -0.6}, {0.9, -0.5}, {0.6, 0.8}}};
    region.hole_edges = {{{1e-6}, {1e-6}, {}}};
  }
  model.regions = {region};
  const double t = std::pow(10.0, random.uniform(-6.0, -3.0));
  const double lambda = random.uniform(0.8, 12.0);
  model.layer = {t, t / (lambda * lambda)};
  const int walls = random.between(0, 4);
  for (int k = 0; k < walls; ++k) model.barriers.push_back(randomWall(random));
  if (random.chance(0.4)) {
    model.zones = {{"z", {{-2, -4}, {3, -4}, {3, 0}, {-2, 0}}, {5.0 * t, 1e-7}}};
  }
  if (random.chance(0.3)) {
    model.conduits = {{"d", {somewhere(random), somewhere(random)}, 10.0 * t, random.chance(0.5)}};
  }
  return model;
}

struct Random2 {
  SuctionModel model;
  FieldSolver solver;
  suction::UnitField a;
  suction::UnitField b;
};

/// A random model with two sumps on its floor; nothing where no place was found for them.
std::optional<Random2> drawn(std::uint64_t seed) {
  Random random(seed);
  Random2 made{randomModel(random)};
  made.solver = FieldSolver::of(
      made.model, {.cell_m = random.chance(0.5) ? 0.1 : 0.17, .align = random.chance(0.5)});
  EXPECT_EQ(made.solver.summary().state, suction::FieldState::solved);
  if (!made.solver.ok()) return std::nullopt;
  std::vector<suction::UnitField> units;
  for (int tries = 0; tries < 100 && units.size() < 2; ++tries) {
    if (auto unit = made.solver.unit({somewhere(random), random.uniform(0.05, 0.5)})) {
      units.push_back(std::move(*unit));
    }
  }
  if (units.size() < 2) return std::nullopt;
  made.a = std::move(units[0]);
  made.b = std::move(units[1]);
  return made;
}

double leakageOfAll(const suction::Network& net, const std::vector<double>& s) {
  double sum = 0.0;
  for (std::size_t c = 0; c < s.size(); ++c) sum += suction::leakageOf(net.cells[c], {}) * s[c];
  for (const auto& joint : net.joints) {
    sum += suction::conductanceOf(joint, {}) * s[static_cast<std::size_t>(joint.cell)];
  }
  return sum;
}

TEST(SuctionProperty, LeakageInIsFlowOut) {
  support::forEachSeed(60, [](std::uint64_t seed) {
    const auto made = drawn(seed);
    if (!made) return;
    EXPECT_LT(made->solver.summary().balance, 1e-9);
    EXPECT_NEAR(leakageOfAll(made->solver.network(), made->a.suction), 1.0, 1e-9);
  });
}

TEST(SuctionProperty, EveryCellIsInBalanceByTheNetworkItself) {
  support::forEachSeed(30, [](std::uint64_t seed) {
    const auto made = drawn(seed);
    if (!made) return;
    auto flow = suction::applied(made->solver.network(), {}, made->a.suction);
    for (const auto& [cell, weight] : made->a.port.weights) {
      flow[static_cast<std::size_t>(cell)] -= weight;
    }
    for (const double rest : flow) ASSERT_NEAR(rest, 0.0, 1e-8);
  });
}

TEST(SuctionProperty, WhatOneSumpDoesAtAnotherIsMutual) {
  support::forEachSeed(60, [](std::uint64_t seed) {
    const auto made = drawn(seed);
    if (!made) return;
    const double ab = suction::readAt(made->b.port, made->a.suction);
    const double ba = suction::readAt(made->a.port, made->b.suction);
    EXPECT_NEAR(ab, ba, 1e-9 * (std::abs(ab) + made->a.resistance_pa_s_m3 * 1e-6));
  });
}

TEST(SuctionProperty, SuctionIsNowhereNegativeAndGreatestAtThePit) {
  support::forEachSeed(60, [](std::uint64_t seed) {
    const auto made = drawn(seed);
    if (!made) return;
    double most = 0.0;
    std::size_t where = 0;
    for (std::size_t c = 0; c < made->a.suction.size(); ++c) {
      ASSERT_GE(made->a.suction[c], -1e-12);
      if (made->a.suction[c] > most) {
        most = made->a.suction[c];
        where = c;
      }
    }
    bool at_pit = false;
    for (const auto& [cell, weight] : made->a.port.weights) {
      at_pit = at_pit || static_cast<std::size_t>(cell) == where;
    }
    EXPECT_TRUE(at_pit);
  });
}

/// All conductances a times as great: 1/a of the suction.
TEST(SuctionProperty, IsHomogeneousInTheGround) {
  support::forEachSeed(30, [](std::uint64_t seed) {
    const auto made = drawn(seed);
    if (!made || !made->model.conduits.empty()) return;  // ducts are not of the ground
    const suction::Network& net = made->solver.network();
    suction::Factoriser factoriser(net);
    suction::Factor factor;
    const Scales scales{3.0, 3.0, 3.0, 3.0, 3.0};
    ASSERT_EQ(factoriser.factor(net, scales, factor), suction::FactorState::made);
    const auto third = factor.solve(made->a.port.weights);
    for (std::size_t c = 0; c < third.size(); ++c) {
      ASSERT_NEAR(3.0 * third[c], made->a.suction[c], 1e-8 * made->a.resistance_pa_s_m3);
    }
  });
}

TEST(SuctionProperty, FlowsAddUp) {
  support::forEachSeed(30, [](std::uint64_t seed) {
    const auto made = drawn(seed);
    if (!made) return;
    suction::Draw both;
    for (const auto& [cell, weight] : made->a.port.weights) both.emplace_back(cell, 0.3 * weight);
    for (const auto& [cell, weight] : made->b.port.weights) both.emplace_back(cell, 0.7 * weight);
    const auto together = made->solver.factor().solve(both);
    const auto added = suction::superposed({made->a, made->b}, {0.3, 0.7});
    for (std::size_t c = 0; c < added.size(); ++c) {
      ASSERT_NEAR(together[c], added[c], 1e-9 * made->a.resistance_pa_s_m3);
    }
  });
}

/// Turned and moved with its grid, a house has the same field.
TEST(SuctionProperty, IsTheSameHoweverTheHouseIsDrawn) {
  support::forEachSeed(20, [](std::uint64_t seed) {
    Random random(seed);
    SuctionModel model = randomModel(random);
    model.conduits.clear();  // they join whole cells, so where they begin is a matter of the grid
    const double turn = random.uniform(-3.0, 3.0);
    const Vec shift{random.uniform(-40, 40), random.uniform(-40, 40)};
    const auto moved = [&](Point p) {
      return Point{std::cos(turn) * p.x - std::sin(turn) * p.y,
                   std::sin(turn) * p.x + std::cos(turn) * p.y} +
             shift;
    };
    SuctionModel there = model;
    for (Point& p : there.regions[0].outline) p = moved(p);
    for (Polygon& hole : there.regions[0].holes) {
      for (Point& p : hole) p = moved(p);
    }
    for (auto& wall : there.barriers) {
      for (Point& p : wall.line) p = moved(p);
    }
    for (auto& zone : there.zones) {
      for (Point& p : zone.outline) p = moved(p);
    }
    const FieldSolver a = FieldSolver::of(model, {.cell_m = 0.1});
    const FieldSolver b = FieldSolver::of(there, {.cell_m = 0.1});
    ASSERT_TRUE(a.ok() && b.ok());
    const Point sump = model.regions[0].outline[0] + 0.3 * (Point{} - model.regions[0].outline[0]);
    const auto ua = a.unit({sump, 0.3});
    const auto ub = b.unit({moved(sump), 0.3});
    ASSERT_EQ(ua.has_value(), ub.has_value());
    if (!ua) return;
    // The grid may be turned by quarters, so cells differ: second order in their size, but for
    // pits beside walls and free ends of walls that run askew.
    EXPECT_NEAR(ua->resistance_pa_s_m3 / ub->resistance_pa_s_m3, 1.0, 0.02);
  });
}

}  // namespace

}  // namespace sumpwright::property
