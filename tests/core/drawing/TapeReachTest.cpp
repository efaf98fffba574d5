#include "core/drawing/Reached.h"
#include "drawing/TapeDrawing.h"
#include "drawing/TapeLayout.h"

namespace sumpwright::drawing {
namespace {

TapeView reachView(double height_mm = kReachTape_mm) {
  TapeView view;
  view.reach = true;
  view.height_mm = height_mm;
  return view;
}

/// Strokes of the curve itself: more than two points, or dotted.
std::vector<Stroke> curveOf(const DrawList& list, bool dotted) {
  std::vector<Stroke> out;
  for (const Item& item : list.items) {
    const auto* stroke = std::get_if<Stroke>(&item.shape);
    if (item.tag != "reach" || stroke == nullptr) continue;
    if (dotted ? !stroke->pen.dash_mm.empty()
               : stroke->points.size() > 2 && stroke->pen.dash_mm.empty()) {
      out.push_back(*stroke);
    }
  }
  return out;
}

TEST(TapeReach, IsBoldOnlyWhereASumpMayStand) {
  const auto study = studyOf(furnished());
  const auto reach = reachOf(study);
  const TapeView view = reachView();
  const DrawList list = tapeReach(study, &reach, view, voice());
  const auto bold = curveOf(list, false);
  ASSERT_FALSE(bold.empty());
  ASSERT_FALSE(curveOf(list, true).empty());
  for (const Stroke& stroke : bold) {
    for (std::size_t k = 1; k + 1 < stroke.points.size(); ++k) {
      const auto state = study.stateAt(tapePlace(study, view, stroke.points[k].x));
      EXPECT_TRUE(state == rules::State::clear || state == rules::State::advised_against)
          << stroke.points[k].x;
    }
  }
  expectInside(list, voice());
  EXPECT_TRUE(says(list, "drawing.lane.predicted") || says(list, "predicted"));
}

TEST(TapeReach, HigherIsMore) {
  const auto study = studyOf(furnished());
  const auto reach = reachOf(study);
  const TapeView view = reachView();
  const TapeLayout at(study, view);
  double least = 1.0;
  for (const auto& p : reach.places()) {
    if (p.read.on_floor) least = std::min(least, p.read.floor);
  }
  const double low = std::min(0.5, 0.25 * std::floor(least / 0.25));
  const DrawList list = tapeReach(study, &reach, view, voice());
  for (const Stroke& stroke : curveOf(list, false)) {
    for (const Point p : stroke.points) {
      const double floor = reach.at(tapePlace(study, view, p.x)).floor;
      const double share = (at.scoreBottom() - p.y) / (at.scoreBottom() - at.scoreTop());
      EXPECT_NEAR(low + share * (1.0 - low), floor, 0.02);
    }
  }
}

TEST(TapeReach, SaysWhyThereIsNone) {
  const auto study = studyOf(furnished());
  const TapeView view = reachView();
  const DrawList not_yet = tapeReach(study, nullptr, view, voice());
  EXPECT_TRUE(says(not_yet, "not-yet") || says(not_yet, "not worked out"));
  EXPECT_TRUE(curveOf(not_yet, true).empty());
  const auto none = reachOf(study, plan::Fill::none);
  const DrawList not_layered = tapeReach(study, &none, view, voice());
  EXPECT_NE(textsOf(not_layered), textsOf(not_yet));
  // A curve of another wall is not drawn on this one.
  const auto other = reachOf(studyOf(support::PlanBuilder::rectangle()));
  EXPECT_EQ(tapeReach(study, &other, view, voice()), not_yet);
}

TEST(TapeReach, WithSeveralSumpsItSaysWhetherOneAloneIsMeant) {
  plan::Job job = furnished();
  const auto one = studyOf(job);
  const auto reach = reachOf(one);
  const auto saysAlone = [](const DrawList& list) {
    return says(list, "reach-alone") || says(list, "one sump alone");
  };
  EXPECT_FALSE(saysAlone(tapeReach(one, &reach, reachView(), voice())));
  job.design.sumps.resize(2);
  job.design.sumps[0].id = "a";
  job.design.sumps[1].id = "b";
  const auto two = studyOf(job);
  const auto of_two = reachOf(two);
  EXPECT_TRUE(saysAlone(tapeReach(two, &of_two, reachView(), voice())));
  expectInside(tapeReach(two, &of_two, reachView(26.0), voice()), voice());
}

TEST(TapeReach, WhatIsNotOnItsWaySaysWhy) {
  const auto study = studyOf(furnished());
  const base::Message why("drawing.reach.stopped");
  const DrawList list = tapeReach(study, nullptr, reachView(), voice(), why);
  EXPECT_TRUE(says(list, "reach.stopped") || says(list, "stopped"));
  EXPECT_FALSE(says(list, "not-yet") || says(list, "not worked out"));
}

TEST(TapeReach, TheCurveTakesTheRoomThatLanesWouldAndNothingOverlaps) {
  const auto study = studyOf(furnished());
  for (const double height : {26.0, 34.0, 60.0}) {
    const TapeView view = reachView(height);
    const TapeLayout at(study, view);
    EXPECT_TRUE(at.lanes().empty());
    EXPECT_LT(at.scoreTop(), at.scoreBottom());
    EXPECT_LT(at.scoreBottom(), at.verdictTop());
    EXPECT_LT(at.verdictTop() + at.verdictHeight(), at.axisTop());
    EXPECT_NEAR(at.axisTop() + kAxis_mm, height, 1e-9);
    const auto reach = reachOf(study);
    expectInside(tapeReach(study, &reach, view, voice()), voice());
    expectInside(tapeMarker(study, study.assess({0, 12.0}), view, voice()), voice());
  }
  TapeView view = reachView();
  EXPECT_EQ(tapeFullHeight_mm(study, view), kReachTape_mm);
}

}  // namespace
}  // namespace sumpwright::drawing
