#include "words/Sentences.h"

namespace sumpwright::words {

std::span<const Sentence> planSentences() { return {}; }

}  // namespace sumpwright::words
