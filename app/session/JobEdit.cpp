#include "session/JobEdit.h"

#include <utility>

#include "base/Contract.h"

namespace sumpwright::session {

JobEdit::JobEdit(const QString& text, SharedJob before, SharedJob after, Apply apply, int gesture)
    : QUndoCommand(text),
      m_before(std::move(before)),
      m_after(std::move(after)),
      m_apply(std::move(apply)),
      m_gesture(gesture) {
  SUMPWRIGHT_REQUIRE(m_before != nullptr && m_after != nullptr);
}

bool JobEdit::mergeWith(const QUndoCommand* later) {
  const auto* edit = dynamic_cast<const JobEdit*>(later);
  if (edit == nullptr || edit->m_gesture != m_gesture) return false;
  m_after = edit->m_after;
  setObsolete(*m_before == *m_after);
  return true;
}

}  // namespace sumpwright::session
