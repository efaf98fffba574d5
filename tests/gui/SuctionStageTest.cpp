// The stage Suction: the field that follows the sump, the answer behind it, what can be changed.

#include <QAbstractItemView>
#include <QScrollArea>
#include <QScrollBar>
#include <cmath>

#include "WindowFixture.h"
#include "geometry/Distance.h"
#include "paint/Look.h"
#include "plan/SuctionEdits.h"
#include "plan/ThingEdits.h"
#include "window/FocusRing.h"

namespace sumpwright::gui {
namespace {

class SuctionStage : public WindowFixture {
 protected:
  void openSuction(const QString& sample = QStringLiteral("extended-cottage")) {
    open(sample);
    QTest::keyClick(window.get(), Qt::Key_3, Qt::ControlModifier);
    ASSERT_EQ(window->stage(), window::Stage::suction);
    ASSERT_TRUE(settled());
  }
  session::SuctionDesk& desk() { return window->suctionDesk(); }
  stages::SuctionPanel& panel() { return window->suction(); }
  /// The answer is there, of the plan as it is.
  bool settled() {
    return QTest::qWaitFor(
        [this] {
          return !desk().isWorking() && desk().answer() != nullptr && !desk().isAnswerStale() &&
                 !desk().isStale();
        },
        60000);
  }
};

TEST_F(SuctionStage, ShowsAPredictionWithItsBand) {
  openSuction();
  ASSERT_TRUE(desk().field());
  EXPECT_TRUE(panel().share().startsWith(QStringLiteral("≈ "))) << panel().share().toStdString();
  EXPECT_TRUE(panel().band().contains(QStringLiteral("Predicted, not measured")));
  EXPECT_TRUE(panel().sentence().startsWith(QStringLiteral("Prediction")));
  EXPECT_TRUE(window->canvas().isShowingField());
  EXPECT_TRUE(
      window->rail().button(window::Stage::suction)->words().contains(QStringLiteral("predicted")));
  ASSERT_NE(desk().along(), nullptr);
  EXPECT_FALSE(desk().along()->places().empty());
}

TEST_F(SuctionStage, TheLargeFigureIsTheOneOfTheSentence) {
  for (const char* sample : {"bungalow", "standby-sump", "extended-cottage"}) {
    openSuction(QString::fromLatin1(sample));
    const QString figure = panel().share().mid(2);
    EXPECT_TRUE(panel().sentence().contains(QStringLiteral("under %1 of the floor").arg(figure)))
        << panel().share().toStdString() << " / " << panel().sentence().toStdString();
    EXPECT_TRUE(window->rail().button(window::Stage::suction)->words().startsWith(figure));
    EXPECT_TRUE(panel().sentence().contains(
        QStringLiteral("in %1 of %2 guesses")
            .arg(std::lround(desk().answer()->whole_floor * desk().answer()->draws))
            .arg(desk().answer()->draws)));
    window->closeJob();
  }
}

TEST_F(SuctionStage, TheFieldFollowsTheDragAndTheAnswerComesAfter) {
  openSuction();
  const auto before = desk().field()->suction;
  const auto* guesses = &desk().answer()->guesses->network();
  session().beginMove();
  session().moveTo({0, 14.6});
  EXPECT_NE(desk().field()->suction, before) << "at once";
  EXPECT_FALSE(desk().isStale());
  EXPECT_EQ(panel().sentence(),
            QStringLiteral("Let go, and the guesses at the ground are asked again."));
  session().finishMove();
  EXPECT_TRUE(desk().isAnswerStale());
  ASSERT_TRUE(settled());
  EXPECT_EQ(&desk().answer()->guesses->network(), guesses) << "kept over the drag";
  session().undoStack().undo();
  ASSERT_TRUE(settled());
  EXPECT_EQ(desk().field()->suction, before);
}

TEST_F(SuctionStage, AnEditMakesTheFieldStaleUntilTheNewOneIsThere) {
  openSuction();
  plan::House house = session().job().house;
  session().edit(QStringLiteral("fill"), plan::setTarget(session().job(), 8.0, std::nullopt));
  EXPECT_TRUE(desk().isStale());
  ASSERT_TRUE(settled());
  EXPECT_EQ(desk().live()->target().design_pa, 8.0);
}

TEST_F(SuctionStage, WorkCanBeStoppedAndGoneOnWith) {
  openSuction();
  session().edit(QStringLiteral("target"), plan::setTarget(session().job(), 7.0, std::nullopt));
  ASSERT_TRUE(QTest::qWaitFor([this] { return desk().isWorking(); }, 5000));
  QTest::mouseClick(panel().stopButton(), Qt::LeftButton);
  EXPECT_FALSE(desk().isWorking());
  EXPECT_TRUE(desk().isStopped());
  QTest::mouseClick(panel().stopButton(), Qt::LeftButton);
  EXPECT_TRUE(settled());
}

/// The suction part of the score as it stands; nothing where it was left out.
std::optional<double> reachPoints(const session::Session& session) {
  for (const siting::ScoredPart& part : session.assessment()->score.parts) {
    if (part.kind == rules::PartKind::reach && part.judged) return part.points;
  }
  return std::nullopt;
}

TEST_F(SuctionStage, TheScoreCountsTheReachWithoutTheStageBeingOpened) {
  for (const char* sample : {"bungalow", "standby-sump", "extended-cottage"}) {
    open(QString::fromLatin1(sample));
    ASSERT_EQ(window->stage(), window::Stage::siting);
    EXPECT_FALSE(reachPoints(session()));
    ASSERT_TRUE(QTest::qWaitFor([this] { return reachPoints(session()).has_value(); }, 30000));
    const double points = *reachPoints(session());
    const double score = session().assessment()->score.total;
    EXPECT_GT(points, 0.0) << sample;
    EXPECT_FALSE(desk().field()) << "the curve alone";
    EXPECT_EQ(desk().answer(), nullptr);
    QTest::keyClick(window.get(), Qt::Key_3, Qt::ControlModifier);
    ASSERT_TRUE(settled());
    EXPECT_EQ(reachPoints(session()), points) << sample;
    EXPECT_EQ(session().assessment()->score.total, score) << sample;
    const bool fitted = desk().live()->fitted().has_value();  // goes with where the sump stands
    if (!fitted) session().nudge(0.1);
    EXPECT_TRUE(reachPoints(session())) << "the plan is the same";
    QTest::keyClick(window.get(), Qt::Key_2, Qt::ControlModifier);
    ASSERT_EQ(window->stage(), window::Stage::siting);
    EXPECT_TRUE(reachPoints(session()));
    window->closeJob();
    dialogs.unsaved = window::Unsaved::discard;
  }
}

/// With the reach a score has five parts and more: their words must not run into each other.
TEST_F(SuctionStage, EveryPartOfTheScoreHasRoomForItsWords) {
  open(QStringLiteral("bungalow"));
  ASSERT_TRUE(QTest::qWaitFor([this] { return reachPoints(session()).has_value(); }, 30000));
  for (int round = 0; round < 4; ++round) QCoreApplication::processEvents();
  const auto* block = window->findChild<stages::ScoreBlock*>();
  ASSERT_NE(block, nullptr);
  EXPECT_EQ(block->height(), block->sizeHint().height());
  const double k = paint::uiScale(block->font());
  const QFontMetrics metrics(paint::sized(block->font(), 0.87));
  const double column = (block->width() - 2 * 16 * k) / 3;
  int judged = 0;
  for (const siting::ScoredPart& part : session().assessment()->score.parts) {
    if (!part.judged) continue;
    ++judged;
    const QString figure =
        QStringLiteral("%1/%2").arg(std::lround(part.points)).arg(std::lround(part.weight));
    EXPECT_LT(metrics.horizontalAdvance(QString::fromStdString(part.title) + figure), column)
        << part.title;
  }
  EXPECT_GT(judged, 3);
}

TEST_F(SuctionStage, NothingIsWorkedOutBehindStagesThatShowNoneOfIt) {
  open(QStringLiteral("bungalow"));
  QTest::keyClick(window.get(), Qt::Key_1, Qt::ControlModifier);
  ASSERT_EQ(window->stage(), window::Stage::survey);
  QTest::qWait(300);
  EXPECT_FALSE(desk().isWorking());
  EXPECT_EQ(desk().live(), nullptr);
  EXPECT_EQ(desk().along(), nullptr);
}

TEST_F(SuctionStage, PlacesByChanceAreShownAndTakenWithAClick) {
  openSuction();
  stages::ChanceList& places = *panel().places();
  ASSERT_GE(places.rows(), 2U);
  for (std::size_t k = 1; k < places.rows(); ++k) {
    EXPECT_GE(*places.place(k - 1).chance + 0.01, *places.place(k).chance) << k;
  }
  const plan::Job before = session().job();
  const int step = session().undoStack().index();
  stages::RuleCell* last = places.row(places.rows() - 1);
  auto* scroll = panel().findChild<QScrollArea*>();
  scroll->ensureWidgetVisible(last);
  QTest::mouseMove(last, last->rect().center());
  last->setFocus(Qt::TabFocusReason);
  ASSERT_TRUE(session().hovered());
  const perimeter::Place wanted = places.place(places.rows() - 1).place;
  EXPECT_EQ(session().hovered()->chainage_m, wanted.chainage_m) << "shown on plan and tape";
  EXPECT_EQ(session().job(), before) << "pointing moves nothing";
  QTest::mouseClick(last, Qt::LeftButton);
  EXPECT_EQ(session().undoStack().index(), step + 1);
  ASSERT_TRUE(session().place());
  EXPECT_NEAR(session().place()->chainage_m, wanted.chainage_m, 1e-6);
  ASSERT_TRUE(settled());
  EXPECT_TRUE(last->line().second.startsWith(QStringLiteral("here")));
  QTest::mouseClick(last, Qt::LeftButton);
  EXPECT_EQ(session().undoStack().index(), step + 1) << "it stands there already";
  // The same with the keys.
  places.row(0)->setFocus(Qt::TabFocusReason);
  QTest::keyClick(places.row(0), Qt::Key_Space);
  EXPECT_EQ(session().undoStack().index(), step + 2);
  EXPECT_NEAR(session().place()->chainage_m, places.place(0).place.chainage_m, 1e-6);
  session().undoStack().undo();
  session().undoStack().undo();
  EXPECT_EQ(session().job(), before);
}

TEST_F(SuctionStage, PlacesByChanceAreThereWithoutASump) {
  open(QStringLiteral("bungalow"));
  session().removeSump();
  QTest::keyClick(window.get(), Qt::Key_3, Qt::ControlModifier);
  EXPECT_FALSE(panel().places()->note().isEmpty());
  ASSERT_TRUE(QTest::qWaitFor([this] { return panel().places()->rows() > 0; }, 60000));
  QTest::mouseClick(panel().places()->row(0), Qt::LeftButton);
  ASSERT_TRUE(session().place());
  EXPECT_NEAR(session().place()->chainage_m, panel().places()->place(0).place.chainage_m, 1e-6);
}

TEST_F(SuctionStage, WithoutGranularFillNoPlacesAreRanked) {
  openSuction(QStringLiteral("mid-terrace"));
  EXPECT_EQ(panel().places()->rows(), 0U);
  EXPECT_TRUE(panel().places()->note().contains(QStringLiteral("granular")));
}

TEST_F(SuctionStage, HolesAreProposedMeasuredAndFitted) {
  openSuction(QStringLiteral("bungalow"));
  QTest::mouseClick(panel().propose(), Qt::LeftButton);
  auto* why = panel().findChild<QLabel*>(QStringLiteral("noHole"));
  EXPECT_TRUE(session().job().plan.test_holes.empty()) << "an old house: tiles may hold asbestos";
  EXPECT_FALSE(why->text().isEmpty());
  plan::Job seen = session().job();
  for (plan::Room& room : seen.plan.rooms) room.old_tiles = plan::YesNo::no;
  session().edit(QStringLiteral("tiles"), seen);
  ASSERT_TRUE(settled());
  const std::size_t had = session().job().plan.test_holes.size();
  const int step = session().undoStack().index();
  EXPECT_EQ(panel().holeCount()->currentText(), QStringLiteral("3"));
  panel().holeCount()->setCurrentIndex(2);
  QTest::mouseClick(panel().propose(), Qt::LeftButton);
  ASSERT_EQ(session().job().plan.test_holes.size(), had + 4);
  // As many as are asked for, and not side by side.
  const auto& laid = session().job().plan.test_holes;
  for (std::size_t k = 1; k < laid.size(); ++k) {
    for (std::size_t l = 0; l < k; ++l) {
      EXPECT_GT(geometry::distance(laid[k].at_m, laid[l].at_m), 2.5);
    }
  }
  EXPECT_EQ(session().undoStack().index(), step + 1);
  ASSERT_TRUE(settled());
  stages::HoleTable& holes = *panel().holes();
  const int row = holes.rows() - 1;
  EXPECT_TRUE(holes.predicted(row).startsWith(QStringLiteral("≈")));
  QLineEdit* field = holes.measured(row);
  const std::size_t tests = session().job().suction.tests.size();
  field->setFocus();
  QTest::keyClicks(field, QStringLiteral("3.5"));
  QTest::keyClick(field, Qt::Key_Return);
  ASSERT_GE(session().job().suction.tests.size(), std::max<std::size_t>(tests, 1));
  EXPECT_EQ(session().job().suction.tests.back().readings.back().suction_pa, 3.5);
  EXPECT_EQ(session().undoStack().index(), step + 2) << "one step";
  ASSERT_TRUE(settled());
  EXPECT_TRUE(desk().answer()->fitted.has_value());
  QComboBox* use = panel().ground()->combo("/suction/use_tests");
  ASSERT_NE(use, nullptr);
  use->setCurrentIndex(0);
  Q_EMIT use->activated(0);
  EXPECT_FALSE(session().job().suction.use_tests);
  ASSERT_TRUE(settled());
  EXPECT_FALSE(desk().answer()->fitted.has_value());
}

TEST_F(SuctionStage, ATestSaysWhereItsSumpStood) {
  openSuction(QStringLiteral("semi-detached"));
  stages::HoleTable& holes = *panel().holes();
  EXPECT_TRUE(holes.stood().startsWith(QStringLiteral("Measured on the sump on the ")))
      << holes.stood().toStdString();
  const auto* field = panel().test()->line("stood/chainage_m");
  ASSERT_NE(field, nullptr);
  EXPECT_EQ(field->text().toDouble(), 26.43);
  const QString predicted = holes.predicted(0);
  EXPECT_TRUE(predicted.startsWith(QStringLiteral("≈")));
  const double drawn = *session().job().suction.tests.back().flow_m3_s;
  EXPECT_TRUE(
      holes.predictedHead().contains(QStringLiteral("%1 m³/h").arg(std::lround(3600.0 * drawn))))
      << holes.predictedHead().toStdString();
  const double fitted = desk().answer()->fitted->fit.scales.transmissivity;
  const auto* live = &desk().live()->cases()[0].solver.network();
  session().nudge(-0.5);
  ASSERT_TRUE(settled());
  EXPECT_TRUE(holes.stood().startsWith(QStringLiteral("Measured on a sump that stood on the ")))
      << holes.stood().toStdString();
  EXPECT_EQ(holes.predicted(0), predicted) << "of the test's own sump and flow";
  EXPECT_EQ(desk().answer()->fitted->fit.scales.transmissivity, fitted);
  EXPECT_EQ(&desk().live()->cases()[0].solver.network(), live) << "the ground need not be refitted";
}

TEST_F(SuctionStage, NothingOfThePanelIsCutAtTheRight) {
  for (const char* sample : {"semi-detached", "bungalow", "standby-sump"}) {
    openSuction(QString::fromLatin1(sample));
    const auto* scroll = panel().findChild<QScrollArea*>();
    ASSERT_NE(scroll, nullptr);
    const QWidget* all = scroll->widget();
    for (const QWidget* part : all->findChildren<QWidget*>()) {
      if (!part->isVisible()) continue;
      const int right = part->mapTo(all, QPoint(part->width(), 0)).x();
      EXPECT_LE(right, scroll->viewport()->width())
          << sample << ": " << part->metaObject()->className() << " "
          << part->accessibleName().toStdString();
    }
    window->closeJob();
  }
}

TEST_F(SuctionStage, AYearOfTheFanHasAPriceOnlyWhereOneIsStated) {
  openSuction(QStringLiteral("bungalow"));
  plan::Job job = session().job();
  job.design.quote.price_book.clear();
  job.design.running = {};
  session().edit(QStringLiteral("No price"), job);
  ASSERT_TRUE(settled());
  const auto* duty = panel().findChild<QLabel*>(QStringLiteral("dutyRanges"));
  EXPECT_TRUE(duty->text().contains(QStringLiteral("kilowatt hour costs is not stated")))
      << duty->text().toStdString();
  job.design.running.per_kwh = "0.25";
  session().edit(QStringLiteral("A price"), job);
  EXPECT_FALSE(desk().isAnswerStale()) << "a price changes no field";
  ASSERT_TRUE(settled());
  EXPECT_TRUE(duty->text().contains(QStringLiteral("Electricity at 0.25")))
      << duty->text().toStdString();
  EXPECT_TRUE(duty->text().contains(QStringLiteral("as stated for the job")));
}

TEST_F(SuctionStage, ASecondSumpIsOneStep) {
  openSuction();
  ASSERT_TRUE(desk().mayAddSecond());
  const std::size_t sumps = session().job().design.sumps.size();
  const double held = desk().field()->reach.floor;
  Q_EMIT panel().second()->curePressed();
  EXPECT_EQ(session().job().design.sumps.size(), sumps + 1);
  ASSERT_TRUE(settled());
  EXPECT_GT(desk().field()->reach.floor, held);
  session().undoStack().undo();
  EXPECT_EQ(session().job().design.sumps.size(), sumps);
}

TEST_F(SuctionStage, AnotherFanChangesTheDuty) {
  openSuction();
  const QString duty = panel().duty();
  QComboBox* fan = panel().fan()->combo("/design/fan/id");
  ASSERT_NE(fan, nullptr);
  ASSERT_GT(fan->count(), 2);
  const int other = fan->count() - 1;
  fan->setCurrentIndex(other);
  Q_EMIT fan->activated(other);
  EXPECT_FALSE(session().job().design.fan.id.empty());
  ASSERT_TRUE(settled());
  EXPECT_NE(panel().duty(), duty);
}

TEST_F(SuctionStage, AReadingThatIsNoNumberSaysSoUnderItAndStays) {
  openSuction();
  ASSERT_TRUE(session()
                  .edit(QStringLiteral("hole"),
                        plan::addThing(session().job(), plan::TestHole{"", "", {3.0, 3.0}}))
                  .empty());
  ASSERT_TRUE(settled());
  ASSERT_GE(panel().holes()->rows(), 1);
  QLineEdit* field = panel().holes()->measured(0);
  field->setFocus();
  QTest::keyClicks(field, QStringLiteral("abc"));
  QTest::keyClick(field, Qt::Key_Return);
  EXPECT_TRUE(panel().holes()->noteUnder(0).contains(QStringLiteral("“abc” is no suction")));
  EXPECT_TRUE(session().job().suction.tests.empty());
  panel().holes()->refresh();  // an answer comes
  EXPECT_EQ(field->text(), QStringLiteral("abc")) << "it still has to be put right";
  field->selectAll();
  QTest::keyClicks(field, QStringLiteral("3,5"));
  QTest::keyClick(field, Qt::Key_Return);
  EXPECT_TRUE(panel().holes()->noteUnder(0).isEmpty());
  ASSERT_EQ(session().job().suction.tests.size(), 1u);
  EXPECT_EQ(session().job().suction.tests[0].readings[0].suction_pa, 3.5);
  // Escape lets a bad one go.
  field->selectAll();
  QTest::keyClicks(field, QStringLiteral("x"));
  QTest::keyClick(field, Qt::Key_Return);
  EXPECT_FALSE(panel().holes()->noteUnder(0).isEmpty());
  QTest::keyClick(field, Qt::Key_Escape);
  EXPECT_TRUE(panel().holes()->noteUnder(0).isEmpty());
  EXPECT_EQ(field->text(), QStringLiteral("3.5"));
}

TEST_F(SuctionStage, AnOwnCurveIsSeenAsTheFanWithItsNameAndPower) {
  openSuction();
  stages::FactForm& form = *panel().fan();
  EXPECT_EQ(form.line("/design/fan/points")->placeholderText(),
            QStringLiteral("as 0 400; 100 300; 250 50"));
  EXPECT_FALSE(form.field("/design/fan/title")->isVisible());
  for (int i = 0; i < form.combo("/design/fan/id")->count(); ++i) {
    EXPECT_LE(form.combo("/design/fan/id")->itemText(i).count(QStringLiteral("(invented)")), 1);
  }
  const auto type = [&](const char* key, const QString& text) {
    QLineEdit* line = form.line(key);
    line->setFocus();
    line->selectAll();
    QTest::keyClicks(line, text);
    QTest::keyClick(line, Qt::Key_Return);
    ASSERT_TRUE(settled());
  };
  type("/design/fan/points", QStringLiteral("0 400, a lot, 250 50"));
  EXPECT_TRUE(form.noteUnder("/design/fan/points").contains(QStringLiteral("a lot")));
  type("/design/fan/points", QStringLiteral("0 400, 100 300, 250 50"));
  ASSERT_EQ(session().job().design.fan.points.size(), 3u);
  EXPECT_EQ(form.combo("/design/fan/id")->currentText(), QStringLiteral("own curve"));
  EXPECT_TRUE(form.field("/design/fan/title")->isVisible());
  EXPECT_EQ(desk().fanTitle(), "own fan");
  EXPECT_FALSE(desk().answer()->power_w);
  EXPECT_TRUE(form.noteUnder("/design/fan/points/0/power_w").contains(QStringLiteral("no power")));
  type("/design/fan/points/0/power_w", QStringLiteral("45"));
  ASSERT_TRUE(desk().answer()->power_w);
  EXPECT_NEAR(*desk().answer()->power_w, 45.0, 10.0);
  type("/design/fan/title", QStringLiteral("Roof fan"));
  EXPECT_EQ(desk().fanTitle(), "Roof fan");
  // A fan of the tables takes its place, in one step.
  QComboBox* fan = form.combo("/design/fan/id");
  fan->setFocus();
  QTest::keyClick(fan, Qt::Key_Down);  // opens the list
  QTest::keyClick(fan->view(), Qt::Key_Home);
  QTest::keyClick(fan->view(), Qt::Key_Down);
  QTest::keyClick(fan->view(), Qt::Key_Return);
  ASSERT_TRUE(settled());
  EXPECT_TRUE(session().job().design.fan.points.empty());
  EXPECT_NE(fan->currentText(), QStringLiteral("own curve"));
}

TEST_F(SuctionStage, TheFieldThatHasTheKeysStaysWhereItIsOnScreen) {
  openSuction();
  QLineEdit* line = panel().ground()->line("/suction/target_pa");
  line->setFocus();
  QCoreApplication::processEvents();
  const auto at = [&] { return line->mapTo(window.get(), QPoint()).y(); };
  const int before = at();
  line->selectAll();
  QTest::keyClicks(line, QStringLiteral("none"));
  QTest::keyClick(line, Qt::Key_Return);
  QCoreApplication::processEvents();
  EXPECT_EQ(at(), before) << "with the reason under it";
  line->selectAll();
  QTest::keyClicks(line, QStringLiteral("8"));
  QTest::keyClick(line, Qt::Key_Return);
  ASSERT_TRUE(settled());
  QCoreApplication::processEvents();
  EXPECT_EQ(at(), before) << "with another answer above it";
  QComboBox* fill = panel().ground()->combo("/house/fill");
  fill->setFocus();
  QCoreApplication::processEvents();
  const int fill_before = fill->mapTo(window.get(), QPoint()).y();
  const auto kind = session().job().house.fill;
  QTest::keyClick(fill, Qt::Key_Down);  // opens the list
  QTest::keyClick(fill->view(), Qt::Key_Home);
  QTest::keyClick(fill->view(), Qt::Key_Down);
  QTest::keyClick(fill->view(), Qt::Key_Return);
  EXPECT_NE(session().job().house.fill, kind);
  ASSERT_TRUE(settled());
  QCoreApplication::processEvents();
  EXPECT_EQ(fill->mapTo(window.get(), QPoint()).y(), fill_before);
}

TEST_F(SuctionStage, TabGoesDownThePanel) {
  openSuction();
  std::vector<QWidget*> passed;
  QWidget* each = panel().holes();
  for (int i = 0; i < 20000; ++i) {
    each = each->nextInFocusChain();
    if (each == panel().holes()) break;
    const bool takes = (each->focusPolicy() & Qt::TabFocus) == Qt::TabFocus;
    if (takes && each->isVisible()) passed.push_back(each);
  }
  const auto indexOf = [&](const QWidget* w) {
    return std::find(passed.begin(), passed.end(), w) - passed.begin();
  };
  const auto fan = indexOf(panel().fan()->combo("/design/fan/id"));
  const auto target = indexOf(panel().ground()->line("/suction/target_pa"));
  const auto tape = indexOf(window->tape().strip());
  EXPECT_LT(fan, target);
  // From the table of holes on it goes to the tape and round: the panel is not left half way.
  EXPECT_LT(tape, fan);
  EXPECT_LT(static_cast<std::size_t>(target), passed.size());
}

TEST_F(SuctionStage, F6ReachesThePanelAndTheRingStaysInSight) {
  openSuction();
  QTest::mouseClick(&window->canvas(), Qt::LeftButton, {}, QPoint(5, 5));
  EXPECT_FALSE(window->property("keysUsed").toBool());
  bool reached = false;
  for (int i = 0; i < 6 && !reached; ++i) {
    QTest::keyClick(window.get(), Qt::Key_F6);
    reached = panel().isAncestorOf(QApplication::focusWidget());
  }
  EXPECT_TRUE(reached);
  EXPECT_TRUE(window->property("keysUsed").toBool()) << "and what has the keys is seen";
  auto* ring = window->findChild<window::FocusRing*>();
  ASSERT_NE(ring, nullptr);
  QLineEdit* line = panel().ground()->line("/suction/target_pa");
  line->setFocus(Qt::TabFocusReason);
  QCoreApplication::processEvents();
  EXPECT_TRUE(ring->isVisible());
  auto* scroll = panel().findChild<QScrollArea*>();
  scroll->verticalScrollBar()->setValue(scroll->verticalScrollBar()->maximum());
  QCoreApplication::processEvents();
  const QRect port(scroll->viewport()->mapTo(window.get(), QPoint()), scroll->viewport()->size());
  const QRect field(line->mapTo(window.get(), QPoint()), line->size());
  EXPECT_EQ(ring->isVisible(), port.intersects(field)) << "never over what it does not belong to";
}

TEST_F(SuctionStage, ARoomChosenInTheSurveyIsNotOutlinedInTheField) {
  openSuction();
  const QImage plain = window->canvas().grab().toImage();
  QTest::keyClick(window.get(), Qt::Key_1, Qt::ControlModifier);
  session().select(session().job().plan.rooms.front().id);
  QTest::keyClick(window.get(), Qt::Key_3, Qt::ControlModifier);
  ASSERT_TRUE(settled());
  QCoreApplication::processEvents();
  EXPECT_EQ(window->canvas().grab().toImage(), plain);
  EXPECT_FALSE(session().selected().empty()) << "it stays chosen";
}

TEST_F(SuctionStage, ARangeThatCannotBeReadIsSaidAndNothingChanges) {
  openSuction(QStringLiteral("bungalow"));
  QLineEdit* field = panel().ground()->line("/suction/ground/fill_depth_m");
  ASSERT_NE(field, nullptr);
  field->setText(QStringLiteral("deep"));
  QTest::keyClick(field, Qt::Key_Return);
  EXPECT_FALSE(session().job().suction.ground.fill_depth_m);
  EXPECT_FALSE(panel().ground()->noteUnder("/suction/ground/fill_depth_m").isEmpty());
  field->setText(QStringLiteral("0.1 to 0.2"));
  QTest::keyClick(field, Qt::Key_Return);
  ASSERT_TRUE(session().job().suction.ground.fill_depth_m);
  EXPECT_EQ(session().job().suction.ground.fill_depth_m->high, 0.2);
}

}  // namespace
}  // namespace sumpwright::gui
