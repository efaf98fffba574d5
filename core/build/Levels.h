#pragma once
// Outside ground and eaves along the walls, metres above finished floor level.

#include <optional>

#include "plan/FloorLevels.h"
#include "rules/Judge.h"

namespace sumpwright::build {

using plan::GroundLine;

GroundLine groundAlong(const rules::Site& site, const perimeter::Edge& edge);
double groundAt(const rules::Site& site, perimeter::Place place);

/// Of the wall, else of the house; nothing where neither is known.
std::optional<double> eavesOf(const rules::Site& site, const perimeter::Edge& edge);

}  // namespace sumpwright::build
