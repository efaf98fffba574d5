#pragma once
// Puts a typed thing onto the plan: the line read by ThingLine.h, the wall in hand.

#include "base/Result.h"
#include "plan/Job.h"
#include "tools/ThingLine.h"

namespace sumpwright::tools {

/// The job with the thing on that wall. An inner wall starts on the inner face, square to the wall,
/// and runs to the next wall it meets, or as far as it was typed. Errors: those of
/// plan/OpeningEdits.h and plan/ThingEdits.h; plan.edit.no-room where it would stand past the end
/// of its wall or an inner wall meets nothing. Contract: line.ok().
base::Result<plan::Job> placed(const plan::Job& job, int ring, int edge, const ThingLine& line);

/// Id of the thing that `placed` added last (the last in its list), to be taken in hand.
std::string lastAdded(const plan::Job& before, const plan::Job& after);

}  // namespace sumpwright::tools
