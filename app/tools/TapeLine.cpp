#include "tools/TapeLine.h"

#include <array>
#include <charconv>
#include <cmath>
#include <string>

namespace sumpwright::tools {

namespace {

constexpr double kQuarter_deg = 90.0;

std::string_view afterSpace(std::string_view text) {
  const std::size_t at = text.find_first_not_of(" \t");
  return at == std::string_view::npos ? std::string_view{} : text.substr(at);
}

bool isLetter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

/// The letters in front, lower case.
std::string leadingWord(std::string_view text) {
  std::string word;
  for (const char c : text) {
    if (!isLetter(c)) break;
    word += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  return word;
}

/// A plain number in front and what follows it; a decimal comma counts as a dot.
struct Leading {
  double value = 0.0;
  std::string_view rest;
};

std::optional<Leading> leadingNumber(std::string_view text) {
  const std::size_t size = std::min(text.find_first_not_of("0123456789.,"), text.size());
  std::string digits(text.substr(0, size));
  for (char& c : digits) c = c == ',' ? '.' : c;
  double value = 0.0;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (error != std::errc{} || end != digits.data() + digits.size()) return std::nullopt;
  return Leading{value, text.substr(size)};
}

/// What follows a mark of degrees; nothing where there is none.
std::optional<std::string_view> afterDegrees(std::string_view text) {
  text = afterSpace(text);
  for (const std::string_view mark : {"\u00B0", "\u00BA", "deg"}) {
    if (text.substr(0, mark.size()) == mark) return text.substr(mark.size());
  }
  return std::nullopt;
}

struct Aimed {
  Aim aim;
  std::string_view rest;
};

struct Named {
  std::string_view name;
  double degrees;
};

constexpr auto kCompass = std::to_array<Named>({{"n", 0.0},
                                                {"ne", 45.0},
                                                {"e", 90.0},
                                                {"se", 135.0},
                                                {"s", 180.0},
                                                {"sw", 225.0},
                                                {"w", 270.0},
                                                {"nw", 315.0}});
constexpr auto kArrows = std::to_array<Named>({{"\u2191", 0.0},
                                               {"\u2197", 45.0},
                                               {"\u2192", 90.0},
                                               {"\u2198", 135.0},
                                               {"\u2193", 180.0},
                                               {"\u2199", 225.0},
                                               {"\u2190", 270.0},
                                               {"\u2196", 315.0}});

/// "45 3.10", "45° 3.10", "45°": an angle, where what follows it is no part of a length.
std::optional<Leading> angleInFront(std::string_view text, BareUnit bare) {
  const auto number = leadingNumber(text);
  if (!number) return std::nullopt;
  if (const auto rest = afterDegrees(number->rest)) return Leading{number->value, *rest};
  if (readLength(text, bare).ok()) return std::nullopt;  // "4 1/2"" is one length
  if (number->rest.empty() || (number->rest[0] != ' ' && number->rest[0] != '\t')) {
    return std::nullopt;
  }
  const std::string_view rest = afterSpace(number->rest);
  if (rest.empty() || isLetter(rest[0])) return std::nullopt;
  return Leading{number->value, rest};
}

std::optional<Aimed> turned(AimKind side, std::string_view rest, BareUnit bare) {
  rest = afterSpace(rest);
  if (const auto angle = angleInFront(rest, bare))
    return Aimed{{side, angle->value, false}, angle->rest};
  return Aimed{{side, kQuarter_deg, true}, rest};
}

std::optional<Aimed> byWord(std::string_view text, BareUnit bare) {
  const std::string word = leadingWord(text);
  const std::string_view rest = text.substr(word.size());
  for (const Named& point : kCompass) {
    if (word == point.name) return Aimed{{AimKind::compass, point.degrees, true}, rest};
  }
  if (word == "l" || word == "left") return turned(AimKind::left, rest, bare);
  if (word == "r" || word == "right") return turned(AimKind::right, rest, bare);
  if (word != "b" && word != "bearing") return std::nullopt;
  const auto bearing = leadingNumber(afterSpace(rest));
  if (!bearing) return std::nullopt;
  return Aimed{{AimKind::compass, bearing->value, false},
               afterDegrees(bearing->rest).value_or(bearing->rest)};
}

std::optional<Aimed> aimInFront(std::string_view text, BareUnit bare) {
  for (const Named& arrow : kArrows) {
    if (text.substr(0, arrow.name.size()) == arrow.name) {
      return Aimed{{AimKind::sheet, arrow.degrees, true}, text.substr(arrow.name.size())};
    }
  }
  if (!text.empty() && isLetter(text[0])) return byWord(text, bare);
  if (const auto number = leadingNumber(text)) {
    if (const auto rest = afterDegrees(number->rest)) {
      return Aimed{{AimKind::compass, number->value, false}, *rest};
    }
  }
  return Aimed{{}, text};
}

double wrapped_deg(double degrees) {
  const double turn = std::fmod(std::fmod(degrees, 360.0) + 360.0, 360.0);
  return turn == 360.0 ? 0.0 : turn;
}

}  // namespace

TapeLine readTapeLine(std::string_view text, BareUnit bare) {
  const auto aimed = aimInFront(afterSpace(text), bare);
  if (!aimed) return {};
  return {aimed->aim, readLength(aimed->rest, bare)};
}

double sheetBearing(const Aim& aim, std::optional<double> before_deg, double north_deg) {
  switch (aim.kind) {
    case AimKind::none:
      return wrapped_deg(before_deg.value_or(kQuarter_deg));
    case AimKind::sheet:
      return wrapped_deg(aim.degrees);
    case AimKind::compass:
      return wrapped_deg(aim.degrees + north_deg);
    case AimKind::left:
      return wrapped_deg(before_deg.value_or(0.0) - aim.degrees);
    case AimKind::right:
      return wrapped_deg(before_deg.value_or(0.0) + aim.degrees);
  }
  return 0.0;
}

}  // namespace sumpwright::tools
