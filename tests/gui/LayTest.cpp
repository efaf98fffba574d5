// Points, lines and areas laid and dragged with the pointer, through the real window.

#include <QApplication>
#include <QLineEdit>
#include <QMouseEvent>

#include "WindowFixture.h"
#include "geometry/Shapes.h"
#include "plan/Dimensions.h"
#include "plan/JobText.h"
#include "plan/ThingEdits.h"

namespace sumpwright::gui {
namespace {

using tools::Task;

class Lay : public WindowFixture {
 protected:
  void onSample(const QString& name = QStringLiteral("bungalow")) {
    open(name);
    window->showStage(window::Stage::survey);
    QCoreApplication::processEvents();
    canvas().setFocus();
  }
  canvas::PlanCanvas& canvas() { return window->canvas(); }
  const plan::Plan& plan() { return session().job().plan; }
  std::string saved() { return plan::writeJob(session().job()); }

  QPoint at(geometry::Point p) { return canvas().toWidget(p).toPoint(); }
  void hover(geometry::Point p) { QTest::mouseMove(&canvas(), at(p)); }
  void click(geometry::Point p) {
    hover(p);
    QTest::mouseClick(&canvas(), Qt::LeftButton, Qt::NoModifier, at(p));
  }
  void drag(geometry::Point from, geometry::Point to, bool release = true) {
    hover(from);
    QTest::mousePress(&canvas(), Qt::LeftButton, Qt::NoModifier, at(from));
    for (int i = 1; i <= 4; ++i) {
      const QPointF p = canvas().toWidget(geometry::lerp(from, to, 0.25 * i));
      QMouseEvent move(QEvent::MouseMove, p, canvas().mapToGlobal(p), Qt::NoButton, Qt::LeftButton,
                       Qt::NoModifier);
      QApplication::sendEvent(&canvas(), &move);
    }
    if (release) QTest::mouseRelease(&canvas(), Qt::LeftButton, Qt::NoModifier, at(to));
  }
  void type(const char* text) { QTest::keyClicks(&canvas(), QLatin1String(text)); }
  void key(Qt::Key key) { QTest::keyClick(&canvas(), key); }
  void take(Task task) { window->takeTask(task); }
  /// A picture of the gesture half-way, light and dark, where a folder for them is named.
  void picture(const char* name) {
    const QString to = qEnvironmentVariable("SUMPWRIGHT_PICTURES");
    if (to.isEmpty()) return;
    for (const char* theme : {"dark", "light"}) {
      trigger(theme[0] == 'd' ? "view.theme_dark" : "view.theme_light");
      QCoreApplication::processEvents();
      window->grab().save(
          QStringLiteral("%1/%2-%3.png").arg(to, QLatin1String(name), QLatin1String(theme)));
    }
  }
  /// What was done is one step: undo, redo, and the saved form is the same.
  void expectOneStep(const std::string& before) {
    const std::string after = saved();
    EXPECT_TRUE(after != before) << "nothing was changed";
    trigger("edit.undo");
    EXPECT_TRUE(saved() == before) << "one step, no more and no less";
    trigger("edit.redo");
    EXPECT_TRUE(saved() == after);
  }
  geometry::Point corner(std::size_t i) { return plan().rings[0].corners[i]; }
  /// A place `along` the first wall and `off` outside it.
  geometry::Point before(double along, double off) {
    const geometry::Vec way = corner(1) - corner(0);
    const geometry::Vec unit = (1.0 / geometry::norm(way)) * way;
    return corner(0) + along * unit - off * geometry::left(unit);
  }
};

TEST_F(Lay, AClickLaysAGullyAndTypedDistancesWin) {
  onSample();
  const std::string start = saved();
  const std::size_t count = plan().outside.size();
  take(Task::lay_gully);
  click(before(2.0, 0.6));
  ASSERT_EQ(plan().outside.size(), count + 1);
  EXPECT_EQ(plan().outside.back().kind, plan::OutsideKind::gully);
  EXPECT_EQ(session().selected(), plan().outside.back().id);
  expectOneStep(start);
  hover(before(1.0, 0.5));
  type("1.23, 0.45");
  picture("lay-gully");
  key(Qt::Key_Return);
  ASSERT_EQ(plan().outside.size(), count + 2) << "still the same task";
  const geometry::Point laid = plan().outside.back().points_m.front();
  EXPECT_NEAR(geometry::distance(laid, before(1.23, 0.45)), 0.0, 1e-9);
}

TEST_F(Lay, ASumpInsideIsLaidDraggedAndTakenOut) {
  onSample();
  const std::string start = saved();
  const auto& sumps = session().job().design.sumps;
  const std::size_t count = sumps.size();
  take(Task::lay_sump_inside);
  const geometry::Point place = before(2.0, -1.5);
  click(place);
  ASSERT_EQ(session().job().design.sumps.size(), count + 1);
  EXPECT_EQ(session().job().design.sumps.back().kind, plan::SumpKind::internal);
  EXPECT_EQ(session().selected(), session().job().design.sumps.back().id);
  expectOneStep(start);
  const std::string laid = saved();
  key(Qt::Key_Escape);
  drag(place, before(3.0, -1.8));
  EXPECT_NEAR(geometry::distance(*session().job().design.sumps.back().at_m, before(3.0, -1.8)), 0.0,
              0.06);
  picture("sump-inside");
  expectOneStep(laid);
  key(Qt::Key_Delete);
  EXPECT_EQ(session().job().design.sumps.size(), count);
}

TEST_F(Lay, EscapeGivesTheGestureUpThenTheTask) {
  onSample();
  const std::string start = saved();
  take(Task::lay_path);
  click(before(0.0, 1.5));
  click(before(3.0, 1.5));
  key(Qt::Key_Escape);
  EXPECT_TRUE(saved() == start);
  EXPECT_EQ(window->tasks().task(), Task::lay_path);
  key(Qt::Key_Escape);
  EXPECT_EQ(window->tasks().task(), Task::choose);
}

TEST_F(Lay, ALineTakesTypedLengthsAndBackspace) {
  onSample();
  const std::string start = saved();
  const std::size_t count = plan().outside.size();
  take(Task::lay_boundary);
  click(before(0.0, 2.0));
  hover(before(3.0, 2.0));
  type("4.20");
  picture("lay-boundary");
  key(Qt::Key_Return);
  click(before(5.0, 3.0));
  key(Qt::Key_Backspace);  // the last point comes back
  EXPECT_TRUE(saved() == start) << "nothing is in the job before the end";
  key(Qt::Key_Return);
  ASSERT_EQ(plan().outside.size(), count + 1);
  const auto& line = plan().outside.back().points_m;
  ASSERT_EQ(line.size(), 2U);
  EXPECT_NEAR(geometry::distance(line[0], line[1]), 4.20, 1e-9);
  expectOneStep(start);
}

TEST_F(Lay, ADoubleClickEndsALine) {
  onSample();
  const std::size_t count = plan().heating_pipes.size();
  take(Task::lay_heating_pipe);
  click({2.0, 2.0});
  click({3.0, 2.0});
  // The second press of a double click, and its release.
  QTest::mouseDClick(&canvas(), Qt::LeftButton, Qt::NoModifier, at({3.0, 2.0}));
  QTest::mouseRelease(&canvas(), Qt::LeftButton, Qt::NoModifier, at({3.0, 2.0}));
  EXPECT_EQ(plan().heating_pipes.size(), count + 1);
}

TEST_F(Lay, ARoomIsPulledOpenAsARectangle) {
  onSample();
  const std::string start = saved();
  const std::size_t count = plan().rooms.size();
  take(Task::lay_room);
  drag({2.0, 2.0}, {3.5, 3.0}, false);
  picture("lay-room");
  QTest::mouseRelease(&canvas(), Qt::LeftButton, Qt::NoModifier, at({3.5, 3.0}));
  ASSERT_EQ(plan().rooms.size(), count + 1);
  EXPECT_EQ(plan().rooms.back().outline_m.size(), 4U);
  EXPECT_GT(geometry::signedArea(plan().rooms.back().outline_m), 1.0);
  expectOneStep(start);
}

TEST_F(Lay, AnAreaIsClickedRoundAndItsPointsAreDraggedPutInAndTakenOut) {
  onSample();
  take(Task::lay_deck);
  for (const geometry::Point p : {before(1.0, 1.0), before(3.0, 1.0), before(3.0, 2.0)}) click(p);
  key(Qt::Key_Return);
  const std::string id = session().selected();
  const auto outline = [&] {
    return std::get<plan::OutsideThing>(*plan::thingOf(session().job(), id)).points_m;
  };
  ASSERT_EQ(outline().size(), 3U);
  key(Qt::Key_Escape);  // back to choosing
  ASSERT_EQ(session().selected(), id);
  const std::string start = saved();
  drag(outline()[2], before(3.0, 2.5));
  EXPECT_NEAR(geometry::distance(outline()[2], before(3.0, 2.5)), 0.0, 0.06);
  expectOneStep(start);
  const geometry::Point middle = geometry::lerp(outline()[1], outline()[2], 0.5);
  drag(middle, before(3.6, 1.7), false);
  picture("put-in-point");
  QTest::mouseRelease(&canvas(), Qt::LeftButton, Qt::NoModifier, at(before(3.6, 1.7)));
  ASSERT_EQ(outline().size(), 4U);
  key(Qt::Key_Delete);  // the new point is in hand
  EXPECT_EQ(outline().size(), 3U);
}

TEST_F(Lay, APointIsDragged) {
  onSample();
  take(Task::lay_socket);
  click({2.0, 2.0});
  key(Qt::Key_Escape);
  const std::string start = saved();
  drag(plan().supplies.back().at_m, {2.6, 2.4});
  EXPECT_NEAR(geometry::distance(plan().supplies.back().at_m, {2.6, 2.4}), 0.0, 0.06);
  expectOneStep(start);
  key(Qt::Key_Delete);
  EXPECT_EQ(plan::thingOf(session().job(), session().selected()), std::nullopt);
}

TEST_F(Lay, AHouseBeginsAsARectangleAndGetsACourtyard) {
  trigger("file.new");
  QCoreApplication::processEvents();
  canvas().setFocus();
  take(Task::lay_house);
  drag({0.0, 0.0}, {12.0, 8.0});
  ASSERT_EQ(plan().rings.size(), 1U);
  EXPECT_TRUE(plan().rings[0].closed);
  EXPECT_EQ(window->tasks().task(), Task::choose);
  take(Task::lay_courtyard);
  drag({4.0, 3.0}, {7.0, 5.0});
  ASSERT_EQ(plan().rings.size(), 2U);
  trigger("edit.undo");
  EXPECT_EQ(plan().rings.size(), 1U);
  take(Task::tape_courtyard);
  click({4.0, 3.0});
  EXPECT_EQ(window->desk().ring(), 1);
  EXPECT_EQ(window->desk().drawFrom(), (geometry::Point{4.0, 3.0}));
}

TEST_F(Lay, AHouseBegunWithThePointerGoesOnToItsThings) {
  window->newJob();
  window->showSurvey(stages::SurveyPage::outline);
  QCoreApplication::processEvents();
  canvas().setFocus();
  take(Task::lay_house);
  drag({0.0, 0.0}, {10.0, 8.0});
  ASSERT_EQ(plan().rings.size(), 1U);
  EXPECT_EQ(window->survey().page(), stages::SurveyPage::things);
  // Gone to by hand it stays: a courtyard, or a look at the book.
  window->showSurvey(stages::SurveyPage::outline);
  take(Task::lay_courtyard);
  drag({4.0, 3.0}, {6.0, 5.0});
  ASSERT_EQ(plan().rings.size(), 2U);
  EXPECT_EQ(window->survey().page(), stages::SurveyPage::outline);
}

TEST_F(Lay, SidesTypedBeforeTheFirstWallBeginARectangle) {
  trigger("file.new");
  QLineEdit* field = window->survey().outline()->field();
  field->setFocus();
  QTest::keyClicks(field, QStringLiteral("12.4 x 8.6"));
  QTest::keyClick(field, Qt::Key_Return);
  ASSERT_EQ(plan().rings.size(), 1U);
  EXPECT_NEAR(geometry::signedArea(plan().rings[0].corners), 12.4 * 8.6, 1e-9);
  EXPECT_EQ(window->survey().page(), stages::SurveyPage::things);
}

TEST_F(Lay, AWallIsSplitWhereItIsClickedOrTyped) {
  onSample();
  const std::string start = saved();
  const std::size_t corners = plan().rings[0].corners.size();
  const auto& walls = plan().rings[0].walls;
  ASSERT_FALSE(walls.empty());
  take(Task::split_wall);
  hover(before(0.5, 0.0));
  type("0.30");
  picture("split-wall");
  key(Qt::Key_Return);
  ASSERT_EQ(plan().rings[0].corners.size(), corners + 1);
  EXPECT_NEAR(geometry::distance(corner(0), corner(1)), 0.30, 1e-9);
  expectOneStep(start);
}

TEST_F(Lay, AGapInARisingWallIsTwoClicks) {
  onSample();
  const std::size_t count = plan().rising_walls.size();
  take(Task::lay_rising_wall);
  click({1.5, 2.0});
  click({4.0, 2.0});
  key(Qt::Key_Return);
  ASSERT_EQ(plan().rising_walls.size(), count + 1);
  const auto gaps = [&] { return plan().rising_walls.back().gaps; };
  const std::string start = saved();
  take(Task::lay_gap);
  click({2.0, 2.0});
  hover({2.6, 2.0});
  type("0.8");
  picture("lay-gap");
  key(Qt::Key_Return);
  ASSERT_EQ(gaps().size(), 1U);
  EXPECT_NEAR(gaps()[0].to_m - gaps()[0].from_m, 0.8, 1e-9);
  expectOneStep(start);
  hover({2.4, 2.0});
  key(Qt::Key_Delete);
  EXPECT_TRUE(gaps().empty());
}

TEST_F(Lay, MeasuringChangesNothing) {
  onSample();
  const std::string start = saved();
  take(Task::measure);
  drag(corner(0), corner(3));
  picture("measure");
  EXPECT_TRUE(saved() == start);
  EXPECT_FALSE(session().isModified());
  EXPECT_TRUE(canvas().hint().contains(QStringLiteral("Escape"))) << canvas().hint().toStdString();
  key(Qt::Key_Escape);
  EXPECT_EQ(window->tasks().task(), Task::measure);
  key(Qt::Key_Escape);
  EXPECT_EQ(window->tasks().task(), Task::choose);
}

TEST_F(Lay, ADimensionIsPulledOutDraggedAndTakenOff) {
  onSample();
  const std::string start = saved();
  take(Task::dimension);
  click(corner(0));
  click(corner(1));
  hover(before(2.0, 1.5));
  picture("dimension");
  click(before(2.0, 1.5));
  ASSERT_EQ(plan().dimensions.size(), 1U);
  expectOneStep(start);
  key(Qt::Key_Escape);
  key(Qt::Key_Escape);
  session().select({});
  const double off = plan().dimensions[0].off_m;
  drag(before(2.0, std::abs(off)), before(2.0, std::abs(off) + 0.5));
  ASSERT_EQ(plan().dimensions.size(), 1U);
  EXPECT_NEAR(std::abs(plan().dimensions[0].off_m), std::abs(off) + 0.5, 0.06);
  EXPECT_EQ(session().selected(), plan().dimensions[0].id);
  key(Qt::Key_Delete);
  EXPECT_TRUE(plan().dimensions.empty());
}

TEST_F(Lay, AWallGetsTheLengthTypedOnItsDimension) {
  onSample();
  session().select(plan().rings[0].walls[0].id);
  QCoreApplication::processEvents();
  const std::string start = saved();
  const double length = geometry::distance(corner(0), corner(1));
  const geometry::Point middle = before(length / 2.0, 0.0);
  // The dimension stands 64 px outside the wall.
  const double off = 64.0 / canvas().camera().px_per_m;
  click(middle - off * ((1.0 / length) * geometry::left(corner(1) - corner(0))));
  type("11.11");
  picture("wall-length");
  key(Qt::Key_Return);
  EXPECT_NEAR(geometry::distance(corner(0), corner(1)), 11.11, 1e-9);
  expectOneStep(start);
}

TEST_F(Lay, ACornerThatIsClickedIsTakenOut) {
  onSample();
  const std::string start = saved();
  const std::size_t corners = plan().rings[0].corners.size();
  ASSERT_GT(corners, 3U);
  const geometry::Point gone = corner(2);
  key(Qt::Key_Delete);
  EXPECT_EQ(plan().rings[0].corners.size(), corners) << "none in hand yet";
  click(gone);
  key(Qt::Key_Delete);
  ASSERT_EQ(plan().rings[0].corners.size(), corners - 1);
  for (const geometry::Point p : plan().rings[0].corners) EXPECT_FALSE(p == gone);
  expectOneStep(start);
}

TEST_F(Lay, AWallLeftOutIsPutIntoTheFieldBook) {
  trigger("file.new");
  stages::OutlinePage* page = window->survey().outline();
  QLineEdit* field = page->field();
  field->setFocus();
  for (const char* wall : {"e 10", "w 4", "s 5"}) {
    QTest::keyClicks(field, QLatin1String(wall));
    QTest::keyClick(field, Qt::Key_Return);
  }
  QTest::keyClick(field, Qt::Key_Up, Qt::ControlModifier);
  QTest::keyClick(field, Qt::Key_Up, Qt::ControlModifier);  // wall 2
  QTest::keyClick(field, Qt::Key_Insert);
  EXPECT_TRUE(page->titleText().contains(QLatin1Char('2'))) << page->titleText().toStdString();
  QTest::keyClicks(field, QStringLiteral("n 5"));
  QTest::keyClick(field, Qt::Key_Return);
  ASSERT_EQ(plan().rings[0].taped.size(), 4U);
  EXPECT_NEAR(plan().rings[0].taped[1].length_m, 5.0, 1e-12);
  EXPECT_NEAR(plan().rings[0].taped[2].length_m, 4.0, 1e-12);
  EXPECT_FALSE(window->desk().inserting().has_value());
  trigger("edit.undo");
  EXPECT_EQ(plan().rings[0].taped.size(), 3U);
}

TEST_F(Lay, EnterWithTheButtonDownEndsTheGestureThere) {
  trigger("file.new");
  window->showStage(window::Stage::survey);
  QCoreApplication::processEvents();
  canvas().setFocus();
  take(Task::lay_house);
  drag({0.0, 0.0}, {12.0, 8.0});
  ASSERT_EQ(plan().rings.size(), 1U);
  take(Task::lay_room);
  drag({2.0, 2.0}, {5.0, 4.0}, false);
  type("3 x 2");
  key(Qt::Key_Return);
  ASSERT_EQ(plan().rooms.size(), 1U);
  const std::string start = saved();
  QTest::mouseRelease(&canvas(), Qt::LeftButton, Qt::NoModifier, at({5.0, 4.0}));
  EXPECT_TRUE(saved() == start) << "letting the button go lays nothing more";
  // A place alone that is not taken yet: nothing begins there.
  take(Task::tape_courtyard);
  hover({4.0, 3.0});
  QTest::mousePress(&canvas(), Qt::LeftButton, Qt::NoModifier, at({4.0, 3.0}));
  key(Qt::Key_Return);
  EXPECT_EQ(window->tasks().task(), Task::tape_courtyard);
  QTest::mouseRelease(&canvas(), Qt::LeftButton, Qt::NoModifier, at({4.0, 3.0}));
  EXPECT_EQ(window->desk().ring(), 0);
}

TEST_F(Lay, ALengthTypedWhileALineIsPulledWins) {
  onSample();
  const std::size_t count = plan().outside.size();
  take(Task::lay_boundary);
  drag(before(0.0, 2.0), before(3.0, 2.0), false);
  type("4.20");
  QTest::mouseRelease(&canvas(), Qt::LeftButton, Qt::NoModifier, at(before(3.0, 2.0)));
  key(Qt::Key_Return);
  ASSERT_EQ(plan().outside.size(), count + 1);
  const auto& line = plan().outside.back().points_m;
  ASSERT_EQ(line.size(), 2U);
  EXPECT_NEAR(geometry::distance(line[0], line[1]), 4.20, 1e-9);
}

TEST_F(Lay, APointIsNotLeftWhereAHalfReadNumberPutIt) {
  onSample();
  take(Task::lay_boundary);
  click(before(0.0, 2.0));
  click(before(3.0, 2.0));
  key(Qt::Key_Return);
  key(Qt::Key_Escape);
  const std::string start = saved();
  const geometry::Point end = plan().outside.back().points_m.back();
  drag(end, end + geometry::Vec{0.5, 0.0}, false);
  type("1.2q");  // as far as "1.2" it could be read
  key(Qt::Key_Return);
  EXPECT_TRUE(session().isPreviewing()) << "it still has to be put right";
  QTest::mouseRelease(&canvas(), Qt::LeftButton, Qt::NoModifier, at(end));
  EXPECT_FALSE(session().isPreviewing());
  EXPECT_TRUE(saved() == start);
}

TEST_F(Lay, AnotherButtonDuringADragDoesNotStrandIt) {
  onSample();
  take(Task::lay_gully);
  click(before(2.0, 0.6));
  key(Qt::Key_Escape);
  const geometry::Point gully = plan().outside.back().points_m.front();
  const geometry::Point to = gully - geometry::Vec{0.0, 0.5};
  drag(gully, to, false);
  ASSERT_TRUE(session().isPreviewing());
  QTest::mousePress(&canvas(), Qt::MiddleButton, Qt::NoModifier, at(to));
  QTest::mouseRelease(&canvas(), Qt::LeftButton, Qt::NoModifier, at(to));
  EXPECT_FALSE(session().isPreviewing()) << "the hand has let it go";
  QTest::mouseRelease(&canvas(), Qt::MiddleButton, Qt::NoModifier, at(to));
  EXPECT_NEAR(geometry::distance(plan().outside.back().points_m.front(), to), 0.0, 0.15)
      << "it snaps";
}

TEST_F(Lay, AWallIsNotSplitElsewhereThanTyped) {
  onSample();
  const std::string start = saved();
  take(Task::split_wall);
  for (const char* typed : {"99", "0.3q"}) {  // past the end; no length
    SCOPED_TRACE(typed);
    hover(before(0.8, 0.0));
    hover(before(0.5, 0.0));
    type(typed);
    key(Qt::Key_Return);
    EXPECT_TRUE(saved() == start) << "not where the pointer is";
    key(Qt::Key_Escape);
  }
  EXPECT_EQ(window->tasks().task(), Task::split_wall);
}

TEST_F(Lay, AGapIsAsWideAsTypedOrNone) {
  onSample();
  take(Task::lay_rising_wall);
  click({1.5, 2.0});
  click({4.0, 2.0});
  key(Qt::Key_Return);
  take(Task::lay_gap);
  click({2.0, 2.0});
  hover({2.6, 2.0});
  type("50");
  key(Qt::Key_Return);
  EXPECT_TRUE(plan().rising_walls.back().gaps.empty()) << "the wall is not so long";
  key(Qt::Key_Backspace);
  key(Qt::Key_Backspace);
  type("0.5");
  key(Qt::Key_Return);
  ASSERT_EQ(plan().rising_walls.back().gaps.size(), 1U);
  const plan::Gap gap = plan().rising_walls.back().gaps[0];
  EXPECT_NEAR(gap.to_m - gap.from_m, 0.5, 1e-9);
}

TEST_F(Lay, AClickTakesWhatIsTypedAndNeverDropsIt) {
  onSample();
  const std::size_t rooms = plan().rooms.size();
  take(Task::lay_room);
  click({2.0, 2.0});
  hover({2.5, 2.5});
  type("0.7q");
  click({3.0, 3.0});
  key(Qt::Key_Return);
  EXPECT_EQ(plan().rooms.size(), rooms) << "that is no length: nothing is taken";
  for (int i = 0; i < 4; ++i) key(Qt::Key_Backspace);
  type("0.7 x 0.6");
  click({3.0, 3.0});
  ASSERT_EQ(plan().rooms.size(), rooms + 1);
  EXPECT_NEAR(geometry::signedArea(plan().rooms.back().outline_m), 0.7 * 0.6, 1e-9);
}

}  // namespace
}  // namespace sumpwright::gui
