#include "window/Dialogs.h"

#include <QCoreApplication>
#include <QFileDialog>
#include <QMessageBox>
#include <QPrintDialog>
#include <QPrinter>
#include <QPushButton>

namespace sumpwright::window {

namespace {

class Texts {
  Q_DECLARE_TR_FUNCTIONS(Dialogs)
};

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
  QMessageBox box(parent);
  box.setIcon(QMessageBox::NoIcon);
  box.setText(Texts::tr("The changes to %1 are not saved.").arg(job));
  box.setInformativeText(Texts::tr("Without saving they are lost."));
  QPushButton* save = box.addButton(Texts::tr("&Save"), QMessageBox::AcceptRole);
  QPushButton* discard =
      box.addButton(Texts::tr("&Lose the changes"), QMessageBox::DestructiveRole);
  box.addButton(Texts::tr("&Cancel"), QMessageBox::RejectRole);
  box.setDefaultButton(save);
  box.exec();
  if (box.clickedButton() == save) return Unsaved::save;
  return box.clickedButton() == discard ? Unsaved::discard : Unsaved::cancel;
}

bool DesktopDialogs::choosePrinter(QWidget* parent, QPrinter& printer) {
  QPrintDialog dialog(&printer, parent);
  return dialog.exec() == QDialog::Accepted;
}

void DesktopDialogs::about(QWidget* parent, const QString& title, const QString& text) {
  QMessageBox::about(parent, title, text);
}

}  // namespace sumpwright::window
