// What the stage Suction shows, without a window: the field that follows the sump, the answer with
// its chances made beside, both never taken for those of another plan.

#include <gtest/gtest.h>

#include <QCoreApplication>
#include <QElapsedTimer>
#include <QFile>
#include <QTemporaryDir>
#include <algorithm>
#include <functional>
#include <memory>
#include <utility>

#include "plan/FactEdits.h"
#include "plan/OutlineEdits.h"
#include "plan/SuctionEdits.h"
#include "session/SuctionDesk.h"

namespace sumpwright::session {
namespace {

constexpr qint64 kLongest_ms = 120'000;  // of one answer, on a slow machine

/// Runs the event loop until it is so; false after kLongest_ms.
bool comesTrue(const std::function<bool()>& so) {
  QElapsedTimer timer;
  timer.start();
  while (!so()) {
    if (timer.elapsed() > kLongest_ms) return false;
    QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents | QEventLoop::AllEvents, 5);
  }
  return true;
}

void letPass(qint64 ms) {
  QElapsedTimer timer;
  timer.start();
  while (timer.elapsed() < ms) QCoreApplication::processEvents(QEventLoop::AllEvents, 5);
}

class SuctionDeskOnSample : public testing::Test {
 protected:
  void open(const QString& name = QStringLiteral("bungalow")) {
    const QString path = folder.filePath(name + QStringLiteral(".sump.json"));
    ASSERT_TRUE(
        QFile::copy(QStringLiteral(SUMPWRIGHT_SAMPLES_DIR "/%1.sump.json").arg(name), path));
    QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner);
    ASSERT_TRUE(session.open(path).empty());
    desk = std::make_unique<SuctionDesk>(session);
  }
  void openAnswered(const QString& name = QStringLiteral("bungalow")) {
    open(name);
    desk->setWatched(SuctionDesk::Watched::everything);
    ASSERT_TRUE(answered());
  }
  bool answered() {
    return comesTrue([&] {
      return !desk->problems().empty() || (desk->answer() != nullptr && !desk->isAnswerStale() &&
                                           !desk->isStale() && !desk->isRefining());
    });
  }
  /// A field of the plan as it stands, the answer still to come.
  bool fielded() {
    return comesTrue([&] { return desk->field() && !desk->isStale(); });
  }
  void shiftWall(double out_m) {
    ASSERT_TRUE(
        session.edit(QStringLiteral("Shift a wall"), plan::moveWall(session.job(), 0, 0, out_m))
            .empty());
  }
  /// What a desk answers that has never seen the plan otherwise.
  std::shared_ptr<const siting::SuctionAnswer> fresh() {
    SuctionDesk other(session);
    other.setWatched(SuctionDesk::Watched::everything);
    comesTrue([&] { return other.answer() != nullptr || !other.problems().empty(); });
    return other.sharedAnswer();
  }
  void expectFresh() {
    const auto wanted = fresh();
    ASSERT_NE(desk->answer(), nullptr);
    ASSERT_NE(wanted, nullptr);
    EXPECT_EQ(desk->answer()->mean_floor, wanted->mean_floor);
    EXPECT_EQ(desk->answer()->whole_floor, wanted->whole_floor);
    EXPECT_EQ(desk->answer()->middle[desk->answer()->worst].reach.floor,
              wanted->middle[wanted->worst].reach.floor);
  }
  double floor() { return desk->field()->reach.floor; }

  QTemporaryDir folder;
  Session session;
  std::unique_ptr<SuctionDesk> desk;
};

TEST_F(SuctionDeskOnSample, NothingIsWorkedOutWhileNobodyWatches) {
  open();
  session.nudge(0.1);
  letPass(300);
  EXPECT_FALSE(desk->isWorking());
  EXPECT_FALSE(desk->field());
  EXPECT_EQ(desk->answer(), nullptr);
}

class ReachForTheScore : public SuctionDeskOnSample {
 protected:
  void openForTheScore(const QString& name = QStringLiteral("bungalow")) {
    open(name);
    desk->setWatched(SuctionDesk::Watched::reach);
    ASSERT_TRUE(counted());
  }
  /// The curve is there, of the plan as it stands, and the score counts it.
  bool counted() {
    return comesTrue(
        [&] { return desk->along() != nullptr && session.study()->reach() == desk->along(); });
  }
};

TEST_F(ReachForTheScore, IsTheCurveThatTheAnswerHas) {
  for (const char* sample : {"bungalow", "standby-sump"}) {  // guessed, and fitted to tests
    openForTheScore(QString::fromLatin1(sample));
    EXPECT_EQ(desk->answer(), nullptr);
    EXPECT_FALSE(desk->field());
    const std::shared_ptr<const siting::SuctionAnswer> wanted = fresh();
    ASSERT_NE(wanted, nullptr);
    const auto& places = desk->along()->places();
    ASSERT_EQ(places.size(), wanted->along->places().size());
    ASSERT_GT(places.size(), 100U);
    for (std::size_t k = 0; k < places.size(); ++k) {
      EXPECT_EQ(places[k].read.floor, wanted->along->places()[k].read.floor) << sample << " " << k;
    }
  }
}

TEST_F(ReachForTheScore, FollowsAnEditAndOutlivesAMove) {
  openForTheScore();
  const siting::ReachAlong* first = desk->along();
  session.nudge(0.1);
  EXPECT_EQ(session.study()->reach(), first) << "of every place: at once";
  shiftWall(0.5);
  EXPECT_EQ(desk->along(), nullptr);
  EXPECT_EQ(session.study()->reach(), nullptr) << "no curve of an old plan";
  ASSERT_TRUE(counted());
  EXPECT_NE(desk->along(), first);
}

TEST_F(ReachForTheScore, ADragIsNotHeldUpByIt) {
  openForTheScore();
  shiftWall(0.3);
  session.beginMove();
  session.moveTo(session.study()->perimeter().wrapped({0, session.place()->chainage_m + 1.0}));
  int studies = 0;
  QObject::connect(&session, &Session::studyChanged, desk.get(), [&] { ++studies; });
  ASSERT_TRUE(comesTrue([&] { return desk->along() != nullptr; }));
  EXPECT_EQ(studies, 0);
  EXPECT_EQ(session.study()->reach(), nullptr);
  session.finishMove();
  EXPECT_EQ(session.study()->reach(), desk->along());
}

TEST_F(ReachForTheScore, NeedsNoSumpAndIsNotTriedTwiceWhereThereCanBeNone) {
  open();
  session.removeSump();
  desk->setWatched(SuctionDesk::Watched::reach);
  ASSERT_TRUE(counted());
  int begun = 0;  // a refusal may be over between two looks at the desk
  QObject::connect(desk.get(), &SuctionDesk::workChanged, [&, was = false]() mutable {
    begun += !std::exchange(was, desk->isWorking()) && desk->isWorking() ? 1 : 0;
  });
  plan::FanPick nowhere;
  nowhere.id = "no-such-fan";
  ASSERT_TRUE(session.edit(QStringLiteral("Fan"), plan::setFan(session.job(), nowhere)).empty());
  ASSERT_TRUE(comesTrue([&] { return begun == 1 && !desk->isWorking(); }));
  EXPECT_EQ(desk->along(), nullptr);
  letPass(300);
  EXPECT_FALSE(desk->isWorking());
  EXPECT_EQ(begun, 1);
  session.undoStack().undo();
  EXPECT_TRUE(counted());
}

TEST_F(SuctionDeskOnSample, GivesTheFieldThenTheAnswer) {
  open();
  int fields = 0;
  QObject::connect(desk.get(), &SuctionDesk::fieldChanged, [&] { ++fields; });
  double most = 0.0;
  bool field_first = false;
  QObject::connect(desk.get(), &SuctionDesk::workChanged, [&] {
    EXPECT_GE(desk->progress(), 0.0);
    most = std::max(most, desk->progress());
    field_first = field_first || (desk->field() && desk->answer() == nullptr);
  });
  desk->setWatched(SuctionDesk::Watched::everything);
  ASSERT_TRUE(answered());
  EXPECT_TRUE(field_first);
  EXPECT_GT(fields, 1);
  EXPECT_GT(most, 0.5);
  EXPECT_FALSE(desk->isWorking());
  EXPECT_TRUE(desk->problems().empty());
  ASSERT_TRUE(desk->field());
  EXPECT_GT(floor(), 0.0);
  EXPECT_LE(floor(), 1.0);
  EXPECT_GE(desk->answer()->draws, 64);
  EXPECT_NE(desk->along(), nullptr);
}

TEST_F(SuctionDeskOnSample, FieldAndAnswerAreOneModel) {
  openAnswered();
  const siting::SuctionAnswer& answer = *desk->answer();
  session.beginMove();
  session.moveTo(*session.place());  // cells of 10 cm, as the answer's
  EXPECT_NEAR(floor(), answer.middle[answer.worst].reach.floor, 1e-9);
  session.cancelMove();
}

TEST_F(SuctionDeskOnSample, TheFieldFollowsADragAtOnce) {
  openAnswered();
  const double at_rest = floor();
  const perimeter::Place from = *session.place();
  const auto before = desk->sharedAnswer();
  const int steps = session.undoStack().index();
  session.beginMove();
  session.moveTo({from.ring, from.chainage_m - 3.0});
  EXPECT_NE(floor(), at_rest);
  EXPECT_FALSE(desk->isStale());
  EXPECT_NEAR(desk->live()->cases().front().solver.summary().cell_m, 0.10, 1e-9);
  EXPECT_FALSE(desk->isWorking());
  const std::vector<double> moving = desk->field()->suction;
  session.moveTo({from.ring, from.chainage_m - 4.0});
  EXPECT_NE(desk->field()->suction, moving);
  session.finishMove();
  EXPECT_NEAR(desk->live()->cases().front().solver.summary().cell_m, 0.05, 1e-9);
  EXPECT_TRUE(desk->isAnswerStale());
  EXPECT_NE(desk->along(), nullptr);  // the curve is of every place
  ASSERT_TRUE(answered());
  EXPECT_EQ(session.undoStack().index(), steps + 1);
  expectFresh();

  // The guesses were kept, and the way back is the first answer.
  EXPECT_EQ(&desk->answer()->guesses->network(), &before->guesses->network());
  EXPECT_EQ(desk->answer()->along, before->along);
  session.undoStack().undo();
  ASSERT_TRUE(answered());
  EXPECT_EQ(desk->answer()->mean_floor, before->mean_floor);
  EXPECT_DOUBLE_EQ(floor(), at_rest);
}

TEST_F(SuctionDeskOnSample, AnotherPlanLeavesTheOldFieldMarkedUntilTheNewOneIsThere) {
  openAnswered();
  const auto before = desk->sharedAnswer();
  shiftWall(0.5);
  EXPECT_TRUE(desk->isStale());
  EXPECT_TRUE(desk->isAnswerStale());
  EXPECT_TRUE(desk->field());
  EXPECT_EQ(desk->along(), nullptr);
  ASSERT_TRUE(answered());
  EXPECT_NE(&desk->answer()->guesses->network(), &before->guesses->network());
  EXPECT_NE(desk->along(), nullptr);
  expectFresh();
}

TEST_F(SuctionDeskOnSample, TheCurveOfAnOldPlanIsNotShownBesideTheNewField) {
  openAnswered();
  shiftWall(0.5);
  ASSERT_TRUE(fielded());
  ASSERT_TRUE(desk->isAnswerStale());  // else this machine is too fast to tell
  EXPECT_EQ(desk->along(), nullptr);
}

TEST_F(SuctionDeskOnSample, ASumpMovedBeforeTheNewPlansAnswerTakesNoOldGuesses) {
  openAnswered();
  shiftWall(1.0);
  ASSERT_TRUE(fielded());
  session.nudge(0.5);
  ASSERT_TRUE(answered());
  expectFresh();
}

TEST_F(SuctionDeskOnSample, WorkThatEndsWhileAWallIsDraggedIsOfAnOldPlan) {
  openAnswered();
  shiftWall(0.3);
  ASSERT_TRUE(comesTrue([&] { return desk->isWorking(); }));
  session.beginPreview();
  session.preview(*plan::moveWall(session.jobBeforePreview(), 0, 0, 0.4));
  EXPECT_TRUE(desk->isStale());
  ASSERT_TRUE(comesTrue([&] { return !desk->isWorking(); }));
  EXPECT_TRUE(desk->isStale());
  EXPECT_TRUE(desk->isAnswerStale());
  session.finishPreview(QStringLiteral("Drag a wall"));
  ASSERT_TRUE(answered());
  expectFresh();
}

TEST_F(SuctionDeskOnSample, AnEditTakenBackWhileItIsWorkedOutLeavesTheFirstField) {
  openAnswered();
  const auto before = desk->sharedAnswer();
  const double at_rest = floor();
  shiftWall(0.5);
  ASSERT_TRUE(comesTrue([&] { return desk->isWorking(); }));
  session.undoStack().undo();
  EXPECT_FALSE(desk->isStale());
  letPass(1500);  // the work on what was taken back would be done
  EXPECT_FALSE(desk->isStale());
  EXPECT_FALSE(desk->isWorking());
  EXPECT_EQ(desk->sharedAnswer(), before);
  EXPECT_EQ(floor(), at_rest);
}

TEST_F(SuctionDeskOnSample, WhatWasMeasuredWithTheSumpElsewhereIsFittedAnew) {
  openAnswered(QStringLiteral("standby-sump"));
  ASSERT_TRUE(desk->live()->fitted());
  session.nudge(-0.6);
  ASSERT_TRUE(answered());
  expectFresh();
}

TEST_F(SuctionDeskOnSample, AFactOfTheGroundIsAnotherPlan) {
  openAnswered();
  ASSERT_TRUE(
      session.edit(QStringLiteral("Target"), plan::setTarget(session.job(), 20.0, 1.0)).empty());
  EXPECT_TRUE(desk->isStale());
  ASSERT_TRUE(answered());
  EXPECT_EQ(desk->live()->target().design_pa, 20.0);
  expectFresh();
}

TEST_F(SuctionDeskOnSample, StopsAndGoesOn) {
  open();
  desk->setWatched(SuctionDesk::Watched::everything);
  ASSERT_TRUE(fielded());
  ASSERT_TRUE(desk->isWorking());
  desk->stop();
  EXPECT_FALSE(desk->isWorking());
  EXPECT_TRUE(desk->isStopped());
  letPass(400);
  EXPECT_FALSE(desk->isWorking());
  EXPECT_EQ(desk->answer(), nullptr);
  EXPECT_TRUE(desk->field());
  desk->go();
  EXPECT_FALSE(desk->isStopped());
  EXPECT_TRUE(desk->isWorking());
  ASSERT_TRUE(answered());
}

TEST_F(SuctionDeskOnSample, MayGoInTheMiddleOfItsWork) {
  open();
  desk->setWatched(SuctionDesk::Watched::everything);
  ASSERT_TRUE(comesTrue([&] { return desk->isWorking(); }));
  desk.reset();
  letPass(50);  // what it sent itself is not delivered
  shiftWall(0.2);
}

TEST_F(SuctionDeskOnSample, AnotherJobHasNothingOfTheOneBefore) {
  openAnswered();
  session.newJob();
  EXPECT_FALSE(desk->field());
  EXPECT_EQ(desk->answer(), nullptr);
  EXPECT_EQ(desk->live(), nullptr);
  letPass(300);
  EXPECT_FALSE(desk->isWorking());
}

TEST_F(SuctionDeskOnSample, AFanThatIsNowhereIsSaid) {
  openAnswered();
  plan::FanPick nowhere;
  nowhere.id = "no-such-fan";
  ASSERT_TRUE(session.edit(QStringLiteral("Fan"), plan::setFan(session.job(), nowhere)).empty());
  ASSERT_TRUE(comesTrue([&] { return !desk->problems().empty(); }));
  EXPECT_TRUE(desk->isStale());
  EXPECT_TRUE(desk->isAnswerStale());
  session.undoStack().undo();
  EXPECT_TRUE(desk->problems().empty());
  EXPECT_FALSE(desk->isStale());
  EXPECT_FALSE(desk->isAnswerStale());
}

TEST_F(SuctionDeskOnSample, WithoutGranularFillThereIsNoField) {
  openAnswered(QStringLiteral("mid-terrace"));
  EXPECT_FALSE(desk->field());
  EXPECT_EQ(desk->answer()->state, siting::SuctionState::not_layered);
}

TEST_F(SuctionDeskOnSample, TheSecondSumpIsOneStep) {
  openAnswered(QStringLiteral("extended-cottage"));
  ASSERT_TRUE(desk->mayAddSecond());
  const auto proposed = desk->answer()->second->place;
  const plan::Job before = session.job();
  const std::string first = session.sump();
  const int steps = session.undoStack().index();
  EXPECT_TRUE(desk->addSecond().empty());
  EXPECT_EQ(session.undoStack().index(), steps + 1);
  ASSERT_EQ(session.job().design.sumps.size(), before.design.sumps.size() + 1);
  EXPECT_DOUBLE_EQ(session.job().design.sumps.back().chainage_m, proposed.chainage_m);
  EXPECT_EQ(session.sump(), first);
  EXPECT_FALSE(desk->mayAddSecond());
  EXPECT_EQ(desk->field()->sumps.size(), 2U);
  session.undoStack().undo();
  EXPECT_EQ(session.job(), before);
}

/// What was looked for is no matter of the field, but of whether a second sump may stand there.
TEST_F(SuctionDeskOnSample, AProposalIsOfTheRulesAsTheyStand) {
  openAnswered(QStringLiteral("extended-cottage"));
  ASSERT_TRUE(desk->mayAddSecond());
  const auto guesses = desk->answer()->second->state;
  plan::LookedFor none;
  ASSERT_TRUE(session.edit(QStringLiteral("Nobody looked"), plan::setLookedFor(session.job(), none))
                  .empty());
  ASSERT_TRUE(answered());
  EXPECT_NE(desk->answer()->second->state, guesses);
  EXPECT_EQ(desk->answer()->second->state, session.study()->stateAt(desk->answer()->second->place));
}

/// While one sump is dragged past another their pits run into each other: no field, and why.
TEST_F(SuctionDeskOnSample, PitsInOneWhileDraggedAreSaid) {
  open();
  plan::Job job = session.job();
  plan::Sump second = job.design.sumps[0];
  second.id = "second";
  second.chainage_m += 4.0;
  job.design.sumps.push_back(second);
  ASSERT_TRUE(session.edit(QStringLiteral("Two"), job).empty());
  desk->setWatched(SuctionDesk::Watched::everything);
  ASSERT_TRUE(answered());
  const auto to = [&](double aside_m) {
    session.moveTo(
        session.study()->perimeter().wrapped({second.ring, second.chainage_m + aside_m}));
  };
  session.beginMove();
  to(0.1);
  EXPECT_FALSE(desk->field());
  ASSERT_EQ(desk->problems().size(), 1U);
  EXPECT_EQ(desk->problems()[0].message.id, "suction.pits-in-one");
  to(1.0);
  EXPECT_TRUE(desk->field());
  EXPECT_TRUE(desk->problems().empty());
  session.cancelMove();
}

TEST_F(SuctionDeskOnSample, ASecondSumpOnTheSameFanTakesFromTheFirst) {
  open(QStringLiteral("extended-cottage"));
  ASSERT_TRUE(
      session.edit(QStringLiteral("One fan"), plan::setSharedFan(session.job(), true)).empty());
  desk->setWatched(SuctionDesk::Watched::everything);
  ASSERT_TRUE(answered());
  ASSERT_TRUE(desk->mayAddSecond());
  EXPECT_TRUE(desk->addSecond().empty());
  ASSERT_TRUE(answered());
  EXPECT_EQ(desk->field()->duty.lines.size(), 1U);
  expectFresh();
}

/// On one fan for all the curve is of the sump in hand, beside the others.
TEST_F(SuctionDeskOnSample, OnOneFanTheCurveIsOfTheSumpInHand) {
  open();
  plan::Job job = session.job();
  plan::Sump second = job.design.sumps[0];
  second.id = "second";
  second.chainage_m += 6.0;
  job.design.sumps.push_back(second);
  job.design.shared_fan = true;
  ASSERT_TRUE(session.edit(QStringLiteral("Two on one fan"), job).empty());
  desk->setWatched(SuctionDesk::Watched::everything);
  ASSERT_TRUE(answered());
  ASSERT_NE(desk->along(), nullptr);
  EXPECT_EQ(desk->along()->others().size(), 1U);
  const auto* before = desk->along();
  const auto beside = before->others();
  session.nudge(0.3);
  ASSERT_TRUE(answered());
  EXPECT_EQ(desk->along(), before) << "the others did not move";
  session.chooseSump("second");
  EXPECT_EQ(desk->along(), nullptr) << "that of the other sump is not this one's";
  ASSERT_TRUE(comesTrue([&] { return desk->along() != nullptr; }));
  EXPECT_NE(desk->along()->others(), beside);
}

}  // namespace
}  // namespace sumpwright::session
