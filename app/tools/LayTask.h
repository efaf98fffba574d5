#pragma once
// What each task that lays a point, a line or an area puts on the plan.

#include <optional>

#include "tools/Laying.h"
#include "tools/Task.h"

namespace sumpwright::tools {

/// The thing without its places; nothing for a task that lays none of these.
std::optional<LayModel> layModelOf(Task task);

}  // namespace sumpwright::tools
