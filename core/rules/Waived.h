#pragma once
// Whether a waiver of the design acts at a place: asked by whoever speaks of a refusal.

#include <string>

#include "rules/Judge.h"

namespace sumpwright::rules {

/// Whether a binding finding has a waiver for that sump that holds at the place: of its evidence,
/// with reason, name and date, and not left behind. No sump ("") has none.
bool isWaived(const Site& site, const Finding& finding, perimeter::Place place,
              const std::string& sump);

}  // namespace sumpwright::rules
