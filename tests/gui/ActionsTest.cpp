// The table of actions: no two want the same key, all are in the menu, the manual is up to date.

#include <QMenu>
#include <algorithm>
#include <map>
#include <set>

#include "gui/WindowFixture.h"
#include "window/Actions.h"

namespace sumpwright::gui {
namespace {

using window::ActionSpec;
using window::actionTable;

class Actions : public WindowFixture {};

TEST_F(Actions, IdsAreUnique) {
  std::set<std::string> ids;
  for (const ActionSpec& spec : actionTable()) EXPECT_TRUE(ids.insert(spec.id).second) << spec.id;
}

TEST_F(Actions, NoTwoWantTheSameKey) {
  std::map<QString, std::string> taken;
  for (const ActionSpec& spec : actionTable()) {
    for (const QKeySequence& key : window->action(spec.id)->shortcuts()) {
      EXPECT_FALSE(key.isEmpty()) << spec.id << ": a key that Qt does not know";
      const auto [it, is_new] = taken.emplace(key.toString(), spec.id);
      EXPECT_TRUE(is_new) << key.toString().toStdString() << ": " << it->second << " and "
                          << spec.id;
    }
  }
}

TEST_F(Actions, EveryOneIsInTheMenu) {
  std::set<QAction*> reached;
  QList<QMenu*> menus{window->rail().menuButton()->menu()};
  while (!menus.isEmpty()) {
    const QMenu* menu = menus.takeFirst();
    for (QAction* action : menu->actions()) {
      reached.insert(action);
      if (action->menu() != nullptr) menus << action->menu();
    }
  }
  for (const ActionSpec& spec : actionTable()) {
    EXPECT_TRUE(reached.contains(window->action(spec.id))) << spec.id;
    EXPECT_FALSE(window->action(spec.id)->toolTip().isEmpty()) << spec.id;
  }
}

TEST_F(Actions, RuleSheetIsChosenInTheMenuToo) {
  open("bungalow");
  auto* menu = window->findChild<QMenu*>(QStringLiteral("sheetMenu"));
  ASSERT_NE(menu, nullptr);
  Q_EMIT menu->aboutToShow();
  const QList<QAction*> sheets = menu->actions();
  ASSERT_GE(sheets.size(), 4);
  EXPECT_EQ(std::count_if(sheets.begin(), sheets.end(),
                          [](const QAction* sheet) { return sheet->isChecked(); }),
            1);
  for (QAction* sheet : sheets) {
    if (sheet->isChecked()) continue;
    sheet->trigger();
    EXPECT_EQ(QString::fromStdString(study().sheet().title), sheet->text());
    break;
  }
  dialogs.unsaved = window::Unsaved::discard;
}

// Whatever is enabled can be run in any state of the window without harm.
TEST_F(Actions, AllRunWithAndWithoutAJob) {
  const std::set<std::string> skip{"file.quit",
                                   "view.menu"};  // one ends the test, one opens a popup
  for (const bool with_job : {false, true}) {
    for (const ActionSpec& spec : actionTable()) {
      if (skip.contains(spec.id)) continue;
      SCOPED_TRACE(spec.id);
      if (with_job) {
        dialogs.unsaved = window::Unsaved::discard;
        open("bungalow");
      }
      dialogs.next_open.clear();
      dialogs.next_save.clear();
      if (window->action(spec.id)->isEnabled()) window->action(spec.id)->trigger();
      QCoreApplication::processEvents();
    }
  }
  EXPECT_FALSE(dialogs.last_about.isEmpty());
}

// resources/manual/keys.md is this text; write it anew with SUMPWRIGHT_RENEW=1.
TEST_F(Actions, TheManualsChapterIsUpToDate) {
  const QString path = QStringLiteral(SUMPWRIGHT_SOURCE_DIR "/resources/manual/keys.md");
  QFile file(path);
  if (qEnvironmentVariableIsSet("SUMPWRIGHT_RENEW")) {
    ASSERT_TRUE(file.open(QFile::WriteOnly));
    file.write(QByteArray::fromStdString(window::keysChapter()));
    file.close();
  }
  ASSERT_TRUE(file.open(QFile::ReadOnly));
  EXPECT_EQ(file.readAll().toStdString(), window::keysChapter());
}

}  // namespace
}  // namespace sumpwright::gui
