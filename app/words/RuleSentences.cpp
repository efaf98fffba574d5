#include "words/Sentences.h"

namespace sumpwright::words {

std::span<const Sentence> ruleSentences() { return {}; }

}  // namespace sumpwright::words
