#pragma once
// What a person should know of a duty point; see DutySummary::remarks.

#include "airflow/Duty.h"

namespace sumpwright::airflow {

std::vector<base::Message> dutyRemarks(const DutyOptions& options, const DutySummary& duty);

/// What becomes of the others when one leg's valve stands open though it should not.
struct StuckLeg {
  std::size_t leg = 0;     ///< index of the leg whose valve is taken to be fully open
  DutySummary duty;        ///< of the whole system then
  std::size_t robbed = 0;  ///< leg whose pit loses most suction
  base::Pressure before;   ///< suction in that pit as designed
  base::Pressure after;    ///< and then
  base::Message remark;    ///< "airflow.stuck-open", or empty where no other leg loses any
};

/// One row for each leg whose valve is partly or wholly closed, in their order; none where the
/// system as designed cannot be solved.
std::vector<StuckLeg> stuckOpen(const DutyOptions& options);

}  // namespace sumpwright::airflow
