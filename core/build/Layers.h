#pragma once
// What a wall is made of, as leaves. Internal to core/build.

#include "build/BuildUp.h"

namespace sumpwright::build {

/// Leaves of a wall `thickness_m` thick: the layers listed for it, stretched by what nobody lists
/// (plaster), else those usual for the build type, which is added to `assumed`.
std::vector<Leaf> leavesOf(const plan::Wall& wall, const plan::House& house, double thickness_m,
                           std::vector<Assumption>& assumed);

}  // namespace sumpwright::build
