// Session: open, save, close, and what is kept meanwhile.

#include <QCoreApplication>
#include <QFileInfo>
#include <QUuid>
#include <utility>

#include "files/JobFile.h"
#include "files/KeptWork.h"
#include "session/LeftOver.h"
#include "session/Session.h"

namespace sumpwright::session {

base::Problems Session::open(const QString& path) {
  const QString absolute = QFileInfo(path).absoluteFilePath();
  const auto bytes = files::readBytes(absolute.toStdString(), plan::kMaxJobBytes);
  if (!bytes) return bytes.problems();
  base::Result<plan::ReadJob> read = plan::readJob(*bytes);
  if (!read) return read.problems();
  adopt(std::move(read).value(), absolute, files::hashOf(*bytes));
  m_keeper.claim(absolute);
  emitAll();
  return {};
}

void Session::newJob() {
  plan::ReadJob fresh;
  fresh.job.id = "job-" + QUuid::createUuid().toString(QUuid::Id128).left(8).toStdString();
  adopt(std::move(fresh), {}, {});
  m_keeper.claim({});
  emitAll();
}

base::Problems Session::takeUp(const std::string& slot) {
  base::Result<files::KeptWork> kept = files::readKept(slot);
  if (!kept) return kept.problems();
  auto lock = lockOf(slot);
  if (!lock->tryLock(0)) {
    return {{base::Message("file.kept-taken", {base::text("file", files::keptFile(slot))}), "",
             base::Gravity::unreadable}};
  }
  files::KeptWork work = std::move(kept).value();
  adopt(std::move(work.read), QString::fromStdString(work.head.origin), work.head.origin_hash);
  m_keeper.hold(slot, std::move(lock));
  m_undo.resetClean();
  emitAll();
  return {};
}

/// Puts another job in the place of the open one, which is let go of.
void Session::adopt(plan::ReadJob read, const QString& path, std::string file_hash) {
  cancelPreview();
  m_undo.clear();
  m_keeper.release();
  m_kept_step = 0;
  m_job = std::make_shared<const plan::Job>(std::move(read.job));
  m_source = std::move(read.source);
  m_path = path;
  m_file_hash = std::move(file_hash);
  m_saved_at = path.isEmpty() ? QDateTime() : QFileInfo(path).lastModified();
  m_sheet.reset();
  m_sump.clear();
  m_moving = false;
  m_selected.clear();
  m_hovered.reset();
  restudy();
}

void Session::emitAll() {
  Q_EMIT jobChanged();
  Q_EMIT studyChanged();
  Q_EMIT placeChanged();
  Q_EMIT selectionChanged();
  Q_EMIT savedStateChanged();
}

/// After every step forwards or back.
void Session::keepWork() {
  if (!hasJob()) return;
  const int step = m_undo.index();
  const bool same_gesture = std::exchange(m_kept_step, step) == step;
  if (m_undo.isClean()) return m_keeper.forget();
  files::KeptHead head;
  head.origin = m_path.toStdString();
  head.origin_hash = m_file_hash;
  head.program = QCoreApplication::applicationVersion().toStdString();
  m_keeper.keep({m_job, m_source, std::move(head)}, same_gesture);
}

bool Session::isChangedElsewhere() const {
  if (m_path.isEmpty() || !QFileInfo::exists(m_path)) return false;
  const auto bytes = files::readBytes(m_path.toStdString(), plan::kMaxJobBytes);
  return !bytes || files::hashOf(*bytes) != m_file_hash;
}

QString Session::openElsewhere(const QString& at_path) const {
  return whoHas(at_path, m_keeper.slot());
}

base::Problems Session::save() {
  SUMPWRIGHT_REQUIRE(!m_path.isEmpty());
  return saveAs(m_path);
}

base::Problems Session::saveAs(const QString& path) {
  cancelPreview();
  const QString absolute = QFileInfo(path).absoluteFilePath();
  // So that what is kept is never older than the file: were the program to end right after writing
  // it, the user would be offered work that is behind what is saved.
  m_keeper.finish();
  const std::string text = files::jobText(job(), m_source);
  const auto written = files::writeBytes(absolute.toStdString(), text);
  if (!written) return written.problems();
  const bool elsewhere = absolute != m_path;
  m_path = absolute;
  m_file_hash = files::hashOf(text);
  m_saved_at = QDateTime::currentDateTime();
  m_undo.setClean();
  m_gesture = 0;  // later arrow keys must not melt into a step that is saved
  if (elsewhere) {
    m_keeper.release();
    m_keeper.claim(absolute);
  } else {
    m_keeper.forget();
  }
  Q_EMIT savedStateChanged();
  return {};
}

void Session::close() {
  cancelPreview();
  m_undo.clear();
  m_keeper.release();
  m_job.reset();
  m_source = {};
  m_path.clear();
  m_file_hash.clear();
  m_problems.clear();
  m_study_problems.clear();
  m_sheet.reset();
  m_study.reset();
  m_sump.clear();
  m_place.reset();
  m_assessment.reset();
  m_moving = false;
  m_selected.clear();
  m_hovered.reset();
  emitAll();
}

}  // namespace sumpwright::session
