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

/// The least of the two shares by which a hole is chosen: room to move upright over 10 mm, and fall
/// over 2 degrees; 1: enough of both.
double shareOf(const std::vector<Limit>& limits, Start start, Bore bore) {
  double share = 1.0;
  for (const Limit& limit : limits) {
    if (limit.c != 0.0) share = std::min(share, limit.slack(bore.entry_m, bore.fall) / 0.010);
  }
  if (start == Start::above_ground) return share;
  const double sure = std::tan(2.0 * 3.14159265358979323846 / 180.0);
  return std::min(share, (bore.fall - 1.0 / 96.0) / (sure - 1.0 / 96.0));
}

/// All holes of a grid 2.5 mm by 1/400.
struct Searched {
  double best = -std::numeric_limits<double>::infinity();  ///< largest share
  double nearest = std::numeric_limits<double>::infinity();
  bool any = false;
};

Searched searchGrid(const std::vector<Limit>& limits, Start start, double usual) {
  Searched found;
  for (int i = 0; i <= 400; ++i) {
    const double t = i / 400.0;
    if (!fallAllowed(start, t)) continue;
    for (double h = -1.3; h < 0.2; h += 0.0025) {
      const double share = shareOf(limits, start, {h, t});
      found.best = std::max(found.best, share);
      found.any = found.any || share >= 0.0;
      if (share >= 1.0) found.nearest = std::min(found.nearest, std::abs(t - usual));
    }
  }
  return found;
}

TEST(SectionProperty, NoHoleOfAGridIsBetterThanTheBest) {
  int houses = 0;
  int roomy = 0;
  int tight = 0;
  support::forEachSeed(40, [&](std::uint64_t seed) {
    ++houses;
    support::Random random(seed);
    const BuildUp up = randomBuildUp(random);
    for (const Start start : {Start::below_ground, Start::above_ground}) {
      // As tight a place as the footing makes it, up to none at all.
      const auto ceiling = footingCeiling(bindingLimits(up, start, 0.0), kUsualFall);
      const double top = (ceiling ? ceiling->footing_top_m : -0.5) - random.uniform(-0.02, 0.06);
      const double usual = start == Start::below_ground ? kUsualFall : kLeastFallAbove;
      const auto limits = bindingLimits(up, start, top);
      const FeasibleSet set(limits);
      const auto bore = set.best({}, {usual, start == Start::below_ground ? kSureFall : 0.0});
      ASSERT_TRUE(bore);
      const double share = shareOf(limits, start, *bore);
      const Searched grid = searchGrid(limits, start, usual);
      // Off the grid by half a step: 1.25 mm and 1/800 (slopes up to 1 and 0.7, over 10 mm).
      EXPECT_GE(share, grid.best - 1e-9);
      if (share < 1.0 - 1e-9) {
        EXPECT_LE(share, grid.best + (0.00125 + 0.7 / 800.0) / 0.010 + 0.06);
        ++tight;
      } else {
        EXPECT_LE(std::abs(bore->fall - usual), grid.nearest + 1e-9);
        ++roomy;
      }
      EXPECT_EQ(set.contains(*bore), share >= -1e-9);
      if (grid.any) {
        EXPECT_FALSE(set.empty());
      }
    }
  });
  EXPECT_GT(4 * roomy, houses);  // enough of both, however many are tried
  EXPECT_GT(4 * tight, houses);
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
