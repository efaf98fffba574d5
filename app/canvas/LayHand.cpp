#include "canvas/LayHand.h"

#include <QKeyEvent>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "canvas/LivePaint.h"
#include "geometry/Shapes.h"
#include "paint/Look.h"
#include "tools/LayTask.h"
#include "words/Words.h"

namespace sumpwright::canvas {

namespace {

// Own figures, all: a hand's reach and slip with a mouse.
constexpr double kLayReach_px = 8.0;
constexpr double kLaySlip_px = 4.0;

double slipOf(QPointF a, QPointF b) { return std::hypot(a.x() - b.x(), a.y() - b.y()); }

QString step(tools::LayShape shape, std::size_t points) {
  switch (shape) {
    case tools::LayShape::point:
      return session::Session::tr(
          "click its place, or type how far along the wall from the nearest corner and how far off "
          "it: 1.20, 0.45");
    case tools::LayShape::line:
      return points == 0 ? session::Session::tr("click where it begins")
                         : session::Session::tr(
                               "click on, or type a length; Enter ends it, Backspace takes a "
                               "point back");
    case tools::LayShape::area:
      break;
  }
  return points == 0 ? session::Session::tr("drag a rectangle, or click round it")
                     : session::Session::tr(
                           "click on round it, or type a length, or both sides: 3.6 x 2.8; "
                           "Enter closes it");
}

}  // namespace

bool LayHand::serves(tools::Task task) const { return tools::layModelOf(task).has_value(); }

void LayHand::begin(tools::Task) { cancel(); }

tools::Laying& LayHand::laying() {
  if (!m_laying) {
    m_laying.emplace(m_session.job(), *tools::layModelOf(m_tasks.task()),
                     bareUnit(m_session.job().display_units));
  } else if (m_laying->before() != m_session.job()) {
    m_laying->onto(m_session.job());
  }
  m_laying->look(sight().metres(kLayReach_px), sight().grid_m());
  m_laying->setText(m_typed.toStdString());
  return *m_laying;
}

void LayHand::aim(QPointF at) {
  m_pointer = at;
  m_on_plan = true;
  laying().move(sight().plan(at));
}

bool LayHand::press(QPointF at) {
  m_pressed = at;
  m_down = true;
  m_pulled = false;
  m_warning.clear();
  aim(at);
  return true;
}

void LayHand::move(QPointF at) {
  m_pointer = at;
  if (!m_down) return aim(at);
  const bool far = slipOf(at, m_pressed) > kLaySlip_px * sight().scale;
  // A line pulled out in one go: it begins where it was pressed, and a length typed is this leg's.
  const bool pulls = far && m_laying && m_laying->shape() == tools::LayShape::line;
  if (pulls && m_laying->points().empty()) click(m_pressed);
  const bool open = m_laying && m_laying->shape() == tools::LayShape::area &&
                    (m_pulled || m_laying->points().empty());
  if (!open || (!far && !m_pulled)) return aim(far ? at : m_pressed);
  m_pulled = true;
  laying().pullRectangle(sight().plan(m_pressed), sight().plan(at));
}

void LayHand::release() {
  if (!m_down) return;
  m_down = false;
  if (m_pulled) {
    m_pulled = false;
    if (m_typed.isEmpty()) return finish();
    enter();
    if (m_laying && m_laying->isRectangle()) beginAnew();
    return;
  }
  if (m_laying) click(m_pointer);
}

/// What is typed is taken as by Enter, never dropped for where the pointer is.
void LayHand::click(QPointF at) {
  laying().move(sight().plan(at));
  if (!m_typed.isEmpty()) return enter();
  if (laying().click(sight().plan(at))) finish();
}

/// A rectangle that cannot be is pulled anew; why it could not stays on show.
void LayHand::beginAnew() {
  m_laying.reset();
  m_typed.clear();
  laying().move(sight().plan(m_pointer));
}

void LayHand::enter() {
  switch (laying().enter()) {
    case tools::Laying::Typed::taken:
      m_typed.clear();
      return;
    case tools::Laying::Typed::done:
      m_typed.clear();
      return finish();
    case tools::Laying::Typed::unread:
      break;
  }
  m_warning = laying().points().empty()
                  ? session::Session::tr(
                        "Two lengths, please: along the wall from the nearest corner, and off it.")
                  : session::Session::tr("That is no length the program can read.");
}

/// Lays it as one step and begins the next; what cannot be stays, with the reason.
void LayHand::finish() {
  // Enter may end it with the button still down: letting that go lays nothing more.
  m_down = false;
  m_pulled = false;
  base::Result<plan::Job> laid = laying().finished();
  if (laid && std::holds_alternative<tools::LayStart>(m_laying->model())) {
    const geometry::Point start = m_laying->points().front();
    cancel();
    m_tasks.take(tools::Task::choose);
    return m_tape.beginCourtyard(start);
  }
  const plan::Job before = m_session.job();
  const base::Problems problems =
      m_session.edit(session::Session::tr("Lay: %1").arg(taskTitle()), std::move(laid));
  m_typed.clear();
  if (!problems.empty()) {
    m_warning = why(problems.front(), m_session.job());
    // A rectangle is pulled anew; of what was clicked the last point can be taken back.
    if (m_laying->isRectangle()) beginAnew();
    return;
  }
  const bool ring = std::holds_alternative<tools::LayOutline>(m_laying->model()) ||
                    std::holds_alternative<tools::LayCourtyard>(m_laying->model());
  m_laying.reset();
  m_warning.clear();
  if (ring) return m_tasks.take(tools::Task::choose);
  m_session.select(tools::laidLast(before, m_session.job()));
}

void LayHand::hover(QPointF at) {
  m_warning.clear();
  aim(at);
}

void LayHand::leave() { m_on_plan = isActive(); }

void LayHand::cancel() {
  m_laying.reset();
  m_down = false;
  m_pulled = false;
  m_typed.clear();
  m_warning.clear();
}

bool LayHand::isActive() const {
  return m_down || !m_typed.isEmpty() || (m_laying && !m_laying->points().empty());
}

/// Figures at any time; letters (a direction, an x between two sides) once something is begun, for
/// else they begin a line of the panel.
bool LayHand::takesText(const QString& text) const {
  if (text.isEmpty() || !text[0].isPrint()) return false;
  if (!m_typed.isEmpty()) return true;
  const bool begun = m_laying && !m_laying->points().empty();
  return text[0].isDigit() || text[0] == QLatin1Char('.') || (begun && text[0].isLetter());
}

bool LayHand::key(QKeyEvent& event) {
  const bool active = isActive();
  switch (event.key()) {
    case Qt::Key_Escape:
      if (active) cancel();
      return active;
    case Qt::Key_Return:
    case Qt::Key_Enter:
      if (active) enter();
      return active;
    case Qt::Key_Backspace:
      if (!m_typed.isEmpty()) {
        m_typed.chop(1);
      } else if (!active || !laying().back()) {
        return active;
      }
      break;
    default:
      if (event.modifiers() & (Qt::ControlModifier | Qt::AltModifier)) return false;
      if (!takesText(event.text())) return false;
      m_typed += event.text();
  }
  m_warning.clear();
  if (m_pulled) {
    laying().pullRectangle(sight().plan(m_pressed), sight().plan(m_pointer));
  } else {
    laying();
  }
  return true;
}

QString LayHand::hint() const {
  const auto model = tools::layModelOf(m_tasks.task());
  if (!model) return {};
  return step(*tools::shapeOf(*model), m_laying ? m_laying->points().size() : 0);
}

QString LayHand::liveText() const {
  const plan::DisplayUnits units = m_session.job().display_units;
  if (m_laying->isRectangle()) {
    const auto& p = m_laying->points();
    return QStringLiteral("%1 × %2").arg(printedLength(geometry::distance(p[0], p[1]), units),
                                         printedLength(geometry::distance(p[1], p[2]), units));
  }
  if (const auto leg = m_laying->leg()) {
    const geometry::Vec along = leg->b - leg->a;
    if (geometry::norm(along) <= 0.0) return {};
    double bearing = std::atan2(along.x, along.y) * 180.0 / std::numbers::pi;
    bearing = std::fmod(bearing - m_session.job().plan.north_deg + 720.0, 360.0);
    return QStringLiteral("%1   %2°")
        .arg(printedLength(geometry::norm(along), units))
        .arg(std::fmod(std::round(bearing * 10.0) / 10.0, 360.0));
  }
  if (!m_laying->aimed()) return {};
  const auto corner = tools::fromNearestCorner(m_session.job(), m_laying->aimed()->at);
  if (!corner) return {};
  return session::Session::tr("%1 along, %2 off")
      .arg(printedLength(corner->along_m, units), printedLength(corner->off_m, units));
}

void LayHand::paintLaid(QPainter& painter, const drawing::Theme& theme) const {
  const double k = sight().scale;
  QPolygonF laid;
  for (const geometry::Point p : m_laying->points()) laid << sight().widget(p);
  const auto leg = m_laying->leg();
  if (m_laying->shape() == tools::LayShape::area && laid.size() + (leg ? 1 : 0) > 2) {
    QPolygonF area = laid;
    if (leg) area << sight().widget(leg->b);
    QColor tint = paint::colour(theme.selection);
    tint.setAlpha(40);
    painter.setPen(Qt::NoPen);
    painter.setBrush(tint);
    painter.drawPolygon(area);
  }
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(paint::colour(theme.selection), 2.4 * k));
  if (m_laying->isRectangle()) {
    painter.drawPolygon(laid);
  } else {
    painter.drawPolyline(laid);
  }
  if (leg) {
    painter.setPen(QPen(paint::colour(theme.selection), 2.0 * k, Qt::DashLine));
    painter.drawLine(sight().widget(leg->a), sight().widget(leg->b));
  }
  painter.setPen(QPen(paint::colour(theme.selection), 1.6 * k));
  painter.setBrush(paint::colour(theme.paper));
  for (const QPointF& p : laid) painter.drawEllipse(p, 4.0 * k, 4.0 * k);
}

/// Before the first point: how far the two nearest walls are.
void LayHand::paintToWalls(QPainter& painter, const drawing::Theme& theme,
                           const QFont& font) const {
  const geometry::Point at = m_laying->aimed()->at;
  for (const geometry::Segment& line : tools::toNearestWalls(m_session.job(), at)) {
    paintDistance(painter, theme, font, sight(), line, m_session.job().display_units);
  }
}

void LayHand::paint(QPainter& painter, const drawing::Theme& theme, const QFont& font) const {
  if (!m_session.hasJob() || !m_laying || !m_on_plan) return;
  paintLaid(painter, theme);
  if (m_laying->aimed()) {
    const bool first = m_laying->points().empty();
    if (first && m_laying->shape() == tools::LayShape::point) paintToWalls(painter, theme, font);
    paintSnap(painter, theme, sight(), *m_laying->aimed());
  }
  if (!m_warning.isEmpty()) {
    return paintPlate(painter, theme, font, sight(), m_pointer, m_warning, PlateTone::warning);
  }
  const QString live = liveText();
  paintPlate(painter, theme, font, sight(), m_pointer,
             m_typed.isEmpty() ? live : QStringLiteral("%1 = %2|").arg(live, m_typed));
}

}  // namespace sumpwright::canvas
