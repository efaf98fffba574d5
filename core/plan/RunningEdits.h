#pragma once
// The verb on what a year's cost is counted with. It takes a job and gives back the changed job or
// the reason why not.

#include "base/Result.h"
#include "plan/Job.h"

namespace sumpwright::plan {

/// Errors: plan.edit.not-text, plan.edit.not-a-place (a figure below nothing),
/// plan.running.degree-days (over 20,000), plan.running.share (over 1), plan.quote.not-decimal,
/// plan.quote.negative.
base::Result<Job> setRunning(const Job& job, const Running& running);

}  // namespace sumpwright::plan
