// The program killed at random moments: what is left must be whole, and lack no more than the last
// gesture. SUMPWRIGHT_CASES sets how often.

#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QProcess>
#include <QTemporaryDir>
#include <QThread>
#include <algorithm>
#include <cstdio>

#include "files/JobFile.h"
#include "files/KeptWork.h"
#include "session/LeftOver.h"
#include "session/Session.h"
#include "support/Seed.h"

namespace sumpwright::session {
namespace {

long numberIn(const plan::Job& job) {
  const std::string word = "gesture ";
  return job.notes.starts_with(word) ? std::stol(job.notes.substr(word.size())) : 0;
}

/// The last whole line; a line that was being written when the process died does not count.
long lastPrinted(const QByteArray& out) {
  const auto end = out.lastIndexOf('\n');
  if (end < 0) return 0;
  const auto begin = out.lastIndexOf('\n', end - 1);
  return out.mid(begin + 1, end - begin - 1).toLong();
}

struct Round {
  long printed = 0;
  long in_file = 0;
  long kept = 0;  ///< 0: nothing was kept
};

class Killed : public testing::Test {
 protected:
  Round round(std::uint64_t seed, int after_ms) {
    const QString path = m_folder.filePath(QStringLiteral("house.sump.json"));
    QFile::remove(path);
    EXPECT_TRUE(QFile::copy(QStringLiteral(SUMPWRIGHT_SAMPLES_DIR "/bungalow.sump.json"), path));
    QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner);

    Round out;
    out.printed = lastPrinted(runAndKill(path, seed, after_ms));
    const auto saved = files::openJob(path.toStdString());
    EXPECT_TRUE(saved.ok()) << "the job's own file is not whole";
    if (saved) out.in_file = numberIn(saved->job);
    for (const LeftOver& left : leftOvers()) {
      EXPECT_TRUE(left.problems.empty()) << "what was kept is not whole";
    }
    if (const auto left = leftOverOf(path)) {
      Session session;
      EXPECT_TRUE(session.takeUp(left->slot).empty());
      EXPECT_TRUE(session.isModified());
      EXPECT_EQ(session.path(), path);
      EXPECT_FALSE(session.isChangedElsewhere());
      out.kept = numberIn(session.job());
      session.close();
    }
    EXPECT_TRUE(leftOvers().empty());
    const QDir recovery(QString::fromStdString(files::keptFolder()));
    EXPECT_TRUE(recovery.isEmpty()) << recovery.entryList().join(QLatin1Char(' ')).toStdString();
    return out;
  }

 private:
  static QByteArray runAndKill(const QString& path, std::uint64_t seed, int after_ms) {
    QProcess child;
    child.start(QStringLiteral(SUMPWRIGHT_EDITING_CHILD), {path, QString::number(seed)});
    EXPECT_TRUE(child.waitForReadyRead(30'000)) << "it never finished a gesture";
    QThread::msleep(static_cast<unsigned long>(after_ms));
    child.kill();
    EXPECT_TRUE(child.waitForFinished(30'000));
    EXPECT_EQ(child.exitStatus(), QProcess::CrashExit);
    return child.readAllStandardOutput();
  }

  QTemporaryDir m_folder;
};

TEST_F(Killed, AtMostTheLastGestureIsLost) {
  int rounds = 0;
  long gestures = 0;
  int lost_one = 0;
  int kept = 0;
  support::forEachSeed(30, [&](std::uint64_t seed) {
    support::Random random(seed);
    const Round r = round(seed, random.between(0, 400));
    const long had = std::max(r.kept, r.in_file);
    EXPECT_GE(had, r.printed - 1);
    ++rounds;
    gestures += r.printed;
    lost_one += had < r.printed ? 1 : 0;
    kept += r.kept > 0 ? 1 : 0;
  });
  std::printf(
      "killed %d times in %ld gestures: %d times work was kept, %d times the last gesture was "
      "lost, "
      "never more\n",
      rounds, gestures, kept, lost_one);
  EXPECT_GE(gestures, rounds);  // else the rounds show nothing
}

}  // namespace
}  // namespace sumpwright::session
