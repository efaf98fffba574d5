#include <QtGlobal>
#include <array>

#include "words/Sentences.h"

namespace sumpwright::words {

std::span<const Sentence> cliSentences() {
  static constexpr std::array kSentences{
      Sentence{"quantity.unknown", QT_TRANSLATE_NOOP("Sentences", "unknown")},
      Sentence{"quantity.of", QT_TRANSLATE_NOOP("Sentences", "{value}")},
  };
  return kSentences;
}

}  // namespace sumpwright::words
