// Session: open, save, close.

#include <QFileInfo>

#include "files/JobFile.h"
#include "session/Session.h"

namespace sumpwright::session {

base::Problems Session::open(const QString& path) {
  const QString absolute = QFileInfo(path).absoluteFilePath();
  base::Result<plan::ReadJob> read = files::openJob(absolute.toStdString());
  if (!read) return read.problems();
  adopt(std::move(read).value(), absolute);
  return {};
}

void Session::adopt(plan::ReadJob read, const QString& path) {
  m_undo.clear();
  m_job = std::move(read.job);
  m_source = std::move(read.source);
  m_path = path;
  m_saved_at = QFileInfo(path).lastModified();
  m_sheet.reset();
  m_sump.clear();
  m_moving = false;
  m_selected.clear();
  m_hovered.reset();
  restudy();
  Q_EMIT jobChanged();
  Q_EMIT studyChanged();
  Q_EMIT placeChanged();
  Q_EMIT selectionChanged();
  Q_EMIT savedStateChanged();
}

base::Problems Session::save() { return saveAs(m_path); }

base::Problems Session::saveAs(const QString& path) {
  const QString absolute = QFileInfo(path).absoluteFilePath();
  const auto written = files::saveJob(absolute.toStdString(), job(), m_source);
  if (!written) return written.problems();
  m_path = absolute;
  m_saved_at = QDateTime::currentDateTime();
  m_undo.setClean();
  m_gesture = 0;  // later arrow keys must not melt into a step that is saved
  Q_EMIT savedStateChanged();
  return {};
}

void Session::close() {
  m_undo.clear();
  m_job.reset();
  m_source = {};
  m_path.clear();
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
  Q_EMIT jobChanged();
  Q_EMIT studyChanged();
  Q_EMIT placeChanged();
  Q_EMIT selectionChanged();
  Q_EMIT savedStateChanged();
}

}  // namespace sumpwright::session
