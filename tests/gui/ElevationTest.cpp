// The unrolled elevation in the window: the discharge dragged and nudged, the fan, the strip below.

#include "WindowFixture.h"
#include "build/Run.h"
#include "paint/Look.h"
#include "plan/SumpEdits.h"

namespace sumpwright::gui {
namespace {

class ElevationStage : public WindowFixture {
 protected:
  void openRun() {
    open(QStringLiteral("semi-detached"));
    QTest::keyClick(window.get(), Qt::Key_4, Qt::ControlModifier);
    ASSERT_EQ(window->stage(), window::Stage::run);
    ASSERT_TRUE(picture().isVisible());
  }
  tape::ElevationPicture& picture() { return window->elevation(); }
  const plan::Sump& sump() { return session().job().design.sumps.at(0); }
  QPoint outletPoint() {
    const plan::Discharge& out = *sump().discharge;
    return picture().pointOf({{out.ring, out.chainage_m}, out.height_m}).toPoint();
  }
};

TEST_F(ElevationStage, DraggingTheDischargeIsOneStepWithALiveVerdict) {
  openRun();
  const plan::Discharge before = *sump().discharge;
  const int step = session().undoStack().index();
  const QPoint from = outletPoint();
  QTest::mousePress(&picture(), Qt::LeftButton, {}, from);
  QTest::mouseMove(&picture(), from + QPoint(-20, 60));
  QTest::mouseMove(&picture(), from + QPoint(-40, 120));
  ASSERT_TRUE(picture().isDragging());
  EXPECT_LT(sump().discharge->height_m, before.height_m - 0.5);
  EXPECT_EQ(session().assessment()->state, rules::State::refused) << "beside the window";
  QTest::mouseRelease(&picture(), Qt::LeftButton, {}, from + QPoint(-40, 120));
  EXPECT_EQ(session().undoStack().index(), step + 1);
  session().undoStack().undo();
  EXPECT_EQ(*sump().discharge, before);
}

TEST_F(ElevationStage, ShowsTheCableAtRestAndNotWhileTheRunIsDragged) {
  openRun();
  const auto red = [this] {
    const QImage image = picture().grab().toImage();
    const QColor cable = paint::colour(paint::look(picture().palette()).electricity);
    int count = 0;
    for (int y = 0; y < image.height(); ++y) {
      for (int x = 0; x < image.width(); ++x) count += image.pixelColor(x, y) == cable ? 1 : 0;
    }
    return count;
  };
  const int with = red();
  const QPoint from = outletPoint();
  QTest::mousePress(&picture(), Qt::LeftButton, {}, from);
  QTest::mouseMove(&picture(), from + QPoint(0, 12));
  const int dragged = red();
  QTest::keyClick(&picture(), Qt::Key_Escape);
  QTest::mouseRelease(&picture(), Qt::LeftButton, {}, from + QPoint(0, 12));
  EXPECT_GT(with, dragged + 20);  // the isolator stays
  EXPECT_EQ(red(), with);
  plan::Job job = session().job();
  job.plan.supplies.clear();
  for (plan::Sump& one : job.design.sumps) one.supply.clear();
  ASSERT_TRUE(session().edit(QStringLiteral("No supply"), job).empty());
  EXPECT_LT(red(), with - 20);
}

TEST_F(ElevationStage, EscapeEndsADragAsIfItHadNotBeen) {
  openRun();
  const plan::Discharge before = *sump().discharge;
  const QPoint from = outletPoint();
  picture().setFocus();
  QTest::mousePress(&picture(), Qt::LeftButton, {}, from);
  QTest::mouseMove(&picture(), from + QPoint(30, 30));
  EXPECT_NE(*sump().discharge, before);
  QTest::keyClick(&picture(), Qt::Key_Escape);
  EXPECT_EQ(*sump().discharge, before);
  QTest::mouseRelease(&picture(), Qt::LeftButton, {}, from + QPoint(30, 30));
  EXPECT_EQ(*sump().discharge, before);
}

TEST_F(ElevationStage, KeysMoveDischargeAndFan) {
  openRun();
  const plan::Discharge before = *sump().discharge;
  picture().setFocus();
  QTest::keyClick(&picture(), Qt::Key_Up);
  EXPECT_NEAR(sump().discharge->height_m, before.height_m + 0.1, 1e-9);
  QTest::keyClick(&picture(), Qt::Key_Right, Qt::ShiftModifier);
  EXPECT_NEAR(sump().discharge->chainage_m, before.chainage_m + 0.01, 1e-9);
  QTest::keyClick(&picture(), Qt::Key_PageUp);
  EXPECT_NEAR(*sump().fan_height_m, 1.3, 1e-9);
  session().undoStack().undo();
  EXPECT_NEAR(*sump().fan_height_m, 1.2, 1e-9);
}

TEST_F(ElevationStage, PlacesADischargeWhereThereIsNone) {
  openRun();
  ASSERT_TRUE(session()
                  .edit(QStringLiteral("none"),
                        plan::setDischarge(session().job(), sump().id, std::nullopt))
                  .empty());
  EXPECT_EQ(session().assessment()->state, rules::State::not_proven);
  picture().setFocus();
  QTest::keyClick(&picture(), Qt::Key_P);
  ASSERT_TRUE(sump().discharge);
  EXPECT_GT(sump().discharge->height_m, 5.1) << "over the eaves";
  EXPECT_NE(session().assessment()->state, rules::State::refused);
}

TEST_F(ElevationStage, SpeaksItsVerdict) {
  openRun();
  EXPECT_TRUE(picture().accessibleName().contains(QStringLiteral("Advised against")))
      << picture().accessibleName().toStdString();
}

TEST_F(ElevationStage, MiddleAndStripAreChosen) {
  openRun();
  window->centreChoice().button(1)->click();
  EXPECT_TRUE(window->canvas().isVisible());
  EXPECT_FALSE(picture().isVisible());
  QTest::keyClick(window.get(), Qt::Key_2, Qt::ControlModifier);
  EXPECT_TRUE(window->canvas().isVisible());
  window->tapeChoice().button(1)->click();
  tape::ElevationPicture* strip = window->tape().elevation();
  ASSERT_TRUE(strip->isVisible());
  EXPECT_FALSE(window->tape().strip()->isVisible());
  // A press on the strip moves the sump, and the discharge along.
  const double aside = sump().discharge->chainage_m - sump().chainage_m;
  const QPoint at = strip->pointOf({{0, 25.0}, 1.0}).toPoint();
  QTest::mouseClick(strip, Qt::LeftButton, {}, at);
  EXPECT_NEAR(sump().chainage_m, 25.0, 0.1);
  EXPECT_NEAR(sump().discharge->chainage_m - sump().chainage_m, aside, 1e-9);
}

}  // namespace
}  // namespace sumpwright::gui
