#pragma once
// Everything the window can do, as data. Menus, buttons, the list of keys and the manual are made
// from this one table; a test fails when two actions want the same key.

#include <span>
#include <string>

#include "paint/Icons.h"

namespace sumpwright::window {

class MainWindow;

enum class Menu { file, edit, survey, sump, view, paper, help };

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
  bool break_before = false;  ///< a line above it in the menu
};

std::span<const ActionSpec> actionTable();

const char* menuTitle(Menu menu);

/// The manual's chapter on keys, Markdown.
std::string keysChapter();

}  // namespace sumpwright::window
