// Tight is tight: past a barrier that runs from outside wall to outside wall no suction reaches,
// whatever the cells, the way the house stands and how far the barrier is drawn.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "geometry/Distance.h"
#include "geometry/Shapes.h"
#include "suction/Field.h"
#include "support/Fields.h"
#include "support/Seed.h"

namespace sumpwright::property {

namespace {

using geometry::Vec;
using suction::FieldSolver;
using suction::Point;
using suction::Polyline;
using support::Random;

/// The floor, and what the barrier shuts off of it.
struct ShutOff {
  suction::SuctionModel model;
  Polyline line;
  suction::Polygon behind;
  Point sump;
};

Point lengthened(Point from, Point end, double by_m) {
  const double length = geometry::distance(from, end);
  return end + (by_m / length) * (end - from);
}

/// What the barrier is longer than from inner face to inner face, at one end.
double endOver(Random& random, double cell_m) {
  switch (random.between(0, 3)) {
    case 0:
      return 0.0;
    case 1:
      return -0.5 * cell_m;  // within the reach of ends
    case 2:
      return 0.3;  // the outside face, as walls are often drawn
    default:
      return random.uniform(0.0, 6.0 * cell_m);
  }
}

/// From the north wall to the east wall, or on to the west wall; what is behind it.
Polyline acrossTheHouse(Random& random, double cell_m, suction::Polygon& behind) {
  const auto along = [&](double low, double high) {
    const double at = random.uniform(low, high);
    // On lines of the grid, through the middles of cells, or anywhere.
    const double whole = std::round(at / cell_m) * cell_m;
    return random.chance(0.3) ? whole : random.chance(0.4) ? whole + 0.5 * cell_m : at;
  };
  const Point inner{along(5.0, 7.0), along(3.5, 5.0)};
  Polyline line{{random.chance(0.6) ? inner.x : along(4.0, 8.5), 8.0}, inner};
  if (random.chance(0.7)) {
    line.push_back({10.0, random.chance(0.6) ? inner.y : along(1.5, 6.5)});
    behind = {line[0], line[1], line[2], {10, 8}};
  } else {
    line.push_back({random.chance(0.6) ? inner.x : along(4.0, 8.5), 0.0});
    behind = {line[0], line[1], line[2], {10, 0}, {10, 8}};
  }
  return line;
}

ShutOff shutOff(Random& random, double cell_m) {
  ShutOff made;
  Polyline line = acrossTheHouse(random, cell_m, made.behind);
  line.front() = lengthened(line[1], line.front(), endOver(random, cell_m));
  line.back() = lengthened(line[1], line.back(), endOver(random, cell_m));
  const double angle = random.chance(0.4) ? 0.0 : random.uniform(-3.0, 3.0);
  const support::Pose pose{angle, {random.uniform(-9, 9), random.uniform(-9, 9)}};
  made.model.regions = {support::region(pose(support::box(0, 0, 10, 8)), 1e-6)};
  made.model.layer = {1e-4, 5e-7};
  made.line = pose(line);
  made.model.barriers = {{"w", made.line}};
  if (random.chance(0.3)) {  // two walls, the second drawn up to about the end of the first
    const Point from = lengthened(line[2], line[1], random.uniform(-0.6, 0.6) * cell_m);
    made.model.barriers = {{"w", pose(Polyline{line[0], line[1]})},
                           {"x", pose(Polyline{from, line[2]})}};
  }
  if (random.chance(0.3)) {  // one that ends freely beside it, on the side of the sump
    made.model.barriers.push_back({"v", pose(Polyline{{1.0, 3.0}, {random.uniform(3, 4.9), 3.2}})});
  }
  made.behind = pose(made.behind);
  made.sump = pose(suction::Polygon{{random.uniform(0.3, 3.5), random.uniform(0.4, 7.6)}})[0];
  return made;
}

/// The most suction of a cell behind the barrier, and more than a cell from it, to the most of all.
double shareBehind(const ShutOff& shut, const FieldSolver& solver, const suction::UnitField& unit) {
  const suction::Network& net = solver.network();
  double most = 0.0;
  double behind = 0.0;
  for (std::size_t c = 0; c < unit.suction.size(); ++c) {
    const Point at = net.centre(static_cast<int>(c));
    most = std::max(most, unit.suction[c]);
    if (!geometry::contains(shut.behind, at)) continue;
    if (geometry::distance(at, shut.line) < net.frame.h_m) continue;
    behind = std::max(behind, unit.suction[c]);
  }
  return behind / most;
}

TEST(BarrierProperty, NothingReachesPastATightBarrier) {
  support::forEachSeed(150, [](std::uint64_t seed) {
    Random random(seed);
    const double cell_m = random.oneOf<double>({0.1, 0.125, 0.2, 0.25, 0.3125, 0.4, 0.5});
    const ShutOff shut = shutOff(random, cell_m);
    const FieldSolver solver =
        FieldSolver::of(shut.model, {.cell_m = cell_m, .align = random.chance(0.7)});
    ASSERT_TRUE(solver.ok());
    const auto unit = solver.unit({shut.sump, 0.25});
    ASSERT_TRUE(unit);
    EXPECT_LE(shareBehind(shut, solver, *unit), 1e-6) << "cells of " << cell_m << " m";
  });
}

/// A pit close by a barrier draws on its own side of it.
TEST(BarrierProperty, APitBesideATightBarrierDrawsOnItsOwnSide) {
  support::forEachSeed(60, [](std::uint64_t seed) {
    Random random(seed);
    const double cell_m = random.oneOf<double>({0.05, 0.1, 0.25, 0.5});
    const double turn = random.chance(0.5) ? 0.0 : random.uniform(-0.6, 0.6);
    const double x = random.uniform(4.0, 6.0);
    ShutOff shut;
    const support::Pose pose{turn, {}};
    shut.model.regions = {support::region(pose(support::box(0, 0, 10, 3)), 1e-6)};
    shut.model.layer = {1e-4, 5e-7};
    shut.line = pose(Polyline{{x, -0.3}, {x, 3.3}});
    shut.model.barriers = {{"w", shut.line}};
    shut.behind = pose(support::box(x, 0, 10, 3));
    shut.sump = pose(suction::Polygon{{x - random.uniform(0.02, 0.3), 1.5}})[0];
    const FieldSolver solver =
        FieldSolver::of(shut.model, {.cell_m = cell_m, .align = random.chance(0.5)});
    ASSERT_TRUE(solver.ok());
    const auto unit = solver.unit({shut.sump, 0.2});
    ASSERT_TRUE(unit);
    EXPECT_LE(shareBehind(shut, solver, *unit), 1e-6) << "cells of " << cell_m << " m";
  });
}

}  // namespace

}  // namespace sumpwright::property
