#include <cmath>
#include <set>

#include "core/drawing/Drawn.h"
#include "drawing/PlanDrawing.h"
#include "drawing/Theme.h"

namespace sumpwright::drawing {
namespace {

using support::PlanBuilder;

PlanView viewOf(const siting::Study& study, ThemeName name = ThemeName::light) {
  return fitted(study, 200.0, 150.0, name);
}

std::set<std::string> tagsOf(const DrawList& list) {
  std::set<std::string> out;
  for (const Item& item : list.items) out.insert(item.tag);
  return out;
}

TEST(PlanView, PageAndPlanAreInverse) {
  const auto study = studyOf(furnished());
  const PlanView view = viewOf(study);
  for (const Point p : {Point{0, 0}, Point{3.2, -7.1}, Point{-12, 40}}) {
    const Point back = toPlan(view, toPage(view, p));
    EXPECT_NEAR(back.x, p.x, 1e-9);
    EXPECT_NEAR(back.y, p.y, 1e-9);
  }
  EXPECT_GT(toPage(view, {0, 0}).y, toPage(view, {0, 1}).y);  // north is up
}

TEST(PlanView, FittedHoldsTheHouseWithRoomForBandsAndTags) {
  const auto study = studyOf(furnished());
  const PlanView view = viewOf(study);
  for (const perimeter::Edge& e : study.perimeter().edges(0)) {
    const Point p = toPage(view, e.from);
    EXPECT_GE(std::min({p.x, p.y, view.width_mm - p.x, view.height_mm - p.y}), 15.0);
  }
}

TEST(PlanDrawing, DrawsEverythingThereIs) {
  const auto study = studyOf(furnished());
  const auto tags = tagsOf(planBase(study, viewOf(study), voice()));
  for (const char* tag :
       {"grid",  "wall",     "band",     "kitchen window", "front door", "vent",
        "flue",  "gas",      "water",    "electricity",    "gully",      "chamber",
        "path",  "radiator", "socket",   "sink",           "inner",      "pipe",
        "north", "scale",    "corner A", "corner D"}) {
    EXPECT_TRUE(tags.contains(tag)) << tag;
  }
}

TEST(PlanDrawing, StaysOnThePageHoweverFarItIsZoomed) {
  const auto study = studyOf(furnished());
  PlanView view = viewOf(study);
  for (const double zoom : {0.2, 1.0, 3.0, 40.0}) {
    view.mm_per_m = 10.0 * zoom;
    expectInside(planBase(study, view, voice()), voice());
    const auto assessment = study.assess({0, 3.0});
    expectInside(planMarker(study, assessment, view, voice(), true), voice());
  }
}

TEST(PlanDrawing, IsTheSameEachTime) {
  const auto study = studyOf(furnished());
  EXPECT_EQ(toText(planBase(study, viewOf(study), voice())),
            toText(planBase(studyOf(furnished()), viewOf(study), voice())));
}

TEST(PlanDrawing, DropsDetailWithScale) {
  const auto study = studyOf(furnished());
  PlanView view = viewOf(study);
  view.mm_per_m = 4.9;
  auto tags = tagsOf(planBase(study, view, voice()));
  EXPECT_FALSE(tags.contains("socket"));
  EXPECT_FALSE(tags.contains("pipe"));
  EXPECT_TRUE(tags.contains("radiator"));
  view.mm_per_m = 2.5;
  EXPECT_FALSE(tagsOf(planBase(study, view, voice())).contains("corner A"));
}

TEST(PlanDrawing, NamesARoomOnlyWhereItFits) {
  auto job = PlanBuilder::rectangle(10, 8).job();
  job.plan.rooms[0].name = "Garden room";
  const auto study = studyOf(job);
  EXPECT_TRUE(says(planBase(study, viewOf(study), voice()), "Garden room"));
  job.plan.rooms[0].outline_m = {{0.35, 0.35}, {0.8, 0.35}, {0.8, 0.8}, {0.35, 0.8}};
  const auto closet = studyOf(job);
  EXPECT_FALSE(says(planBase(closet, viewOf(closet), voice()), "Garden"));
}

TEST(PlanDrawing, TurnsTheNameOfANarrowRoom) {
  auto job = PlanBuilder::rectangle(10, 8).job();
  job.plan.rooms[0].name = "Corridor";
  job.plan.rooms[0].outline_m = {{1, 0.5}, {1.7, 0.5}, {1.7, 7.5}, {1, 7.5}};
  const auto study = studyOf(job);
  bool turned = false;
  for (const Item& item : planBase(study, viewOf(study), voice()).items) {
    const auto* text = std::get_if<Text>(&item.shape);
    turned = turned || (text != nullptr && text->text == "Corridor" && text->turn_deg == 90.0);
  }
  EXPECT_TRUE(turned);
}

/// Area of wall drawn, as the sum of fills in the wall's colour.
int wallPieces(const siting::Study& study) {
  int count = 0;
  for (const Item& item : planBase(study, viewOf(study), voice()).items) {
    const auto* fill = std::get_if<Fill>(&item.shape);
    count += fill != nullptr && item.tag == "wall" ? 1 : 0;
  }
  return count;
}

TEST(PlanDrawing, CutsTheWallForOpeningsOfTheGroundStoreyOnly) {
  EXPECT_EQ(wallPieces(studyOf(PlanBuilder::rectangle())), 1);
  EXPECT_EQ(wallPieces(studyOf(PlanBuilder::rectangle().window("w", 0, 2, 1).window("v", 2, 2, 1))),
            2);
  plan::Opening above;
  above.id = "above";
  above.at = {0, 0, 3.0};
  above.width_m = 1.0;
  above.storey = 1;
  EXPECT_EQ(wallPieces(studyOf(PlanBuilder::rectangle().opening(above))), 1);
}

TEST(PlanDrawing, APartyWallIsHatchedNotSolid) {
  const auto count = [](const siting::Study& study) {
    return itemsTagged(planBase(study, viewOf(study), voice()), "wall");
  };
  const auto own = studyOf(PlanBuilder::rectangle());
  const auto party = studyOf(
      PlanBuilder::rectangle().wall(1, [](plan::Wall& w) { w.kind = plan::WallKind::party; }));
  EXPECT_GT(count(party), count(own) + 20);
}

TEST(PlanDrawing, NorthIsTurnedAsThePlanSays) {
  const auto tip = [](double north_deg) {
    const auto study = studyOf(
        PlanBuilder::rectangle().with([=](plan::Job& job) { job.plan.north_deg = north_deg; }));
    const DrawList list = planFurniture(study, viewOf(study), voice());
    for (const Item& item : list.items) {
      const auto* fill = std::get_if<Fill>(&item.shape);
      if (item.tag == "north" && fill != nullptr) return fill->rings[0][0];
    }
    return Point{};
  };
  const Point up = tip(0.0);
  const Point right = tip(90.0);  // clockwise from up
  EXPECT_NEAR(right.x - up.x, right.y - up.y, 1e-9);
  EXPECT_GT(right.x, up.x + 5.0);
}

TEST(PlanDrawing, KitchensCarryNoWetLines) {
  const auto lines = [](plan::RoomUse use) {
    auto job = PlanBuilder::rectangle(10, 8).job();
    job.plan.rooms[0].use = use;
    const auto study = studyOf(job);
    return itemsTagged(planBase(study, viewOf(study), voice()), job.plan.rooms[0].id);
  };
  EXPECT_GT(lines(plan::RoomUse::bathroom), lines(plan::RoomUse::kitchen) + 10);
}

TEST(PlanDrawing, OutlinesWhatIsSelected) {
  const auto study = studyOf(furnished());
  PlanView view = viewOf(study);
  for (const char* id : {"kitchen window", "gas", "chamber", "radiator"}) {
    view.selected = id;
    EXPECT_GT(itemsTagged(planBase(study, view, voice()), "selected"), 0) << id;
  }
}

TEST(PlanDrawing, ServiceTagsKeepApart) {
  auto b = PlanBuilder::rectangle(10, 8);
  b.service("a", plan::ServiceKind::gas, 0, 4.0)
      .service("b", plan::ServiceKind::water, 0, 4.1)
      .service("c", plan::ServiceKind::telecom, 0, 4.2);
  const auto study = studyOf(b);
  std::vector<Box> plates;
  for (const Item& item : planBase(study, viewOf(study), voice()).items) {
    const auto* stroke = std::get_if<Stroke>(&item.shape);
    if (stroke == nullptr || !stroke->closed || stroke->points.size() < 20) continue;
    const Box box = boxOf(stroke->points);
    if (std::abs(box.width() - 5.0) < 1e-6 && std::abs(box.height() - 5.0) < 1e-6) {
      for (const Box& other : plates) EXPECT_FALSE(overlap(box, other));
      plates.push_back(box);
    }
  }
  EXPECT_EQ(plates.size(), 3U);
}

}  // namespace
}  // namespace sumpwright::drawing
