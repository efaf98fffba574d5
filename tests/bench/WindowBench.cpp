// From the start of the process to the first painted sample, beside a bare Qt window; and the
// client's plan as PDF, beside a bare one-page PDF. Run without arguments; each start is a process
// of its own (this program with an argument). Times are printed, never asserted. Offscreen unless
// QT_QPA_PLATFORM says otherwise.

#include <QApplication>
#include <QElapsedTimer>
#include <QLabel>
#include <QPainter>
#include <QPdfWriter>
#include <QProcess>
#include <QSettings>
#include <QTemporaryDir>
#include <QTimer>
#include <algorithm>
#include <cstdio>
#include <functional>
#include <vector>

#include "dossier/ClientPlan.h"
#include "files/JobFile.h"
#include "paint/Export.h"
#include "paint/QtVoice.h"
#include "support/RandomPlan.h"
#include "window/Dialogs.h"
#include "window/MainWindow.h"
#include "window/Theming.h"

namespace {

using namespace sumpwright;  // NOLINT: a program of its own

constexpr int kStarts = 9;
constexpr int kPapers = 15;
const char* const kSample = SUMPWRIGHT_SAMPLES_DIR "/bungalow.sump.json";

/// Ends the program once a widget has been painted for the first time.
class QuitAfterPaint final : public QObject {
 public:
  explicit QuitAfterPaint(QWidget& watched) : QObject(&watched) {
    watched.installEventFilter(this);
  }
  bool eventFilter(QObject* /*watched*/, QEvent* event) override {
    if (event->type() == QEvent::Paint) QTimer::singleShot(0, qApp, &QApplication::quit);
    return false;
  }
};

int startBare(int argc, char** argv) {
  QApplication app(argc, argv);
  QLabel window(QStringLiteral("bare"));
  window.resize(1280, 720);
  new QuitAfterPaint(window);
  window.show();
  return QApplication::exec();
}

int startSample(int argc, char** argv) {
  QApplication app(argc, argv);
  window::prepareLook();
  QTemporaryDir folder;
  qputenv("XDG_DATA_HOME", folder.path().toUtf8());  // not where the user's own work is kept
  QSettings settings(folder.filePath(QStringLiteral("window.ini")), QSettings::IniFormat);
  window::DesktopDialogs dialogs;
  window::MainWindow window(settings, dialogs);
  window.resize(1280, 720);
  if (!window.openPath(QString::fromUtf8(kSample))) return 3;
  new QuitAfterPaint(window.canvas());
  window.show();
  return QApplication::exec();
}

double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return values[values.size() / 2];
}

double timed_ms(const std::function<void()>& work) {
  QElapsedTimer timer;
  timer.start();
  work();
  return static_cast<double>(timer.nsecsElapsed()) * 1e-6;
}

/// Milliseconds from the start of a process of this program to its end; negative when it failed.
double start_ms(const QString& self, const char* what) {
  bool ended = false;
  const double ms = timed_ms([&] {
    QProcess process;
    process.setProcessChannelMode(QProcess::ForwardedErrorChannel);
    process.start(self, {QString::fromLatin1(what)});
    ended = process.waitForFinished(60'000) && process.exitStatus() == QProcess::NormalExit &&
            process.exitCode() == 0;
  });
  return ended ? ms : -1.0;
}

/// Bare and sample turn by turn, so that what else the machine does falls on both.
bool benchStart(const QString& self) {
  std::vector<double> bare;
  std::vector<double> sample;
  for (int i = 0; i < kStarts; ++i) {
    bare.push_back(start_ms(self, "bare"));
    sample.push_back(start_ms(self, "sample"));
    if (bare.back() < 0.0 || sample.back() < 0.0) return false;
  }
  std::printf(
      "start to first paint, median of %d: bare window %.0f ms, sample %.0f ms: %.0f ms more\n",
      kStarts, median(bare), median(sample), median(sample) - median(bare));
  return true;
}

void writeBare(const QString& path) {
  QPdfWriter writer(path);
  writer.setPageSize(QPageSize(QPageSize::A4));
  QPainter painter(&writer);
  painter.drawText(200, 200, QStringLiteral("one line"));
}

bool benchPaper() {
  const auto read = files::openJob(kSample);
  if (!read) return false;
  const auto study = siting::Study::of(read->job, support::builtInSheet("ie-practice"));
  if (!study) return false;
  const paint::QtVoice voice(read->job.display_units);
  QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("paper.pdf"));
  std::vector<double> bare;
  std::vector<double> composed;
  std::vector<double> written;
  bool ok = true;
  for (int i = 0; i < kPapers; ++i) {
    bare.push_back(timed_ms([&] { writeBare(folder.filePath(QStringLiteral("bare.pdf"))); }));
    dossier::Document document;
    composed.push_back(timed_ms([&] {
      document = dossier::clientPlan(*study, voice,
                                     {.size = dossier::PaperSize::a4, .date = "2026-03-01"});
    }));
    written.push_back(timed_ms(
        [&] { ok = ok && paint::exportPages(paint::pagesOf(document), path.toStdString()).ok(); }));
  }
  std::printf(
      "client's plan, median of %d: composed %.1f ms, written as PDF %.1f ms; bare one-page "
      "PDF %.1f ms\n",
      kPapers, median(composed), median(written), median(bare));
  return ok;
}

}  // namespace

int main(int argc, char** argv) {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  const QByteArray what = argc > 1 ? argv[1] : "";
  if (what == "bare") return startBare(argc, argv);
  if (what == "sample") return startSample(argc, argv);
  QApplication app(argc, argv);
  const bool started = benchStart(QApplication::applicationFilePath());
  if (!started) std::fprintf(stderr, "a start failed\n");
  const bool drawn = benchPaper();
  if (!drawn) std::fprintf(stderr, "the paper failed\n");
  return started && drawn ? 0 : 1;
}
