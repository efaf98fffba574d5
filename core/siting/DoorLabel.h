#pragma once
// What a door inside is called: by the rooms it leads to, having no name of its own.

#include "base/Message.h"
#include "plan/Plan.h"

namespace sumpwright::siting {

/// "the door between the hall and the kitchen", "the door of the hall", "a door inside".
base::Message innerDoorLabel(const plan::Plan& plan, const plan::InnerDoor& door);

}  // namespace sumpwright::siting
