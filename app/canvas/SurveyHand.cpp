#include "canvas/SurveyHand.h"

#include <QKeyEvent>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "canvas/HandPaint.h"
#include "paint/Look.h"
#include "plan/OutlineEdits.h"
#include "plan/WallThickness.h"

namespace sumpwright::canvas {

namespace {

// Own figures: a fingertip's slip on a tablet, a hand's on a mouse.
constexpr double kReach_px = 12.0;
constexpr double kCornerReach_px = 14.0;
constexpr double kTapeEndReach_px = 26.0;
constexpr double kSlip_px = 4.0;

}  // namespace

tools::SnapField SurveyHand::drawField() const {
  tools::SnapField field;
  field.reach_m = sight().metres(kReach_px);
  field.grid_m = sight().grid_m();
  field.from = m_desk.drawFrom();
  for (const plan::Ring& ring : m_session.job().plan.rings) {
    field.corners.insert(field.corners.end(), ring.corners.begin(), ring.corners.end());
  }
  const plan::Ring* ring = m_desk.outline();
  if (ring != nullptr && ring->corners.size() > 1) {
    field.axis = ring->corners.back() - ring->corners[ring->corners.size() - 2];
  }
  return field;
}

bool SurveyHand::atTapeEnd(QPointF at) const {
  if (!m_session.hasJob()) return false;
  const auto from = m_desk.drawFrom();
  if (!from) return false;
  const QPointF off = sight().widget(*from) - at;
  return std::hypot(off.x(), off.y()) <= kTapeEndReach_px * sight().scale;
}

std::optional<tools::OutlineGrip> SurveyHand::gripAtPlan(geometry::Point at_m) const {
  if (!m_session.hasJob()) return std::nullopt;
  const plan::Job& job = m_session.job();
  return tools::outlineGripAt(job.plan, at_m, sight().metres(kCornerReach_px),
                              plan::usualThickness_m(job.house));
}

bool SurveyHand::press(QPointF at) {
  m_pressed = m_pointer = at;
  m_moved = false;
  m_typed.clear();
  m_amiss = false;
  m_warning.clear();
  m_corner.reset();
  m_before_start.reset();
  if (!atTapeEnd(at)) beginHere(at);
  if (atTapeEnd(at)) {
    m_drawing = true;
    m_snapped = {*m_desk.drawFrom(), tools::SnapKind::none, {}};
    return true;
  }
  const auto grip = gripAtPlan(sight().plan(at));
  if (!grip) return false;
  m_grip = grip;
  m_pressed_m = sight().plan(at);  // the view may change before the hand moves
  m_session.select(grip->kind == tools::GripKind::wall
                       ? m_session.job()
                             .plan.rings[static_cast<std::size_t>(grip->ring)]
                             .walls[static_cast<std::size_t>(grip->index)]
                             .id
                       : std::string());
  return true;
}

/// An outline that is not begun begins where the first wall is drawn from: over a picture, at the
/// corner that is seen.
void SurveyHand::beginHere(QPointF at) {
  const auto from = m_desk.drawFrom();
  if (!m_session.hasJob() || !m_session.job().plan.rings.empty() || !from) return;
  tools::SnapField grid;
  grid.reach_m = sight().metres(kReach_px);
  grid.grid_m = sight().grid_m();
  m_before_start = from;
  m_desk.beginAt(tools::snap(grid, sight().plan(at)).at);
}

/// From the job as it is now, not as it was at the press: an undo may have come between.
void SurveyHand::beginDrag() {
  m_grip = gripAtPlan(m_pressed_m);
  if (!m_grip) return;
  m_drag.emplace(m_session.job(), *m_grip, m_pressed_m, sight().metres(kReach_px),
                 sight().grid_m());
  m_session.beginPreview();
}

void SurveyHand::apply(base::Result<plan::Job> live) {
  // What cannot be (a wall without length) leaves the last that could.
  if (live) m_session.preview(std::move(live).value());
}

void SurveyHand::move(QPointF at) {
  m_pointer = at;
  if (!isActive()) return;
  const QPointF slip = at - m_pressed;
  if (!m_moved && std::hypot(slip.x(), slip.y()) <= kSlip_px * sight().scale) return;
  if (m_drawing) {
    m_moved = true;
    m_snapped = tools::snap(drawField(), sight().plan(at));
    // Square to the last wall only along a line from its end.
    const auto from = m_desk.drawFrom();
    const bool square =
        m_snapped.kind != tools::SnapKind::extension &&
        std::any_of(m_snapped.guides.begin(), m_snapped.guides.end(),
                    [&](const geometry::Segment& guide) { return from && guide.a == *from; });
    return m_desk.drawTo(m_snapped.at, square);
  }
  if (m_moved && !m_session.isPreviewing()) return cancel();  // undone or opened under the hand
  if (!m_moved) {
    m_moved = true;
    beginDrag();
  }
  // A number that was typed holds against a hand that trembles.
  if (m_drag && m_typed.isEmpty()) apply(m_drag->move(sight().plan(at)));
}

void SurveyHand::release() {
  if (m_amiss) return cancel();  // what was typed is not taken for the last that could be read
  if (m_drawing) {
    m_drawing = false;
    if (m_moved) {
      // What cannot be read is no wall: the gesture is given up, nothing else is lost.
      if (m_desk.finishDrawing() != session::TapeDesk::Outcome::done) m_desk.stopDrawing();
    } else {
      m_desk.stopDrawing();
    }
  }
  const bool corner = m_grip && m_grip->kind == tools::GripKind::corner;
  if (corner && !m_moved) {
    m_corner = m_grip;
    m_corner_m = tools::gripPoint(m_session.job().plan, *m_grip);
  }
  m_grip.reset();
  if (m_drag) {
    m_drag.reset();
    if (m_moved) {
      m_session.finishPreview(corner ? session::Session::tr("Move a corner")
                                     : session::Session::tr("Move a wall"));
    }
  }
  m_moved = false;
  m_typed.clear();
}

void SurveyHand::cancel() {
  if (m_drawing) m_desk.stopDrawing();
  if (m_drawing && m_before_start) m_desk.beginAt(*m_before_start);
  if (m_drag && m_moved) m_session.cancelPreview();
  m_drawing = false;
  m_grip.reset();
  m_drag.reset();
  m_moved = false;
  m_typed.clear();
  m_amiss = false;
  m_warning.clear();
}

bool SurveyHand::isInHand(int ring, int corner) const {
  if (!m_corner || m_corner->ring != ring || m_corner->index != corner) return false;
  const auto& rings = m_session.job().plan.rings;
  const auto r = static_cast<std::size_t>(ring);
  const auto i = static_cast<std::size_t>(corner);
  return r < rings.size() && i < rings[r].corners.size() && rings[r].corners[i] == m_corner_m;
}

/// Of a triangle none can go: then the plan stays as it is.
bool SurveyHand::removeCorner() {
  if (!m_session.hasJob() || !m_corner || !isInHand(m_corner->ring, m_corner->index)) return false;
  const base::Problems problems =
      m_session.edit(session::Session::tr("Take out a corner"),
                     plan::removeCorner(m_session.job(), m_corner->ring, m_corner->index));
  if (problems.empty()) {
    m_corner.reset();
  } else {
    m_warning = why(problems.front(), m_session.job());
  }
  return true;
}

bool SurveyHand::key(QKeyEvent& event) {
  if (!isActive()) return event.key() == Qt::Key_Delete && removeCorner();
  if (event.key() == Qt::Key_Escape) return cancel(), true;
  if (event.key() == Qt::Key_Return || event.key() == Qt::Key_Enter) {
    if (!m_amiss) release();
    return true;
  }
  if (event.key() == Qt::Key_Backspace) {
    m_typed.chop(1);
  } else if (!event.text().isEmpty() && event.text()[0].isPrint()) {
    m_typed += event.text();
  } else {
    return false;
  }
  if (m_drawing) return m_desk.setText(m_typed), true;
  readTyped();
  return true;
}

void SurveyHand::readTyped() {
  m_amiss = false;
  if (m_typed.isEmpty()) {
    if (m_drag) move(m_pointer);
    return;
  }
  const tools::LengthReading reading =
      tools::readLength(m_typed.toStdString(), bareUnit(m_session.job().display_units));
  m_amiss = !reading.ok();
  if (m_amiss) return;
  if (!m_moved) beginDrag();
  m_moved = true;
  if (!m_drag || !m_session.isPreviewing()) return;
  base::Result<plan::Job> live = m_drag->set(reading.metres.front());
  m_amiss = !live.ok();
  apply(std::move(live));
}

std::optional<Qt::CursorShape> SurveyHand::cursor(QPointF at) const {
  if (atTapeEnd(at)) return Qt::CrossCursor;
  if (gripAtPlan(sight().plan(at))) return Qt::OpenHandCursor;
  return std::nullopt;
}

QString SurveyHand::hint() const {
  if (m_corner && m_session.hasJob() && isInHand(m_corner->ring, m_corner->index)) {
    return session::Session::tr("Delete takes the corner out: the wall goes straight across.");
  }
  if (m_session.job().plan.rings.empty() && m_desk.drawFrom()) {
    return session::Session::tr(
        "Drag from the first corner, wherever it is, along the first wall.");
  }
  if (m_desk.drawFrom())
    return session::Session::tr("Drag from the end of the tape to draw a wall.");
  return session::Session::tr(
      "Drag a corner, a wall or what stands on it, type how far; a click chooses.");
}

QString SurveyHand::liveText() const {
  const plan::DisplayUnits units = m_session.job().display_units;
  if (m_drawing) {
    const auto wall = m_desk.draft();
    if (!wall) return {};
    const geometry::Vec along = wall->b - wall->a;
    double bearing = std::atan2(along.x, along.y) * 180.0 / std::numbers::pi;
    bearing = std::fmod(bearing - m_session.job().plan.north_deg + 720.0, 360.0);
    return QStringLiteral("%1   %2°")
        .arg(printedLength(geometry::norm(along), units))
        .arg(bearing, 0, 'f', m_desk.heading_deg() == std::round(m_desk.heading_deg()) ? 0 : 1);
  }
  if (!m_drag || !m_session.isPreviewing()) return {};
  if (m_drag->grip().kind == tools::GripKind::wall) {
    const double out = m_drag->out_m();
    return out < 0.0 ? session::Session::tr("%1 in").arg(printedLength(-out, units))
                     : session::Session::tr("%1 out").arg(printedLength(out, units));
  }
  const auto& ring =
      m_session.job().plan.rings[static_cast<std::size_t>(m_drag->grip().ring)].corners;
  const auto i = static_cast<std::size_t>(m_drag->grip().index);
  const auto before = ring[(i + ring.size() - 1) % ring.size()];
  const auto after = ring[(i + 1) % ring.size()];
  return QStringLiteral("%1  |  %2")
      .arg(printedLength(geometry::distance(before, ring[i]), units),
           printedLength(geometry::distance(ring[i], after), units));
}

void SurveyHand::paintHandles(QPainter& painter, const drawing::Theme& theme) const {
  const double half = 4.0 * sight().scale;
  painter.setPen(QPen(paint::colour(theme.selection), 1.6 * sight().scale));
  painter.setBrush(paint::colour(theme.paper));
  const auto& rings = m_session.job().plan.rings;
  for (std::size_t r = 0; r < rings.size(); ++r) {
    if (!rings[r].closed) continue;
    for (std::size_t i = 0; i < rings[r].corners.size(); ++i) {
      const QPointF at = sight().widget(rings[r].corners[i]);
      const bool held = isInHand(static_cast<int>(r), static_cast<int>(i));
      painter.setBrush(paint::colour(held ? theme.selection : theme.paper));
      painter.drawRect(QRectF(at.x() - half, at.y() - half, 2 * half, 2 * half));
    }
  }
  const auto end = m_desk.drawFrom();
  if (!end || m_desk.outline() == nullptr) return;
  painter.setBrush(paint::colour(theme.selection));
  painter.drawEllipse(sight().widget(*end), 6.0 * sight().scale, 6.0 * sight().scale);
}

void SurveyHand::paint(QPainter& painter, const drawing::Theme& theme, const QFont& font) const {
  if (!m_session.hasJob()) return;
  paintHandles(painter, theme);
  if (!m_warning.isEmpty() && m_corner && isInHand(m_corner->ring, m_corner->index)) {
    paintPlate(painter, theme, font, sight(), sight().widget(m_corner_m), m_warning,
               PlateTone::warning);
  }
  if (!isActive() || !m_moved) return;
  paintSnap(painter, theme, sight(), m_drag ? m_drag->snapped() : m_snapped);
  paintPlate(painter, theme, font, sight(), m_pointer,
             m_typed.isEmpty() ? liveText() : QStringLiteral("%1 = %2|").arg(liveText(), m_typed));
}

}  // namespace sumpwright::canvas
