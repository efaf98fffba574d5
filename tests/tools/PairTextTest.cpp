#include <gtest/gtest.h>

#include "tools/PairText.h"

namespace sumpwright::tools {
namespace {

void expectPair(const char* text, double first, double second, BareUnit bare = BareUnit::metre) {
  const auto pair = readPair(text, bare);
  ASSERT_TRUE(pair.has_value()) << text;
  EXPECT_NEAR(pair->first_m, first, 1e-9) << text;
  EXPECT_NEAR(pair->second_m, second, 1e-9) << text;
}

TEST(PairText, SidesArePartedByACross) {
  expectPair("12.4 x 8.6", 12.4, 8.6);
  expectPair("12.4x8.6", 12.4, 8.6);
  expectPair("12,4 \xC3\x97 8,6", 12.4, 8.6);
  expectPair("3450mm X 2 m", 3.45, 2.0);
}

TEST(PairText, PlacesArePartedByACommaOrABlank) {
  expectPair("1.20, 0.45", 1.2, 0.45);
  expectPair("1.20,0.45", 1.2, 0.45);
  expectPair("1,20; 0,45", 1.2, 0.45);
  expectPair("1,20 0,45", 1.2, 0.45);
}

TEST(PairText, FeetAndInchesHoldBlanksThemselves) {
  // 1 ft = 0.3048 m exactly (International Yard and Pound Agreement, 1959).
  expectPair("12' 6\" x 8'", 12.5 * 0.3048, 8 * 0.3048, BareUnit::foot);
  expectPair("3 x 2", 3 * 0.3048, 2 * 0.3048, BareUnit::foot);
}

TEST(PairText, OneNumberIsNoPair) {
  for (const char* text :
       {"", "1.20", "1,20", "1,900", "x", "1.2 x", "x 3", "a, b", "1.2 x 3 x 4", "12 ft 3 in"}) {
    EXPECT_FALSE(readPair(text).has_value()) << text;
  }
}

}  // namespace
}  // namespace sumpwright::tools
