#pragma once
// What can be said of a thing on the plan: one table for each kind of thing.

#include "stages/WallFacts.h"

namespace sumpwright::stages {

/// The facts of a thing as it is in the job; its id says which it is later on.
std::vector<Fact> thingFacts(const plan::Job& job, const plan::Thing& thing);

}  // namespace sumpwright::stages
