#include "words/Words.h"

#include <QCoreApplication>
#include <QString>
#include <charconv>
#include <string_view>
#include <unordered_map>

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
};

void apply(std::string_view word, Format& format) {
  int decimals = 0;
  const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), decimals);
  if (error == std::errc{} && end == word.data() + word.size()) format.style.decimals = decimals;
  if (word == "signed") format.style.has_sign = true;
  if (word == "bare") format.style.bare = true;
  if (word == "down") format.style.down = true;
  if (word == "cap") format.capital = true;
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

/// `inside` is what stands between the braces.
std::string filled(std::string_view inside, const base::Message& message, Units units) {
  const auto colon = inside.find(':');
  const base::Arg* arg = message.find(std::string(inside.substr(0, colon)));
  if (arg == nullptr) return "{" + std::string(inside) + "}";
  const Format format =
      formatOf(colon == std::string_view::npos ? std::string_view{} : inside.substr(colon + 1));
  const std::string text = std::visit(Speaker{units, format.style}, arg->value);
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
    out += filled(sentence.substr(open + 1, close - open - 1), message, units);
    sentence.remove_prefix(close + 1);
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
