#pragma once
// What keeps a system from being solved at all; ids and pointers as in DutySummary::problems.

#include "airflow/Duty.h"

namespace sumpwright::airflow {

/// airflow.input.count (no leg or line, too many), .line (no such line), .pipe, .annulus, .number,
/// .ground-size (not legs × legs), .ground (not positive definite or not finite), .air.
base::Problems dutyProblems(const DutyOptions& options);

}  // namespace sumpwright::airflow
