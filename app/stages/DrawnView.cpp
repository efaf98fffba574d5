#include "stages/DrawnView.h"

#include <QEvent>
#include <QPainter>
#include <QPainterPath>
#include <cmath>
#include <utility>

#include "drawing/Sketch.h"
#include "paint/Look.h"
#include "paint/Painting.h"

namespace sumpwright::stages {

DrawnView::DrawnView(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void DrawnView::show(Draw draw, const QString& words) {
  m_draw = std::move(draw);
  m_old = true;
  setAccessibleDescription(words);
  setToolTip(words);
  takeHeight();
  update();
}

void DrawnView::fitHeight() {
  m_fits = true;
  takeHeight();
}

/// What is as high as its words keeps them off its frame.
double DrawnView::inset() const { return m_fits ? 5.0 * paint::uiScale(font()) : 0.0; }

void DrawnView::takeHeight() {
  if (!m_fits || !m_draw) return;
  const double unit = paint::uiScale(font()) / drawing::kPx;
  const auto list =
      m_draw((width() - 2 * inset()) / unit, height() / unit, paint::themeOf(palette()));
  const int wanted = static_cast<int>(std::ceil(list.height_mm * unit + 2 * inset()));
  if (wanted != height()) setFixedHeight(wanted);
}

void DrawnView::render() {
  const double ratio = devicePixelRatioF();
  m_picture = QPixmap((QSizeF(size()) * ratio).toSize());
  m_picture.setDevicePixelRatio(ratio);
  m_picture.fill(Qt::transparent);
  m_old = false;
  QPainter p(&m_picture);
  p.setRenderHint(QPainter::Antialiasing);
  const double k = paint::uiScale(font());
  const drawing::Theme& t = paint::look(palette());
  QPainterPath frame;
  frame.addRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 4 * k, 4 * k);
  p.fillPath(frame, paint::colour(t.paper));
  if (m_draw) {
    const double unit = k / drawing::kPx;  // painter units for a millimetre
    p.setClipPath(frame);
    p.translate(inset(), inset());
    paint::paintDrawList(
        p, m_draw((width() - 2 * inset()) / unit, height() / unit, paint::themeOf(palette())),
        unit);
    p.translate(-inset(), -inset());
    p.setClipping(false);
  }
  p.setPen(QPen(paint::colour(t.rule), 1));
  p.drawPath(frame);
}

void DrawnView::paintEvent(QPaintEvent*) {
  if (m_old) render();
  QPainter(this).drawPixmap(0, 0, m_picture);
}

void DrawnView::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  m_old = true;
  takeHeight();
}

void DrawnView::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) m_old = true;
}

}  // namespace sumpwright::stages
