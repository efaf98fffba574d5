#pragma once
// What lies under the pointer.

#include <string>

#include "siting/Study.h"

namespace sumpwright::canvas {

/// Id of the thing nearest to a plan point within `reach_m`, small things before rooms; empty when
/// there is nothing. An opening is hit anywhere in the thickness of its wall.
std::string thingAt(const siting::Study& study, geometry::Point at, double reach_m);

/// A point to look at for a thing, room, wall or corner; nothing for an unknown id.
std::optional<geometry::Point> spotOf(const siting::Study& study, const std::string& id);

}  // namespace sumpwright::canvas
