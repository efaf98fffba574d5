// Sentences on rule sheets that cannot be used.

#include <QtGlobal>
#include <array>

#include "words/Sentences.h"

namespace sumpwright::words {

std::span<const Sentence> sheetSentences() {
  static constexpr auto rows = std::to_array<Sentence>({
      {"sheet.too-large",
       QT_TRANSLATE_NOOP("Sentences",
                         "The rule sheet has {bytes} bytes; {limit} are the most that is read.")},
      {"sheet.not-json",
       QT_TRANSLATE_NOOP("Sentences", "The rule sheet is not JSON; it breaks off at byte {byte}.")},
      {"sheet.not-a-sheet",
       QT_TRANSLATE_NOOP("Sentences",
                         "This is no rule sheet: it does not begin with the format “{format}”.")},
      {"sheet.version",
       QT_TRANSLATE_NOOP("Sentences",
                         "The rule sheet is of version {version}; this program reads version "
                         "{known}. Use a newer program or an older sheet.")},
      {"sheet.wrong-type", QT_TRANSLATE_NOOP("Sentences",
                                             "A value of the wrong type stands here; {expected} is "
                                             "expected.")},
      {"sheet.type.text", QT_TRANSLATE_NOOP("Sentences", "text in quotes")},
      {"sheet.type.yes-no", QT_TRANSLATE_NOOP("Sentences", "true or false")},
      {"sheet.type.number", QT_TRANSLATE_NOOP("Sentences", "a number")},
      {"sheet.type.list", QT_TRANSLATE_NOOP("Sentences", "a list")},
      {"sheet.type.object", QT_TRANSLATE_NOOP("Sentences", "an object")},
      {"sheet.missing-key", QT_TRANSLATE_NOOP("Sentences", "“{key}” is missing here.")},
      {"sheet.unknown-key",
       QT_TRANSLATE_NOOP("Sentences",
                         "“{key}” is no part of a rule sheet. If it is misspelt, its rule would do "
                         "nothing.")},
      {"sheet.unknown-word",
       QT_TRANSLATE_NOOP("Sentences", "“{word}” is not one of the words allowed here.")},
      {"sheet.wrong-thing",
       QT_TRANSLATE_NOOP("Sentences", "A rule of the kind “{kind}” cannot look at “{thing}”.")},
      {"sheet.wrong-part",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "The rule “{rule}” cannot measure this of these parts: heights over or "
           "under the eaves, below the roof, the jet and walls round about are of the "
           "outlet alone, over the ground of the outlet or of the fan, under the "
           "outlet and the roof space of the fan alone; of a hole or a dig none is.")},
      {"sheet.no-source",
       QT_TRANSLATE_NOOP("Sentences",
                         "A source is missing here: name the document, section and year, or mark "
                         "the figure as common practice or as your own.")},
      {"sheet.no-figure",
       QT_TRANSLATE_NOOP("Sentences",
                         "“{rule}” needs a distance. Give one, or switch the rule off.")},
      {"sheet.empty", QT_TRANSLATE_NOOP("Sentences", "This may not be empty.")},
      {"sheet.out-of-range",
       QT_TRANSLATE_NOOP("Sentences", "The number must lie between {least} and {most}.")},
      {"sheet.weight", QT_TRANSLATE_NOOP("Sentences", "A weight must be above zero.")},
      {"sheet.repeated",
       QT_TRANSLATE_NOOP("Sentences", "“{word}” stands twice; each may stand once.")},
      {"sheet.no-such-rule",
       QT_TRANSLATE_NOOP("Sentences", "The sheet has no rule “{rule}”, though this names it.")},
      {"sheet.no-accuracy",
       QT_TRANSLATE_NOOP("Sentences",
                         "The accuracy of a survey that states no method (“not_stated”) is "
                         "missing.")},
  });
  return rows;
}

}  // namespace sumpwright::words
