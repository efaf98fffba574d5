#pragma once
// Floors as they are typed: the whole floor, or that of one room. Internal to app/tools.

#include "base/Result.h"
#include "plan/Job.h"
#include "tools/ThingLine.h"

namespace sumpwright::tools {

/// As placed() says of floors.
base::Result<plan::Job> withFloor(const plan::Job& job, const ThingLine& line);

/// The room of that name, use or number in the list (from 1), in any case; nullptr: none.
const plan::Room* roomCalled(const plan::Job& job, const std::string& text);

}  // namespace sumpwright::tools
