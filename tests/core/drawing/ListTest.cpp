// Draw lists themselves: text form, clipping, boxes, line breaking.

#include <cmath>

#include "core/drawing/Drawn.h"
#include "drawing/Clip.h"
#include "drawing/Sketch.h"
#include "geometry/Shapes.h"

namespace sumpwright::drawing {
namespace {

constexpr Colour kInk{26, 41, 49, 255};

TEST(DrawListText, HasAnItemALine) {
  DrawList list{10, 20, {}};
  Sketch sketch(list);
  sketch.tagged("a").line({1, 2}, {3.12345, -0.0001}, solid(kInk, 1.0));
  sketch.tagged("b").text({5, 5}, "N", type::small, kInk, HAlign::centre, 90.0);
  EXPECT_EQ(toText(list),
            "page 10 20\n"
            "a | stroke #1A2931 0.25 : 1,2 3.123,0\n"
            "b | text 5,5 7.5pt #1A2931 centre turn 90 : N\n");
}

TEST(Clip, KeepsDashesInStep) {
  DrawList list{100, 100, {}};
  Sketch sketch(list);
  sketch.line({-7, 50}, {93, 50}, dashed(kInk, 1.0, {6.0, 3.5}));  // 1.5 + 0.875 mm
  const DrawList cut = clipped(list, {0, 0, 100, 100}, voice());
  ASSERT_EQ(cut.items.size(), 1U);
  const auto& stroke = std::get<Stroke>(cut.items[0].shape);
  EXPECT_NEAR(stroke.points.front().x, 0.125, 1e-9);  // half the line's width stays inside
  const double walked = stroke.points.front().x + 7.0;
  EXPECT_NEAR(stroke.pen.dash_offset_mm, std::fmod(walked, 2.375), 1e-9);
}

TEST(Clip, CutsALineThatLeavesAndComesBackInTwo) {
  DrawList list{100, 100, {}};
  Sketch sketch(list);
  sketch.path({{10, 50}, {150, 50}, {150, 60}, {10, 60}}, solid(kInk, 1.0));
  const DrawList cut = clipped(list, {0, 0, 100, 100}, voice());
  EXPECT_EQ(cut.items.size(), 2U);
  expectInside(cut, voice());
}

TEST(Clip, CutsAreasAndCirclesAndDropsHalfWords) {
  DrawList list{100, 100, {}};
  Sketch sketch(list);
  sketch.fill(rectangle(-10, -10, 60, 60), kInk);
  sketch.ring({100, 50}, 10, solid(kInk, 2.0), kInk);
  sketch.text({98, 50}, "words that leave", type::body, kInk);
  sketch.text({10, 90}, "words", type::body, kInk);
  const DrawList cut = clipped(list, {0, 0, 100, 100}, voice());
  expectInside(cut, voice());
  EXPECT_EQ(textsOf(cut), std::vector<std::string>{"words"});
  EXPECT_NEAR(std::abs(geometry::signedArea(std::get<Fill>(cut.items[0].shape).rings[0])), 2500.0,
              1e-9);
}

TEST(Box, OfTurnedTextIsTurned) {
  const Text level{{50, 50}, "Corridor", type::body, kInk, HAlign::left, 0.0};
  Text upright = level;
  upright.turn_deg = 90.0;
  const Box a = boxOf(level, voice());
  const Box b = boxOf(upright, voice());
  EXPECT_NEAR(a.width(), b.height(), 1e-9);
  EXPECT_NEAR(b.bottom, 50.0, 1e-9);  // read upwards from its start
}

TEST(Wrap, BreaksAtSpacesAndLosesNothing) {
  const std::string text = "The hole is 1.97 m from the kitchen window and 1.50 m is needed.";
  std::string joined;
  for (const std::string& line : wrap(voice(), text, type::body, 30.0)) {
    EXPECT_LE(voice().width_mm(line, type::body), 30.0);
    joined += (joined.empty() ? "" : " ") + line;
  }
  EXPECT_EQ(joined, text);
}

TEST(Wrap, BreaksAWordThatIsTooLongBetweenLetters) {
  std::string word;
  for (int i = 0; i < 60; ++i) word += "\xC3\xA9";  // e acute, two bytes
  std::string joined;
  for (const std::string& line : wrap(voice(), word, type::body, 20.0)) {
    EXPECT_LE(voice().width_mm(line, type::body), 20.0);
    EXPECT_EQ(line.size() % 2, 0U);
    joined += line;
  }
  EXPECT_EQ(joined, word);
}

TEST(Wrap, OfNothingIsNothing) { EXPECT_TRUE(wrap(voice(), "  ", type::body, 20.0).empty()); }

}  // namespace
}  // namespace sumpwright::drawing
