#include "siting/SuctionMaterial.h"

#include <array>
#include <cmath>

namespace sumpwright::siting {

namespace {

constexpr double kStone_m2 = 2e-8;
constexpr double kHardcore_m2 = 1e-10;
constexpr double kSand_m2 = 1e-12;

const char* nameOf(double permeability_m2) {
  if (permeability_m2 >= kStone_m2) return "suction.material.stone";
  if (permeability_m2 >= kHardcore_m2) return "suction.material.hardcore";
  if (permeability_m2 >= kSand_m2) return "suction.material.sand";
  return "suction.material.silt";
}

std::string raised(int power) {
  constexpr std::array<const char*, 10> kRaised{"\u2070", "\u00B9", "\u00B2", "\u00B3", "\u2074",
                                                "\u2075", "\u2076", "\u2077", "\u2078", "\u2079"};
  std::string text = power < 0 ? "\u207B" : "";
  for (const char digit : std::to_string(std::abs(power))) {
    text += kRaised.at(static_cast<std::size_t>(digit - '0'));
  }
  return text;
}

}  // namespace

base::Message materialOf(double low_m2, double high_m2) {
  base::Message low(nameOf(low_m2));
  constexpr double kUpTo = 0.999;  // an end that stands at the border is of what lies below it
  const base::Message high(nameOf(kUpTo * high_m2));
  if (low == high) return low;
  return {"suction.material.between", {base::phrase("low", low), base::phrase("high", high)}};
}

std::string inPowersOfTen(double value) {
  if (!(value > 0.0) || !std::isfinite(value)) return "0";
  int power = static_cast<int>(std::floor(std::log10(value)));
  auto figure = static_cast<int>(std::lround(value / std::pow(10.0, power)));
  if (figure == 10) {
    figure = 1;
    ++power;
  }
  return std::to_string(figure) + " \u00D7 10" + raised(power);
}

}  // namespace sumpwright::siting
