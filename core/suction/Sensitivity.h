#pragma once
// How the suction under a floor changes with the ground: what a fit goes by, and what tells where a
// test hole would teach most.

#include <vector>

#include "suction/Factor.h"
#include "suction/Network.h"

namespace sumpwright::suction {

/// d suction / d ln of a part of the ground, by cell: -A^-1 (dA/dln) s.
enum class GroundPart { transmissivity, leakage, joints, barriers };
std::vector<double> sensitivity(const Network& network, const Factor& factor, const Scales& scales,
                                const std::vector<double>& suction, GroundPart part);

}  // namespace sumpwright::suction
