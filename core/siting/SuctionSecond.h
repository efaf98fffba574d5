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
  double inertia_pa_s2_m6 = 0.0;
};

/// Best partner on clear or advised-against wall, else on wall that is only not proven; never on
/// refused wall. Nothing where there is none.
std::optional<SecondSump> secondSump(const SecondAsk& ask);

}  // namespace sumpwright::siting
