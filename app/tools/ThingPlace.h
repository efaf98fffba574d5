#pragma once
// Puts a typed thing onto the plan: the line read by ThingLine.h, the wall in hand.

#include "base/Result.h"
#include "plan/Job.h"
#include "tools/ThingLine.h"

namespace sumpwright::tools {

/// The job with the thing on or by that wall. An inner wall starts on the inner face, square to the
/// wall, and runs to the next wall it meets, or as far as it was typed; a rising wall does the
/// same, and where an inner wall starts there it takes its line, and that wall stands on its own
/// footing. What is inside is counted from the inner face, what is outside from the outside face.
///
/// A whole floor is laid wherever there is none yet, and gets its kind where that is not known; the
/// floor of a room gets the room's outline (over a floor that is there already the plan check
/// offers to cut it back). Neither needs the wall.
///
/// Errors: those of plan/OpeningEdits.h, plan/ThingEdits.h, plan/WallEdits.h and plan/RoomEdits.h;
/// place.no-wall; place.past-end where it would stand past the end of its wall; place.meets-nothing
/// for an inner wall without end; place.no-inner-wall for a door in none; place.no-room for a room
/// that is not there. Contract: line.ok().
base::Result<plan::Job> placed(const plan::Job& job, int ring, int edge, const ThingLine& line);

/// Id of the thing that `placed` added last (the last in its list), to be taken in hand; the first
/// wall of a courtyard.
std::string lastAdded(const plan::Job& before, const plan::Job& after);

}  // namespace sumpwright::tools
