// Lengths as typed on site. 1 in = 25.4 mm, 1 ft = 12 in: International Yard and Pound Agreement,
// 1959.

#include <gtest/gtest.h>

#include "tools/LengthText.h"

namespace sumpwright::tools {
namespace {

constexpr double kExact_m = 1e-12;  // one rounding of a double at house size

struct Understood {
  const char* text;
  double metres;
  BareUnit bare = BareUnit::metre;
};

class LengthTextUnderstands : public testing::TestWithParam<Understood> {};

TEST_P(LengthTextUnderstands, OneReading) {
  const LengthReading reading = readLength(GetParam().text, GetParam().bare);
  ASSERT_EQ(reading.fault, LengthFault::none) << GetParam().text;
  ASSERT_EQ(reading.metres.size(), 1U);
  EXPECT_NEAR(reading.metres[0], GetParam().metres, kExact_m) << GetParam().text;
}

INSTANTIATE_TEST_SUITE_P(Metric, LengthTextUnderstands,
                         testing::Values(Understood{"12.40", 12.40}, Understood{"12,40", 12.40},
                                         Understood{" 7 ", 7.0}, Understood{"1240cm", 12.40},
                                         Understood{"1240 CM", 12.40}, Understood{"3450mm", 3.450},
                                         Understood{"3.450", 3.450}, Understood{"0,450", 0.450},
                                         Understood{"12.4 m", 12.4}, Understood{"1.234,5", 1234.5},
                                         Understood{"1,234.5", 1234.5},
                                         Understood{"1,234,567mm", 1234.567}, Understood{".5", 0.5},
                                         Understood{"12.40\u00A0m", 12.40}));

INSTANTIATE_TEST_SUITE_P(
    FeetAndInches, LengthTextUnderstands,
    testing::Values(Understood{"40'8\"", 488 * 0.0254}, Understood{"11'4", 136 * 0.0254},
                    Understood{"11' 4 1/2\"", 136.5 * 0.0254}, Understood{"5/8\"", 0.625 * 0.0254},
                    Understood{"8\"", 8 * 0.0254}, Understood{"8 1/4 in", 8.25 * 0.0254},
                    Understood{"12 ft 3 in", 147 * 0.0254}, Understood{"12ft", 144 * 0.0254},
                    Understood{"40\u20328\u2033", 488 * 0.0254},
                    Understood{"40\u20198\u201D", 488 * 0.0254}, Understood{"40'8''", 488 * 0.0254},
                    Understood{"40.5", 40.5 * 0.3048, BareUnit::foot},
                    Understood{"3450mm", 3.450, BareUnit::foot},
                    Understood{"11' 3/4", 132.75 * 0.0254}));

class LengthTextRefuses : public testing::TestWithParam<const char*> {};

TEST_P(LengthTextRefuses, NoReading) {
  const LengthReading reading = readLength(GetParam());
  EXPECT_EQ(reading.fault, LengthFault::not_a_length) << GetParam();
  EXPECT_TRUE(reading.metres.empty());
}

INSTANTIATE_TEST_SUITE_P(Nonsense, LengthTextRefuses,
                         testing::Values("abc", "12 miles", "-3", "12.4.5", "5' 14\"", "1/0\"",
                                         "12m3", "4' 1/0", ",5", "5,", "1,23,456", "'", "m",
                                         "12 40", "1e3", "nan", "inf", "5/8", "12,34.5"));

TEST(LengthText, EmptyIsItsOwnOutcome) {
  EXPECT_EQ(readLength("").fault, LengthFault::empty);
  EXPECT_EQ(readLength("   ").fault, LengthFault::empty);
}

// Thousands or decimal: asked, never guessed.
TEST(LengthText, OneCommaBeforeThreeDigitsIsAsked) {
  const LengthReading reading = readLength("1,900");
  ASSERT_EQ(reading.fault, LengthFault::ambiguous);
  ASSERT_EQ(reading.metres.size(), 2U);
  EXPECT_NEAR(reading.metres[0], 1.9, kExact_m);
  EXPECT_NEAR(reading.metres[1], 1900.0, kExact_m);

  const LengthReading millimetres = readLength("12,400 mm");
  ASSERT_EQ(millimetres.fault, LengthFault::ambiguous);
  EXPECT_NEAR(millimetres.metres[0], 0.0124, kExact_m);
  EXPECT_NEAR(millimetres.metres[1], 12.4, kExact_m);
}

}  // namespace
}  // namespace sumpwright::tools
