// The exact set of holes beside a search over a grid of holes that are measured as shapes.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "build/Figures.h"
#include "core/build/Sites.h"
#include "geometry/Distance.h"
#include "support/Seed.h"

namespace sumpwright::build {

namespace {

using geometry::Point;
using geometry::Segment;

BuildUp randomBuildUp(support::Random& random) {
  BuildUp up = knownBuildUp();
  up.wall_m = random.uniform(0.2, 0.65);
  up.floor_m = random.chance(0.2) ? random.uniform(-0.2, 0.1) : 0.0;
  up.screed_m = random.uniform(0.0, 0.08);
  up.insulation_m = random.chance(0.5) ? 0.0 : random.uniform(0.03, 0.15);
  up.slab_m = random.uniform(0.08, 0.2);
  up.blinding_m = random.uniform(0.0, 0.05);
  up.hardcore_m = random.chance(0.2) ? 0.0 : random.uniform(0.1, 0.7);
  up.ground_m = random.uniform(-0.7, 0.3);
  up.dpc_m = random.chance(0.3) ? random.uniform(-0.4, 0.2) : up.ground_m + 0.15;
  up.barrier = random.oneOf<plan::Barrier>(
      {plan::Barrier::none, plan::Barrier::in_floor, plan::Barrier::lapped_through_wall});
  up.barrier_m = random.uniform(-0.4, 0.0);
  up.core_m = random.uniform(0.05, 0.2);
  up.barrel_m = random.uniform(0.3, 0.9);
  up.footing_low_m = random.uniform(-1.1, -0.3);
  up.footing_high_m = up.footing_low_m + (random.chance(0.5) ? 0.0 : random.uniform(0.0, 0.4));
  return up;
}

/// The hole as a drawn thing: a strip about its axis, on past both ends.
struct Hole {
  double h, t, r;
  Point at(double x) const { return {x, h - t * x}; }
  Segment axis() const { return {at(-20.0), at(20.0)}; }
  /// Where the strip's upper (1) or lower (-1) edge meets the outside face.
  double edgeAtFace(double side) const {
    const double a = std::atan(t);
    const Point off{side * r * std::sin(a), h + side * r * std::cos(a)};
    return off.y + off.x * std::tan(a);
  }
};

/// Room between the strip and a level line that lies above (1) or below (-1) it; negative where the
/// axis is on the wrong side.
double roomTo(const Hole& hole, double from, double to, double level, double side) {
  const Segment line{{from, level}, {to, level}};
  const bool right = side * (level - hole.at(from).y) > 0.0 && side * (level - hole.at(to).y) > 0.0;
  const double d = geometry::distance(hole.axis(), line);
  return (right ? d : -d) - hole.r;
}

/// Least room over all that the hole must keep, measured; advisory ones left out.
double measured(const BuildUp& up, Start start, double top, double h, double t) {
  const Hole hole{h, t, up.core_m / 2.0};
  const double T = up.wall_m;
  double least = roomTo(hole, T, T + 0.4, up.underside_m(), 1.0) - 0.05;
  if (up.barrier != plan::Barrier::none) {
    const double from = up.barrier == plan::Barrier::lapped_through_wall ? 0.0 : T;
    least = std::min(least, roomTo(hole, from, T + 0.4, up.barrier_m, 1.0) - 0.05);
  }
  least = std::min(least, up.dpc_m - 0.05 - hole.edgeAtFace(1.0));
  if (start == Start::below_ground) {
    least = std::min(least, up.ground_m - hole.edgeAtFace(1.0));
    least = std::min(least, hole.edgeAtFace(-1.0) - 0.15 - (up.ground_m - 1.2));
  } else {
    least = std::min(least, hole.edgeAtFace(-1.0) - up.ground_m);
  }
  return std::min(least, roomTo(hole, -0.15, T + 0.10, top, -1.0) - 0.05);
}

bool fallAllowed(Start start, double t) {
  const double degrees = std::atan(t) * 180.0 / 3.14159265358979323846;
  return t <= 1.0 && (start == Start::above_ground ? degrees >= 15.0 : t >= 1.0 / 96.0);
}

std::vector<Limit> bindingLimits(const BuildUp& up, Start start, double top) {
  std::vector<Limit> limits = limitsOf(up, start, top, kLeastFall);
  std::erase_if(limits, [](const Limit& limit) { return limit.advisory; });
  return limits;
}

TEST(SectionProperty, SetHoldsJustTheHolesThatMeasureRight) {
  support::forEachSeed(300, [](std::uint64_t seed) {
    support::Random random(seed);
    const BuildUp up = randomBuildUp(random);
    for (const Start start : {Start::below_ground, Start::above_ground}) {
      const FeasibleSet set(bindingLimits(up, start, up.footing_low_m));
      for (int i = 0; i < 200; ++i) {
        const Bore bore{random.uniform(-1.2, 0.1), random.uniform(0.0, 1.05)};
        const double room = measured(up, start, up.footing_low_m, bore.entry_m, bore.fall);
        if (std::abs(room) < 1e-9) continue;
        const bool right = room > 0.0 && fallAllowed(start, bore.fall);
        ASSERT_EQ(set.contains(bore), right) << bore.entry_m << ' ' << bore.fall;
      }
    }
  });
}

/// Best least slack over a grid, and whether any hole of it is feasible.
struct Searched {
  double best = -std::numeric_limits<double>::infinity();
  bool any = false;
};

Searched searchGrid(const FeasibleSet& set, Start start, double low, double high) {
  Searched found;
  for (int i = 0; i <= 200; ++i) {
    const double t = i / 200.0;
    if (!fallAllowed(start, t)) continue;
    for (int j = 0; j <= 200; ++j) {
      const double h = low + (high - low) * j / 200.0;
      double least = std::numeric_limits<double>::infinity();
      for (const Limit& limit : set.limits()) {
        if (limit.c != 0.0) least = std::min(least, limit.slack(h, t));
      }
      found.best = std::max(found.best, least);
      found.any = found.any || least >= 0.0;
    }
  }
  return found;
}

double leastSlack(const FeasibleSet& set, Bore bore) {
  double least = std::numeric_limits<double>::infinity();
  for (const Limit& limit : set.limits()) {
    if (limit.c != 0.0) least = std::min(least, limit.slack(bore.entry_m, bore.fall));
  }
  return least;
}

TEST(SectionProperty, NoHoleOfAGridIsBetterThanTheBest) {
  int feasible = 0;
  support::forEachSeed(80, [&](std::uint64_t seed) {
    support::Random random(seed);
    const BuildUp up = randomBuildUp(random);
    for (const Start start : {Start::below_ground, Start::above_ground}) {
      const FeasibleSet set(bindingLimits(up, start, up.footing_low_m));
      const Searched grid = searchGrid(set, start, -1.3, 0.2);
      const auto bore = set.best({}, kUsualFall);
      ASSERT_TRUE(bore);
      const double least = leastSlack(set, *bore);
      EXPECT_GE(least, std::min(grid.best, kEnough_m) - 1e-12);
      // Half a step of the grid changes no slack by more than this (derived: slopes up to 1 in the
      // height, 1.6 in the fall).
      if (least < kEnough_m - 1e-12) {
        EXPECT_LE(least, grid.best + 0.5 * 0.0075 + 1.6 * 0.0025);
      }
      if (grid.any) {
        EXPECT_FALSE(set.empty());
      }
      EXPECT_EQ(set.empty(), least < -1e-12);
      feasible += set.empty() ? 0 : 1;
    }
  });
  EXPECT_GT(feasible, 0);
}

TEST(SectionProperty, FallsAreThoseAtWhichSomeHeightFits) {
  support::forEachSeed(200, [](std::uint64_t seed) {
    support::Random random(seed);
    const BuildUp up = randomBuildUp(random);
    const FeasibleSet set(bindingLimits(up, Start::below_ground, up.footing_low_m));
    const auto falls = set.falls();
    for (int i = 0; i <= 1000; ++i) {
      const double t = i / 1000.0;
      if (!fallAllowed(Start::below_ground, t)) continue;
      const auto range = set.entries(t);
      if (std::abs(range.high_m - range.low_m) < 1e-12) continue;
      const bool inside = falls && t >= falls->from && t <= falls->to;
      ASSERT_EQ(inside, range.high_m > range.low_m) << t;
    }
  });
}

TEST(SectionProperty, FootingCeilingIsTheHighestTopThatAnyHoleFitsOver) {
  support::forEachSeed(100, [](std::uint64_t seed) {
    support::Random random(seed);
    const BuildUp up = randomBuildUp(random);
    const auto ceiling = footingCeiling(bindingLimits(up, Start::below_ground, -0.5), kUsualFall);
    if (!ceiling) {
      EXPECT_TRUE(FeasibleSet(bindingLimits(up, Start::below_ground, -50.0)).empty());
      return;
    }
    const double top = ceiling->footing_top_m;
    EXPECT_FALSE(FeasibleSet(bindingLimits(up, Start::below_ground, top - 1e-9)).empty());
    EXPECT_TRUE(FeasibleSet(bindingLimits(up, Start::below_ground, top + 1e-9)).empty());
    EXPECT_GE(measured(up, Start::below_ground, top, ceiling->bore.entry_m, ceiling->bore.fall),
              -1e-9);
  });
}

TEST(SectionProperty, LowerFootingsNeverMakeItWorse) {
  support::forEachSeed(300, [](std::uint64_t seed) {
    support::Random random(seed);
    BuildUp up = randomBuildUp(random);
    const Fit before = drillSection(up, {}).fit;
    const double by = random.uniform(0.0, 0.5);
    up.footing_low_m -= by;
    up.footing_high_m -= by;
    EXPECT_LE(drillSection(up, {}).fit, before);
  });
}

TEST(SectionProperty, ASectionThatFitsPassesAllThatBinds) {
  support::forEachSeed(300, [](std::uint64_t seed) {
    support::Random random(seed);
    const BuildUp up = randomBuildUp(random);
    const DrillSection section = drillSection(up, {});
    if (section.fit != Fit::fits) return;
    for (const Margin& margin : section.margins) {
      EXPECT_TRUE(margin.passes || margin.advisory) << limitName(margin.kind);
    }
    EXPECT_GE(
        measured(up, section.start, up.footing_high_m, section.bore->entry_m, section.bore->fall),
        -1e-9);
  });
}

}  // namespace

}  // namespace sumpwright::build
