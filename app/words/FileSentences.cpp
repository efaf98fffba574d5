#include "words/Sentences.h"

namespace sumpwright::words {

std::span<const Sentence> fileSentences() { return {}; }

}  // namespace sumpwright::words
