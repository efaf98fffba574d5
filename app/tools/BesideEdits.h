#pragma once
// Making one thing after another that is there already: a copy beside it, in line with it, of its
// size. Jobs in, jobs out.

#include <string>

#include "base/Result.h"
#include "plan/Job.h"

namespace sumpwright::tools {

/// A copy beside the thing: on its wall to the right of it as seen from outside, or to the left
/// where it does not fit there; elsewhere half a metre right and down. Where the thing is itself
/// the latest copy of `copied_from`, by the same step again. Errors: those of plan/ThingEdits.h,
/// place.past-end, and what the copy would contradict (an overlap).
base::Result<plan::Job> copiedBeside(const plan::Job& job, const std::string& id,
                                     const std::string& copied_from);
/// Id of what `after` has of the kind of `id` and `before` has not; empty where there is none.
std::string copyOf(const plan::Job& before, const plan::Job& after, const std::string& id);

/// Something on a wall slid until it is in line with another: its middle square across from the
/// other's where their walls face each other, as far from its left corner where they do not.
/// Errors: as above; place.both-on-walls unless both are things on walls.
base::Result<plan::Job> inLineWith(const plan::Job& job, const std::string& id,
                                   const std::string& with);

/// An opening of the width, sill and head of another; its middle stays, but for the wall's ends.
/// Errors: as above; place.both-openings unless both are openings.
base::Result<plan::Job> sizedLike(const plan::Job& job, const std::string& id,
                                  const std::string& like);

}  // namespace sumpwright::tools
