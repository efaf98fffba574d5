#pragma once
// Whether somebody lives in the roof space: no fan stands there then.

#include <string>

#include "plan/Job.h"

namespace sumpwright::plan {

struct RoofSpace {
  YesNo lived_in = YesNo::unknown;
  std::string shown_by;  ///< id of the opening that shows it where nobody asked; else ""
};

/// As the house states it. Where nobody asked, a roof window, or a window or door that begins at
/// the eaves of its wall or above them, shows that somebody lives there.
RoofSpace roofSpaceOf(const Job& job);

}  // namespace sumpwright::plan
