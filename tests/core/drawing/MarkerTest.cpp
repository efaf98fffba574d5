#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "core/drawing/Drawn.h"
#include "drawing/Measure.h"
#include "drawing/PlanDrawing.h"
#include "drawing/Ties.h"
#include "geometry/Distance.h"

namespace sumpwright::drawing {
namespace {

using support::PlanBuilder;

TEST(Marker, GripStandsWithin45DegreesOutside) {
  const auto study = studyOf(furnished());
  const PlanView view = fitted(study, 200, 150, ThemeName::light);
  const double length = study.perimeter().length_m(0);
  for (double s = 0.05; s < length; s += 0.37) {
    const auto a = study.assess({0, s});
    const Point grip = gripCentre(study, a, view);
    const geometry::Vec inward = study.perimeter().edgeAt({0, s}).inward;
    const geometry::Vec out{-inward.x, inward.y};
    const Point riser = toPage(view, a.point) + 2.5 * out;
    const geometry::Vec stem = grip - riser;
    const double cosine = geometry::dot(stem, out) / geometry::norm(stem);
    EXPECT_GE(cosine, std::cos(45.0 * std::numbers::pi / 180.0) - 1e-9) << s;
  }
}

TEST(Marker, IsDrawnWhereHitTestsLookForIt) {
  const auto study = studyOf(furnished());
  const PlanView view = fitted(study, 200, 150, ThemeName::dark);
  const auto a = study.assess({0, 12.0});
  const Point grip = gripCentre(study, a, view);
  bool found = false;
  for (const Item& item : planMarker(study, a, view, voice()).items) {
    const auto* arc = std::get_if<Arc>(&item.shape);
    found = found || (item.tag == "grip" && arc != nullptr && arc->centre == grip);
  }
  EXPECT_TRUE(found);
}

/// Sumps "one" and "two" in the wall of a furnished house, and "standby" inside.
plan::Job withSumps() {
  plan::Job job = furnished();
  job.design.sumps.clear();
  for (const auto& [id, at] : {std::pair{"one", 3.0}, std::pair{"two", 14.0}}) {
    plan::Sump sump;
    sump.id = id;
    sump.chainage_m = at;
    job.design.sumps.push_back(sump);
  }
  plan::Sump standby;
  standby.id = "standby";
  standby.kind = plan::SumpKind::standby;
  standby.at_m = geometry::Point{2.0, 2.0};
  job.design.sumps.push_back(standby);
  return job;
}

TEST(Marker, TheOthersStandOnThePlanWithTheirNumbersWhereTheirSignsAre) {
  const auto study = studyOf(withSumps());
  const PlanView view = fitted(study, 200, 150, ThemeName::light);
  const auto signs = sumpSigns(study, view);
  ASSERT_EQ(signs.size(), 2u);
  EXPECT_EQ(signs[0].id, "one");
  EXPECT_EQ(signs[1].grip, gripCentre(study, study.assess({0, 14.0}), view));
  for (const bool grips : {true, false}) {
    const DrawList others = otherSumps(study, view, voice(), "one", grips);
    EXPECT_EQ(itemsTagged(others, "one"), 0) << "the marker draws it";
    EXPECT_GT(itemsTagged(others, "two"), 0);
    EXPECT_TRUE(says(others, "2"));
    expectInside(others, voice());
  }
  EXPECT_TRUE(otherSumps(studyOf(furnished()), view, voice(),
                         studyOf(furnished()).job().design.sumps.empty()
                             ? std::string()
                             : studyOf(furnished()).job().design.sumps.front().id)
                  .items.empty());
}

TEST(Marker, ANumberStandsAtTheGripWhereOneIsNeeded) {
  const auto study = studyOf(withSumps());
  const PlanView view = fitted(study, 200, 150, ThemeName::light);
  const auto a = study.assess({0, 14.0});
  const auto words = [&](int number) {
    return wordsOf(planMarker(study, a, view, voice(), false, {}, number), voice()).size();
  };
  EXPECT_EQ(words(2), words(0) + 1);
}

TEST(Marker, ShowsTheDistanceThatRefusesAndItsLimit) {
  const auto study = studyOf(PlanBuilder::rectangle(10, 8).window("w", 2, 4.0, 1.0));
  const auto a = study.assess({0, 10.0 + 8.0 + 3.355});  // 0.645 m before the window
  ASSERT_EQ(a.state, rules::State::refused);
  const DrawList list = planMarker(study, a, fitted(study, 200, 150, ThemeName::light), voice());
  EXPECT_GT(itemsTagged(list, "limit"), 0);
  EXPECT_GT(itemsTagged(list, "refuser"), 0);
  EXPECT_TRUE(says(list, "0.59"));  // less half of a 110 mm pipe
  EXPECT_TRUE(says(list, "1.50"));
}

/// A house with openings on both sides of its corners: near them two distances refuse at once.
plan::Job openingsAtCorners() {
  return PlanBuilder::rectangle(9, 7)
      .window("w0", 0, 7.2, 1.2)
      .window("w1", 1, 0.9, 1.2)
      .door("d1", 1, 5.0)
      .window("w2", 2, 0.7, 1.4)
      .window("w3", 3, 1.0, 1.0)
      .outside("gully", plan::OutsideKind::gully, {{10.0, -0.4}})
      .job();
}

/// The two lines of a label: the distance, and under it what that one needs.
void appendWords(std::vector<std::string>& words, const Measure& m) {
  const auto say = [&](const char* id, double metres) {
    words.push_back(voice().say(base::Message(id, {base::metres("length", metres)})));
  };
  say("drawing.distance", std::max(0.0, m.distance_m));
  say("drawing.limit", m.needed_m);
}

/// As the marker draws it, but for lines along the wall.
double awayFrom(const PlanView& view, const Box& box, const Measure& m) {
  return geometry::distanceToArea(
      {toPage(view, m.from), toPage(view, m.to)},
      {{box.left, box.top}, {box.right, box.top}, {box.right, box.bottom}, {box.left, box.bottom}});
}

/// A need that stood apart would be read with the other finding's distance.
TEST(Marker, EachOfTwoDistancesSaysItsOwnNeed) {
  const auto study = studyOf(openingsAtCorners());
  int pairs = 0;
  for (const double width : {150.0, 260.0}) {
    const PlanView view = fitted(study, width, 0.7 * width, ThemeName::light);
    for (double s = 0.05; s < study.perimeter().length_m(0); s += 0.1) {
      const auto a = study.assess({0, s});
      const auto measures = measuresToShow(study, a);
      if (measures.size() < 2 || measures[0].needed_m == measures[1].needed_m) continue;
      ++pairs;
      std::vector<std::string> expected;
      for (const Measure& m : measures) {
        if (m.distance_m >= 0.0 || (m.refused && !m.on_wall)) appendWords(expected, m);
      }
      EXPECT_EQ(textsOf(planMarker(study, a, view, voice())), expected) << s;
    }
  }
  EXPECT_GT(pairs, 20);
}

TEST(Marker, WordsOfTwoDistancesNeitherPartNorMeetNorStray) {
  const auto study = studyOf(openingsAtCorners());
  int looked_at = 0;
  const PlanView view = fitted(study, 260.0, 180.0, ThemeName::light);
  for (double s = 0.05; s < study.perimeter().length_m(0); s += 0.1) {
    const auto a = study.assess({0, s});
    const auto measures = measuresToShow(study, a);
    const auto words = wordsOf(planMarker(study, a, view, voice()), voice());
    if (measures.size() < 2 || words.size() != 4) continue;
    const std::array<Box, 2> labels{join(words[0], words[1]), join(words[2], words[3])};
    EXPECT_FALSE(overlap(labels[0], labels[1])) << s;
    for (const std::size_t first : {0U, 2U}) {
      EXPECT_NEAR(words[first].centre().x, words[first + 1].centre().x, 1e-9);
      EXPECT_LT(words[first + 1].top - words[first].bottom, 1.0);
    }
    if (measures[0].on_wall || measures[1].on_wall) continue;
    if (measures[0].thing == measures[1].thing) continue;  // the same line, measured twice
    ++looked_at;
    for (const std::size_t own : {0U, 1U}) {
      EXPECT_LT(awayFrom(view, labels[own], measures[own]),
                awayFrom(view, labels[own], measures[1 - own]))
          << s << ' ' << measures[own].thing;
    }
  }
  EXPECT_GT(looked_at, 10);
}

/// The drawn line is as long as the distance the rule found.
TEST(Measure, LineIsAsLongAsTheFinding) {
  const auto study = studyOf(furnished());
  int lines = 0;
  for (double s = 0.0; s < study.perimeter().length_m(0); s += 0.21) {
    const auto a = study.assess({0, s});
    for (const siting::Margin& m : a.margins) {
      const auto line = measureOf(study, a.place, m.rule, m.thing);
      if (!line || m.distance_m < 0.0) continue;
      const double drawn = line->on_wall ? std::abs(line->to_s_m - line->from_s_m)
                                         : geometry::distance(line->from, line->to);
      EXPECT_NEAR(drawn, m.distance_m, 1e-6) << m.rule << ' ' << m.thing << ' ' << s;
      ++lines;
    }
  }
  EXPECT_GT(lines, 500);
}

TEST(Measure, OfNothingIsNothing) {
  const auto study = studyOf(furnished());
  EXPECT_FALSE(measureOf(study, {0, 1.0}, "no such rule", "gas"));
  EXPECT_FALSE(measureOf(study, {0, 1.0}, study.sheet().rules[0].id, "no such thing"));
}

TEST(Ties, TwoCornersComeToTheWallsLength) {
  const auto study = studyOf(PlanBuilder::rectangle(10, 8));
  const Ties ties = tiesOf(study, {0, 3.25});
  ASSERT_TRUE(ties.before && ties.after);
  EXPECT_NEAR(ties.before->length_m, 3.25, 1e-9);
  EXPECT_NEAR(ties.after->length_m, 6.75, 1e-9);
  EXPECT_EQ(ties.before->label.find("letter")->value, base::text("letter", "A").value);
  EXPECT_EQ(ties.after->label.find("letter")->value, base::text("letter", "B").value);
  EXPECT_FALSE(ties.check);  // no jamb, and no other corner can be seen along a convex house
}

TEST(Ties, AJambIsTheCheckWhereThereIsOne) {
  const auto study = studyOf(PlanBuilder::rectangle(10, 8).window("w", 0, 5.0, 1.2));
  const Ties ties = tiesOf(study, {0, 3.25});
  ASSERT_TRUE(ties.check);
  EXPECT_TRUE(ties.check_on_wall);
  EXPECT_NEAR(ties.check->length_m, 1.75, 1e-9);
  EXPECT_EQ(ties.check->label.id, "drawing.jamb-left");
}

TEST(Ties, NextDoorsWallHidesTheCorner) {
  const auto study =
      studyOf(PlanBuilder::rectangle(10, 8).window("w", 0, 6.0, 1.2).wall(1, [](plan::Wall& w) {
        w.kind = plan::WallKind::party;
      }));
  const Ties ties = tiesOf(study, {0, 3.25});
  ASSERT_TRUE(ties.before && ties.after);
  EXPECT_EQ(ties.before->label.id, "thing.corner");
  EXPECT_EQ(ties.after->label.id, "drawing.jamb-right");  // the farther one: the surer tie
  EXPECT_NEAR(ties.after->length_m, 3.95, 1e-9);
}

TEST(Ties, ACornerAcrossTheInnerAngleIsSeen) {
  // From the wall east of the inner corner one sees the north-west wing's corner, not the others.
  const auto study = studyOf(PlanBuilder::lShape());
  const double s = 10.0 + 5.0 + 2.0;  // on edge 2, half way to the inner corner
  const Ties ties = tiesOf(study, {0, s});
  ASSERT_TRUE(ties.check);
  EXPECT_FALSE(ties.check_on_wall);
  EXPECT_NEAR(ties.check->length_m,
              geometry::distance(study.perimeter().pointAt({0, s}), ties.check->to), 1e-9);
}

TEST(Marker, ItsWordsKeepOffTheNamesOfRooms) {
  int met = 0;
  const siting::Study study = studyOf(furnished());
  for (const double width : {120.0, 150.0, 200.0}) {
    const PlanView view = fitted(study, width, 0.6 * width, ThemeName::light);
    const auto words = wordsOf(planBase(study, view, voice()), voice());
    for (double s = 0.4; s < study.perimeter().length_m(0); s += 0.7) {
      const auto a = study.assess({0, s});
      for (const Box& mine : wordsOf(planMarker(study, a, view, voice(), false, words), voice())) {
        for (const Box& other : words) met += overlap(mine, other) ? 1 : 0;
      }
    }
  }
  EXPECT_EQ(met, 0);
}

}  // namespace
}  // namespace sumpwright::drawing
