#include <algorithm>

#include "base/CustomaryUnits.h"
#include "drawing/Voice.h"

namespace sumpwright::drawing {

double Voice::markedIn_m() const { return inFeet() ? base::kFoot_m : 1.0; }

namespace {

bool startsLetter(char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }

/// The longest whole-letter start of the word that fits; at least one letter.
std::size_t fitting(const Voice& voice, const std::string& word, const Font& font,
                    double width_mm) {
  std::size_t best = 0;
  for (std::size_t i = 1; i <= word.size(); ++i) {
    if (i < word.size() && !startsLetter(word[i])) continue;
    if (best > 0 && voice.width_mm(word.substr(0, i), font) > width_mm) break;
    best = i;
  }
  return best;
}

/// A number and its unit stay on one line.
bool isUnit(const std::string& word) {
  const std::string bare = word.substr(0, word.find_first_of(".,;:)"));
  return bare == "m" || bare == "mm" || bare == "m\u00B2" || bare == "Pa" || bare == "%" ||
         bare == "W" || bare == "kWh" || bare == "m\u00B3/h";
}

/// The word from `at` on, with a unit that follows a figure; `at` moves past it.
std::string nextWord(const std::string& text, std::size_t& at) {
  const auto one = [&] {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    std::string word = text.substr(at, end - at);
    at = end + 1;
    return word;
  };
  std::string word = one();
  if (word.empty() || at >= text.size() || word.back() < '0' || word.back() > '9') return word;
  const std::size_t before = at;
  const std::string unit = one();
  if (isUnit(unit)) return word + ' ' + unit;
  at = before;
  return word;
}

}  // namespace

std::vector<std::string> wrap(const Voice& voice, const std::string& text, const Font& font,
                              double width_mm) {
  std::vector<std::string> lines;
  std::string line;
  std::size_t at = 0;
  while (at < text.size()) {
    std::string word = nextWord(text, at);
    if (word.empty()) continue;
    while (voice.width_mm(word, font) > width_mm) {
      const std::size_t part = fitting(voice, word, font, width_mm);
      if (part == word.size()) break;
      if (!line.empty()) lines.push_back(line);
      line.clear();
      lines.push_back(word.substr(0, part));
      word.erase(0, part);
    }
    const std::string longer = line.empty() ? word : line + ' ' + word;
    if (!line.empty() && voice.width_mm(longer, font) > width_mm) {
      lines.push_back(line);
      line = word;
    } else {
      line = longer;
    }
  }
  if (!line.empty()) lines.push_back(line);
  return lines;
}

}  // namespace sumpwright::drawing
