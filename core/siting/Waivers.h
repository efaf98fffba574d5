#pragma once
// Whether a waiver of the design acts at a place.

#include <string>

#include "siting/Study.h"

namespace sumpwright::siting {

/// Reason, name and date say something.
bool isComplete(const plan::Waiver& waiver);

/// Whether every binding finding has a waiver for that sump that holds at the place, and nothing
/// but a riser's outlet is unknown.
bool allWaived(const rules::Site& site, const Assessment& assessment, const std::string& sump);

}  // namespace sumpwright::siting
