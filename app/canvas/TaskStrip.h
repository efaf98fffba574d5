#pragma once
// The buttons at the plan's left edge by which the user says what the pointer does. One for each
// group of tasks that has any; a group of several opens a menu of them.

#include <QWidget>
#include <vector>

#include "paint/Icons.h"
#include "session/TaskDesk.h"

class QAction;
class QMenu;
class QToolButton;

namespace sumpwright::canvas {

/// One task as the window offers it.
struct TaskAction {
  tools::Task task = tools::Task::choose;
  QAction* action = nullptr;
};

/// A group of tasks as the window offers it.
struct TaskChoice {
  tools::TaskGroup group = tools::TaskGroup::choose;
  paint::Glyph glyph = paint::Glyph::choose;
  QString title;                  ///< "Lay an opening"
  QString key;                    ///< as shown; empty: none
  QMenu* menu = nullptr;          ///< of its tasks; nullptr: there is only one
  std::vector<TaskAction> tasks;  ///< never empty
};

class TaskStrip final : public QWidget {
  Q_OBJECT

 public:
  /// `desk` must outlive the strip.
  TaskStrip(session::TaskDesk& desk, const std::vector<TaskChoice>& choices, QWidget* parent);
  /// Stands at `corner` (top left) in as many columns as the height below it asks for.
  void place(QPoint corner, int height);
  QToolButton* button(tools::TaskGroup group) const;
  /// "Window": what the task in force is called.
  QString taskTitle() const;

 private:
  void refresh();

  session::TaskDesk& m_desk;
  std::vector<TaskChoice> m_choices;
  std::vector<QToolButton*> m_buttons;  ///< beside their choices
};

}  // namespace sumpwright::canvas
