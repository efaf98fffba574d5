#pragma once
// Verbs on all of a plan at once: mirrored, turned. Ids, names and the ring each thing is on stay;
// rings are still walked with the house on the left.

#include "base/Result.h"
#include "plan/Job.h"

namespace sumpwright::plan {

/// Mirrors house, things and design left to right (about the line along +y through the middle of
/// the outline's upright bounding rectangle): a plan drawn the wrong way round. The direction of
/// north stays, and so does a picture under the plan. Waivers lapse; field books are emptied.
/// Error: plan.edit.no-edge where there is no outline, or a ring has not a wall to each corner or
/// is open.
base::Result<Job> mirrorPlan(const Job& job);

/// The other half of a semi-detached pair: mirrored, and nobody has been there. What was looked
/// for, located, found of a standby sump and waived was so in this house only, and is taken back.
base::Result<Job> otherHalf(const Job& job);

/// Turns all of it, north and the picture under it too, `degrees` counter-clockwise about the
/// middle of the outline's bounding rectangle; places are rounded to the nanometre. Errors:
/// plan.edit.no-edge where there is no outline; plan.edit.not-a-place.
base::Result<Job> turnPlan(const Job& job, double degrees);

}  // namespace sumpwright::plan
