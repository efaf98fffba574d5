#include "core/drawing/Drawn.h"
#include "drawing/FieldLegend.h"

namespace sumpwright::drawing {
namespace {

TEST(FieldLegend, HasABoxForEachClassAndMarksTheTarget) {
  const DrawList bar = fieldLegend(FieldKind::suction, 5.0, ThemeName::light, 73.0, voice());
  EXPECT_EQ(itemsTagged(bar, "scale"), 9 + 1 + 7 * 2 + 2);
  int bold = 0;
  for (const Item& item : bar.items) {
    const auto* text = std::get_if<Text>(&item.shape);
    if (text != nullptr && text->font.bold) ++bold;
  }
  EXPECT_EQ(bold, 1);
  expectInside(bar, voice());
}

TEST(FieldLegend, PutsATargetBetweenLevelsAmongThem) {
  for (const double target : {0.1, 0.7, 7.5, 99.0, 400.0}) {
    const DrawList bar = fieldLegend(FieldKind::suction, target, ThemeName::dark, 60.0, voice());
    expectInside(bar, voice());
  }
  expectInside(fieldLegend(FieldKind::chance, 2.0 / 3.0, ThemeName::paper, 60.0, voice(), true),
               voice());
}

TEST(FieldLegend, SaysWhatTheColoursMean) {
  for (const ThemeName name : {ThemeName::light, ThemeName::dark, ThemeName::paper}) {
    for (const double width : {40.0, 73.0}) {
      const DrawList key = colourKey(FieldKind::suction, name, width, voice());
      EXPECT_TRUE(says(key, "stronger"));
      EXPECT_TRUE(says(key, "key-bare"));
      EXPECT_GT(itemsTagged(key, "key"), 8) << "with a sample of each";
      expectInside(key, voice());
    }
  }
}

TEST(ShareBar, IsSolidToTheLowCaseAndMarksThePrediction) {
  const DrawList bar = shareBar({0.47, 0.71, 0.97}, ThemeName::light, 100.0);
  expectInside(bar, voice());
  const auto& solid_part = std::get<Fill>(bar.items[bar.items.size() - 3].shape);
  EXPECT_NEAR(boxOf(solid_part.rings[0]).right, 47.0, 1e-9);
  const auto& mark = std::get<Stroke>(bar.items.back().shape);
  EXPECT_NEAR(mark.points[0].x, 71.0, 1e-9);
}

TEST(ShareBar, TakesNothingAndAllAndWhatIsOutOfRange) {
  for (const ShareOfFloor share : {ShareOfFloor{0, 0, 0}, ShareOfFloor{1, 1, 1},
                                   ShareOfFloor{-0.1, 1.3, 1.2}, ShareOfFloor{0.8, 0.7, 0.6}}) {
    expectInside(shareBar(share, ThemeName::dark, 80.0), voice());
  }
}

}  // namespace
}  // namespace sumpwright::drawing
