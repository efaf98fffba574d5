// Moving the sump by keys.

#include "gui/WindowFixture.h"

namespace sumpwright::gui {
namespace {

using rules::State;
constexpr double kTight_m = 1e-9;

class Keys : public WindowFixture {
 protected:
  void SetUp() override {
    open("bungalow");
    window->activateWindow();
    session().putAt({0, 3.0});
    session().undoStack().clear();
    window->canvas().setFocus();
    QCoreApplication::processEvents();
  }
  double at() { return session().place()->chainage_m; }
};

TEST_F(Keys, ArrowsAlongTheWall) {
  QTest::keyClick(&window->canvas(), Qt::Key_Right);
  EXPECT_NEAR(at(), 3.10, kTight_m);
  QTest::keyClick(&window->canvas(), Qt::Key_Left, Qt::ShiftModifier);
  EXPECT_NEAR(at(), 3.09, kTight_m);
  window->tape().strip()->setFocus();
  QTest::keyClick(window->tape().strip(), Qt::Key_Left);
  EXPECT_NEAR(at(), 2.99, kTight_m);
}

TEST_F(Keys, StepsInOneGoAreOneStepOfUndo) {
  for (int i = 0; i < 5; ++i) QTest::keyClick(&window->canvas(), Qt::Key_Right);
  EXPECT_NEAR(at(), 3.50, kTight_m);
  EXPECT_EQ(session().undoStack().count(), 1);
  trigger("edit.undo");
  EXPECT_NEAR(at(), 3.0, kTight_m);
}

TEST_F(Keys, ControlArrowGoesToTheNextClearStretch) {
  session().putAt(*middleOf(State::refused));
  QTest::keyClick(&window->canvas(), Qt::Key_Right, Qt::ControlModifier);
  EXPECT_EQ(state(), State::clear);
  const double first = at();
  QTest::keyClick(&window->canvas(), Qt::Key_Right, Qt::ControlModifier);
  EXPECT_EQ(state(), State::clear);
  EXPECT_NE(at(), first);
}

TEST_F(Keys, BestPlaceIsTheBestScored) {
  trigger("sump.best");
  for (const siting::BestPlace& best : study().best()) {
    EXPECT_LE(best.score, session().assessment()->score.total + 1e-9);
  }
}

TEST_F(Keys, ArrowsInAFieldStayInTheField) {
  trigger("sump.go_to");
  QLineEdit* field = window->panel().entry()->field();
  field->setFocus();
  const double before = at();
  QTest::keyClick(field, Qt::Key_Right);
  QTest::keyClick(field, Qt::Key_Left, Qt::ControlModifier);
  EXPECT_EQ(at(), before);
}

TEST_F(Keys, RemovingTheSumpLeavesThePlan) {
  QTest::keyClick(&window->canvas(), Qt::Key_Delete);
  EXPECT_FALSE(session().place());
  EXPECT_EQ(window->panel().word(), QStringLiteral("No sump yet"));
  trigger("sump.best");
  EXPECT_TRUE(session().place());
  trigger("edit.undo");
  trigger("edit.undo");
  EXPECT_NEAR(at(), 3.0, kTight_m);
}

TEST_F(Keys, F6GoesRound) {
  window->canvas().setFocus();
  trigger("view.next_part");
  EXPECT_TRUE(window->tape().strip()->hasFocus());
  trigger("view.next_part");
  EXPECT_FALSE(window->tape().strip()->hasFocus());
}

}  // namespace
}  // namespace sumpwright::gui
