#pragma once
// One step of undo: the job before and after. Jobs are values, so nothing has to be inverted; they
// are shared and never changed, so a row of steps holds each job once.

#include <QUndoCommand>
#include <functional>
#include <memory>

#include "plan/Job.h"

namespace sumpwright::session {

using SharedJob = std::shared_ptr<const plan::Job>;

/// Steps of one gesture that arrive one by one (arrow keys held down) share a `gesture` number and
/// become one step; 0 never joins.
class JobEdit final : public QUndoCommand {
 public:
  using Apply = std::function<void(const SharedJob&)>;

  /// Contract: both jobs are there.
  JobEdit(const QString& text, SharedJob before, SharedJob after, Apply apply, int gesture = 0);
  void undo() override { m_apply(m_before); }
  void redo() override { m_apply(m_after); }
  int id() const override { return m_gesture == 0 ? -1 : 1; }
  bool mergeWith(const QUndoCommand* later) override;

 private:
  SharedJob m_before;
  SharedJob m_after;
  Apply m_apply;
  int m_gesture;
};

}  // namespace sumpwright::session
