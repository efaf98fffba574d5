#pragma once
// A drop-down that changes only when it is opened and something is picked: neither the wheel over
// it nor a key pressed in passing may change what a place is judged by.

#include <QComboBox>
#include <QKeyEvent>
#include <QWheelEvent>

namespace sumpwright::stages {

class SteadyCombo final : public QComboBox {
 public:
  using QComboBox::QComboBox;

 protected:
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
