#pragma once
// A plan drawn, photographed at a slant with noise and blur, and read again: for tests of how far
// off a traced corner is. (The drawing and its figures are invented.)

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>
#include <QTransform>
#include <algorithm>
#include <cmath>
#include <functional>
#include <vector>

#include "geometry/Point.h"
#include "support/Seed.h"

namespace sumpwright::support {

using geometry::Point;
using geometry::Vec;

// Metres, y down, from the frame's top-left.
inline constexpr double kFrameWidth_m = 11.0;
inline constexpr double kFrameHeight_m = 9.0;
inline constexpr double kMargin_m = 0.5;
inline constexpr double kDrawn_px_per_m = 200.0;
// On no grid that a pointer could snap to.
inline const std::vector<Point> kHouseCorners{{1.0, 1.2},     {9.613, 1.2},   {9.613, 4.767},
                                              {6.084, 4.767}, {6.084, 7.922}, {1.0, 7.922}};

inline QPointF drawnPx(Point p) {
  return {(p.x + kMargin_m) * kDrawn_px_per_m, (p.y + kMargin_m) * kDrawn_px_per_m};
}

/// The sheet: a frame and the L, each with a pen of one pixel.
inline QImage drawnPlan() {
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
class PlanLens {
 public:
  PlanLens(const QImage& sheet, const QTransform& to_photo)
      : m_sheet(sheet), m_to_photo(to_photo) {}

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
inline std::vector<double> blurred(const std::vector<double>& light, int width, int height) {
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
inline double noise(Random& random) {
  double sum = -6;
  for (int i = 0; i < 12; ++i) sum += random.uniform(0, 1);
  return sum;
}

inline QImage developed(const std::vector<double>& light, int width, int height, Random& random) {
  QImage photo(width, height, QImage::Format_Grayscale8);
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      const double value = light[static_cast<std::size_t>(y * width + x)] + 6 * noise(random);
      photo.scanLine(y)[x] = static_cast<uchar>(std::clamp(value, 0.0, 255.0));
    }
  }
  return photo;
}

/// A photo of drawnPlan(), with where it puts a pixel of that.
struct PlanPhoto {
  QImage image;
  QTransform from_sheet;
  /// Where the photo shows a place of the plan.
  QPointF at(Point metres) const { return from_sheet.map(drawnPx(metres)); }
};

inline PlanPhoto photographed(Random& random) {
  constexpr int kWidth = 2000;
  constexpr int kHeight = 1500;
  const QImage sheet = drawnPlan();
  const auto near = [&](double x, double y) {
    return QPointF(x + random.uniform(-80, 80), y + random.uniform(-60, 60));
  };
  PlanPhoto photo;
  EXPECT_TRUE(QTransform::quadToQuad(
      QPolygonF({QPointF(0, 0), QPointF(sheet.width(), 0), QPointF(sheet.width(), sheet.height()),
                 QPointF(0, sheet.height())}),
      QPolygonF({near(330, 160), near(1680, 110), near(1890, 1400), near(110, 1330)}),
      photo.from_sheet));
  photo.image =
      developed(blurred(PlanLens(sheet, photo.from_sheet).expose(kWidth, kHeight), kWidth, kHeight),
                kWidth, kHeight, random);
  return photo;
}

/// A straightened picture, read in metres.
class Traced {
 public:
  /// How dark it is at a place, 0 to 255.
  explicit Traced(std::function<double(Point)> darkness) : m_darkness(std::move(darkness)) {}

  /// Where two sides of the house meet, as the picture shows them near where they should be.
  Point corner(Point before, Point at, Point after) const {
    const auto [p, u] = lineAlong(before, at);
    const auto [q, v] = lineAlong(at, after);
    const double t = cross(q - p, v) / cross(u, v);
    return p + t * u;
  }

 private:
  /// The middle of what is dark across the line at p, as far as the side of it, `across` m.
  double offAt(Point p, Vec across) const {
    constexpr int kSteps = 80;
    constexpr double kReach_m = 0.08;
    std::vector<double> dark;
    for (int i = -kSteps; i <= kSteps; ++i) {
      dark.push_back(m_darkness(p + (kReach_m * i / kSteps) * across));
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

  std::function<double(Point)> m_darkness;
};

}  // namespace sumpwright::support
