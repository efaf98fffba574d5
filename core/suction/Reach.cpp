#include "suction/Reach.h"

#include "base/Contract.h"
#include "suction/Factor.h"

namespace sumpwright::suction {

Reach reachOf(const Network& network, const std::vector<double>& suction, const Target& target) {
  SUMPWRIGHT_REQUIRE(suction.size() == network.cells.size());
  Reach reach;
  int least = -1;
  for (std::size_t c = 0; c < suction.size(); ++c) {
    const double area = network.cells[c].own_m2;
    if (!(area > 0.0)) continue;
    reach.floor_m2 += area;
    if (suction[c] >= target.design_pa) reach.floor += area;
    if (suction[c] >= target.limit_pa) reach.floor_limit += area;
    if (least < 0 || suction[c] < reach.least.suction_pa) {
      least = static_cast<int>(c);
      reach.least.suction_pa = suction[c];
    }
  }
  for (const Joint& joint : network.joints) {
    if (!joint.own) continue;
    const double there = suction[static_cast<std::size_t>(joint.cell)];
    reach.joint_m += joint.length_m;
    if (there >= target.design_pa) reach.joint += joint.length_m;
    if (there >= target.limit_pa) reach.joint_limit += joint.length_m;
  }
  if (reach.floor_m2 > 0.0) {
    reach.floor /= reach.floor_m2;
    reach.floor_limit /= reach.floor_m2;
  }
  if (reach.joint_m > 0.0) {
    reach.joint /= reach.joint_m;
    reach.joint_limit /= reach.joint_m;
  }
  if (least >= 0) reach.least.at = network.centre(least);
  return reach;
}

}  // namespace sumpwright::suction
