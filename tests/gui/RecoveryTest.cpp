// Work kept when the program ended early, two windows on one job, files changed behind its back:
// what the window asks, and that each answer does what it says.

#include <QDir>
#include <QLabel>
#include <QPushButton>

#include "files/JobFile.h"
#include "files/KeptWork.h"
#include "gui/WindowFixture.h"
#include "session/LeftOver.h"

namespace sumpwright::gui {
namespace {

class Recovery : public WindowFixture {
 protected:
  void SetUp() override {
    QDir(QString::fromStdString(files::keptFolder())).removeRecursively();
    path = sample(QStringLiteral("bungalow"));
  }
  static void note(session::Session& to, const std::string& notes) {
    plan::Job job = to.job();
    job.notes = notes;
    ASSERT_TRUE(to.edit(QStringLiteral("Note"), job).empty());
    to.waitUntilKept();
  }
  /// A session that ends without having been told that its work may be lost.
  void leaveBehind(const std::string& notes) {
    session::Session session;
    ASSERT_TRUE(session.open(path).empty());
    note(session, notes);
  }
  static void leaveBehindNew(const std::string& address) {
    session::Session session;
    session.newJob();
    plan::Job job = session.job();
    job.address = address;
    ASSERT_TRUE(session.edit(QStringLiteral("Address"), job).empty());
  }
  std::string notesInFile() { return files::openJob(path.toStdString())->job.notes; }
  static std::size_t kept() { return files::keptSlots().size(); }
  QPushButton* button(const QString& words) {
    for (auto* b : window->findChildren<QPushButton*>()) {
      if (b->isVisible() && b->text().contains(words)) return b;
    }
    return nullptr;
  }

  QString path;
};

TEST_F(Recovery, KeptWorkIsTakenUp) {
  leaveBehind("kept");
  dialogs.kept = window::Kept::take_up;
  ASSERT_TRUE(window->openPath(path));
  ASSERT_EQ(dialogs.asked.size(), 1);
  EXPECT_TRUE(dialogs.asked.front().startsWith(QStringLiteral("kept bungalow ")));
  EXPECT_TRUE(dialogs.asked.front().endsWith(QTime::currentTime().toString(QStringLiteral("mm"))) ||
              dialogs.asked.front().contains(QLatin1Char(':')));
  EXPECT_EQ(session().job().notes, "kept");
  EXPECT_TRUE(window->isWindowModified());
  EXPECT_EQ(window->topRow().savedText(), QStringLiteral("Not saved"));
  EXPECT_NE(notesInFile(), "kept");
  trigger("file.save");
  EXPECT_EQ(notesInFile(), "kept");
  EXPECT_EQ(kept(), 0U);
}

TEST_F(Recovery, TheSavedFileMayBeOpenedAndTheKeptWorkStays) {
  leaveBehind("kept");
  dialogs.kept = window::Kept::open_saved;
  ASSERT_TRUE(window->openPath(path));
  EXPECT_NE(session().job().notes, "kept");
  EXPECT_FALSE(session().isModified());
  EXPECT_EQ(kept(), 1U);
  ASSERT_TRUE(window->openPath(path));
  EXPECT_EQ(dialogs.asked.size(), 2);
}

TEST_F(Recovery, KeptWorkIsDiscardedOrOpeningCancelled) {
  leaveBehind("kept");
  dialogs.kept = window::Kept::cancel;
  EXPECT_FALSE(window->openPath(path));
  EXPECT_FALSE(session().hasJob());
  EXPECT_EQ(kept(), 1U);
  dialogs.kept = window::Kept::discard;
  EXPECT_TRUE(window->openPath(path));
  EXPECT_NE(session().job().notes, "kept");
  EXPECT_EQ(kept(), 0U);
}

TEST_F(Recovery, JobsNeverSavedAreOnTheStartPage) {
  leaveBehindNew("7 Sandhopper Lane (invented)");
  window::MainWindow again(settings, dialogs);
  again.show();
  window.reset();
  QPushButton* open = nullptr;
  for (auto* b : again.findChildren<QPushButton*>()) {
    if (b->text().contains(QStringLiteral("7 Sandhopper Lane"))) open = b;
  }
  ASSERT_NE(open, nullptr);
  EXPECT_TRUE(open->text().contains(QStringLiteral("never saved")));
  open->click();
  EXPECT_EQ(again.session().job().address, "7 Sandhopper Lane (invented)");
  EXPECT_TRUE(again.session().path().isEmpty());
  EXPECT_TRUE(again.session().isModified());
  dialogs.next_save = folder.filePath(QStringLiteral("lane"));
  EXPECT_TRUE(again.save());
  EXPECT_EQ(kept(), 0U);
}

TEST_F(Recovery, DiscardingOnTheStartPageAsks) {
  leaveBehindNew("7 Sandhopper Lane (invented)");
  trigger("file.new");
  window->closeJob();  // shows the start page anew
  QCoreApplication::processEvents();
  ASSERT_NE(button(QStringLiteral("7 Sandhopper Lane")), nullptr);
  button(QStringLiteral("Discard"))->click();
  EXPECT_EQ(kept(), 1U);
  EXPECT_TRUE(dialogs.asked.back().startsWith(QStringLiteral("discard 7 Sandhopper Lane")));
  dialogs.discard_kept = true;
  button(QStringLiteral("Discard"))->click();
  QCoreApplication::processEvents();
  EXPECT_EQ(kept(), 0U);
  EXPECT_EQ(button(QStringLiteral("7 Sandhopper Lane")), nullptr);
}

TEST_F(Recovery, WorkOnALostFileIsTakenUpFromTheStartPage) {
  leaveBehind("kept");
  QFile::remove(path);
  trigger("file.new");
  window->closeJob();
  QCoreApplication::processEvents();
  QPushButton* open = button(QStringLiteral("bungalow.sump.json, work up to"));
  ASSERT_NE(open, nullptr);
  open->click();
  EXPECT_EQ(session().job().notes, "kept");
  EXPECT_EQ(session().path(), path);
  trigger("file.save");
  EXPECT_EQ(notesInFile(), "kept");
}

TEST_F(Recovery, LettingGoOfChangesLetsGoOfWhatIsKept) {
  ASSERT_TRUE(window->openPath(path));
  note(session(), "one");
  EXPECT_EQ(kept(), 1U);
  dialogs.unsaved = window::Unsaved::cancel;
  EXPECT_FALSE(window->close());
  EXPECT_EQ(kept(), 1U);
  dialogs.unsaved = window::Unsaved::discard;
  EXPECT_FALSE(window->openPath(folder.filePath(QStringLiteral("none.sump.json"))));
  EXPECT_EQ(kept(), 1U);  // the job is still open
  EXPECT_TRUE(window->close());
  EXPECT_EQ(kept(), 0U);
}

TEST_F(Recovery, TwoWindowsOnOneJob) {
  ASSERT_TRUE(window->openPath(path));
  window::MainWindow other(settings, dialogs);
  EXPECT_FALSE(other.openPath(path));  // "leave it"
  EXPECT_FALSE(other.session().hasJob());
  ASSERT_EQ(dialogs.asked.size(), 1);
  EXPECT_TRUE(dialogs.asked.front().startsWith(QStringLiteral("elsewhere bungalow process ")));
  dialogs.open_anyway = true;
  ASSERT_TRUE(other.openPath(path));

  note(session(), "here");
  note(other.session(), "there");
  EXPECT_TRUE(other.save());
  dialogs.asked.clear();
  dialogs.changed = window::Changed::cancel;
  EXPECT_FALSE(window->save());
  EXPECT_EQ(dialogs.asked, QStringList{QStringLiteral("changed bungalow")});
  EXPECT_EQ(notesInFile(), "there");
  EXPECT_TRUE(session().isModified());

  dialogs.changed = window::Changed::save_as;
  dialogs.next_save = folder.filePath(QStringLiteral("mine"));
  EXPECT_TRUE(window->save());
  EXPECT_EQ(notesInFile(), "there");
  EXPECT_EQ(files::openJob(session().path().toStdString())->job.notes, "here");

  dialogs.open_anyway = true;
  ASSERT_TRUE(window->openPath(path));
  note(session(), "here again");
  note(other.session(), "there again");
  EXPECT_TRUE(other.save());
  dialogs.changed = window::Changed::overwrite;
  EXPECT_TRUE(window->save());
  EXPECT_EQ(notesInFile(), "here again");
  EXPECT_TRUE(other.session().isChangedElsewhere());
}

TEST_F(Recovery, SavingAsTheJobOfAnotherWindowAsksFirst) {
  ASSERT_TRUE(window->openPath(path));
  window::MainWindow other(settings, dialogs);
  ASSERT_TRUE(other.openPath(sample(QStringLiteral("courtyard"))));
  const std::string notes = notesInFile();
  dialogs.asked.clear();
  dialogs.next_save = path;
  dialogs.save_over = window::Changed::cancel;
  EXPECT_FALSE(other.saveAs());
  ASSERT_EQ(dialogs.asked.size(), 1);
  EXPECT_TRUE(dialogs.asked.front().startsWith(QStringLiteral("over bungalow process ")));
  EXPECT_EQ(notesInFile(), notes);

  dialogs.next_save = path;
  dialogs.save_over = window::Changed::save_as;
  dialogs.then_save = folder.filePath(QStringLiteral("third"));
  EXPECT_TRUE(other.saveAs());
  EXPECT_TRUE(other.session().path().endsWith(QStringLiteral("third.sump.json")));
  EXPECT_EQ(notesInFile(), notes);

  note(other.session(), "from the other");
  dialogs.next_save = path;
  dialogs.save_over = window::Changed::overwrite;
  EXPECT_TRUE(other.saveAs());
  EXPECT_EQ(notesInFile(), "from the other");
  EXPECT_TRUE(session().isChangedElsewhere());
}

TEST_F(Recovery, SavingAsItsOwnFileMindsWhatElseWroteIt) {
  ASSERT_TRUE(window->openPath(path));
  note(session(), "here");
  QFile file(path);
  ASSERT_TRUE(file.open(QFile::Append));
  file.write("\n");
  file.close();
  dialogs.next_save = path;
  dialogs.changed = window::Changed::cancel;
  EXPECT_FALSE(window->saveAs());
  EXPECT_EQ(dialogs.asked, QStringList{QStringLiteral("changed bungalow")});
  EXPECT_NE(notesInFile(), "here");
}

/// Taken up by another window while this one asked.
TEST_F(Recovery, KeptWorkThatCannotBeDiscardedIsTold) {
  leaveBehind("kept");
  session::Session other;
  dialogs.kept = window::Kept::discard;
  dialogs.while_asked = [&] { ASSERT_TRUE(other.takeUp(files::keptSlots().front()).empty()); };
  EXPECT_TRUE(window->openPath(path));
  EXPECT_TRUE(window->told().contains(QStringLiteral("could not be removed")))
      << window->told().toStdString();
  EXPECT_EQ(kept(), 1U);
}

TEST_F(Recovery, SavingOnClosingMindsTheOtherWindowToo) {
  ASSERT_TRUE(window->openPath(path));
  note(session(), "here");
  QFile file(path);
  ASSERT_TRUE(file.open(QFile::Append));
  file.write("\n");  // as a program that keeps folders alike might
  file.close();
  dialogs.unsaved = window::Unsaved::save;
  dialogs.changed = window::Changed::cancel;
  EXPECT_FALSE(window->close());
  EXPECT_TRUE(session().isModified());
  dialogs.changed = window::Changed::overwrite;
  EXPECT_TRUE(window->close());
  EXPECT_EQ(notesInFile(), "here");
}

TEST_F(Recovery, ReopeningTheJobOfThisWindowAsksNothing) {
  ASSERT_TRUE(window->openPath(path));
  ASSERT_TRUE(window->openPath(path));
  EXPECT_TRUE(dialogs.asked.isEmpty());
}

TEST_F(Recovery, AFailureToKeepIsShown) {
  ASSERT_TRUE(window->openPath(path));
  const QString recovery = QString::fromStdString(files::keptFolder());
  QDir(recovery).removeRecursively();
  QFile in_the_way(recovery);
  ASSERT_TRUE(in_the_way.open(QFile::WriteOnly));
  in_the_way.close();
  note(session(), "one");
  QCoreApplication::processEvents();
  EXPECT_TRUE(window->told().contains(QStringLiteral("not being kept")))
      << window->told().toStdString();
  in_the_way.remove();
}

}  // namespace
}  // namespace sumpwright::gui
