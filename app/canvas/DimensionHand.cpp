#include "canvas/DimensionHand.h"

#include <QKeyEvent>
#include <cmath>

#include "canvas/LivePaint.h"
#include "paint/Look.h"
#include "plan/ThingEdits.h"
#include "tools/LengthText.h"
#include "words/Words.h"

namespace sumpwright::canvas {

namespace {

// Own figures, all: a hand's reach and slip with a mouse.
constexpr double kTieReach_px = 16.0;
constexpr double kLineReach_px = 7.0;
constexpr double kDimensionSlip_px = 4.0;

bool isDimension(const session::Session& session, const std::string& id) {
  if (!session.hasJob()) return false;
  for (const plan::Dimension& d : session.job().plan.dimensions) {
    if (d.id == id) return true;
  }
  return false;
}

}  // namespace

tools::DimensionPull& DimensionHand::pull() {
  if (m_pull && m_pull->before() != m_session.job()) m_pull.reset();  // an undo came between
  if (!m_pull) m_pull.emplace(m_session.job());
  return *m_pull;
}

void DimensionHand::aim(QPointF at) {
  m_pointer = at;
  m_warning.clear();
  pull().move(sight().plan(at), sight().metres(kTieReach_px), sight().grid_m());
  readTyped();
}

bool DimensionHand::press(QPointF at) {
  m_down = true;
  aim(at);
  return true;
}

void DimensionHand::move(QPointF at) { aim(at); }

void DimensionHand::release() {
  if (!m_down) return;
  m_down = false;
  const bool had_first = pull().from().has_value();
  if (pull().click(sight().plan(m_pointer), sight().metres(kTieReach_px), sight().grid_m())) {
    readTyped();
    return finish();
  }
  if (pull().from().has_value() == had_first && !pull().to()) {
    m_warning = session::Session::tr("Nothing to measure to here: corners, jambs, ends of lines.");
  }
}

void DimensionHand::readTyped() {
  if (m_typed.isEmpty() || !m_pull || !m_pull->to()) return;
  const auto length =
      tools::readLength(m_typed.toStdString(), bareUnit(m_session.job().display_units));
  if (length.ok()) m_pull->setOff(length.metres.front());
}

void DimensionHand::finish() {
  const auto units = bareUnit(m_session.job().display_units);
  if (!m_typed.isEmpty() && !tools::readLength(m_typed.toStdString(), units).ok()) {
    m_warning = session::Session::tr("That is no length the program can read.");
    return;
  }
  const base::Problems problems =
      m_session.edit(session::Session::tr("Pull out a dimension"), pull().finished());
  if (!problems.empty()) {
    m_warning = why(problems.front(), m_session.job());
    return;
  }
  cancel();
  m_session.select(m_session.job().plan.dimensions.back().id);
}

void DimensionHand::cancel() {
  m_pull.reset();
  m_down = false;
  m_typed.clear();
  m_warning.clear();
}

bool DimensionHand::key(QKeyEvent& event) {
  if (!isActive()) return false;
  switch (event.key()) {
    case Qt::Key_Escape:
      return cancel(), true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
      if (pull().to()) finish();
      return true;
    case Qt::Key_Backspace:
      if (m_typed.isEmpty()) {
        pull().back();
      } else {
        m_typed.chop(1);
      }
      break;
    default:
      if (!pull().to() || event.text().isEmpty() || !event.text()[0].isPrint()) return false;
      if (event.modifiers() & (Qt::ControlModifier | Qt::AltModifier)) return false;
      m_typed += event.text();
  }
  m_warning.clear();
  readTyped();
  return true;
}

QString DimensionHand::hint() const {
  if (m_pull && m_pull->to()) {
    return session::Session::tr("click how far off the line stands, or type it");
  }
  if (m_pull && m_pull->from()) return session::Session::tr("click what it measures to");
  return session::Session::tr("click what it measures from: a corner, a jamb, an end of a line");
}

void DimensionHand::paint(QPainter& painter, const drawing::Theme& theme, const QFont& font) const {
  if (!m_session.hasJob() || !m_pull) return;
  const double k = sight().scale;
  const auto mark = [&](const std::optional<tools::TiePlace>& tie) {
    if (!tie) return;
    const QPointF at = sight().widget(tie->at);
    painter.setPen(QPen(paint::colour(theme.selection), 2.0 * k));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(QRectF(at.x() - 6 * k, at.y() - 6 * k, 12 * k, 12 * k));
  };
  mark(m_pull->from());
  mark(m_pull->to());
  mark(m_pull->hovered());
  const auto& from = m_pull->from();
  const auto& to = m_pull->to() ? m_pull->to() : m_pull->hovered();
  if (from && to) {
    const geometry::Vec along = to->at - from->at;
    const geometry::Vec off = (m_pull->off_m() / geometry::norm(along)) * geometry::left(along);
    const geometry::Segment line{from->at + off, to->at + off};
    painter.setPen(QPen(paint::colour(theme.selection), 1.0 * k, Qt::DashLine));
    painter.drawLine(sight().widget(from->at), sight().widget(line.a));
    painter.drawLine(sight().widget(to->at), sight().widget(line.b));
    paintDistance(painter, theme, font, sight(), line, m_session.job().display_units);
  }
  if (!m_warning.isEmpty()) {
    paintPlate(painter, theme, font, sight(), m_pointer, m_warning, PlateTone::warning);
  } else if (m_pull->to()) {
    const QString off = session::Session::tr("%1 off").arg(
        printedLength(std::abs(m_pull->off_m()), m_session.job().display_units));
    paintPlate(painter, theme, font, sight(), m_pointer,
               m_typed.isEmpty() ? off : QStringLiteral("%1 = %2|").arg(off, m_typed));
  }
}

std::string DimensionDragHand::under(QPointF at) const {
  if (!m_session.hasJob()) return {};
  return tools::dimensionAt(m_session.job(), sight().plan(at), sight().metres(kLineReach_px));
}

bool DimensionDragHand::press(QPointF at) {
  m_dimension = under(at);
  if (m_dimension.empty()) return false;
  m_pressed = at;
  m_before.reset();
  m_session.select(m_dimension);
  return true;
}

void DimensionDragHand::move(QPointF at) {
  if (m_dimension.empty()) return;
  if (!m_before) {
    const QPointF slip = at - m_pressed;
    if (std::hypot(slip.x(), slip.y()) <= kDimensionSlip_px * sight().scale) return;
    m_before = m_session.job();
    m_session.beginPreview();
  } else if (!m_session.isPreviewing()) {
    return cancel();  // undone under the hand
  }
  auto live = tools::dimensionThrough(*m_before, m_dimension, sight().plan(at), sight().grid_m());
  if (live) m_session.preview(std::move(live).value());
}

void DimensionDragHand::release() {
  if (m_before) m_session.finishPreview(session::Session::tr("Move a dimension"));
  m_before.reset();
  m_dimension.clear();
}

void DimensionDragHand::cancel() {
  if (m_before) m_session.cancelPreview();
  m_before.reset();
  m_dimension.clear();
}

bool DimensionDragHand::key(QKeyEvent& event) {
  if (event.key() == Qt::Key_Escape && isActive()) return cancel(), true;
  return false;
}

std::optional<Qt::CursorShape> DimensionDragHand::cursor(QPointF at) const {
  if (under(at).empty()) return std::nullopt;
  return Qt::OpenHandCursor;
}

QString DimensionDragHand::hint() const {
  if (!isDimension(m_session, m_session.selected())) return {};
  return session::Session::tr(
      "Drag the dimension line nearer or further off; Delete takes it off.");
}

}  // namespace sumpwright::canvas
