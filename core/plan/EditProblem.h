#pragma once
// What an edit verb says when it cannot be done. Internal to core/plan.

#include <string>
#include <utility>
#include <vector>

#include "base/Problem.h"

namespace sumpwright::plan {

/// Unsound, without a place: the job as it stands is not at fault, what was asked of it is.
inline base::Problem editProblem(std::string id, std::vector<base::Arg> args = {}) {
  return {base::Message(std::move(id), std::move(args)), "", base::Gravity::unsound};
}

}  // namespace sumpwright::plan
