// The outline while it is taped: its words stand clear of one another.

#include <utility>

#include "core/drawing/Drawn.h"
#include "drawing/OutlineDrawing.h"
#include "drawing/PlanDrawing.h"

namespace sumpwright::drawing {
namespace {

/// A house with a porch whose walls are short at this scale.
plan::Job withPorch() {
  return support::PlanBuilder::outline({{0, 0},
                                        {4, 0},
                                        {4, -1.1},
                                        {5.2, -1.1},
                                        {5.2, 0},
                                        {12, 0},
                                        {12, 8},
                                        {7, 8},
                                        {7, 8.9},
                                        {6, 8.9},
                                        {6, 8},
                                        {0, 8}});
}

int overlapsIn(const DrawList& list) {
  std::vector<Box> boxes;
  for (const Item& item : list.items) {
    const auto* text = std::get_if<Text>(&item.shape);
    if (text != nullptr && item.tag != "scale" && item.tag != "north") {
      boxes.push_back(boxOf(*text, voice()));
    }
  }
  int count = 0;
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    for (std::size_t k = 0; k < i; ++k) count += overlap(boxes[i], boxes[k]) ? 1 : 0;
  }
  return count;
}

TEST(OutlineDrawing, WordsOfASmallPorchStandClear) {
  const plan::Job job = withPorch();
  for (const double width : {120.0, 160.0, 230.0}) {
    const PlanView view = fittedToOutline(job.plan, {}, width, 0.7 * width, ThemeName::light);
    const DrawList list = outlineDrawing(job, {}, view, voice());
    EXPECT_EQ(overlapsIn(list), 0) << width;
    for (const char* letter : {"A", "C", "D", "J", "L"}) EXPECT_TRUE(says(list, letter)) << letter;
  }
}

/// While it is taped, at every size, in wide and in high houses.
TEST(OutlineDrawing, NoWordsLieUnderTheScaleBar) {
  const Box furniture{0.0, 0.0, kFurnitureWidth_mm, kFurnitureHeight_mm};
  for (const auto& [wide, high] : {std::pair{12.0, 5.0}, {6.0, 6.0}, {5.0, 12.0}}) {
    for (const double width : {120.0, 160.0, 230.0, 340.0}) {
      plan::Job job = support::PlanBuilder::outline({{0, 0}, {wide, 0}, {wide, high}, {0, high}});
      job.plan.rings[0].closed = false;
      const PlanView view = fittedToOutline(job.plan, {}, width, 0.6 * width, ThemeName::light);
      ASSERT_TRUE(view.furniture);
      for (const Item& item : outlineDrawing(job, {}, view, voice()).items) {
        if (item.tag == "scale" || item.tag == "north") continue;
        const auto* text = std::get_if<Text>(&item.shape);
        if (text == nullptr) continue;
        EXPECT_FALSE(overlap(furniture, boxOf(*text, voice()))) << text->text << ' ' << width;
      }
    }
  }
}

TEST(OutlineDrawing, AnEmptyPlanHasRoomForAHouse) {
  const PlanView view = fittedToOutline({}, {}, 340.0, 240.0, ThemeName::light);
  EXPECT_GE(view.width_mm / view.mm_per_m, 17.0);
  EXPECT_GE(view.height_mm / view.mm_per_m, 10.0);
}

TEST(OutlineDrawing, TheDraftKeepsItsLength) {
  OutlineMarks marks;
  marks.draft = geometry::Segment{{4, 0}, {4, -1.1}};
  plan::Job job;
  job.plan.rings.resize(1);
  job.plan.rings[0].closed = false;
  job.plan.rings[0].corners = {{0, 0}, {4, 0}};
  job.plan.rings[0].walls.resize(2);
  const PlanView view = fittedToOutline(job.plan, marks.draft, 230, 150, ThemeName::light);
  EXPECT_GE(itemsTagged(outlineDrawing(job, marks, view, voice()), "draft"), 4);
}

}  // namespace
}  // namespace sumpwright::drawing
