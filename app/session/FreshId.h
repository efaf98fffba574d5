#pragma once
// Names for new parts of a job.

#include <string>

#include "plan/Job.h"

namespace sumpwright::session {

/// `stem`-1, -2, ...: the first that no part of the job uses; ids are unique over a whole job.
std::string freshId(const plan::Job& job, const std::string& stem);

}  // namespace sumpwright::session
