#pragma once
// What air, noise and power one sump's run has, from a suction answer or, before there is one, at
// most. A prediction.

#include <optional>

#include "airflow/RunningCost.h"
#include "airflow/SpeedLimits.h"
#include "siting/SuctionStudy.h"

namespace sumpwright::siting {

/// How fast the air runs in a pipe, against airflow::SpeedLimits.
enum class PipeSpeed {
  quiet,
  noisy,      ///< the rush at the outlet is heard
  condensate  ///< condensate does not run back down a rising pipe
};

struct RunDuty {
  /// The fan alone with the pipe, nothing in the way under the floor: no ground lets through more.
  bool at_most = false;
  base::Flow flow;     ///< in the sump's pipe
  base::Pressure pit;  ///< suction left in the pit; at most: none
  base::Pressure fan;  ///< that the fan makes
  double speed_m_s = 0.0;
  PipeSpeed verdict = PipeSpeed::quiet;
  bool shared = false;            ///< the fan draws from other sumps as well: power is of all
  std::optional<double> power_w;  ///< electric; absent where the curve has none
  std::optional<airflow::RunningCost> running;
};

/// Of the sump with that id on the worst middle case; nothing where the answer does not count it.
std::optional<RunDuty> dutyIn(const SuctionAnswer& answer, const std::string& sump);

/// Nothing where the fan and pipe have no duty point.
std::optional<RunDuty> mostAir(const SuctionSystem& system);

}  // namespace sumpwright::siting
