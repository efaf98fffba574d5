// Suction and flow as they are typed and shown.

#include <gtest/gtest.h>

#include "support/Seed.h"
#include "tools/AirText.h"

namespace sumpwright::tools {
namespace {

constexpr AirUnits kBoth[] = {AirUnits::metric, AirUnits::customary};

TEST(AirText, AFigureAloneIsInTheUnitsOnDisplay) {
  EXPECT_DOUBLE_EQ(readPressure_pa("5", AirUnits::metric).value(), 5.0);
  // 249.0889 Pa: conventional inch of water, NIST SP 811 (2008), appendix B.8 (from memory).
  EXPECT_NEAR(readPressure_pa(" 0,02 ", AirUnits::customary).value(), 0.02 * 249.0889, 1e-12);
  EXPECT_DOUBLE_EQ(readFlow_m3_h("120", AirUnits::metric).value(), 120.0);
  // One cubic foot a minute: 0.3048^3 x 60 m3/h (derived).
  EXPECT_NEAR(readFlow_m3_h("70", AirUnits::customary).value(), 70 * 1.699010796, 1e-6);
}

TEST(AirText, AFigureWithItsUnitMeansWhatItSays) {
  for (const AirUnits units : kBoth) {
    EXPECT_DOUBLE_EQ(readPressure_pa("5 Pa", units).value(), 5.0);
    EXPECT_DOUBLE_EQ(readPressure_pa("0.4kPa", units).value(), 400.0);
    for (const char* inch : {"1 in. w.c.", "1\"", "1 in", "1 inH2O", "1\" w.g.", "1 IN WC"}) {
      EXPECT_NEAR(readPressure_pa(inch, units).value_or(0), 249.0889, 1e-9) << inch;
    }
    for (const char* flow : {"36 m3/h", "36 m\u00B3/h", "10 l/s", "10 L/s"}) {
      EXPECT_DOUBLE_EQ(readFlow_m3_h(flow, units).value_or(0), 36.0) << flow;
    }
    EXPECT_NEAR(readFlow_m3_h("70cfm", units).value(), 118.93, 0.01);
  }
}

TEST(AirText, WhatIsNoFigureIsNone) {
  for (const char* text : {"", " ", "Pa", "-5", "+5", "5 m", "5 cfm", "1.2.3", "1,2,3", "5e3",
                           "nan", "inf", "99999999999", "5 Pa Pa", ".", ","}) {
    EXPECT_FALSE(readPressure_pa(text, AirUnits::metric)) << text;
  }
  EXPECT_FALSE(readFlow_m3_h("5 Pa", AirUnits::metric));
}

TEST(AirText, WhatIsShownReadsAsItself) {
  support::Random random(support::baseSeed());
  for (int i = 0; i < 500; ++i) {
    const double value = random.uniform(0.05, 2000.0);
    for (const AirUnits units : kBoth) {
      const std::string pressure = typedPressure(value, units, 6);
      EXPECT_NEAR(readPressure_pa(pressure, units).value_or(-1), value, 2e-5 * value) << pressure;
      const std::string flow = typedFlow(value, units, 6);
      EXPECT_NEAR(readFlow_m3_h(flow, units).value_or(-1), value, 2e-5 * value) << flow;
    }
  }
  EXPECT_EQ(typedPressure(5.0, AirUnits::metric), "5");
  EXPECT_EQ(typedPressure(0.02 * 249.0889, AirUnits::customary), "0.02");
  EXPECT_EQ(typedPressure(3.456, AirUnits::metric), "3.46");
  EXPECT_EQ(typedFlow(1234.7, AirUnits::metric), "1235");
}

}  // namespace
}  // namespace sumpwright::tools
