// Saving, reopening, and never losing a change unasked.

#include <QCloseEvent>

#include "gui/WindowFixture.h"

namespace sumpwright::gui {
namespace {

class Files : public WindowFixture {
 protected:
  void SetUp() override { open("bungalow"); }
  void change() { session().nudge(0.25); }
};

TEST_F(Files, SaveAndReopenGivesTheSameJob) {
  change();
  EXPECT_EQ(window->topRow().savedText(), QStringLiteral("Not saved"));
  EXPECT_TRUE(window->isWindowModified());
  trigger("file.save");
  EXPECT_FALSE(session().isModified());
  EXPECT_TRUE(window->topRow().savedText().startsWith(QStringLiteral("Saved")));
  const plan::Job saved = session().job();
  ASSERT_TRUE(window->openPath(session().path()));
  EXPECT_EQ(session().job(), saved);
}

TEST_F(Files, SaveAsMovesToTheNewFile) {
  change();
  dialogs.next_save = folder.filePath(QStringLiteral("other"));
  trigger("file.save_as");
  EXPECT_TRUE(session().path().endsWith(QStringLiteral("other.sump.json")));
  EXPECT_TRUE(QFile::exists(session().path()));
  EXPECT_FALSE(session().isModified());
}

TEST_F(Files, ASaveThatFailsKeepsTheChanges) {
  change();
  dialogs.next_save = folder.filePath(QStringLiteral("no/such/folder/job.sump.json"));
  trigger("file.save_as");
  EXPECT_TRUE(session().isModified());
  EXPECT_TRUE(window->told().contains(QStringLiteral("not saved")));
  EXPECT_TRUE(window->told().contains(QStringLiteral("still here")));
}

TEST_F(Files, ClosingWithChangesAsks) {
  change();
  dialogs.unsaved = window::Unsaved::cancel;
  EXPECT_FALSE(window->close());
  EXPECT_EQ(dialogs.asked_unsaved, 1);
  EXPECT_TRUE(session().isModified());

  dialogs.unsaved = window::Unsaved::save;
  EXPECT_TRUE(window->close());
  EXPECT_FALSE(session().isModified());
}

TEST_F(Files, ClosingWithoutChangesDoesNotAsk) {
  EXPECT_TRUE(window->close());
  EXPECT_EQ(dialogs.asked_unsaved, 0);
}

TEST_F(Files, OpeningAnotherWithChangesAsks) {
  change();
  const QString before = session().path();
  dialogs.next_open = sample(QStringLiteral("courtyard"));
  dialogs.unsaved = window::Unsaved::cancel;
  trigger("file.open");
  EXPECT_EQ(session().path(), before);
  dialogs.unsaved = window::Unsaved::discard;
  trigger("file.open");
  EXPECT_NE(session().path(), before);
  EXPECT_EQ(dialogs.asked_unsaved, 2);
}

TEST_F(Files, UndoneToTheSavedStateIsSaved) {
  change();
  trigger("edit.undo");
  EXPECT_FALSE(session().isModified());
  EXPECT_TRUE(window->close());
  EXPECT_EQ(dialogs.asked_unsaved, 0);
}

TEST_F(Files, ANewJobHasNoFileUntilItIsSaved) {
  trigger("file.new");
  EXPECT_EQ(dialogs.asked_unsaved, 0);
  EXPECT_TRUE(session().path().isEmpty());
  EXPECT_TRUE(window->windowTitle().startsWith(QStringLiteral("New job")));
  EXPECT_EQ(window->topRow().savedText(), QStringLiteral("Never saved"));
  EXPECT_TRUE(window->told().isEmpty()) << window->told().toStdString();
  for (const char* id : {"sump.best", "paper.pdf", "sump.go_to"})
    EXPECT_FALSE(window->action(id)->isEnabled()) << id;

  dialogs.next_save.clear();  // the user thinks better of it
  EXPECT_FALSE(window->save());
  EXPECT_TRUE(session().path().isEmpty());
  dialogs.next_save = folder.filePath(QStringLiteral("fresh"));
  trigger("file.save");
  EXPECT_EQ(session().path(), folder.filePath(QStringLiteral("fresh.sump.json")));
  EXPECT_TRUE(window->windowTitle().startsWith(QStringLiteral("fresh")));
  EXPECT_TRUE(window->topRow().savedText().startsWith(QStringLiteral("Saved")));
  EXPECT_EQ(settings.value(QStringLiteral("recent")).toStringList().front(), session().path());
}

TEST_F(Files, ANewJobAsksAboutChangesToTheOpenOne) {
  change();
  const QString before = session().path();
  dialogs.unsaved = window::Unsaved::cancel;
  trigger("file.new");
  EXPECT_EQ(session().path(), before);
  dialogs.unsaved = window::Unsaved::discard;
  trigger("file.new");
  EXPECT_TRUE(session().path().isEmpty());
  EXPECT_EQ(dialogs.asked_unsaved, 2);
}

// Every design edit: done, undone and redone, compared as saved text.
TEST_F(Files, EveryDesignEditUndoesToTheSameText) {
  const auto text = [&] { return plan::writeJob(session().job()); };
  const std::pair<const char*, std::function<void()>> edits[] = {
      {"move",
       [&] {
         session().putAt({0, 4.0});
       }},
      {"outlet", [&] { session().setOutlet(plan::OutletMode::riser); }},
      {"core", [&] { session().setCore(112.0); }},
      {"rules", [&] { session().setRuleSheet("uk-practice"); }},
      {"remove", [&] { session().removeSump(); }},
      {"place",
       [&] {
         session().putAt({0, 9.0});
       }},
  };
  for (const auto& [name, edit] : edits) {
    SCOPED_TRACE(name);
    const std::string before = text();
    edit();
    const std::string after = text();
    ASSERT_NE(before, after);
    session().undoStack().undo();
    EXPECT_EQ(text(), before);
    session().undoStack().redo();
    EXPECT_EQ(text(), after);
  }
}

}  // namespace
}  // namespace sumpwright::gui
