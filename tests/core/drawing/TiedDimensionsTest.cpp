#include "core/drawing/Drawn.h"
#include "drawing/OutlineDrawing.h"
#include "drawing/TiedDimensions.h"
#include "plan/ThingEdits.h"

namespace sumpwright::drawing {
namespace {

plan::Job dimensionedHouse(double off_m = -1.0) {
  return support::PlanBuilder::rectangle()
      .window("win", 0, 2.0, 1.2)
      .with([&](plan::Job& j) {
        j.plan.dimensions.push_back({"dim",
                                     {j.plan.rings[0].walls[0].id, plan::ThingEnd::start},
                                     {"win", plan::ThingEnd::start},
                                     off_m});
      })
      .job();
}

TEST(TiedDimensions, StandOnPlanOutlineAndPaper) {
  const plan::Job job = dimensionedHouse();
  const auto study = studyOf(job);
  for (const ThemeName name : {ThemeName::light, ThemeName::dark, ThemeName::paper}) {
    const DrawList list = planBase(study, fitted(study, 200, 150, name), voice());
    EXPECT_GE(itemsTagged(list, "dim"), 7) << "two extension lines, a line, two ticks, words";
    EXPECT_TRUE(says(list, "2"));
    expectInside(list, voice());
  }
  const PlanView view = fittedToOutline(job.plan, {}, 200, 150, ThemeName::light);
  EXPECT_GE(itemsTagged(outlineDrawing(job, {}, view, voice()), "dim"), 7);
}

TEST(TiedDimensions, TheLineIsAsLongAsWhatItMeasures) {
  const plan::Job job = dimensionedHouse();
  PlanView view;
  view.centre_m = {5, 4};
  const SheetContext c(view, 0.0);
  const auto drawn = tiedDimensions(c, job, voice());
  ASSERT_EQ(drawn.size(), 1U);
  EXPECT_NEAR(geometry::distance(drawn[0].line.a, drawn[0].line.b), 2.0 * view.mm_per_m, 1e-9);
  // Down the page is outside the front.
  EXPECT_NEAR(drawn[0].line.a.y - drawn[0].measured.a.y, view.mm_per_m, 1e-9);
}

TEST(TiedDimensions, AShortOneHasItsWordsAbove) {
  plan::Job job = dimensionedHouse();
  PlanView view;
  view.mm_per_m = 1.0;
  const SheetContext c(view, 0.0);
  const auto drawn = tiedDimensions(c, job, voice());
  ASSERT_EQ(drawn.size(), 1U);
  EXPECT_LT(boxOf(drawn[0].plate).bottom, drawn[0].line.a.y);
}

TEST(TiedDimensions, GoneWithWhatTheyMeasure) {
  const auto job = plan::removeThing(dimensionedHouse(), "win");
  ASSERT_TRUE(job.ok());
  const PlanView view;
  EXPECT_TRUE(tiedDimensions(SheetContext(view, 0.0), *job, voice()).empty());
}

}  // namespace
}  // namespace sumpwright::drawing
