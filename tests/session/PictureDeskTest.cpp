// The picture under the plan without a window: read, laid, saved with the job, scaled,
// straightened.

#include <gtest/gtest.h>

#include <QElapsedTimer>
#include <QFile>
#include <QGuiApplication>
#include <QPainter>
#include <QPdfWriter>
#include <QTemporaryDir>
#include <cmath>
#include <functional>

#include "files/Underlay.h"
#include "session/PictureDesk.h"

namespace sumpwright::session {
namespace {

using geometry::Point;

/// Runs the event loop until it is so; false after ten seconds.
bool until(const std::function<bool()>& so) {
  QElapsedTimer timer;
  timer.start();
  while (!so()) {
    if (timer.elapsed() > 10'000) return false;
    QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents | QEventLoop::AllEvents, 20);
  }
  return true;
}

class Picture : public testing::Test {
 protected:
  Picture() : desk(session) { session.newJob(); }

  QString inFolder(const QString& name) { return folder.filePath(name); }
  /// A sheet with a frame.
  QString photo(const QString& name, QSize size = {400, 300}) {
    QImage image(size, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.setPen(QPen(Qt::black, 3));
    painter.drawRect(image.rect().adjusted(50, 50, -50, -50));
    painter.end();
    EXPECT_TRUE(image.save(inFolder(name)));
    return inFolder(name);
  }
  bool settled() {
    return until([&] { return !desk.isReading(); });
  }
  void lay(const QString& file) {
    desk.choose(file);
    ASSERT_TRUE(settled());
    ASSERT_TRUE(desk.layer()) << (desk.problems().empty() ? "no reason"
                                                          : desk.problems().front().message.id);
  }
  const plan::Underlay& underlay() { return *desk.underlay(); }
  int steps() { return session.undoStack().index(); }
  /// Where a pixel of what is shown lies on the plan.
  Point shownAt(Point px) { return files::planPoint(desk.layer()->placed, px); }

  QTemporaryDir folder;
  Session session;
  PictureDesk desk;
};

TEST_F(Picture, IsLaidAsOneStepAndFollowsUndo) {
  lay(photo(QStringLiteral("plan.png")));
  EXPECT_EQ(steps(), 1);
  EXPECT_FALSE(underlay().locked);
  EXPECT_NEAR(underlay().m_per_px * 400, 14.0, 1e-9);
  session.undoStack().undo();
  EXPECT_EQ(desk.underlay(), nullptr);
  EXPECT_FALSE(desk.layer());
  session.undoStack().redo();
  ASSERT_TRUE(settled());
  EXPECT_TRUE(desk.layer());
}

TEST_F(Picture, OfASavedJobIsCopiedBesideIt) {
  ASSERT_TRUE(QDir(folder.path()).mkpath(QStringLiteral("jobs")));
  const QString job = inFolder(QStringLiteral("jobs/house.sump.json"));
  ASSERT_TRUE(session.saveAs(job).empty());
  lay(photo(QStringLiteral("plan.png")));
  EXPECT_EQ(underlay().path, "plan.png");
  EXPECT_TRUE(QFile::exists(inFolder(QStringLiteral("jobs/plan.png"))));
  EXPECT_FALSE(desk.note().isEmpty());
  ASSERT_TRUE(session.save().empty());
  ASSERT_TRUE(session.open(job).empty());
  ASSERT_TRUE(settled());
  EXPECT_TRUE(desk.layer());
  EXPECT_TRUE(desk.problems().empty());
}

TEST_F(Picture, OfAJobNeverSavedComesBesideItWhenItIs) {
  const QString file = photo(QStringLiteral("plan.png"));
  lay(file);
  EXPECT_EQ(underlay().path, file.toStdString());
  EXPECT_FALSE(desk.note().isEmpty());
  for (const char* place : {"one", "two"}) {
    ASSERT_TRUE(QDir(folder.path()).mkpath(QLatin1String(place)));
  }
  const int revision = desk.layer()->revision;
  for (const char* name : {"one/a.sump.json", "two/b.sump.json"}) {
    const QString job = inFolder(QLatin1String(name));
    EXPECT_TRUE(desk.beginSaving(job).empty());
    const base::Problems problems = session.saveAs(job);
    desk.endSaving(problems.empty());
    EXPECT_EQ(underlay().path, "plan.png");
    EXPECT_FALSE(session.isModified());
    ASSERT_TRUE(desk.layer());
    EXPECT_EQ(desk.layer()->revision, revision) << "the same pixels are not read again";
    EXPECT_FALSE(desk.isReading());
  }
  EXPECT_TRUE(QFile::exists(inFolder(QStringLiteral("two/plan.png"))));
}

TEST_F(Picture, KeepsItsPathWhereTheJobCouldNotBeSaved) {
  const QString file = photo(QStringLiteral("plan.png"));
  lay(file);
  const QString job = inFolder(QStringLiteral("no-such-folder/a.sump.json"));
  const base::Problems left = desk.beginSaving(job);
  const base::Problems problems = session.saveAs(job);
  desk.endSaving(problems.empty());
  EXPECT_FALSE(problems.empty());
  EXPECT_FALSE(left.empty());
  EXPECT_EQ(underlay().path, file.toStdString());
  EXPECT_TRUE(desk.layer());
}

TEST_F(Picture, ThatIsMissingIsSaidAndFound) {
  const QString job = inFolder(QStringLiteral("house.sump.json"));
  ASSERT_TRUE(session.saveAs(job).empty());
  lay(photo(QStringLiteral("plan.png")));
  ASSERT_TRUE(session.save().empty());
  ASSERT_TRUE(QDir(folder.path()).mkpath(QStringLiteral("moved")));
  ASSERT_TRUE(QFile::rename(inFolder(QStringLiteral("plan.png")),
                            inFolder(QStringLiteral("moved/plan.png"))));
  ASSERT_TRUE(session.open(job).empty());
  ASSERT_TRUE(settled());
  EXPECT_FALSE(desk.layer());
  ASSERT_EQ(desk.problems().size(), 1U);
  EXPECT_EQ(desk.problems()[0].message.id, "underlay.not-found");
  EXPECT_EQ(desk.problems()[0].gravity, base::Gravity::missing);
  const plan::Underlay before = underlay();
  desk.find(inFolder(QStringLiteral("moved/plan.png")));
  ASSERT_TRUE(settled());
  ASSERT_TRUE(desk.layer());
  EXPECT_TRUE(desk.problems().empty());
  EXPECT_EQ(underlay().path, "moved/plan.png");
  EXPECT_EQ(underlay().at_m, before.at_m);
  EXPECT_EQ(steps(), 1);
}

TEST_F(Picture, ThatCannotBeReadLeavesTheOneThatIsThere) {
  lay(photo(QStringLiteral("plan.png")));
  QFile other(inFolder(QStringLiteral("words.png")));
  ASSERT_TRUE(other.open(QIODevice::WriteOnly));
  other.write("no picture");
  other.close();
  desk.choose(other.fileName());
  ASSERT_TRUE(settled());
  ASSERT_FALSE(desk.problems().empty());
  EXPECT_EQ(desk.problems()[0].message.id, "underlay.kind");
  EXPECT_TRUE(desk.layer());
  EXPECT_EQ(steps(), 1);
}

TEST_F(Picture, ReadingCanBeGivenUp) {
  desk.choose(photo(QStringLiteral("large.png"), {4000, 3000}));
  ASSERT_TRUE(desk.isReading());
  desk.giveUpReading();
  EXPECT_FALSE(desk.isReading());
  QElapsedTimer timer;
  timer.start();
  until([&] { return timer.elapsed() > 600; });
  EXPECT_EQ(desk.underlay(), nullptr);
  EXPECT_EQ(steps(), 0);
}

/// Photos of phones have this many pixels; the window must not stand still, nor must the memory of
/// all of them be taken.
TEST_F(Picture, OfFortyEightMegapixelsIsReadBesideTheWindow) {
  const QString file = photo(QStringLiteral("phone.jpg"), {8000, 6000});
  QElapsedTimer timer;
  timer.start();
  desk.choose(file);
  EXPECT_LT(timer.elapsed(), 100);
  qint64 longest = 0;
  ASSERT_TRUE(until([&] {
    longest = std::max(longest, timer.restart());
    return !desk.isReading();
  }));
  std::printf("[ measured ] longest wait of the window while reading: %lld ms\n",
              static_cast<long long>(longest));
  EXPECT_LT(longest, 200);
  ASSERT_NE(desk.picture(), nullptr);
  EXPECT_EQ(desk.picture()->reduced, 2);
  EXPECT_EQ(desk.picture()->photo, QSize(4000, 3000));
  qint64 bytes = 0;
  for (const QImage& half : desk.picture()->halves) bytes += half.sizeInBytes();
  EXPECT_LT(bytes, 100'000'000);
}

TEST_F(Picture, APageOfAPdfIsChosen) {
  const QString file = inFolder(QStringLiteral("sheets.pdf"));
  {
    QPdfWriter writer(file);
    writer.setPageSize(QPageSize(QPageSize::A4));
    QPainter painter(&writer);
    painter.drawText(100, 100, QStringLiteral("one"));
    writer.setPageSize(QPageSize(QPageSize::A3));
    writer.newPage();
    painter.drawText(100, 100, QStringLiteral("two"));
  }
  lay(file);
  EXPECT_EQ(desk.picture()->pages, 2);
  // A4 is 210 mm wide (ISO 216); drawn 1:100 that is 21 m.
  EXPECT_NEAR(underlay().m_per_px * desk.picture()->photo.width(), 21.0, 0.1);
  const QSize first = desk.picture()->photo;
  desk.showPage(1);
  ASSERT_TRUE(settled());
  ASSERT_TRUE(desk.layer());
  EXPECT_EQ(underlay().page, 1);
  EXPECT_GT(desk.picture()->photo.width(), first.width());
  EXPECT_EQ(steps(), 2);
  desk.showPage(7);
  ASSERT_TRUE(settled());
  EXPECT_EQ(desk.problems().at(0).message.id, "underlay.page");
}

TEST_F(Picture, IsScaledByTwoPointsAndALength) {
  lay(photo(QStringLiteral("plan.png")));
  desk.setAtWork(true);
  desk.begin(PictureDesk::Tool::scale);
  EXPECT_FALSE(desk.applyScale(3.45, PictureDesk::Lie::as_it_is)) << "no line yet";
  const Point a = shownAt({50, 250});
  const Point b = shownAt({350, 50});
  desk.points().press(a, 0.1);
  desk.points().drag(b);
  desk.points().release(0.1);
  ASSERT_TRUE(desk.applyScale(3.45, PictureDesk::Lie::as_it_is));
  EXPECT_EQ(desk.tool(), PictureDesk::Tool::move);
  EXPECT_NEAR(geometry::distance(shownAt({50, 250}), shownAt({350, 50})), 3.45, 1e-9);
  EXPECT_NEAR(geometry::distance(shownAt({50, 250}), a), 0.0, 1e-9);
  EXPECT_EQ(steps(), 2);

  desk.begin(PictureDesk::Tool::scale);
  desk.points().press(shownAt({350, 50}), 0.01);
  desk.points().drag(shownAt({50, 250}));
  desk.points().release(0.01);
  ASSERT_TRUE(desk.applyScale(5.0, PictureDesk::Lie::level));
  EXPECT_NEAR(shownAt({50, 250}).y, shownAt({350, 50}).y, 1e-9);
  EXPECT_NEAR(shownAt({350, 50}).x - shownAt({50, 250}).x, 5.0, 1e-9) << "the nearer way round";
}

TEST_F(Picture, IsStraightenedAgainAndTakenAsItIs) {
  lay(photo(QStringLiteral("plan.png")));
  desk.setAtWork(true);
  desk.begin(PictureDesk::Tool::straighten);
  ASSERT_TRUE(desk.showsCorners());
  const geometry::Quad quad{{{60, 40}, {340, 60}, {390, 280}, {20, 260}}};
  desk.corners().put(quad);
  EXPECT_FALSE(desk.mayStraighten()) << "no sides yet";
  desk.setSides(7.0, 5.0);
  ASSERT_TRUE(desk.mayStraighten());
  const Point kept = shownAt(quad[0]);
  desk.setSampling(true);
  EXPECT_TRUE(desk.isSampling());
  EXPECT_FALSE(desk.showsCorners());
  EXPECT_EQ(steps(), 1) << "a sample is no edit";
  ASSERT_TRUE(desk.applyStraighten());
  ASSERT_TRUE(settled());
  EXPECT_EQ(steps(), 2);
  const auto frame = files::straightFrame(QSize(400, 300), {quad, 7.0, 5.0});
  ASSERT_TRUE(frame.ok());
  EXPECT_NEAR(geometry::distance(shownAt(frame->first_corner_px), kept), 0.0, 1e-9);
  EXPECT_EQ(desk.layer()->halves->front().size(), frame->size);

  // Scaled, the rectangle goes along, and the pixels are the same.
  const int revision = desk.layer()->revision;
  desk.begin(PictureDesk::Tool::scale);
  desk.points().press(shownAt({0, 0}), 0.01);
  desk.points().drag(shownAt({100, 0}));
  desk.points().release(0.001);
  const double was = desk.layer()->placed.m_per_px;
  ASSERT_TRUE(desk.applyScale(200 * was, PictureDesk::Lie::as_it_is));
  EXPECT_FALSE(desk.isReading());
  EXPECT_EQ(desk.layer()->revision, revision);
  EXPECT_NEAR(desk.layer()->placed.m_per_px, 2 * was, 1e-9);

  // The corners can be dragged again.
  desk.begin(PictureDesk::Tool::straighten);
  ASSERT_TRUE(settled());
  ASSERT_TRUE(desk.showsCorners());
  EXPECT_EQ(desk.corners().corners(), quad);
  EXPECT_NEAR(desk.width_m(), 14.0, 1e-6);
  EXPECT_NEAR(geometry::distance(shownAt(quad[0]), shownAt(quad[1])), 14.0, 1e-6);
  desk.giveUp();
  ASSERT_TRUE(settled());
  EXPECT_TRUE(underlay().straighten);
  EXPECT_EQ(desk.layer()->halves->front().size(), frame->size);

  desk.begin(PictureDesk::Tool::straighten);
  ASSERT_TRUE(settled());
  desk.applyUnstraighten();
  ASSERT_TRUE(settled());
  EXPECT_FALSE(underlay().straighten);
  EXPECT_EQ(desk.layer()->halves->front().size(), QSize(400, 300));
}

TEST_F(Picture, AMoveIsOneStepOrNone) {
  lay(photo(QStringLiteral("plan.png")));
  desk.setAtWork(true);
  const Point before = underlay().at_m;
  desk.beginMove({0, 0});
  desk.moveTo({1, 1});
  desk.moveTo({2.5, -1.5});
  EXPECT_EQ(steps(), 1);
  desk.finishMove();
  EXPECT_EQ(steps(), 2);
  EXPECT_NEAR(underlay().at_m.x, before.x + 2.5, 1e-12);
  desk.beginMove({0, 0});
  desk.moveTo({9, 9});
  desk.cancelMove();
  EXPECT_EQ(steps(), 2);
  EXPECT_NEAR(underlay().at_m.y, before.y - 1.5, 1e-12);
  desk.setLocked(true);
  desk.beginMove({0, 0});
  EXPECT_FALSE(desk.isMoving()) << "locked";
  desk.beginMove({0, 0});
  desk.moveTo({1, 1});
  session.undoStack().undo();
  session.undoStack().undo();
  EXPECT_EQ(underlay().at_m, before);
}

TEST_F(Picture, TurnsAboutItsMiddleAndFadesInOneStep) {
  lay(photo(QStringLiteral("plan.png")));
  const Point middle = shownAt({200, 150});
  desk.turnTo(30);
  EXPECT_NEAR(geometry::distance(shownAt({200, 150}), middle), 0, 1e-9);
  EXPECT_EQ(underlay().turn_deg, 30);
  const int gesture = session.newGesture();
  for (const double fade : {0.5, 0.6, 0.7}) desk.setFade(fade, gesture);
  EXPECT_EQ(steps(), 3);
  EXPECT_EQ(underlay().fade, 0.7);
  desk.remove();
  EXPECT_EQ(desk.underlay(), nullptr);
  session.undoStack().undo();
  EXPECT_EQ(underlay().turn_deg, 30);
}

TEST_F(Picture, GoesWithTheJobThatIsClosed) {
  lay(photo(QStringLiteral("plan.png")));
  session.close();
  EXPECT_FALSE(desk.layer());
  EXPECT_EQ(desk.underlay(), nullptr);
  session.newJob();
  desk.choose(photo(QStringLiteral("large.png"), {3000, 2000}));
  session.newJob();  // while it is read
  EXPECT_FALSE(desk.isReading());
  EXPECT_EQ(desk.underlay(), nullptr);
}

}  // namespace
}  // namespace sumpwright::session
