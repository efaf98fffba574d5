#include <gtest/gtest.h>

#include "base/Rounding.h"

namespace sumpwright::base {
namespace {

TEST(Rounding, DownIsNotAStepLowerForAHair) {
  EXPECT_EQ(roundedDown(100.0 * 0.29), 29.0);
  EXPECT_EQ(roundedDown(28.999), 28.0);
  EXPECT_EQ(roundedDown(29.0), 29.0);
  EXPECT_EQ(roundedDown(-0.5), -1.0);
}

}  // namespace
}  // namespace sumpwright::base
