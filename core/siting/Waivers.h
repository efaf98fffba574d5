#pragma once
// Whether a waiver of the design acts at a place.

#include <string>

#include "siting/Study.h"

namespace sumpwright::siting {

/// Reason, name and date say something.
bool isComplete(const plan::Waiver& waiver);

/// Whether a binding finding has a waiver for that sump that holds at the place.
bool isWaived(const rules::Site& site, const Finding& finding, Place place,
              const std::string& sump);

/// Whether the place is refused, every binding finding accepted, and nothing but a riser's outlet
/// unknown.
bool allWaived(const Assessment& assessment);

}  // namespace sumpwright::siting
