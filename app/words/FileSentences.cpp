// Sentences on files that cannot be read or written, and on rule sheets that are not found.

#include <QtGlobal>
#include <array>

#include "words/Sentences.h"

namespace sumpwright::words {

std::span<const Sentence> fileSentences() {
  static constexpr auto rows = std::to_array<Sentence>({
      {"file.not-found", QT_TRANSLATE_NOOP("Sentences", "There is no file {file}.")},
      {"file.folder", QT_TRANSLATE_NOOP("Sentences", "{file} is a folder, not a file.")},
      {"file.not-readable", QT_TRANSLATE_NOOP("Sentences", "{file} could not be read: {reason}.")},
      {"file.too-large",
       QT_TRANSLATE_NOOP("Sentences", "{file} is larger than {limit} MiB, the most that is read.")},
      {"file.not-writable",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "{file} could not be written: {reason}. What was there before is unchanged.")},
      {"file.sheet-unknown",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "There is no rule sheet “{sheet}”. Known are: {known}. Another sheet is never "
           "taken in its place.")},
      {"file.sheet-unusable",
       QT_TRANSLATE_NOOP("Sentences", "The rule sheet in {file} cannot be used.")},
      {"file.sheet-copy-unusable",
       QT_TRANSLATE_NOOP("Sentences",
                         "The copy of its rule sheet that the job holds cannot be used.")},
      {"file.sheet-twice",
       QT_TRANSLATE_NOOP(
           "Sentences",
           "Two files hold the rule sheet “{sheet}”: {file} and {other}. Remove one.")},
  });
  return rows;
}

}  // namespace sumpwright::words
