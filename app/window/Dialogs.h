#pragma once
// Every question the window asks, behind one seam, so that tests answer it without a dialog.

#include <QString>
#include <QStringList>

class QPrinter;
class QWidget;

namespace sumpwright::window {

enum class Unsaved { save, discard, cancel };
enum class Kept { take_up, open_saved, discard, cancel };
enum class Changed { overwrite, save_as, cancel };

class Dialogs {
 public:
  virtual ~Dialogs() = default;
  /// A file's path, empty when the user thinks better of it.
  virtual QString openFile(QWidget* parent, const QString& title, const QString& folder,
                           const QString& filter) = 0;
  virtual QString saveFile(QWidget* parent, const QString& title, const QString& suggested,
                           const QString& filter) = 0;
  virtual Unsaved askUnsaved(QWidget* parent, const QString& job) = 0;
  /// The program ended before `job` was saved, and work up to `time` was kept.
  virtual Kept askKept(QWidget* parent, const QString& job, const QString& time) = 0;
  /// Whether to remove kept work for good.
  virtual bool askDiscardKept(QWidget* parent, const QString& job, const QString& time) = 0;
  /// Whether to open a job that `who` has open as well.
  virtual bool askOpenElsewhere(QWidget* parent, const QString& job, const QString& who) = 0;
  /// The job is about to be saved, but something else has written its file meanwhile.
  virtual Changed askChangedElsewhere(QWidget* parent, const QString& job) = 0;
  /// The job is about to be saved over another, `job`, that `who` has open.
  virtual Changed askSaveOver(QWidget* parent, const QString& job, const QString& who) = 0;
  /// Whether to write over files that are there.
  virtual bool askReplace(QWidget* parent, const QStringList& files) = 0;
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
  Kept askKept(QWidget* parent, const QString& job, const QString& time) override;
  bool askDiscardKept(QWidget* parent, const QString& job, const QString& time) override;
  bool askOpenElsewhere(QWidget* parent, const QString& job, const QString& who) override;
  Changed askChangedElsewhere(QWidget* parent, const QString& job) override;
  Changed askSaveOver(QWidget* parent, const QString& job, const QString& who) override;
  bool askReplace(QWidget* parent, const QStringList& files) override;
  bool choosePrinter(QWidget* parent, QPrinter& printer) override;
  void about(QWidget* parent, const QString& title, const QString& text) override;
};

}  // namespace sumpwright::window
