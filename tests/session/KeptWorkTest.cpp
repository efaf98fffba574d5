// Work kept against a crash: when it is, when it goes, and who may have it.

#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <QCoreApplication>
#include <QDir>
#include <QElapsedTimer>
#include <QFile>
#include <QTemporaryDir>

#include "files/JobFile.h"
#include "files/KeptWork.h"
#include "session/LeftOver.h"
#include "session/Session.h"

namespace sumpwright::session {
namespace {

class KeptWorkOf : public testing::Test {
 protected:
  void SetUp() override {
    qputenv("XDG_DATA_HOME", folder.filePath(QStringLiteral("data")).toUtf8());
    path = folder.filePath(QStringLiteral("house.sump.json"));
    ASSERT_TRUE(QFile::copy(QStringLiteral(SUMPWRIGHT_SAMPLES_DIR "/bungalow.sump.json"), path));
    QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner);
    session = std::make_unique<Session>();
    ASSERT_TRUE(session->open(path).empty());
  }
  static void note(Session& to, const std::string& notes) {
    plan::Job job = to.job();
    job.notes = notes;
    ASSERT_TRUE(to.edit(QStringLiteral("Note"), job).empty());
    to.waitUntilKept();
  }
  void note(const std::string& notes) { note(*session, notes); }
  /// As a crash leaves it: nothing is told, the lock is no longer a running process's.
  void crash() { session.reset(); }
  static std::size_t count() { return files::keptSlots().size(); }

  QTemporaryDir folder;
  QString path;
  std::unique_ptr<Session> session;
};

TEST_F(KeptWorkOf, AnEditIsKeptApartFromTheFile) {
  const auto before = files::readBytes(path.toStdString(), 1 << 20);
  EXPECT_EQ(count(), 0U);
  note("one");
  crash();
  EXPECT_EQ(*files::readBytes(path.toStdString(), 1 << 20), *before);
  ASSERT_EQ(count(), 1U);
  const auto kept = files::readKept(files::keptSlots().front());
  ASSERT_TRUE(kept.ok());
  EXPECT_EQ(kept->read.job.notes, "one");
  EXPECT_EQ(kept->head.origin, path.toStdString());
  EXPECT_EQ(kept->head.origin_hash, files::hashOf(*before));
  const auto left = leftOverOf(path);
  ASSERT_TRUE(left);
  EXPECT_EQ(left->address.toStdString(), kept->read.job.address);
  EXPECT_LT(std::abs(left->written_at.secsTo(QDateTime::currentDateTime())), 60);
}

TEST_F(KeptWorkOf, TakenUpItIsAJobWithChanges) {
  note("one");
  const plan::Job job = session->job();
  crash();
  Session again;
  ASSERT_TRUE(again.takeUp(leftOverOf(path)->slot).empty());
  EXPECT_EQ(again.job(), job);
  EXPECT_EQ(again.path(), path);
  EXPECT_TRUE(again.isModified());
  EXPECT_FALSE(again.isChangedElsewhere());
  EXPECT_EQ(count(), 1U);  // kept on
  note(again, "two");
  again.undoStack().undo();
  EXPECT_TRUE(again.isModified());
  EXPECT_EQ(count(), 1U);
  ASSERT_TRUE(again.save().empty());
  EXPECT_EQ(count(), 0U);
  EXPECT_EQ(files::openJob(path.toStdString())->job, job);
}

TEST_F(KeptWorkOf, GoesWhenSavedUndoneOrClosed) {
  note("one");
  ASSERT_TRUE(session->save().empty());
  EXPECT_EQ(count(), 0U);
  note("two");
  session->undoStack().undo();
  EXPECT_EQ(count(), 0U);
  session->undoStack().redo();
  crash();  // what was handed over is still written
  EXPECT_EQ(count(), 1U);
  discardLeftOver(files::keptSlots().front());

  session = std::make_unique<Session>();
  ASSERT_TRUE(session->open(path).empty());
  note("three");
  session->close();
  EXPECT_EQ(count(), 0U);
  ASSERT_TRUE(session->open(path).empty());
  note("four");
  session->newJob();  // the user was asked, and let go of it
  EXPECT_EQ(count(), 0U);
  note("five");
  ASSERT_TRUE(session->open(path).empty());
  crash();
  EXPECT_EQ(count(), 0U);
}

TEST_F(KeptWorkOf, AJobNeverSavedIsKeptToo) {
  session->newJob();
  note("one");
  crash();
  EXPECT_FALSE(leftOverOf(path));
  std::vector<LeftOver> left = leftOvers();
  ASSERT_EQ(left.size(), 1U);
  EXPECT_TRUE(left.front().origin.isEmpty());
  Session again;
  ASSERT_TRUE(again.takeUp(left.front().slot).empty());
  EXPECT_EQ(again.job().notes, "one");
  EXPECT_TRUE(again.path().isEmpty());
  EXPECT_TRUE(again.isModified());
  ASSERT_TRUE(again.saveAs(folder.filePath(QStringLiteral("new.sump.json"))).empty());
  EXPECT_EQ(count(), 0U);
  note(again, "two");
  EXPECT_EQ(files::keptSlots(), std::vector{files::slotOf(again.path().toStdString(), 1)});
}

TEST_F(KeptWorkOf, OpeningTheSavedFileLeavesTheKeptWork) {
  note("one");
  crash();
  Session again;
  ASSERT_TRUE(again.open(path).empty());
  note(again, "other");
  EXPECT_EQ(count(), 2U);
  ASSERT_TRUE(again.save().empty());
  ASSERT_EQ(count(), 1U);
  EXPECT_EQ(files::readKept(files::keptSlots().front())->read.job.notes, "one");
  EXPECT_TRUE(again.takeUp(files::keptSlots().front()).empty());
  EXPECT_TRUE(again.isChangedElsewhere());  // it was work on an older file
}

TEST_F(KeptWorkOf, TheNewestOfSeveralIsOffered) {
  note("one");
  Session second;
  ASSERT_TRUE(second.open(path).empty());
  crash();
  {
    Session third;
    ASSERT_TRUE(third.open(path).empty());
    note(third, "two");
  }
  ASSERT_EQ(count(), 2U);
  const auto left = leftOverOf(path);
  ASSERT_TRUE(left);
  EXPECT_EQ(files::readKept(left->slot)->read.job.notes, "two");
  EXPECT_EQ(leftOvers().front().slot, left->slot);
}

TEST_F(KeptWorkOf, WhatIsInTheFileAlreadyIsNotOffered) {
  note("one");
  const plan::Job job = session->job();
  crash();
  ASSERT_TRUE(files::saveJob(path.toStdString(), job, {}).ok());
  EXPECT_FALSE(leftOverOf(path));
  EXPECT_EQ(count(), 0U);
}

TEST_F(KeptWorkOf, AWindowIsSeenByAnother) {
  EXPECT_EQ(session->openElsewhere(path), QString());  // not by itself
  Session other;
  EXPECT_TRUE(
      other.openElsewhere(path).contains(QString::number(QCoreApplication::applicationPid())));
  ASSERT_TRUE(other.open(path).empty());
  EXPECT_FALSE(session->openElsewhere(path).isEmpty());
  note("one");
  note(other, "two");
  EXPECT_EQ(count(), 2U);          // neither overwrites the other's
  EXPECT_FALSE(leftOverOf(path));  // both are at work on it
  EXPECT_FALSE(discardLeftOver(files::keptSlots().front()));
  EXPECT_FALSE(other.takeUp(files::slotOf(path.toStdString(), 1)).empty());
  EXPECT_EQ(other.job().notes, "two");
  other.close();
  EXPECT_EQ(session->openElsewhere(path), QString());
}

TEST_F(KeptWorkOf, AnotherWayToTheFileIsTheSameFile) {
  const QString link = folder.filePath(QStringLiteral("link.sump.json"));
  ASSERT_TRUE(QFile::link(path, link));
  Session other;
  EXPECT_FALSE(other.openElsewhere(link).isEmpty());
  const QString round = folder.filePath(QStringLiteral("data/../house.sump.json"));
  EXPECT_FALSE(other.openElsewhere(round).isEmpty());
  EXPECT_TRUE(other.openElsewhere(folder.filePath(QStringLiteral("no.sump.json"))).isEmpty());
}

TEST_F(KeptWorkOf, AFileChangedElsewhereIsSeen) {
  EXPECT_FALSE(session->isChangedElsewhere());
  note("one");
  ASSERT_TRUE(session->save().empty());
  EXPECT_FALSE(session->isChangedElsewhere());
  Session other;
  ASSERT_TRUE(other.open(path).empty());
  note(other, "two");
  ASSERT_TRUE(other.save().empty());
  EXPECT_TRUE(session->isChangedElsewhere());
  EXPECT_FALSE(other.isChangedElsewhere());
  QFile::remove(path);
  EXPECT_FALSE(session->isChangedElsewhere());  // nothing there to be lost
}

TEST_F(KeptWorkOf, AFailureToKeepIsToldOnceUntilItWorksAgain) {
  int told = 0;
  QObject::connect(session.get(), &Session::keepingFailed, [&](const base::Problems& why) {
    EXPECT_EQ(why.front().message.id, "file.not-writable");
    ++told;
  });
  const QString recovery = QString::fromStdString(files::keptFolder());
  QDir(recovery).removeRecursively();
  QFile in_the_way(recovery);  // a file where the folder should be
  ASSERT_TRUE(in_the_way.open(QFile::WriteOnly));
  in_the_way.close();
  for (const char* text : {"one", "two", "three"}) note(text);
  QCoreApplication::processEvents();
  EXPECT_EQ(told, 1);
  in_the_way.remove();
  note("four");
  QCoreApplication::processEvents();
  EXPECT_EQ(count(), 1U);
  QDir(recovery).removeRecursively();
  ASSERT_TRUE(in_the_way.open(QFile::WriteOnly));
  in_the_way.close();
  note("five");
  QCoreApplication::processEvents();
  EXPECT_EQ(told, 2);
}

/// Steps of one gesture may replace one another before they are written; the last of them must
/// reach the disk without anybody waiting for it, whenever the thread that writes happens to end.
TEST_F(KeptWorkOf, TheLastStepOfAGestureIsWrittenUnasked) {
  for (int round = 0; round < 60; ++round) {
    const int gesture = session->newGesture();
    std::string last;
    for (int step = 0; step < 4; ++step) {
      plan::Job job = session->job();
      last = std::to_string(round) + "." + std::to_string(step);
      job.notes = last;
      ASSERT_TRUE(session->edit(QStringLiteral("Note"), job, gesture).empty());
      // Until the write has been told: the thread may still be about to end.
      QCoreApplication::processEvents();
    }
    const auto isKept = [&] {
      const std::vector<std::string> left = files::keptSlots();
      if (left.empty()) return false;  // the first write is still on its way
      const auto kept = files::readKept(left.front());
      return kept.ok() && kept->read.job.notes == last;
    };
    QElapsedTimer clock;
    for (clock.start(); !isKept() && clock.elapsed() < 5000;) QCoreApplication::processEvents();
    ASSERT_TRUE(isKept()) << last;
  }
}

TEST_F(KeptWorkOf, ADamagedOneIsListedWithWhatIsWrong) {
  note("one");
  crash();
  const std::string slot = files::keptSlots().front();
  for (const char* bytes :
       {"", "{}", "{}\n{}", "no line", "{\"format\":\"sumpwright.kept\",\"version\":1}\nx"}) {
    ASSERT_TRUE(files::writeBytes(files::keptFile(slot), bytes).ok());
    const std::vector<LeftOver> left = leftOvers();
    ASSERT_EQ(left.size(), 1U) << bytes;
    ASSERT_FALSE(left.front().problems.empty()) << bytes;
    EXPECT_EQ(left.front().problems.front().message.id, "file.kept-unusable") << bytes;
    EXPECT_FALSE(leftOverOf(path)) << bytes;
    Session again;
    EXPECT_FALSE(again.takeUp(slot).empty());
    EXPECT_FALSE(again.hasJob());
  }
  EXPECT_TRUE(discardLeftOver(slot));
  EXPECT_EQ(count(), 0U);
}

// What was being written when the power went has not got its name yet.
TEST_F(KeptWorkOf, HalfWrittenFilesAreClearedUp) {
  note("one");
  const std::string half = files::keptFile(files::keptSlots().front()) + ".aBcDeF";
  ASSERT_TRUE(files::writeBytes(half, "{").ok());
  EXPECT_TRUE(leftOvers().empty());
  EXPECT_TRUE(QFile::exists(QString::fromStdString(half)));  // its window may be at it right now
  crash();
  EXPECT_EQ(leftOvers().size(), 1U);
  EXPECT_FALSE(QFile::exists(QString::fromStdString(half)));
}

TEST_F(KeptWorkOf, IsForThisUserAlone) {
  struct stat about = {};
  ASSERT_EQ(stat(files::keptFolder().c_str(), &about), 0);
  EXPECT_EQ(about.st_mode & 0077U, 0U);
}

}  // namespace
}  // namespace sumpwright::session
