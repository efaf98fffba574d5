#pragma once
// What can be said of the run of one sump: hole, hollow, pipe, fan, where the air leaves, supply.

#include "stages/Fact.h"

namespace sumpwright::stages {

/// Of the cored sump with that id; keys are places in the job file.
std::vector<Fact> runFacts(const plan::Job& job, const std::string& sump);

}  // namespace sumpwright::stages
