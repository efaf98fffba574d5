#include "tools/ThingLine.h"

#include <algorithm>
#include <array>
#include <charconv>

namespace sumpwright::tools {

namespace {

using plan::OpeningKind;
using plan::ServiceKind;

/// What a word stands for and how many lengths it takes after it.
struct Word {
  std::string_view name;
  LineKind kind;
  OpeningKind opening;
  ServiceKind service;
};

constexpr Word anOpening(std::string_view name, OpeningKind kind) {
  return {name, LineKind::opening, kind, ServiceKind::water};
}
constexpr Word aService(std::string_view name, ServiceKind kind) {
  return {name, LineKind::service, OpeningKind::window, kind};
}

constexpr auto kWords = std::to_array<Word>({
    anOpening("w", OpeningKind::window),
    anOpening("window", OpeningKind::window),
    anOpening("d", OpeningKind::door),
    anOpening("door", OpeningKind::door),
    anOpening("g", OpeningKind::glazed_door),
    anOpening("glazed", OpeningKind::glazed_door),
    anOpening("gd", OpeningKind::garage_door),
    anOpening("garage", OpeningKind::garage_door),
    anOpening("v", OpeningKind::air_vent),
    anOpening("vent", OpeningKind::air_vent),
    anOpening("fl", OpeningKind::flue_terminal),
    anOpening("flue", OpeningKind::flue_terminal),
    aService("gas", ServiceKind::gas),
    aService("el", ServiceKind::electricity),
    aService("electricity", ServiceKind::electricity),
    aService("wa", ServiceKind::water),
    aService("water", ServiceKind::water),
    aService("tel", ServiceKind::telecom),
    aService("telecom", ServiceKind::telecom),
    aService("oil", ServiceKind::oil),
    aService("dr", ServiceKind::drain),
    aService("drain", ServiceKind::drain),
    aService("ws", ServiceKind::waste),
    aService("waste", ServiceKind::waste),
    {"rad", LineKind::radiator, OpeningKind::window, ServiceKind::water},
    {"radiator", LineKind::radiator, OpeningKind::window, ServiceKind::water},
    {"iw", LineKind::inner_wall, OpeningKind::window, ServiceKind::water},
    {"inner", LineKind::inner_wall, OpeningKind::window, ServiceKind::water},
});

constexpr std::size_t kMostTimes = 50;  // own figure: a slip of the finger, not a terrace

std::vector<std::string> tokensOf(std::string_view text) {
  std::vector<std::string> tokens;
  std::string token;
  for (const char c : text) {
    if (c == ' ' || c == '\t') {
      if (!token.empty()) tokens.push_back(std::move(token));
      token.clear();
    } else {
      token += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
  }
  if (!token.empty()) tokens.push_back(std::move(token));
  return tokens;
}

bool isWord(std::string_view word) {
  return std::any_of(kWords.begin(), kWords.end(),
                     [&](const Word& known) { return known.name == word; });
}

/// "w1.20" as "w" and "1.20".
void splitWord(std::vector<std::string>& tokens) {
  std::string& first = tokens.front();
  const std::size_t figure = first.find_first_of("0123456789.");
  if (figure == 0 || figure == std::string::npos) return;
  std::string rest = first.substr(figure);
  first.resize(
      figure);  // "wr1.20": the r belongs to the figure, unless the word ends in one ("door3.40").
  const bool right = first.size() > 1 && first.back() == 'r' && !isWord(first);
  if (right) {
    first.pop_back();
    rest.insert(rest.begin(), 'r');
  }
  tokens.insert(tokens.begin() + 1, std::move(rest));
}

/// "t4" in front; 0: no such count.
std::size_t timesIn(const std::string& token) {
  if (token.size() < 2 || token[0] != 't') return 0;
  std::size_t times = 0;
  const auto [end, error] = std::from_chars(token.data() + 1, token.data() + token.size(), times);
  return error == std::errc{} && end == token.data() + token.size() ? times : 0;
}

struct Counts {
  std::size_t least;
  std::size_t most;
};

Counts lengthsOf(const ThingLine& line) {
  switch (line.kind) {
    case LineKind::opening:
      return {2, 4};
    case LineKind::service:
      return {1, 2};
    case LineKind::radiator:
      return {2, 2};
    case LineKind::inner_wall:
      return {1, 2};
  }
  return {0, 0};
}

LineFault readLengths(const std::vector<std::string>& tokens, std::size_t from, BareUnit bare,
                      ThingLine& line) {
  std::vector<double> lengths;
  for (std::size_t i = from; i < tokens.size(); ++i) {
    std::string_view token = tokens[i];
    if (i == from && token.size() > 1 && token[0] == 'r') {
      line.from_right = true;
      token.remove_prefix(1);
    }
    const LengthReading reading = readLength(token, bare);
    if (reading.fault == LengthFault::ambiguous) return LineFault::ambiguous;
    if (!reading.ok()) return LineFault::not_a_length;
    lengths.push_back(reading.metres.front());
  }
  const Counts counts = lengthsOf(line);
  if (lengths.size() < counts.least) return LineFault::few;
  if (lengths.size() > counts.most) return LineFault::many;
  line.offset_m = lengths[0];
  if (lengths.size() > 1) line.width_m = lengths[1];
  if (lengths.size() > 2) line.sill_m = lengths[2];
  if (lengths.size() > 3) line.head_m = lengths[3];
  return LineFault::none;
}

}  // namespace

ThingLine readThingLine(std::string_view text, BareUnit bare) {
  ThingLine line;
  std::vector<std::string> tokens = tokensOf(text);
  if (tokens.empty()) return line;
  if (const std::size_t times = timesIn(tokens.front()); times > 0) {
    line.times = static_cast<int>(std::min(times, kMostTimes + 1));
    tokens.erase(tokens.begin());
    if (tokens.empty()) return line;
  }
  splitWord(tokens);
  line.word = tokens.front();
  const auto word = std::find_if(kWords.begin(), kWords.end(),
                                 [&](const Word& w) { return w.name == line.word; });
  if (word == kWords.end()) {
    line.fault = LineFault::unknown_word;
    return line;
  }
  line.kind = word->kind;
  line.opening = word->opening;
  line.service = word->service;
  const bool repeats = line.times > 1;
  if (repeats && (line.kind != LineKind::opening || line.times > static_cast<int>(kMostTimes))) {
    line.fault = LineFault::no_repeat;
    return line;
  }
  line.fault = readLengths(tokens, 1, bare, line);
  return line;
}

}  // namespace sumpwright::tools
