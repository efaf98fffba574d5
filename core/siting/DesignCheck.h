#pragma once
// What of a design does not go with its rule sheet. What contradicts itself without one is
// plan/PlanCheck.h.

#include <optional>

#include "base/Problem.h"
#include "plan/Job.h"
#include "rules/RuleSheet.h"

namespace sumpwright::siting {

class Study;

/// Problems of a sound job's design, pointers as in the job file. Unsound: study.core-size and
/// study.pipe-size, sizes the job does not state being the sheet's. Missing, one for each waiver
/// that accepts nothing, by the first reason found: waiver.unknown-rule, waiver.not-binding,
/// waiver.not-waivable, waiver.evidence, waiver.blank, waiver.left-behind, waiver.nothing-refused,
/// waiver.too-near, waiver.not-located. The last three need a plan that can be studied.
base::Problems checkDesign(const plan::Job& job, const rules::RuleSheet& sheet);

/// Why a waiver of the study's job accepts nothing by its sheet; nothing where it accepts.
std::optional<base::Problem> waiverProblem(const Study& study, const plan::Waiver& waiver);

/// study.core-size or study.pipe-size for a core of that diameter.
std::optional<base::Problem> sizeProblem(const plan::Job& job, const rules::RuleSheet& sheet,
                                         double core_m);

}  // namespace sumpwright::siting
