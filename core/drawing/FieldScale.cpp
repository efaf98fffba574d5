#include "drawing/FieldScale.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace sumpwright::drawing {
namespace {

constexpr double kStaleShare = 0.6;

constexpr std::array<unsigned, 9> kLightRamp{0xF4F0F4, 0xE0D2E4, 0xC6B2D4, 0xAA98C2, 0x8D7FAF,
                                             0x70689C, 0x535287, 0x373D72, 0x1C285C};
// Rises in lightness and in saturation alike: beside a dark paper a pale end would read as weak.
constexpr std::array<unsigned, 9> kDarkRamp{0x1B2237, 0x2C3150, 0x40416A, 0x575085, 0x72609F,
                                            0x8F6FB9, 0xAE7ED2, 0xD08CEA, 0xF39CFF};

Colour rampColour(unsigned hex) {
  return {static_cast<std::uint8_t>(hex >> 16U & 0xFFU),
          static_cast<std::uint8_t>(hex >> 8U & 0xFFU), static_cast<std::uint8_t>(hex & 0xFFU),
          255};
}

FieldScale scaleOf(FieldKind kind, const std::array<unsigned, 9>& ramp) {
  FieldScale scale;
  const bool suction = kind == FieldKind::suction;
  scale.levels = suction ? std::vector<double>{0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0}
                         : std::vector<double>{0.1, 1.0 / 3.0, 2.0 / 3.0, 0.9};
  for (std::size_t k = 0; k < ramp.size(); k += suction ? 1 : 2) {
    scale.colours.push_back(rampColour(ramp[k]));
  }
  return scale;
}

double linear(std::uint8_t part) {
  const double v = part / 255.0;
  return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
}

double contrastOf(const Colour& a, const Colour& b) {
  const double la = luminance(a);
  const double lb = luminance(b);
  return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

double leastContrast(const Colour& colour, const std::vector<Colour>& behind) {
  double least = 21.0;
  for (const Colour& one : behind) least = std::min(least, contrastOf(colour, one));
  return least;
}

}  // namespace

std::size_t FieldScale::classOf(double value) const {
  const auto above = std::upper_bound(levels.begin(), levels.end(), value);
  return static_cast<std::size_t>(std::distance(levels.begin(), above));
}

const FieldScale& fieldScale(FieldKind kind, ThemeName name) {
  static const FieldScale light_suction = scaleOf(FieldKind::suction, kLightRamp);
  static const FieldScale light_chance = scaleOf(FieldKind::chance, kLightRamp);
  static const FieldScale dark_suction = scaleOf(FieldKind::suction, kDarkRamp);
  static const FieldScale dark_chance = scaleOf(FieldKind::chance, kDarkRamp);
  if (name == ThemeName::dark) return kind == FieldKind::suction ? dark_suction : dark_chance;
  return kind == FieldKind::suction ? light_suction : light_chance;
}

Colour drained(const Colour& colour, const Colour& paper) {
  const double l = luminance(colour);
  const double grey = 255.0 * (l <= 0.0031308 ? 12.92 * l : 1.055 * std::pow(l, 1.0 / 2.4) - 0.055);
  const auto mixed = [&](std::uint8_t under) {
    return static_cast<std::uint8_t>(std::lround(kStaleShare * grey + (1.0 - kStaleShare) * under));
  };
  return {mixed(paper.r), mixed(paper.g), mixed(paper.b), 255};
}

Colour stepFrom(const FieldScale& scale, std::size_t own, int steps) {
  const int last = static_cast<int>(scale.colours.size()) - 1;
  return scale
      .colours[static_cast<std::size_t>(std::clamp(static_cast<int>(own) + steps, 0, last))];
}

double luminance(const Colour& c) {
  return 0.2126 * linear(c.r) + 0.7152 * linear(c.g) + 0.0722 * linear(c.b);
}

Colour moreReadable(const Colour& one, const Colour& other, const std::vector<Colour>& behind) {
  return leastContrast(one, behind) >= leastContrast(other, behind) ? one : other;
}

}  // namespace sumpwright::drawing
