#pragma once
// The shape of a thing outside the house.

#include "plan/Plan.h"

namespace sumpwright::plan {

/// Whether its points go round an area: three or more of a kind that has one (chamber, tank, deck,
/// soakaway, ...). A path, a boundary and their like are lines however many points they have.
bool enclosesArea(const OutsideThing& thing);

}  // namespace sumpwright::plan
