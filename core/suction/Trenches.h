#pragma once
// Trenches of drains under the floor. Internal to core/suction.

#include "suction/ModelOf.h"

namespace sumpwright::suction {

/// A drain under a house lies in 100 mm of granular material all round (Approved Document H, from
/// memory): 0.31 m square less the pipe of 110 mm.
inline constexpr double kTrench_m2 = 0.31 * 0.31 - 3.14159 * 0.055 * 0.055;
/// Taken for clean stone, the middle of its range in Presets.h (own figure).
inline constexpr double kTrenchPermeability_m2 = 9.5e-8;

/// Trenches of drainsBelow(), which carry air along them through walls and all. Where they leave
/// the house nothing is taken to come in.
std::vector<Conduit> trenchesBelow(const plan::Plan& plan, const airflow::Air& air);

}  // namespace sumpwright::suction
