#pragma once
// The sumps of a design as a user counts them: 1, 2, … in the order of the job, those inside the
// house counted along.

#include <string>
#include <vector>

#include "plan/Job.h"

namespace sumpwright::plan {

struct NumberedSump {
  int number = 0;
  std::string id;
};

/// Those cored through a wall, which can be sited.
std::vector<NumberedSump> coredSumps(const Job& job);
/// The number of a sump where more than one is cored through a wall; else, and for an unknown id,
/// 0: it needs none.
int neededNumber(const Job& job, const std::string& sump);

/// What papers and windows call a sump: its number in the order of the job; an unknown id as it is.
std::string sumpWord(const Job& job, const std::string& sump);

/// Whether any sump stands somewhere: one inside may not be placed yet.
bool hasPlacedSump(const Job& job);

}  // namespace sumpwright::plan
