#include "session/LeftOver.h"

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QSysInfo>
#include <algorithm>
#include <utility>

#include "files/JobFile.h"
#include "files/KeptWork.h"

namespace sumpwright::session {

namespace {

class Texts {
  Q_DECLARE_TR_FUNCTIONS(LeftOver)
};

/// Asking takes a lock that is stale, and gives it back: it is gone then.
bool isFree(const std::string& slot) { return lockOf(slot)->tryLock(0); }

LeftOver described(const std::string& slot) {
  LeftOver out;
  out.slot = slot;
  const base::Result<files::KeptWork> kept = files::readKept(slot);
  if (!kept) {
    out.problems = kept.problems();
    out.written_at = QFileInfo(QString::fromStdString(files::keptFile(slot))).lastModified();
    return out;
  }
  out.origin = QString::fromStdString(kept->head.origin);
  out.address = QString::fromStdString(kept->read.job.address);
  const QString written = QString::fromStdString(kept->head.written_at);
  out.written_at = QDateTime::fromString(written, Qt::ISODateWithMs).toLocalTime();
  return out;
}

bool belongsTo(const std::string& slot, const std::string& first) {
  return slot == first || slot.starts_with(first + "-");
}

/// Of processes that are gone: locks with no work beside them, and files that were still being
/// written and have not got their name yet.
void sweepUp() {
  const QDir folder(QString::fromStdString(files::keptFolder()));
  for (const QFileInfo& info : folder.entryInfoList({QStringLiteral("*.kept.*")}, QDir::Files)) {
    const QString slot = info.fileName().section(QStringLiteral(".kept."), 0, 0);
    const auto lock = lockOf(slot.toStdString());
    if (lock->tryLock(0)) QFile::remove(info.filePath());
  }
  for (const QFileInfo& info : folder.entryInfoList({QStringLiteral("*.lock")}, QDir::Files)) {
    const std::string slot = info.completeBaseName().toStdString();
    if (!QFileInfo::exists(QString::fromStdString(files::keptFile(slot)))) isFree(slot);
  }
}

bool isDroppedAsSaved(const std::string& slot, const QString& path) {
  const auto kept = files::readKept(slot);
  const auto saved = files::openJob(path.toStdString());
  return kept && saved && kept->read.job == saved->job && discardLeftOver(slot);
}

}  // namespace

std::unique_ptr<QLockFile> lockOf(const std::string& slot) {
  auto lock = std::make_unique<QLockFile>(QString::fromStdString(files::lockFile(slot)));
  lock->setStaleLockTime(0);
  return lock;
}

std::vector<LeftOver> leftOvers() {
  sweepUp();
  std::vector<LeftOver> out;
  for (const std::string& slot : files::keptSlots()) {
    if (isFree(slot)) out.push_back(described(slot));
  }
  std::stable_sort(out.begin(), out.end(), [](const LeftOver& a, const LeftOver& b) {
    return a.written_at > b.written_at;
  });
  return out;
}

std::optional<LeftOver> leftOverOf(const QString& path) {
  const std::string first = files::slotOf(path.toStdString(), 1);
  std::optional<LeftOver> newest;
  for (const std::string& slot : files::keptSlots()) {
    if (!belongsTo(slot, first) || !isFree(slot) || isDroppedAsSaved(slot, path)) continue;
    LeftOver left = described(slot);
    if (!left.problems.empty()) continue;
    if (!newest || newest->written_at < left.written_at) newest = std::move(left);
  }
  return newest;
}

bool discardLeftOver(const std::string& slot) {
  const auto lock = lockOf(slot);
  return lock->tryLock(0) && files::removeKept(slot);
}

QString whoHas(const QString& path, const std::string& own) {
  for (int n = 1; n <= kMostSlots; ++n) {
    const std::string slot = files::slotOf(path.toStdString(), n);
    if (slot == own || !QFileInfo::exists(QString::fromStdString(files::lockFile(slot)))) continue;
    const auto lock = lockOf(slot);
    if (lock->tryLock(0) || lock->error() != QLockFile::LockFailedError) continue;
    qint64 process = 0;
    QString host;
    QString program;
    if (!lock->getLockInfo(&process, &host, &program)) return Texts::tr("another window");
    if (host == QSysInfo::machineHostName()) return Texts::tr("process %1").arg(process);
    return Texts::tr("process %1 on %2").arg(process).arg(host);
  }
  return {};
}

}  // namespace sumpwright::session
