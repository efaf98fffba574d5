// PlanCanvas: pointer, wheel, pinch and keys.

#include <QKeyEvent>
#include <QMouseEvent>
#include <QNativeGestureEvent>
#include <QPinchGesture>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "canvas/PlanCanvas.h"
#include "canvas/PlanPicker.h"
#include "geometry/Distance.h"
#include "plan/DesignEdits.h"
#include "plan/ThingEdits.h"

namespace sumpwright::canvas {

namespace {

// Own figures, all: what a fingertip covers and how far a hand slips while it clicks.
constexpr double kGrab_px = 24.0;       // half of the 48 px grab area of a grip
constexpr double kBandReach_px = 20.0;  // the band and a finger's slip outside it
constexpr double kClickSlip_px = 4.0;
constexpr double kPick_px = 12.0;
constexpr double kHover_px = 48.0;
constexpr double kJump_px = 24.0;

double apart(QPointF a, QPointF b) { return std::hypot(a.x() - b.x(), a.y() - b.y()); }

}  // namespace

std::string PlanCanvas::sumpUnder(QPointF at) {
  refreshBase();
  std::string id;
  double least = 1.0;  // in units of each one's own reach
  const auto offer = [&](const std::string& sump, QPointF spot, double reach_px) {
    const double share = apart(spot, at) / (reach_px * scale());
    if (share > least || (!id.empty() && share == least)) return;
    least = share;
    id = sump;
  };
  for (const drawing::SumpSign& sign : m_signs) {
    offer(sign.id, QPointF(sign.grip.x, sign.grip.y) * kPxPerMm * scale(), kGrab_px);
    offer(sign.id, QPointF(sign.hole.x, sign.hole.y) * kPxPerMm * scale(), kGrab_px / 2);
  }
  return id;
}

/// On the band or just outside it: the strip that says where the sump may go.
bool PlanCanvas::onBand(QPointF at) const {
  const geometry::Point point = m_camera.toPlan(at, size());
  const auto& p = m_session.study()->perimeter();
  const perimeter::Place place = p.nearest(point);
  const geometry::Vec off = point - p.pointAt(place);
  const double outside = -geometry::dot(off, p.edgeAt(place).inward) * m_camera.px_per_m;
  return outside >= 1.0 && geometry::norm(off) * m_camera.px_per_m <= kBandReach_px * scale();
}

void PlanCanvas::startDrag(tools::SiteDrag drag) {
  m_session.hover(std::nullopt);
  m_drag = drag;
  m_session.beginMove();
  if (m_session.place() != drag.place()) m_session.moveTo(drag.place());
  setCursor(Qt::ClosedHandCursor);
}

void PlanCanvas::endDrag(bool keep) {
  if (!m_drag) return;
  m_drag.reset();
  if (keep)
    m_session.finishMove();
  else
    m_session.cancelMove();
  unsetCursor();
}

void PlanCanvas::mousePressEvent(QMouseEvent* event) {
  m_pressed = event->position();
  m_clicking = false;
  const bool panning =
      event->button() == Qt::MiddleButton || (event->button() == Qt::LeftButton && m_space);
  if (panning) {
    m_pan = event->position();
    m_pan_button = event->button();
    setCursor(Qt::ClosedHandCursor);
    return;
  }
  if (event->button() != Qt::LeftButton || !m_session.hasJob() || m_drag) return;
  if (m_surveying || m_session.study() == nullptr) {
    for (PlanHand* hand : hands()) {
      if (!hand->press(event->position())) continue;
      refreshHint();
      return update();
    }
    m_clicking = true;
    m_pan = event->position();
    m_pan_button = Qt::LeftButton;
    return;
  }
  const auto& p = m_session.study()->perimeter();
  const geometry::Point at = m_camera.toPlan(event->position(), size());
  const double jump = std::max(tools::kJump_m, kJump_px * scale() / m_camera.px_per_m);
  if (const std::string sump = sumpUnder(event->position()); !sump.empty()) {
    m_session.chooseSump(sump);
    startDrag(tools::SiteDrag::hold(p, *m_session.place(), at, jump));
  } else if (onBand(event->position())) {
    startDrag(tools::SiteDrag::press(p, m_session.place().value_or(p.nearest(at)), at, jump));
  } else {
    m_clicking = true;
    m_pan = event->position();
    m_pan_button = Qt::LeftButton;
  }
}

void PlanCanvas::mouseMoveEvent(QMouseEvent* event) {
  const QPointF at = event->position();
  if (PlanHand* hand = m_pan ? nullptr : activeHand()) {
    hand->move(at);
    return update();
  }
  if (m_drag) {
    const auto place = m_drag->move(m_session.study()->perimeter(), m_camera.toPlan(at, size()));
    if (place != m_session.place()) m_session.moveTo(place);
    return;
  }
  if (m_pan) {
    if (m_clicking && apart(m_pressed, at) <= kClickSlip_px) return;
    m_clicking = false;
    setCursor(Qt::ClosedHandCursor);
    Camera camera = m_camera;
    camera.pan(at - *m_pan);
    m_pan = at;
    setCamera(camera);
    return;
  }
  for (PlanHand* hand : hands()) hand->hover(at);
  if (m_surveying) update();
  hoverAt(at);
  updateCursor(at);
}

void PlanCanvas::mouseReleaseEvent(QMouseEvent* event) {
  // The view may be moved by another button while a hand holds on: only that one ends the panning.
  const bool pans = m_pan && event->button() == m_pan_button;
  if (PlanHand* hand = activeHand();
      hand != nullptr && !pans && event->button() == Qt::LeftButton) {
    hand->release();
    refreshHint();
    return update();
  }
  endDrag(true);
  if (m_pan) {
    m_pan.reset();
    unsetCursor();
  }
  if (m_clicking && event->button() == Qt::LeftButton) pickAt(event->position());
  m_clicking = false;
}

void PlanCanvas::leaveEvent(QEvent*) {
  m_session.hover(std::nullopt);
  for (PlanHand* hand : hands()) hand->leave();
  if (m_surveying) update();
}

void PlanCanvas::hoverAt(QPointF at) {
  if (m_session.study() == nullptr || m_surveying) return;
  const geometry::Point point = m_camera.toPlan(at, size());
  const auto& p = m_session.study()->perimeter();
  const perimeter::Place place = p.nearest(point);
  const bool near =
      geometry::distance(p.pointAt(place), point) * m_camera.px_per_m <= kHover_px * scale();
  if (near)
    m_session.hover(place);
  else
    m_session.hover(std::nullopt);
}

void PlanCanvas::updateCursor(QPointF at) {
  if (!m_session.hasJob()) return unsetCursor();
  if (m_space) return setCursor(Qt::OpenHandCursor);
  if (m_surveying) {
    for (const PlanHand* hand : hands()) {
      if (const auto shape = hand->cursor(at)) return setCursor(*shape);
    }
    return unsetCursor();
  }
  if (m_session.study() == nullptr) return unsetCursor();
  if (!sumpUnder(at).empty()) return setCursor(Qt::OpenHandCursor);
  if (onBand(at)) return setCursor(Qt::PointingHandCursor);
  unsetCursor();
}

std::string PlanCanvas::thingUnder(QPointF at) const {
  if (!m_session.hasJob()) return {};
  const drawing::PlanView shown = view();
  const auto plates = m_session.study() == nullptr
                          ? drawing::serviceSpots(m_session.job(), shown)
                          : drawing::serviceSpots(*m_session.study(), shown);
  return thingAt(m_session.job(), plates, m_camera.toPlan(at, size()),
                 kPick_px * scale() / m_camera.px_per_m);
}

void PlanCanvas::pickAt(QPointF at) {
  if (m_session.hasJob()) m_session.select(thingUnder(at));
}

void PlanCanvas::takeOutChosen() {
  const std::string id = m_session.selected();
  if (!m_session.hasJob()) return;
  const plan::Job& job = m_session.job();
  const bool thing = plan::thingOf(job, id).has_value();
  // A cored sump is taken out where it is sited, not by a key over the plan.
  const bool inside = std::any_of(
      job.design.sumps.begin(), job.design.sumps.end(),
      [&](const plan::Sump& s) { return s.id == id && s.kind != plan::SumpKind::cored; });
  if (!thing && !inside) return;
  const base::Problems problems =
      thing ? m_session.edit(tr("Take out a thing"), plan::removeThing(job, id))
            : m_session.edit(tr("Take out a sump"), plan::removeSump(job, id));
  if (problems.empty()) m_session.select({});
}

void PlanCanvas::wheelEvent(QWheelEvent* event) {
  if (!m_session.hasJob()) return;
  const double steps = event->angleDelta().y() / 120.0;
  if (steps == 0.0) return;
  Camera camera = m_camera;
  camera.zoom(std::pow(1.2, steps), event->position(), size());
  setCamera(camera);
  event->accept();
}

bool PlanCanvas::event(QEvent* event) {
  if (event->type() == QEvent::NativeGesture) {
    auto* gesture = static_cast<QNativeGestureEvent*>(event);
    if (gesture->gestureType() == Qt::ZoomNativeGesture && m_session.hasJob()) {
      Camera camera = m_camera;
      camera.zoom(1.0 + gesture->value(), gesture->position(), size());
      setCamera(camera);
      return true;
    }
  }
  if (event->type() == QEvent::Gesture) {
    auto* pinch =
        static_cast<QPinchGesture*>(static_cast<QGestureEvent*>(event)->gesture(Qt::PinchGesture));
    if (pinch != nullptr && m_session.hasJob()) {
      Camera camera = m_camera;
      camera.zoom(pinch->scaleFactor(), pinch->centerPoint(), size());
      setCamera(camera);
      return true;
    }
  }
  return QWidget::event(event);
}

void PlanCanvas::keyPressEvent(QKeyEvent* event) {
  if (handKey(*event)) return;
  if (event->key() == Qt::Key_Escape) {
    if (m_drag) return endDrag(false);
    if (m_surveying && m_tasks->task() != tools::Task::choose) {
      return m_tasks->take(tools::Task::choose);
    }
    return m_session.select({});
  }
  if (m_surveying && event->key() == Qt::Key_Delete) return takeOutChosen();
  if (event->key() == Qt::Key_Space) {
    m_space = true;
    return setCursor(Qt::OpenHandCursor);
  }
  const QString text = event->text();
  const bool begins = !text.isEmpty() && (text[0].isDigit() || (m_surveying && text[0].isLetter()));
  if (begins && (m_session.study() != nullptr || m_surveying) &&
      !(event->modifiers() & (Qt::ControlModifier | Qt::AltModifier))) {
    Q_EMIT digitTyped(text);
    return;
  }
  QWidget::keyPressEvent(event);
}

void PlanCanvas::keyReleaseEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Space && !event->isAutoRepeat()) {
    m_space = false;
    unsetCursor();
  }
  QWidget::keyReleaseEvent(event);
}

void PlanCanvas::focusInEvent(QFocusEvent* event) {
  update();
  QWidget::focusInEvent(event);
}

void PlanCanvas::focusOutEvent(QFocusEvent* event) {
  m_space = false;
  // A menu or another window takes the keys: the drag has no end any more, so it is given up.
  if (event->reason() != Qt::PopupFocusReason) {
    endDrag(false);
    cancelHands();
  }
  update();
  QWidget::focusOutEvent(event);
}

}  // namespace sumpwright::canvas
