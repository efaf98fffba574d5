#pragma once
// Random sound houses with random things in, on and round them (of every kind a job holds), and
// random rule sheets. The same seed gives the same house. All invented.

#include <string>

#include "plan/Job.h"
#include "rules/RuleSheet.h"
#include "support/Seed.h"

namespace sumpwright::support {

struct RandomPlanOptions {
  bool courtyards = true;
  bool all_looked_for = false;  ///< every kind present or looked for in vain
  int more_things = 0;          ///< gullies added about the house, for benches
};

/// Sound (plan::checkJob finds nothing unsound): rectangles, stepped, star-shaped and skew
/// outlines, some with corners on a nearly straight wall, some with a courtyard; turned and moved.
plan::Job randomJob(Random& random, const RandomPlanOptions& options = {});

/// A built-in sheet by id. Contract: there is one.
rules::RuleSheet builtInSheet(const std::string& id);

/// ie-practice as it stands, or with limits, severities and parts changed at random and gaps
/// filled.
rules::RuleSheet randomSheet(Random& random);

/// Writes the job where a failing test can point to; the path, or why there is none.
std::string writeForReproduction(const plan::Job& job, std::uint64_t seed);

}  // namespace sumpwright::support
