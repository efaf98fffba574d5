#pragma once
// Verbs on openings as they are taped: from a corner of the wall, seen from outside. Everything
// else about them (kind, what opens, sill, head, storey, name) is replaceThing() of ThingEdits.h;
// so is taking out. Each takes a job and gives back the changed job or the reason why not.
//
// Errors of all: plan.edit.no-edge; plan.edit.no-thing; plan.edit.not-a-place for an offset or
// width that is no finite number, an offset under 0 or a width not over 0; plan.edit.no-room where
// it would run past the end of the wall (by more than a millimetre: a tape's rounding).

#include <string>

#include "base/Result.h"
#include "plan/Job.h"

namespace sumpwright::plan {

/// Left and right of somebody who stands outside and faces the wall. An edge runs from left to
/// right so, of a courtyard too.
enum class Side { left, right };

/// Adds an opening `offset_m` from that end of the wall to its nearer jamb. Without an id it gets
/// one. The rest of `facts` is taken as it is.
base::Result<Job> addOpening(const Job& job, int ring, int edge, Side from, double offset_m,
                             double width_m, Opening facts);

/// Puts an opening `offset_m` from that end of a wall, its own or another.
base::Result<Job> placeOpening(const Job& job, const std::string& id, int ring, int edge, Side from,
                               double offset_m);

/// Moves an opening to a place; pushed back onto the wall where it runs past its ends.
base::Result<Job> slideOpening(const Job& job, const std::string& id, const OnWall& to);

/// Gives an opening a width; the jamb on `kept` stays.
base::Result<Job> setOpeningWidth(const Job& job, const std::string& id, double width_m, Side kept);

/// Copies an opening `times` times along its wall, middle to middle `pitch_m` apart (negative:
/// towards the wall's first corner). Errors: plan.edit.not-a-place for a pitch of 0 or times under
/// 1; plan.edit.no-room, and then none is copied.
base::Result<Job> repeatOpening(const Job& job, const std::string& id, int times, double pitch_m);

/// Slides an opening along its wall until its middle lies square across from the middle of
/// `to`, an opening of any wall. Error: plan.edit.no-room.
base::Result<Job> alignOpening(const Job& job, const std::string& id, const std::string& to);

/// How far it is from that end of its wall to its nearer jamb: what a tape would show. Contract:
/// the edge is there.
double tapedOffset_m(const Plan& plan, const OnWall& at, double width_m, Side from);

}  // namespace sumpwright::plan
