#include <gtest/gtest.h>

#include <cstdio>

#include "support/Seed.h"
#include "tools/ListText.h"

namespace sumpwright::tools {
namespace {

std::string millimetres(double metres) {
  char text[32];
  std::snprintf(text, sizeof text, "%.3f", metres);
  return text;
}

TEST(ListText, LevelsMayHaveAMinus) {
  EXPECT_DOUBLE_EQ(readLevel("-0.15").metres.at(0), -0.15);
  EXPECT_DOUBLE_EQ(readLevel("\xE2\x88\x92"
                             "150mm")
                       .metres.at(0),
                   -0.15);
  EXPECT_DOUBLE_EQ(readLevel(" 0.15 ").metres.at(0), 0.15);
  EXPECT_DOUBLE_EQ(readLevel("-6\"").metres.at(0), -0.1524);
  EXPECT_EQ(readLevel("-").fault, LengthFault::not_a_length);
  EXPECT_EQ(readLevel("").fault, LengthFault::empty);
  EXPECT_EQ(readLevel("--1").fault, LengthFault::not_a_length);
}

TEST(ListText, LayersFromOutsideToInside) {
  const auto read = readLayers("Brick 0.103; cavity 100mm, external insulation 0,08");
  ASSERT_TRUE(read.ok()) << read.wrong;
  EXPECT_EQ(read.entries, (std::vector<plan::Layer>{{plan::LayerKind::brick, 0.103},
                                                    {plan::LayerKind::cavity, 0.1},
                                                    {plan::LayerKind::external_insulation, 0.08}}));
  EXPECT_EQ(readLayers("brick 0.1; straw 0.4").wrong, "straw 0.4");
  EXPECT_EQ(readLayers("brick").wrong, "brick");
  EXPECT_TRUE(readLayers("  ").entries.empty());
}

TEST(ListText, GroundGapsAndPoints) {
  const auto ground = readGround("-0.15 at 0 paving; -0.30 at 4.20");
  ASSERT_TRUE(ground.ok());
  EXPECT_EQ(ground.entries,
            (std::vector<plan::GroundPoint>{{0.0, -0.15, plan::GroundSurface::paving},
                                            {4.2, -0.3, plan::GroundSurface::unknown}}));
  EXPECT_EQ(readGround("-0.15 0").wrong, "-0.15 0");
  const auto gaps = readGaps("1.20 to 2.00;3to4");
  ASSERT_TRUE(gaps.ok());
  EXPECT_EQ(gaps.entries, (std::vector<plan::Gap>{{1.2, 2.0}, {3.0, 4.0}}));
  const auto points = readPoints("3.20 : -1.05; 0:4");
  ASSERT_TRUE(points.ok());
  EXPECT_EQ(points.entries, (std::vector<geometry::Point>{{3.2, -1.05}, {0.0, 4.0}}));
  EXPECT_EQ(readPoints("3.20, 1.05").wrong, "3.20");
  EXPECT_DOUBLE_EQ(readGaps("3' 6\" to 4' 1/2\"", BareUnit::foot).entries.at(0).from_m, 1.0668);
}

TEST(ListText, WhatIsPrintedIsReadBack) {
  support::forEachSeed(500, [&](std::uint64_t seed) {
    support::Random random(seed);
    std::vector<plan::GroundPoint> ground;
    std::vector<plan::Layer> layers;
    for (int n = random.between(0, 4); n > 0; --n) {
      ground.push_back({random.between(0, 9000) / 1000.0, random.between(-900, 900) / 1000.0,
                        static_cast<plan::GroundSurface>(random.between(0, 6))});
      layers.push_back(
          {static_cast<plan::LayerKind>(random.between(0, 10)), random.between(1, 600) / 1000.0});
    }
    EXPECT_EQ(readGround(listText(ground, millimetres)).entries, ground);
    EXPECT_EQ(readLayers(listText(layers, millimetres)).entries, layers);
  });
}

}  // namespace
}  // namespace sumpwright::tools
