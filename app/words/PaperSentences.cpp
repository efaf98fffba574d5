#include "words/Sentences.h"

namespace sumpwright::words {

std::span<const Sentence> paperSentences() { return {}; }

}  // namespace sumpwright::words
