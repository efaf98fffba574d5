// MainWindow: the picture under the plan, and outlines from files.

#include <QDir>
#include <QDragEnterEvent>
#include <QDropEvent>
#include <QMimeData>

#include "session/OutlineImport.h"
#include "window/MainWindow.h"

namespace sumpwright::window {

/// The picture answers to the pointer only while its page is open.
void MainWindow::refreshPictureWork() {
  m_picture.setAtWork(m_stage == Stage::survey && m_survey->page() == stages::SurveyPage::picture);
}

void MainWindow::showPicture() {
  showSurvey(stages::SurveyPage::picture);
  if (m_picture.underlay() == nullptr && !m_picture.isReading()) choosePicture();
}

void MainWindow::choosePicture() {
  const QString path = m_dialogs.openFile(
      this, tr("Lay a picture under the plan"), lastFolder(),
      tr("Pictures (*.png *.jpg *.jpeg *.svg *.pdf *.PNG *.JPG *.JPEG *.SVG *.PDF)"));
  if (!path.isEmpty()) layPicture(path);
}

void MainWindow::layPicture(const QString& path) {
  m_notice->hide();
  if (!m_session.hasJob()) m_session.newJob();
  showSurvey(stages::SurveyPage::picture);
  m_picture.choose(path);
}

void MainWindow::findPicture() {
  const QString path = m_dialogs.openFile(
      this, tr("Find the picture under the plan"), lastFolder(),
      tr("Pictures (*.png *.jpg *.jpeg *.svg *.pdf *.PNG *.JPG *.JPEG *.SVG *.PDF)"));
  if (!path.isEmpty()) m_picture.find(path);
}

void MainWindow::takeOutline() {
  const QString path =
      m_dialogs.openFile(this, tr("Take an outline from a drawing or map"), lastFolder(),
                         tr("Drawings and maps (*.dxf *.DXF *.geojson *.json);;All files (*)"));
  if (!path.isEmpty()) openOutline(path);
}

void MainWindow::openOutline(const QString& path) {
  m_notice->hide();
  auto import = session::OutlineImport::read(path.toStdString());
  if (!import.ok()) {
    return tellProblems(tr("No outline can be taken from %1.").arg(QDir::toNativeSeparators(path)),
                        import.problems(), tr("The plan is as it was."));
  }
  if (!m_session.hasJob()) m_session.newJob();
  m_survey->import()->begin(std::move(import).value());
  showSurvey(stages::SurveyPage::import);
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
  const QList<QUrl> urls = event->mimeData()->urls();
  if (urls.size() == 1 && urls.front().isLocalFile()) event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent* event) {
  event->acceptProposedAction();
  const QString path = event->mimeData()->urls().front().toLocalFile();
  switch (session::natureOf(path.toStdString())) {
    case session::FileNature::picture:
      return layPicture(path);
    case session::FileNature::outline:
      return openOutline(path);
    case session::FileNature::job:
      openPath(path);
  }
}

}  // namespace sumpwright::window
