// The session without a window: new jobs, edits, drags with a preview, undo without a limit.

#include <gtest/gtest.h>
#include <malloc.h>

#include <QFile>
#include <QTemporaryDir>
#include <cstdio>

#include "plan/OutlineEdits.h"
#include "session/Session.h"

namespace sumpwright::session {
namespace {

class SessionOnSample : public testing::Test {
 protected:
  void SetUp() override {
    path = folder.filePath(QStringLiteral("house.sump.json"));
    ASSERT_TRUE(QFile::copy(QStringLiteral(SUMPWRIGHT_SAMPLES_DIR "/bungalow.sump.json"), path));
    QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner);
    ASSERT_TRUE(session.open(path).empty());
    QObject::connect(&session, &Session::studyChanged, [this] { ++studies; });
    QObject::connect(&session, &Session::moveFinished, [this] { ++finished; });
  }
  plan::Job noted(const std::string& notes) const {
    plan::Job job = session.job();
    job.notes = notes;
    return job;
  }
  base::Result<plan::Job> shifted(double out_m) const {
    const plan::Job& from = session.isPreviewing() ? session.jobBeforePreview() : session.job();
    return plan::moveWall(from, 0, 0, out_m);
  }
  void undo() { session.undoStack().undo(); }
  void redo() { session.undoStack().redo(); }
  int steps() { return session.undoStack().count(); }

  QTemporaryDir folder;
  QString path;
  Session session;
  int studies = 0;
  int finished = 0;
};

TEST_F(SessionOnSample, ANewJobIsEmptyAndHasNoFile) {
  session.nudge(0.1);
  session.newJob();
  EXPECT_TRUE(session.hasJob());
  EXPECT_TRUE(session.path().isEmpty());
  EXPECT_FALSE(session.isModified());
  EXPECT_EQ(steps(), 0);
  EXPECT_EQ(session.study(), nullptr);
  EXPECT_FALSE(session.job().id.empty());
  // Nothing but that there is no outline yet contradicts anything.
  base::Problems unsound = session.problems();
  std::erase_if(unsound, [](const auto& p) { return p.gravity != base::Gravity::unsound; });
  ASSERT_EQ(unsound.size(), 1U);
  EXPECT_EQ(unsound.front().message.id, "plan.ring.none");
}

TEST_F(SessionOnSample, ANewJobIsSavedUnderAName) {
  session.newJob();
  const std::string id = session.job().id;
  EXPECT_TRUE(session.edit(QStringLiteral("Note"), noted("invented")).empty());
  EXPECT_TRUE(session.isModified());
  const QString file = folder.filePath(QStringLiteral("new.sump.json"));
  ASSERT_TRUE(session.saveAs(file).empty());
  EXPECT_FALSE(session.isModified());
  EXPECT_EQ(session.path(), file);
  ASSERT_TRUE(session.open(file).empty());
  EXPECT_EQ(session.job().id, id);
  EXPECT_EQ(session.job().notes, "invented");
  session.newJob();
  EXPECT_NE(session.job().id, id);
}

TEST_F(SessionOnSample, AnEditIsOneStepOrNothing) {
  const plan::Job before = session.job();
  EXPECT_TRUE(session.edit(QStringLiteral("Shift a wall"), shifted(0.1)).empty());
  const plan::Job after = session.job();
  EXPECT_NE(before, after);
  EXPECT_EQ(steps(), 1);
  EXPECT_EQ(session.undoStack().undoText(), QStringLiteral("Shift a wall"));
  undo();
  EXPECT_EQ(session.job(), before);
  redo();
  EXPECT_EQ(session.job(), after);

  const base::Problems no = session.edit(QStringLiteral("x"), plan::moveWall(after, 7, 0, 0.1));
  ASSERT_FALSE(no.empty());
  EXPECT_EQ(no.front().message.id, "plan.edit.no-edge");
  EXPECT_TRUE(session.edit(QStringLiteral("same"), after).empty());
  EXPECT_EQ(session.job(), after);
  EXPECT_EQ(steps(), 1);
}

TEST_F(SessionOnSample, StepsOfOneGestureAreOne) {
  const plan::Job before = session.job();
  const int gesture = session.newGesture();
  for (int i = 1; i <= 5; ++i)
    session.edit(QStringLiteral("Note"), noted(std::to_string(i)), gesture);
  EXPECT_EQ(steps(), 1);
  session.edit(QStringLiteral("Note"), noted("another"), session.newGesture());
  EXPECT_EQ(steps(), 2);
  undo();
  EXPECT_EQ(session.job().notes, "5");
  undo();
  EXPECT_EQ(session.job(), before);
  EXPECT_FALSE(session.isModified());
}

TEST_F(SessionOnSample, AGestureThatEndsWhereItBeganIsNoStep) {
  const plan::Job before = session.job();
  const int gesture = session.newGesture();
  session.edit(QStringLiteral("Note"), noted("there"), gesture);
  session.edit(QStringLiteral("Note"), before, gesture);
  EXPECT_EQ(steps(), 0);
  EXPECT_FALSE(session.isModified());
}

TEST_F(SessionOnSample, ASavedStepIsNotMeltedInto) {
  const int gesture = session.newGesture();
  session.edit(QStringLiteral("Note"), noted("saved"), gesture);
  ASSERT_TRUE(session.save().empty());
  session.edit(QStringLiteral("Note"), noted("later"), gesture);
  EXPECT_EQ(steps(), 2);
  undo();
  EXPECT_EQ(session.job().notes, "saved");
  EXPECT_FALSE(session.isModified());
}

TEST_F(SessionOnSample, APreviewIsStudiedAndIsOneStepInTheEnd) {
  const plan::Job before = session.job();
  const double length = session.study()->perimeter().length_m(0);
  session.beginPreview();
  for (int i = 1; i <= 20; ++i) session.preview(*shifted(0.01 * i));
  EXPECT_TRUE(session.isPreviewing());
  EXPECT_EQ(session.jobBeforePreview(), before);
  EXPECT_EQ(studies, 20);
  EXPECT_NEAR(session.study()->perimeter().length_m(0), length + 0.4, 1e-9);
  EXPECT_EQ(steps(), 0);
  EXPECT_FALSE(session.isModified());
  const plan::Job live = session.job();
  session.finishPreview(QStringLiteral("Shift a wall"));
  EXPECT_FALSE(session.isPreviewing());
  EXPECT_EQ(finished, 1);
  EXPECT_EQ(steps(), 1);
  EXPECT_EQ(session.job(), live);
  undo();
  EXPECT_EQ(session.job(), before);
  EXPECT_NEAR(session.study()->perimeter().length_m(0), length, 1e-9);
  redo();
  EXPECT_EQ(session.job(), live);
}

TEST_F(SessionOnSample, ACancelledPreviewLeavesNoTrace) {
  const plan::Job before = session.job();
  session.edit(QStringLiteral("Note"), noted("undone"));
  undo();
  session.beginPreview();
  session.preview(*shifted(0.5));
  EXPECT_NE(session.job(), before);
  session.cancelPreview();
  EXPECT_EQ(session.job(), before);
  EXPECT_EQ(finished, 1);
  EXPECT_TRUE(session.undoStack().canRedo());  // what was undone can still be had again
  session.beginPreview();
  session.preview(*shifted(0.5));
  session.preview(before);
  session.finishPreview(QStringLiteral("Shift a wall"));  // back where it began
  EXPECT_EQ(session.job(), before);
  EXPECT_TRUE(session.undoStack().canRedo());
  EXPECT_EQ(finished, 2);
}

TEST_F(SessionOnSample, UndoSavingAndOpeningCancelAPreview) {
  const plan::Job before = session.job();
  const plan::Job edited = noted("one");
  const auto drag = [&] {
    session.beginPreview();
    session.preview(*shifted(0.5));
  };
  session.edit(QStringLiteral("Note"), edited);
  drag();
  undo();
  EXPECT_FALSE(session.isPreviewing());
  EXPECT_EQ(session.job(), before);
  EXPECT_EQ(finished, 1);
  session.preview(edited);  // the pointer does not know yet
  session.finishPreview(QStringLiteral("Shift a wall"));
  EXPECT_EQ(session.job(), before);
  redo();

  drag();
  ASSERT_TRUE(session.save().empty());
  EXPECT_EQ(session.job(), edited);
  drag();
  ASSERT_TRUE(session.open(path).empty());
  EXPECT_FALSE(session.isPreviewing());
  EXPECT_EQ(session.job(), edited);
  drag();
  session.close();
  EXPECT_FALSE(session.isPreviewing());
  EXPECT_FALSE(session.hasJob());
  EXPECT_EQ(finished, 4);
}

TEST_F(SessionOnSample, AnEditTakesAPreviewAlong) {
  const plan::Job before = session.job();
  session.beginPreview();
  session.preview(*shifted(0.5));
  session.edit(QStringLiteral("Note"), noted("both"));
  EXPECT_FALSE(session.isPreviewing());
  EXPECT_EQ(steps(), 1);
  undo();
  EXPECT_EQ(session.job(), before);
}

TEST_F(SessionOnSample, AnUnsoundPreviewHasNoStudyAndComesBack) {
  session.beginPreview();
  plan::Job crossed = session.job();
  std::swap(crossed.plan.rings[0].corners[1], crossed.plan.rings[0].corners[2]);
  session.preview(crossed);
  EXPECT_EQ(session.study(), nullptr);
  EXPECT_FALSE(session.problems().empty());
  session.cancelPreview();
  EXPECT_NE(session.study(), nullptr);
}

// Nothing is ever dropped from the end of the row, and a row of steps holds each job once.
TEST_F(SessionOnSample, ACoreThatNoPipeGoesThroughIsRefusedAndTheStudyStays) {
  plan::Job job = session.job();
  job.design.pipe_od_mm = 120.0;
  job.design.core_mm = 127.0;
  ASSERT_TRUE(session.edit(QStringLiteral("Pipe"), job).empty());
  ASSERT_NE(session.study(), nullptr);
  const base::Problems why = session.setCore(112.0);
  ASSERT_EQ(why.size(), 1U);
  EXPECT_EQ(why.front().message.id, "study.pipe-size");
  EXPECT_NE(session.study(), nullptr);
  EXPECT_EQ(session.job().design.core_mm, 127.0);
}

/// A second sump beside that of the sample; gives its id.
std::string addSump(Session& session, Place place) {
  EXPECT_TRUE(session
                  .edit(QStringLiteral("second"),
                        plan::moveSump(session.job(), "second", place.ring, place.chainage_m))
                  .empty());
  return "second";
}

TEST_F(SessionOnSample, TheChosenSumpIsTheOneThatMovesAndGoes) {
  const std::string first = session.sump();
  const Place stood = *session.place();
  const std::string second = addSump(session, {0, 2.0});
  EXPECT_EQ(session.sump(), first) << "goes on with the one in hand";
  session.chooseSump(second);
  EXPECT_EQ(session.place(), (Place{0, 2.0}));
  ASSERT_NE(session.assessment(), nullptr);
  EXPECT_EQ(session.assessment()->place, (Place{0, 2.0}));
  session.nudge(0.1);
  EXPECT_NEAR(session.place()->chainage_m, 2.1, 1e-9);
  session.chooseSump(first);
  EXPECT_EQ(session.place(), stood) << "untouched";
  const int before = steps();
  session.nudge(0.1);
  EXPECT_EQ(steps(), before + 1) << "no gesture is shared by two sumps";
  session.chooseSump(second);
  session.removeSump();
  ASSERT_EQ(session.job().design.sumps.size(), 1u);
  EXPECT_EQ(session.job().design.sumps[0].id, first);
  EXPECT_EQ(session.sump(), first);
}

TEST_F(SessionOnSample, ASumpThatIsShownIsChosen) {
  const std::string second = addSump(session, {0, 2.0});
  session.show(second);
  EXPECT_EQ(session.sump(), second);
  session.show("no such thing");
  EXPECT_EQ(session.sump(), second);
}

TEST_F(SessionOnSample, TenThousandStepsOfUndo) {
  constexpr int kSteps = 10'000;
  QUndoStack stack;
  EXPECT_EQ(session.undoStack().undoLimit(), 0);  // Qt's word for none
  SharedJob now = std::make_shared<const plan::Job>(session.job());
  const plan::Job first = *now;
  const auto used = [] { return static_cast<double>(mallinfo2().uordblks) / 1e6; };
  const double before = used();
  for (int i = 1; i <= kSteps; ++i) {
    plan::Job after = *now;
    after.plan.rings[0].corners[0].x += 1e-6;
    stack.push(new JobEdit(QStringLiteral("Move a corner"), now,
                           std::make_shared<const plan::Job>(std::move(after)),
                           [&](const SharedJob& job) { now = job; }));
  }
  const double taken = used() - before;
  std::printf("10,000 steps on a bungalow of %zu openings: %.0f MB, %.1f kB a step\n",
              first.plan.openings.size(), taken, 1000.0 * taken / kSteps);
  EXPECT_EQ(stack.count(), kSteps);
  EXPECT_LT(taken, 500.0);  // own figure: what a small laptop can spare
  for (int i = 0; i < kSteps; ++i) stack.undo();
  EXPECT_EQ(*now, first);
}

}  // namespace
}  // namespace sumpwright::session
