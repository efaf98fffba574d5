#pragma once
// What a suction study says, as messages. Internal to core/siting.

#include "siting/SuctionStudy.h"

namespace sumpwright::siting {

/// `clustered`: all that is not likely held lies round the least likely place.
base::Message verdictOf(const SuctionAnswer& answer, bool clustered);

/// Phrase; empty where the plan leaves one answer only.
base::Message caseLabel(const plan::Plan& plan, const suction::ModelChoices& choices);
base::Message caseSentence(const MiddleCase& one, const suction::Target& target,
                           base::Message where);
std::vector<base::Message> rangeSentences(const SuctionAnswer& answer);
RuleOfThumb ruleOfThumb(const SuctionAnswer& answer, const suction::Network& network,
                        bool crossing_wall);
/// `fitted`: the ground was fitted to measured suction.
std::vector<base::Message> cautionsOf(const plan::Plan& plan, bool fitted);
base::Message leakSentence(const LeakCase& leak, const MiddleCase& sealed);
std::vector<Assumption> groundAssumptions(const plan::Job& job, const SuctionAnswer& answer,
                                          const suction::GroundRanges& ranges, double pit_m3);

}  // namespace sumpwright::siting
