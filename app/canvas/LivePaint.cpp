#include "canvas/LivePaint.h"

#include <cmath>

#include "paint/Look.h"

namespace sumpwright::canvas {

namespace {

QPointF unitOf(QPointF v) {
  const double length = std::hypot(v.x(), v.y());
  return length > 0.0 ? v / length : QPointF(1.0, 0.0);
}

}  // namespace

QRectF distancePlate(const QFont& font, const Sight& sight, const geometry::Segment& line,
                     const QString& text) {
  const double k = sight.scale;
  const QFontMetricsF metrics(paint::sized(font, 0.96, true));
  QRectF plate(0, 0, metrics.horizontalAdvance(text) + 8 * k, metrics.height() + 2 * k);
  const QPointF a = sight.widget(line.a);
  const QPointF b = sight.widget(line.b);
  plate.moveCenter((a + b) / 2.0);
  const QPointF along = unitOf(b - a);
  const double needed = std::abs(along.x()) * plate.width() + std::abs(along.y()) * plate.height();
  if (std::hypot(b.x() - a.x(), b.y() - a.y()) < needed + 10 * k) {
    // Beside it, on the upper or the right side.
    QPointF side(along.y(), -along.x());
    if (side.y() > 1e-6 || (std::abs(side.y()) <= 1e-6 && side.x() < 0.0)) side = -side;
    plate.translate(
        (std::abs(side.x()) * plate.width() / 2 + std::abs(side.y()) * plate.height() / 2 + 4 * k) *
        side);
  }
  return plate;
}

void paintDistance(QPainter& painter, const drawing::Theme& theme, const QFont& font,
                   const Sight& sight, const geometry::Segment& line, plan::DisplayUnits units) {
  const double k = sight.scale;
  const QPointF a = sight.widget(line.a);
  const QPointF b = sight.widget(line.b);
  const QPointF along = unitOf(b - a);
  const QPointF tick = 5.0 * k * unitOf(along + QPointF(along.y(), -along.x()));
  painter.setPen(QPen(paint::colour(theme.selection), 1.4 * k));
  painter.drawLine(a, b);
  painter.drawLine(a - tick, a + tick);
  painter.drawLine(b - tick, b + tick);
  const QString text = printedLength(geometry::distance(line.a, line.b), units);
  const QRectF plate = distancePlate(font, sight, line, text);
  painter.setPen(Qt::NoPen);
  painter.setBrush(paint::colour(theme.paper));
  painter.drawRoundedRect(plate, 3 * k, 3 * k);
  painter.setFont(paint::sized(font, 0.96, true));
  painter.setPen(paint::colour(theme.ink));
  painter.drawText(plate, Qt::AlignCenter, text);
}

}  // namespace sumpwright::canvas
