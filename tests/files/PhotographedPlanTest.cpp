// A plan drawn, photographed at a slant with noise and blur, straightened by four corners of its
// frame as a hand would set them, and traced: how far off are the corners of the house? (The
// drawing and its figures are invented.) SUMPWRIGHT_SEE=FOLDER keeps both pictures there, to look
// at.

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>
#include <QTransform>
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>

#include "files/UnderlayStraighten.h"
#include "support/Seed.h"

namespace sumpwright::files {
namespace {

using geometry::Point;
using geometry::Vec;
using support::Random;

// Metres, y down, from the frame's top-left.
constexpr double kFrameWidth_m = 11.0;
constexpr double kFrameHeight_m = 9.0;
constexpr double kMargin_m = 0.5;
constexpr double kDrawn_px_per_m = 200.0;
const std::vector<Point> kHouseCorners{{1.0, 1.2},  {9.6, 1.2}, {9.6, 4.75},
                                       {6.1, 4.75}, {6.1, 7.9}, {1.0, 7.9}};

QPointF drawnPx(Point p) {
  return {(p.x + kMargin_m) * kDrawn_px_per_m, (p.y + kMargin_m) * kDrawn_px_per_m};
}

/// The sheet: a frame and the L, each with a pen of one pixel.
QImage drawnPlan() {
  QImage sheet(static_cast<int>((kFrameWidth_m + 2 * kMargin_m) * kDrawn_px_per_m),
               static_cast<int>((kFrameHeight_m + 2 * kMargin_m) * kDrawn_px_per_m),
               QImage::Format_Grayscale8);
  sheet.fill(Qt::white);
  QPainter painter(&sheet);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(Qt::black, 1));
  painter.drawRect(QRectF(drawnPx({0, 0}), drawnPx({kFrameWidth_m, kFrameHeight_m})));
  QPolygonF house;
  for (const Point p : kHouseCorners) house << drawnPx(p);
  painter.drawPolygon(house);
  return sheet;
}

/// What a lens sees: each photo pixel the mean of 4 x 4 places of the sheet; the table is grey.
class Camera {
 public:
  Camera(const QImage& sheet, const QTransform& to_photo) : m_sheet(sheet), m_to_photo(to_photo) {}

  std::vector<double> expose(int width, int height) const {
    bool is_invertible = false;
    const QTransform to_sheet = m_to_photo.inverted(&is_invertible);
    EXPECT_TRUE(is_invertible);
    std::vector<double> light(static_cast<std::size_t>(width * height));
    for (int y = 0; y < height; ++y) {
      for (int x = 0; x < width; ++x) {
        double sum = 0;
        for (int i = 0; i < 16; ++i) {
          sum += shade(to_sheet.map(QPointF(x + (i % 4 + 0.5) / 4, y + (i / 4 + 0.5) / 4)));
        }
        light[static_cast<std::size_t>(y * width + x)] = sum / 16;
      }
    }
    return light;
  }

 private:
  double shade(QPointF p) const {
    const int x = static_cast<int>(std::floor(p.x()));
    const int y = static_cast<int>(std::floor(p.y()));
    if (!m_sheet.rect().contains(x, y)) return 120;
    return 0.9 * m_sheet.constScanLine(y)[x];
  }
  const QImage& m_sheet;
  QTransform m_to_photo;
};

/// The weights 1 2 1 along rows and columns: out of focus by most of a pixel.
std::vector<double> blurred(const std::vector<double>& light, int width, int height) {
  const auto at = [&](const std::vector<double>& from, int x, int y) {
    return from[static_cast<std::size_t>(std::clamp(y, 0, height - 1) * width +
                                         std::clamp(x, 0, width - 1))];
  };
  std::vector<double> rows(light.size());
  std::vector<double> both(light.size());
  for (int pass = 0; pass < 2; ++pass) {
    const std::vector<double>& from = pass == 0 ? light : rows;
    std::vector<double>& to = pass == 0 ? rows : both;
    for (int y = 0; y < height; ++y) {
      for (int x = 0; x < width; ++x) {
        const int dx = pass == 0 ? 1 : 0;
        const int dy = 1 - dx;
        to[static_cast<std::size_t>(y * width + x)] =
            (at(from, x - dx, y - dy) + 2 * at(from, x, y) + at(from, x + dx, y + dy)) / 4;
      }
    }
  }
  return both;
}

/// About normal, standard deviation 1: the sum of twelve uniform draws.
double noise(Random& random) {
  double sum = -6;
  for (int i = 0; i < 12; ++i) sum += random.uniform(0, 1);
  return sum;
}

QImage developed(const std::vector<double>& light, int width, int height, Random& random) {
  QImage photo(width, height, QImage::Format_Grayscale8);
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      const double value = light[static_cast<std::size_t>(y * width + x)] + 6 * noise(random);
      photo.scanLine(y)[x] = static_cast<uchar>(std::clamp(value, 0.0, 255.0));
    }
  }
  return photo;
}

/// The straightened picture, read in metres from the frame's first corner.
class Traced {
 public:
  explicit Traced(const StraightPicture& picture) : m_picture(picture) {}

  /// Where two sides of the house meet, as the picture shows them near where they should be.
  Point corner(Point before, Point at, Point after) const {
    const auto [p, u] = lineAlong(before, at);
    const auto [q, v] = lineAlong(at, after);
    const double t = cross(q - p, v) / cross(u, v);
    return p + t * u;
  }

 private:
  double darkness(Point p) const {
    const double x = p.x / m_picture.frame.m_per_px + m_picture.frame.first_corner_px.x;
    const double y = p.y / m_picture.frame.m_per_px + m_picture.frame.first_corner_px.y;
    const QPoint px(static_cast<int>(std::floor(x)), static_cast<int>(std::floor(y)));
    EXPECT_TRUE(m_picture.image.rect().contains(px));
    return 255 - qGray(m_picture.image.pixel(px));
  }

  /// The middle of what is dark across the line at p, as far as the side of it, `across` m.
  double offAt(Point p, Vec across) const {
    constexpr int kSteps = 80;
    constexpr double kReach_m = 0.08;
    std::vector<double> dark;
    for (int i = -kSteps; i <= kSteps; ++i) {
      dark.push_back(darkness(p + (kReach_m * i / kSteps) * across));
    }
    std::vector<double> sorted = dark;
    std::nth_element(sorted.begin(), sorted.begin() + kSteps, sorted.end());
    const double paper = sorted[kSteps] + 25;  // four times the noise
    double weight = 0;
    double sum = 0;
    for (int i = -kSteps; i <= kSteps; ++i) {
      const double d = std::max(0.0, dark[static_cast<std::size_t>(i + kSteps)] - paper);
      weight += d;
      sum += d * kReach_m * i / kSteps;
    }
    return weight > 0 ? sum / weight : std::nan("");
  }

  /// A point and a direction: the straight line through what is dark, by least squares.
  std::pair<Point, Vec> lineAlong(Point a, Point b) const {
    const Vec along = (1 / distance(a, b)) * (b - a);
    const Vec across = geometry::left(along);
    const double length = distance(a, b);
    double n = 0, st = 0, so = 0, stt = 0, sto = 0;
    for (double t = 0.15; t < length - 0.15; t += 0.02) {
      const double off = offAt(a + t * along, across);
      if (std::isnan(off)) continue;
      n += 1, st += t, so += off, stt += t * t, sto += t * off;
    }
    EXPECT_GT(n, 50);
    const double slope = (n * sto - st * so) / (n * stt - st * st);
    return {a + ((so - slope * st) / n) * across, along + slope * across};
  }

  const StraightPicture& m_picture;
};

TEST(PhotographedPlan, TracedCornersAreWithinTwoCentimetres) {
  const QImage sheet = drawnPlan();
  constexpr int kWidth = 2000;
  constexpr int kHeight = 1500;
  support::forEachSeed(4, [&](std::uint64_t seed) {
    Random random(seed);
    const auto near = [&](double x, double y) {
      return QPointF(x + random.uniform(-80, 80), y + random.uniform(-60, 60));
    };
    QTransform to_photo;
    ASSERT_TRUE(QTransform::quadToQuad(
        QPolygonF({QPointF(0, 0), QPointF(sheet.width(), 0), QPointF(sheet.width(), sheet.height()),
                   QPointF(0, sheet.height())}),
        QPolygonF({near(330, 160), near(1680, 110), near(1890, 1400), near(110, 1330)}), to_photo));
    const QImage photo =
        developed(blurred(Camera(sheet, to_photo).expose(kWidth, kHeight), kWidth, kHeight), kWidth,
                  kHeight, random);
    KnownRectangle frame{{}, kFrameWidth_m, kFrameHeight_m};
    const Point corners[] = {
        {0, 0}, {kFrameWidth_m, 0}, {kFrameWidth_m, kFrameHeight_m}, {0, kFrameHeight_m}};
    for (std::size_t i = 0; i < 4; ++i) {
      const QPointF px = to_photo.map(drawnPx(corners[i]));
      frame.corners_px[i] = {px.x() + random.uniform(-0.5, 0.5),
                             px.y() + random.uniform(-0.5, 0.5)};
    }
    const auto straight = straightened(photo, frame);
    ASSERT_TRUE(straight.ok());
    if (const char* folder = std::getenv("SUMPWRIGHT_SEE")) {
      photo.save(QString::fromUtf8(folder) + QStringLiteral("/photo.png"));
      straight->image.save(QString::fromUtf8(folder) + QStringLiteral("/straight.png"));
    }
    const Traced traced(*straight);
    double worst = 0;
    const std::size_t n = kHouseCorners.size();
    for (std::size_t i = 0; i < n; ++i) {
      const Point found = traced.corner(kHouseCorners[(i + n - 1) % n], kHouseCorners[i],
                                        kHouseCorners[(i + 1) % n]);
      worst = std::max(worst, distance(found, kHouseCorners[i]));
    }
    std::printf("[ measured ] corners within %.1f mm at %.1f mm a pixel\n", worst * 1000,
                straight->frame.m_per_px * 1000);
    EXPECT_LT(worst, 0.02);
  });
}

}  // namespace
}  // namespace sumpwright::files
