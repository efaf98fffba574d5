// Several sumps in one job: each is seen, taken, moved and removed on its own.

#include "gui/WindowFixture.h"
#include "plan/DesignEdits.h"

namespace sumpwright::gui {
namespace {

class Sumps : public WindowFixture {
 protected:
  /// A second sump, "two", on the wall opposite to the first; nothing to undo.
  void openWithTwo(const QString& sample = QStringLiteral("bungalow")) {
    open(sample);
    one = session().sump();
    first = *session().place();
    const double length = study().perimeter().length_m(first.ring);
    second = study().perimeter().wrapped({first.ring, first.chainage_m + length / 2});
    const auto problems =
        session().edit(QStringLiteral("second"),
                       plan::moveSump(session().job(), "two", second.ring, second.chainage_m));
    ASSERT_TRUE(problems.empty());
    session().undoStack().clear();
    QCoreApplication::processEvents();
  }
  const plan::Sump& sump(const std::string& id) {
    for (const plan::Sump& each : session().job().design.sumps) {
      if (each.id == id) return each;
    }
    throw std::runtime_error("no sump " + id);
  }
  QPointF out(perimeter::Place place) {
    const auto& edge = study().perimeter().edgeAt(place);
    return {-edge.inward.x, edge.inward.y};
  }
  QPoint hole(perimeter::Place place) {
    return window->canvas().toWidget(study().perimeter().pointAt(place)).toPoint();
  }

  std::string one;
  perimeter::Place first;
  perimeter::Place second;
};

TEST_F(Sumps, AClickOnASignChoosesThatSumpAndMovesNone) {
  openWithTwo();
  QTest::mouseClick(&window->canvas(), Qt::LeftButton, {}, hole(second));
  EXPECT_EQ(session().sump(), "two");
  EXPECT_EQ(session().place(), second);
  EXPECT_EQ(sump(one).chainage_m, first.chainage_m);
  EXPECT_FALSE(session().isModified());
  QTest::mouseClick(&window->canvas(), Qt::LeftButton, {}, hole(first));
  EXPECT_EQ(session().sump(), one);
  EXPECT_FALSE(session().isModified());
}

TEST_F(Sumps, ADragMovesTheOneThatWasTaken) {
  openWithTwo();
  const auto to = study().perimeter().wrapped({second.ring, second.chainage_m + 0.8});
  QTest::mousePress(&window->canvas(), Qt::LeftButton, {}, hole(second));
  ASSERT_TRUE(window->canvas().isDragging());
  for (int i = 1; i <= 10; ++i) {
    QTest::mouseMove(&window->canvas(), hole(second) + (hole(to) - hole(second)) * i / 10);
  }
  QTest::mouseRelease(&window->canvas(), Qt::LeftButton, {}, hole(to));
  EXPECT_NEAR(sump("two").chainage_m, to.chainage_m, 3.0 / window->canvas().camera().px_per_m);
  EXPECT_EQ(sump(one).chainage_m, first.chainage_m);
  EXPECT_EQ(session().undoStack().count(), 1);
}

TEST_F(Sumps, ArrowsAndThePressOnTheBandMoveTheChosenOne) {
  openWithTwo();
  QTest::mouseClick(&window->canvas(), Qt::LeftButton, {}, hole(second));
  window->canvas().setFocus();
  QTest::keyClick(&window->canvas(), Qt::Key_Right);
  EXPECT_NEAR(std::abs(sump("two").chainage_m - second.chainage_m), 0.1, 1e-9);
  const auto to = study().perimeter().wrapped({second.ring, second.chainage_m + 2.0});
  QTest::mouseClick(&window->canvas(), Qt::LeftButton, {}, hole(to) + (out(to) * 9).toPoint());
  EXPECT_NEAR(sump("two").chainage_m, to.chainage_m, 0.1);
  EXPECT_EQ(sump(one).chainage_m, first.chainage_m);
}

TEST_F(Sumps, DelTakesOutTheChosenOneAlone) {
  openWithTwo();
  QTest::mouseClick(&window->canvas(), Qt::LeftButton, {}, hole(second));
  window->canvas().setFocus();
  QTest::keyClick(&window->canvas(), Qt::Key_Delete);
  ASSERT_EQ(session().job().design.sumps.size(), 1u);
  EXPECT_EQ(session().job().design.sumps[0].id, one);
  EXPECT_EQ(session().sump(), one);
  EXPECT_EQ(session().place(), first);
}

TEST_F(Sumps, TheTapeTakesEachByItsGrip) {
  openWithTwo();
  tape::TapeStrip& strip = *window->tape().strip();
  QTest::mouseClick(&strip, Qt::LeftButton, {}, QPoint(qRound(strip.xOf(second)), 14));
  EXPECT_EQ(session().sump(), "two");
  EXPECT_FALSE(session().isModified());
  const auto to = study().perimeter().wrapped({second.ring, second.chainage_m + 3.0});
  QTest::mouseClick(&strip, Qt::LeftButton, {}, QPoint(qRound(strip.xOf(to)), 100));
  EXPECT_NEAR(sump("two").chainage_m, to.chainage_m, 0.1);
  EXPECT_EQ(sump(one).chainage_m, first.chainage_m);
}

TEST_F(Sumps, TheVerdictIsOfTheOneTheSwitchSays) {
  open("bungalow");
  EXPECT_FALSE(window->panel().sumps()->isVisible()) << "one needs no switch";
  openWithTwo();
  stages::Segments* row = window->panel().sumps()->row();
  ASSERT_NE(row, nullptr);
  EXPECT_TRUE(row->isVisible());
  EXPECT_EQ(row->chosen(), 0);
  EXPECT_EQ(row->button(1)->text(), QStringLiteral("Sump 2"));
  EXPECT_EQ(row->button(1)->accessibleName(), QStringLiteral("Sump looked at: Sump 2"));
  row->button(1)->setFocus();
  QTest::keyClick(row->button(1), Qt::Key_Space);
  EXPECT_EQ(session().sump(), "two");
  EXPECT_EQ(session().assessment()->place, second);
  // And the switch follows the plan.
  QTest::mouseClick(&window->canvas(), Qt::LeftButton, {}, hole(first));
  EXPECT_EQ(row->chosen(), 0);
  session().removeSump();
  QCoreApplication::processEvents();
  EXPECT_FALSE(window->panel().sumps()->isVisible());
}

TEST_F(Sumps, PlanAndTapeShowBoth) {
  openWithTwo();
  const auto differs = [&](QWidget& widget, const QPoint& at) {
    // Around the sump there is something that was not there without it.
    const QRect about(at - QPoint(9, 9), QSize(18, 18));
    const QImage with = widget.grab(about).toImage();
    session().chooseSump("two");
    session().removeSump();
    QCoreApplication::processEvents();
    const QImage without = widget.grab(about).toImage();
    session().undoStack().undo();
    session().chooseSump(one);
    QCoreApplication::processEvents();
    return with != without;
  };
  EXPECT_TRUE(differs(window->canvas(), hole(second)));
  tape::TapeStrip& strip = *window->tape().strip();
  EXPECT_TRUE(differs(strip, QPoint(qRound(strip.xOf(second)), 16)));
  QTest::keyClick(window.get(), Qt::Key_1, Qt::ControlModifier);
  EXPECT_TRUE(differs(window->canvas(), hole(second))) << "in the survey too";
}

TEST_F(Sumps, TheVerdictsSentenceIsWholeInALowWindow) {
  for (const char* name : {"bungalow", "extended-cottage", "courtyard", "mid-terrace"}) {
    openWithTwo(QString::fromLatin1(name));
    QCoreApplication::processEvents();
    const auto* sentence = window->panel().findChild<QLabel*>(QStringLiteral("verdictSentence"));
    EXPECT_GE(sentence->height(), sentence->heightForWidth(sentence->width())) << name;
  }
}

}  // namespace
}  // namespace sumpwright::gui
