// Dragging the sump on the plan and on the tape.

#include <cmath>

#include "gui/WindowFixture.h"

namespace sumpwright::gui {
namespace {

using rules::State;

class Drag : public WindowFixture {
 protected:
  /// Puts the sump in the middle of refused wall, as the start of a drag, with nothing to undo.
  void startRefused() {
    open("bungalow");
    const auto refused = middleOf(State::refused);
    ASSERT_TRUE(refused);
    session().putAt(*refused);
    session().undoStack().clear();
    QCoreApplication::processEvents();
    ASSERT_EQ(state(), State::refused);
    ASSERT_EQ(window->panel().word(), QStringLiteral("Refused"));
  }
  /// From the grip to a place, keeping the distance it was taken at.
  void dragGripTo(perimeter::Place place, bool release = true) {
    canvas::PlanCanvas& plan = window->canvas();
    const QPointF grip = *plan.grip();
    const QPointF rod = grip - plan.toWidget(session().assessment()->point);
    const QPointF goal = plan.toWidget(study().perimeter().pointAt(place)) + rod;
    QTest::mousePress(&plan, Qt::LeftButton, {}, grip.toPoint());
    EXPECT_TRUE(plan.isDragging());
    constexpr int kSteps = 40;
    for (int i = 1; i <= kSteps; ++i) {
      QTest::mouseMove(&plan, (grip + (goal - grip) * i / kSteps).toPoint());
    }
    if (release) QTest::mouseRelease(&plan, Qt::LeftButton, {}, goal.toPoint());
  }
};

TEST_F(Drag, OnThePlanFromRefusedToClear) {
  startRefused();
  const auto clear = middleOf(State::clear);
  ASSERT_TRUE(clear);
  const QString sentence = window->panel().sentence();
  dragGripTo(*clear);
  EXPECT_FALSE(window->canvas().isDragging());
  EXPECT_EQ(state(), State::clear);
  EXPECT_EQ(window->panel().word(), QStringLiteral("Clear"));
  EXPECT_NE(window->panel().sentence(), sentence);
  EXPECT_TRUE(session().isModified());
  EXPECT_EQ(session().undoStack().count(), 1) << "one step for one gesture";
  // A pixel either way at the press and at the end.
  const double slip = 3.0 / window->canvas().camera().px_per_m;
  EXPECT_EQ(session().place()->ring, clear->ring);
  EXPECT_NEAR(session().place()->chainage_m, clear->chainage_m, slip);
}

TEST_F(Drag, TheVerdictIsLiveWhileTheButtonIsDown) {
  startRefused();
  dragGripTo(*middleOf(State::clear), false);
  EXPECT_TRUE(session().isMoving());
  EXPECT_EQ(window->panel().word(), QStringLiteral("Clear"));
  EXPECT_FALSE(session().isModified()) << "the job changes once, at the end";
  QTest::keyClick(&window->canvas(), Qt::Key_Escape);
  EXPECT_FALSE(session().isMoving());
  EXPECT_EQ(window->panel().word(), QStringLiteral("Refused"));
  EXPECT_EQ(session().undoStack().count(), 0);
}

TEST_F(Drag, APressOnTheBandPutsTheSumpThere) {
  startRefused();
  const auto clear = *middleOf(State::clear);
  const auto& edge = study().perimeter().edgeAt(clear);
  const QPointF out = QPointF(-edge.inward.x, edge.inward.y) * 9;  // into the band, 6 to 14 px off
  const QPointF at = window->canvas().toWidget(study().perimeter().pointAt(clear)) + out;
  QTest::mouseClick(&window->canvas(), Qt::LeftButton, {}, at.toPoint());
  EXPECT_EQ(state(), State::clear);
  EXPECT_EQ(session().undoStack().count(), 1);
}

TEST_F(Drag, OnTheTapeFromRefusedToClear) {
  startRefused();
  const auto clear = *middleOf(State::clear);
  tape::TapeStrip& strip = *window->tape().strip();
  const QPoint from(qRound(strip.xOf(*session().place())), 12);
  const QPoint to(qRound(strip.xOf(clear)), 12);
  QTest::mousePress(&strip, Qt::LeftButton, {}, from);
  EXPECT_TRUE(strip.isDragging());
  for (int i = 1; i <= 20; ++i) QTest::mouseMove(&strip, from + (to - from) * i / 20);
  EXPECT_EQ(window->panel().word(), QStringLiteral("Clear"));
  QTest::mouseRelease(&strip, Qt::LeftButton, {}, to);
  EXPECT_EQ(state(), State::clear);
  EXPECT_EQ(session().undoStack().count(), 1);
}

TEST_F(Drag, APressOnTheTapeJumps) {
  startRefused();
  tape::TapeStrip& strip = *window->tape().strip();
  const auto clear = *middleOf(State::clear);
  QTest::mouseClick(&strip, Qt::LeftButton, {}, QPoint(qRound(strip.xOf(clear)), 90));
  EXPECT_EQ(state(), State::clear);
}

TEST_F(Drag, UndoAndRedo) {
  startRefused();
  const auto before = session().job();
  dragGripTo(*middleOf(State::clear));
  const auto after = session().job();
  trigger("edit.undo");
  EXPECT_EQ(session().job(), before);
  EXPECT_EQ(window->panel().word(), QStringLiteral("Refused"));
  EXPECT_FALSE(session().isModified());
  trigger("edit.redo");
  EXPECT_EQ(session().job(), after);
  EXPECT_EQ(window->panel().word(), QStringLiteral("Clear"));
  EXPECT_FALSE(window->action("edit.redo")->isEnabled());
}

TEST_F(Drag, EmptyPaperPansAndAClickChooses) {
  open("bungalow");
  canvas::PlanCanvas& plan = window->canvas();
  const canvas::Camera before = plan.camera();
  const plan::Room& room = session().job().plan.rooms.front();
  QPointF middle;
  for (const auto& c : room.outline_m)
    middle += QPointF(c.x, c.y) / static_cast<double>(room.outline_m.size());
  const QPoint at = plan.toWidget({middle.x(), middle.y()}).toPoint();
  QTest::mousePress(&plan, Qt::LeftButton, {}, at);
  QTest::mouseMove(&plan, at + QPoint(30, 20));
  QTest::mouseMove(&plan, at + QPoint(60, 40));
  QTest::mouseRelease(&plan, Qt::LeftButton, {}, at + QPoint(60, 40));
  EXPECT_NE(plan.camera(), before);
  EXPECT_FALSE(session().isModified());
  EXPECT_TRUE(session().selected().empty());
  plan.fit();
  const auto& opening = session().job().plan.openings.front();
  const auto& edge =
      study().perimeter().edges(opening.at.ring)[static_cast<std::size_t>(opening.at.edge)];
  const auto spot =
      edge.from + (opening.at.offset_m + opening.width_m / 2) * edge.along + 0.1 * edge.inward;
  QTest::mouseClick(&plan, Qt::LeftButton, {}, plan.toWidget(spot).toPoint());
  EXPECT_EQ(session().selected(), opening.id);
}

TEST_F(Drag, ZoomKeepsThePointUnderThePointer) {
  open("bungalow");
  canvas::Camera camera = window->canvas().camera();
  const QSizeF size(800, 400);
  const QPointF at(600, 100);
  const auto before = camera.toPlan(at, size);
  camera.zoom(1.7, at, size);
  EXPECT_NEAR(camera.toPlan(at, size).x, before.x, 1e-9);
  EXPECT_NEAR(camera.toPlan(at, size).y, before.y, 1e-9);
  camera.zoom(1e9, at, size);
  EXPECT_EQ(camera.px_per_m, canvas::kMostPxPerM);
}

TEST_F(Drag, HoverIsSharedByPlanAndTape) {
  open("bungalow");
  tape::TapeStrip& strip = *window->tape().strip();
  const perimeter::Place place{0, 5.0};
  QTest::mouseMove(&strip, QPoint(qRound(strip.xOf(place)), 60));
  ASSERT_TRUE(session().hovered());
  EXPECT_NEAR(session().hovered()->chainage_m, 5.0, 0.1);  // a pixel of the tape is about 5 cm
}

}  // namespace
}  // namespace sumpwright::gui
