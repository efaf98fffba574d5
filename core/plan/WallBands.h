#pragma once
// The ground that walls stand on, in plan. Internal to core/plan.

#include <vector>

#include "plan/Job.h"

namespace sumpwright::plan {

/// Polygons that together cover an outside ring's walls, from a little outside (1 mm, own figure,
/// so that no two outlines run on one line) to the inner face, corners filled.
std::vector<geometry::Polygon> bandsOfRing(const Job& job, const Ring& ring);

/// The same of all inner walls; ends that come within `reach_m` of another wall reach it.
std::vector<geometry::Polygon> bandsOfInnerWalls(const Job& job, double reach_m);

}  // namespace sumpwright::plan
