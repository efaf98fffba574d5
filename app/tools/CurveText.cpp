#include "tools/CurveText.h"

#include <charconv>
#include <cmath>
#include <optional>
#include <string_view>

namespace sumpwright::tools {

namespace {

constexpr double kSecondsAnHour = 3600.0;

std::vector<std::string> split(std::string_view text, std::string_view marks) {
  std::vector<std::string> parts(1);
  for (const char c : text) {
    if (marks.find(c) != std::string_view::npos) {
      parts.emplace_back();
    } else {
      parts.back() += c;
    }
  }
  std::erase_if(parts, [](const std::string& part) {
    return part.find_first_not_of(" \t\r") == std::string::npos;
  });
  return parts;
}

std::optional<double> wattsIn(std::string text) {
  for (char& c : text) {
    if (c == ',') c = '.';
  }
  if (!text.empty() && (text.back() == 'W' || text.back() == 'w')) text.pop_back();
  double value = 0.0;
  const char* end = text.data() + text.size();
  const auto [stop, error] = std::from_chars(text.data(), end, value);
  if (error != std::errc{} || stop != end || !std::isfinite(value)) return std::nullopt;
  return value;
}

std::optional<plan::FanPickPoint> curvePointOf(const std::vector<std::string>& figures,
                                               AirUnits air) {
  if (figures.size() < 2 || figures.size() > 3) return std::nullopt;
  const auto flow = readFlow_m3_h(figures[0], air);
  const auto pressure = readPressure_pa(figures[1], air);
  if (!flow || !pressure) return std::nullopt;
  plan::FanPickPoint point{*flow / kSecondsAnHour, *pressure, {}};
  if (figures.size() < 3) return point;
  point.power_w = wattsIn(figures[2]);
  return point.power_w ? std::optional(point) : std::nullopt;
}

/// A comma is taken for a dot before it is taken to part figures.
std::optional<plan::FanPickPoint> readCurvePoint(const std::string& text, AirUnits air) {
  if (const auto point = curvePointOf(split(text, " \t\r:"), air)) return point;
  return curvePointOf(split(text, " \t\r:,"), air);
}

CurveReading readParts(const std::vector<std::string>& parts, AirUnits air) {
  CurveReading reading;
  for (const std::string& part : parts) {
    const auto point = readCurvePoint(part, air);
    if (!point) {
      const auto first = part.find_first_not_of(" \t\r");
      reading.unread = part.substr(first, part.find_last_not_of(" \t\r") - first + 1);
      return reading;
    }
    reading.points.push_back(*point);
  }
  return reading;
}

}  // namespace

CurveReading readCurve(const std::string& text, AirUnits air) {
  if (text.find_first_of(";\n") != std::string::npos) return readParts(split(text, ";\n"), air);
  return readParts(split(text, ","), air);
}

}  // namespace sumpwright::tools
