#pragma once
// What the guesses say of the floor, point by point and as ranges. Internal to core/siting.

#include "siting/SuctionMiddle.h"
#include "siting/SuctionStudy.h"

namespace sumpwright::siting {

/// Shares of guesses are sums of single precision.
inline bool isLikelyHeld(double chance) { return chance > kLikely - 1e-6; }

/// The floor as data, the share that is likely held, and the place that is least likely. Whether
/// all that is not likely held lies round that place.
bool takeFloor(const Study& study, const MiddleCases& middle, const suction::ChanceStudy& guesses,
               const suction::Chance& chance, SuctionAnswer& answer);

/// Share of floor, flow and suction in the pit as bands.
void takeRanges(const SuctionSystem& system, const suction::Chance& chance, SuctionAnswer& answer);

}  // namespace sumpwright::siting
