#include "window/FocusRing.h"

#include <QApplication>
#include <QKeyEvent>
#include <QPainter>
#include <QTimer>

#include "paint/Look.h"

namespace sumpwright::window {

namespace {

constexpr int kOutside_px = 5;

bool movesFocus(int key) {
  return key == Qt::Key_Tab || key == Qt::Key_Backtab || key == Qt::Key_F6;
}

}  // namespace

FocusRing::FocusRing(QWidget* window) : QWidget(window) {
  setAttribute(Qt::WA_TransparentForMouseEvents);
  setFocusPolicy(Qt::NoFocus);
  hide();
  qApp->installEventFilter(this);
  connect(qApp, &QApplication::focusChanged, this, &FocusRing::follow);
}

void FocusRing::setKeysUsed(bool used) {
  if (m_keys == used) return;
  m_keys = used;
  window()->setProperty("keysUsed", used);
  if (QWidget* widget = QApplication::focusWidget()) widget->update();
  follow();
}

bool FocusRing::eventFilter(QObject*, QEvent* event) {
  switch (event->type()) {
    case QEvent::KeyPress:
      if (movesFocus(static_cast<QKeyEvent*>(event)->key())) setKeysUsed(true);
      break;
    case QEvent::MouseButtonPress:
      setKeysUsed(false);
      break;
    case QEvent::Move:
    case QEvent::Resize:
    case QEvent::Hide:
      if (isVisible()) QTimer::singleShot(0, this, &FocusRing::follow);
      break;
    default:
      break;
  }
  return false;
}

void FocusRing::follow() {
  m_around = QApplication::focusWidget();
  const bool own = m_around != nullptr && m_around->window() == window() && m_around != window();
  // Drawings fill their part of the window and show their focus inside.
  if (!m_keys || !own || !m_around->isVisible() || m_around->width() > 500) return hide();
  const QPoint corner = m_around->mapTo(window(), QPoint());
  setGeometry(QRect(corner, m_around->size())
                  .adjusted(-kOutside_px, -kOutside_px, kOutside_px, kOutside_px));
  raise();
  show();
  update();
}

void FocusRing::paintEvent(QPaintEvent*) {
  QPainter p(this);
  p.setRenderHint(QPainter::Antialiasing);
  p.setPen(QPen(paint::colour(paint::look(palette()).selection), 2.6));
  p.drawRoundedRect(QRectF(rect()).adjusted(1.3, 1.3, -1.3, -1.3), 8, 8);
}

}  // namespace sumpwright::window
