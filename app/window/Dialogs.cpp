#include "window/Dialogs.h"

#include <QCoreApplication>
#include <QFileDialog>
#include <QMessageBox>
#include <QPrintDialog>
#include <QPrinter>
#include <QPushButton>
#include <array>

namespace sumpwright::window {

namespace {

class Texts {
  Q_DECLARE_TR_FUNCTIONS(Dialogs)
};

/// The number of the answer picked. The first is the default; Esc means `escape` (-1: the last).
int asked(QWidget* parent, const QString& what, const QString& meaning, const QStringList& answers,
          int escape = -1) {
  QMessageBox box(parent);
  box.setIcon(QMessageBox::NoIcon);
  box.setText(what);
  box.setInformativeText(meaning);
  QList<QPushButton*> buttons;
  for (const QString& answer : answers) {
    // Buttons of one role stand in the order they are given.
    buttons << box.addButton(answer, QMessageBox::ActionRole);
  }
  if (escape < 0) escape = static_cast<int>(buttons.size()) - 1;
  box.setDefaultButton(buttons.front());
  box.setEscapeButton(buttons[escape]);
  box.exec();
  const auto picked = buttons.indexOf(qobject_cast<QPushButton*>(box.clickedButton()));
  return picked < 0 ? escape : static_cast<int>(picked);
}

}  // namespace

QString DesktopDialogs::openFile(QWidget* parent, const QString& title, const QString& folder,
                                 const QString& filter) {
  return QFileDialog::getOpenFileName(parent, title, folder, filter);
}

QString DesktopDialogs::saveFile(QWidget* parent, const QString& title, const QString& suggested,
                                 const QString& filter) {
  return QFileDialog::getSaveFileName(parent, title, suggested, filter);
}

Unsaved DesktopDialogs::askUnsaved(QWidget* parent, const QString& job) {
  const int answer =
      asked(parent, Texts::tr("The changes to %1 are not saved.").arg(job),
            Texts::tr("Without saving they are lost."),
            {Texts::tr("&Save"), Texts::tr("&Lose the changes"), Texts::tr("&Cancel")});
  return answer == 0 ? Unsaved::save : answer == 1 ? Unsaved::discard : Unsaved::cancel;
}

Kept DesktopDialogs::askKept(QWidget* parent, const QString& job, const QString& time) {
  const int answer = asked(
      parent,
      Texts::tr("Sumpwright ended before %1 was saved; work up to %2 was kept.").arg(job, time),
      Texts::tr(
          "Going on with the kept work changes nothing in the file until you save. Opening the "
          "saved file leaves the kept work where it is; you are asked again next time."),
      {Texts::tr("Go on with the &kept work"), Texts::tr("Open the &saved file"),
       Texts::tr("&Discard the kept work"), Texts::tr("&Cancel")});
  constexpr std::array kAnswers{Kept::take_up, Kept::open_saved, Kept::discard, Kept::cancel};
  return kAnswers.at(static_cast<std::size_t>(answer));
}

bool DesktopDialogs::askDiscardKept(QWidget* parent, const QString& job, const QString& time) {
  return asked(parent, Texts::tr("Discard the work on %1, kept %2?").arg(job, time),
               Texts::tr("What of it was not saved cannot be had back."),
               {Texts::tr("&Keep it"), Texts::tr("&Discard it")}, 0) == 1;
}

bool DesktopDialogs::askOpenElsewhere(QWidget* parent, const QString& job, const QString& who) {
  return asked(parent, Texts::tr("%1 is open in another window (%2).").arg(job, who),
               Texts::tr("What is drawn in one window is not seen in the other. Both can save; "
                         "whoever saves second is asked before anything is overwritten."),
               {Texts::tr("&Leave it"), Texts::tr("&Open anyway")}, 0) == 1;
}

Changed DesktopDialogs::askSaveOver(QWidget* parent, const QString& job, const QString& who) {
  const int answer = asked(
      parent, Texts::tr("%1 is open in another window (%2).").arg(job, who),
      Texts::tr("Saving over it replaces the job that is worked on there. Saving as another "
                "file keeps both."),
      {Texts::tr("Save as &another file…"), Texts::tr("&Overwrite it"), Texts::tr("&Cancel")});
  return answer == 0 ? Changed::save_as : answer == 1 ? Changed::overwrite : Changed::cancel;
}

Changed DesktopDialogs::askChangedElsewhere(QWidget* parent, const QString& job) {
  const int answer = asked(
      parent, Texts::tr("The file of %1 was changed by something else.").arg(job),
      Texts::tr("Another window or a program that keeps folders alike has written it since it "
                "was opened or saved here. Overwriting it loses what was written there; saving "
                "as another file keeps both."),
      {Texts::tr("Save as &another file…"), Texts::tr("&Overwrite it"), Texts::tr("&Cancel")});
  return answer == 0 ? Changed::save_as : answer == 1 ? Changed::overwrite : Changed::cancel;
}

bool DesktopDialogs::askReplace(QWidget* parent, const QStringList& files) {
  return asked(parent, Texts::tr("Files of these names are there already."),
               files.join(QLatin1Char('\n')),
               {Texts::tr("&Leave them"), Texts::tr("&Replace them")}, 0) == 1;
}

bool DesktopDialogs::choosePrinter(QWidget* parent, QPrinter& printer) {
  QPrintDialog dialog(&printer, parent);
  return dialog.exec() == QDialog::Accepted;
}

void DesktopDialogs::about(QWidget* parent, const QString& title, const QString& text) {
  QMessageBox::about(parent, title, text);
}

}  // namespace sumpwright::window
