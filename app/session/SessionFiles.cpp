// Session: open, save, close.

#include <QFileInfo>
#include <QUuid>

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

void Session::newJob() {
  plan::ReadJob fresh;
  fresh.job.id = "job-" + QUuid::createUuid().toString(QUuid::Id128).left(8).toStdString();
  adopt(std::move(fresh), {});
}

void Session::adopt(plan::ReadJob read, const QString& path) {
  cancelPreview();
  m_undo.clear();
  m_job = std::make_shared<const plan::Job>(std::move(read.job));
  m_source = std::move(read.source);
  m_path = path;
  m_saved_at = path.isEmpty() ? QDateTime() : QFileInfo(path).lastModified();
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

base::Problems Session::save() {
  SUMPWRIGHT_REQUIRE(!m_path.isEmpty());
  return saveAs(m_path);
}

base::Problems Session::saveAs(const QString& path) {
  cancelPreview();
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
  cancelPreview();
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
