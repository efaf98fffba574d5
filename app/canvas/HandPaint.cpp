#include "canvas/HandPaint.h"

#include <algorithm>

#include "paint/Icons.h"
#include "paint/Look.h"
#include "words/Words.h"

namespace sumpwright::canvas {

QString printedLength(double metres, plan::DisplayUnits units) {
  words::QuantityStyle style;
  style.decimals = 3;
  return QString::fromStdString(words::print(
      {metres, base::Unit::metre},
      units == plan::DisplayUnits::imperial ? words::Units::imperial : words::Units::metric,
      style));
}

tools::BareUnit bareUnit(plan::DisplayUnits units) {
  return units == plan::DisplayUnits::imperial ? tools::BareUnit::foot : tools::BareUnit::metre;
}

void paintSnap(QPainter& painter, const drawing::Theme& theme, const Sight& sight,
               const tools::Snapped& snapped) {
  const QColor ink = paint::colour(theme.selection);
  painter.setPen(QPen(ink, 1.0 * sight.scale, Qt::DashLine));
  for (const geometry::Segment& guide : snapped.guides) {
    painter.drawLine(sight.widget(guide.a), sight.widget(guide.b));
  }
  if (snapped.kind == tools::SnapKind::none) return;
  const QPointF at = sight.widget(snapped.at);
  const double r = 7.0 * sight.scale;
  painter.setPen(QPen(ink, 2.0 * sight.scale));
  painter.setBrush(Qt::NoBrush);
  switch (snapped.kind) {
    case tools::SnapKind::corner:
      painter.drawRect(QRectF(at.x() - r, at.y() - r, 2 * r, 2 * r));
      break;
    case tools::SnapKind::crossing:
      painter.drawLine(at - QPointF(r, r), at + QPointF(r, r));
      painter.drawLine(at - QPointF(r, -r), at + QPointF(r, -r));
      break;
    case tools::SnapKind::square:
      painter.drawPolyline(
          QPolygonF{at + QPointF(-r, -r), at + QPointF(-r, r), at + QPointF(r, r)});
      break;
    case tools::SnapKind::extension:
    case tools::SnapKind::edge:
      painter.drawPolygon(QPolygonF{at + QPointF(0, -r), at + QPointF(r, r), at + QPointF(-r, r)});
      break;
    case tools::SnapKind::grid:
    case tools::SnapKind::none:
      painter.drawEllipse(at, 0.4 * r, 0.4 * r);
      break;
  }
}

void paintPlate(QPainter& painter, const drawing::Theme& theme, const QFont& font,
                const Sight& sight, QPointF at, const QString& text, PlateTone tone) {
  if (text.isEmpty()) return;
  const double k = sight.scale;
  const bool warning = tone == PlateTone::warning;
  const QFont bold = paint::sized(font, warning ? 1.0 : 1.15, true);
  const QFontMetricsF metrics(bold);
  const double sign = warning ? 24 * k : 0.0;
  // A long reason is broken into lines rather than cut.
  const double most = std::max(120.0 * k, std::min(360.0 * k, sight.size.width() - 24 - sign));
  const QRectF words = metrics.boundingRect(QRectF(0, 0, most, 1000), Qt::TextWordWrap, text);
  QRectF plate(0, 0, words.width() + 16 * k + sign, words.height() + 8 * k);
  plate.moveTopLeft(at + QPointF(18, 14) * k);
  plate.moveRight(std::min(plate.right(), sight.size.width() - 4));
  plate.moveBottom(std::min(plate.bottom(), sight.size.height() - 4));
  painter.setPen(QPen(paint::colour(warning ? theme.warning_text : theme.selection), 1.5 * k));
  painter.setBrush(paint::colour(theme.raised));
  painter.drawRoundedRect(plate, 5 * k, 5 * k);
  if (warning) {
    const QRectF box(plate.left() + 7 * k, plate.center().y() - 9 * k, 18 * k, 18 * k);
    paint::paintGlyph(painter, paint::Glyph::warning, box, paint::colour(theme.warning_text));
  }
  painter.setFont(bold);
  painter.setPen(paint::colour(theme.ink));
  painter.drawText(plate.adjusted(sign, 0, 0, 0), Qt::AlignCenter | Qt::TextWordWrap, text);
}

}  // namespace sumpwright::canvas
