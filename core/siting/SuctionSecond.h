#pragma once
// Where a second sump would do most.

#include "siting/SuctionStudy.h"

namespace sumpwright::siting {

struct SecondAsk {
  const Study& study;
  const suction::FieldSolver& solver;  ///< the worst middle case
  const suction::ChanceStudy& chance;
  const SuctionAnswer& answer;  ///< of the first sump
  suction::FlowOf fan;
  suction::FlowsOf together;  ///< both on one fan; none: each has its own
  suction::InertiaOf inertia;
  double radius_m = 0.0;  ///< of the second's pit
};

/// Best partner on clear or advised-against wall, else on wall that is only not proven; never on
/// refused wall. Nothing where there is none.
std::optional<SecondSump> secondSump(const SecondAsk& ask);

}  // namespace sumpwright::siting
