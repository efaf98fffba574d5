#pragma once
// The English of every Message id the core can give, by theme. Templates name their arguments in
// braces: "{distance} from {thing}, {needed} needed". A Quantity is formatted with its unit by the
// display units in force; {name:bare} drops the unit, {name:signed} prints the sign, {name:0} rounds
// to that many decimals; a Message argument is put into words first. Tests fail on an id in core/
// without a sentence here and on a sentence nobody uses. Marked for lupdate.

#include <span>
#include <string_view>

namespace sumpwright::words {

struct Sentence {
  std::string_view id;
  const char* english;  ///< QT_TRANSLATE_NOOP("Sentences", "...")
};

std::span<const Sentence> planSentences();    ///< ids "plan.*", "job.*": PlanSentences.cpp
std::span<const Sentence> ruleSentences();    ///< "rule.*", "study.*", "verdict.*", "thing.*",
                                              ///< "wall.*", "sheet.*": RuleSentences.cpp
std::span<const Sentence> paperSentences();   ///< "paper.*", "drawing.*": PaperSentences.cpp

}  // namespace sumpwright::words
