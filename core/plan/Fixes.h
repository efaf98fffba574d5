#pragma once
// What can be put right without asking anybody: a safe change for a problem of checkJob().

#include <optional>
#include <vector>

#include "base/Problem.h"
#include "plan/Job.h"

namespace sumpwright::plan {

struct Fix {
  base::Problem problem;  ///< what it puts right
  base::Message says;     ///< what it does ("fix.…"), as a request: "Push it back onto its wall"
  Job job;                ///< the job with it done
};

/// A fix for one problem of checkJob(job), or nothing where none is safe. A fix makes its problem
/// go away and brings no unsound one; both were looked at before it is offered. None drops what was
/// measured: a width, a field book, a part of a room or floor over 0.01 m2 that lies in the house.
std::optional<Fix> fixFor(const Job& job, const base::Problem& problem);

/// All of them, in the order of checkJob(). Each is for the job as it is: once one is done, ask
/// again.
std::vector<Fix> fixesOf(const Job& job);

}  // namespace sumpwright::plan
