#pragma once
// How much of a floor is held at a target suction.
//
// No concentration is predicted from it: no published formula turns a map of pressures into Bq/m3.

#include <vector>

#include "plan/SuctionFacts.h"
#include "suction/Network.h"

namespace sumpwright::suction {

/// An assumption, to be changed by whoever knows better: what is asked for and what is the least
/// that counts as held (own figures; practice values of about 1 Pa in vapour-intrusion guidance and
/// about 4 Pa in mild weather with appliances off are from memory).
struct Target {
  double design_pa = plan::kUsualTarget_pa;
  double limit_pa = plan::kUsualLimit_pa;
};

struct Least {
  double suction_pa = 0.0;
  Point at;
};

struct Reach {
  double floor = 0.0;        ///< share of the floor's area at or beyond the design suction
  double floor_limit = 0.0;  ///< of the limit
  double joint = 0.0;        ///< share of the length of joints, both sides of barriers counted
  double joint_limit = 0.0;
  double floor_m2 = 0.0;  ///< whole
  double joint_m = 0.0;   ///< whole
  Least least;            ///< over the floor; the first cell where several are
};

/// Next door counts for nothing. Contract: one suction per cell.
Reach reachOf(const Network& network, const std::vector<double>& suction, const Target& target);

}  // namespace sumpwright::suction
