// The cable beside a search over squared paper that shares nothing with it.

#include <gtest/gtest.h>

#include <cmath>

#include "build/CableRoute.h"
#include "core/build/CableLattice.h"
#include "core/build/Sites.h"
#include "plan/PlanCheck.h"

namespace sumpwright::build {
namespace {

using support::Random;

/// The figures of both, stated once more.
CableFigures sameFigures(const LatticeFigures& f) {
  CableFigures g;
  g.sleeve_above_dpc_m = f.above_dpc_m;
  g.above_ground_m = f.above_ground_m;
  g.lowest_sleeve_m = f.lowest_sleeve_m;
  g.skirting_m = f.skirting_m;
  g.socket_m = f.socket_m;
  g.board_m = f.board_m;
  g.over_head_m = f.over_head_m;
  g.door_head_m = f.door_head_m;
  g.sill_m = f.sill_m;
  g.per_drilling_m = f.per_drilling_m;
  g.off_entry_m = kSquare_m * f.off_entry;
  g.thickest_m = kSquare_m * f.thickest;
  g.stays_up_m = kSquare_m * f.stays_up;
  g.from_corner_m = kSquare_m;
  g.shower_half_m = 0.65;
  g.wet_m = f.wet_m - g.shower_half_m;
  return g;
}

struct Beside {
  int agree = 0;
  int none = 0;
  double worst_m = 0.0;  ///< of those that were looked at
};

struct FanOn {
  perimeter::Place place;
  GridPoint at;
};

/// Somewhere on the outside faces that are one's own, a square or more from corners; for the roof
/// the same on the inner face.
FanOn anyFan(const LatticeHouse& house, Random& random, bool in_roof) {
  const GridSide* side = nullptr;
  do {
    side = &random.oneOf(house.sides);
  } while (house.party && side == &house.sides[*house.party]);
  const int dx = side->to.x - side->from.x;
  const int dy = side->to.y - side->from.y;
  const int length = std::abs(dx) + std::abs(dy);
  // On the inner face of a corner that stands out there is no wall behind it.
  const int off = in_roof ? house.thickness : 1;
  const int along = random.between(off, length - off);
  const GridPoint way{dx / length, dy / length};
  FanOn fan{{side->ring, kSquare_m * (side->start + along)},
            {side->from.x + along * way.x, side->from.y + along * way.y}};
  if (in_roof) {
    fan.at.x -= house.thickness * way.y;
    fan.at.y += house.thickness * way.x;
  }
  return fan;
}

double costOf(const CableRoute& route, const LatticeFigures& figures) {
  return route.length_m + figures.per_drilling_m * (route.drillings + route.sleeves);
}

/// Both on one house and fan; the difference is at most `within_m`.
void compare(const LatticeHouse& house, const FanOn& fan, bool in_roof, double within_m,
             Beside& beside) {
  const LatticeFigures figures;
  const rules::Site site = siteOf(house.job);
  CableAsk ask;
  ask.fan = fan.place;
  ask.fan_place = in_roof ? plan::FanPlace::roof_space : plan::FanPlace::outside_low;
  ask.fan_height_m = in_roof ? 3.0 : 1.2;
  ask.figures = sameFigures(figures);
  const auto reference = latticeCosts(house, {fan.at, ask.fan_height_m, in_roof}, figures);
  std::map<std::string, double> exact;
  for (const CableRoute& route : cableRoutes(site, ask).routes) {
    exact[route.supply] = costOf(route, figures);
  }
  for (const auto& [supply, slow] : reference) {
    const auto found = exact.find(supply);
    if (!slow) {
      EXPECT_TRUE(found == exact.end()) << supply << " should have no way, has " << found->second;
      ++beside.none;
      continue;
    }
    if (found == exact.end()) {
      ADD_FAILURE() << supply << " should be " << *slow << " m, has no way";
      continue;
    }
    EXPECT_NEAR(found->second, *slow, within_m) << supply;
    beside.worst_m = std::max(beside.worst_m, std::abs(found->second - *slow));
    ++beside.agree;
  }
}

TEST(CableLattice, TheSameToTheMicrometreOnSquaredPaper) {
  Beside beside;
  support::forEachSeed(300, [&](std::uint64_t seed) {
    Random random(seed);
    const LatticeHouse house = latticeHouse(random);
    for (int k = 0; k < 3; ++k) {
      compare(house, anyFan(house, random, false), false, 1e-6, beside);
    }
  });
  std::printf("%d ways alike, %d supplies without one\n", beside.agree, beside.none);
}

/// What is within reach of a shower ends on a circle, off the lines of the paper by up to a square.
TEST(CableLattice, TheSameButForSquaresBesideAShower) {
  Beside beside;
  support::forEachSeed(200, [&](std::uint64_t seed) {
    Random random(seed);
    const LatticeHouse house = latticeHouse(random, {true});
    compare(house, anyFan(house, random, false), false, 4.0 * kSquare_m, beside);
  });
  std::printf("%d ways alike, %d supplies without one, %.3f m at worst\n", beside.agree,
              beside.none, beside.worst_m);
}

/// Where a cable comes down from the roof space is tried every 0.25 m: past a corner that the
/// straight way must not cut, that much along the wall and the same back.
TEST(CableLattice, TheSameFromTheRoofSpaceButForWhereItComesDown) {
  Beside beside;
  support::forEachSeed(200, [&](std::uint64_t seed) {
    Random random(seed);
    const LatticeHouse house = latticeHouse(random);
    compare(house, anyFan(house, random, true), true, 0.50, beside);
  });
  std::printf("%d ways alike, %d supplies without one, %.3f m at worst\n", beside.agree,
              beside.none, beside.worst_m);
}

}  // namespace
}  // namespace sumpwright::build
