#pragma once
// Every question the window asks, behind one seam, so that tests answer it without a dialog.

#include <QString>

class QPrinter;
class QWidget;

namespace sumpwright::window {

enum class Unsaved { save, discard, cancel };

class Dialogs {
 public:
  virtual ~Dialogs() = default;
  /// A file's path, empty when the user thinks better of it.
  virtual QString openFile(QWidget* parent, const QString& title, const QString& folder,
                           const QString& filter) = 0;
  virtual QString saveFile(QWidget* parent, const QString& title, const QString& suggested,
                           const QString& filter) = 0;
  virtual Unsaved askUnsaved(QWidget* parent, const QString& job) = 0;
  virtual bool choosePrinter(QWidget* parent, QPrinter& printer) = 0;
  virtual void about(QWidget* parent, const QString& title, const QString& text) = 0;

 protected:
  Dialogs() = default;
  Dialogs(const Dialogs&) = default;
  Dialogs& operator=(const Dialogs&) = default;
};

/// The desktop's own.
class DesktopDialogs final : public Dialogs {
 public:
  QString openFile(QWidget* parent, const QString& title, const QString& folder,
                   const QString& filter) override;
  QString saveFile(QWidget* parent, const QString& title, const QString& suggested,
                   const QString& filter) override;
  Unsaved askUnsaved(QWidget* parent, const QString& job) override;
  bool choosePrinter(QWidget* parent, QPrinter& printer) override;
  void about(QWidget* parent, const QString& title, const QString& text) override;
};

}  // namespace sumpwright::window
