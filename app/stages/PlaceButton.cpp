#include "stages/PlaceButton.h"

#include <QPainter>

#include "paint/Look.h"

namespace sumpwright::stages {

PlaceButton::PlaceButton(QWidget* parent) : QAbstractButton(parent) {
  setFocusPolicy(Qt::TabFocus);
  setAttribute(Qt::WA_Hover);
  setCursor(Qt::PointingHandCursor);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setAccessibleName(tr("Place of the sump"));
}

QSize PlaceButton::sizeHint() const {
  const double k = paint::uiScale(font());
  return {qRound(90 * k), qRound(36 * k)};
}

void PlaceButton::show(const QString& wall, const QString& chainage) {
  m_wall = wall;
  m_chainage = chainage;
  setAccessibleName(tr("Place of the sump: %1, %2").arg(wall, chainage));
  setToolTip(tr("%1, %2\nPress to type another place (Ctrl+G).").arg(wall, chainage));
  QWidget::show();
  update();
}

void PlaceButton::paintEvent(QPaintEvent*) {
  const double k = paint::uiScale(font());
  const drawing::Theme& t = paint::look(palette());
  QPainter p(this);
  p.setRenderHint(QPainter::Antialiasing);
  if (underMouse() || isDown()) {
    p.setPen(QPen(paint::colour(t.control_edge), 1));
    p.setBrush(paint::colour(isDown() ? t.selection_tint : t.raised));
    p.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 6, 6);
  }
  const QFont small = paint::sized(font(), 0.88);
  const QFontMetrics metrics(small);
  const int right = width() - qRound(4 * k);
  const QRect upper(0, qRound(2 * k), right, qRound(16 * k));
  const QRect lower(0, qRound(18 * k), right, qRound(16 * k));
  p.setFont(small);
  p.setPen(paint::colour(t.ink2));
  p.drawText(upper, Qt::AlignRight | Qt::AlignVCenter,
             metrics.elidedText(m_wall, Qt::ElideRight, right));
  p.setPen(paint::colour(t.ink));
  p.drawText(lower, Qt::AlignRight | Qt::AlignVCenter,
             metrics.elidedText(m_chainage, Qt::ElideRight, right));
}

}  // namespace sumpwright::stages
