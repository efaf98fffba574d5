#pragma once
// What was looked for, kept true while things come and go. Internal to core/plan.

#include <string>

#include "plan/Job.h"

namespace sumpwright::plan {

/// Where something of a kind came that was said not to be there, it is present; where the last one
/// with a place went, it is not looked for. Nothing else changes: one window drawn does not say
/// that all of them are.
void settleLookedFor(const Job& before, Job& after);

/// Sets the answer under that key of looked_for; false where there is no such key.
bool setLooked(LookedFor& answers, const std::string& key, Looked answer);

}  // namespace sumpwright::plan
