#include <gtest/gtest.h>

#include <limits>

#include "words/Words.h"

namespace sumpwright::words {
namespace {

using base::Quantity;
using base::Unit;

std::string metric(double value, Unit unit = Unit::metre, QuantityStyle style = {}) {
  return print(Quantity{value, unit}, Units::metric, style);
}

std::string imperial(double value, Unit unit = Unit::metre, QuantityStyle style = {}) {
  return print(Quantity{value, unit}, Units::imperial, style);
}

TEST(Quantities, MetresHaveTwoDecimals) {
  EXPECT_EQ(metric(1.12), "1.12 m");
  EXPECT_EQ(metric(12.0), "12.00 m");
  EXPECT_EQ(metric(0.005), "0.01 m");
  EXPECT_EQ(metric(1234.5), "1234.50 m");
}

TEST(Quantities, MinusIsATrueMinusAndNothingHasNoSign) {
  EXPECT_EQ(metric(-0.28), "\u22120.28 m");
  EXPECT_EQ(metric(-0.001), "0.00 m");
  EXPECT_EQ(metric(-0.001, Unit::metre, {.has_sign = true}), "0.00 m");
  EXPECT_EQ(metric(0.47, Unit::metre, {.has_sign = true}), "+0.47 m");
}

TEST(Quantities, DownNeverReadsAsEnough) {
  const QuantityStyle down{.down = true};
  EXPECT_EQ(metric(1.4999), "1.50 m");
  EXPECT_EQ(metric(1.4999, Unit::metre, down), "1.49 m");
  EXPECT_EQ(metric(1.5, Unit::metre, down), "1.50 m");
  EXPECT_EQ(metric(0.1 + 0.2, Unit::metre, down), "0.30 m");
  EXPECT_EQ(metric(-0.001, Unit::metre, down), "\u22120.01 m");
  EXPECT_EQ(imperial(0.3047, Unit::metre, down), "11 7/8\"");
}

TEST(Quantities, BareDropsTheUnitAndDecimalsCanBeAsked) {
  EXPECT_EQ(metric(1.126, Unit::metre, {.bare = true}), "1.13");
  EXPECT_EQ(metric(1.126, Unit::metre, {.decimals = 1, .bare = true}), "1.1");
  EXPECT_EQ(metric(87.6, Unit::none, {.decimals = 0}), "88");
}

TEST(Quantities, OtherUnitsMetric) {
  EXPECT_EQ(metric(14.2, Unit::millimetre), "14 mm");
  EXPECT_EQ(metric(12.44, Unit::squareMetre), "12.4 m\u00B2");
  EXPECT_EQ(metric(12.5, Unit::degree), "12.5\u00B0");
  EXPECT_EQ(metric(350.0, Unit::degree), "350\u00B0");
  EXPECT_EQ(metric(66.0, Unit::percent), "66 %");
  EXPECT_EQ(metric(1.5, Unit::none), "1.5");
  EXPECT_EQ(metric(100.0, Unit::none), "100");
  EXPECT_EQ(metric(0.0, Unit::none), "0");
  EXPECT_EQ(metric(1e-7, Unit::none), "1e-7");
  EXPECT_EQ(metric(-2.5e-12, Unit::none), "\u22122.5e-12");
  EXPECT_EQ(metric(0.0012, Unit::none), "0.0012");
  EXPECT_EQ(metric(0.004, Unit::none, {.decimals = 2}), "0.00") << "as asked for";
}

// 1 in = 25.4 mm exactly (NIST SP 811, 2008, appendix B.6).
TEST(Quantities, FeetAndInchesToAnEighth) {
  EXPECT_EQ(imperial(0.3048), "1' 0\"");
  EXPECT_EQ(imperial(1.12), "3' 8 1/8\"");
  EXPECT_EQ(imperial(44.25 * 0.0254), "3' 8 1/4\"");
  EXPECT_EQ(imperial(0.0254), "1\"");
  EXPECT_EQ(imperial(0.0254 / 8), "1/8\"");
  EXPECT_EQ(imperial(0.0), "0\"");
  EXPECT_EQ(imperial(12.625 * 0.0254), "1' 0 5/8\"");
  EXPECT_EQ(imperial(-0.28), "\u221211\"");
  EXPECT_EQ(imperial(0.28, Unit::metre, {.has_sign = true}), "+11\"");
}

TEST(Quantities, RoundingUpCarriesIntoFeet) {
  EXPECT_EQ(imperial(11.96 * 0.0254), "1' 0\"");
  EXPECT_EQ(imperial(23.99 * 0.0254), "2' 0\"");
}

TEST(Quantities, OtherUnitsImperial) {
  EXPECT_EQ(imperial(127.0, Unit::millimetre), "5\"");
  EXPECT_EQ(imperial(110.0, Unit::millimetre), "4 3/8\"");
  EXPECT_EQ(imperial(600.0, Unit::millimetre), "23 5/8\"");
  EXPECT_EQ(imperial(10.0, Unit::squareMetre), "108 ft\u00B2");
  EXPECT_EQ(imperial(12.5, Unit::degree), "12.5\u00B0");
}

TEST(Quantities, AirMetric) {
  EXPECT_EQ(metric(5.0, Unit::pascal), "5.0 Pa");
  EXPECT_EQ(metric(-2.96, Unit::pascal), "\u22123.0 Pa");
  EXPECT_EQ(metric(118.9, Unit::cubicMetrePerHour), "119 m\u00B3/h");
  EXPECT_EQ(metric(8.128, Unit::metrePerSecond), "8.1 m/s");
  EXPECT_EQ(metric(45.4, Unit::watt), "45 W");
  EXPECT_EQ(metric(394.2, Unit::kilowattHour), "394 kWh");
}

// 0.1 in. w.c. = 24.9 Pa; 70 cfm = 119 m3/h; 1600 ft/min = 8.128 m/s: from the foot and the
// conventional inch of water.
TEST(Quantities, AirImperial) {
  EXPECT_EQ(imperial(24.90889, Unit::pascal), "0.100 in. w.c.");
  EXPECT_EQ(imperial(5.0, Unit::pascal, {.decimals = 0}), "0.020 in. w.c.");
  EXPECT_EQ(imperial(118.931, Unit::cubicMetrePerHour), "70 cfm");
  EXPECT_EQ(imperial(8.128, Unit::metrePerSecond), "1600 ft/min");
  EXPECT_EQ(imperial(45.0, Unit::watt), "45 W");
}

TEST(Quantities, NoNumberIsUnknown) {
  EXPECT_EQ(metric(std::numeric_limits<double>::quiet_NaN()), "unknown");
  EXPECT_EQ(imperial(std::numeric_limits<double>::infinity()), "unknown");
  EXPECT_EQ(metric(1e300), "unknown");
}

}  // namespace
}  // namespace sumpwright::words
