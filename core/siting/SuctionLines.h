#pragma once
// What a suction study puts on paper for the client and for the crew, beside its own sentences.

#include <vector>

#include "siting/Study.h"

namespace sumpwright::siting {

struct SuctionAnswer;

struct SuctionPaperLines {
  std::vector<base::Message> client;
  std::vector<base::Message> crew;  ///< hold points first
};

/// A sump from a party wall at least, as the rule "party-line" of the sheets has it (own figure):
/// nearer, much of the air comes from next door.
inline constexpr double kFromParty_m = 1.0;

/// Internal to core/siting: what studySuction() keeps in the answer.
SuctionPaperLines linesOf(const Study& study, const SuctionAnswer& answer);

/// Lines of an answer; ids "suction.line.*".
const SuctionPaperLines& suctionPaperLines(const SuctionAnswer& answer);

}  // namespace sumpwright::siting
