#pragma once
// A drop-down that changes only when it is opened and something is picked: neither the wheel over
// it nor a key pressed in passing may change what a place is judged by.

#include <QComboBox>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QStyleOptionComboBox>
#include <QStylePainter>
#include <QToolTip>
#include <QWheelEvent>

#include "paint/Look.h"

namespace sumpwright::stages {

class SteadyCombo final : public QComboBox {
 public:
  using QComboBox::QComboBox;

 protected:
  /// A style sheet can only take the arrow from a picture: drawn here it has the theme's ink.
  void paintEvent(QPaintEvent* event) override {
    Q_UNUSED(event);
    QStylePainter face(this);
    QStyleOptionComboBox option;
    initStyleOption(&option);
    option.currentText = shown(option);
    face.drawComplexControl(QStyle::CC_ComboBox, option);
    face.drawControl(QStyle::CE_ComboBoxLabel, option);
    face.end();
    const double k = paint::uiScale(font());
    const QPointF tip(width() - 15 * k, height() / 2.0 + 2.5 * k);
    QPainter p(this);
    p.setRenderHint(QPainter::Antialiasing);
    p.setPen(
        QPen(paint::colour(paint::look(palette()).ink2), 1.6 * k, Qt::SolidLine, Qt::RoundCap));
    const QPointF arm(4.5 * k, -4.5 * k);
    p.drawPolyline(QPolygonF{tip + QPointF(-arm.x(), arm.y()), tip, tip + arm});
  }

  /// What has no room ends in dots, and the tip says it whole.
  bool event(QEvent* event) override {
    if (event->type() == QEvent::ToolTip) {
      QStyleOptionComboBox option;
      initStyleOption(&option);
      if (shown(option) != currentText()) {
        const QString tip =
            toolTip().isEmpty() ? currentText() : currentText() + QLatin1Char('\n') + toolTip();
        QToolTip::showText(static_cast<QHelpEvent*>(event)->globalPos(), tip, this);
        return true;
      }
    }
    return QComboBox::event(event);
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

 private:
  QString shown(const QStyleOptionComboBox& option) const {
    const QRect field =
        style()->subControlRect(QStyle::CC_ComboBox, &option, QStyle::SC_ComboBoxEditField, this);
    return option.fontMetrics.elidedText(option.currentText, Qt::ElideRight, field.width() - 2);
  }
};

}  // namespace sumpwright::stages
