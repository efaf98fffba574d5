#include "stages/TickBox.h"

#include <QPainter>

#include "paint/Look.h"

namespace sumpwright::stages {

namespace {

constexpr double kBox_px = 18.0;
constexpr double kRow_px = 31.0;
constexpr double kBeside_px = 9.0;

}  // namespace

void paintTick(QPainter& painter, const QRectF& box, bool ticked, bool enabled,
               const QPalette& palette) {
  const drawing::Theme& t = paint::look(palette);
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  if (!enabled) painter.setOpacity(0.5);
  painter.setPen(QPen(paint::colour(ticked ? t.selection : t.control_edge), ticked ? 1.5 : 1.0));
  painter.setBrush(paint::colour(ticked ? t.selection_tint : t.raised));
  painter.drawRoundedRect(box.adjusted(0.75, 0.75, -0.75, -0.75), 4, 4);
  if (ticked) {
    const double unit = box.width() / 18.0;
    painter.setPen(QPen(paint::colour(t.ink), 2.2 * unit, Qt::SolidLine, Qt::RoundCap));
    painter.drawPolyline(QPolygonF{box.topLeft() + unit * QPointF(4.5, 9.5),
                                   box.topLeft() + unit * QPointF(7.8, 12.8),
                                   box.topLeft() + unit * QPointF(13.8, 5.4)});
  }
  painter.restore();
}

TickBox::TickBox(const QString& text, QWidget* parent) : QCheckBox(text, parent) {
  setAttribute(Qt::WA_Hover);
  setFocusPolicy(Qt::StrongFocus);
}

QSize TickBox::sizeHint() const {
  const double k = paint::uiScale(font());
  const int words = QFontMetrics(paint::sized(font(), 0.96)).horizontalAdvance(text());
  return {words + qRound((kBox_px + kBeside_px + 8.0) * k), qRound(kRow_px * k)};
}

void TickBox::paintEvent(QPaintEvent*) {
  const double k = paint::uiScale(font());
  const drawing::Theme& t = paint::look(palette());
  QPainter p(this);
  if (underMouse() && isEnabled()) {
    p.setRenderHint(QPainter::Antialiasing);
    p.setPen(Qt::NoPen);
    p.setBrush(paint::colour(t.raised));
    p.drawRoundedRect(rect(), 5, 5);
  }
  const QRectF box(3.0 * k, (height() - kBox_px * k) / 2.0, kBox_px * k, kBox_px * k);
  paintTick(p, box, isChecked(), isEnabled(), palette());
  p.setFont(paint::sized(font(), 0.96, isChecked()));
  QColor ink = paint::colour(isEnabled() ? t.ink : t.ink2);
  p.setPen(ink);
  const QRectF words = QRectF(rect()).adjusted(box.right() + kBeside_px * k, 0, 0, 0);
  p.drawText(words, Qt::AlignLeft | Qt::AlignVCenter,
             p.fontMetrics().elidedText(text(), Qt::ElideRight, qRound(words.width())));
}

}  // namespace sumpwright::stages
