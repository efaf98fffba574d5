// A frame of a drag and a study, against what a hand notices. The least of several runs counts, so
// that a busy machine does not decide. Budgets are for optimised builds without sanitizers.

#include <QElapsedTimer>
#include <algorithm>
#include <cstdio>

#include "gui/WindowFixture.h"

namespace sumpwright::gui {
namespace {

class Pace : public WindowFixture {};

template <class Work>
double least_ms(int runs, Work&& work) {
  double least = 1e9;
  for (int i = 0; i < runs; ++i) {
    QElapsedTimer timer;
    timer.start();
    work(i);
    least = std::min(least, static_cast<double>(timer.nsecsElapsed()) * 1e-6);
  }
  return least;
}

bool optimised() {
#if defined(__OPTIMIZE__) && !defined(__SANITIZE_ADDRESS__) && !defined(__SANITIZE_UNDEFINED__)
  return true;
#else
  return false;
#endif
}

TEST_F(Pace, StudyAndDragFrame) {
  for (const char* name : {"bungalow", "courtyard", "extended-cottage"}) {
    open(name);
    if (!session().place()) session().putAt({0, 3.0});
    const double study_ms = least_ms(
        10, [&](int) { ASSERT_TRUE(siting::Study::of(session().job(), study().sheet()).ok()); });
    session().beginMove();
    const double frame_ms = least_ms(20, [&](int i) {
      session().moveTo(study().perimeter().wrapped({0, 3.0 + 0.05 * i}));
      window->canvas().repaint();
      window->tape().strip()->repaint();
    });
    session().cancelMove();
    session().select(session().job().plan.openings.front().id);
    const double base_ms = least_ms(5, [&](int i) {
      session().select(i % 2 == 0 ? std::string() : session().job().plan.openings.front().id);
      window->canvas().repaint();
    });
    std::printf("%s: study %.2f ms, drag frame %.2f ms, whole plan %.2f ms\n", name, study_ms,
                frame_ms, base_ms);
    if (!optimised()) continue;
    EXPECT_LT(study_ms, 16.0);
    EXPECT_LT(frame_ms, 8.0);
    EXPECT_LT(base_ms, 16.0);
    dialogs.unsaved = window::Unsaved::discard;
  }
}

}  // namespace
}  // namespace sumpwright::gui
