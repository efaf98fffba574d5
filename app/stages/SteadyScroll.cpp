#include "stages/SteadyScroll.h"

#include <QApplication>
#include <QMouseEvent>
#include <QScopedValueRollback>
#include <QScrollBar>
#include <QTimer>
#include <QWindow>

namespace sumpwright::stages {

SteadyScroll::SteadyScroll(QWidget* parent) : QScrollArea(parent) {
  setWidgetResizable(true);
  setFrameShape(QFrame::NoFrame);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setFocusPolicy(Qt::NoFocus);
  qApp->installEventFilter(this);
  connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* now) {
    // A list that opens over the field has the keys for a while: the field is still meant.
    if (now != nullptr && now != m_held && holds(now)) hold(now);
  });
  connect(verticalScrollBar(), &QScrollBar::valueChanged, this, [this] {
    if (!m_restoring && m_held != nullptr) m_at_px = heightOf(m_held);
  });
}

bool SteadyScroll::holds(const QWidget* widget) const {
  return this->widget() != nullptr && widget != this->widget() &&
         this->widget()->isAncestorOf(widget);
}

int SteadyScroll::heightOf(const QWidget* widget) const {
  return widget->mapTo(window(), QPoint()).y();
}

void SteadyScroll::hold(QWidget* widget) {
  m_held = widget;
  m_at_px = heightOf(widget);
}

/// The range may not have followed the content yet: then a second try, when all is laid out.
void SteadyScroll::restore() {
  if (m_held == nullptr || !m_held->isVisible() || !holds(m_held)) return;
  const QScopedValueRollback restoring(m_restoring, true);
  verticalScrollBar()->setValue(verticalScrollBar()->value() + heightOf(m_held) - m_at_px);
}

bool SteadyScroll::eventFilter(QObject* watched, QEvent* event) {
  switch (event->type()) {
    case QEvent::MouseButtonPress:
      // Before the press takes the keys from another field, whose note may then come or go.
      if (qobject_cast<QWindow*>(watched) != nullptr && isVisible() && widget() != nullptr) {
        const QPoint at = static_cast<QMouseEvent*>(event)->globalPosition().toPoint();
        QWidget* under = QApplication::widgetAt(at);
        if (under != nullptr && under->focusPolicy() != Qt::NoFocus && holds(under)) hold(under);
      }
      break;
    case QEvent::Move:
    case QEvent::Resize: {
      if (m_held == nullptr || m_restoring || !isVisible()) break;
      auto* moved = qobject_cast<QWidget*>(watched);
      if (moved == nullptr || widget() == nullptr) break;
      // The content itself moves when it is scrolled; what lies in it, when it is laid out anew.
      const bool inside =
          moved != widget() && holds(moved) && (moved == m_held || moved->isAncestorOf(m_held));
      const bool grown = moved == widget() && event->type() == QEvent::Resize;
      // What stands above the part that scrolls may grow, too.
      if (!inside && !grown && moved != this) break;
      restore();
      if (m_soon) break;
      m_soon = true;
      QTimer::singleShot(0, this, [this] {
        m_soon = false;
        restore();
      });
      break;
    }
    default:
      break;
  }
  return QScrollArea::eventFilter(watched, event);
}

}  // namespace sumpwright::stages
