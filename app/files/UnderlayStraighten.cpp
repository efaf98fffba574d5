#include "files/UnderlayStraighten.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "files/UnderlayPicture.h"
#include "geometry/Homography.h"

namespace sumpwright::files {

namespace {

using geometry::Homography;
using geometry::Point;
using geometry::Polygon;
using geometry::Quad;

constexpr double kBeyond = 4.0;            // contract
constexpr double kLeastDepth = 0.05;       // contract: a twentieth
constexpr double kFarthestCorner = 1.0;    // contract: the picture's size
constexpr double kLargestSide_m = 1000.0;  // a house's plan, or a garden's (own figure)

bool cornersAreNear(const KnownRectangle& rectangle, QSize size) {
  const double beyond = kFarthestCorner * std::max(size.width(), size.height());
  return std::all_of(rectangle.corners_px.begin(), rectangle.corners_px.end(), [&](Point p) {
    return p.x >= -beyond && p.x <= size.width() + beyond && p.y >= -beyond &&
           p.y <= size.height() + beyond;
  });
}

Quad uprightQuad(double width, double height) {
  return {{{0, 0}, {width, 0}, {width, height}, {0, height}}};
}

/// Cut off, but for what is whole up to rounding.
int wholePixels(double px) { return std::max(1, static_cast<int>(px + 1e-6)); }

bool isSide(double side_m) { return side_m > 0 && side_m <= kLargestSide_m; }

/// The part of the photo that is not too near the horizon: its outline cut along the line where the
/// depth is least. (One side of Sutherland and Hodgman's polygon clipping, CACM 1974; from memory.)
Polygon usablePart(const Homography& to_metres, QSize size) {
  const double w = size.width();
  const double h = size.height();
  const Polygon outline{{0, 0}, {w, 0}, {w, h}, {0, h}};
  Polygon part;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Point a = outline[i];
    const Point b = outline[(i + 1) % outline.size()];
    const double above_a = to_metres.depth(a) - kLeastDepth;
    const double above_b = to_metres.depth(b) - kLeastDepth;
    if (above_a >= 0) part.push_back(a);
    // Depth runs evenly along a line.
    if ((above_a >= 0) != (above_b >= 0)) {
      part.push_back(geometry::lerp(a, b, above_a / (above_a - above_b)));
    }
  }
  return part;
}

/// An upright box in metres, y down.
struct Extent {
  Point low{std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity()};
  Point high{-std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};
  double width() const { return high.x - low.x; }
  double height() const { return high.y - low.y; }
};

Extent extentOf(const Homography& to_metres, QSize size, const KnownRectangle& rectangle) {
  Extent extent;
  for (const Point corner : usablePart(to_metres, size)) {
    const std::optional<Point> p = to_metres.at(corner);
    if (!p) continue;
    extent.low = {std::min(extent.low.x, p->x), std::min(extent.low.y, p->y)};
    extent.high = {std::max(extent.high.x, p->x), std::max(extent.high.y, p->y)};
  }
  const double beyond = kBeyond * std::max(rectangle.width_m, rectangle.height_m);
  extent.low = {std::max(extent.low.x, -beyond), std::max(extent.low.y, -beyond)};
  extent.high = {std::min(extent.high.x, rectangle.width_m + beyond),
                 std::min(extent.high.y, rectangle.height_m + beyond)};
  return extent;
}

double densityOf(const KnownRectangle& rectangle) {
  const auto& c = rectangle.corners_px;
  const double across = std::max(distance(c[0], c[1]), distance(c[2], c[3])) / rectangle.width_m;
  const double down = std::max(distance(c[1], c[2]), distance(c[3], c[0])) / rectangle.height_m;
  return std::max(across, down);
}

/// Between four pixels, weighted by area; each channel in 8 bits with 8 of fraction.
class Sampler {
 public:
  explicit Sampler(const QImage& photo)
      : m_photo(photo.convertToFormat(QImage::Format_ARGB32_Premultiplied)) {}

  QRgb at(Point p) const {
    if (!(p.x >= 0 && p.y >= 0 && p.x <= m_photo.width() && p.y <= m_photo.height())) return 0;
    const double x = std::clamp(p.x - 0.5, 0.0, m_photo.width() - 1.0);
    const double y = std::clamp(p.y - 0.5, 0.0, m_photo.height() - 1.0);
    const int column = static_cast<int>(x);
    const int row = static_cast<int>(y);
    const int right = std::min(column + 1, m_photo.width() - 1);
    const QRgb* const upper = line(row);
    const QRgb* const lower = line(std::min(row + 1, m_photo.height() - 1));
    const auto across = static_cast<unsigned>((x - column) * 256);
    const auto down = static_cast<unsigned>((y - row) * 256);
    return between(between(upper[column], upper[right], across),
                   between(lower[column], lower[right], across), down);
  }

 private:
  const QRgb* line(int row) const {
    return reinterpret_cast<const QRgb*>(m_photo.constScanLine(row));
  }
  /// Two channels at a time: a product of 8 by 8 bits leaves the other's bits alone.
  static QRgb between(QRgb a, QRgb b, unsigned part) {
    const unsigned rest = 256 - part;
    const unsigned low = ((a & 0xFF00FFU) * rest + (b & 0xFF00FFU) * part) >> 8U;
    const unsigned high = ((a >> 8U) & 0xFF00FFU) * rest + ((b >> 8U) & 0xFF00FFU) * part;
    return (low & 0xFF00FFU) | (high & 0xFF00FF00U);
  }

  QImage m_photo;
};

QImage lookedUp(const QImage& photo, QSize size, const Homography& to_photo) {
  QImage image(size, QImage::Format_ARGB32_Premultiplied);
  const Sampler sampler(photo);
  for (int row = 0; row < size.height(); ++row) {
    auto* const line = reinterpret_cast<QRgb*>(image.scanLine(row));
    for (int column = 0; column < size.width(); ++column) {
      const std::optional<Point> p = to_photo.at({column + 0.5, row + 0.5});
      line[column] = p ? sampler.at(*p) : 0;
    }
  }
  return image;
}

base::Problem uselessCorners() {
  return {base::Message("underlay.corners"), "", base::Gravity::unreadable};
}

}  // namespace

base::Result<StraightFrame> straightFrame(QSize photo, const KnownRectangle& rectangle,
                                          double px_per_m) {
  const double w = rectangle.width_m;
  const double h = rectangle.height_m;
  if (photo.isEmpty() || !isSide(w) || !isSide(h) || !std::isfinite(px_per_m) || px_per_m < 0) {
    return uselessCorners();
  }
  const auto to_metres = Homography::between(rectangle.corners_px, uprightQuad(w, h));
  if (!to_metres || !cornersAreNear(rectangle, photo)) return uselessCorners();
  const Extent extent = extentOf(*to_metres, photo, rectangle);
  if (!(extent.width() > 0) || !(extent.height() > 0)) return uselessCorners();

  double density = px_per_m > 0 ? px_per_m : densityOf(rectangle);
  density = std::min({density, std::sqrt(kMostPixels / (extent.width() * extent.height())),
                      kLongestSide_px / std::max(extent.width(), extent.height())});
  return StraightFrame{
      {wholePixels(extent.width() * density), wholePixels(extent.height() * density)},
      1 / density,
      {-extent.low.x * density, -extent.low.y * density}};
}

base::Result<StraightPicture> straightened(const QImage& photo, const KnownRectangle& rectangle,
                                           double px_per_m) {
  const auto frame = straightFrame(photo.size(), rectangle, px_per_m);
  if (!frame.ok()) return frame.problems();
  Quad upright =
      uprightQuad(rectangle.width_m / frame->m_per_px, rectangle.height_m / frame->m_per_px);
  for (Point& p : upright) p = p + (frame->first_corner_px - Point{});
  const auto to_photo = Homography::between(upright, rectangle.corners_px);
  if (!to_photo) return uselessCorners();
  return StraightPicture{lookedUp(photo, frame->size, *to_photo), *frame};
}

}  // namespace sumpwright::files
