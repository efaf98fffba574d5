#pragma once
// What stands in the window before a job is open: a sentence, the buttons, recent jobs, samples.

#include <QAction>
#include <QLabel>
#include <QVBoxLayout>
#include <QWidget>

namespace sumpwright::window {

class StartPage final : public QWidget {
  Q_OBJECT

 public:
  StartPage(QAction* fresh, QAction* open, QWidget* parent = nullptr);
  void show(const QStringList& recent, const QStringList& samples);

 Q_SIGNALS:
  void picked(const QString& path);

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  void addList(const QString& title, const QStringList& paths, bool with_folder);

  QVBoxLayout* m_lists;
};

/// Jobs that come with the program; empty when they are not installed.
QStringList installedSamples();

}  // namespace sumpwright::window
