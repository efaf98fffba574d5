#pragma once
// What lies at the edges of the floor: joints, foundation walls, neighbours. Internal to
// core/suction.

#include "suction/ModelOf.h"

namespace sumpwright::suction {

/// Tells what each edge of the region is, the inner face of which wall, and puts further corners
/// where that changes within one straight line: another wall begins, or the foundation begins to
/// stand free of the ground outside. A foundation wall leaks over the height by which the underside
/// of the floor behind it (plan/FloorLevels.h) stands above the ground, the mean along each edge.
/// Edges that are no wall's inner face are tight.
void addEdges(const plan::Job& job, const Ground& ground, const ModelChoices& choices,
              Region& region);

}  // namespace sumpwright::suction
