#pragma once
// A real window on a copied sample, with its questions answered in advance.

#include <gtest/gtest.h>

#include <QPrinter>
#include <QSettings>
#include <QTemporaryDir>
#include <QTest>
#include <functional>
#include <memory>

#include "window/MainWindow.h"

namespace sumpwright::gui {

class PresetDialogs final : public window::Dialogs {
 public:
  QString next_open;
  QString next_save;
  window::Unsaved unsaved = window::Unsaved::cancel;
  int asked_unsaved = 0;
  QString print_to;  ///< a PDF file; empty: the printer dialog is cancelled
  QString last_about;

  QString openFile(QWidget*, const QString&, const QString&, const QString&) override {
    return next_open;
  }
  QString saveFile(QWidget*, const QString&, const QString&, const QString&) override {
    return next_save;
  }
  window::Unsaved askUnsaved(QWidget*, const QString&) override {
    ++asked_unsaved;
    return unsaved;
  }
  window::Kept kept = window::Kept::cancel;
  std::function<void()> while_asked;  ///< happens while askKept() is open
  bool discard_kept = false;
  bool open_anyway = false;
  window::Changed changed = window::Changed::cancel;
  QStringList asked;  ///< of kept work and of other windows: what was told in the question

  window::Kept askKept(QWidget*, const QString& job, const QString& time) override {
    asked << QStringLiteral("kept %1 %2").arg(job, time);
    if (while_asked) while_asked();
    return kept;
  }
  bool askDiscardKept(QWidget*, const QString& job, const QString& time) override {
    asked << QStringLiteral("discard %1 %2").arg(job, time);
    return discard_kept;
  }
  bool askOpenElsewhere(QWidget*, const QString& job, const QString& who) override {
    asked << QStringLiteral("elsewhere %1 %2").arg(job, who);
    return open_anyway;
  }
  window::Changed askChangedElsewhere(QWidget*, const QString& job) override {
    asked << QStringLiteral("changed %1").arg(job);
    return changed;
  }
  window::Changed save_over = window::Changed::cancel;
  QString then_save;  ///< what the file dialog gives after save_over said another file
  window::Changed askSaveOver(QWidget*, const QString& job, const QString& who) override {
    asked << QStringLiteral("over %1 %2").arg(job, who);
    next_save = then_save;
    return save_over;
  }
  bool replace = false;
  bool askReplace(QWidget*, const QStringList& files) override {
    asked << QStringLiteral("replace %1").arg(files.join(QLatin1Char(' ')));
    return replace;
  }
  bool choosePrinter(QWidget*, QPrinter& printer) override {
    if (print_to.isEmpty()) return false;
    printer.setOutputFormat(QPrinter::PdfFormat);
    printer.setOutputFileName(print_to);
    return true;
  }
  void about(QWidget*, const QString&, const QString& text) override { last_about = text; }
};

class WindowFixture : public testing::Test {
 protected:
  WindowFixture()
      : settings(folder.filePath(QStringLiteral("window.ini")), QSettings::IniFormat),
        window(std::make_unique<window::MainWindow>(settings, dialogs)) {
    window->resize(1280, 720);
    window->show();
  }

  /// A sample copied to where it may be written.
  QString sample(const QString& name) {
    const QString to = folder.filePath(name + QStringLiteral(".sump.json"));
    QFile::remove(to);
    EXPECT_TRUE(QFile::copy(QStringLiteral(SUMPWRIGHT_SAMPLES_DIR "/%1.sump.json").arg(name), to));
    QFile::setPermissions(to, QFile::ReadOwner | QFile::WriteOwner);
    return to;
  }
  void open(const QString& name) {
    ASSERT_TRUE(window->openPath(sample(name))) << window->told().toStdString();
    QCoreApplication::processEvents();
  }
  session::Session& session() { return window->session(); }
  const siting::Study& study() { return *window->session().study(); }
  rules::State state() { return session().assessment()->state; }

  /// Middle of the longest run of a state; nothing when there is none.
  std::optional<perimeter::Place> middleOf(rules::State state) {
    std::optional<siting::Run> longest;
    for (const siting::Run& run : study().runs()) {
      if (run.state != state) continue;
      if (!longest || run.to_m - run.from_m > longest->to_m - longest->from_m) longest = run;
    }
    if (!longest) return std::nullopt;
    return study().perimeter().wrapped({longest->ring, (longest->from_m + longest->to_m) / 2});
  }
  void trigger(const char* action) {
    ASSERT_TRUE(window->action(action)->isEnabled()) << action;
    window->action(action)->trigger();
  }

  QTemporaryDir folder;
  QSettings settings;
  PresetDialogs dialogs;
  std::unique_ptr<window::MainWindow> window;
};

}  // namespace sumpwright::gui
