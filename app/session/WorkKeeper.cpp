#include "session/WorkKeeper.h"

#include <QDateTime>
#include <QFileInfo>
#include <utility>

#include "session/LeftOver.h"

namespace sumpwright::session {

WorkKeeper::WorkKeeper(QObject* parent) : QObject(parent) { m_pool.setMaxThreadCount(1); }

WorkKeeper::~WorkKeeper() { finish(); }

void WorkKeeper::hold(const std::string& slot, std::unique_ptr<QLockFile> lock) {
  SUMPWRIGHT_REQUIRE(m_slot.empty() && lock->isLocked());
  m_slot = slot;
  m_lock = std::move(lock);
}

bool WorkKeeper::tryHold(const std::string& slot) {
  auto lock = lockOf(slot);
  if (!lock->tryLock(0)) return false;
  hold(slot, std::move(lock));
  return true;
}

void WorkKeeper::claim(const QString& path) {
  SUMPWRIGHT_REQUIRE(m_slot.empty());
  files::makeKeptFolder();
  for (int n = 1; n <= kMostSlots && !path.isEmpty(); ++n) {
    const std::string slot = files::slotOf(path.toStdString(), n);
    if (QFileInfo::exists(QString::fromStdString(files::keptFile(slot)))) continue;
    if (tryHold(slot)) return;
  }
  // Never saved, or the folder cannot be locked in: a name that nobody else has. Where not even
  // that can be written, keeping says so.
  const std::string slot = files::newSlot();
  if (!tryHold(slot)) m_slot = slot;
}

void WorkKeeper::release() {
  if (m_slot.empty()) return;
  forget();
  m_lock.reset();
  m_slot.clear();
}

void WorkKeeper::keep(WorkToKeep work, bool same_gesture) {
  SUMPWRIGHT_REQUIRE(!m_slot.empty());
  // Whoever waits is written when the end of the last write is told: not by what the pool says, for
  // a thread is active a little longer than it takes to tell.
  if (same_gesture && m_untold > 0) {
    m_waiting = std::move(work);
    return;
  }
  if (same_gesture)
    m_waiting.reset();
  else
    finish();
  write(std::move(work));
}

void WorkKeeper::write(WorkToKeep work) {
  ++m_untold;
  m_pool.start([this, slot = m_slot, work = std::move(work)]() mutable {
    work.head.written_at =
        QDateTime::currentDateTimeUtc().toString(Qt::ISODateWithMs).toStdString();
    const auto done = files::writeKept(slot, work.head, *work.job, work.source);
    QMetaObject::invokeMethod(
        this, [this, problems = done.problems()] { written(problems); }, Qt::QueuedConnection);
  });
}

void WorkKeeper::written(const base::Problems& problems) {
  --m_untold;
  if (m_waiting && m_untold == 0) write(*std::exchange(m_waiting, std::nullopt));
  tell(problems);
}

void WorkKeeper::tell(const base::Problems& problems) {
  const bool was_failing = std::exchange(m_failing, !problems.empty());
  if (m_failing && !was_failing) Q_EMIT failed(problems);
}

void WorkKeeper::finish() {
  m_pool.waitForDone();
  if (!m_waiting) return;
  write(*std::exchange(m_waiting, std::nullopt));
  m_pool.waitForDone();
}

void WorkKeeper::forget() {
  m_waiting.reset();
  m_pool.waitForDone();
  if (!m_slot.empty() && !files::removeKept(m_slot)) {
    tell({{base::Message("file.kept-not-removed", {base::text("file", files::keptFile(m_slot))}),
           "", base::Gravity::unreadable}});
  }
}

}  // namespace sumpwright::session
