#pragma once
// Everything the window can do, as data. Menus, buttons, the list of keys and the manual are made
// from this one table; a test fails when two actions want the same key.

#include <optional>
#include <span>
#include <string>

#include "paint/Icons.h"
#include "tools/Task.h"

namespace sumpwright::window {

class MainWindow;

/// Those from outline to whole_plan are submenus of survey; all but the last are what the strip's
/// buttons open.
enum class Menu {
  file,
  edit,
  survey,
  outline,
  lay_opening,
  lay_service,
  lay_on_wall,
  lay_at_point,
  lay_line,
  lay_area,
  measure,
  whole_plan,
  sump,
  view,
  paper,
  help
};

/// Where an action's keys count: everywhere, or only while plan or tape has the focus, so that
/// arrows and letters stay free for typing.
enum class Reach { window, drawing };

struct ActionSpec {
  const char* id;
  Menu menu;
  const char* text;  ///< QT_TRANSLATE_NOOP("Actions", ...); & marks the mnemonic
  const char* keys;  ///< portable text, several parted by "; "; may be empty
  Reach reach;
  const char* tip;  ///< one sentence: what it does; tool tip and manual
  void (*run)(MainWindow&);
  bool (*enabled)(const MainWindow&) = nullptr;  ///< nullptr: always
  bool (*checked)(const MainWindow&) = nullptr;  ///< not nullptr: one of a set of choices
  const paint::Glyph* glyph = nullptr;
  bool break_before = false;                       ///< a line above it in the menu
  std::optional<tools::Task> task = std::nullopt;  ///< what it makes the pointer do
};

std::span<const ActionSpec> actionTable();
/// The part of the table by which the pointer is given something to do (TaskActions.cpp).
std::span<const ActionSpec> taskActions();

const char* menuTitle(Menu menu);

/// A group of tasks: its menu, its sign on the strip, the action that takes it up again as it was
/// last.
struct TaskGroupSpec {
  tools::TaskGroup group;
  std::optional<Menu> menu;  ///< none: the group is one task
  paint::Glyph glyph;
  const char* action;  ///< id
};
/// In the order of the strip; a group without a task in the table is not shown.
std::span<const TaskGroupSpec> taskGroups();

/// The manual's chapter on keys, Markdown.
std::string keysChapter();

}  // namespace sumpwright::window
