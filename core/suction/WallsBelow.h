#pragma once
// The walls that go through the fill, made of the plan's. Internal to core/suction.

#include "suction/ModelOf.h"

namespace sumpwright::suction {

/// Rising walls with their gaps, inner walls on their own footing, old outer walls between house
/// and extension. No stretch of wall counts twice: an inner wall adds nothing where it lies along a
/// rising wall, whose gaps stay, nor an old outer wall where a wall is drawn; what is left of them
/// is led up to the other. `floor`: the regions of the house itself.
std::vector<Barrier> wallsBelow(const plan::Job& job, const Ground& ground,
                                const ModelChoices& choices, const std::vector<Region>& floor);

/// Whether some of the inner wall lies along no rising wall.
bool standsByItself(const plan::InnerWall& wall, const std::vector<plan::RisingWall>& rising);

}  // namespace sumpwright::suction
