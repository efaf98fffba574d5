#pragma once
// Rule kind 7: one sump serves so much floor and so far, a rule of thumb for clean stone.

#include <optional>

#include "base/Message.h"
#include "rules/Judge.h"

namespace sumpwright::suction {

/// Why the rule of thumb has nothing to say of a house: it is about clean stone that no wall
/// crosses. A phrase; nothing where it may be asked.
std::optional<base::Message> whyNoThumb(const plan::Job& job);

/// Objects along the whole wall where the floor (modelOf(), next door apart) is larger than most_m2
/// for each sump of the design; else, with no more than one sump, where a corner of the floor is
/// farther than most_m from the place, straight, measured from the inner face of the wall. Ends
/// exact: the farthest point of a polygon is a corner. Silent where whyNoThumb() has a reason or
/// the plan makes no model.
extern const rules::RuleJudge kSumpPerArea;

}  // namespace sumpwright::suction
