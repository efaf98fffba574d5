// A wall dragged in a house of many things: one edit, its study and the plan painted anew, each
// with its share. Offscreen raster at 1920 x 1080 unless QT_QPA_PLATFORM says otherwise; times are
// printed, never asserted. `plan` paints the plan alone, `window` all that the open window shows.

#include <benchmark/benchmark.h>

#include <QApplication>
#include <QElapsedTimer>
#include <QImage>
#include <QSettings>
#include <QTemporaryDir>
#include <cmath>

#include "bench/Houses.h"
#include "files/JobFile.h"
#include "tools/OutlineDrag.h"
#include "window/Dialogs.h"
#include "window/MainWindow.h"
#include "window/Theming.h"

namespace {

using namespace sumpwright;  // NOLINT: a program of its own

constexpr int kWide = 1920;
constexpr int kHigh = 1080;

double since_ms(QElapsedTimer& timer) {
  const double ms = static_cast<double>(timer.nsecsElapsed()) * 1e-6;
  timer.restart();
  return ms;
}

/// A window on a job of that many things, in the survey.
class OpenWindow {
 public:
  explicit OpenWindow(int things)
      : m_settings(m_folder.filePath(QStringLiteral("window.ini")), QSettings::IniFormat) {
    qputenv("XDG_DATA_HOME", m_folder.path().toUtf8());  // not where the user's own work is kept
    m_window = std::make_unique<window::MainWindow>(m_settings, m_dialogs);
    const QString path = m_folder.filePath(QStringLiteral("house.sump.json"));
    m_ok = files::saveJob(path.toStdString(), bench::houseWith(things), {}).ok() &&
           m_window->openPath(path);
    m_window->resize(kWide, kHigh);
    m_window->show();
    if (m_ok) m_window->showStage(window::Stage::survey);
    QCoreApplication::processEvents();
  }
  bool ok() const { return m_ok; }
  window::MainWindow& window() { return *m_window; }

 private:
  QTemporaryDir m_folder;
  QSettings m_settings;
  window::DesktopDialogs m_dialogs;
  std::unique_ptr<window::MainWindow> m_window;
  bool m_ok = false;
};

/// Where the pointer is after so many moves: to and fro over 0.8 m.
geometry::Point pointerAt(geometry::Point start, int move) {
  return {start.x, start.y - 0.4 + 0.4 * std::cos(0.2 * move)};
}

void drag(benchmark::State& state, bool whole_window) {
  OpenWindow open(static_cast<int>(state.range(0)));
  if (!open.ok()) return state.SkipWithError("the house could not be opened");
  session::Session& session = open.window().session();
  QWidget* painted = whole_window ? static_cast<QWidget*>(&open.window()) : &open.window().canvas();
  if (!whole_window) painted->setFixedSize(kWide, kHigh);
  QCoreApplication::processEvents();
  QImage image(kWide, kHigh, QImage::Format_RGB32);
  const tools::OutlineGrip front{tools::GripKind::wall, 0, 0};
  const geometry::Point start = tools::gripPoint(session.job().plan, front);
  tools::OutlineDrag held(session.job(), front, start, 0.1, 0.01);
  session.beginPreview();
  double edit_ms = 0.0;
  double study_ms = 0.0;
  double paint_ms = 0.0;
  int moves = 0;
  for (auto _ : state) {
    QElapsedTimer timer;
    timer.start();
    auto live = held.move(pointerAt(start, ++moves));
    edit_ms += since_ms(timer);
    if (!live) return state.SkipWithError("the wall could not be moved");
    session.preview(std::move(live).value());
    study_ms += since_ms(timer);
    painted->render(&image);
    paint_ms += since_ms(timer);
  }
  session.cancelPreview();
  const double n = std::max(1, moves);
  state.counters["edit_ms"] = edit_ms / n;
  state.counters["study_ms"] = study_ms / n;
  state.counters["paint_ms"] = paint_ms / n;
  state.counters["things"] = static_cast<double>(state.range(0));
}

void dragPlan(benchmark::State& state) { drag(state, false); }
void dragWindow(benchmark::State& state) { drag(state, true); }

BENCHMARK(dragPlan)->Arg(20)->Arg(200)->Unit(benchmark::kMillisecond);
BENCHMARK(dragWindow)->Arg(200)->Unit(benchmark::kMillisecond);

}  // namespace

int main(int argc, char** argv) {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  QApplication app(argc, argv);
  window::prepareLook();
  benchmark::Initialize(&argc, argv);
  if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 1;
  benchmark::RunSpecifiedBenchmarks();
  return 0;
}
