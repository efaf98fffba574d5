// What the stage Suction says and offers: where nothing can be told, which fan suits, what Best
// place goes by; and a drag of the sump with the pointer.

#include <QLabel>
#include <cmath>

#include "WindowFixture.h"
#include "drawing/DrawList.h"
#include "plan/SuctionEdits.h"

namespace sumpwright::gui {
namespace {

class SuctionSays : public WindowFixture {
 protected:
  void openAt(const QString& sample) {
    dialogs.unsaved = window::Unsaved::discard;
    open(sample);
    QTest::keyClick(window.get(), Qt::Key_3, Qt::ControlModifier);
    ASSERT_EQ(window->stage(), window::Stage::suction);
    ASSERT_TRUE(isDone());
  }
  session::SuctionDesk& desk() { return window->suctionDesk(); }
  stages::SuctionPanel& panel() { return window->suction(); }
  bool isDone() {
    return QTest::qWaitFor(
        [this] {
          const bool told = desk().answer() != nullptr && !desk().isAnswerStale();
          return !desk().isWorking() && (told || !desk().problems().empty());
        },
        60000);
  }
  void edit(plan::Job job) {
    ASSERT_TRUE(session().edit(QStringLiteral("Test"), std::move(job)).empty());
    ASSERT_TRUE(isDone());
  }
  void withFill(plan::Fill fill) {
    plan::Job job = session().job();
    job.house.fill = fill;
    edit(job);
  }
  /// All that is written on the tape.
  QString tapeSays() { return QString::fromStdString(toText(window->tape().strip()->picture())); }
};

TEST_F(SuctionSays, WithoutASumpNothingIsPredictedOfIt) {
  openAt(QStringLiteral("extended-cottage"));
  ASSERT_TRUE(panel().second()->isVisible());
  session().removeSump();
  ASSERT_TRUE(isDone());
  QCoreApplication::processEvents();
  EXPECT_TRUE(panel().sentence().startsWith(QStringLiteral("No sump yet. Best place puts one")))
      << panel().sentence().toStdString();
  EXPECT_FALSE(panel().second()->isVisible());
  EXPECT_TRUE(panel().share().isEmpty());
  EXPECT_EQ(panel().fans()->rows(), 0U);
  EXPECT_TRUE(panel().duty().isEmpty());
  for (const QLabel* label : panel().findChildren<QLabel*>()) {
    EXPECT_FALSE(label->isVisible() && label->text().contains(QStringLiteral("Prediction:")));
  }
  EXPECT_GT(panel().places()->rows(), 0U) << "where it may go is told all the same";
  session().undoStack().undo();
  ASSERT_TRUE(isDone());
  EXPECT_TRUE(panel().sentence().startsWith(QStringLiteral("Prediction:")));
}

TEST_F(SuctionSays, WhereNoPlaceCanBeProposedTheHintIsToClick) {
  openAt(QStringLiteral("bungalow"));
  session().removeSump();
  plan::Job job = session().job();
  // Nobody looked for anything: no place is proven.
  job.looked_for = {};
  for (plan::Ring& ring : job.plan.rings) {
    for (plan::Wall& wall : ring.walls) wall.kind = plan::WallKind::party;
  }
  if (!session().edit(QStringLiteral("Test"), job).empty() || session().bestPlace()) {
    GTEST_SKIP() << "this house has a place to propose";
  }
  ASSERT_TRUE(isDone());
  EXPECT_FALSE(window->action("sump.best")->isEnabled());
  EXPECT_TRUE(panel().sentence().contains(QStringLiteral("Click the tape, or a wall on the plan")))
      << panel().sentence().toStdString();
  EXPECT_FALSE(panel().sentence().contains(QStringLiteral("Best place puts")));
  const QPoint on_tape(window->tape().strip()->width() / 2, window->tape().strip()->height() / 2);
  QTest::mouseClick(window->tape().strip(), Qt::LeftButton, {}, on_tape);
  EXPECT_TRUE(session().place()) << "as it says";
}

TEST_F(SuctionSays, ALimitAboveTheTargetIsRefusedAndRaisesNothing) {
  openAt(QStringLiteral("bungalow"));
  ASSERT_FALSE(session().job().suction.target_pa);
  QLineEdit* limit = panel().ground()->line("/suction/limit_pa");
  const plan::Job before = session().job();
  limit->setFocus();
  limit->selectAll();
  QTest::keyClicks(limit, QStringLiteral("20"));
  QTest::keyClick(limit, Qt::Key_Return);
  EXPECT_EQ(session().job(), before);
  EXPECT_TRUE(panel().ground()->noteUnder("/suction/limit_pa").contains(QStringLiteral("above")))
      << panel().ground()->noteUnder("/suction/limit_pa").toStdString();
  EXPECT_EQ(desk().live()->target().design_pa, 5.0);
  // A file may hold it: another field can be typed all the same.
  plan::Job held = before;
  held.suction.limit_pa = 8.0;
  edit(held);
  QLineEdit* pit = panel().ground()->line("/suction/pit_l");
  pit->setFocus();
  pit->selectAll();
  QTest::keyClicks(pit, QStringLiteral("20"));
  QTest::keyClick(pit, Qt::Key_Return);
  EXPECT_EQ(session().job().suction.pit_l, 20.0);
}

TEST_F(SuctionSays, WithoutALayerItSaysWhyAndLeavesNoGap) {
  openAt(QStringLiteral("bungalow"));
  EXPECT_FALSE(tapeSays().contains(QStringLiteral("No granular fill")));
  const auto* share = panel().findChild<QLabel*>(QStringLiteral("shareOfFloor"));
  ASSERT_TRUE(share->isVisible());
  withFill(plan::Fill::none);
  EXPECT_TRUE(tapeSays().contains(QStringLiteral("No granular fill"))) << tapeSays().toStdString();
  EXPECT_FALSE(share->isVisible());
  for (const QLabel* label : panel().findChildren<QLabel*>()) {
    EXPECT_FALSE(label->isVisible() && label->text().startsWith(QStringLiteral("Suction under")))
        << "a scale of nothing";
  }
  withFill(plan::Fill::clean_stone);
  EXPECT_TRUE(share->isVisible());
}

TEST_F(SuctionSays, ATapeThatCannotBeWorkedOutSaysWhy) {
  openAt(QStringLiteral("bungalow"));
  plan::Job job = session().job();
  job.design.fan = {};
  job.design.fan.id = "no such fan";
  edit(job);
  EXPECT_FALSE(desk().problems().empty());
  EXPECT_TRUE(tapeSays().contains(QStringLiteral("No reach along the wall: ")))
      << tapeSays().toStdString();
}

TEST_F(SuctionSays, StoppedItDoesNotSayThatItWorks) {
  openAt(QStringLiteral("bungalow"));
  session().edit(QStringLiteral("target"), plan::setTarget(session().job(), 7.0, std::nullopt));
  ASSERT_TRUE(QTest::qWaitFor([this] { return desk().isWorking(); }, 5000));
  EXPECT_TRUE(panel().sentence().startsWith(QStringLiteral("Working out")));
  QTest::mouseClick(panel().stopButton(), Qt::LeftButton);
  ASSERT_TRUE(desk().isStopped());
  EXPECT_TRUE(panel().sentence().startsWith(QStringLiteral("Stopped before")))
      << panel().sentence().toStdString();
  EXPECT_TRUE(tapeSays().contains(QStringLiteral("wall: stopped"))) << tapeSays().toStdString();
  QTest::mouseClick(panel().stopButton(), Qt::LeftButton);
  EXPECT_TRUE(panel().sentence().startsWith(QStringLiteral("Working out")));
  EXPECT_TRUE(isDone());
}

TEST_F(SuctionSays, WhichFanSuitsAndOneIsTakenInOneStep) {
  openAt(QStringLiteral("bungalow"));
  stages::FanList& fans = *panel().fans();
  ASSERT_EQ(fans.rows(), 3U);
  std::size_t taken = fans.rows();
  for (std::size_t k = 0; k < fans.rows(); ++k) {
    const stages::FanLine& line = fans.row(k)->line();
    EXPECT_EQ(line.title.count(QStringLiteral("(invented)")), 1) << line.title.toStdString();
    EXPECT_TRUE(line.duty.contains(QStringLiteral("m³/h at ≈ "))) << line.duty.toStdString();
    EXPECT_TRUE(line.cost.contains(QStringLiteral("a year"))) << line.cost.toStdString();
    if (line.taken) taken = k;
  }
  ASSERT_LT(taken, fans.rows());
  EXPECT_EQ(fans.row(taken)->line().figure, panel().share()) << "the headline's own figure";
  const std::size_t other = taken == 0 ? 1 : 0;
  const QString promised = fans.row(other)->line().figure;
  const std::string id = fans.offer(other).id;
  const plan::Job before = session().job();
  const int steps = session().undoStack().index();
  fans.row(other)->setFocus(Qt::TabFocusReason);
  QTest::keyClick(fans.row(other), Qt::Key_Space);
  EXPECT_EQ(session().undoStack().index(), steps + 1);
  EXPECT_EQ(session().job().design.fan.id, id);
  ASSERT_TRUE(isDone());
  EXPECT_EQ(panel().share(), promised) << "what was said of it is what it does";
  for (std::size_t k = 0; k < fans.rows(); ++k) {
    EXPECT_EQ(fans.row(k)->line().taken, fans.offer(k).id == id);
  }
  session().undoStack().undo();
  EXPECT_EQ(session().job(), before);
}

TEST_F(SuctionSays, WithTwoFansEachDutyIsOfASump) {
  openAt(QStringLiteral("extended-cottage"));
  EXPECT_FALSE(panel().duty().contains(QStringLiteral("sump")));
  Q_EMIT panel().second()->curePressed();
  ASSERT_EQ(session().job().design.sumps.size(), 2U);
  ASSERT_TRUE(isDone());
  EXPECT_TRUE(panel().duty().contains(QStringLiteral("Fan of sump 1: ≈ ")))
      << panel().duty().toStdString();
  EXPECT_TRUE(panel().duty().contains(QStringLiteral("Fan of sump 2: ≈ ")));
  // And the tape says that its curve is of one alone.
  EXPECT_TRUE(tapeSays().contains(QStringLiteral("one sump alone")));
  edit(plan::setSharedFan(session().job(), true));
  EXPECT_TRUE(panel().duty().startsWith(QStringLiteral("<i>One fan for all")))
      << panel().duty().toStdString();
  EXPECT_FALSE(tapeSays().contains(QStringLiteral("one sump alone")));
  EXPECT_TRUE(tapeSays().contains(QStringLiteral("with the others")));
}

TEST_F(SuctionSays, ASecondSumpThatHelpsLittleIsNotOffered) {
  bool seen = false;
  for (const char* sample : {"bungalow", "extended-cottage", "courtyard", "semi-detached"}) {
    openAt(QString::fromLatin1(sample));
    const siting::SuctionAnswer* answer = desk().answer();
    if (answer == nullptr || !answer->second) continue;
    bool offered = false;
    for (const QPushButton* button : panel().second()->findChildren<QPushButton*>()) {
      const bool cure = button->text().contains(QStringLiteral("second sump"));
      offered = offered || (cure && !button->isHidden());
    }
    EXPECT_EQ(offered, answer->second->helps) << sample;
    seen = seen || !answer->second->helps;
  }
  if (!seen) GTEST_SKIP() << "a second sump helps in every sample";
}

TEST_F(SuctionSays, BestPlaceSaysWhatItGoesBy) {
  openAt(QStringLiteral("bungalow"));
  EXPECT_TRUE(panel().places()->note().contains(QStringLiteral("Best place goes by the score")))
      << panel().places()->note().toStdString();
  session().nudge(-2.0);
  ASSERT_TRUE(isDone());
  trigger("sump.best");
  EXPECT_TRUE(window->told().contains(QStringLiteral("Moved by the score")))
      << window->told().toStdString();
}

TEST_F(SuctionSays, WhatNobodyLookedForLeadsToTheRoomAndGoesWithTheAnswer) {
  openAt(QStringLiteral("bungalow"));
  QTest::mouseClick(panel().propose(), Qt::LeftButton);
  auto* why = panel().findChild<QLabel*>(QStringLiteral("noHole"));
  ASSERT_TRUE(why->isVisible());
  ASSERT_TRUE(why->text().contains(QStringLiteral("<a href"))) << why->text().toStdString();
  Q_EMIT why->linkActivated(QStringLiteral("room"));
  EXPECT_EQ(window->stage(), window::Stage::survey);
  const auto& rooms = session().job().plan.rooms;
  const auto asked = std::find_if(rooms.begin(), rooms.end(), [this](const plan::Room& room) {
    return room.id == session().selected();
  });
  ASSERT_NE(asked, rooms.end()) << session().selected();
  EXPECT_EQ(asked->old_tiles, plan::YesNo::unknown);
  plan::Job answered = session().job();
  for (plan::Room& room : answered.plan.rooms) room.old_tiles = plan::YesNo::no;
  ASSERT_TRUE(session().edit(QStringLiteral("tiles"), answered).empty());
  QTest::keyClick(window.get(), Qt::Key_3, Qt::ControlModifier);
  ASSERT_TRUE(isDone());
  EXPECT_FALSE(why->isVisible());
}

/// Press, many moves and release on the plan: the field is another at every tenth of the way, the
/// chance is asked again at the end, and all of it is one step.
TEST_F(SuctionSays, TheFieldFollowsThePointerOnThePlan) {
  openAt(QStringLiteral("bungalow"));
  canvas::PlanCanvas& plan = window->canvas();
  const auto start = *session().place();
  const double length = study().perimeter().length_m(start.ring);
  const perimeter::Place goal{start.ring, std::fmod(start.chainage_m + length - 3.0, length)};
  const plan::Job before = session().job();
  const int steps = session().undoStack().index();
  const QString share_before = panel().share();
  const QPointF grip = *plan.grip();
  const QPointF rod = grip - plan.toWidget(session().assessment()->point);
  const QPointF end = plan.toWidget(study().perimeter().pointAt(goal)) + rod;
  int fields = 0;
  QObject::connect(&desk(), &session::SuctionDesk::fieldChanged, &plan, [&] { ++fields; });
  QTest::mousePress(&plan, Qt::LeftButton, {}, grip.toPoint());
  ASSERT_TRUE(plan.isDragging());
  std::vector<double> last = desk().field()->suction;
  int changed = 0;
  constexpr int kParts = 10;
  for (int part = 1; part <= kParts; ++part) {
    for (int i = 1; i <= 3; ++i) {
      const double share = (part - 1 + i / 3.0) / kParts;
      QTest::mouseMove(&plan, (grip + (end - grip) * share).toPoint());
    }
    ASSERT_TRUE(desk().field());
    EXPECT_FALSE(desk().isStale());
    if (desk().field()->suction != last) ++changed;
    last = desk().field()->suction;
    EXPECT_EQ(panel().sentence(),
              QStringLiteral("Let go, and the guesses at the ground are asked again."));
    EXPECT_EQ(panel().share(), QStringLiteral("≈ %1 %").arg(static_cast<int>(
                                   std::floor(100.0 * desk().field()->reach.floor + 1e-9))));
  }
  EXPECT_GE(changed, kParts - 2) << "a pixel at the ends may move nothing";
  EXPECT_GE(fields, changed);
  EXPECT_EQ(session().undoStack().index(), steps) << "no step before the end";
  QTest::mouseRelease(&plan, Qt::LeftButton, {}, end.toPoint());
  EXPECT_FALSE(plan.isDragging());
  EXPECT_EQ(session().undoStack().index(), steps + 1);
  EXPECT_NEAR(session().place()->chainage_m, goal.chainage_m, 3.0 / plan.camera().px_per_m);
  ASSERT_TRUE(isDone());
  EXPECT_TRUE(panel().sentence().startsWith(QStringLiteral("Prediction: ")));
  EXPECT_TRUE(panel().band().contains(QStringLiteral("In eight of ten guesses")));
  session().undoStack().undo();
  EXPECT_EQ(session().job(), before);
  ASSERT_TRUE(isDone());
  EXPECT_EQ(panel().share(), share_before);
}

}  // namespace
}  // namespace sumpwright::gui
