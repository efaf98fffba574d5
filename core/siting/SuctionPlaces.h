#pragma once
// What a place on the floor is called: by the nearest corner, the room, or the side of the house.

#include "base/Message.h"
#include "siting/Study.h"

namespace sumpwright::siting {

/// Within this of a corner of the house a place is that corner (own figure).
inline constexpr double kNearCorner_m = 2.5;

/// A phrase: "the north-east corner (C), in Kitchen", "the north side, in Kitchen". The side is
/// the corner's or the place's from the middle of the outline.
base::Message placeOnFloor(const Study& study, geometry::Point at);

/// Of a sump: its wall and chainage, or where it stands on the floor. A phrase.
base::Message placeOfSump(const Study& study, const plan::SumpPlace& place);

}  // namespace sumpwright::siting
