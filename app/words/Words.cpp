#include "words/Words.h"

#include <QCoreApplication>
#include <QString>
#include <charconv>
#include <cmath>
#include <string_view>
#include <unordered_map>

#include "base/CustomaryUnits.h"
#include "words/Sentences.h"

namespace sumpwright::words {

namespace {

using Table = std::unordered_map<std::string_view, const char*>;

Table allSentences() {
  Table table;
  for (const auto sentences :
       {planSentences(), ruleSentences(), sheetSentences(), paperSentences(), fileSentences(),
        cliSentences(), surveySentences(), suctionSentences(), airSentences(), sectionSentences(),
        cableSentences(), papersSentences(), priceSentences()}) {
    for (const Sentence& sentence : sentences) table.emplace(sentence.id, sentence.english);
  }
  return table;
}

const char* english(const std::string& id) {
  static const Table table = allSentences();
  const auto it = table.find(id);
  return it == table.end() ? nullptr : it->second;
}

struct Format {
  QuantityStyle style;
  bool capital = false;
  bool sold = false;
};

void apply(std::string_view word, Format& format) {
  int decimals = 0;
  const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), decimals);
  if (error == std::errc{} && end == word.data() + word.size()) format.style.decimals = decimals;
  if (word == "signed") format.style.has_sign = true;
  if (word == "bare") format.style.bare = true;
  if (word == "down") format.style.down = true;
  if (word == "cap") format.capital = true;
  if (word == "sold") format.sold = true;
}

Format formatOf(std::string_view words) {
  Format format;
  while (!words.empty()) {
    const auto comma = words.find(',');
    apply(words.substr(0, comma), format);
    words = comma == std::string_view::npos ? std::string_view{} : words.substr(comma + 1);
  }
  return format;
}

std::string capitalised(const std::string& text) {
  const QString word = QString::fromStdString(text);
  return (word.left(1).toUpper() + word.mid(1)).toStdString();
}

struct Speaker {
  Units units;
  const QuantityStyle& style;
  std::string operator()(const std::string& text) const { return text; }
  std::string operator()(std::int64_t count) const { return std::to_string(count); }
  std::string operator()(const base::Quantity& quantity) const {
    return print(quantity, units, style);
  }
  std::string operator()(const base::Message& message) const { return say(message, units); }
};

/// "0.5 m": a figure of the sentence's own.
std::string ownFigure(std::string_view figure, Units units) {
  const auto space = figure.find(' ');
  if (units == Units::metric || space == std::string_view::npos) return std::string(figure);
  double value = 0.0;
  const auto [end, error] = std::from_chars(figure.data(), figure.data() + space, value);
  if (error != std::errc{} || end != figure.data() + space) return std::string(figure);
  const std::string_view unit = figure.substr(space + 1);
  if (unit == "m") {
    const double inches = std::round(value / base::kInch_m);  // more would be pretended
    return print({inches * base::kInch_m, base::Unit::metre}, units);
  }
  if (unit == "mm") return print({value, base::Unit::millimetre}, units);
  if (unit == "m\u00B3/h") return print({value, base::Unit::cubicMetrePerHour}, units);
  if (unit == "Pa") return print({value, base::Unit::pascal}, units);
  if (unit == "\u00B0C") return std::to_string(std::lround(1.8 * value + 32.0)) + " \u00B0F";
  return std::string(figure);
}

/// "one|many" by a count.
std::string plural(std::string_view words, const base::Arg* arg) {
  const auto bar = words.find('|');
  const auto* count = arg == nullptr ? nullptr : std::get_if<std::int64_t>(&arg->value);
  const bool one = count != nullptr && *count == 1;
  if (bar == std::string_view::npos) return std::string(words);
  return std::string(one ? words.substr(0, bar) : words.substr(bar + 1));
}

/// The millimetres that a size is sold by, beside its inches.
std::string soldBy(const base::Arg& arg, Units units, const QuantityStyle& style) {
  const auto* size = std::get_if<base::Quantity>(&arg.value);
  if (size == nullptr || size->unit != base::Unit::millimetre || units == Units::metric) return {};
  return " (" + print(*size, Units::metric, style) + ")";
}

/// `inside` is what stands between the braces.
std::string filled(std::string_view inside, const base::Message& message, Units units) {
  if (inside.starts_with('=')) return ownFigure(inside.substr(1), units);
  if (const auto mark = inside.find('?'); mark != std::string_view::npos) {
    return plural(inside.substr(mark + 1), message.find(std::string(inside.substr(0, mark))));
  }
  const auto colon = inside.find(':');
  const base::Arg* arg = message.find(std::string(inside.substr(0, colon)));
  if (arg == nullptr) return "{" + std::string(inside) + "}";
  const Format format =
      formatOf(colon == std::string_view::npos ? std::string_view{} : inside.substr(colon + 1));
  std::string text = std::visit(Speaker{units, format.style}, arg->value);
  if (format.sold) text += soldBy(*arg, units, format.style);
  return format.capital ? capitalised(text) : text;
}

}  // namespace

std::string fill(std::string_view sentence, const base::Message& message, Units units) {
  std::string out;
  while (!sentence.empty()) {
    const auto open = sentence.find('{');
    out += sentence.substr(0, open);
    if (open == std::string_view::npos) break;
    const auto close = sentence.find('}', open);
    if (close == std::string_view::npos) {
      out += sentence.substr(open);
      break;
    }
    const std::string text = filled(sentence.substr(open + 1, close - open - 1), message, units);
    out += text;
    sentence.remove_prefix(close + 1);
    // "... 12 in. w.c." ends a sentence by itself.
    if (text.ends_with('.') && sentence.starts_with('.')) sentence.remove_prefix(1);
  }
  return out;
}

bool hasSentence(const std::string& id) { return id == "text" || english(id) != nullptr; }

std::string say(const base::Message& message, Units units) {
  if (message.id.empty()) return {};
  if (message.id == "text") return filled("text", message, units);
  const char* sentence = english(message.id);
  if (sentence == nullptr) return "[" + message.id + "]";
  const std::string translated = QCoreApplication::translate("Sentences", sentence).toStdString();
  return fill(translated, message, units);
}

}  // namespace sumpwright::words
