#include "tools/AirText.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <span>

#include "base/CustomaryUnits.h"

namespace sumpwright::tools {

namespace {

/// A unit as it is typed, without blanks and dots, and what one of it is.
struct TypedUnit {
  std::string_view name;
  double worth;
};

constexpr double kLitrePerSecond_m3_h = 3.6;
constexpr double kMost = 1e9;  // own figure: past that it is no figure of this trade

constexpr auto kPressures = std::to_array<TypedUnit>({{"pa", 1.0},
                                                      {"kpa", 1000.0},
                                                      {"in", base::kInchOfWater_pa},
                                                      {"inwc", base::kInchOfWater_pa},
                                                      {"inwg", base::kInchOfWater_pa},
                                                      {"inh2o", base::kInchOfWater_pa},
                                                      {"\"", base::kInchOfWater_pa},
                                                      {"\"wc", base::kInchOfWater_pa},
                                                      {"\"wg", base::kInchOfWater_pa}});
constexpr auto kFlows = std::to_array<TypedUnit>({{"m3/h", 1.0},
                                                  {"m\u00B3/h", 1.0},
                                                  {"l/s", kLitrePerSecond_m3_h},
                                                  {"cfm", base::kCubicFootPerMinute_m3_h}});

bool isOfNumber(char c) { return (c >= '0' && c <= '9') || c == '.' || c == ','; }

std::string unitOf(std::string_view text) {
  std::string unit;
  for (const char c : text) {
    if (c == ' ' || c == '.') continue;
    unit += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  return unit;
}

std::optional<double> readFigure(std::string_view text) {
  std::string digits(text);
  std::replace(digits.begin(), digits.end(), ',', '.');
  double value = 0.0;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value,
                                            std::chars_format::fixed);
  if (error != std::errc{} || end != digits.data() + digits.size()) return std::nullopt;
  if (!std::isfinite(value) || value > kMost) return std::nullopt;
  return value;
}

std::optional<double> readWithUnit(std::string_view text, std::span<const TypedUnit> units,
                                   double bare) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  const auto* const end = std::find_if_not(text.begin(), text.end(), isOfNumber);
  const auto length = static_cast<std::size_t>(end - text.begin());
  const std::optional<double> figure = readFigure(text.substr(0, length));
  if (!figure) return std::nullopt;
  const std::string unit = unitOf(text.substr(length));
  if (unit.empty()) return *figure * bare;
  for (const TypedUnit& one : units) {
    if (one.name == unit) return *figure * one.worth;
  }
  return std::nullopt;
}

double pressureWorth(AirUnits units) {
  return units == AirUnits::customary ? base::kInchOfWater_pa : 1.0;
}

double flowWorth(AirUnits units) {
  return units == AirUnits::customary ? base::kCubicFootPerMinute_m3_h : 1.0;
}

std::string typedFigure(double value, int digits) {
  std::array<char, 64> text{};
  const auto [end, error] = std::to_chars(text.data(), text.data() + text.size(), value,
                                          std::chars_format::general, digits);
  if (error != std::errc{}) return {};
  std::string shown(text.data(), end);
  if (shown.find('e') == std::string::npos) return shown;
  // A figure that is typed back has no exponent.
  const auto [plain, bad] = std::to_chars(text.data(), text.data() + text.size(), value,
                                          std::chars_format::fixed, value < 1.0 ? 9 : 0);
  return bad == std::errc{} ? std::string(text.data(), plain) : std::string();
}

}  // namespace

std::optional<double> readPressure_pa(std::string_view text, AirUnits bare) {
  return readWithUnit(text, kPressures, pressureWorth(bare));
}

std::optional<double> readFlow_m3_h(std::string_view text, AirUnits bare) {
  return readWithUnit(text, kFlows, flowWorth(bare));
}

std::string typedPressure(double pa, AirUnits units, int digits) {
  return typedFigure(pa / pressureWorth(units), digits);
}

std::string typedFlow(double m3_h, AirUnits units, int digits) {
  return typedFigure(m3_h / flowWorth(units), digits);
}

const char* pressureUnit(AirUnits units) {
  return units == AirUnits::customary ? "in. w.c." : "Pa";
}

const char* flowUnit(AirUnits units) { return units == AirUnits::customary ? "cfm" : "m\u00B3/h"; }

}  // namespace sumpwright::tools
