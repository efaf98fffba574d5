#pragma once
// What lies under the pointer, studied plan or not.

#include <string>
#include <vector>

#include "drawing/ServiceSpots.h"
#include "plan/Job.h"

namespace sumpwright::canvas {

/// Id of the thing nearest to a plan point within `reach_m`, small things before areas, the floor
/// last; empty when there is nothing. An opening or wall feature is hit anywhere in the thickness
/// of its wall, a service at its plate too (`plates`). Walls themselves are not looked at.
std::string thingAt(const plan::Job& job, const std::vector<drawing::ServiceSpot>& plates,
                    geometry::Point at, double reach_m);

/// A point to look at for a thing, room, wall or sump; nothing for an unknown id.
std::optional<geometry::Point> spotOf(const plan::Job& job, const std::string& id);

}  // namespace sumpwright::canvas
