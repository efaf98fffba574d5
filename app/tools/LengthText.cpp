#include "tools/LengthText.h"

#include <charconv>
#include <optional>
#include <string>

namespace sumpwright::tools {

namespace {

constexpr double kInch_m = 0.0254;  // the international inch, by definition (from memory)
constexpr double kFoot_m = 12.0 * kInch_m;

bool isDigit(char c) { return c >= '0' && c <= '9'; }

/// Typographic marks as plain ones, lower case, no-break spaces as spaces: one alphabet to read.
std::string plain(std::string_view text) {
  struct Pair {
    std::string_view from, to;
  };
  static constexpr Pair kPairs[] = {{"\u2032", "'"},  {"\u2019", "'"}, {"\u2033", "\""},
                                    {"\u201D", "\""}, {"\u00A0", " "}, {"\u202F", " "},
                                    {"''", "\""}};
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    bool replaced = false;
    for (const Pair& pair : kPairs) {
      if (text.substr(i, pair.from.size()) == pair.from) {
        out += pair.to;
        i += pair.from.size();
        replaced = true;
        break;
      }
    }
    if (replaced) continue;
    const char c = text[i++];
    out += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  return out;
}

/// A number may have two readings; `thousands` is the other one.
struct Number {
  double value = 0.0;
  std::optional<double> thousands;
};

std::optional<double> asDouble(const std::string& digits) {
  double value = 0.0;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (error != std::errc{} || end != digits.data() + digits.size()) return std::nullopt;
  return value;
}

std::string without(std::string text, char mark) {
  std::erase(text, mark);
  return text;
}

/// Groups of three after each thousands mark, the first of one to three digits.
bool wellGrouped(std::string_view whole, char mark) {
  std::size_t first = whole.find(mark);
  if (first == 0 || first > 3) return false;
  for (std::size_t at = first; at != std::string_view::npos;) {
    const std::size_t next = whole.find(mark, at + 1);
    const std::size_t group = (next == std::string_view::npos ? whole.size() : next) - at - 1;
    if (group != 3) return false;
    at = next;
  }
  return true;
}

/// Digits with dots and commas.
std::optional<Number> readNumber(const std::string& token) {
  const std::size_t dot = token.rfind('.');
  const std::size_t comma = token.rfind(',');
  if (token.empty() || token.front() == ',' || token.back() == ',') return std::nullopt;
  if (comma == std::string::npos) {  // from_chars refuses a second dot by itself
    if (const auto value = asDouble(token)) return Number{*value, {}};
    return std::nullopt;
  }
  if (dot != std::string::npos) {  // the later mark is the decimal one
    const char group = dot > comma ? ',' : '.';
    std::string whole = token.substr(0, std::max(dot, comma));
    const std::string part = token.substr(std::max(dot, comma) + 1);
    if (!wellGrouped(whole, group) || part.find_first_of(".,") != std::string::npos) {
      return std::nullopt;
    }
    if (const auto value = asDouble(without(whole, group) + "." + part)) return Number{*value, {}};
    return std::nullopt;
  }
  if (token.find(',') != comma) {  // several commas can only be thousands
    if (!wellGrouped(token, ',')) return std::nullopt;
    if (const auto value = asDouble(without(token, ','))) return Number{*value, {}};
    return std::nullopt;
  }
  std::string decimal = token;
  decimal[comma] = '.';
  const auto value = asDouble(decimal);
  if (!value) return std::nullopt;
  Number number{*value, {}};
  const bool leading_zero = token.front() == '0';
  if (wellGrouped(token, ',') && !leading_zero) number.thousands = asDouble(without(token, ','));
  return number;
}

struct Scanner {
  std::string text;
  std::size_t at = 0;

  void skipSpace() {
    while (at < text.size() && (text[at] == ' ' || text[at] == '\t')) ++at;
  }
  bool done() {
    skipSpace();
    return at >= text.size();
  }
  std::optional<Number> number() {
    skipSpace();
    const std::size_t from = at;
    while (at < text.size() && (isDigit(text[at]) || text[at] == '.' || text[at] == ',')) ++at;
    return readNumber(text.substr(from, at - from));
  }
  std::string unit() {
    skipSpace();
    if (at < text.size() && (text[at] == '\'' || text[at] == '"'))
      return std::string(1, text[at++]);
    const std::size_t from = at;
    while (at < text.size() && text[at] >= 'a' && text[at] <= 'z') ++at;
    return text.substr(from, at - from);
  }
  bool take(char c) {
    skipSpace();
    if (at >= text.size() || text[at] != c) return false;
    ++at;
    return true;
  }
};

bool isFoot(const std::string& unit) {
  return unit == "'" || unit == "ft" || unit == "feet" || unit == "foot";
}
bool isInch(const std::string& unit) {
  return unit == "\"" || unit == "in" || unit == "inch" || unit == "inches";
}

std::optional<double> metric(const std::string& unit) {
  if (unit == "m") return 1.0;
  if (unit == "cm") return 0.01;
  if (unit == "mm") return 0.001;
  return std::nullopt;
}

LengthReading refused() { return {LengthFault::not_a_length, {}}; }
LengthReading understood(double metres) { return {LengthFault::none, {metres}}; }

/// "8", "8 1/2", "5/8" inches, with or without the inch mark when feet came first.
std::optional<double> inches(Scanner& scan, bool mark_needed) {
  auto whole = scan.number();
  if (!whole || whole->thousands) return std::nullopt;
  double value = whole->value;
  if (scan.take('/')) {
    const auto below = scan.number();
    if (!below || below->value <= 0.0) return std::nullopt;
    value /= below->value;
  } else {
    const std::size_t mark = scan.at;
    if (const auto above = scan.number(); above && scan.take('/')) {
      const auto below = scan.number();
      if (!below || below->value <= 0.0) return std::nullopt;
      value += above->value / below->value;
    } else {
      scan.at = mark;
    }
  }
  const std::string unit = scan.unit();
  const bool marked = isInch(unit);
  if (!scan.done() || (!marked && (mark_needed || !unit.empty()))) return std::nullopt;
  return value;
}

}  // namespace

LengthReading readLength(std::string_view text, BareUnit bare) {
  Scanner scan{plain(text)};
  if (scan.done()) return {LengthFault::empty, {}};
  const auto first = scan.number();
  if (!first) return refused();
  const std::string unit = scan.unit();

  if (isFoot(unit)) {
    if (first->thousands)
      return {LengthFault::ambiguous, {first->value * kFoot_m, *first->thousands * kFoot_m}};
    if (scan.done()) return understood(first->value * kFoot_m);
    const auto rest = inches(scan, false);
    if (!rest || *rest >= 12.0) return refused();  // 5' 14" is a slip of the finger, not a length
    return understood(first->value * kFoot_m + *rest * kInch_m);
  }
  if (isInch(unit) || text.find('/') != std::string_view::npos) {
    scan.at = 0;
    const auto all = inches(scan, true);
    return all ? understood(*all * kInch_m) : refused();
  }

  const double bare_m = bare == BareUnit::metre ? 1.0 : kFoot_m;
  const auto factor = unit.empty() ? std::optional<double>(bare_m) : metric(unit);
  if (!factor || !scan.done()) return refused();
  if (first->thousands) {
    return {LengthFault::ambiguous, {first->value * *factor, *first->thousands * *factor}};
  }
  return understood(first->value * *factor);
}

}  // namespace sumpwright::tools
