#pragma once
// From rules to spans, and from spans to stretches.

#include <vector>

#include "siting/Study.h"

namespace sumpwright::siting {

/// Ends nearer than this are one place: rounding of one corner reached two ways, a thousand times
/// finer than the micrometre that ends are right to (own figure).
inline constexpr double kSamePlace_m = 1e-9;

/// All findings of all enabled rules and gates, in the sheet's order, least distances filled in.
std::vector<rules::FindingSpan> findAll(const rules::Site& site);

/// Tiles every ring: ends where the state or the set of (rule, thing) changes.
std::vector<std::vector<Stretch>> tile(const rules::Site& site,
                                       const std::vector<rules::FindingSpan>& spans);

/// Left open by what this program cannot judge yet: nobody can find it out on the plan.
bool isNotYetJudged(const Finding& finding);

State stateFrom(const std::vector<int>& spanIndices, const std::vector<rules::FindingSpan>& spans);

/// The stretch that holds a chainage in [0, length).
const Stretch& stretchAt(const std::vector<Stretch>& ring, double chainage_m);

/// Sorted worst first, keeping the sheet's order among equals.
void sortWorstFirst(std::vector<Finding>& findings);

std::vector<Run> joinRuns(const rules::Site& site,
                          const std::vector<std::vector<Stretch>>& stretches);

}  // namespace sumpwright::siting
