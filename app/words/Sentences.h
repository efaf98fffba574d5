#pragma once
// The English of every Message id the core can give, by theme. Templates name their arguments in
// braces: "{distance} from {thing}, {needed} needed". A Quantity is formatted with its unit by the
// display units in force; {name:bare} drops the unit, {name:signed} prints the sign, {name:0}
// rounds to that many decimals, {name:down} rounds down, {name:cap} starts with a capital (all in
// Words.h); a Message argument is put into words first. Tests fail on an id in core/, files or cli
// without a sentence here and on a sentence nobody uses. Marked for lupdate.

#include <span>
#include <string_view>

namespace sumpwright::words {

struct Sentence {
  std::string_view id;
  const char* english;  ///< QT_TRANSLATE_NOOP("Sentences", "...")
};

std::span<const Sentence> planSentences();     ///< ids "plan.*", "job.*": PlanSentences.cpp
std::span<const Sentence> ruleSentences();     ///< "rule.*", "study.*", "verdict.*", "thing.*",
                                               ///< "wall.*": RuleSentences.cpp
std::span<const Sentence> sheetSentences();    ///< "sheet.*": SheetSentences.cpp
std::span<const Sentence> paperSentences();    ///< "paper.*", "drawing.*": PaperSentences.cpp
std::span<const Sentence> papersSentences();   ///< "paper.*" of expectations, crew and forms:
                                               ///< PapersSentences.cpp
std::span<const Sentence> fileSentences();     ///< "file.*": FileSentences.cpp
std::span<const Sentence> surveySentences();   ///< "place.*", "plan.tape.*", "drawing.outline.*",
                                               ///< "drawing.gap.*": SurveySentences.cpp
std::span<const Sentence> suctionSentences();  ///< "suction.*": SuctionSentences.cpp
std::span<const Sentence> airSentences();      ///< "fans.*", "airflow.*": AirSentences.cpp
std::span<const Sentence> cableSentences();    ///< "cable.*": CableSentences.cpp
std::span<const Sentence> sectionSentences();  ///< "section.*", "drawing.section.*":
                                               ///< SectionSentences.cpp
std::span<const Sentence> priceSentences();    ///< "prices.*", "price.*": PriceSentences.cpp
std::span<const Sentence> cliSentences();      ///< "cli.*", "quantity.*": CliSentences.cpp

}  // namespace sumpwright::words
