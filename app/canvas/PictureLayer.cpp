#include "canvas/PictureLayer.h"

#include <QTransform>
#include <algorithm>
#include <cmath>

#include "files/Underlay.h"

namespace sumpwright::canvas {

namespace {

/// From here on single pixels are looked at: they are shown as they are, not smeared (own figure).
constexpr double kCrispFrom = 2.0;

QRgb inkOf(QRgb pixel) {
  const int r = qRed(pixel);
  const int g = qGreen(pixel);
  const int b = qBlue(pixel);
  // Premultiplied: what is clear already counts as white, of which `a` is the most there is.
  const int a = qAlpha(pixel);
  const int white = std::min({r, g, b});
  return qRgba(r - white, g - white, b - white, a - white);
}

QRgb chalkOf(QRgb pixel) {
  const int a = qAlpha(pixel);
  const int high = std::max({qRed(pixel), qGreen(pixel), qBlue(pixel)});
  const int low = std::min({qRed(pixel), qGreen(pixel), qBlue(pixel)});
  const int shift = a - high - low;
  return qRgba(qRed(pixel) + shift, qGreen(pixel) + shift, qBlue(pixel) + shift, a - low);
}

}  // namespace

void toInk(QImage& picture, bool dark) {
  for (int y = 0; y < picture.height(); ++y) {
    auto* const line = reinterpret_cast<QRgb*>(picture.scanLine(y));
    for (int x = 0; x < picture.width(); ++x) line[x] = dark ? chalkOf(line[x]) : inkOf(line[x]);
  }
}

void PictureLayer::render(const session::PictureDesk::Layer& layer, double ratio) {
  const QSize pixels = (m_size * ratio).toSize();
  if (m_image.size() != pixels) m_image = QImage(pixels, QImage::Format_ARGB32_Premultiplied);
  m_image.fill(Qt::transparent);
  const double scale = layer.placed.m_per_px * m_camera.px_per_m * ratio;
  // The half that is not smaller than what is seen of it.
  std::size_t level = 0;
  double of_level = scale;
  while (level + 1 < layer.halves->size() && of_level <= 0.5) {
    ++level;
    of_level *= 2.0;
  }
  const QImage& image = (*layer.halves)[level];
  const QPointF corner = m_camera.toWidget(layer.placed.at_m, m_size) * ratio;
  QTransform place = QTransform::fromTranslate(corner.x(), corner.y());
  place.rotate(-layer.placed.turn_deg);
  place.scale(scale * layer.halves->front().width() / image.width(),
              scale * layer.halves->front().height() / image.height());
  QPainter painter(&m_image);
  painter.setRenderHint(QPainter::SmoothPixmapTransform, of_level < kCrispFrom);
  painter.setTransform(place);
  // Only what is seen: far in, the rest would be a picture of gigapixels.
  bool can_invert = false;
  const QRectF seen = place.inverted(&can_invert).mapRect(QRectF(QPointF(), QSizeF(pixels)));
  if (!can_invert) return;
  const QRect part = seen.toAlignedRect().adjusted(-1, -1, 1, 1).intersected(image.rect());
  if (part.isEmpty()) return;
  painter.drawImage(part.topLeft(), image, part);
  painter.end();
  toInk(m_image, m_dark);
}

void PictureLayer::paint(QPainter& painter, const session::PictureDesk::Layer& layer,
                         const Camera& camera, QSizeF size, double ratio, bool dark) {
  plan::Underlay placed = layer.placed;
  placed.fade = 0.0;  // costs no new picture
  placed.locked = false;
  const bool same = m_camera == camera && m_size == size && m_dark == dark &&
                    m_revision == layer.revision && m_placed == placed && !m_image.isNull() &&
                    m_image.devicePixelRatio() == ratio;
  if (!same) {
    m_camera = camera;
    m_size = size;
    m_dark = dark;
    m_revision = layer.revision;
    m_placed = placed;
    m_image.setDevicePixelRatio(1.0);
    render(layer, ratio);
    m_image.setDevicePixelRatio(ratio);
  }
  painter.setOpacity(1.0 - std::clamp(layer.placed.fade, 0.0, 1.0));
  painter.drawImage(QPointF(0, 0), m_image);
  painter.setOpacity(1.0);
}

std::array<geometry::Point, 4> outlineOf(const session::PictureDesk::Layer& layer) {
  const double w = layer.halves->front().width();
  const double h = layer.halves->front().height();
  const auto at = [&](double x, double y) { return files::planPoint(layer.placed, {x, y}); };
  return {at(0, 0), at(w, 0), at(w, h), at(0, h)};
}

}  // namespace sumpwright::canvas
