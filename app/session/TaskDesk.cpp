#include "session/TaskDesk.h"

#include "plan/ThingEdits.h"
#include "tools/BesideEdits.h"

namespace sumpwright::session {

TaskDesk::TaskDesk(Session& session, QObject* parent) : QObject(parent), m_session(session) {
  connect(&session, &Session::jobChanged, this, [this] {
    m_chosen.clear();
    m_before.clear();
    m_copy.clear();
    take(tools::Task::choose);
  });
  connect(&session, &Session::selectionChanged, this, &TaskDesk::noteChosen);
}

void TaskDesk::take(tools::Task task) {
  m_last[static_cast<std::size_t>(tools::groupOf(task))] = task;
  if (task == m_task) return;
  m_task = task;
  Q_EMIT changed();
}

std::optional<tools::Task> TaskDesk::lastOf(tools::TaskGroup group) const {
  return m_last[static_cast<std::size_t>(group)];
}

void TaskDesk::noteChosen() {
  const std::string& now = m_session.selected();
  if (now.empty() || now == m_chosen) return;
  m_before = m_chosen;
  m_chosen = now;
}

base::Problems TaskDesk::copyBeside() {
  const std::string id = m_session.selected();
  base::Result<plan::Job> after =
      tools::copiedBeside(m_session.job(), id, id == m_copy ? m_copied_from : std::string());
  const std::string copy = after ? tools::copyOf(m_session.job(), *after, id) : std::string();
  base::Problems problems = m_session.edit(tr("Copy a thing"), std::move(after));
  if (!problems.empty()) return problems;
  m_copy = copy;
  m_copied_from = id;
  m_session.select(copy);
  return {};
}

base::Problems TaskDesk::bringInLine() {
  return m_session.edit(tr("Bring in line"),
                        tools::inLineWith(m_session.job(), m_session.selected(), m_before));
}

base::Problems TaskDesk::sizeAlike() {
  return m_session.edit(tr("Make the same size"),
                        tools::sizedLike(m_session.job(), m_session.selected(), m_before));
}

}  // namespace sumpwright::session
