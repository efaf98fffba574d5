#pragma once
// Where a problem of the plan check is answered, and for what it matters. Plain values.

#include <QString>
#include <string>

#include "base/Problem.h"
#include "plan/Job.h"

namespace sumpwright::stages {

/// Id of the wall or thing it is about; of many walls the first. Empty: none in particular.
std::string thingAnswering(const plan::Job& job, const base::Problem& problem);
/// Key of the wall's fact that a problem of several walls asks for; empty: its pointer says.
std::string factAnswering(const base::Problem& problem);
/// "Siting", "Works", "Survey": for what something missing matters. Empty for what cannot be.
QString stageOf(const base::Problem& problem);

}  // namespace sumpwright::stages
