#pragma once
// Verbs on the known gaps of a rising wall. Each takes a job and gives back the changed job or the
// reason why not.
//
// Error of all: plan.edit.no-thing for an id that no rising wall has.

#include <string>

#include "base/Result.h"
#include "plan/Job.h"

namespace sumpwright::plan {

/// Adds a gap between two distances along the wall's line, either way round; what it touches of
/// other gaps becomes one with it. Gaps stand in order then. Error: plan.edit.not-a-place for a
/// distance that is no finite number on the wall (0 .. its length), and for a gap of under a
/// millimetre.
base::Result<Job> addGap(const Job& job, const std::string& wall, double from_m, double to_m);

/// Fills the gap at that distance. Error: plan.edit.no-gap where there is none, as
/// off the wall.
base::Result<Job> fillGap(const Job& job, const std::string& wall, double along_m);

}  // namespace sumpwright::plan
