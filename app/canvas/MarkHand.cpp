#include "canvas/MarkHand.h"

#include <QKeyEvent>
#include <cmath>

#include "canvas/LivePaint.h"
#include "paint/Look.h"
#include "plan/GapEdits.h"
#include "plan/OutlineEdits.h"
#include "tools/LengthText.h"
#include "words/Words.h"

namespace sumpwright::canvas {

namespace {

// Own figures, all: a hand's reach and slip with a mouse.
constexpr double kMarkReach_px = 12.0;

}  // namespace

void MarkHand::begin(tools::Task task) {
  cancel();
  m_splits = task == tools::Task::split_wall;
}

void MarkHand::aim(QPointF at) {
  m_pointer = at;
  m_warning.clear();
  const geometry::Point place = sight().plan(at);
  const double reach = sight().metres(kMarkReach_px);
  if (m_splits) {
    m_wall = tools::wallMarkAt(m_session.job(), place, reach, sight().grid_m());
  } else {
    m_rising = tools::risingMarkAt(m_session.job(), place, reach, sight().grid_m());
    // The second end stays on the wall of the first.
    if (m_gap_from && (!m_rising || m_rising->wall != m_gap_from->wall)) m_rising.reset();
  }
  readTyped();
}

void MarkHand::readTyped() {
  m_amiss = false;
  if (m_typed.isEmpty()) return;
  const auto length =
      tools::readLength(m_typed.toStdString(), bareUnit(m_session.job().display_units));
  m_amiss = !length.ok();
  if (m_amiss) return;
  const double at_m = length.metres.front();
  if (!m_splits) return readAlong(at_m);
  if (!m_wall) return;
  const auto typed = tools::withOffset(*m_wall, at_m);
  m_amiss = !typed;
  if (typed) m_wall = typed;
}

/// After the first end of a gap: how wide, to the side the pointer is on.
void MarkHand::readAlong(double at_m) {
  if (!m_gap_from && !m_rising) return;
  double along_m = at_m;
  if (m_gap_from) {
    const bool back = m_rising && m_rising->along_m < m_gap_from->along_m;
    along_m = m_gap_from->along_m + (back ? -at_m : at_m);
  }
  m_rising = tools::withAlong(m_session.job(), m_gap_from ? *m_gap_from : *m_rising, along_m);
  constexpr double kSameAlong_m = 1e-6;                            // rounding
  m_amiss = std::abs(m_rising->along_m - along_m) > kSameAlong_m;  // it runs past an end
}

bool MarkHand::press(QPointF at) {
  m_down = true;
  aim(at);
  return true;
}

void MarkHand::release() {
  if (!m_down) return;
  m_down = false;
  mark();
}

void MarkHand::push(const QString& text, base::Result<plan::Job> after) {
  const base::Problems problems = m_session.edit(text, std::move(after));
  m_typed.clear();
  m_amiss = false;
  if (problems.empty()) return;
  m_warning = why(problems.front(), m_session.job());
}

void MarkHand::mark() {
  if (m_amiss) {  // what was typed is not taken for where the pointer is
    m_warning = session::Session::tr("That cannot be read, or runs past the end of the wall.");
    return;
  }
  if (m_splits) {
    if (!m_wall) {
      m_warning = session::Session::tr("No wall here to split.");
      return;
    }
    return push(session::Session::tr("Split a wall"),
                plan::splitWall(m_session.job(), m_wall->ring, m_wall->edge, m_wall->offset_m));
  }
  if (!m_rising) {
    m_warning = m_gap_from ? session::Session::tr("The gap ends on the wall it begins on.")
                           : session::Session::tr("No rising wall here. Lay one first.");
    return;
  }
  if (!m_gap_from) {
    m_gap_from = m_rising;
    m_typed.clear();
    return;
  }
  const tools::RisingMark from = *m_gap_from;
  m_gap_from.reset();
  push(session::Session::tr("Lay a gap"),
       plan::addGap(m_session.job(), from.wall, from.along_m, m_rising->along_m));
}

/// Delete over a gap fills it.
bool MarkHand::fill() {
  if (m_splits || m_gap_from || !m_rising) return false;
  push(session::Session::tr("Fill a gap"),
       plan::fillGap(m_session.job(), m_rising->wall, m_rising->along_m));
  return true;
}

void MarkHand::leave() {
  if (isActive()) return;
  m_wall.reset();
  m_rising.reset();
}

void MarkHand::cancel() {
  m_wall.reset();
  m_rising.reset();
  m_gap_from.reset();
  m_down = false;
  m_typed.clear();
  m_amiss = false;
  m_warning.clear();
}

bool MarkHand::key(QKeyEvent& event) {
  switch (event.key()) {
    case Qt::Key_Escape:
      if (!isActive()) return false;
      return cancel(), true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
      if (!isActive()) return false;
      return mark(), true;
    case Qt::Key_Delete:
      return fill();
    case Qt::Key_Backspace:
      if (m_typed.isEmpty()) {
        if (!m_gap_from) return false;
        m_gap_from.reset();
        return true;
      }
      m_typed.chop(1);
      m_warning.clear();
      if (m_typed.isEmpty()) aim(m_pointer);  // back to where that is
      break;
    default: {
      m_warning.clear();
      const QString text = event.text();
      if (event.modifiers() & (Qt::ControlModifier | Qt::AltModifier)) return false;
      if (text.isEmpty() || !text[0].isPrint()) return false;
      if (m_typed.isEmpty() && !text[0].isDigit() && text[0] != QLatin1Char('.')) return false;
      if (!m_wall && !m_rising && !m_gap_from) return false;
      m_typed += text;
    }
  }
  readTyped();
  return true;
}

QString MarkHand::hint() const {
  if (m_splits) {
    return session::Session::tr(
        "click the wall where it is split, or type how far from its corner");
  }
  return m_gap_from ? session::Session::tr("click where the gap ends, or type how wide it is")
                    : session::Session::tr(
                          "click on a rising wall where a gap begins; Delete over one fills it");
}

QString MarkHand::liveText() const {
  const plan::DisplayUnits units = m_session.job().display_units;
  if (m_splits && m_wall) {
    const double whole = geometry::distance(m_wall->wall.a, m_wall->wall.b);
    return QStringLiteral("%1  |  %2")
        .arg(printedLength(m_wall->offset_m, units),
             printedLength(whole - m_wall->offset_m, units));
  }
  if (m_splits || !m_rising) return {};
  if (m_gap_from) {
    return session::Session::tr("gap %1").arg(
        printedLength(std::abs(m_rising->along_m - m_gap_from->along_m), units));
  }
  return session::Session::tr("%1 along").arg(printedLength(m_rising->along_m, units));
}

void MarkHand::paintWallMark(QPainter& painter, const drawing::Theme& theme,
                             const QFont& font) const {
  const double k = sight().scale;
  const geometry::Vec along = m_wall->wall.b - m_wall->wall.a;
  const geometry::Vec out =
      (-18.0 / (sight().camera.px_per_m * geometry::norm(along))) * geometry::left(along);
  const auto units = m_session.job().display_units;
  paintDistance(painter, theme, font, sight(), {m_wall->wall.a + out, m_wall->at + out}, units);
  paintDistance(painter, theme, font, sight(), {m_wall->at + out, m_wall->wall.b + out}, units);
  const QPointF at = sight().widget(m_wall->at);
  const QPointF in = sight().widget(m_wall->at - 1.4 * out) - at;
  painter.setPen(QPen(paint::colour(theme.selection), 2.6 * k));
  painter.drawLine(at - in, at + in);
}

void MarkHand::paintGapMark(QPainter& painter, const drawing::Theme& theme) const {
  const double k = sight().scale;
  painter.setPen(QPen(paint::colour(theme.selection), 2.6 * k));
  for (const auto& mark : {m_gap_from, m_rising}) {
    if (!mark) continue;
    const QPointF at = sight().widget(mark->at);
    painter.drawLine(at - QPointF(6, 6) * k, at + QPointF(6, 6) * k);
    painter.drawLine(at - QPointF(6, -6) * k, at + QPointF(6, -6) * k);
  }
}

void MarkHand::paint(QPainter& painter, const drawing::Theme& theme, const QFont& font) const {
  if (!m_session.hasJob()) return;
  if (m_splits && m_wall) paintWallMark(painter, theme, font);
  if (!m_splits) paintGapMark(painter, theme);
  if (!m_warning.isEmpty()) {
    return paintPlate(painter, theme, font, sight(), m_pointer, m_warning, PlateTone::warning);
  }
  const QString live = liveText();
  paintPlate(painter, theme, font, sight(), m_pointer,
             m_typed.isEmpty() ? live : QStringLiteral("%1 = %2|").arg(live, m_typed));
}

}  // namespace sumpwright::canvas
