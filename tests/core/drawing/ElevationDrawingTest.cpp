// The unrolled elevation: where things stand, what is said, what is marked. Invented houses.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/drawing/Drawn.h"
#include "drawing/ElevationDrawing.h"
#include "drawing/PlanDrawing.h"
#include "drawing/Sketch.h"
#include "drawing/TapeDrawing.h"

namespace sumpwright::drawing {

namespace {

/// 10 x 8 with a kitchen window in the east gable (11..12.2) and a riser at 15 m that ends 3.2 m
/// up.
plan::Job withRiser(double height_m = 3.2, double outlet_s = 15.0) {
  auto b = support::PlanBuilder::rectangle();
  b.window("kitchen", 1, 1.0, 1.2).sump("s", 0, 15.0);
  plan::Job job = b.job();
  job.plan.openings[0].name = "kitchen window";
  job.plan.openings[0].sill_m = 0.9;
  job.plan.openings[0].head_m = 2.1;
  job.house.eaves_m = 2.6;
  job.design.outlet = plan::OutletMode::riser;
  job.design.sumps[0].discharge = plan::Discharge{0, outlet_s, height_m};
  return job;
}

ElevationView about(const siting::Study& study, double s, ThemeName name = ThemeName::light) {
  return elevationAbout(study, {0, s}, 190.0, 120.0, name);
}

TEST(ElevationDrawing, SpotsAndPointsAreEachOthersWayBack) {
  const auto study = studyOf(withRiser());
  const ElevationView view = about(study, 15.0);
  for (const double s : {12.0, 15.0, 17.9}) {
    for (const double z : {-0.4, 0.0, 3.1}) {
      const ElevationSpot spot =
          elevationSpot(study, view, elevationPoint(study, view, {{0, s}, z}));
      EXPECT_NEAR(spot.place.chainage_m, s, 1e-9);
      EXPECT_NEAR(spot.height_m, z, 1e-9);
    }
  }
  // Far off to the left the nearest place is the ring's start.
  EXPECT_EQ(elevationSpot(study, view, {-1e4, 10.0}).place.chainage_m, 0.0);
}

TEST(ElevationDrawing, HeightsGoUpAndChainageToTheRightAtOneScale) {
  const auto study = studyOf(withRiser());
  const ElevationView view = about(study, 15.0);
  const Point a = elevationPoint(study, view, {{0, 12.0}, 1.0});
  const Point b = elevationPoint(study, view, {{0, 13.0}, 2.0});
  EXPECT_NEAR(b.x - a.x, view.mm_per_m, 1e-9);
  EXPECT_NEAR(a.y - b.y, view.mm_per_m, 1e-9);
}

TEST(ElevationDrawing, NothingLeavesThePage) {
  for (const plan::Job& job : {withRiser(), furnished().sump("s", 0, 12.5).job(),
                               support::PlanBuilder::courtyard().sump("s", 1, 3.0).job()}) {
    const auto study = studyOf(job);
    const auto& s = job.design.sumps.at(0);
    const auto a = study.assess({s.ring, s.chainage_m}, s.id);
    const ElevationView large =
        elevationAbout(study, {s.ring, s.chainage_m}, 190.0, 120.0, ThemeName::light);
    const ElevationView strip = elevationStrip(study, 200.0, 24.0, ThemeName::dark);
    for (const ElevationView& view : {large, strip}) {
      expectInside(elevationBase(study, view, voice()), voice());
      expectInside(elevationMarker(study, a, s.id, view, voice()), voice());
    }
  }
}

TEST(ElevationDrawing, ShowsTheWholeRun) {
  const auto study = studyOf(withRiser());
  const ElevationView view = about(study, 15.0);
  const DrawList list = elevationMarker(study, study.assess({0, 15.0}, "s"), "s", view, voice());
  for (const char* tag : {"riser", "fan", "isolator", "outlet", "core", "distance", "verdict"}) {
    EXPECT_GT(itemsTagged(list, tag), 0) << tag;
  }
  // 2.80 m aside less half the pipe, 1.10 m over the head.
  const double distance = std::hypot(2.8 - 0.055, 1.1);
  char words[16];
  std::snprintf(words, sizeof words, "%.2f", distance);
  EXPECT_TRUE(says(list, words)) << words;
}

TEST(ElevationDrawing, ShowsEverySumpWithItsNumber) {
  plan::Job job = withRiser();
  plan::Sump other = job.design.sumps[0];
  other.id = "t";
  other.chainage_m = 17.0;
  other.discharge->chainage_m = 17.5;
  job.design.sumps.push_back(other);
  const auto study = studyOf(job);
  const auto a = study.assess({0, 15.0}, "s");
  for (const ElevationView& view :
       {about(study, 15.0), elevationStrip(study, 200.0, 24.0, ThemeName::dark)}) {
    const DrawList list = elevationMarker(study, a, "s", view, voice());
    EXPECT_GT(itemsTagged(list, "t"), 0);
    EXPECT_GT(itemsTagged(list, "number"), 0);
    EXPECT_TRUE(says(list, "sump-number"));
    expectInside(list, voice());
  }
  // Of one alone no number is said.
  const auto alone = studyOf(withRiser());
  EXPECT_EQ(itemsTagged(elevationMarker(alone, alone.assess({0, 15.0}, "s"), "s",
                                        about(alone, 15.0), voice()),
                        "number"),
            0);
}

int coveredWords(const DrawList& over, const std::vector<Box>& words) {
  int covered = 0;
  for (const Item& item : over.items) {
    if (!std::holds_alternative<Fill>(item.shape) || item.tag == "verdict") continue;
    for (const Box& below : words) covered += overlap(boxOf(item.shape, voice()), below) ? 1 : 0;
  }
  return covered;
}

TEST(ElevationDrawing, NoPlateCoversWords) {
  int blind = 0;  // where the run does not know of the words
  // The line to the window runs just over its name, as the eaves do.
  for (const double height : {2.4, 2.6, 2.9, 3.2}) {
    for (const double outlet_s : {13.2, 14.0, 15.0}) {
      plan::Job job = withRiser(height, outlet_s);
      job.house.eaves_m = 2.2;
      const auto study = studyOf(job);
      ElevationView view = about(study, 15.0, ThemeName::paper);
      view.keep_clear = perimeter::Place{0, 15.0};
      const DrawList base = elevationBase(study, view, voice());
      const auto words = wordsOf(base, voice());
      const auto assessment = study.assess({0, 15.0}, "s");
      EXPECT_EQ(coveredWords(elevationMarker(study, assessment, "s", view, voice(), words), words),
                0)
          << height << ' ' << outlet_s;
      blind += coveredWords(elevationMarker(study, assessment, "s", view, voice()), words);
      for (const Item& item : base.items) {
        if (item.tag != "eaves") continue;
        for (const Box& name : words) EXPECT_FALSE(overlap(boxOf(item.shape, voice()), name));
      }
    }
  }
  EXPECT_GT(blind, 0);
}

/// The voice of a job shown in feet and inches.
class FeetVoice final : public Voice {
 public:
  std::string say(const base::Message& message) const override { return voice().say(message); }
  double width_mm(const std::string& text, const Font& font) const override {
    return voice().width_mm(text, font);
  }
  double capHeight_mm(const Font& font) const override { return voice().capHeight_mm(font); }
  bool inFeet() const override { return true; }
};

TEST(ElevationDrawing, AxesAndScaleBarsAreMarkedInTheUnitsOfTheWords) {
  const auto study = studyOf(withRiser());
  const FeetVoice feet;
  const ElevationView view = about(study, 15.0);
  const DrawList elevation = elevationBase(study, view, feet);
  // Ten feet up, where the tick of three metres is not.
  double ten = -1.0;
  for (const Item& item : elevation.items) {
    const auto* text = std::get_if<Text>(&item.shape);
    if (text != nullptr && item.tag == "axis" && text->text == "10.00") ten = text->at.y;
  }
  const double cap = feet.capHeight_mm(type::small);
  EXPECT_NEAR(ten - cap / 2.0, elevationPoint(study, view, {{0, 15.0}, 3.048}).y, 1e-9);
  TapeView tape;
  tape.width_mm = 300.0;
  tape.height_mm = tapeFullHeight_mm(study, tape);
  const auto onAxis = [&](const Voice& words) {
    const DrawList wall = tapeBase(study, tape, words);
    return std::any_of(wall.items.begin(), wall.items.end(), [](const Item& item) {
      const auto* text = std::get_if<Text>(&item.shape);
      return text != nullptr && item.tag == "axis" && text->text == "100.00";
    });
  };
  EXPECT_TRUE(onAxis(feet));  // 36 m round are 118 ft
  EXPECT_FALSE(onAxis(voice()));
  PlanView plan = fitted(study, 200.0, 150.0, ThemeName::light);
  const DrawList bar = planFurniture(study, plan, feet);
  double end = 0.0;
  double start = 0.0;
  double length = 0.0;
  for (const Item& item : bar.items) {
    const auto* text = std::get_if<Text>(&item.shape);
    if (text == nullptr || item.tag != "scale") continue;
    if (text->text == "0.00") start = text->at.x;
    end = text->at.x;
    length = std::atof(text->text.c_str());
  }
  EXPECT_NEAR(end - start, length * 0.3048 * plan.mm_per_m, 1e-6);
}

TEST(ElevationDrawing, AnUnplacedRiserIsOnlyWhereItWouldGoUp) {
  plan::Job job = withRiser();
  job.design.sumps[0].discharge.reset();
  const auto study = studyOf(job);
  const DrawList list =
      elevationMarker(study, study.assess({0, 15.0}, "s"), "s", about(study, 15.0), voice());
  EXPECT_EQ(itemsTagged(list, "fan"), 0);
  EXPECT_EQ(itemsTagged(list, "outlet"), 0);
  EXPECT_TRUE(says(list, "unplaced"));
}

TEST(ElevationDrawing, TheZoneStaysWhereverTheRunGoes) {
  const auto here = studyOf(withRiser(3.2));
  const auto there = studyOf(withRiser(3.4, 16.5));
  const ElevationView view = about(here, 15.0);
  EXPECT_EQ(elevationBase(here, view, voice()), elevationBase(there, view, voice()));
  EXPECT_GT(itemsTagged(elevationBase(here, view, voice()), "zone"), 0);
}

// The dashed edge of the zone stands 1.555 m off the jamb where the outlet is at the window's
// height.
TEST(ElevationDrawing, TheEdgeOfTheZoneIsExact) {
  const auto study = studyOf(withRiser());
  const ElevationView view = about(study, 15.0);
  const Point edge = elevationPoint(study, view, {{0, 12.2 + 1.555}, 1.5});
  double nearest = 1e9;
  for (const Item& item : elevationBase(study, view, voice()).items) {
    const auto* stroke = std::get_if<Stroke>(&item.shape);
    if (item.tag != "zone" || stroke == nullptr || stroke->pen.dash_mm.empty()) continue;
    for (std::size_t i = 1; i < stroke->points.size(); ++i) {
      const Point a = stroke->points[i - 1];
      const Point b = stroke->points[i];
      if (std::min(a.y, b.y) > edge.y || std::max(a.y, b.y) < edge.y) continue;
      nearest = std::min(nearest, std::abs(a.x - edge.x));
    }
  }
  EXPECT_LT(nearest, 0.1);
}

TEST(ElevationDrawing, OpeningsAreFoundUnderThePointer) {
  const auto study = studyOf(withRiser());
  const ElevationView view = about(study, 15.0);
  EXPECT_EQ(elevationOpeningAt(study, view, elevationPoint(study, view, {{0, 11.6}, 1.5})),
            "kitchen");
  EXPECT_EQ(elevationOpeningAt(study, view, elevationPoint(study, view, {{0, 14.0}, 1.5})), "");
}

}  // namespace

}  // namespace sumpwright::drawing
