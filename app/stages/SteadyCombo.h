#pragma once
// A drop-down that changes only when it is opened and something is picked: neither the wheel over
// it nor a key pressed in passing may change what a place is judged by.

#include <QComboBox>
#include <QKeyEvent>
#include <QPainter>
#include <QWheelEvent>

#include "paint/Look.h"

namespace sumpwright::stages {

class SteadyCombo final : public QComboBox {
 public:
  using QComboBox::QComboBox;

 protected:
  /// A style sheet can only take the arrow from a picture: drawn here it has the theme's ink.
  void paintEvent(QPaintEvent* event) override {
    QComboBox::paintEvent(event);
    const double k = paint::uiScale(font());
    const QPointF tip(width() - 15 * k, height() / 2.0 + 2.5 * k);
    QPainter p(this);
    p.setRenderHint(QPainter::Antialiasing);
    p.setPen(
        QPen(paint::colour(paint::look(palette()).ink2), 1.6 * k, Qt::SolidLine, Qt::RoundCap));
    const QPointF arm(4.5 * k, -4.5 * k);
    p.drawPolyline(QPolygonF{tip + QPointF(-arm.x(), arm.y()), tip, tip + arm});
  }

  void wheelEvent(QWheelEvent* event) override { event->ignore(); }  // the page scrolls instead

  void keyPressEvent(QKeyEvent* event) override {
    switch (event->key()) {
      case Qt::Key_Up:
      case Qt::Key_Down:
      case Qt::Key_Space:
      case Qt::Key_Return:
      case Qt::Key_Enter:
      case Qt::Key_F4:
        showPopup();
        break;
      default:
        event->ignore();
    }
  }
};

}  // namespace sumpwright::stages
