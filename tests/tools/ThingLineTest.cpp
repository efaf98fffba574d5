#include <gtest/gtest.h>

#include "support/Seed.h"
#include "tools/ThingLine.h"

namespace sumpwright::tools {
namespace {

TEST(ThingLine, OpeningsWithOffsetAndWidth) {
  const ThingLine line = readThingLine("w 1.20 1.05");
  ASSERT_TRUE(line.ok());
  EXPECT_EQ(line.kind, LineKind::opening);
  EXPECT_EQ(line.opening(), plan::OpeningKind::window);
  EXPECT_DOUBLE_EQ(line.offset_m, 1.2);
  EXPECT_DOUBLE_EQ(line.width_m.value(), 1.05);
  EXPECT_FALSE(line.from_right);
  EXPECT_FALSE(line.sill_m);
  EXPECT_EQ(readThingLine("Door 340cm 900mm").opening(), plan::OpeningKind::door);
  EXPECT_EQ(readThingLine("gd 1 2.4").opening(), plan::OpeningKind::garage_door);
}

TEST(ThingLine, FromTheRightWithSillAndHeadAndWithoutASpace) {
  const ThingLine line = readThingLine("wr1.2 1.05 0.9 2.1");
  ASSERT_TRUE(line.ok());
  EXPECT_TRUE(line.from_right);
  EXPECT_DOUBLE_EQ(line.offset_m, 1.2);
  EXPECT_DOUBLE_EQ(line.sill_m.value(), 0.9);
  EXPECT_DOUBLE_EQ(line.head_m.value(), 2.1);
  EXPECT_TRUE(readThingLine("w r1.2 1.05").from_right);
  EXPECT_FALSE(readThingLine("dr1.2").from_right) << "a drain, from the left";
  EXPECT_TRUE(readThingLine("dr r1.2").from_right);
}

TEST(ThingLine, ServicesRadiatorsInnerWalls) {
  EXPECT_EQ(readThingLine("gas 2.10").service(), plan::ServiceKind::gas);
  EXPECT_EQ(readThingLine("el2.1").service(), plan::ServiceKind::electricity);
  EXPECT_EQ(readThingLine("dr 2.10").service(), plan::ServiceKind::drain);
  EXPECT_EQ(readThingLine("rad 1 0.8").kind, LineKind::radiator);
  const ThingLine wall = readThingLine("iw 3.20");
  EXPECT_TRUE(wall.ok());
  EXPECT_FALSE(wall.width_m);
  EXPECT_DOUBLE_EQ(readThingLine("iw 3.20 2.1").width_m.value(), 2.1);
}

TEST(ThingLine, Repeats) {
  EXPECT_EQ(readThingLine("t4 w 1.2 1.05").times, 4);
  EXPECT_EQ(readThingLine("tel 1.2").times, 1);
  EXPECT_EQ(readThingLine("t50 w 1 1").times, 50);
  EXPECT_EQ(readThingLine("t9999 w 1 1").fault, LineFault::no_repeat);
  EXPECT_EQ(readThingLine("t4 rad 0.5 1").fault, LineFault::no_repeat);
  EXPECT_EQ(readThingLine("door3.40 0.90").opening(), plan::OpeningKind::door);
  EXPECT_EQ(readThingLine("water1.2").service(), plan::ServiceKind::water);
  EXPECT_TRUE(readThingLine("doorr3.40 0.90").from_right);
}

TEST(ThingLine, SaysWhatIsWrong) {
  EXPECT_EQ(readThingLine("").fault, LineFault::empty);
  EXPECT_EQ(readThingLine("t3").fault, LineFault::empty);
  EXPECT_EQ(readThingLine("q 1 2").fault, LineFault::unknown_word);
  EXPECT_EQ(readThingLine("q 1 2").word, "q");
  EXPECT_EQ(readThingLine("w").fault, LineFault::few);
  EXPECT_EQ(readThingLine("w 1.2").fault, LineFault::few);
  EXPECT_EQ(readThingLine("gas 1 2 3").fault, LineFault::many);
  EXPECT_EQ(readThingLine("w one 2").fault, LineFault::not_a_length);
  EXPECT_EQ(readThingLine("w 1,900 1").fault, LineFault::ambiguous);
}

TEST(ThingLine, InsideOutsideAndInTheWall) {
  const ThingLine gully = readThingLine("gully 2.10 0.40");
  ASSERT_TRUE(gully.ok());
  EXPECT_EQ(gully.kind, LineKind::outside);
  EXPECT_EQ(gully.which, static_cast<int>(plan::OutsideKind::gully));
  EXPECT_DOUBLE_EQ(gully.offset_m, 2.1);
  EXPECT_DOUBLE_EQ(gully.off_m, 0.4);
  EXPECT_EQ(readThingLine("gully 2.10").fault, LineFault::few);
  EXPECT_EQ(readThingLine("gully 2.10 0.4 1").fault, LineFault::many);
  const ThingLine chamber = readThingLine("ic 2.10 1.20 0.60 0.45");
  EXPECT_DOUBLE_EQ(chamber.width_m.value(), 0.6);
  EXPECT_DOUBLE_EQ(chamber.depth_m.value(), 0.45);
  EXPECT_EQ(readThingLine("boundary 0 3").fault, LineFault::few) << "a line has a length";
  EXPECT_DOUBLE_EQ(readThingLine("socket r2.1").off_m, 0.0);
  EXPECT_TRUE(readThingLine("socket r2.1").from_right);
  EXPECT_EQ(readThingLine("pier 1 0.3").kind, LineKind::feature);
  EXPECT_FALSE(readThingLine("joint 1").width_m);
  const ThingLine door = readThingLine("in 3.2 1 0.8");
  EXPECT_EQ(door.kind, LineKind::inner_door);
  EXPECT_DOUBLE_EQ(door.off_m, 1.0);
  EXPECT_EQ(readThingLine("court 3 4 2.5").fault, LineFault::few);
}

TEST(ThingLine, FloorsByKindAndRoom) {
  EXPECT_EQ(readThingLine("floor slab").which,
            static_cast<int>(plan::FloorKind::ground_bearing_slab));
  const ThingLine room = readThingLine("Floor timber Living room");
  EXPECT_TRUE(room.ok());
  EXPECT_EQ(room.which, static_cast<int>(plan::FloorKind::suspended_timber));
  EXPECT_EQ(room.room, "living room");
  EXPECT_EQ(readThingLine("floor").which, static_cast<int>(plan::FloorKind::unknown));
}

TEST(ThingLine, NoWordStandsForTwoThings) {
  for (const ThingWord& word : thingWords()) {
    for (const std::string_view text : {word.brief, word.full}) {
      const ThingLine line = readThingLine(std::string(text) + " 1 1 1 1");
      EXPECT_EQ(line.kind, word.kind) << text;
      if (word.kind != LineKind::floor) {
        EXPECT_EQ(line.which, word.which) << text;
      }
    }
  }
}

TEST(ThingLine, IsTotal) {
  const std::string alphabet = "wdgvrt0123456789.,' iaelso";
  support::forEachSeed(20000, [&](std::uint64_t seed) {
    support::Random random(seed);
    std::string text;
    for (int n = random.between(0, 14); n > 0; --n) text += alphabet[random.index(alphabet.size())];
    const ThingLine line = readThingLine(text);
    EXPECT_TRUE(!line.ok() || (line.offset_m >= 0.0 && line.times >= 1)) << text;
  });
}

}  // namespace
}  // namespace sumpwright::tools
