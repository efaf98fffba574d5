#pragma once
// What the pointer is there for (tools/Task.h), in one place: strip, menu, plan and panel ask here
// and listen. Another job begins with choosing. And what is made after something that is there:
// copies, things in line, openings of one size.

#include <QObject>
#include <array>
#include <optional>
#include <string>

#include "session/Session.h"
#include "tools/Task.h"

namespace sumpwright::session {

class TaskDesk final : public QObject {
  Q_OBJECT

 public:
  explicit TaskDesk(Session& session, QObject* parent = nullptr);

  tools::Task task() const { return m_task; }
  void take(tools::Task task);
  /// Of that group, what was taken last; nothing before the first time.
  std::optional<tools::Task> lastOf(tools::TaskGroup group) const;

  /// What was chosen before the thing that is chosen now; empty: nothing was.
  const std::string& chosenBefore() const { return m_before; }
  /// Copies the chosen thing beside itself and chooses the copy; of a copy, by the same step again.
  base::Problems copyBeside();
  /// Brings the chosen thing in line with the one chosen before.
  base::Problems bringInLine();
  /// Gives the chosen opening the size of the one chosen before.
  base::Problems sizeAlike();

 Q_SIGNALS:
  void changed();

 private:
  void noteChosen();

  Session& m_session;
  tools::Task m_task = tools::Task::choose;
  std::array<std::optional<tools::Task>, tools::kTaskGroups> m_last;
  std::string m_chosen;
  std::string m_before;
  std::string m_copy;         ///< the latest copy
  std::string m_copied_from;  ///< what it was made of
};

}  // namespace sumpwright::session
