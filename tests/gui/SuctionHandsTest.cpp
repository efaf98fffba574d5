// The stage Suction with pointer and keys, as it is used: through the widgets alone. And how it
// looks: nothing cut at 1280x720, light and dark, in both sorts of units; with
// SUMPWRIGHT_SHOTS=FOLDER the pictures are kept.

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QRegularExpression>
#include <QScrollArea>
#include <QScrollBar>

#include "WindowFixture.h"

namespace sumpwright::gui {
namespace {

class SuctionHands : public WindowFixture {
 protected:
  void TearDown() override { window->setTheme(window::ThemeChoice::light); }
  void openStage(const QString& sample) {
    dialogs.unsaved = window::Unsaved::discard;
    open(sample);
    QTest::keyClick(window.get(), Qt::Key_3, Qt::ControlModifier);
    ASSERT_EQ(window->stage(), window::Stage::suction);
    window->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    ASSERT_TRUE(isAnswered());
  }
  session::SuctionDesk& desk() { return window->suctionDesk(); }
  stages::SuctionPanel& panel() { return window->suction(); }
  bool isAnswered() {
    return QTest::qWaitFor(
        [this] {
          return !desk().isWorking() && desk().answer() != nullptr && !desk().isAnswerStale() &&
                 !desk().isStale();
        },
        60000);
  }
  /// Brings a part of the panel into sight and gives its middle.
  QPoint inSight(QWidget* part) {
    panel().findChild<QScrollArea*>()->ensureWidgetVisible(part);
    QCoreApplication::processEvents();
    return part->rect().center();
  }
  void inImperial() {
    plan::Job job = session().job();
    job.display_units = plan::DisplayUnits::imperial;
    session().edit(QStringLiteral("Units"), job);
    ASSERT_TRUE(isAnswered());
  }
  void typeInto(QLineEdit* field, const char* text, Qt::Key end) {
    QTest::mouseClick(field, Qt::LeftButton, {}, inSight(field));
    ASSERT_TRUE(field->hasFocus());
    QTest::keyClick(field, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(field, QLatin1String(text));
    QTest::keyClick(field, end);
  }
  void expectWholePanel() {
    for (int round = 0; round < 4; ++round) QCoreApplication::processEvents();
    const auto* scroll = panel().findChild<QScrollArea*>();
    EXPECT_GE(scroll->viewport()->height(), 120) << "room to read what scrolls";
    for (const QWidget* part : panel().findChildren<QWidget*>()) {
      if (!part->isVisible()) continue;
      const auto* label = qobject_cast<const QLabel*>(part);
      const bool control = label != nullptr || qobject_cast<const QAbstractButton*>(part) ||
                           qobject_cast<const QLineEdit*>(part) ||
                           qobject_cast<const QComboBox*>(part);
      if (!control) continue;
      const QWidget* in = scroll->widget()->isAncestorOf(part) ? scroll->viewport() : &panel();
      const int left = part->mapTo(in, QPoint()).x();
      EXPECT_GE(left, 0) << part->accessibleName().toStdString();
      EXPECT_LE(left + part->width(), in->width())
          << part->metaObject()->className() << part->accessibleName().toStdString();
      if (label == nullptr || label->text().isEmpty()) continue;
      if (label->wordWrap()) {
        EXPECT_GE(label->height(), label->heightForWidth(label->width()) - 1)
            << label->text().toStdString();
      } else {
        EXPECT_GE(label->width(), label->sizeHint().width() - 1) << label->text().toStdString();
      }
    }
  }
  void keepPicture(const QString& name) {
    const QString to = qEnvironmentVariable("SUMPWRIGHT_SHOTS");
    if (to.isEmpty()) return;
    auto* bar = panel().findChild<QScrollArea*>()->verticalScrollBar();
    int page = 0;
    for (int y = 0;; y += bar->pageStep(), ++page) {
      bar->setValue(y);
      QCoreApplication::processEvents();
      window->grab().save(QStringLiteral("%1/suction-%2-%3.png").arg(to, name).arg(page));
      if (y >= bar->maximum()) break;
    }
    bar->setValue(0);
  }
};

TEST_F(SuctionHands, ASecondSumpByItsButton) {
  openStage(QStringLiteral("extended-cottage"));
  ASSERT_TRUE(panel().second()->isVisible());
  QPushButton* add = nullptr;
  for (QPushButton* button : panel().second()->findChildren<QPushButton*>()) {
    if (button->isVisible() && button->text().contains(QStringLiteral("second sump"))) add = button;
  }
  ASSERT_NE(add, nullptr);
  const int steps = session().undoStack().index();
  QTest::mouseClick(add, Qt::LeftButton, {}, inSight(add));
  EXPECT_EQ(session().job().design.sumps.size(), 2U);
  EXPECT_EQ(session().undoStack().index(), steps + 1);
  ASSERT_TRUE(isAnswered());
  EXPECT_EQ(desk().field()->sumps.size(), 2U);
  EXPECT_EQ(panel().duty().count(QStringLiteral("≈")), 4) << "a duty point for each fan";
}

TEST_F(SuctionHands, AFanIsChosenWithTheKeys) {
  openStage(QStringLiteral("bungalow"));
  QComboBox* fan = panel().fan()->combo("/design/fan/id");
  ASSERT_NE(fan, nullptr);
  inSight(fan);
  fan->setFocus(Qt::TabFocusReason);
  const QString duty = panel().duty();
  QTest::keyClick(fan, Qt::Key_Down);  // opens the list
  ASSERT_TRUE(fan->view()->isVisible());
  QTest::keyClick(fan->view(), Qt::Key_End);
  QTest::keyClick(fan->view(), Qt::Key_Return);
  EXPECT_FALSE(session().job().design.fan.id.empty());
  ASSERT_TRUE(isAnswered());
  EXPECT_NE(panel().duty(), duty);
}

TEST_F(SuctionHands, HolesAreReadInWithTheKeys) {
  openStage(QStringLiteral("semi-detached"));
  stages::HoleTable& holes = *panel().holes();
  ASSERT_GE(holes.rows(), 3);
  const std::size_t tests = session().job().suction.tests.size();
  ASSERT_GE(tests, 1U);
  const int steps = session().undoStack().index();
  typeInto(holes.measured(0), "3.5", Qt::Key_Tab);
  QWidget* next = QApplication::focusWidget();
  ASSERT_EQ(next, holes.measured(1)) << "Tab goes down the column";
  QTest::keyClick(next, Qt::Key_A, Qt::ControlModifier);
  QTest::keyClicks(next, QStringLiteral("2,1"));
  QTest::keyClick(next, Qt::Key_Return);
  const auto readOf = [this](std::size_t hole) -> std::optional<double> {
    const plan::Job& job = session().job();
    for (const plan::HoleReading& r : job.suction.tests.back().readings) {
      if (r.hole == job.plan.test_holes[hole].id) return r.suction_pa;
    }
    return std::nullopt;
  };
  EXPECT_EQ(readOf(0), 3.5);
  EXPECT_EQ(readOf(1), 2.1);
  EXPECT_EQ(session().undoStack().index(), steps + 2) << "a step for each figure";
  EXPECT_EQ(session().job().suction.tests.size(), tests);
  typeInto(holes.measured(2), "much", Qt::Key_Return);
  EXPECT_EQ(holes.measured(2)->text(), QStringLiteral("much")) << "what was typed stays";
  EXPECT_FALSE(holes.noteUnder(2).isEmpty()) << "with the reason under it";
  EXPECT_EQ(session().undoStack().index(), steps + 2);
  // What was taken is undone where it stands; what is only typed is the field's own.
  const auto before = readOf(0);
  typeInto(holes.measured(0), "9", Qt::Key_Return);
  EXPECT_EQ(readOf(0), 9.0);
  QTest::keyClick(holes.measured(0), Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(readOf(0), before);
  EXPECT_EQ(session().undoStack().index(), steps + 2);
}

TEST_F(SuctionHands, FeetAndInchesAllThrough) {
  openStage(QStringLiteral("semi-detached"));
  inImperial();
  EXPECT_TRUE(panel().duty().contains(QStringLiteral("cfm"))) << panel().duty().toStdString();
  EXPECT_TRUE(panel().duty().contains(QStringLiteral("in. w.c.")));
  for (const QLabel* label : panel().findChildren<QLabel*>()) {
    if (!label->isVisible()) continue;
    EXPECT_FALSE(label->text().contains(QRegularExpression(QStringLiteral("[0-9] Pa\\b|m³/h"))))
        << label->text().toStdString();
  }
  // 0.02 in. w.c. are 0.02 x 249.0889 Pa (NIST SP 811 (2008), appendix B.8, from memory).
  typeInto(panel().ground()->line("/suction/target_pa"), "0.02", Qt::Key_Return);
  EXPECT_NEAR(session().job().suction.target_pa.value_or(0), 0.02 * 249.0889, 1e-9);
  EXPECT_EQ(panel().ground()->line("/suction/target_pa")->text(), QStringLiteral("0.02"));
  typeInto(panel().ground()->line("/suction/target_pa"), "6 Pa", Qt::Key_Return);
  EXPECT_EQ(session().job().suction.target_pa, 6.0) << "a unit means what it says";
  typeInto(panel().holes()->measured(0), "0.01", Qt::Key_Return);
  EXPECT_NEAR(session().job().suction.tests.back().readings.front().suction_pa, 2.490889, 1e-9);
  typeInto(panel().test()->line("flow_m3_s"), "70", Qt::Key_Return);
  // 70 cfm are 70 x 0.3048^3 / 60 m3/s (derived).
  EXPECT_NEAR(session().job().suction.tests.back().flow_m3_s.value_or(0), 0.0330363, 1e-6);
  typeInto(panel().ground()->line("/suction/ground/fill_depth_m"), "4\" to 1'", Qt::Key_Return);
  ASSERT_TRUE(session().job().suction.ground.fill_depth_m);
  EXPECT_NEAR(session().job().suction.ground.fill_depth_m->low, 0.1016, 1e-9);
  EXPECT_NEAR(session().job().suction.ground.fill_depth_m->high, 0.3048, 1e-9);
}

TEST_F(SuctionHands, LooksWholeInEveryLight) {
  for (const char* sample : {"bungalow", "semi-detached", "courtyard"}) {
    openStage(QString::fromLatin1(sample));
    for (const bool imperial : {false, true}) {
      if (imperial) inImperial();
      for (const char* theme : {"light", "dark"}) {
        trigger(qPrintable(QStringLiteral("view.theme_") + QLatin1String(theme)));
        SCOPED_TRACE(std::string(sample) + " " + theme + (imperial ? " imperial" : ""));
        expectWholePanel();
        keepPicture(
            QStringLiteral("%1-%2%3").arg(QLatin1String(sample), QLatin1String(theme),
                                          imperial ? QStringLiteral("-imperial") : QString()));
      }
    }
  }
}

}  // namespace
}  // namespace sumpwright::gui
