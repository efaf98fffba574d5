#pragma once
// An edit verb whose errors are those the check would find. Internal to core/plan.

#include <string>
#include <utility>

#include "base/Result.h"
#include "plan/EditProblem.h"
#include "plan/FitsFile.h"
#include "plan/ProblemList.h"

namespace sumpwright::plan {

/// The changed job, unless it cannot stand in a file or the check finds it unsound at `pointer` or
/// under it. `check(job, problems)` as in Checks.h.
template <class Check>
base::Result<Job> checkedAt(Job changed, const std::string& pointer, Check&& check) {
  if (const auto bad = unfit(changed)) return *bad;
  ProblemList found(base::Gravity::unsound);
  check(changed, found);
  for (const base::Problem& p : found.take()) {
    const bool under = p.pointer == pointer || p.pointer.starts_with(pointer + "/");
    if (under && p.gravity != base::Gravity::missing) {
      return editProblem(p.message.id, p.message.args);
    }
  }
  return changed;
}

}  // namespace sumpwright::plan
