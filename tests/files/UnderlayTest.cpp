// Pictures to trace: read, put beside the job, made upright. All pictures are made here.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QBuffer>
#include <QDir>
#include <QFile>
#include <QPainter>
#include <QPdfWriter>
#include <QProcess>
#include <QTemporaryDir>

#include "files/Underlay.h"
#include "files/UnderlayBeside.h"
#include "files/UnderlayPicture.h"
#include "files/UnderlayStraighten.h"

namespace sumpwright::files {
namespace {

using geometry::Point;

class Underlays : public ::testing::Test {
 protected:
  std::string path(const std::string& name) const {
    return m_folder.filePath(QString::fromStdString(name)).toStdString();
  }
  std::string put(const std::string& name, const QByteArray& bytes) const {
    QDir().mkpath(QFileInfo(QString::fromStdString(path(name))).path());
    QFile file(QString::fromStdString(path(name)));
    EXPECT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(bytes);
    return path(name);
  }
  static QByteArray bytesOf(const std::string& file) {
    QFile in(QString::fromStdString(file));
    EXPECT_TRUE(in.open(QIODevice::ReadOnly)) << file;
    return in.readAll();
  }
  QStringList names(const std::string& folder) const {
    return QDir(QString::fromStdString(path(folder)))
        .entryList(QDir::Files | QDir::Hidden, QDir::Name);
  }

 private:
  QTemporaryDir m_folder;
};

QByteArray encoded(const QImage& image, const char* format) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  EXPECT_TRUE(image.save(&buffer, format, 95));
  return bytes;
}

/// Red with a blue top-left quarter.
QImage flag(int width, int height) {
  QImage image(width, height, QImage::Format_RGB32);
  image.fill(Qt::red);
  QPainter(&image).fillRect(0, 0, width / 2, height / 2, Qt::blue);
  return image;
}

bool isBlue(QRgb c) { return qBlue(c) > 200 && qRed(c) < 60; }
bool isRed(QRgb c) { return qRed(c) > 200 && qBlue(c) < 60; }

/// A JPEG with an EXIF mark how to turn it (Exif 2.3, section 4.6.4 A, tag 0x0112; from memory).
QByteArray turnedJpeg(const QImage& image, char orientation) {
  const char app1[] = {'\xFF', '\xE1', 0, 34, 'E', 'x',         'i', 'f', 0, 0,  'M', 'M',
                       0,      42,     0, 0,  0,   8,           0,   1,   1, 18, 0,   3,
                       0,      0,      0, 1,  0,   orientation, 0,   0,   0, 0,  0,   0};
  QByteArray bytes = encoded(image, "jpg");
  return bytes.insert(2, QByteArray(app1, sizeof app1));
}

/// Two A4 pages, the second with a black square of 100 mm at 20 mm from the top and left.
QByteArray pdfOfTwoPages() {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QPdfWriter writer(&buffer);
  writer.setPageSize(QPageSize(QPageSize::A4));
  writer.setPageMargins(QMarginsF(0, 0, 0, 0));
  writer.setResolution(254);  // ten to the millimetre
  QPainter painter(&writer);
  writer.newPage();
  painter.fillRect(200, 200, 1000, 1000, Qt::black);
  painter.end();
  return bytes;
}

std::string loadProblem(const std::string& file, int page = 0) {
  const auto picture = loadPicture(file, page);
  return picture.ok() ? "" : picture.problems()[0].message.id;
}

TEST_F(Underlays, PngAndJpegWhateverTheirNames) {
  for (const char* format : {"png", "jpg"}) {
    const auto picture = loadPicture(put("a.dat", encoded(flag(40, 30), format)), 0);
    ASSERT_TRUE(picture.ok()) << format;
    EXPECT_EQ(picture->image.size(), QSize(40, 30));
    EXPECT_TRUE(isBlue(picture->image.pixel(5, 5)));
    EXPECT_TRUE(isRed(picture->image.pixel(35, 5)));
    EXPECT_EQ(picture->reduced, 1);
    EXPECT_FALSE(picture->sheet_m_per_px);
  }
}

TEST_F(Underlays, APhotoStandsAsItsMarkSays) {
  // 6: the first row is the right side. What was top-left comes to the top right.
  const auto picture = loadPicture(put("a.jpg", turnedJpeg(flag(64, 32), 6)), 0);
  ASSERT_TRUE(picture.ok());
  EXPECT_EQ(picture->image.size(), QSize(32, 64));
  EXPECT_TRUE(isBlue(picture->image.pixel(28, 5)));
  EXPECT_TRUE(isRed(picture->image.pixel(3, 5)));
}

TEST_F(Underlays, ALargePhotoIsReduced) {
  const auto picture = loadPicture(put("a.png", encoded(flag(6000, 5000), "png")), 0);
  ASSERT_TRUE(picture.ok());
  EXPECT_EQ(picture->reduced, 2);
  EXPECT_EQ(picture->image.size(), QSize(3000, 2500));
  EXPECT_TRUE(isBlue(picture->image.pixel(1490, 1240)));
  EXPECT_TRUE(isRed(picture->image.pixel(1510, 1260)));
}

TEST_F(Underlays, ATooLargePhotoIsRefused) {
  QImage image(8001, 8001, QImage::Format_Mono);
  image.fill(0);
  EXPECT_EQ(loadProblem(put("a.png", encoded(image, "png"))), "underlay.too-large");
  QImage strip(30001, 1, QImage::Format_Mono);
  strip.fill(0);
  EXPECT_EQ(loadProblem(put("b.png", encoded(strip, "png"))), "underlay.too-large");
}

TEST_F(Underlays, AnSvgIsDrawnAtTheDensityOfSheets) {
  const auto picture = loadPicture(
      put("a.svg",
          R"(<?xml version="1.0"?><!-- invented --><svg xmlns="http://www.w3.org/2000/svg" )"
          R"(width="192" height="96"><rect x="96" width="96" height="96"/></svg>)"),
      0);
  ASSERT_TRUE(picture.ok());
  EXPECT_EQ(picture->image.size(), QSize(400, 200));
  EXPECT_EQ(picture->image.pixel(100, 100), qRgb(255, 255, 255));
  EXPECT_EQ(picture->image.pixel(300, 100), qRgb(0, 0, 0));
  ASSERT_TRUE(picture->sheet_m_per_px);
  EXPECT_DOUBLE_EQ(*picture->sheet_m_per_px, 0.0254 / 200);
}

TEST_F(Underlays, AHugeSvgIsDrawnCoarser) {
  const auto picture = loadPicture(
      put("a.svg", R"(<svg xmlns="http://www.w3.org/2000/svg" width="96000" height="96000"/>)"), 0);
  ASSERT_TRUE(picture.ok());
  EXPECT_LE(1.0 * picture->image.width() * picture->image.height(), kMostPixels);
  EXPECT_NEAR(*picture->sheet_m_per_px * picture->image.width(), 25.4, 0.01);
}

TEST_F(Underlays, APageOfAPdf) {
  const std::string file = put("a.pdf", pdfOfTwoPages());
  const auto picture = loadPicture(file, 1);
  ASSERT_TRUE(picture.ok());
  EXPECT_EQ(picture->pages, 2);
  EXPECT_NEAR(picture->image.width(), 210 / 25.4 * 200, 2);
  EXPECT_NEAR(picture->image.height(), 297 / 25.4 * 200, 2);
  // The square's edges, to a pixel.
  const auto px = [&](double mm) { return static_cast<int>(mm / 1000 / *picture->sheet_m_per_px); };
  EXPECT_EQ(picture->image.pixel(px(20) + 2, px(20) + 2), qRgb(0, 0, 0));
  EXPECT_EQ(picture->image.pixel(px(20) - 2, px(60)), qRgb(255, 255, 255));
  EXPECT_EQ(picture->image.pixel(px(120) - 2, px(120) - 2), qRgb(0, 0, 0));
  EXPECT_EQ(picture->image.pixel(px(120) + 2, px(60)), qRgb(255, 255, 255));
  EXPECT_EQ(loadPicture(file, 0)->image.pixel(px(60), px(60)), qRgb(255, 255, 255));
  EXPECT_EQ(loadProblem(file, 2), "underlay.page");
  EXPECT_EQ(loadProblem(file, -1), "underlay.page");
}

TEST_F(Underlays, ALockedPdf) {
  const std::string open = put("a.pdf", pdfOfTwoPages());
  const int code =
      QProcess::execute(QStringLiteral("qpdf"),
                        {QStringLiteral("--encrypt"), QStringLiteral("secret"),
                         QStringLiteral("owner"), QStringLiteral("256"), QStringLiteral("--"),
                         QString::fromStdString(open), QString::fromStdString(path("b.pdf"))});
  if (code == -2) GTEST_SKIP() << "qpdf is not installed";
  ASSERT_EQ(code, 0);
  EXPECT_EQ(loadProblem(path("b.pdf")), "underlay.locked");
}

TEST_F(Underlays, WhatCannotBeRead) {
  EXPECT_EQ(loadProblem(path("absent.png")), "underlay.not-found");
  EXPECT_EQ(loadProblem(path("")), "file.folder");
  EXPECT_EQ(loadProblem(put("a.png", "")), "underlay.kind");
  EXPECT_EQ(loadProblem(put("a.txt", "hello")), "underlay.kind");
  EXPECT_EQ(loadProblem(put("a.pdf", "%PDF-1.7\nhello")), "underlay.broken");
  EXPECT_EQ(loadProblem(put("a.svg", "<svg xmlns='http://www.w3.org/2000/svg'><g>")),
            "underlay.broken");
  const QByteArray png = encoded(flag(400, 300), "png");
  EXPECT_EQ(loadProblem(put("a.png", png.left(png.size() / 2))), "underlay.broken");
  EXPECT_EQ(loadProblem(put("a.png", png), 1), "underlay.page");
}

TEST_F(Underlays, APictureIsPutBesideTheJob) {
  const std::string picture = put("phone/Plan of house.png", "first");
  const std::string job = path("jobs/a.sump.json");
  put("jobs/a.sump.json", "{}");
  const auto taken = takeBeside(picture, job);
  ASSERT_TRUE(taken.ok());
  EXPECT_EQ(*taken, "Plan of house.png");
  EXPECT_EQ(bytesOf(besideJob(*taken, job)), "first");
  EXPECT_EQ(bytesOf(picture), "first");
  EXPECT_EQ(QFileInfo(QString::fromStdString(besideJob(*taken, job))).permissions() &
                QFileDevice::ReadGroup,
            QFileDevice::ReadGroup);
}

TEST_F(Underlays, ATakenNameIsNeverWrittenOver) {
  const std::string job = path("jobs/a.sump.json");
  put("jobs/plan.png", "older");
  put("jobs/plan-2.png", "old");
  const auto taken = takeBeside(put("phone/plan.png", "new"), job);
  ASSERT_TRUE(taken.ok());
  EXPECT_EQ(*taken, "plan-3.png");
  EXPECT_EQ(bytesOf(path("jobs/plan.png")), "older");
  EXPECT_EQ(bytesOf(path("jobs/plan-2.png")), "old");
  EXPECT_EQ(bytesOf(path("jobs/plan-3.png")), "new");
  // The same picture again: it is there already.
  EXPECT_EQ(*takeBeside(path("phone/plan.png"), job), "plan-3.png");
  EXPECT_EQ(names("jobs").join(u' ').toStdString(), "plan-2.png plan-3.png plan.png");
}

TEST_F(Underlays, APictureBelowTheJobStaysWhereItIs) {
  const std::string picture = put("jobs/photos/plan.png", "x");
  EXPECT_EQ(*takeBeside(picture, path("jobs/a.sump.json")), "photos/plan.png");
  EXPECT_EQ(names("jobs").size(), 0);
  // Not below, though the name begins alike.
  EXPECT_EQ(*takeBeside(put("jobs..old/plan.png", "y"), path("jobs/a.sump.json")), "plan.png");
}

TEST_F(Underlays, WhatCannotBePutBeside) {
  const auto absent = takeBeside(path("absent.png"), path("a.sump.json"));
  ASSERT_FALSE(absent.ok());
  EXPECT_EQ(absent.problems()[0].message.id, "file.not-found");
  const auto nowhere = takeBeside(put("a.png", "x"), path("no-folder/a.sump.json"));
  ASSERT_FALSE(nowhere.ok());
  EXPECT_EQ(nowhere.problems()[0].message.id, "file.not-writable");
}

TEST(UnderlayPaths, AreFoundFromTheJob) {
  EXPECT_EQ(besideJob("plan.png", "/jobs/a.sump.json"), "/jobs/plan.png");
  EXPECT_EQ(besideJob("photos/../plan.png", "/jobs/a.sump.json"), "/jobs/plan.png");
  EXPECT_EQ(besideJob("/pictures/plan.png", "/jobs/a.sump.json"), "/pictures/plan.png");
  EXPECT_EQ(besideJob("plan.png", ""), "plan.png");
}

KnownRectangle uprightRectangle() { return {{{{10, 10}, {50, 10}, {50, 30}, {10, 30}}}, 4.0, 2.0}; }

TEST(Straighten, AnUprightPictureStaysAsItIs) {
  const QImage photo = flag(80, 60);
  const auto straight = straightened(photo, uprightRectangle());
  ASSERT_TRUE(straight.ok());
  EXPECT_NEAR(straight->frame.m_per_px, 0.1, 1e-12);
  EXPECT_NEAR(straight->frame.first_corner_px.x, 10, 1e-9);
  EXPECT_NEAR(straight->frame.first_corner_px.y, 10, 1e-9);
  EXPECT_EQ(straight->image.size(), photo.size());
  for (int y = 0; y < straight->image.height(); ++y) {
    for (int x = 0; x < straight->image.width(); ++x) {
      ASSERT_EQ(straight->image.pixel(x, y), photo.pixel(x, y)) << x << ' ' << y;
    }
  }
}

TEST(Straighten, TheDensityCanBeChosen) {
  const auto straight = straightened(flag(80, 60), uprightRectangle(), 25);
  ASSERT_TRUE(straight.ok());
  EXPECT_NEAR(straight->frame.m_per_px, 0.04, 1e-12);
  EXPECT_NEAR(straight->image.width(), 200, 1);
}

TEST(Straighten, ATurnedPhotoIsTurnedBack) {
  // The plan's top-left is at the photo's bottom left: a quarter turn.
  const auto straight =
      straightened(flag(80, 60), {{{{0, 60}, {0, 0}, {80, 0}, {80, 60}}}, 6.0, 8.0});
  ASSERT_TRUE(straight.ok());
  EXPECT_NEAR(straight->image.width(), 60, 1);
  EXPECT_NEAR(straight->image.height(), 80, 1);
  EXPECT_TRUE(isBlue(straight->image.pixel(45, 20)));  // the photo's top-left is now top right
  EXPECT_TRUE(isRed(straight->image.pixel(15, 20)));
}

TEST(Straighten, TowardsTheHorizonThePictureEnds) {
  // So steep that the horizon is in the photo.
  const auto straight =
      straightened(flag(400, 400), {{{{180, 200}, {220, 200}, {300, 390}, {100, 390}}}, 3.0, 4.0});
  ASSERT_TRUE(straight.ok());
  EXPECT_LE(1.0 * straight->image.width() * straight->image.height(), kMostPixels);
  EXPECT_LE(straight->image.height() * straight->frame.m_per_px, 4 + 2 * 4 * 4.0 + 1e-9);
  // Where the photo shows nothing there is nothing.
  EXPECT_EQ(qAlpha(straight->image.pixel(0, straight->image.height() - 1)), 0);
}

TEST(Straighten, WhatMakesNoRectangle) {
  const QImage photo = flag(80, 60);
  const auto problem = [&](const KnownRectangle& rectangle, double density = 0) {
    const auto straight = straightened(photo, rectangle, density);
    return straight.ok() ? "" : straight.problems()[0].message.id;
  };
  const std::string refused = "underlay.corners";
  KnownRectangle folded = uprightRectangle();
  std::swap(folded.corners_px[0], folded.corners_px[1]);
  EXPECT_EQ(problem(folded), refused);
  KnownRectangle flat = uprightRectangle();
  flat.corners_px[1] = {30, 20};
  EXPECT_EQ(problem(flat), refused);
  for (const double side : {0.0, -1.0, 1e9, std::nan("")}) {
    KnownRectangle sized = uprightRectangle();
    sized.width_m = side;
    EXPECT_EQ(problem(sized), refused) << side;
  }
  KnownRectangle away = uprightRectangle();
  for (Point& p : away.corners_px) p.x += 1000;
  EXPECT_EQ(problem(away), refused);
  EXPECT_EQ(problem(uprightRectangle(), -1), refused);
  EXPECT_EQ(problem(uprightRectangle(), std::nan("")), refused);
  EXPECT_FALSE(straightened(QImage(), uprightRectangle()).ok());
}

plan::Underlay turnedUnderlay() {
  plan::Underlay underlay;
  underlay.path = "plan.png";
  underlay.at_m = {3, 4};
  underlay.m_per_px = 0.5;
  underlay.turn_deg = 90;
  return underlay;
}

void expectPoint(Point p, Point expected) {
  EXPECT_NEAR(p.x, expected.x, 1e-9);
  EXPECT_NEAR(p.y, expected.y, 1e-9);
}

TEST(UnderlayPlace, PixelsRunDownAndTurnWithThePicture) {
  plan::Underlay underlay = turnedUnderlay();
  expectPoint(planPoint(underlay, {0, 0}), {3, 4});
  expectPoint(planPoint(underlay, {10, 0}), {3, 9});  // x is turned to y
  expectPoint(planPoint(underlay, {0, 10}), {8, 4});
  expectPoint(underlayPx(underlay, {8, 9}), {10, 10});
  underlay.turn_deg = 0;
  expectPoint(planPoint(underlay, {10, 6}), {8, 1});
}

TEST(UnderlayPlace, TwoPlacesAndTheirLengthGiveTheScale) {
  const plan::Underlay before = turnedUnderlay();
  const Point a{5, 5};
  const Point b{5, 7};
  const auto after = scaledTo(before, a, b, 6);
  ASSERT_TRUE(after);
  EXPECT_NEAR(after->m_per_px, 1.5, 1e-12);
  EXPECT_NEAR(after->turn_deg, 90, 1e-9);
  expectPoint(planPoint(*after, underlayPx(before, a)), a);
  expectPoint(planPoint(*after, underlayPx(before, b)), {5, 11});
  const auto along_x = scaledTo(before, a, b, 2, 0);
  ASSERT_TRUE(along_x);
  EXPECT_NEAR(along_x->turn_deg, 0, 1e-9);
  expectPoint(planPoint(*along_x, underlayPx(before, b)), {7, 5});
  EXPECT_FALSE(scaledTo(before, a, a, 2));
  EXPECT_FALSE(scaledTo(before, a, b, 0));
}

TEST_F(Underlays, AStraightenedPictureKeepsItsFirstCorner) {
  put("plan.png", encoded(flag(80, 60), "png"));
  plan::Underlay before = turnedUnderlay();
  before.turn_deg = 10;
  const KnownRectangle rectangle{{{{12, 11}, {60, 14}, {70, 50}, {8, 45}}}, 4.0, 3.0};
  const auto after = straightenedBy(before, QSize(80, 60), rectangle);
  ASSERT_TRUE(after.ok());
  const auto view = viewOf(*after, path("a.sump.json"));
  ASSERT_TRUE(view.ok());
  EXPECT_EQ(view->placed, *after);
  const auto frame = straightFrame(QSize(80, 60), rectangle);
  EXPECT_EQ(view->image.size(), frame->size);
  expectPoint(planPoint(*after, frame->first_corner_px), planPoint(before, {12, 11}));
  // The rectangle is as wide on the plan as it is said to be.
  const Point second = frame->first_corner_px + geometry::Vec{4.0 / after->m_per_px, 0};
  EXPECT_NEAR(distance(planPoint(*after, second), planPoint(before, {12, 11})), 4.0, 1e-9);
  // Twice as large: the same pixels.
  const auto twice = scaledTo(*after, {0, 0}, {1, 0}, 2);
  ASSERT_TRUE(twice);
  const auto large = viewOf(*twice, path("a.sump.json"));
  ASSERT_TRUE(large.ok());
  EXPECT_EQ(large->image.size(), view->image.size());
  EXPECT_NEAR(large->placed.m_per_px, twice->m_per_px, 1e-12);
}

TEST_F(Underlays, WhatCannotBeShown) {
  plan::Underlay underlay = turnedUnderlay();
  const auto problem = [&] {
    const auto view = viewOf(underlay, path("a.sump.json"));
    return view.ok() ? "" : view.problems()[0].message.id;
  };
  EXPECT_EQ(problem(), "underlay.not-found");
  put("plan.png", encoded(flag(8, 6), "png"));
  EXPECT_EQ(problem(), "");
  underlay.straighten = plan::Straighten{};
  EXPECT_EQ(problem(), "underlay.corners");
  underlay.m_per_px = 0;
  EXPECT_EQ(problem(), "underlay.scale");
}

}  // namespace
}  // namespace sumpwright::files
