#include "window/FocusRing.h"

#include <QAbstractScrollArea>
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

/// What of the window is left to a widget by the parts that scroll it, with room for the ring at
/// their sides: above and below the ring would lie on something else.
QRect shownOf(const QWidget* widget, const QWidget* window) {
  QRect shown = window->rect();
  for (const QWidget* part = widget; part != nullptr && part != window;
       part = part->parentWidget()) {
    const auto* area = qobject_cast<const QAbstractScrollArea*>(part);
    if (area == nullptr || area == widget) continue;
    const QWidget* port = area->viewport();
    shown &= QRect(port->mapTo(window, QPoint()), port->size())
                 .adjusted(-kOutside_px, -1, kOutside_px, 1);
  }
  return shown;
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

bool FocusRing::eventFilter(QObject* watched, QEvent* event) {
  switch (event->type()) {
    case QEvent::KeyPress:
    case QEvent::ShortcutOverride:  // F6 is an action's: its press never comes
      if (movesFocus(static_cast<QKeyEvent*>(event)->key())) setKeysUsed(true);
      break;
    case QEvent::MouseButtonPress:
      setKeysUsed(false);
      break;
    case QEvent::Move:
    case QEvent::Resize:
    case QEvent::Hide:
      // Also while it is hidden: what has the keys may be scrolled into sight again.
      if (!m_keys || m_soon || watched == this) break;
      m_soon = true;
      QTimer::singleShot(0, this, [this] {
        m_soon = false;
        follow();
      });
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
  const QRect around(m_around->mapTo(window(), QPoint()), m_around->size());
  m_clip = shownOf(m_around, window());
  if (!m_clip.intersects(around)) return hide();  // scrolled out of sight
  setGeometry(around.adjusted(-kOutside_px, -kOutside_px, kOutside_px, kOutside_px));
  raise();
  show();
  update();
}

void FocusRing::paintEvent(QPaintEvent*) {
  QPainter p(this);
  p.setRenderHint(QPainter::Antialiasing);
  p.setClipRect(m_clip.translated(-pos()));
  p.setPen(QPen(paint::colour(paint::look(palette()).selection), 2.6));
  p.drawRoundedRect(QRectF(rect()).adjusted(1.3, 1.3, -1.3, -1.3), 8, 8);
}

}  // namespace sumpwright::window
