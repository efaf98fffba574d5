#include "core/build/Sites.h"
#include "core/drawing/Drawn.h"
#include "drawing/SectionDrawing.h"

namespace sumpwright::drawing {
namespace {

using build::drillSection;
using build::knownBuildUp;

SectionView crew() { return {170.0, 110.0, ThemeName::paper, true}; }

TEST(SectionDrawing, StaysInsideItsViewAtEverySize) {
  for (const double footing : {-0.35, -0.75, -1.2}) {
    const auto section = drillSection(knownBuildUp(-1.2, footing), {});
    for (const SectionView& view :
         {SectionView{}, SectionView{40.0, 60.0, ThemeName::dark, false}, crew()}) {
      expectInside(sectionDrawing(section, view, voice()), voice());
    }
  }
}

TEST(SectionDrawing, ShowsWallFloorGroundHolePipeAndHollow) {
  const DrawList list = sectionDrawing(drillSection(knownBuildUp(), {}), {}, voice());
  for (const char* tag : {"soil", "ground", "screed", "insulation", "slab", "hardcore", "footing",
                          "leaf", "dpc", "core", "pipe", "seal", "hollow", "draught", "levels"}) {
    EXPECT_GT(itemsTagged(list, tag), 0) << tag;
  }
  EXPECT_EQ(itemsTagged(list, "footing-range"), 0);
  EXPECT_TRUE(says(list, "-0.75"));
}

TEST(SectionDrawing, DoubtfulFootingIsHatchedOverItsRange) {
  const DrawList list =
      sectionDrawing(drillSection(knownBuildUp(-0.75, -0.35), {}), crew(), voice());
  EXPECT_GT(itemsTagged(list, "footing-range"), 3);
  EXPECT_TRUE(says(list, "-0.35"));
}

TEST(SectionDrawing, CrewViewNamesEveryLayerAndDistance) {
  const auto section = drillSection(knownBuildUp(), {});
  const DrawList list = sectionDrawing(section, crew(), voice());
  for (const char* words : {"65.00", "100.00", "150.00", "350.00"}) {
    EXPECT_TRUE(says(list, words)) << words;
  }
  EXPECT_EQ(itemsTagged(list, "distance"), 10);  // two distances: line, two dots, plate, words
}

TEST(SectionDrawing, WithoutAHoleOnlyWallFloorAndGround) {
  plan::Job job = support::PlanBuilder::rectangle().job();
  job.plan.floor_zones.at(0).kind = plan::FloorKind::suspended_timber;
  const DrawList list =
      sectionDrawing(drillSection(build::siteOf(job), {0, 4.0}, {}), crew(), voice());
  EXPECT_EQ(itemsTagged(list, "core"), 0);
  EXPECT_EQ(itemsTagged(list, "hollow"), 0);
  EXPECT_EQ(itemsTagged(list, "slab"), 0);
  EXPECT_GT(itemsTagged(list, "suspended"), 0);
  expectInside(list, voice());
}

TEST(SectionDrawing, SuspendedFloorOverSealedGroundShowsBoth) {
  plan::Job job = support::PlanBuilder::rectangle().job();
  plan::FloorZone& zone = job.plan.floor_zones.at(0);
  zone.kind = plan::FloorKind::suspended_concrete;
  zone.oversite = plan::Oversite::sealed;
  const DrawList list =
      sectionDrawing(drillSection(build::siteOf(job), {0, 4.0}, {}), crew(), voice());
  EXPECT_GT(itemsTagged(list, "suspended"), 0);
  EXPECT_GT(itemsTagged(list, "slab"), 0);
  EXPECT_GT(itemsTagged(list, "core"), 0);
  expectInside(list, voice());
}

TEST(SectionDrawing, BarrierIsDrawnWhereItLies) {
  build::BuildUp up = knownBuildUp();
  EXPECT_EQ(itemsTagged(sectionDrawing(drillSection(up, {}), {}, voice()), "barrier"), 0);
  up.barrier = plan::Barrier::lapped_through_wall;
  up.barrier_m = -0.1;
  EXPECT_EQ(itemsTagged(sectionDrawing(drillSection(up, {}), {}, voice()), "barrier"), 1);
}

}  // namespace
}  // namespace sumpwright::drawing
