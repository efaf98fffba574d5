// Measuring a house through the real window.

#include <QAbstractItemView>
#include <QApplication>
#include <QFile>

#include "WindowFixture.h"
#include "geometry/Shapes.h"
#include "plan/JobText.h"
#include "plan/OutlineEdits.h"
#include "stages/SitingText.h"
#include "stages/ThingText.h"

namespace sumpwright::gui {
namespace {

class Survey : public WindowFixture {
 protected:
  void key(Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier) {
    QWidget* to = QApplication::focusWidget();
    QTest::keyClick(to == nullptr ? window.get() : to, key, with);
    ++keys;
  }
  void type(const QString& text) {
    for (const QChar c : text) {
      QWidget* to = QApplication::focusWidget();
      ASSERT_NE(to, nullptr);
      QTest::keyClick(to, c.toLatin1());
      ++keys;
    }
  }
  void line(const QString& text) {
    type(text);
    key(Qt::Key_Return);
  }
  void activate() {
    window->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
  }
  const plan::Plan& plan() { return session().job().plan; }
  void tapeBungalow() {
    for (const char* wall : {"e15.6", "n9.5", "w4.9", "s2.6", "w10.7", "s6.9"}) {
      line(QLatin1String(wall));
    }
  }

  /// Tab until the widget has the keys.
  void tabTo(const QWidget* widget) {
    for (int i = 0; i < 60 && QApplication::focusWidget() != widget; ++i) key(Qt::Key_Tab);
    ASSERT_EQ(QApplication::focusWidget(), widget)
        << "at " << QApplication::focusWidget()->metaObject()->className() << " "
        << QApplication::focusWidget()->accessibleName().toStdString() << ", wanted "
        << widget->accessibleName().toStdString() << " shown " << widget->isVisible();
  }
  void choose(QComboBox* combo, int index) {
    tabTo(combo);
    key(Qt::Key_Space);
    for (int i = combo->currentIndex(); i < index; ++i, ++keys) {
      QTest::keyClick(combo->view(), Qt::Key_Down);
    }
    QTest::keyClick(combo->view(), Qt::Key_Return);
    ++keys;
    ASSERT_EQ(combo->currentIndex(), index);
  }
  /// There, for every kind of which something is drawn; none for the others.
  void answerLookedFor() {
    key(Qt::Key_L, Qt::ControlModifier | Qt::ShiftModifier);
    const auto* page = window->survey().looked();
    for (std::size_t i = 0; i < page->rows().size(); ++i) {
      auto* row = page->rows()[i];
      ASSERT_TRUE(row->isAncestorOf(QApplication::focusWidget()));
      if (row->chosen() == 0) {
        const int answer = page->drawnText(i).isEmpty() ? 2 : 1;
        for (int times = 0; times < answer; ++times) key(Qt::Key_Right);
        ASSERT_EQ(row->chosen(), answer);
      }
      key(Qt::Key_Tab);
    }
  }
  void fill(const char* fact, const QString& text) {
    tabTo(window->survey().house()->field(fact));
    type(text);
  }
  void pick(const char* fact, int index) {
    choose(qobject_cast<QComboBox*>(window->survey().house()->field(fact)), index);
  }
  void answerHouse() {
    key(Qt::Key_H, Qt::ControlModifier);
    fill("/address", QStringLiteral("9 Quill Lane"));
    fill("/surveyor", QStringLiteral("A Tester"));
    pick("/survey_method", static_cast<int>(plan::SurveyMethod::tape));
    fill("/house/year_built", QStringLiteral("1984"));
    pick("/house/barrier", static_cast<int>(plan::Barrier::none));
    for (const char* leave : {"protected_structure", "conservation_area", "flats", "tenanted"}) {
      pick(qPrintable(QStringLiteral("/permissions/") + QLatin1String(leave)),
           static_cast<int>(plan::YesNo::no));
    }
  }
  stages::ThingsPage& things() { return *window->survey().things(); }

  int keys = 0;
};

TEST_F(Survey, ABungalowIsDrawnWithTheKeyboardAlone) {
  activate();
  dialogs.next_save = folder.filePath(QStringLiteral("bungalow.sump.json"));
  key(Qt::Key_N, Qt::ControlModifier);
  ASSERT_EQ(window->stage(), window::Stage::survey);
  tapeBungalow();
  EXPECT_EQ(plan().rings.at(0).taped.size(), 6U);
  key(Qt::Key_Return);  // the start is reached: closes
  ASSERT_TRUE(plan().rings[0].closed);
  EXPECT_NEAR(geometry::signedArea(plan().rings[0].corners), 15.6 * 9.5 - 10.7 * 2.6, 1e-9);
  ASSERT_EQ(window->survey().page(), stages::SurveyPage::things);

  for (const char* t : {"w1.2 1.8", "d4.5 1", "w7 1.8", "w11.5 1.8", "iw3.8", "iw6", "iw11.2"}) {
    line(QLatin1String(t));
  }
  key(Qt::Key_PageDown);  // B to C
  for (const char* t : {"w2 1.2", "w6 1.2", "iw4.5", "el8.8 6"}) line(QLatin1String(t));
  key(Qt::Key_PageDown);  // C to D
  for (const char* t : {"w1.8 1.2", "gas4.2 6"}) line(QLatin1String(t));
  key(Qt::Key_PageDown);  // D to E
  key(Qt::Key_PageDown);  // E to F
  for (const char* t : {"w2 1.2", "g6 1.8", "wa9 6", "dr9.6 6"}) line(QLatin1String(t));
  key(Qt::Key_PageDown);  // F to A
  for (const char* t : {"iw3.5", "tel6 6"}) line(QLatin1String(t));
  EXPECT_EQ(plan().openings.size(), 9U) << window->survey().things()->message().toStdString();
  EXPECT_EQ(plan().services.size(), 5U);
  EXPECT_EQ(plan().inner_walls.size(), 5U);
  key(Qt::Key_R, Qt::ControlModifier);
  EXPECT_EQ(plan().rooms.size(), 6U);
  line(QStringLiteral("floor slab"));
  ASSERT_EQ(plan().floor_zones.size(), 1U) << things().message().toStdString();
  ASSERT_NE(session().study(), nullptr);
  EXPECT_EQ(QApplication::focusWidget(), things().line());
  std::printf("[   keys   ] %d drawn\n", keys);
  EXPECT_LT(keys, 220);

  key(Qt::Key_PageDown);  // a wall in hand, not the last thing: A to B, the street side
  ASSERT_TRUE(things().wallForm()->isVisible()) << session().selected();
  choose(things().wallForm()->foundation(), static_cast<int>(plan::Foundation::strip));
  choose(things().wallForm()->ground(), static_cast<int>(plan::OutsideGround::own));
  tabTo(things().wallForm()->freeDepth());
  type(QStringLiteral("3"));
  choose(things().wallForm()->facts()->combo("elevation"),
         static_cast<int>(plan::Elevation::front));
  tabTo(things().wallForm()->facts()->field("thickness_m"));
  type(QStringLiteral("0.3"));
  tabTo(things().wallForm()->forAll());
  key(Qt::Key_Space);
  ASSERT_FALSE(HasFailure());
  answerLookedFor();
  answerHouse();
  ASSERT_FALSE(HasFailure());
  ASSERT_FALSE(session().study()->best().empty()) << "a place that is not refused";
  EXPECT_TRUE(middleOf(rules::State::clear).has_value()) << "a clear stretch";
  key(Qt::Key_B, Qt::ControlModifier);
  ASSERT_EQ(session().job().design.sumps.size(), 1U);
  EXPECT_EQ(state(), rules::State::clear)
      << stages::verdictBody(study(), *session().assessment()).toStdString();
  EXPECT_TRUE(stages::stateWord(state()) == QStringLiteral("Clear"));
  key(Qt::Key_S, Qt::ControlModifier);
  EXPECT_FALSE(session().isModified());
  dialogs.next_save = folder.filePath(QStringLiteral("bungalow.pdf"));
  key(Qt::Key_E, Qt::ControlModifier);
  EXPECT_TRUE(QFile::exists(dialogs.next_save)) << window->told().toStdString();

  QFile file(folder.filePath(QStringLiteral("bungalow.sump.json")));
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  const auto again = plan::readJob(file.readAll().toStdString());
  ASSERT_TRUE(again.ok());
  EXPECT_EQ(again->job, session().job());
  std::printf("[   keys   ] %d with the facts, saved and exported\n", keys);
  EXPECT_LT(keys, 400);
}

TEST_F(Survey, AWrongEntryIsCorrectedInPlaceAndTheRestFollows) {
  activate();
  key(Qt::Key_N, Qt::ControlModifier);
  for (const char* wall : {"e10", "n8", "w9", "s8"}) line(QLatin1String(wall));
  auto* page = window->survey().outline();
  EXPECT_TRUE(page->closingText().contains(QStringLiteral("1.000 m")))
      << page->closingText().toStdString();
  EXPECT_FALSE(page->hint()->isHidden()) << "a slip of a metre explains it";
  key(Qt::Key_Up, Qt::ControlModifier);
  key(Qt::Key_Up, Qt::ControlModifier);  // wall 3
  EXPECT_EQ(page->titleText(), QStringLiteral("Wall 3"));
  line(QStringLiteral("10"));
  EXPECT_EQ(plan().rings[0].taped[2].length_m, 10.0);
  EXPECT_TRUE(page->hint()->isHidden());
  EXPECT_TRUE(page->closingText().contains(QStringLiteral("exactly")))
      << page->closingText().toStdString();
  session().undoStack().undo();
  EXPECT_EQ(plan().rings[0].taped[2].length_m, 9.0);
}

TEST_F(Survey, TheArrowsTurnAndADirectionAloneWaitsForItsLength) {
  activate();
  key(Qt::Key_N, Qt::ControlModifier);
  key(Qt::Key_Up);
  line(QStringLiteral("4"));
  EXPECT_EQ(plan().rings[0].taped[0].bearing_deg, 0.0);
  line(QStringLiteral("r45"));  // "45 m to the right"? no: r with a length
  EXPECT_EQ(plan().rings[0].taped[1].bearing_deg, 90.0);
  line(QStringLiteral("w"));
  EXPECT_EQ(plan().rings[0].taped.size(), 2U);
  EXPECT_EQ(window->desk().heading_deg(), 270.0);
  line(QStringLiteral("3450mm"));
  EXPECT_DOUBLE_EQ(plan().rings[0].taped[2].length_m, 3.45);
  line(QStringLiteral("1,900"));
  EXPECT_FALSE(window->survey().outline()->reading(0)->isHidden());
  EXPECT_EQ(plan().rings[0].taped.size(), 3U);
}

TEST_F(Survey, ADragFromTheTapesEndDrawsAWallAndEscapeGivesItUp) {
  activate();
  key(Qt::Key_N, Qt::ControlModifier);
  canvas::PlanCanvas& canvas = window->canvas();
  const auto at = [&](double x, double y) { return canvas.toWidget({x, y}).toPoint(); };
  QTest::mousePress(&canvas, Qt::LeftButton, {}, at(0, 0));
  QTest::mouseMove(&canvas, at(3, 0.02));
  QTest::mouseMove(&canvas, at(6.01, 0.03));
  EXPECT_TRUE(window->desk().isDrawing());
  QTest::keyClick(&canvas, Qt::Key_Escape);
  QTest::mouseRelease(&canvas, Qt::LeftButton, {}, at(6, 0));
  EXPECT_TRUE(plan().rings.empty() || plan().rings[0].taped.empty());
  QTest::mousePress(&canvas, Qt::LeftButton, {}, at(0, 0));
  QTest::mouseMove(&canvas, at(3, 0.02));
  QTest::mouseMove(&canvas, at(6.01, 0.03));
  QTest::mouseRelease(&canvas, Qt::LeftButton, {}, at(6.01, 0.03));
  ASSERT_EQ(plan().rings.at(0).taped.size(), 1U);
  EXPECT_NEAR(plan().rings[0].taped[0].bearing_deg, 90.0, 1e-9);
  EXPECT_NEAR(plan().rings[0].taped[0].length_m, 6.0, 1e-9);
  EXPECT_EQ(session().undoStack().count(), 1);
}

TEST_F(Survey, DraggingAWallIsOneStepAndTheStudyFollows) {
  open(QStringLiteral("bungalow"));
  trigger("view.survey");
  canvas::PlanCanvas& canvas = window->canvas();
  const plan::Job before = session().job();
  const auto& corners = before.plan.rings[0].corners;
  const geometry::Point middle = geometry::lerp(corners[0], corners[1], 0.31);
  const geometry::Vec along = corners[1] - corners[0];
  const geometry::Vec out = (-1.0 / geometry::norm(along)) * geometry::left(along);
  const auto at = [&](double by) {
    return canvas.toWidget({middle.x + by * out.x, middle.y + by * out.y}).toPoint();
  };
  QTest::mousePress(&canvas, Qt::LeftButton, {}, at(-0.1));
  QTest::mouseMove(&canvas, at(0.3));
  QTest::mouseMove(&canvas, at(0.9));
  EXPECT_TRUE(session().isPreviewing());
  ASSERT_NE(session().study(), nullptr);
  EXPECT_NE(session().job(), before);
  QTest::mouseRelease(&canvas, Qt::LeftButton, {}, at(0.9));
  EXPECT_EQ(session().undoStack().count(), 1);
  session().undoStack().undo();
  EXPECT_EQ(session().job(), before);
}

TEST_F(Survey, WhatCannotBeReadStaysUntilEscape) {
  activate();
  window->newJob();
  tapeBungalow();
  key(Qt::Key_Return);
  ASSERT_TRUE(things().isVisible());
  line(QStringLiteral("xx 3"));
  EXPECT_EQ(things().line()->text(), QStringLiteral("xx 3"));
  EXPECT_TRUE(things().message().contains(QStringLiteral("xx")));
  key(Qt::Key_Escape);
  EXPECT_EQ(things().line()->text(), QString());
  EXPECT_FALSE(things().message().contains(QStringLiteral("xx")));
  EXPECT_EQ(QApplication::focusWidget(), things().line());
  type(QStringLiteral("?"));
  EXPECT_TRUE(things().message().contains(QStringLiteral("wc, ")));
  EXPECT_FALSE(things().message().contains(QStringLiteral("wc wc")));
}

TEST_F(Survey, WhatIsShownOutsideThePlanLeavesTheHouseInSight) {
  activate();
  window->newJob();
  tapeBungalow();
  key(Qt::Key_Return);
  window->canvas().fit();
  line(QStringLiteral("bo 0 6.00 9"));
  ASSERT_EQ(plan().outside.size(), 1U);
  const QRectF seen(window->canvas().rect());
  for (const geometry::Point corner : plan().rings[0].corners) {
    EXPECT_TRUE(seen.contains(window->canvas().toWidget(corner)));
  }
  EXPECT_TRUE(seen.contains(window->canvas().toWidget(plan().outside[0].points_m.front())) ||
              seen.contains(window->canvas().toWidget(plan().outside[0].points_m.back())));
}

TEST_F(Survey, ARefusalNamesThingsByWhatTheyAre) {
  open("bungalow");
  const plan::Opening& there = plan().openings.front();
  const base::Message refusal("plan.opening.overlap",
                              {base::text("thing", "window-99"), base::text("other", there.id),
                               base::metres("common", 0.5)});
  const QString said = stages::saidNamed(refusal, session().job());
  EXPECT_TRUE(said.startsWith(QStringLiteral("This one and "))) << said.toStdString();
  EXPECT_FALSE(said.contains(QString::fromStdString(there.id))) << said.toStdString();
}

TEST_F(Survey, UndoIsThePlansWhenNothingIsTyped) {
  activate();
  key(Qt::Key_N, Qt::ControlModifier);
  tapeBungalow();
  key(Qt::Key_Return);
  line(QStringLiteral("w 1.2 1.8"));
  ASSERT_EQ(plan().openings.size(), 1U);
  key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_TRUE(plan().openings.empty());
  EXPECT_TRUE(things().line()->text().isEmpty());
  key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_FALSE(plan().rings[0].closed);
}

TEST_F(Survey, AWallThatIsStillMissingIsNotSharedOut) {
  activate();
  key(Qt::Key_N, Qt::ControlModifier);
  for (const char* wall : {"e10", "n8", "w10"}) line(QLatin1String(wall));
  EXPECT_FALSE(window->survey().outline()->closeButton()->isEnabled());
  key(Qt::Key_Return);
  EXPECT_FALSE(plan().rings[0].closed);
  window->survey().outline()->sharing()->button(2)->click();
  ASSERT_TRUE(window->survey().outline()->closeButton()->isEnabled());
  window->survey().outline()->closeButton()->click();
  EXPECT_TRUE(plan().rings[0].closed);
  EXPECT_EQ(plan().rings[0].taped.size(), 3U);
}

TEST_F(Survey, TheCheckLeadsToTheThing) {
  open(QStringLiteral("bungalow"));
  trigger("survey.check");
  auto* list = window->survey().check()->list();
  ASSERT_EQ(list->count(), static_cast<int>(session().problems().size()));
  bool led = false;
  for (int row = 0; row < list->count(); ++row) {
    session().select({});
    Q_EMIT list->itemClicked(list->item(row));
    led = led || !session().selected().empty();
  }
  EXPECT_TRUE(led);
}

TEST_F(Survey, TheCheckCuresWhatCanSafelyBeCured) {
  open(QStringLiteral("bungalow"));
  plan::Job job = session().job();
  job.plan.openings[0].at.offset_m = 1000.0;
  ASSERT_TRUE(session().edit(QStringLiteral("off"), job).empty());
  trigger("survey.check");
  auto* check = window->survey().check();
  check->list()->setCurrentRow(0);
  ASSERT_FALSE(check->fixButton()->isHidden());
  check->fixButton()->click();
  EXPECT_FALSE(base::any(session().problems(), base::Gravity::unsound));
}

TEST_F(Survey, ADroppedFieldBookIsSaidAndComesBack) {
  activate();
  trigger("file.new");
  tapeBungalow();
  key(Qt::Key_Return);  // closes
  ASSERT_TRUE(plan().rings[0].closed);
  stages::SideNote* note = window->survey().bookGone();
  EXPECT_FALSE(note->isVisible());
  session().beginPreview();
  session().preview(plan::moveWall(session().job(), 0, 1, 0.5).value());
  session().finishPreview(QStringLiteral("Move a wall"));
  ASSERT_TRUE(plan().rings[0].taped.empty());
  EXPECT_TRUE(note->isVisible());
  EXPECT_TRUE(note->text().contains(QStringLiteral("field book")));
  Q_EMIT note->curePressed();
  EXPECT_FALSE(plan().rings[0].taped.empty());
  EXPECT_FALSE(note->isVisible());
}

}  // namespace
}  // namespace sumpwright::gui
