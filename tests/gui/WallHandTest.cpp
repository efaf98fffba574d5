// Laying and dragging what stands on walls, with the pointer on the real plan.

#include <QApplication>
#include <QLabel>
#include <QMenu>
#include <QToolButton>

#include "gui/WindowFixture.h"
#include "plan/ThingEdits.h"
#include "plan/WallEdits.h"
#include "tools/WallLaying.h"
#include "tools/WallThing.h"
#include "window/Actions.h"

namespace sumpwright::gui {
namespace {

using tools::Task;
using tools::TaskGroup;

class WallHand : public WindowFixture {
 protected:
  /// An invented house of 10 m by 8 m, surveyed.
  void drawHouse() {
    window->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    window->newJob();
    plan::Job job = session().job();
    job.house.wall_thickness_m = 0.3;
    ASSERT_TRUE(
        session().edit(QStringLiteral("house"), plan::rectangleHouse(job, 10.0, 8.0)).empty());
    window->showStage(window::Stage::survey);
    QCoreApplication::processEvents();
    canvas().fit();
    steps = session().undoStack().count();
  }
  canvas::PlanCanvas& canvas() { return window->canvas(); }
  const plan::Plan& plan() { return session().job().plan; }
  QPoint at(double x, double y) { return canvas().toWidget({x, y}).toPoint(); }
  void press(QPoint p) { QTest::mousePress(&canvas(), Qt::LeftButton, {}, p); }
  void move(QPoint p) { QTest::mouseMove(&canvas(), p); }
  void release(QPoint p) { QTest::mouseRelease(&canvas(), Qt::LeftButton, {}, p); }
  void click(QPoint p) {
    move(p);
    press(p);
    release(p);
  }
  void drag(QPoint from, QPoint to) {
    press(from);
    move((from + to) / 2);
    move(to);
  }
  void type(const char* text) { QTest::keyClicks(&canvas(), QLatin1String(text)); }
  void key(Qt::Key k) { QTest::keyClick(&canvas(), k); }
  int newSteps() { return session().undoStack().count() - steps; }
  /// A picture of the window, where a folder for them is named.
  void picture(const char* name) {
    const QString folder_name = qEnvironmentVariable("SUMPWRIGHT_PICTURES");
    if (folder_name.isEmpty()) return;
    QCoreApplication::processEvents();
    window->grab().save(folder_name + QLatin1Char('/') + QLatin1String(name));
  }

  int steps = 0;
};

TEST_F(WallHand, AClickLaysAndTheNextIsInHand) {
  drawHouse();
  trigger("task.window");
  EXPECT_EQ(window->tasks().task(), Task::lay_window);
  EXPECT_TRUE(canvas().strip()->button(TaskGroup::opening)->isChecked());
  move(at(2.53, 0.1));
  picture("lay-window.png");
  click(at(2.53, 0.1));
  ASSERT_EQ(plan().openings.size(), 1U);
  EXPECT_NEAR(plan().openings[0].at.offset_m, 1.95, 0.051);
  EXPECT_EQ(session().selected(), plan().openings[0].id);
  click(at(6.5, 0.1));
  EXPECT_EQ(plan().openings.size(), 2U);
  EXPECT_EQ(newSteps(), 2);
  EXPECT_EQ(session().undoStack().undoText(), QStringLiteral("Lay: Window"));
  session().undoStack().undo();
  EXPECT_EQ(plan().openings.size(), 1U);
  key(Qt::Key_Escape);
  EXPECT_EQ(window->tasks().task(), Task::choose);
  EXPECT_TRUE(canvas().strip()->button(TaskGroup::choose)->isChecked());
}

TEST_F(WallHand, TypedNumbersFixDistanceAndWidth) {
  drawHouse();
  trigger("task.door");
  move(at(9.9, 3.0));
  type("1.234");
  key(Qt::Key_Tab);
  type("105cm");
  EXPECT_EQ(QApplication::focusWidget(), &canvas()) << "Tab goes to the next number";
  move(at(4.0, 7.9));  // a trembling hand
  picture("lay-door-typed.png");
  key(Qt::Key_Return);
  ASSERT_EQ(plan().openings.size(), 1U);
  EXPECT_EQ(plan().openings[0].at, (plan::OnWall{0, 1, 1.234}));
  EXPECT_DOUBLE_EQ(plan().openings[0].width_m, 1.05);
  EXPECT_EQ(plan().openings[0].kind, plan::OpeningKind::door);
  type("4");
  key(Qt::Key_Escape);  // what was typed goes first
  EXPECT_EQ(window->tasks().task(), Task::lay_door);
  key(Qt::Key_Escape);
  EXPECT_EQ(window->tasks().task(), Task::choose);
  EXPECT_EQ(newSteps(), 1);
}

TEST_F(WallHand, OneAfterAnotherIsTypedAlongTheSameWall) {
  drawHouse();
  trigger("task.window");
  click(at(1.6, 0.1));
  for (const char* from : {"3 0.9", "5 0.9", "7"}) {
    type(from);
    key(Qt::Key_Return);
  }
  ASSERT_EQ(plan().openings.size(), 4U);
  EXPECT_EQ(plan().openings[3].at, (plan::OnWall{0, 0, 7.0}));
  EXPECT_DOUBLE_EQ(plan().openings[3].width_m, 0.9) << "like the last";
}

TEST_F(WallHand, ARefusedPlaceLaysNothing) {
  drawHouse();
  trigger("task.window");
  click(at(2.5, 0.1));
  move(at(2.9, 0.1));
  picture("lay-refused.png");
  click(at(2.9, 0.1));
  EXPECT_EQ(plan().openings.size(), 1U);
  type("9.5");
  key(Qt::Key_Return);
  EXPECT_EQ(plan().openings.size(), 1U) << "it would run past the end";
  EXPECT_EQ(newSteps(), 1);
}

TEST_F(WallHand, EveryKindOfTheMenusIsLaidByAClick) {
  drawHouse();
  int laid = 0;
  for (const window::ActionSpec& spec : window::taskActions()) {
    if (!spec.task || !tools::laysOnWall(*spec.task)) continue;
    SCOPED_TRACE(spec.id);
    window->action(spec.id)->trigger();
    click(at(3.0, 0.1));
    EXPECT_EQ(newSteps(), 1);
    EXPECT_FALSE(session().selected().empty());
    session().undoStack().undo();
    ++laid;
  }
  EXPECT_EQ(laid, 22);
}

TEST_F(WallHand, TheStripsMenusAreThoseOfTheSurvey) {
  drawHouse();
  for (const TaskGroup group : {TaskGroup::opening, TaskGroup::service, TaskGroup::on_wall}) {
    const QToolButton* button = canvas().strip()->button(group);
    ASSERT_NE(button, nullptr);
    ASSERT_NE(button->menu(), nullptr);
    EXPECT_GE(button->menu()->actions().size(), 6);
    EXPECT_FALSE(button->accessibleName().isEmpty());
  }
  trigger("task.gas");
  EXPECT_TRUE(canvas()
                  .strip()
                  ->button(TaskGroup::service)
                  ->accessibleName()
                  .contains(QStringLiteral("Gas")));
  EXPECT_TRUE(canvas().hint().contains(QStringLiteral("click")));
  trigger("task.opening");
  EXPECT_EQ(window->tasks().task(), Task::lay_window) << "the first where none was taken yet";
  trigger("task.vent");
  trigger("survey.choose");
  trigger("task.opening");
  EXPECT_EQ(window->tasks().task(), Task::lay_air_vent);
  window->showStage(window::Stage::siting);
  EXPECT_EQ(window->tasks().task(), Task::choose);
  EXPECT_TRUE(canvas().strip()->isHidden());
}

TEST_F(WallHand, ADragSlidesAnOpeningInOneStepAndTheStudyFollows) {
  open(QStringLiteral("bungalow"));
  trigger("view.survey");
  const plan::Job before = session().job();
  const plan::Opening opening = plan().openings.front();
  const auto spot = [&](double by_m) {
    plan::OnWall middle = opening.at;
    middle.offset_m += opening.width_m / 2 + by_m;
    const geometry::Segment face = *tools::faceOf(plan(), middle);
    const geometry::Vec run = face.b - face.a;
    const geometry::Point in =
        tools::pointOn(plan(), middle) + (0.1 / geometry::norm(run)) * geometry::left(run);
    return canvas().toWidget(in).toPoint();
  };
  drag(spot(0.0), spot(0.3));
  EXPECT_TRUE(session().isPreviewing());
  EXPECT_NE(session().study(), nullptr) << "judged anew while it goes";
  picture("drag-opening.png");
  release(spot(0.3));
  EXPECT_EQ(session().undoStack().count(), 1);
  EXPECT_NEAR(plan().openings.front().at.offset_m, opening.at.offset_m + 0.3, 0.1);
  session().undoStack().undo();
  EXPECT_EQ(session().job(), before);
  drag(spot(0.0), spot(0.4));
  key(Qt::Key_Escape);
  release(spot(0.4));
  EXPECT_EQ(session().job(), before);
  EXPECT_EQ(session().undoStack().index(), 0);
}

TEST_F(WallHand, ANumberTypedDuringADragWins) {
  drawHouse();
  trigger("task.window");
  click(at(2.5, 0.1));
  trigger("survey.choose");
  drag(at(2.5, 0.15), at(4.0, 0.15));
  type("3.333 0.9");
  move(at(7.0, 0.15));
  picture("drag-typed.png");
  release(at(7.0, 0.15));
  EXPECT_EQ(plan().openings[0].at, (plan::OnWall{0, 0, 3.333}));
  EXPECT_DOUBLE_EQ(plan().openings[0].width_m, 0.9);
}

TEST_F(WallHand, TheEndsOfTheChosenOneChangeItsWidth) {
  drawHouse();
  trigger("task.window");
  click(at(2.6, 0.1));
  trigger("survey.choose");
  const double left = plan().openings[0].at.offset_m;
  const double right = left + plan().openings[0].width_m;
  drag(at(right, 0.0), at(right + 0.6, 0.0));
  picture("drag-end.png");
  release(at(right + 0.6, 0.0));
  EXPECT_EQ(plan().openings[0].at.offset_m, left);
  EXPECT_NEAR(plan().openings[0].width_m, right - left + 0.6, 0.051);
}

TEST_F(WallHand, ServicesRadiatorsAndFeaturesAreChosenByAClickAndDragged) {
  drawHouse();
  struct Case {
    const char* action;
    double grip_y;  ///< where it is drawn
  };
  for (const Case& c :
       {Case{"task.gas", -1e9}, Case{"task.radiator", 0.33}, Case{"task.pier", 0.15}}) {
    SCOPED_TRACE(c.action);
    trigger(c.action);
    click(at(3.0, 0.1));
    const std::string id = session().selected();
    ASSERT_FALSE(id.empty());
    trigger("survey.choose");
    session().select({});
    // The plate of a service stands 8 mm of the page outside the wall.
    const QPoint grip = c.grip_y < -1e8 ? at(3.0, 0.0) + QPoint(0, 32) : at(3.0, c.grip_y);
    click(grip);
    EXPECT_EQ(session().selected(), id);
    const double was = tools::wallThingOf(session().job(), id)->at.offset_m;
    const QPoint by = at(4.0, 0.0) - at(3.0, 0.0);
    drag(grip, grip + by);
    release(grip + by);
    EXPECT_NEAR(tools::wallThingOf(session().job(), id)->at.offset_m, was + 1.0, 0.101);
    session().undoStack().undo();
    session().undoStack().undo();
  }
}

TEST_F(WallHand, CopiesStandBesideAndTwoComeInLine) {
  drawHouse();
  trigger("task.window");
  click(at(2.0, 0.1));
  trigger("survey.choose");
  const std::string first = session().selected();
  trigger("survey.copy");
  trigger("survey.copy");
  ASSERT_EQ(plan().openings.size(), 3U);
  EXPECT_NEAR(plan().openings[2].at.offset_m - plan().openings[1].at.offset_m,
              plan().openings[1].at.offset_m - plan().openings[0].at.offset_m, 1e-9);
  trigger("task.window");
  click(at(7.0, 7.9));
  trigger("survey.choose");
  const std::string north = session().selected();
  session().select(first);
  session().select(north);
  trigger("survey.in_line");
  EXPECT_NEAR(plan().openings[3].at.offset_m + plan().openings[3].width_m / 2,
              10.0 - plan().openings[0].at.offset_m - plan().openings[0].width_m / 2, 1e-9);
  EXPECT_EQ(newSteps(), 5);
  key(Qt::Key_Delete);
  EXPECT_EQ(plan().openings.size(), 3U);
}

TEST_F(WallHand, AThingIsShownAndChosenWhereThePlanHasNoStudy) {
  drawHouse();
  trigger("task.window");
  click(at(2.5, 0.1));
  trigger("survey.choose");
  plan::Job job = session().job();
  plan::Opening over = job.plan.openings[0];
  over.id = "over";
  job.plan.openings.push_back(over);  // contradicts itself: no study
  ASSERT_TRUE(session().edit(QStringLiteral("over"), job).empty());
  ASSERT_EQ(session().study(), nullptr);
  session().select({});
  click(at(2.5, 0.15));
  EXPECT_FALSE(session().selected().empty());
  canvas().zoomBy(8.0);
  const QRect sheet = canvas().rect();
  ASSERT_FALSE(sheet.contains(at(2.5, 0.0)));
  session().show("over");
  EXPECT_TRUE(sheet.contains(at(2.5, 0.0)));
}

TEST_F(WallHand, NoLetterOrLengthLiesUnderAButton) {
  drawHouse();
  // Letters stand 21 px off the corners, lengths 26 px off the walls and half as high as a line.
  const QRect strip = canvas().strip()->geometry();
  const double left = canvas().toWidget({0.0, 0.0}).x() - 44;
  const double right = canvas().toWidget({10.0, 8.0}).x() + 44;
  const int top = at(0.0, 8.0).y() - 44;
  EXPECT_TRUE(left > strip.right() || top > strip.bottom());
  EXPECT_LT(right, canvas().width() - 16 - 38);
  for (const QSize size : {QSize(1280, 720), QSize(1000, 640)}) {
    window->resize(size);
    QCoreApplication::processEvents();
    canvas().fit();
    EXPECT_TRUE(canvas().rect().contains(canvas().strip()->geometry()));
    EXPECT_LT(canvas().toWidget({10.0, 8.0}).x() + 44, canvas().width() - 16 - 38);
  }
}

TEST_F(WallHand, APlaceTypedThatCannotBeIsNotTakenForAnother) {
  drawHouse();
  trigger("task.window");
  click(at(2.5, 0.1));
  trigger("survey.choose");
  const plan::Job before = session().job();
  for (const char* typed : {"12", "1.0 0.9q"}) {  // past the end; a width that is none
    SCOPED_TRACE(typed);
    drag(at(2.5, 0.15), at(4.0, 0.15));
    type(typed);
    key(Qt::Key_Return);
    EXPECT_TRUE(session().isPreviewing()) << "it still has to be put right";
    release(at(4.0, 0.15));
    EXPECT_EQ(session().job(), before) << "not at 1 m, which was typed on the way";
  }
  drag(at(2.5, 0.15), at(4.0, 0.15));
  type("1");
  key(Qt::Key_Backspace);
  release(at(4.0, 0.15));
  EXPECT_NEAR(plan().openings[0].at.offset_m, before.plan.openings[0].at.offset_m + 1.5, 0.101)
      << "where the pointer is, once nothing is typed";
}

TEST_F(WallHand, FeetAndInchesAreOneNumberAndTabPartsTwo) {
  drawHouse();
  plan::Job job = session().job();
  job.display_units = plan::DisplayUnits::imperial;
  ASSERT_TRUE(session().edit(QStringLiteral("feet"), job).empty());
  trigger("task.window");
  click(at(8.0, 0.1));
  const double width = plan().openings[0].width_m;
  move(at(2.5, 0.1));
  type("3' 6\"");
  key(Qt::Key_Return);
  ASSERT_EQ(plan().openings.size(), 2U);
  EXPECT_NEAR(plan().openings[1].at.offset_m, 3.5 * 0.3048, 1e-9);
  EXPECT_EQ(plan().openings[1].width_m, width) << "six inches were no width";
  move(at(5.5, 0.1));
  type("15' 6\"");
  key(Qt::Key_Tab);
  type("2' 6\"");
  key(Qt::Key_Return);
  ASSERT_EQ(plan().openings.size(), 3U);
  EXPECT_NEAR(plan().openings[2].at.offset_m, 15.5 * 0.3048, 1e-9);
  EXPECT_NEAR(plan().openings[2].width_m, 2.5 * 0.3048, 1e-9);
}

}  // namespace
}  // namespace sumpwright::gui
