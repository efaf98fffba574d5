#pragma once
// What a suction study says, as messages.

#include "siting/SuctionStudy.h"

namespace sumpwright::siting {

/// Share of floor held on the middle guess at the ground, of answers nobody knows the worst: the
/// figure that screen and paper show large, and the sentence begins with. 0 where not answered.
double middleFloor(const SuctionAnswer& answer);
/// The air of all sumps that goes with it, m³/h: what section, papers and the year are told.
double middleFlow_m3_h(const SuctionAnswer& answer);

/// One statement for everybody: how much is held on the middle guess, in how many of the guesses
/// all of it is, and what to count on. `clustered`: all that is not likely held lies round the
/// least likely place.
base::Message verdictOf(const SuctionAnswer& answer, bool clustered);

/// Phrase; empty where the plan leaves one answer only.
base::Message caseLabel(const plan::Plan& plan, const suction::ModelChoices& choices);
base::Message caseSentence(const MiddleCase& one, const suction::Target& target,
                           base::Message where);
/// Air and pressure of each fan; of which sump it is where each of several has its own. `names`: of
/// the sumps, as the duty's legs.
std::vector<base::Message> dutySentences(const airflow::DutySummary& duty,
                                         const std::vector<std::string>& names);
/// Ids of the sumps that were counted with; "" of one that is none of the design's.
std::vector<std::string> sumpNames(const SuctionAnswer& answer);
std::vector<base::Message> rangeSentences(const SuctionAnswer& answer);
/// By the study's rule sheet.
RuleOfThumb ruleOfThumb(const Study& study, const SuctionAnswer& answer);
/// `fitted`: the ground was fitted to measured suction.
std::vector<base::Message> cautionsOf(const plan::Plan& plan, bool fitted);
base::Message leakSentence(const LeakCase& leak, const MiddleCase& sealed);
std::vector<Assumption> groundAssumptions(const plan::Job& job, const SuctionAnswer& answer,
                                          const suction::GroundRanges& ranges, double pit_m3);

}  // namespace sumpwright::siting
