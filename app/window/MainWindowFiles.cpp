// MainWindow: jobs begun, opened, saved, closed; nothing is lost without being asked.

#include <QDir>
#include <QFileInfo>
#include <QMenu>

#include "files/JobFile.h"
#include "files/KeptWork.h"
#include "session/LeftOver.h"
#include "window/MainWindow.h"

namespace sumpwright::window {

namespace {

constexpr int kRecentMost = 8;

QString stemOf(const QString& path) {
  QString name = QFileInfo(path).fileName();
  if (name.endsWith(QLatin1String(files::kJobSuffix)))
    name.chop(static_cast<int>(QLatin1String(files::kJobSuffix).size()));
  return name;
}

}  // namespace

QString MainWindow::lastFolder() const {
  if (!m_session.path().isEmpty()) return QFileInfo(m_session.path()).absolutePath();
  const QStringList known = recent();
  return known.isEmpty() ? QDir::homePath() : QFileInfo(known.front()).absolutePath();
}

QString MainWindow::jobName() const {
  return m_session.path().isEmpty() ? tr("New job") : stemOf(m_session.path());
}

void MainWindow::newJob() {
  if (!mayLeave()) return;
  m_notice->hide();
  m_session.newJob();
  showSurvey(stages::SurveyPage::outline);
}

void MainWindow::open() {
  const QString path = m_dialogs.openFile(this, tr("Open a job"), lastFolder(),
                                          tr("Jobs (*.sump.json);;All files (*)"));
  if (!path.isEmpty()) openPath(path);
}

bool MainWindow::mayOpen(const QString& path) {
  const QString who = m_session.openElsewhere(path);
  return who.isEmpty() || m_dialogs.askOpenElsewhere(this, stemOf(path), who);
}

bool MainWindow::openPath(const QString& path) {
  if (!mayLeave() || !mayOpen(path)) return false;
  m_notice->hide();
  if (const auto left = session::leftOverOf(path)) {
    switch (m_dialogs.askKept(this, stemOf(path), timeText(left->written_at))) {
      case Kept::take_up:
        return takeUp(left->slot);
      case Kept::open_saved:
        break;
      case Kept::discard:
        if (!session::discardLeftOver(left->slot)) tellNotDiscarded(left->slot);
        break;
      case Kept::cancel:
        return false;
    }
  }
  const base::Problems problems = m_session.open(path);
  if (!problems.empty()) {
    tellProblems(tr("%1 could not be opened.").arg(QDir::toNativeSeparators(path)), problems,
                 m_session.hasJob() ? tr("The job that was open is still open, unchanged.")
                                    : tr("Check the file, or open another."));
    return false;
  }
  afterOpening();
  return true;
}

bool MainWindow::takeUp(const std::string& slot) {
  const base::Problems problems = m_session.takeUp(slot);
  if (!problems.empty()) {
    tellProblems(tr("The kept work could not be taken up."), problems,
                 tr("It is still kept. The job's own file is as it was saved last."));
    return false;
  }
  afterOpening();
  return true;
}

void MainWindow::openKept(const session::LeftOver& left) {
  const bool is_there = !left.origin.isEmpty() && QFileInfo::exists(left.origin);
  if (is_there && !mayOpen(left.origin)) return;
  if (!mayLeave()) return;
  m_notice->hide();
  takeUp(left.slot);
}

void MainWindow::discardKept(const session::LeftOver& left) {
  const QString name = left.address.isEmpty() ? tr("a new job") : left.address;
  if (!m_dialogs.askDiscardKept(this, name, timeText(left.written_at))) return;
  if (!session::discardLeftOver(left.slot)) tellNotDiscarded(left.slot);
  refreshMain();
}

/// Another window has taken it up meanwhile, or its file cannot be removed.
void MainWindow::tellNotDiscarded(const std::string& slot) {
  tell(tr("The kept work could not be removed.\nIt is in %1.")
           .arg(QDir::toNativeSeparators(QString::fromStdString(files::keptFile(slot)))));
}

void MainWindow::afterOpening() {
  if (!m_session.path().isEmpty()) remember(m_session.path());
  if (base::any(m_session.problems(), base::Gravity::unsound)) {
    showStage(Stage::siting);
  } else if (m_session.study() == nullptr) {
    tellProblems(
        tr("The job is open, but it cannot be judged."), m_session.studyProblems(),
        tr("Choose another rule sheet under Set-up, or put the sheet where it is looked for."));
  }
  m_canvas->setFocus(Qt::OtherFocusReason);
}

/// Whether the job may be written there, as far as other windows and programs go.
Changed MainWindow::maySaveTo(const QString& path) {
  const bool own = !m_session.path().isEmpty() && QFileInfo(path) == QFileInfo(m_session.path());
  if (own) {
    return m_session.isChangedElsewhere() ? m_dialogs.askChangedElsewhere(this, jobName())
                                          : Changed::overwrite;
  }
  const QString who = m_session.openElsewhere(path);
  return who.isEmpty() ? Changed::overwrite : m_dialogs.askSaveOver(this, stemOf(path), who);
}

bool MainWindow::save() {
  stages::FactForm::settle();
  if (m_session.path().isEmpty()) return saveAs();
  switch (maySaveTo(m_session.path())) {
    case Changed::overwrite:
      break;
    case Changed::save_as:
      return saveAs();
    case Changed::cancel:
      return false;
  }
  const base::Problems problems = m_session.save();
  if (problems.empty()) return true;
  tellProblems(
      tr("The job is not saved."), problems,
      tr("Your changes are still here. Save the job under another name, or free the place."));
  return false;
}

bool MainWindow::saveAs() {
  stages::FactForm::settle();
  QString suggested = m_session.path();
  if (suggested.isEmpty())
    suggested = QDir(lastFolder()).filePath(jobName() + QLatin1String(files::kJobSuffix));
  QString path =
      m_dialogs.saveFile(this, tr("Save the job as"), suggested, tr("Jobs (*.sump.json)"));
  if (path.isEmpty()) return false;
  if (!path.endsWith(QLatin1String(".json"))) path += QLatin1String(files::kJobSuffix);
  switch (maySaveTo(path)) {
    case Changed::overwrite:
      break;
    case Changed::save_as:
      return saveAs();
    case Changed::cancel:
      return false;
  }
  const base::Problems left_behind = m_picture.beginSaving(path);
  const base::Problems problems = m_session.saveAs(path);
  m_picture.endSaving(problems.empty());
  if (!problems.empty()) {
    tellProblems(tr("The job is not saved."), problems,
                 tr("Your changes are still here. Choose another place."));
    return false;
  }
  remember(m_session.path());
  if (!left_behind.empty()) {
    tellProblems(tr("The job is saved, but its picture could not be put beside it."), left_behind,
                 tr("The picture stays where it is: job and picture do not travel together yet."));
  }
  return true;
}

bool MainWindow::mayLeave() {
  stages::FactForm::settle();
  if (!m_session.hasJob() || !m_session.isModified()) return true;
  switch (m_dialogs.askUnsaved(this, jobName())) {
    case Unsaved::save:
      return save();
    case Unsaved::discard:
      return true;
    case Unsaved::cancel:
      break;
  }
  return false;
}

void MainWindow::closeJob() {
  if (!mayLeave()) return;
  m_notice->hide();
  showStage(Stage::siting);
  m_session.close();
}

QStringList MainWindow::recent() const {
  QStringList known = m_settings.value(QStringLiteral("recent")).toStringList();
  known.removeIf([](const QString& path) { return !QFileInfo::exists(path); });
  return known;
}

void MainWindow::remember(const QString& path) {
  QStringList known = recent();
  known.removeAll(path);
  known.prepend(path);
  m_settings.setValue(QStringLiteral("recent"), QStringList(known.mid(0, kRecentMost)));
}

void MainWindow::fillRecentMenu() {
  m_recent_menu->clear();
  for (const QString& path : recent()) {
    QAction* entry = m_recent_menu->addAction(stemOf(path));
    entry->setToolTip(path);
    connect(entry, &QAction::triggered, this, [this, path] { openPath(path); });
  }
  if (m_recent_menu->isEmpty()) m_recent_menu->addAction(tr("None yet"))->setEnabled(false);
}

}  // namespace sumpwright::window
