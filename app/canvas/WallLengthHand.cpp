#include "canvas/WallLengthHand.h"

#include <QKeyEvent>

#include "canvas/LivePaint.h"
#include "paint/Look.h"
#include "plan/OutlineEdits.h"
#include "tools/LengthText.h"
#include "words/Words.h"

namespace sumpwright::canvas {

namespace {

// Own figures.
constexpr double kOffWall_px =
    64.0;  // outside bands, tags and a wall's own length while it is taped
constexpr double kPlateReach_px = 6.0;

}  // namespace

std::optional<WallLengthHand::ChosenWall> WallLengthHand::chosen() const {
  if (!m_session.hasJob() || m_session.selected().empty()) return std::nullopt;
  const auto& rings = m_session.job().plan.rings;
  for (std::size_t r = 0; r < rings.size(); ++r) {
    const plan::Ring& ring = rings[r];
    if (!ring.closed || ring.walls.size() != ring.corners.size()) continue;
    for (std::size_t i = 0; i < ring.walls.size(); ++i) {
      if (ring.walls[i].id != m_session.selected()) continue;
      const geometry::Point a = ring.corners[i];
      const geometry::Point b = ring.corners[(i + 1) % ring.corners.size()];
      const double length = geometry::distance(a, b);
      if (length <= 0.0) return std::nullopt;
      const geometry::Vec out = (-sight().metres(kOffWall_px) / length) * geometry::left(b - a);
      return ChosenWall{static_cast<int>(r), static_cast<int>(i), {a + out, b + out}};
    }
  }
  return std::nullopt;
}

std::optional<QRectF> WallLengthHand::plate() const {
  const auto wall = chosen();
  if (!wall) return std::nullopt;
  const QString text =
      printedLength(geometry::distance(wall->line.a, wall->line.b), m_session.job().display_units);
  const double reach = kPlateReach_px * sight().scale;
  return distancePlate(m_font, sight(), wall->line, text).adjusted(-reach, -reach, reach, reach);
}

bool WallLengthHand::press(QPointF at) {
  const auto on = plate();
  if (!on || !on->contains(at)) return cancel(), false;
  m_typing = true;
  m_wall = m_session.selected();
  m_typed.clear();
  m_warning.clear();
  return true;
}

void WallLengthHand::cancel() {
  m_typing = false;
  m_typed.clear();
  m_warning.clear();
}

void WallLengthHand::take() {
  const auto wall = chosen();
  if (!wall || m_wall != m_session.selected() || m_typed.trimmed().isEmpty()) return cancel();
  const auto length =
      tools::readLength(m_typed.toStdString(), bareUnit(m_session.job().display_units));
  if (!length.ok()) {
    m_warning = session::Session::tr("That is no length the program can read.");
    return;
  }
  const base::Problems problems = m_session.edit(
      session::Session::tr("Set a wall's length"),
      plan::setWallLength(m_session.job(), wall->ring, wall->edge, length.metres.front()));
  if (problems.empty()) return cancel();
  m_warning = why(problems.front(), m_session.job());
}

bool WallLengthHand::key(QKeyEvent& event) {
  if (!m_typing) return false;
  switch (event.key()) {
    case Qt::Key_Escape:
      return cancel(), true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
      return take(), true;
    case Qt::Key_Backspace:
      m_typed.chop(1);
      break;
    default:
      if (event.text().isEmpty() || !event.text()[0].isPrint()) return false;
      if (event.modifiers() & (Qt::ControlModifier | Qt::AltModifier)) return false;
      m_typed += event.text();
  }
  m_warning.clear();
  return true;
}

std::optional<Qt::CursorShape> WallLengthHand::cursor(QPointF at) const {
  const auto on = plate();
  if (on && on->contains(at)) return Qt::IBeamCursor;
  return std::nullopt;
}

QString WallLengthHand::hint() const {
  if (m_typing) return session::Session::tr("Type the wall's length; Enter sets it.");
  if (!chosen()) return {};
  return session::Session::tr("Click the wall's length to type another; drag it to move the wall.");
}

void WallLengthHand::paint(QPainter& painter, const drawing::Theme& theme,
                           const QFont& font) const {
  m_font = font;
  const auto wall = chosen();
  if (!wall) return;
  paintDistance(painter, theme, font, sight(), wall->line, m_session.job().display_units);
  if (!m_typing) return;
  const auto on = plate();
  const double k = sight().scale;
  painter.setPen(QPen(paint::colour(theme.selection), 2.4 * k));
  painter.setBrush(Qt::NoBrush);
  painter.drawRoundedRect(*on, 4 * k, 4 * k);
  const QPointF at = on->topRight() - QPointF(8, 14) * k;  // beside it, not over it
  if (!m_warning.isEmpty()) {
    return paintPlate(painter, theme, font, sight(), at, m_warning, PlateTone::warning);
  }
  paintPlate(painter, theme, font, sight(), at, m_typed + QLatin1Char('|'));
}

}  // namespace sumpwright::canvas
