#include "canvas/PointHand.h"

#include <QKeyEvent>
#include <cmath>

#include "canvas/LivePaint.h"
#include "paint/Look.h"
#include "plan/ThingEdits.h"

namespace sumpwright::canvas {

namespace {

// Own figures, all: a hand's reach and slip with a mouse.
constexpr double kPointReach_px = 12.0;
constexpr double kSnapReach_px = 8.0;
constexpr double kVertexReach_px = 12.0;
constexpr double kPointSlip_px = 4.0;

/// The point thing nearest within reach; empty for none.
std::string pointThingAt(const plan::Job& job, geometry::Point at, double reach_m) {
  const plan::Plan& plan = job.plan;
  std::string best;
  double nearest = reach_m;
  const auto consider = [&](const std::string& id, geometry::Point p) {
    if (geometry::distance(p, at) > nearest) return;
    nearest = geometry::distance(p, at);
    best = id;
  };
  for (const auto& t : plan.supplies) consider(t.id, t.at_m);
  for (const auto& t : plan.fittings) consider(t.id, t.at_m);
  for (const auto& t : plan.test_holes) consider(t.id, t.at_m);
  for (const auto& t : plan.outside) {
    if (t.points_m.size() == 1) consider(t.id, t.points_m.front());
  }
  for (const auto& s : job.design.sumps) {
    if (s.kind != plan::SumpKind::cored && s.at_m) consider(s.id, *s.at_m);
  }
  return best;
}

/// Rooms and floors are chosen to be named: a press within them pans.
bool movesWhole(const plan::Job& job, const std::string& id) {
  const auto thing = plan::thingOf(job, id);
  return thing && !std::holds_alternative<plan::Room>(*thing) &&
         !std::holds_alternative<plan::FloorZone>(*thing);
}

}  // namespace

std::optional<tools::PointGrip> PointHand::gripAt(QPointF at) const {
  if (!m_session.hasJob()) return std::nullopt;
  const plan::Job& job = m_session.job();
  const geometry::Point place = sight().plan(at);
  auto grip = tools::pointGripAt(job, m_session.selected(), place, sight().metres(kVertexReach_px));
  if (grip && (grip->kind != tools::PointGripKind::whole || movesWhole(job, grip->thing))) {
    return grip;
  }
  const std::string point = pointThingAt(job, place, sight().metres(kPointReach_px));
  if (point.empty()) return std::nullopt;
  return tools::PointGrip{point, tools::PointGripKind::vertex, 0};
}

bool PointHand::press(QPointF at) {
  m_warning.clear();
  m_in_hand.reset();
  m_grip = gripAt(at);
  if (!m_grip) return false;
  m_pressed = m_pointer = at;
  m_typed.clear();
  m_amiss = false;
  m_session.select(m_grip->thing);
  return true;
}

/// From the job as it is now: an undo may have come since the press.
bool PointHand::beginDrag() {
  const auto laid = tools::laidPointsOf(m_session.job(), m_grip->thing);
  if (static_cast<std::size_t>(m_grip->index) >= laid.points.size()) return cancel(), false;
  m_drag.emplace(m_session.job(), *m_grip, sight().plan(m_pressed), sight().metres(kSnapReach_px),
                 sight().grid_m());
  m_session.beginPreview();
  return true;
}

void PointHand::apply(base::Result<plan::Job> live) {
  // What cannot be leaves the last that could.
  if (live) m_session.preview(std::move(live).value());
}

void PointHand::move(QPointF at) {
  m_pointer = at;
  if (!m_grip) return;
  if (m_drag && !m_session.isPreviewing()) return cancel();  // undone under the hand
  if (!m_drag) {
    const QPointF slip = at - m_pressed;
    if (std::hypot(slip.x(), slip.y()) <= kPointSlip_px * sight().scale || !beginDrag()) return;
  }
  // A number that was typed holds against a hand that trembles.
  if (m_typed.isEmpty()) apply(m_drag->move(sight().plan(at)));
}

void PointHand::release() {
  if (!m_grip) return;
  if (m_amiss) return cancel();  // what was typed is not taken for the last that could be read
  m_in_hand = m_grip;
  if (m_grip->kind == tools::PointGripKind::side) {
    m_in_hand.reset();
    if (m_drag) {
      m_in_hand = tools::PointGrip{m_grip->thing, tools::PointGripKind::vertex, m_grip->index + 1};
    }
  }
  const bool inserted = m_grip->kind == tools::PointGripKind::side;
  const bool dragged = m_drag.has_value();
  m_drag.reset();
  m_grip.reset();
  m_typed.clear();
  if (!dragged) return;
  m_session.finishPreview(inserted ? session::Session::tr("Put in a point")
                                   : session::Session::tr("Move it"));
}

void PointHand::cancel() {
  if (m_drag) m_session.cancelPreview();
  m_drag.reset();
  m_grip.reset();
  m_typed.clear();
  m_amiss = false;
  m_warning.clear();
}

void PointHand::readTyped() {
  m_amiss = false;
  if (!m_grip) return;
  if (m_typed.isEmpty()) {
    if (m_drag) move(m_pointer);
    return;
  }
  if (!m_drag && !beginDrag()) return;
  if (!m_session.isPreviewing()) return cancel();
  auto live = m_drag->type(m_typed.toStdString(), bareUnit(m_session.job().display_units));
  m_amiss = !live || !live->ok();
  if (live) apply(std::move(*live));
}

std::optional<int> PointHand::vertexInHand() const {
  if (!m_session.hasJob() || !m_in_hand || m_in_hand->thing != m_session.selected()) {
    return std::nullopt;
  }
  const auto laid = tools::laidPointsOf(m_session.job(), m_in_hand->thing);
  const auto index = static_cast<std::size_t>(m_in_hand->index);
  if (m_in_hand->kind != tools::PointGripKind::vertex || index >= laid.points.size()) {
    return std::nullopt;
  }
  return m_in_hand->index;
}

/// The point in hand, where there is more than one: a thing of one goes as a whole.
bool PointHand::remove() {
  const std::string id = m_session.selected();
  const auto vertex = vertexInHand();
  if (!vertex || tools::laidPointsOf(m_session.job(), id).points.size() < 2) return false;
  const base::Problems problems = m_session.edit(session::Session::tr("Take out a point"),
                                                 plan::removePoint(m_session.job(), id, *vertex));
  if (problems.empty()) {
    m_in_hand.reset();
  } else {
    m_warning = why(problems.front(), m_session.job());
  }
  return true;
}

bool PointHand::key(QKeyEvent& event) {
  if (event.key() == Qt::Key_Delete && !isActive()) return m_session.hasJob() && remove();
  if (!isActive()) return false;
  switch (event.key()) {
    case Qt::Key_Escape:
      return cancel(), true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
      if (!m_amiss) release();
      return true;
    case Qt::Key_Backspace:
      m_typed.chop(1);
      break;
    default:
      if (event.text().isEmpty() || !event.text()[0].isPrint()) return false;
      if (event.modifiers() & (Qt::ControlModifier | Qt::AltModifier)) return false;
      m_typed += event.text();
  }
  readTyped();
  return true;
}

std::optional<Qt::CursorShape> PointHand::cursor(QPointF at) const {
  if (gripAt(at)) return Qt::OpenHandCursor;
  return std::nullopt;
}

QString PointHand::hint() const {
  if (!m_session.hasJob()) return {};
  const auto laid = tools::laidPointsOf(m_session.job(), m_session.selected());
  if (laid.points.empty()) return {};
  if (laid.points.size() == 1) {
    return session::Session::tr("Drag it, or hold it and type: 1.20, 0.45. Delete takes it off.");
  }
  if (vertexInHand()) return session::Session::tr("Delete takes out the point in hand.");
  return session::Session::tr(
      "Drag a point, or the middle of a side for a new one; Delete takes out the one in hand.");
}

void PointHand::paintHandles(QPainter& painter, const drawing::Theme& theme) const {
  const auto laid = tools::laidPointsOf(m_session.job(), m_session.selected());
  if (laid.points.size() < 2) return;
  const double k = sight().scale;
  painter.setPen(QPen(paint::colour(theme.selection), 1.6 * k));
  const std::size_t n = laid.points.size();
  painter.setBrush(paint::colour(theme.paper));
  for (std::size_t i = 0; i < (laid.closed ? n : n - 1); ++i) {
    const QPointF middle =
        sight().widget(geometry::lerp(laid.points[i], laid.points[(i + 1) % n], 0.5));
    painter.drawEllipse(middle, 3.0 * k, 3.0 * k);
  }
  const auto in_hand = vertexInHand();
  for (std::size_t i = laid.first; i < n; ++i) {
    const bool held = in_hand && *in_hand == static_cast<int>(i);
    painter.setBrush(paint::colour(held ? theme.selection : theme.paper));
    const QPointF at = sight().widget(laid.points[i]);
    const double half = (held ? 5.5 : 4.5) * k;
    painter.drawRect(QRectF(at.x() - half, at.y() - half, 2 * half, 2 * half));
  }
}

QString PointHand::liveText() const {
  const plan::DisplayUnits units = m_session.job().display_units;
  const auto laid = tools::laidPointsOf(m_session.job(), m_grip->thing);
  const std::size_t n = laid.points.size();
  if (m_grip->kind == tools::PointGripKind::whole || n < 2) {
    const auto corner = tools::fromNearestCorner(m_session.job(), m_drag->at());
    if (!corner) return {};
    return session::Session::tr("%1 along, %2 off")
        .arg(printedLength(corner->along_m, units), printedLength(corner->off_m, units));
  }
  const auto i = static_cast<std::size_t>(m_grip->index) +
                 (m_grip->kind == tools::PointGripKind::side ? 1U : 0U);
  QStringList lengths;
  if (laid.closed || i > 0) {
    lengths << printedLength(geometry::distance(laid.points[(i + n - 1) % n], m_drag->at()), units);
  }
  if (laid.closed || i + 1 < n) {
    lengths << printedLength(geometry::distance(m_drag->at(), laid.points[(i + 1) % n]), units);
  }
  return lengths.join(QStringLiteral("  |  "));
}

void PointHand::paint(QPainter& painter, const drawing::Theme& theme, const QFont& font) const {
  if (!m_session.hasJob()) return;
  paintHandles(painter, theme);
  if (const auto vertex = vertexInHand(); vertex && !m_warning.isEmpty()) {
    const auto laid = tools::laidPointsOf(m_session.job(), m_session.selected());
    const QPointF at = sight().widget(laid.points[static_cast<std::size_t>(*vertex)]);
    paintPlate(painter, theme, font, sight(), at, m_warning, PlateTone::warning);
  }
  if (!m_drag || !m_grip) return;
  paintSnap(painter, theme, sight(), m_drag->snapped());
  if (tools::laidPointsOf(m_session.job(), m_grip->thing).points.size() == 1) {
    for (const auto& line : tools::toNearestWalls(m_session.job(), m_drag->at())) {
      paintDistance(painter, theme, font, sight(), line, m_session.job().display_units);
    }
  }
  paintPlate(painter, theme, font, sight(), m_pointer,
             m_typed.isEmpty() ? liveText() : QStringLiteral("%1 = %2|").arg(liveText(), m_typed),
             m_amiss ? PlateTone::warning : PlateTone::plain);
}

}  // namespace sumpwright::canvas
