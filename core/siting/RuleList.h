#pragma once

#include <span>

#include "rules/Judge.h"

namespace sumpwright::siting {

/// The one list of all kinds of rule.
std::span<const rules::RuleJudge* const> allJudges();

/// The judge of a kind. Contract: it is in the list.
const rules::RuleJudge& judgeOf(rules::RuleKind kind);

}  // namespace sumpwright::siting
