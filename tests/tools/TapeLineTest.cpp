#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "support/Seed.h"
#include "tools/TapeLine.h"

namespace sumpwright::tools {
namespace {

struct AimCase {
  const char* text;
  AimKind kind;
  double degrees;
  bool square;
  double metres;  ///< 0: no length typed
};

constexpr AimCase kAimCases[] = {
    {"4.20", AimKind::none, 0, true, 4.2},
    {"n4.20", AimKind::compass, 0, true, 4.2},
    {"  E 15.605", AimKind::compass, 90, true, 15.605},
    {"sw 3", AimKind::compass, 225, true, 3.0},
    {"NW 11' 4\"", AimKind::compass, 315, true, 11 * 0.3048 + 4 * 0.0254},
    {"l 4.20", AimKind::left, 90, true, 4.2},
    {"r4.2", AimKind::right, 90, true, 4.2},
    {"left 4200mm", AimKind::left, 90, true, 4.2},
    {"l45 3.1", AimKind::left, 45, false, 3.1},
    {"r 22.5\u00B0 3.1", AimKind::right, 22.5, false, 3.1},
    {"right 22,5 deg 3.1", AimKind::right, 22.5, false, 3.1},
    {"l 11' 4\"", AimKind::left, 90, true, 11 * 0.3048 + 4 * 0.0254},
    {"l 4 1/2\"", AimKind::left, 90, true, 4.5 * 0.0254},
    {"b123.5 4.20", AimKind::compass, 123.5, false, 4.2},
    {"b 123.5\u00B0 4.20", AimKind::compass, 123.5, false, 4.2},
    {"123.5\u00B0 4.20", AimKind::compass, 123.5, false, 4.2},
    {"\u2191 4.20", AimKind::sheet, 0, true, 4.2},
    {"\u2190", AimKind::sheet, 270, true, 0},
    {"w", AimKind::compass, 270, true, 0},
    {"l", AimKind::left, 90, true, 0},
    {"l45\u00B0", AimKind::left, 45, false, 0},
};

TEST(TapeLine, ReadsDirectionsAndLengths) {
  for (const AimCase& c : kAimCases) {
    const TapeLine line = readTapeLine(c.text);
    EXPECT_TRUE(line.ok()) << c.text;
    EXPECT_EQ(line.aim.kind, c.kind) << c.text;
    EXPECT_DOUBLE_EQ(line.aim.degrees, c.degrees) << c.text;
    EXPECT_EQ(line.aim.square, c.square) << c.text;
    if (c.metres == 0) {
      EXPECT_EQ(line.length.fault, LengthFault::empty) << c.text;
    } else {
      ASSERT_TRUE(line.length.ok()) << c.text;
      EXPECT_NEAR(line.length.metres[0], c.metres, 1e-12) << c.text;
    }
  }
}

TEST(TapeLine, RefusesWhatIsNeither) {
  for (const char* text :
       {"", "  ", "x 4", "up 4", "b 4.2 m", "n -4", "n four", "bearing", "l4 5 6"}) {
    EXPECT_FALSE(readTapeLine(text).ok()) << text;
  }
}

TEST(TapeLine, AsksWhereALengthHasTwoReadings) {
  EXPECT_EQ(readTapeLine("n 1,900").length.fault, LengthFault::ambiguous);
}

TEST(TapeLine, BareFiguresAreFeetWhereThoseAreShown) {
  EXPECT_NEAR(readTapeLine("e 12", BareUnit::foot).length.metres.at(0), 3.6576, 1e-12);
}

TEST(TapeLine, BearingsTurnWithTheSheetAndTheWallBefore) {
  const auto bearing = [](const char* text, std::optional<double> before, double north) {
    return sheetBearing(readTapeLine(text).aim, before, north);
  };
  EXPECT_DOUBLE_EQ(bearing("4", std::nullopt, 0), 90.0);
  EXPECT_DOUBLE_EQ(bearing("4", 123.0, 30), 123.0);
  EXPECT_DOUBLE_EQ(bearing("n4", 123.0, 30), 30.0);
  EXPECT_DOUBLE_EQ(bearing("w4", 123.0, 350), 260.0);
  EXPECT_DOUBLE_EQ(bearing("\u21914", 123.0, 30), 0.0);
  EXPECT_DOUBLE_EQ(bearing("l4", 0.0, 30), 270.0);
  EXPECT_DOUBLE_EQ(bearing("r4", 270.0, 30), 0.0);
  EXPECT_DOUBLE_EQ(bearing("r45 4", 350.0, 0), 35.0);
  EXPECT_DOUBLE_EQ(bearing("b 400 4", 0.0, 0), 40.0);
}

TEST(TapeLine, IsTotal) {
  const std::string alphabet = "nesw lrb0123456789.,\u00B0'\"/ \tdegmx\u2191";
  support::forEachSeed(20000, [&](std::uint64_t seed) {
    support::Random random(seed);
    std::string text;
    for (int n = random.between(0, 12); n > 0; --n) text += alphabet[random.index(alphabet.size())];
    const TapeLine line = readTapeLine(text);
    const double deg = sheetBearing(line.aim, 12.0, 34.0);
    EXPECT_TRUE(!std::isfinite(line.aim.degrees) || (deg >= 0.0 && deg < 360.0)) << text;
    for (const double metres : line.length.metres) EXPECT_GE(metres, 0.0) << text;
  });
}

}  // namespace
}  // namespace sumpwright::tools
