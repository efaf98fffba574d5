#pragma once
// What a rule of the kind wall says of one wall, whatever part it is that stands on it.

#include "rules/Judge.h"

namespace sumpwright::rules {

enum class WallSays { nothing, unknown, objects };

/// unknown: only with unknown_gates. Of an absent figure of working room: nothing, or unknown.
WallSays saysOf(const Rule& rule, const plan::Wall& wall);

/// "rule.wall.ATTRIBUTE": what stands there, or that nobody knows. Contract: it says something.
base::Message wallReason(const Rule& rule, const Site& site, const perimeter::Edge& edge);

/// The finding for it, as heavy as the rule or unknown.
Finding wallFinding(const Rule& rule, const Site& site, const perimeter::Edge& edge,
                    base::Message reason);

}  // namespace sumpwright::rules
