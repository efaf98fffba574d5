#include "bench/Houses.h"

#include <string>

#include "support/PlanBuilder.h"
#include "support/Seed.h"

namespace sumpwright::bench {

namespace {

using plan::OutsideKind;
using plan::ServiceKind;
using support::PlanBuilder;

constexpr double kOpening_m = 0.9;
constexpr double kPitch_m = 1.3;  ///< one opening and the wall to the next

struct Walls {
  std::vector<geometry::Point> corners{{0, 0}, {12, 0}, {12, 5}, {7, 5}, {7, 9}, {0, 9}};
  double length(std::size_t i) const {
    return geometry::distance(corners[i], corners[(i + 1) % corners.size()]);
  }
  geometry::Point outside(std::size_t i, double along, double off) const {
    const geometry::Vec u = (1.0 / length(i)) * (corners[(i + 1) % corners.size()] - corners[i]);
    return corners[i] + along * u - off * geometry::left(u);
  }
};

/// Where the next opening goes; false where the walls are full.
bool nextOpening(const Walls& walls, int number, int& edge, double& offset) {
  for (edge = 0; edge < static_cast<int>(walls.corners.size()); ++edge) {
    const int room =
        static_cast<int>((walls.length(static_cast<std::size_t>(edge)) - 0.4) / kPitch_m);
    if (number < room) {
      offset = 0.4 + kPitch_m * number;
      return true;
    }
    number -= room;
  }
  return false;
}

}  // namespace

plan::Job houseWith(int things) {
  const Walls walls;
  support::Random r(1);
  PlanBuilder house = PlanBuilder::outline(walls.corners);
  house
      .room("room", plan::RoomUse::living,
            {{0.35, 0.35}, {11.65, 0.35}, {11.65, 4.65}, {0.35, 4.65}})
      .zone("zone", plan::FloorKind::ground_bearing_slab, walls.corners)
      .radiator("radiator", 1, 1.0, 1.2);
  int openings = 0;
  for (int i = 0; i < things; ++i) {
    const std::string id = "thing" + std::to_string(i);
    const std::size_t wall = r.index(walls.corners.size());
    const double along = r.uniform(0.2, walls.length(wall) - 0.2);
    const auto at = [&](double off) { return walls.outside(wall, along, off); };
    switch (i % 10) {
      case 0:
      case 1:
        house.outside(id, OutsideKind::gully, {at(r.uniform(0.1, 2.0))});
        break;
      case 2:
      case 3: {
        const geometry::Point near = at(r.uniform(0.2, 1.0));
        house.service(id, ServiceKind::drain, static_cast<int>(wall), along)
            .run(id, {at(0.0), near, at(6.0)});
        break;
      }
      case 4: {
        const double off = r.uniform(0.2, 2.0);
        house.outside(id, OutsideKind::inspection_chamber,
                      {at(off), walls.outside(wall, along + 0.6, off),
                       walls.outside(wall, along + 0.6, off + 0.45), at(off + 0.45)});
        break;
      }
      case 5:
        house.service(id, ServiceKind::gas, static_cast<int>(wall), along);
        break;
      default: {
        int edge = 0;
        double offset = 0.0;
        if (nextOpening(walls, openings++, edge, offset)) {
          house.window(id, edge, offset, kOpening_m);
        } else {
          const double off = r.uniform(1.0, 4.0);
          house.outside(id, OutsideKind::neighbour_opening,
                        {at(off), walls.outside(wall, along + kOpening_m, off)});
        }
      }
    }
  }
  return house.job();
}

}  // namespace sumpwright::bench
