#include "canvas/MeasureHand.h"

#include <QKeyEvent>
#include <cmath>

#include "canvas/LivePaint.h"
#include "paint/Look.h"
#include "tools/Faces.h"
#include "tools/Measuring.h"

namespace sumpwright::canvas {

namespace {

// Own figures, all: a hand's reach and slip with a mouse.
constexpr double kMeasureReach_px = 12.0;
constexpr double kMeasureSlip_px = 4.0;

QString readingText(const tools::TapeReading& r, plan::DisplayUnits units) {
  return session::Session::tr("%1\n↔ %2   ↕ %3\n%4° to the level, bearing %5°")
      .arg(printedLength(r.distance_m, units), printedLength(r.right_m, units),
           printedLength(r.up_m, units))
      .arg(r.slope_deg, 0, 'f', 1)
      .arg(r.bearing_deg, 0, 'f', 1);
}

}  // namespace

void MeasureHand::aim(QPointF at) {
  tools::SnapField field =
      tools::fieldOf(m_session.job(), sight().metres(kMeasureReach_px), sight().grid_m());
  if (isActive()) field.from = m_from;
  m_snapped = tools::snap(field, sight().plan(at));
}

bool MeasureHand::press(QPointF at) {
  m_pressed = at;
  m_fresh = !isActive();
  if (m_fresh) {
    m_from.reset();
    m_done = false;
  }
  aim(at);
  m_to = m_snapped->at;
  if (m_fresh) m_from = m_to;
  return true;
}

void MeasureHand::move(QPointF at) {
  aim(at);
  if (isActive()) m_to = m_snapped->at;
}

void MeasureHand::release() {
  if (!isActive()) return;
  const QPointF to = sight().widget(m_to);
  const QPointF from = sight().widget(*m_from);
  const bool apart =
      std::hypot(to.x() - from.x(), to.y() - from.y()) > kMeasureSlip_px * sight().scale;
  // A click alone lays the first end; a drag, or the second click, both.
  m_done = apart || !m_fresh;
}

void MeasureHand::hover(QPointF at) { aim(at); }

void MeasureHand::cancel() {
  m_from.reset();
  m_snapped.reset();
  m_done = false;
}

bool MeasureHand::key(QKeyEvent& event) {
  if (event.key() != Qt::Key_Escape || !m_from) return false;
  cancel();
  return true;
}

QString MeasureHand::hint() const {
  if (m_done) return session::Session::tr("the next press measures anew; Escape takes it off");
  if (m_from) return session::Session::tr("click the other end");
  return session::Session::tr("drag, or click both ends");
}

void MeasureHand::paint(QPainter& painter, const drawing::Theme& theme, const QFont& font) const {
  if (!m_session.hasJob()) return;
  if (m_snapped && !m_done) paintSnap(painter, theme, sight(), *m_snapped);
  if (!m_from) return;
  const geometry::Segment tape{*m_from, m_to};
  const tools::TapeReading reading = tools::measured(tape, m_session.job().plan.north_deg);
  if (reading.distance_m <= 0.0) return;
  const double k = sight().scale;
  const QPointF a = sight().widget(tape.a);
  const QPointF b = sight().widget(tape.b);
  painter.setPen(QPen(paint::colour(theme.selection), 1.0 * k, Qt::DotLine));
  painter.drawPolyline(QPolygonF{a, QPointF(b.x(), a.y()), b});
  paintDistance(painter, theme, font, sight(), tape, m_session.job().display_units);
  paintPlate(painter, theme, font, sight(), b, readingText(reading, m_session.job().display_units));
}

}  // namespace sumpwright::canvas
