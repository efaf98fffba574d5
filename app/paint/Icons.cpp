#include "paint/Icons.h"

#include <QGuiApplication>
#include <QIconEngine>
#include <QPainterPath>
#include <QPixmap>

#include "drawing/Bands.h"
#include "drawing/Signs.h"
#include "paint/Look.h"
#include "paint/Painting.h"

namespace sumpwright::paint {

namespace {

/// Strokes on a grid of 20 x 20.
QPainterPath strokesOf(Glyph glyph) {
  QPainterPath p;
  const auto line = [&p](double x1, double y1, double x2, double y2) {
    p.moveTo(x1, y1);
    p.lineTo(x2, y2);
  };
  switch (glyph) {
    case Glyph::undo:
      line(7, 4, 3.5, 7.5);
      p.lineTo(7, 11);
      p.moveTo(3.5, 7.5);
      p.lineTo(12, 7.5);
      p.cubicTo(17.5, 7.5, 17.5, 15.5, 12, 15.5);
      p.lineTo(8.5, 15.5);
      break;
    case Glyph::redo:
      line(13, 4, 16.5, 7.5);
      p.lineTo(13, 11);
      p.moveTo(16.5, 7.5);
      p.lineTo(8, 7.5);
      p.cubicTo(2.5, 7.5, 2.5, 15.5, 8, 15.5);
      p.lineTo(11.5, 15.5);
      break;
    case Glyph::sheet:
      p.moveTo(4.5, 2.5);
      p.lineTo(11.5, 2.5);
      p.lineTo(15.5, 6.5);
      p.lineTo(15.5, 17.5);
      p.lineTo(4.5, 17.5);
      p.closeSubpath();
      line(7.5, 9.5, 12.5, 9.5);
      line(7.5, 13, 12.5, 13);
      break;
    case Glyph::plus:
      line(10, 3.5, 10, 16.5);
      [[fallthrough]];
    case Glyph::minus:
      line(3.5, 10, 16.5, 10);
      break;
    case Glyph::fit:
      line(3.5, 7.5, 3.5, 3.5);
      p.lineTo(7.5, 3.5);
      p.moveTo(12.5, 3.5);
      p.lineTo(16.5, 3.5);
      p.lineTo(16.5, 7.5);
      p.moveTo(16.5, 12.5);
      p.lineTo(16.5, 16.5);
      p.lineTo(12.5, 16.5);
      p.moveTo(7.5, 16.5);
      p.lineTo(3.5, 16.5);
      p.lineTo(3.5, 12.5);
      break;
    case Glyph::previous_stretch:
      line(4.5, 4, 4.5, 16);
      break;
    case Glyph::next_stretch:
      line(15.5, 4, 15.5, 16);
      break;
    case Glyph::menu:
      line(3, 5.5, 17, 5.5);
      line(3, 10, 17, 10);
      line(3, 14.5, 17, 14.5);
      break;
    case Glyph::close:
      line(5, 5, 15, 15);
      line(15, 5, 5, 15);
      break;
    case Glyph::go:
    case Glyph::page_right:
      line(8, 4.5, 13.5, 10);
      p.lineTo(8, 15.5);
      break;
    case Glyph::page_left:
      line(12, 4.5, 6.5, 10);
      p.lineTo(12, 15.5);
      break;
    case Glyph::warning:
      p.moveTo(10, 3);
      p.lineTo(17.5, 16.5);
      p.lineTo(2.5, 16.5);
      p.closeSubpath();
      line(10, 8, 10, 11.8);
      line(10, 14, 10, 14.2);
      break;
    case Glyph::printer:
      p.addRect(3.5, 8, 13, 6);
      line(6.5, 8, 6.5, 3.5);
      p.lineTo(13.5, 3.5);
      p.lineTo(13.5, 8);
      p.addRect(6.5, 12, 7, 5);
      break;
    case Glyph::choose:  // an arrow with a tail
      line(5, 2.5, 5, 15);
      p.lineTo(8.4, 12);
      p.lineTo(10.6, 17);
      p.lineTo(13, 16);
      p.lineTo(10.9, 11.2);
      p.lineTo(15, 11.2);
      p.closeSubpath();
      break;
    case Glyph::opening:  // a gap in a wall with a pane
      p.addRect(1.5, 7.5, 3.5, 5);
      p.addRect(15, 7.5, 3.5, 5);
      line(5, 10, 15, 10);
      break;
    case Glyph::service:  // something that goes into a wall
      line(15.5, 2.5, 15.5, 17.5);
      line(2, 10, 12, 10);
      line(8.5, 6.5, 12, 10);
      p.lineTo(8.5, 13.5);
      break;
    case Glyph::on_wall:  // a wall with a body against it
      line(2, 5, 18, 5);
      p.addRect(5, 8, 10, 6);
      line(8.3, 8, 8.3, 14);
      line(11.7, 8, 11.7, 14);
      break;
    case Glyph::at_point:
      p.addEllipse(QPointF(10, 10), 4, 4);
      line(10, 2, 10, 6);
      line(10, 14, 10, 18);
      line(2, 10, 6, 10);
      line(14, 10, 18, 10);
      break;
    case Glyph::outline:  // walls round a court
      p.addRect(2.5, 2.5, 15, 15);
      p.addRect(7, 7, 6, 6);
      break;
    case Glyph::line:  // a line of three legs with its points
      line(3, 15, 8, 6);
      p.lineTo(13, 13);
      p.lineTo(17, 4.5);
      p.addEllipse(QPointF(8, 6), 1.4, 1.4);
      p.addEllipse(QPointF(13, 13), 1.4, 1.4);
      break;
    case Glyph::area:
      line(3, 15.5, 6.5, 5);
      p.lineTo(16.5, 4);
      p.lineTo(15, 15.5);
      p.closeSubpath();
      break;
    case Glyph::measure:  // a dimension line
      line(2.5, 10, 17.5, 10);
      line(2.5, 5, 2.5, 15);
      line(17.5, 5, 17.5, 15);
      line(5.5, 7.5, 2.5, 10);
      p.lineTo(5.5, 12.5);
      p.moveTo(14.5, 7.5);
      p.lineTo(17.5, 10);
      p.lineTo(14.5, 12.5);
      break;
  }
  return p;
}

/// Solid parts, on the same grid.
QPainterPath solidOf(Glyph glyph) {
  QPainterPath p;
  if (glyph == Glyph::previous_stretch)
    p.addPolygon(QPolygonF({{15.5, 4.5}, {15.5, 15.5}, {7.5, 10}}));
  if (glyph == Glyph::next_stretch) p.addPolygon(QPolygonF({{4.5, 4.5}, {4.5, 15.5}, {12.5, 10}}));
  return p;
}

class GlyphEngine final : public QIconEngine {
 public:
  explicit GlyphEngine(Glyph glyph) : m_glyph(glyph) {}

  void paint(QPainter* painter, const QRect& rect, QIcon::Mode mode, QIcon::State) override {
    const drawing::Theme& theme = look(QGuiApplication::palette());
    QColor ink = colour(theme.ink);
    if (mode == QIcon::Disabled) ink.setAlpha(110);
    paintGlyph(*painter, m_glyph, rect, ink);
  }
  QPixmap pixmap(const QSize& size, QIcon::Mode mode, QIcon::State state) override {
    QPixmap pixmap(size);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    paint(&painter, QRect(QPoint(), size), mode, state);
    return pixmap;
  }
  QIconEngine* clone() const override { return new GlyphEngine(*this); }

 private:
  Glyph m_glyph;
};

}  // namespace

void paintGlyph(QPainter& painter, Glyph glyph, const QRectF& box, const QColor& ink) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.translate(box.center());
  const double unit = std::min(box.width(), box.height()) / 20.0;
  painter.scale(unit, unit);
  painter.translate(-10, -10);
  QPen pen(ink, 1.8);
  pen.setCapStyle(Qt::RoundCap);
  pen.setJoinStyle(Qt::RoundJoin);
  painter.strokePath(strokesOf(glyph), pen);
  painter.fillPath(solidOf(glyph), ink);
  painter.restore();
}

QIcon icon(Glyph glyph) { return QIcon(new GlyphEngine(glyph)); }

void paintSign(QPainter& painter, rules::State state, QPointF centre, double size,
               drawing::ThemeName theme) {
  drawing::DrawList list;
  drawing::Sketch sketch(list);
  drawing::stateSign(sketch, drawing::theme(theme), state, {}, drawing::kPx);
  painter.save();
  painter.translate(centre);
  paintDrawList(painter, list, size / drawing::kPx);
  painter.restore();
}

void paintBand(QPainter& painter, rules::State state, const QRectF& box, double scale,
               drawing::ThemeName theme) {
  drawing::DrawList list;
  drawing::Sketch sketch(list);
  const double unit = drawing::kPx / scale;
  drawing::bandSample(sketch, drawing::theme(theme), state, box.left() * unit, box.right() * unit,
                      box.center().y() * unit, box.height() * unit);
  paintDrawList(painter, list, scale / drawing::kPx);
}

void paintMark(QPainter& painter, const QRectF& box, const drawing::Theme& theme) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.translate(box.topLeft());
  painter.scale(box.width() / 96.0, box.height() / 96.0);  // as resources/icons/sumpwright.svg
  painter.translate(-16, -16);
  QPainterPath pit(QPointF(34, 74));
  pit.arcTo(QRectF(34, 44, 60, 60), 180.0, 180.0);
  pit.closeSubpath();
  painter.setPen(QPen(colour(theme.ink), 7, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
  painter.setBrush(colour(theme.clear.band));
  painter.drawPath(pit);
  const auto line = [&](double x1, double y1, double x2, double y2, double width,
                        Qt::PenCapStyle cap) {
    painter.setPen(QPen(colour(theme.ink), width, Qt::SolidLine, cap));
    painter.drawLine(QPointF(x1, y1), QPointF(x2, y2));
  };
  line(18, 74, 110, 74, 8, Qt::RoundCap);
  line(64, 84, 64, 26, 13, Qt::FlatCap);
  line(47, 26, 81, 26, 9, Qt::RoundCap);
  painter.restore();
}

}  // namespace sumpwright::paint
