#include <algorithm>
#include <cmath>

#include "core/drawing/Drawn.h"
#include "drawing/Clip.h"
#include "drawing/FieldDrawing.h"
#include "suction/Field.h"
#include "suction/ModelOf.h"
#include "support/ColourScience.h"

namespace sumpwright::drawing {
namespace {

/// A bungalow with a rising wall that has a gap, a hole on each side of it, and its field.
class FieldPicture : public testing::Test {
 protected:
  explicit FieldPicture(const plan::Job& job = jobWithWall())
      : m_job(job),
        m_study(studyOf(m_job)),
        m_model(suction::modelOf(m_job, suction::Ground{}).value()),
        m_solver(suction::FieldSolver::of(m_model, {.cell_m = 0.1})),
        m_unit(*m_solver.unit({{1.2, 2.0}, 0.2})) {
    for (const double s : m_unit.suction) m_pa.push_back(0.012 * s);
    m_shown.field = {&m_solver.network(), &m_pa};
  }

  static plan::Job jobWithWall() {
    auto b = furnished();
    b.sump("s", 0, 1.5).sump("second", 0, 16.0);
    b.with([](plan::Job& job) {
      job.plan.rising_walls.push_back({"rising", {{5.0, 0.35}, {5.0, 7.65}}, 0.15, {{3.0, 3.6}}});
      job.plan.test_holes.push_back({"near", "", {2.5, 6.0}});
      job.plan.test_holes.push_back({"far", "", {8.0, 2.0}});
    });
    return b.job();
  }

  FieldSheet sheet(ThemeName name = ThemeName::light) const {
    return fieldSheet(m_study, m_model, fitted(m_study, 160.0, 120.0, name), voice(), "s");
  }

  plan::Job m_job;
  siting::Study m_study;
  suction::SuctionModel m_model;
  suction::FieldSolver m_solver;
  suction::UnitField m_unit;
  std::vector<double> m_pa;
  FieldShown m_shown;
};

std::vector<Colour> fillsTagged(const DrawList& list, const std::string& tag) {
  std::vector<Colour> out;
  for (const Item& item : list.items) {
    const auto* fill = std::get_if<Fill>(&item.shape);
    if (fill != nullptr && item.tag == tag) out.push_back(fill->colour);
  }
  return out;
}

TEST(FieldScale, ClassesAreOneTwoFive) {
  const FieldScale& scale = fieldScale(FieldKind::suction, ThemeName::light);
  EXPECT_EQ(scale.levels, (std::vector<double>{0.5, 1, 2, 5, 10, 20, 50, 100}));
  EXPECT_EQ(scale.colours.size(), 9U);
  EXPECT_EQ(scale.classOf(-3.0), 0U);
  EXPECT_EQ(scale.classOf(0.49), 0U);
  EXPECT_EQ(scale.classOf(0.5), 1U);
  EXPECT_EQ(scale.classOf(5.0), 4U);
  EXPECT_EQ(scale.classOf(4.999), 3U);
  EXPECT_EQ(scale.classOf(1e6), 8U);
}

/// Grey print and colour-blind eyes see the same order of steps.
TEST(FieldScale, EveryStepIsFurtherFromThePaper) {
  using support::Seen;
  for (const ThemeName name : {ThemeName::light, ThemeName::dark, ThemeName::paper}) {
    for (const FieldKind kind : {FieldKind::suction, FieldKind::chance}) {
      for (const Seen as :
           {Seen::as_drawn, Seen::protanopia, Seen::deuteranopia, Seen::tritanopia, Seen::grey}) {
        const auto lightness = [&](const Colour& c) {
          return support::lab(support::seen(c, as))[0];
        };
        const auto& colours = fieldScale(kind, name).colours;
        for (std::size_t k = 0; k + 1 < colours.size(); ++k) {
          const double step = lightness(colours[k + 1]) - lightness(colours[k]);
          EXPECT_GE(name == ThemeName::dark ? step : -step, 6.5)
              << static_cast<int>(as) << ' ' << k;
        }
      }
    }
  }
}

TEST(FieldScale, DrainedIsGreyAndKeepsTheOrder) {
  double before = 0.0;
  for (const Colour& c : fieldScale(FieldKind::suction, ThemeName::dark).colours) {
    const Colour grey = drained(c, {0, 0, 0, 255});
    EXPECT_EQ(grey.r, grey.g);
    EXPECT_EQ(grey.g, grey.b);
    EXPECT_GT(luminance(grey), before);
    before = luminance(grey);
  }
}

TEST_F(FieldPicture, PaintsClassesFromTheFloorUp) {
  const auto layers = fieldLayers(sheet(), m_shown, {}, voice());
  const auto fills = fillsTagged(layers.areas, "class");
  const auto& scale = fieldScale(FieldKind::suction, ThemeName::light);
  const double most = *std::max_element(m_pa.begin(), m_pa.end());
  ASSERT_EQ(fills.size(), scale.classOf(most) + 1);
  ASSERT_GE(fills.size(), 4U);
  for (std::size_t k = 0; k < fills.size(); ++k) EXPECT_EQ(fills[k], scale.colours[k]);
}

TEST_F(FieldPicture, NoContourCrossesARisingWallButInItsGap) {
  const FieldSheet drawn = sheet();
  const auto layers = fieldLayers(drawn, m_shown, {}, voice());
  const double wall_x = toPage(drawn.view, {5.0, 0.0}).x;
  const double gap_top = toPage(drawn.view, {5.0, 0.35 + 3.6}).y;
  const double gap_bottom = toPage(drawn.view, {5.0, 0.35 + 3.0}).y;
  int lines = 0;
  for (const Item& item : layers.areas.items) {
    const auto* stroke = std::get_if<Stroke>(&item.shape);
    if (stroke == nullptr) continue;
    ++lines;
    for (std::size_t i = 0; i + 1 < stroke->points.size(); ++i) {
      const Point a = stroke->points[i];
      const Point b = stroke->points[i + 1];
      if ((a.x - wall_x) * (b.x - wall_x) >= 0.0) continue;
      EXPECT_GT(a.y, gap_top - 1.5);
      EXPECT_LT(a.y, gap_bottom + 1.5);
    }
  }
  EXPECT_GT(lines, 3);
}

TEST_F(FieldPicture, WallsTheFieldFeelsAreHatchedSolids) {
  const FieldSheet drawn = sheet();
  EXPECT_GT(itemsTagged(drawn.over, "rising"), 20);
  EXPECT_EQ(itemsTagged(drawn.over, "pipe"), 0);    // heating pipes are left out
  EXPECT_EQ(itemsTagged(drawn.over, "socket"), 0);  // so are sockets
  EXPECT_GT(itemsTagged(drawn.over, "second"), 3);  // the other sump of the design
  EXPECT_EQ(itemsTagged(drawn.over, "s"), 0);       // the marker shows this one
}

TEST_F(FieldPicture, NamesEveryLevelOnceAndTheTargetWithItsUnit) {
  m_shown.target = 0.97 * *predictedAt(m_job.plan, m_shown.field)[0].predicted_pa;
  const auto layers = fieldLayers(sheet(), m_shown, {}, voice());
  EXPECT_GE(itemsTagged(layers.labels, "contour-label"), 4);
  EXPECT_GT(itemsTagged(layers.labels, "target-label"), 0);
  EXPECT_GT(itemsTagged(layers.areas, "target"), 1);  // halo and line
}

TEST_F(FieldPicture, ChanceHasAScaleOfItsOwn) {
  std::vector<double> chance;
  for (const double pa : m_pa) chance.push_back(std::min(1.0, pa / 20.0));
  m_shown = {{&m_solver.network(), &chance}, FieldKind::chance, 2.0 / 3.0, {}, false};
  const auto layers = fieldLayers(sheet(), m_shown, {}, voice());
  EXPECT_LE(fillsTagged(layers.areas, "class").size(), 5U);
  EXPECT_GT(itemsTagged(layers.areas, "target"), 0);
}

TEST_F(FieldPicture, StaleIsGreyThroughout) {
  m_shown.stale = true;
  const auto layers = fieldLayers(sheet(), m_shown, {}, voice());
  for (const Colour& c : fillsTagged(layers.areas, "class")) {
    EXPECT_NEAR(c.r, c.g, 2);  // the paper is no pure grey
    EXPECT_NEAR(c.g, c.b, 2);
  }
}

TEST_F(FieldPicture, HolesShowHowSureTheyAre) {
  auto marks = predictedAt(m_job.plan, m_shown.field);
  ASSERT_EQ(marks.size(), 2U);
  ASSERT_TRUE(marks[0].predicted_pa && marks[1].predicted_pa);
  EXPECT_GT(*marks[0].predicted_pa, *marks[1].predicted_pa);  // the far one is behind the wall
  const auto font = [&](const DrawList& list, const std::string& tag) {
    for (const Item& item : list.items) {
      const auto* text = std::get_if<Text>(&item.shape);
      if (text != nullptr && item.tag == tag) return text->font;
    }
    return Font{};
  };
  auto labels = fieldLayers(sheet(), m_shown, marks, voice()).labels;
  EXPECT_TRUE(font(labels, "near").italic);
  marks[0].measured_pa = 7.1;
  labels = fieldLayers(sheet(), m_shown, marks, voice()).labels;
  EXPECT_TRUE(font(labels, "near").bold);
  EXPECT_FALSE(font(labels, "near").italic);
  const int fresh = itemsTagged(labels, "near");
  marks[0].stale = true;
  labels = fieldLayers(sheet(), m_shown, marks, voice()).labels;
  EXPECT_TRUE(font(labels, "near").italic);
  EXPECT_EQ(itemsTagged(labels, "near"), fresh + 1);  // the wavy line
}

/// Saturation, too, has its greatest at the strong end of a dark screen: a pale end reads as weak.
TEST(FieldScale, TheStrongEndOfTheDarkIsTheMostSaturated) {
  const auto chroma = [](const Colour& c) {
    const auto lab = support::lab(support::seen(c, support::Seen::as_drawn));
    return std::hypot(lab[1], lab[2]);
  };
  const auto& colours = fieldScale(FieldKind::suction, ThemeName::dark).colours;
  for (std::size_t k = 0; k + 1 < colours.size(); ++k) {
    EXPECT_GT(chroma(colours[k + 1]), chroma(colours[k])) << k;
  }
}

TEST_F(FieldPicture, HolesCarryTheirNumbersAndNoWordsLieOnOthers) {
  for (int i = 0; i < 4; ++i) {
    m_job.plan.test_holes.push_back({"close-" + std::to_string(i), "", {2.6 + 0.25 * i, 6.0}});
  }
  const auto marks = predictedAt(m_job.plan, m_shown.field);
  EXPECT_EQ(marks.front().number, 1);
  EXPECT_EQ(marks.back().number, 6);
  const auto labels = fieldLayers(sheet(), m_shown, marks, voice()).labels;
  EXPECT_TRUE(says(labels, "hole-value 6 "));
  std::vector<Box> words;
  std::vector<Box> signs;
  for (const HoleMark& mark : marks) {
    signs.push_back(around(toPage(sheet().view, mark.at_m), 2.4, 2.4));
    for (const Item& item : labels.items) {
      if (item.tag == mark.id && std::holds_alternative<Text>(item.shape)) {
        words.push_back(boxOf(item.shape, voice()));
      }
    }
  }
  ASSERT_EQ(words.size(), marks.size());
  for (std::size_t i = 0; i < words.size(); ++i) {
    for (std::size_t k = 0; k < words.size(); ++k) {
      if (k == i) continue;
      EXPECT_FALSE(overlap(words[i], words[k])) << i << ' ' << k;
      EXPECT_FALSE(overlap(words[i], signs[k])) << i << " on the sign of " << k;
    }
  }
}

TEST_F(FieldPicture, AFloorWithoutAFigureIsHatched) {
  const auto hatched_mm = [](const DrawList& list) {
    double sum = 0.0;
    for (const Item& item : list.items) {
      const auto* line = std::get_if<Stroke>(&item.shape);
      if (item.tag != "off-floor" || line == nullptr) continue;
      sum += geometry::distance(line->points.front(), line->points.back());
    }
    return sum;
  };
  const double before = hatched_mm(sheet().over);
  plan::Job job = m_job;
  // The L's short arm, parted off beside the rising wall.
  plan::FloorZone timber = job.plan.floor_zones[0];
  timber.id = "timber";
  timber.kind = plan::FloorKind::suspended_timber;
  timber.outline_m = {{6.0, 0.35}, {9.65, 0.35}, {9.65, 4.65}, {6.0, 4.65}};
  job.plan.floor_zones[0].outline_m = {{0.35, 0.35}, {6.0, 0.35},  {6.0, 4.65},
                                       {5.65, 4.65}, {5.65, 7.65}, {0.35, 7.65}};
  job.plan.floor_zones.push_back(timber);
  const siting::Study study = studyOf(job);
  const auto model = suction::modelOf(job, suction::Ground{});
  ASSERT_TRUE(model.ok());
  const auto with =
      fieldSheet(study, *model, fitted(study, 160.0, 120.0, ThemeName::light), voice(), "s");
  EXPECT_GT(hatched_mm(with.over), before + 500.0);
}

TEST_F(FieldPicture, WithoutAFieldStillNamesRooms) {
  m_shown.field = {};
  const auto layers = fieldLayers(sheet(), m_shown, predictedAt(m_job.plan, {}), voice());
  EXPECT_TRUE(layers.areas.items.empty());
  EXPECT_FALSE(textsOf(layers.labels).empty());
}

TEST_F(FieldPicture, StaysInTheView) {
  for (const ThemeName name : {ThemeName::light, ThemeName::dark, ThemeName::paper}) {
    PlanView view = fitted(m_study, 120.0, 90.0, name);
    view.mm_per_m *= 2.0;  // parts of the house lie outside
    const FieldSheet close = fieldSheet(m_study, m_model, view, voice(), "s");
    expectInside(fieldPicture(close, m_shown, predictedAt(m_job.plan, m_shown.field), voice()),
                 voice());
  }
}

}  // namespace
}  // namespace sumpwright::drawing
