#pragma once
// What stands in the window before a job is open: a sentence, the buttons, work that was
// kept when the program ended early, recent jobs, samples.

#include <QAction>
#include <QLabel>
#include <QVBoxLayout>
#include <QWidget>
#include <vector>

#include "session/LeftOver.h"

namespace sumpwright::window {

class StartPage final : public QWidget {
  Q_OBJECT

 public:
  StartPage(QAction* fresh, QAction* open, QWidget* parent = nullptr);
  void show(const QStringList& recent, const QStringList& samples,
            const std::vector<session::LeftOver>& kept);

 Q_SIGNALS:
  void picked(const QString& path);
  void keptPicked(const session::LeftOver& left);
  void keptDiscarded(const session::LeftOver& left);

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  void addList(const QString& title, const QStringList& paths, bool with_folder);
  void addHeading(const QString& title);
  void addKept(const session::LeftOver& left);

  QVBoxLayout* m_lists;
  QWidget* m_all = nullptr;  ///< holds the lists; scrolls
};

/// A time as one would say it: of today only hours and minutes.
QString timeText(const QDateTime& at);

/// Jobs that come with the program; empty when they are not installed.
QStringList installedSamples();

}  // namespace sumpwright::window
