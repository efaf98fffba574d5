#include <array>
#include <charconv>
#include <cmath>
#include <string>

#include "base/Contract.h"
#include "base/CustomaryUnits.h"
#include "base/Rounding.h"
#include "words/Words.h"

namespace sumpwright::words {

namespace {

constexpr const char* kMinus = "\u2212";
constexpr double kInch_m = base::kInch_m;
constexpr double kFoot2_m2 = base::kFoot_m * base::kFoot_m;
constexpr double kFootPerMinute_m_s = base::kFoot_m / 60.0;

std::string sign(bool negative, bool always) {
  if (negative) return kMinus;
  return always ? "+" : "";
}

double rounded(double value, double steps, bool down) {
  return down ? base::roundedDown(value * steps) : std::round(value * steps);
}

/// |steps| decimal steps with `decimals` digits after the point, whatever the locale.
std::string digits(double steps, int decimals) {
  std::array<char, 64> text{};
  const double value = std::abs(steps) / std::pow(10.0, decimals);
  const auto [end, error] = std::to_chars(text.data(), text.data() + text.size(), value,
                                          std::chars_format::fixed, decimals);
  SUMPWRIGHT_REQUIRE(error == std::errc{});  // at most 10 digits before the point, 9 after
  return {text.data(), end};
}

std::string decimal(double value, int decimals, const QuantityStyle& style) {
  const double steps = rounded(value, std::pow(10.0, decimals), style.down);
  return sign(steps < 0.0, style.has_sign && steps != 0.0) + digits(steps, decimals);
}

std::string withoutTrailingZeros(std::string text) {
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

std::string eighth(int eighths) {
  constexpr std::array<const char*, 8> kNames{"", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"};
  return kNames.at(static_cast<std::size_t>(eighths));
}

std::string inches(std::int64_t eighths, bool after_feet) {
  const std::string part = eighth(static_cast<int>(eighths % 8));
  const std::string whole = std::to_string(eighths / 8);
  if (part.empty()) return whole + "\"";
  return (eighths < 8 && !after_feet ? part : whole + " " + part) + "\"";
}

std::string feetAndInches(double value_m, bool with_feet, const QuantityStyle& style) {
  const double steps = rounded(value_m / kInch_m, 8.0, style.down);
  const auto eighths = static_cast<std::int64_t>(std::abs(steps));
  std::string text = sign(steps < 0.0, style.has_sign && steps != 0.0);
  constexpr std::int64_t kFoot = 96;  // eighths
  if (!with_feet || eighths < kFoot) return text + inches(eighths, false);
  return text + std::to_string(eighths / kFoot) + "' " + inches(eighths % kFoot, true);
}

std::string metric(double value, int usual_decimals, const char* unit, const QuantityStyle& style) {
  const int decimals = style.decimals >= 0 ? style.decimals : usual_decimals;
  return decimal(value, decimals, style) + (style.bare ? "" : unit);
}

/// At most `most` decimals, as few as it takes, unless the style asks for a number of them.
std::string shortest(double value, int most, const char* unit, const QuantityStyle& style) {
  if (style.decimals >= 0) return metric(value, style.decimals, unit, style);
  return withoutTrailingZeros(decimal(value, most, style)) + (style.bare ? "" : unit);
}

/// A figure that two decimals would make nothing of.
bool isTiny(double value) { return value != 0.0 && std::abs(value) < 0.005; }

/// Three figures: "0.0012", "1.5e-7".
std::string powerOfTen(double value) {
  std::array<char, 64> text{};
  const bool fixed = std::abs(value) >= 1e-3;
  const auto [end, error] = std::to_chars(
      text.data(), text.data() + text.size(), std::abs(value),
      fixed ? std::chars_format::general : std::chars_format::scientific, fixed ? 3 : 2);
  SUMPWRIGHT_REQUIRE(error == std::errc{});
  std::string out = sign(value < 0.0, false) + std::string(text.data(), end);
  const auto e = out.find('e');
  if (e == std::string::npos) return out;
  std::string digits_part = withoutTrailingZeros(out.substr(0, e));
  const auto first = out.find_first_not_of("-0", e + 1);
  return digits_part + "e-" + out.substr(first);
}

bool printable(double value) {
  // Anything past a million kilometres is not a length of this trade but a broken number.
  constexpr double kMost = 1e9;
  return std::isfinite(value) && std::abs(value) <= kMost;
}

std::string imperial(const base::Quantity& quantity, const QuantityStyle& style) {
  QuantityStyle usual = style;  // decimals are asked for by what suits the metric unit
  usual.decimals = -1;
  switch (quantity.unit) {
    case base::Unit::metre:
      return feetAndInches(quantity.value, true, style);
    case base::Unit::millimetre:
      return feetAndInches(quantity.value / 1000.0, false, style);
    case base::Unit::pascal:
      return metric(quantity.value / base::kInchOfWater_pa, 3, " in. w.c.", usual);
    case base::Unit::cubicMetrePerHour:
      return metric(quantity.value / base::kCubicFootPerMinute_m3_h, 0, " cfm", usual);
    case base::Unit::metrePerSecond:
      return metric(quantity.value / kFootPerMinute_m_s, 0, " ft/min", usual);
    default:
      return metric(quantity.value / kFoot2_m2, 0, " ft\u00B2", style);
  }
}

}  // namespace

std::string print(const base::Quantity& quantity, Units units, const QuantityStyle& style) {
  if (!printable(quantity.value)) return say(base::Message("quantity.unknown"), units);
  switch (quantity.unit) {
    case base::Unit::degree:
      return shortest(quantity.value, 1, "\u00B0", style);
    case base::Unit::percent:
      return shortest(quantity.value, 1, " %", style);
    case base::Unit::none:
      if (style.decimals < 0 && isTiny(quantity.value)) return powerOfTen(quantity.value);
      return shortest(quantity.value, 2, "", style);
    case base::Unit::watt:
      return metric(quantity.value, 0, " W", style);
    case base::Unit::kilowattHour:
      return metric(quantity.value, 0, " kWh", style);
    default:
      break;
  }
  if (units == Units::imperial) return imperial(quantity, style);
  switch (quantity.unit) {
    case base::Unit::metre:
      return metric(quantity.value, 2, " m", style);
    case base::Unit::millimetre:
      return metric(quantity.value, 0, " mm", style);
    case base::Unit::pascal:
      return metric(quantity.value, 1, " Pa", style);
    case base::Unit::cubicMetrePerHour:
      return metric(quantity.value, 0, " m\u00B3/h", style);
    case base::Unit::metrePerSecond:
      return metric(quantity.value, 1, " m/s", style);
    default:
      return metric(quantity.value, 1, " m\u00B2", style);
  }
}

}  // namespace sumpwright::words
