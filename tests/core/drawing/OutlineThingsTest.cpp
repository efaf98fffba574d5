// Everything on a plan is drawn and shown as chosen, studied or not.

#include "core/drawing/Drawn.h"
#include "drawing/OutlineDrawing.h"
#include "drawing/PlanDrawing.h"
#include "drawing/ServiceSpots.h"
#include "plan/ThingEdits.h"

namespace sumpwright::drawing {
namespace {

/// The furnished bungalow, with what is built into walls and floor as well.
plan::Job furnishedThrough() {
  plan::Job job = furnished();
  job.plan.rising_walls.push_back(
      {.id = "rising", .line_m = {{1, 2}, {4, 2}}, .gaps = {{1.0, 1.5}}});
  job.plan.test_holes.push_back({.id = "hole", .name = {}, .at_m = {2, 3}});
  for (const auto kind :
       {plan::WallFeatureKind::pier, plan::WallFeatureKind::chimney_breast,
        plan::WallFeatureKind::beam_bearing, plan::WallFeatureKind::movement_joint,
        plan::WallFeatureKind::weep_hole, plan::WallFeatureKind::stepped_footing}) {
    const int i = static_cast<int>(kind);
    job.plan.wall_features.push_back(
        {"feature-" + std::to_string(i), {}, kind, {0, 5, 0.3 + i}, 0.3});
  }
  return job;
}

std::vector<std::string> drawnIds(const plan::Job& job) {
  std::vector<std::string> ids;
  const auto all = [&](const auto& list) {
    for (const auto& thing : list) ids.push_back(thing.id);
  };
  const plan::Plan& p = job.plan;
  all(p.openings), all(p.services), all(p.rooms), all(p.floor_zones), all(p.inner_walls);
  all(p.rising_walls), all(p.radiators), all(p.heating_pipes), all(p.supplies), all(p.fittings);
  all(p.outside), all(p.test_holes), all(p.wall_features);
  return ids;
}

/// With the garden as well, which a fit leaves out.
PlanView withGarden(PlanView view) {
  view.mm_per_m *= 0.6;
  return view;
}

PlanView outlineView(const plan::Job& job) {
  return withGarden(fittedToOutline(job.plan, std::nullopt, 240.0, 180.0, ThemeName::light));
}

TEST(OutlineThings, EveryThingIsDrawnOnAPlanThatCannotBeStudied) {
  const plan::Job job = furnishedThrough();
  const DrawList list = outlineDrawing(job, {}, outlineView(job), voice());
  EXPECT_GT(drawnIds(job).size(), 25U);
  for (const std::string& id : drawnIds(job)) EXPECT_GT(itemsTagged(list, id), 0) << id;
  expectInside(list, voice());
}

TEST(OutlineThings, TheChosenOneIsShownOnEitherDrawing) {
  const plan::Job job = furnishedThrough();
  const auto study = studyOf(job);
  PlanView outline = outlineView(job);
  PlanView whole = withGarden(fitted(study, 240.0, 180.0, ThemeName::light));
  EXPECT_EQ(itemsTagged(outlineDrawing(job, {}, outline, voice()), "selected"), 0);
  std::vector<std::string> ids = drawnIds(job);
  ids.push_back(job.plan.rings[0].walls[2].id);
  for (const std::string& id : ids) {
    outline.selected = whole.selected = id;
    EXPECT_GT(itemsTagged(outlineDrawing(job, {}, outline, voice()), "selected"), 0) << id;
    EXPECT_GT(itemsTagged(planBase(study, whole, voice()), "selected"), 0) << id;
  }
}

TEST(OutlineThings, WallFeaturesAndRisingWallsAreOnTheWholePlanToo) {
  const plan::Job job = furnishedThrough();
  const auto study = studyOf(job);
  const DrawList list = planBase(study, fitted(study, 240.0, 180.0, ThemeName::light), voice());
  for (const auto& f : job.plan.wall_features) EXPECT_GT(itemsTagged(list, f.id), 0) << f.id;
  EXPECT_EQ(itemsTagged(list, "rising"), 4) << "two lines on either side of its gap";
}

TEST(OutlineThings, PlatesAreWhereTheyAreDrawn) {
  const plan::Job job = furnishedThrough();
  const auto study = studyOf(job);
  const PlanView whole = fitted(study, 240.0, 180.0, ThemeName::light);
  const PlanView outline = outlineView(job);
  const auto on_plan = serviceSpots(study, whole);
  const auto on_outline = serviceSpots(job, outline);
  ASSERT_EQ(on_plan.size(), 3U);
  ASSERT_EQ(on_outline.size(), 3U);
  for (const auto& [spots, view] : {std::pair(on_plan, whole), std::pair(on_outline, outline)}) {
    for (const ServiceSpot& spot : spots) {
      EXPECT_GT(geometry::distance(spot.tip_m, spot.plate_m) * view.mm_per_m, 7.9) << spot.service;
    }
  }
}

}  // namespace
}  // namespace sumpwright::drawing
