#pragma once
// Keeps the work on the open job against a crash or a flat battery (files/KeptWork.h), on a thread
// of its own. Before the work after a gesture is handed over, that after the gesture before has
// reached the disk: never more than the last gesture can be lost.

#include <QLockFile>
#include <QObject>
#include <QThreadPool>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/Problem.h"
#include "files/KeptWork.h"
#include "session/JobEdit.h"

namespace sumpwright::session {

/// What is to be kept; all of it may be read on another thread.
struct WorkToKeep {
  SharedJob job;
  plan::JobSource source;
  files::KeptHead head;  ///< written_at is filled in when it is written
};

class WorkKeeper final : public QObject {
  Q_OBJECT

 public:
  explicit WorkKeeper(QObject* parent = nullptr);
  /// What is kept stays: whoever goes without release() has not been told that it may be lost.
  ~WorkKeeper() override;

  /// Takes a slot for the job at `path` (empty: never saved) that no window has and that holds
  /// nothing. Contract: none is held.
  void claim(const QString& path);
  /// Takes a slot with what it holds. Contract: none is held, and `lock` is locked.
  void hold(const std::string& slot, std::unique_ptr<QLockFile> lock);
  /// Gives the slot up; what it held is removed.
  void release();
  /// Empty when none is held.
  const std::string& slot() const { return m_slot; }

  /// Hands the work over to be written. `same_gesture`: it replaces what was handed over last,
  /// which need not have been written; otherwise this waits until that is on the disk.
  void keep(WorkToKeep work, bool same_gesture);
  /// Removes what is kept: it is saved, or undone.
  void forget();
  /// Waits until all that was handed over is written.
  void finish();

 Q_SIGNALS:
  /// What is drawn is not being kept. Once, until it could be again.
  void failed(const base::Problems& problems);

 private:
  bool tryHold(const std::string& slot);
  void write(WorkToKeep work);
  void written(const base::Problems& problems);
  void tell(const base::Problems& problems);

  std::string m_slot;
  std::unique_ptr<QLockFile> m_lock;
  QThreadPool m_pool;  ///< of one thread: writes come one after the other
  int m_untold = 0;    ///< writes handed over whose end has not been told yet
  std::optional<WorkToKeep> m_waiting;
  bool m_failing = false;
};

}  // namespace sumpwright::session
