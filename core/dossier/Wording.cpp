#include "dossier/Wording.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <string_view>
#include <utility>

namespace sumpwright::dossier {
namespace {

constexpr std::string_view kHardSpace = "\u00A0";

bool isDigit(char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0; }

/// Without what stands before and after a figure or a unit: brackets, commas, points.
std::string_view bareWord(std::string_view word) {
  constexpr std::string_view kOpening = "([";
  constexpr std::string_view kClosing = ".,;:)]";
  while (!word.empty() && kOpening.find(word.front()) != std::string_view::npos) {
    word.remove_prefix(1);
  }
  while (!word.empty() && kClosing.find(word.back()) != std::string_view::npos) {
    word.remove_suffix(1);
  }
  return word;
}

bool endsInFigure(std::string_view word) { return !word.empty() && isDigit(word.back()); }

bool isUnitWord(std::string_view word) {
  static constexpr std::array kUnits{
      "m",    "mm",    "cm",     "m\u00B2", "mm\u00B2", "m\u00B3/h",  "m/s",      "Pa",
      "kPa",  "W",     "kW",     "kWh",     "V",        "A",          "%",        "h",
      "hour", "hours", "dB",     "dB(A)",   "l",        "ft",         "ft\u00B2", "in",
      "in.",  "cfm",   "litres", "ft/min",  "\u00B0C",  "Bq/m\u00B3", "pCi/L",    "K"};
  const std::string_view bare = bareWord(word);
  return std::any_of(kUnits.begin(), kUnits.end(), [&](std::string_view unit) {
    return word == unit || bare == unit || (unit == "dB(A)" && word.starts_with(unit));
  });
}

/// "25'", "(25'": inches follow.
bool isFeet(std::string_view word) {
  return word.size() > 1 && word.back() == '\'' && isDigit(word[word.size() - 2]);
}

/// "7/8\"": an inch's part after whole inches.
bool isFraction(std::string_view word) {
  const std::size_t bar = word.find('/');
  return bar != std::string_view::npos && bar > 0 && isDigit(word[bar - 1]) &&
         word.find('"', bar) != std::string_view::npos;
}

/// Whether these two belong together.
bool isOneQuantity(std::string_view before, std::string_view after) {
  if (before.empty() || after.empty()) return false;
  if (before == "\u2248" || before == "\u2212") return isDigit(after.front());
  if (isFeet(before)) return isDigit(after.front());
  if (endsInFigure(before)) return isFraction(after) || isUnitWord(after);
  return before == "in." && after.starts_with("w.c");
}

/// The same with hard spaces within quantities.
std::string glued(const std::string& words) {
  std::string out;
  std::string_view before;
  std::size_t at = 0;
  while (at <= words.size()) {
    const std::size_t end = std::min(words.find(' ', at), words.size());
    const std::string_view word = std::string_view(words).substr(at, end - at);
    if (at > 0) out += isOneQuantity(before, word) ? kHardSpace : std::string_view(" ");
    out += word;
    before = word;
    at = end + 1;
  }
  return out;
}

std::string unglued(std::string line) {
  for (std::size_t at = line.find(kHardSpace); at != std::string::npos;
       at = line.find(kHardSpace, at)) {
    line.replace(at, kHardSpace.size(), " ");
  }
  return line;
}

/// Measures a hard space as the space that is printed.
class GluedVoice final : public drawing::Voice {
 public:
  explicit GluedVoice(const drawing::Voice& voice) : m_voice(voice) {}
  std::string say(const base::Message& message) const override { return m_voice.say(message); }
  double width_mm(const std::string& text, const Font& font) const override {
    return m_voice.width_mm(unglued(text), font);
  }
  double capHeight_mm(const Font& font) const override { return m_voice.capHeight_mm(font); }

 private:
  const drawing::Voice& m_voice;
};

}  // namespace

std::vector<std::string> wrapped(const Desk& desk, const std::string& words, const Font& font,
                                 double width_mm) {
  auto lines = drawing::wrap(GluedVoice(desk.voice), glued(words), font, width_mm);
  for (std::string& line : lines) line = unglued(std::move(line));
  return lines;
}

double widestWord_mm(const Desk& desk, const std::string& words, const Font& font) {
  const std::string whole = glued(words);
  double widest = 0.0;
  std::size_t at = 0;
  while (at < whole.size()) {
    const std::size_t end = std::min(whole.find(' ', at), whole.size());
    const std::string word = unglued(whole.substr(at, end - at));
    widest = std::max(widest, desk.voice.width_mm(word, font));
    at = end + 1;
  }
  return widest;
}

}  // namespace sumpwright::dossier
