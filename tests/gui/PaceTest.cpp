// A drag studies nothing anew: that is what keeps a frame short. How long study and frames take is
// printed (aims: study and whole plan under 16 ms, a drag's frame under 8 ms; own figures), not
// judged.

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

TEST_F(Pace, ADragStudiesNothingAnew) {
  for (const char* name : {"bungalow", "courtyard", "extended-cottage"}) {
    open(name);
    if (!session().place()) session().putAt({0, 3.0});
    const double study_ms = least_ms(
        10, [&](int) { ASSERT_TRUE(siting::Study::of(session().job(), study().sheet()).ok()); });
    const siting::Study* before = session().study();
    session().beginMove();
    const double frame_ms = least_ms(20, [&](int i) {
      session().moveTo(study().perimeter().wrapped({0, 3.0 + 0.05 * i}));
      window->canvas().repaint();
      window->tape().strip()->repaint();
    });
    EXPECT_EQ(session().study(), before);
    EXPECT_NEAR(session().place()->chainage_m, 3.0 + 0.05 * 19, 1e-9);
    session().cancelMove();
    session().select(session().job().plan.openings.front().id);
    const double base_ms = least_ms(5, [&](int i) {
      session().select(i % 2 == 0 ? std::string() : session().job().plan.openings.front().id);
      window->canvas().repaint();
    });
    std::printf("%s: study %.2f ms, drag frame %.2f ms, whole plan %.2f ms\n", name, study_ms,
                frame_ms, base_ms);
    dialogs.unsaved = window::Unsaved::discard;
  }
}

}  // namespace
}  // namespace sumpwright::gui
