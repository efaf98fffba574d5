#pragma once
// What a rule sheet may not say although its text is well formed. Every problem is "unreadable":
// a sheet with a doubtful rule is not used at all.

#include <string>

#include "base/Problem.h"
#include "rules/RuleSheet.h"

namespace sumpwright::rules {

/// True for kinds that compare a distance with needed_m.
bool needsFigure(const Rule& rule);

/// Problems of one rule; `pointer` is its place in the sheet.
void checkRule(const Rule& rule, const std::string& pointer, base::Problems& problems);

/// Problems of one score part: weight not positive, share outside 0..1, unknown value.
void checkScorePart(const ScorePart& part, const std::string& pointer, base::Problems& problems);

/// Problems between the parts of a sheet: repeated ids, gates that name no rule or no kind that is
/// looked for, no accuracy for a survey that states no method.
void checkSheet(const RuleSheet& sheet, base::Problems& problems);

}  // namespace sumpwright::rules
