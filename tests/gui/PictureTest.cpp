// The picture under the plan, through the real window: laid, moved, scaled, straightened, traced,
// saved, missing. SUMPWRIGHT_SEE=FOLDER keeps what the window showed half-way, to look at.

#include <QApplication>
#include <QDropEvent>
#include <QElapsedTimer>
#include <QFile>
#include <QMimeData>
#include <QPainter>
#include <QPdfWriter>
#include <QWheelEvent>
#include <cmath>
#include <cstdlib>
#include <functional>

#include "WindowFixture.h"
#include "files/KeptWork.h"
#include "files/Underlay.h"
#include "geometry/Shapes.h"
#include "session/LeftOver.h"
#include "support/PlanPhoto.h"

namespace sumpwright::gui {
namespace {

using geometry::Point;
using session::PictureDesk;

class PictureWindow : public WindowFixture {
 protected:
  void activate() {
    window->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
  }
  QString drawn(const QString& name, QSize size = {800, 600}) {
    QImage image(size, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.setPen(QPen(Qt::black, 6));
    painter.drawRect(image.rect().adjusted(100, 100, -100, -100));
    painter.end();
    const QString file = folder.filePath(name);
    EXPECT_TRUE(image.save(file));
    return file;
  }
  PictureDesk& desk() { return window->picture(); }
  stages::PicturePage& page() { return *window->survey().picture(); }
  canvas::PlanCanvas& plan() { return window->canvas(); }
  const plan::Underlay& underlay() { return *desk().underlay(); }
  int steps() { return session().undoStack().index(); }
  void settle() {
    ASSERT_TRUE(QTest::qWaitFor([&] { return !desk().isReading(); }, 20'000));
    QCoreApplication::processEvents();
  }
  /// A new job with a picture laid through the menu.
  void layNew(const QString& file) {
    activate();
    trigger("file.new");
    dialogs.next_open = file;
    trigger("survey.picture");
    settle();
    ASSERT_TRUE(desk().layer()) << page().warning()->text().toStdString();
  }
  /// Where the window shows a pixel of the picture.
  QPoint shown(double x, double y) {
    return plan().toWidget(files::planPoint(desk().layer()->placed, {x, y})).toPoint();
  }
  void drag(QPoint from, QPoint to, bool release = true) {
    QTest::mousePress(&plan(), Qt::LeftButton, {}, from);
    QTest::mouseMove(&plan(), from + (to - from) / 3);
    QTest::mouseMove(&plan(), to);
    if (release) QTest::mouseRelease(&plan(), Qt::LeftButton, {}, to);
  }
  void type(QWidget* to, const QString& text) {
    for (const QChar c : text) QTest::keyClick(to, c.toLatin1());
  }
  void wheel(QPoint at, int notches) {
    for (int i = 0; i < std::abs(notches); ++i) {
      QWheelEvent event(at, plan().mapToGlobal(at), {}, QPoint(0, notches > 0 ? 120 : -120),
                        Qt::NoButton, Qt::NoModifier, Qt::NoScrollPhase, false);
      QApplication::sendEvent(&plan(), &event);
    }
  }
  void see(const char* name) {
    const char* to = std::getenv("SUMPWRIGHT_SEE");
    if (to == nullptr) return;
    for (const char* theme : {"view.theme_dark", "view.theme_light"}) {
      window->action(theme)->trigger();
      QCoreApplication::processEvents();
      const QString colours = QLatin1String(theme).mid(11);
      window->grab().save(QStringLiteral("%1/picture-%2-%3.png")
                              .arg(QString::fromUtf8(to), QLatin1String(name), colours));
    }
  }
};

TEST_F(PictureWindow, IsLaidFromTheMenuAndShinesThrough) {
  layNew(drawn(QStringLiteral("plan.png")));
  EXPECT_EQ(window->survey().page(), stages::SurveyPage::picture);
  EXPECT_EQ(steps(), 1);
  see("laid");
  const QImage with = plan().grab().toImage();
  page().shown()->click();
  const QImage without = plan().grab().toImage();
  EXPECT_FALSE(underlay().shown);
  const QPoint line = shown(400, 100);  // on the frame's upper side
  const QPoint paper = shown(400, 300);
  EXPECT_LT(qGray(with.pixel(line)), qGray(without.pixel(line)) - 60);
  EXPECT_NEAR(qGray(with.pixel(paper)), qGray(without.pixel(paper)), 8);
  session().undoStack().undo();
  EXPECT_TRUE(page().shown()->isChecked());
}

TEST_F(PictureWindow, InTheDarkItsLinesAreLight) {
  layNew(drawn(QStringLiteral("plan.png")));
  trigger("view.theme_dark");
  QCoreApplication::processEvents();
  const QImage dark = plan().grab().toImage();
  EXPECT_GT(qGray(dark.pixel(shown(400, 100))), qGray(dark.pixel(shown(400, 300))) + 60);
  trigger("view.theme_light");
}

TEST_F(PictureWindow, IsDraggedWhileItIsNotLocked) {
  layNew(drawn(QStringLiteral("plan.png")));
  const Point before = underlay().at_m;
  const QPoint from = shown(400, 300);
  drag(from, from + QPoint(90, 60), false);
  EXPECT_TRUE(session().isPreviewing());
  see("moving");
  QTest::keyClick(&plan(), Qt::Key_Escape);
  QTest::mouseRelease(&plan(), Qt::LeftButton, {}, from + QPoint(90, 60));
  EXPECT_EQ(underlay().at_m, before);
  EXPECT_EQ(steps(), 1);
  drag(from, from + QPoint(90, 60));
  EXPECT_NEAR(underlay().at_m.x - before.x, 90 / plan().camera().px_per_m, 1e-9);
  EXPECT_NEAR(underlay().at_m.y - before.y, -60 / plan().camera().px_per_m, 1e-9);
  EXPECT_EQ(steps(), 2);
  page().locked()->click();
  EXPECT_FALSE(page().scaleButton()->isEnabled());
  const plan::Underlay locked = underlay();
  drag(shown(400, 300), shown(300, 200));
  EXPECT_EQ(underlay(), locked);
}

TEST_F(PictureWindow, IsScaledByTwoPointsAndATypedLength) {
  layNew(drawn(QStringLiteral("plan.png")));
  page().scaleButton()->click();
  EXPECT_FALSE(page().applyButton()->isEnabled());
  const double apart = 600.0;  // pixels of the picture, along the frame's upper side
  drag(shown(100, 100), shown(700, 100), false);
  EXPECT_TRUE(page().applyButton()->isEnabled());
  see("scaling");
  QTest::mouseRelease(&plan(), Qt::LeftButton, {}, shown(700, 100));
  plan().setFocus();
  type(&plan(), QStringLiteral("3"));  // on the plan; the panel takes it
  ASSERT_EQ(QApplication::focusWidget(), page().length());
  type(page().length(), QStringLiteral(".45"));
  EXPECT_EQ(page().length()->text(), QStringLiteral("3.45"));
  QTest::keyClick(page().length(), Qt::Key_Return);
  EXPECT_EQ(desk().tool(), PictureDesk::Tool::move);
  // Each end is out by half a widget pixel at the most.
  const double slip = 2.0 / 600.0 / plan().camera().px_per_m * 100;
  EXPECT_NEAR(underlay().m_per_px * apart, 3.45, 0.03) << slip;
  EXPECT_EQ(steps(), 2);
  session().undoStack().undo();
  EXPECT_NEAR(underlay().m_per_px * 800, 14.0, 1e-9);
}

TEST_F(PictureWindow, EscapeGivesTheScaleUpAndWrongLengthsAreSaid) {
  layNew(drawn(QStringLiteral("plan.png")));
  const plan::Underlay before = underlay();
  page().scaleButton()->click();
  drag(shown(100, 100), shown(700, 100));
  type(page().length(), QStringLiteral("x"));
  QTest::keyClick(page().length(), Qt::Key_Return);
  EXPECT_FALSE(page().message().isEmpty());
  page().length()->setText(QStringLiteral("1,900"));
  QTest::keyClick(page().length(), Qt::Key_Return);
  EXPECT_TRUE(page().message().contains(QStringLiteral("can mean")))
      << page().message().toStdString();
  QTest::keyClick(page().length(), Qt::Key_Escape);
  EXPECT_EQ(desk().tool(), PictureDesk::Tool::move);
  EXPECT_EQ(underlay(), before);
  EXPECT_EQ(steps(), 1);
  // From the plan, too.
  page().scaleButton()->click();
  drag(shown(100, 100), shown(700, 100));
  QTest::keyClick(&plan(), Qt::Key_Escape);
  EXPECT_EQ(desk().tool(), PictureDesk::Tool::move);
}

/// The way a user goes: straighten by the sheet's frame, scale by the longest wall, trace.
TEST_F(PictureWindow, APhotographedPlanIsTracedWithinTwoCentimetres) {
  support::Random random(20'261'126);
  const support::PlanPhoto photo = support::photographed(random);
  const QString file = folder.filePath(QStringLiteral("photo.png"));
  ASSERT_TRUE(photo.image.save(file));
  layNew(file);
  page().straightenButton()->click();
  ASSERT_TRUE(desk().showsCorners());
  see("corners");
  const Point frame[] = {{0, 0},
                         {support::kFrameWidth_m, 0},
                         {support::kFrameWidth_m, support::kFrameHeight_m},
                         {0, support::kFrameHeight_m}};
  const auto handle = [&](std::size_t i) {
    const Point px = desk().corners().corners()[i];
    return shown(px.x, px.y);
  };
  const auto seen = [&](std::size_t i) {
    const QPointF px = photo.at(frame[i]);
    return shown(px.x(), px.y());
  };
  for (std::size_t i = 0; i < 4; ++i) drag(handle(i), seen(i));  // roughly, from afar
  for (std::size_t i = 0; i < 4; ++i) {                          // then near
    wheel(seen(i), 10);
    drag(handle(i), seen(i));
    wheel(seen(i), -10);
  }
  // The shape of the sheet alone: half its size.
  page().wide()->setFocus();
  type(page().wide(), QStringLiteral("5.5"));
  type(page().high(), QStringLiteral("4.5"));
  page().sample()->click();
  EXPECT_TRUE(desk().isSampling());
  see("sample");
  page().sample()->click();
  QTest::keyClick(page().high(), Qt::Key_Return);
  settle();
  ASSERT_TRUE(desk().layer()) << page().message().toStdString();
  ASSERT_TRUE(underlay().straighten);
  EXPECT_EQ(steps(), 2);

  // Reads what is shown, for want of an eye: metres of the sheet from the frame's first corner.
  const auto shownAt = [&](Point metres, double known_scale) {
    const plan::Underlay placed = desk().layer()->placed;
    const auto first = files::straightFrame(
        desk().picture()->photo, {underlay().straighten->corners_px, underlay().straighten->width_m,
                                  underlay().straighten->height_m});
    return Point{first->first_corner_px.x + metres.x * known_scale / placed.m_per_px,
                 first->first_corner_px.y + metres.y * known_scale / placed.m_per_px};
  };
  constexpr double known_scale = 0.5;
  const support::Traced traced([&](Point metres) {
    const Point px = shownAt(metres, known_scale);
    const QPoint at(static_cast<int>(std::floor(px.x)), static_cast<int>(std::floor(px.y)));
    const QImage& image = desk().layer()->halves->front();
    EXPECT_TRUE(image.rect().contains(at));
    return 255.0 - qGray(image.pixel(at));
  });
  const auto& house = support::kHouseCorners;
  std::vector<Point> seen_corners;  // pixels of what is shown: scaling does not change them
  for (std::size_t i = 0; i < house.size(); ++i) {
    const std::size_t n = house.size();
    seen_corners.push_back(
        shownAt(traced.corner(house[(i + n - 1) % n], house[i], house[(i + 1) % n]), known_scale));
  }
  // The longest wall is 8.613 m.
  page().scaleButton()->click();
  const Point a = seen_corners[0];
  const Point b = seen_corners[1];
  plan().fit();
  wheel(shown(a.x, a.y), 8);
  QTest::mouseClick(&plan(), Qt::LeftButton, {}, shown(a.x, a.y));
  wheel(shown(a.x, a.y), -8);
  wheel(shown(b.x, b.y), 8);
  QTest::mouseClick(&plan(), Qt::LeftButton, {}, shown(b.x, b.y));
  wheel(shown(b.x, b.y), -8);
  type(page().length(), QStringLiteral("8.613"));
  QTest::keyClick(page().length(), Qt::Key_Return);
  EXPECT_EQ(steps(), 3);

  // Traced: each wall dragged from corner to corner. The picture's y runs down, the plan's up.
  page().traceButton()->click();
  EXPECT_TRUE(underlay().locked);
  EXPECT_EQ(window->survey().page(), stages::SurveyPage::outline);
  plan().fit();
  wheel(shown((seen_corners[0].x + seen_corners[2].x) / 2,
              (seen_corners[0].y + seen_corners[4].y) / 2),
        2);  // as large as the house fits
  const auto eye = [&](std::size_t i) {
    const Point px = seen_corners[i % house.size()];
    return shown(px.x, px.y);
  };
  for (std::size_t i = 0; i < house.size(); ++i) {
    const bool halfway = i == 2;
    drag(eye(i), eye(i + 1), !halfway);
    if (!halfway) continue;
    see("tracing");
    QTest::mouseRelease(&plan(), Qt::LeftButton, {}, eye(i + 1));
  }
  const auto& ring = session().job().plan.rings.at(0);
  ASSERT_TRUE(ring.closed) << "the last wall came back to the start";
  ASSERT_EQ(ring.corners.size(), house.size());
  see("traced");
  // Truth, laid where it fits best: the mean of corners on the mean of corners.
  const auto meanOf = [](const std::vector<Point>& corners) {
    geometry::Vec sum;
    for (const Point p : corners) sum = sum + (p - Point{});
    return Point{} + (1.0 / static_cast<double>(corners.size())) * sum;
  };
  const Point traced_mean = meanOf(ring.corners);
  const Point true_mean = meanOf(house);
  double worst = 0.0;
  for (const Point truth : house) {
    const Point there{traced_mean.x + truth.x - true_mean.x,
                      traced_mean.y - (truth.y - true_mean.y)};
    double nearest = 1e9;
    for (const Point p : ring.corners) nearest = std::min(nearest, geometry::distance(p, there));
    worst = std::max(worst, nearest);
  }
  std::printf("[ measured ] traced through the window: corners within %.1f mm\n", worst * 1000);
  EXPECT_LT(worst, 0.02);
  const double truth = std::abs(geometry::signedArea(house));
  EXPECT_NEAR(std::abs(geometry::signedArea(ring.corners)), truth, 0.01 * truth);
}

TEST_F(PictureWindow, AMissingFileIsSaidAndFound) {
  layNew(drawn(QStringLiteral("plan.png")));
  ASSERT_TRUE(QDir(folder.path()).mkpath(QStringLiteral("jobs")));
  dialogs.next_save = folder.filePath(QStringLiteral("jobs/house.sump.json"));
  trigger("file.save");
  EXPECT_EQ(underlay().path, "plan.png");
  const QString beside = folder.filePath(QStringLiteral("jobs/plan.png"));
  ASSERT_TRUE(QFile::remove(beside));
  ASSERT_TRUE(window->openPath(dialogs.next_save));
  settle();
  EXPECT_TRUE(window->told().isEmpty()) << "not fatal, and no notice over the plan";
  trigger("survey.check");
  auto* list = window->survey().check()->list();
  int row = -1;
  for (int i = 0; i < list->count(); ++i) {
    if (list->item(i)->text().contains(QStringLiteral("no picture"))) row = i;
  }
  ASSERT_GE(row, 0);
  Q_EMIT list->itemClicked(list->item(row));
  EXPECT_EQ(window->survey().page(), stages::SurveyPage::picture);
  settle();  // it is looked for again when its page is opened
  EXPECT_FALSE(page().warning()->isHidden());
  see("missing");
  auto* find = page().warning()->findChild<QPushButton*>();
  ASSERT_NE(find, nullptr);
  EXPECT_EQ(find->text(), QStringLiteral("Find it…"));
  dialogs.next_open = folder.filePath(QStringLiteral("plan.png"));
  find->click();
  settle();
  EXPECT_TRUE(desk().layer());
  EXPECT_TRUE(page().warning()->isHidden());
  EXPECT_TRUE(QFile::exists(beside));
  EXPECT_FALSE(session().isModified()) << "it is where the job says again";
}

TEST_F(PictureWindow, GoesAlongWhenTheJobIsSavedElsewhere) {
  layNew(drawn(QStringLiteral("plan.png")));
  for (const char* place : {"one", "two"}) {
    ASSERT_TRUE(QDir(folder.path()).mkpath(QLatin1String(place)));
    dialogs.next_save = folder.filePath(QStringLiteral("%1/h.sump.json").arg(QLatin1String(place)));
    trigger("file.save_as");
    EXPECT_EQ(underlay().path, "plan.png");
    EXPECT_TRUE(
        QFile::exists(folder.filePath(QStringLiteral("%1/plan.png").arg(QLatin1String(place)))));
    EXPECT_FALSE(session().isModified());
    EXPECT_TRUE(desk().layer());
  }
  ASSERT_TRUE(window->openPath(dialogs.next_save));
  settle();
  EXPECT_TRUE(desk().layer());
}

TEST_F(PictureWindow, IsThereAfterACrash) {
  QDir(QString::fromStdString(files::keptFolder())).removeRecursively();
  const QString file = drawn(QStringLiteral("plan.png"));
  {
    session::Session other;
    other.newJob();
    session::PictureDesk picture(other);
    picture.choose(file);
    ASSERT_TRUE(QTest::qWaitFor([&] { return !picture.isReading(); }));
    ASSERT_TRUE(picture.layer());
    other.waitUntilKept();
  }  // goes without having been told that its work may be lost
  const auto left = session::leftOvers();
  ASSERT_EQ(left.size(), 1U);
  window->openKept(left.front());
  settle();
  ASSERT_TRUE(desk().layer());
  EXPECT_EQ(underlay().path, file.toStdString());
}

TEST_F(PictureWindow, APageOfAPdfIsChosenOnThePage) {
  const QString file = folder.filePath(QStringLiteral("sheets.pdf"));
  {
    QPdfWriter writer(file);
    QPainter painter(&writer);
    painter.drawRect(500, 500, 4000, 3000);
    writer.newPage();
    painter.drawEllipse(500, 500, 4000, 3000);
  }
  layNew(file);
  EXPECT_TRUE(page().pageNumber()->isVisible());
  page().pageNumber()->setValue(2);
  settle();
  EXPECT_EQ(underlay().page, 1);
  EXPECT_TRUE(desk().layer());
  EXPECT_EQ(steps(), 2);
}

TEST_F(PictureWindow, FadeIsOneStepForOneDrag) {
  layNew(drawn(QStringLiteral("plan.png")));
  page().fade()->setSliderDown(true);
  for (const int percent : {40, 50, 60}) page().fade()->setValue(percent);
  page().fade()->setSliderDown(false);
  EXPECT_EQ(steps(), 2);
  EXPECT_NEAR(underlay().fade, 0.6, 1e-9);
  page().turn()->setValue(12.5);
  EXPECT_EQ(underlay().turn_deg, 12.5);
  page().removeButton()->click();
  EXPECT_EQ(desk().underlay(), nullptr);
  EXPECT_TRUE(page().chooseButton()->isVisible());
  session().undoStack().undo();
  EXPECT_EQ(underlay().turn_deg, 12.5);
}

TEST_F(PictureWindow, DroppedOntoTheWindowIsLaid) {
  const QString file = drawn(QStringLiteral("plan.png"));
  QMimeData mime;
  mime.setUrls({QUrl::fromLocalFile(file)});
  QDragEnterEvent enter(QPoint(300, 300), Qt::CopyAction, &mime, Qt::LeftButton, Qt::NoModifier);
  QApplication::sendEvent(window.get(), &enter);
  ASSERT_TRUE(enter.isAccepted());
  QDropEvent drop(QPointF(300, 300), Qt::CopyAction, &mime, Qt::LeftButton, Qt::NoModifier);
  QApplication::sendEvent(window.get(), &drop);
  settle();
  ASSERT_TRUE(desk().layer());
  EXPECT_TRUE(session().path().isEmpty()) << "a new job was begun for it";
}

/// A picture as large as any that is taken, under a house whose wall is dragged.
TEST_F(PictureWindow, ALargePictureCostsAFrameLittle) {
  open(QStringLiteral("bungalow"));
  activate();
  dialogs.next_open = drawn(QStringLiteral("large.png"), {6000, 4000});
  trigger("survey.picture");
  settle();
  ASSERT_TRUE(desk().layer());
  plan().grab();
  const auto paintedAgain = [&] {
    double best = 1e9;
    for (int i = 0; i < 5; ++i) {
      session().select(session().job().plan.rings[0].walls[static_cast<std::size_t>(i % 2)].id);
      plan().grab();
      best = std::min(best, plan().basePaint_ms());
    }
    return best;
  };
  const double with = paintedAgain();
  desk().setShown(false);
  const double without = paintedAgain();
  desk().setShown(true);
  double zoomed = 1e9;
  for (int i = 0; i < 3; ++i) {
    window->action("view.zoom_in")->trigger();
    plan().grab();
    zoomed = std::min(zoomed, plan().basePaint_ms());
  }
  std::printf("[ measured ] a frame: %.1f ms with, %.1f ms without the picture; %.1f ms zoomed\n",
              with, without, zoomed);
  EXPECT_LT(with, without + 16.0);
}

}  // namespace
}  // namespace sumpwright::gui
