#pragma once
// What contradicts itself, and what is not known yet. Pointers are those of the job file.

#include "base/Problem.h"
#include "plan/Job.h"

namespace sumpwright::plan {

/// Unsound problems (self-crossing or wrongly turned ring, opening off its wall, overlapping
/// openings of one storey, room or courtyard outside the house, duplicate or empty ids, dangling
/// references, sump off its ring, looked_none while such a thing is drawn, ...) and missing ones
/// (unknown thickness, kinds not looked for, ...). Order: as in the file. Total: never throws.
base::Problems checkJob(const Job& job);

/// Id of the thing a problem's pointer lies in ("/plan/openings/3/width_m": the id of opening 3);
/// empty where it lies in none.
std::string thingAt(const Job& job, const std::string& pointer);

}  // namespace sumpwright::plan
