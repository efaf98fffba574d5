#pragma once
// What a door inside is called: by the rooms it leads to, having no name of its own.

#include "base/Message.h"
#include "plan/Plan.h"

namespace sumpwright::siting {

/// "the door between the hall and the kitchen"; "the door of the hall" where a room is drawn on one
/// side alone, or the same on both; "a door inside".
base::Message innerDoorLabel(const plan::Plan& plan, const plan::InnerDoor& door);

}  // namespace sumpwright::siting
