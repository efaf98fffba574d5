#pragma once
// Walls that a rule of the kind wall keeps outlet, fan and riser off, as exact spans of chainage. A
// pipe that reaches over the end of a wall is on the next one as well. What stands straight above a
// hole that the rule speaks of too is judged with the hole.

#include <vector>

#include "build/Run.h"
#include "rules/Finding.h"

namespace sumpwright::build {

/// For addRunSpans().
void addRunWalls(const rules::Rule& rule, const rules::Site& site,
                 std::vector<rules::FindingSpan>& out);

/// A finding of it, with the part that is on the wall at one place of the hole.
rules::Finding runWallAt(const rules::Rule& rule, const rules::Site& site, rules::Finding finding,
                         perimeter::Place hole);

/// Whether a part above that hole is on a wall that the rule objects to.
bool isOnRefused(const rules::Rule& rule, const rules::Site& site, const PlacedPart& part,
                 perimeter::Place hole);

/// Chainages of a middle so far from the edge of a pipe that the pipe is on a wall the rule objects
/// to.
std::vector<rules::RingSpan> refusedWalls(const rules::Rule& rule, const rules::Site& site,
                                          double half_m);

}  // namespace sumpwright::build
