// A frame of a sump dragged in the stage Suction, in the real window: judged and solved in cells of
// 10 cm, the plan composed and painted, then all else that follows (panel, tape). The sump runs
// along the wall of samples; the least and the middle of many frames are printed, never asserted.
// Offscreen, where painting is Qt's raster engine's, unless QT_QPA_PLATFORM says otherwise.

#include <QApplication>
#include <QElapsedTimer>
#include <QSettings>
#include <QTemporaryDir>
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <vector>

#include "window/Dialogs.h"
#include "window/MainWindow.h"
#include "window/Theming.h"

namespace {

using namespace sumpwright;  // NOLINT: a program of its own

constexpr int kFrames = 200;
constexpr double kStep_m = 0.05;
constexpr qint64 kLongest_ms = 120'000;

struct Frame {
  double solved_ms = 0.0;
  double painted_ms = 0.0;
  double rest_ms = 0.0;
  double drag_ms() const { return solved_ms + painted_ms; }
};

double lasted_ms(const std::function<void()>& work) {
  QElapsedTimer timer;
  timer.start();
  work();
  return static_cast<double>(timer.nsecsElapsed()) * 1e-6;
}

bool answered(const session::SuctionDesk& desk) {
  QElapsedTimer timer;
  timer.start();
  while (desk.isWorking() || desk.isRefining() || desk.answer() == nullptr ||
         desk.isAnswerStale()) {
    if (timer.elapsed() > kLongest_ms) return false;
    QCoreApplication::processEvents(QEventLoop::AllEvents, 20);
  }
  return true;
}

template <class Part>
void print(const char* name, std::vector<Frame>& frames, Part part) {
  std::sort(frames.begin(), frames.end(),
            [&](const Frame& a, const Frame& b) { return part(a) < part(b); });
  std::printf("  %-28s %6.2f ms at least, %6.2f in the middle\n", name, part(frames.front()),
              part(frames[frames.size() / 2]));
}

bool benchSample(window::MainWindow& window, const char* sample) {
  if (!window.openPath(QStringLiteral(SUMPWRIGHT_SAMPLES_DIR "/%1.sump.json").arg(sample))) {
    return false;
  }
  window.showStage(window::Stage::suction);
  QCoreApplication::processEvents();
  session::Session& session = window.session();
  if (!session.place() || !answered(window.suctionDesk())) return false;
  std::vector<Frame> frames;
  session.beginMove();
  session::Place place = *session.place();
  for (int k = 0; k < kFrames; ++k) {
    place = session.study()->perimeter().wrapped({place.ring, place.chainage_m + kStep_m});
    Frame frame;
    frame.solved_ms = lasted_ms([&] { session.moveTo(place); });
    frame.painted_ms = lasted_ms([&] { window.canvas().repaint(); });
    frame.rest_ms = lasted_ms([] { QCoreApplication::processEvents(); });
    frames.push_back(frame);
  }
  const auto cells = window.suctionDesk().live()->cases().front().solver.network().cells.size();
  session.cancelMove();
  std::printf("%s: %d frames, %zu cells, %d x %d pixels\n", sample, kFrames, cells,
              window.canvas().width(), window.canvas().height());
  print("judged and solved", frames, [](const Frame& f) { return f.solved_ms; });
  print("composed and painted", frames, [](const Frame& f) { return f.painted_ms; });
  print("both, the frame of the plan", frames, [](const Frame& f) { return f.drag_ms(); });
  print("panel and tape after it", frames, [](const Frame& f) { return f.rest_ms; });
  return true;
}

}  // namespace

int main(int argc, char** argv) {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  QApplication app(argc, argv);
  window::prepareLook();
  QTemporaryDir folder;
  qputenv("XDG_DATA_HOME", folder.path().toUtf8());  // not where the user's own work is kept
  QSettings settings(folder.filePath(QStringLiteral("window.ini")), QSettings::IniFormat);
  window::DesktopDialogs dialogs;
  bool ok = true;
  for (const char* sample : {"bungalow", "semi-detached", "courtyard"}) {
    window::MainWindow window(settings, dialogs);
    window.resize(1280, 720);
    window.show();
    ok = benchSample(window, sample) && ok;
  }
  double load = 0.0;
  if (getloadavg(&load, 1) == 1) std::printf("load of the machine: %.1f\n", load);
  return ok ? 0 : 1;
}
