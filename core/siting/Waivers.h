#pragma once

#include "siting/Study.h"

namespace sumpwright::siting {

/// Whether the place is refused, every binding finding accepted, and nothing but a riser's outlet
/// unknown.
bool allWaived(const Assessment& assessment);

}  // namespace sumpwright::siting
