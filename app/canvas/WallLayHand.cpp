#include "canvas/WallLayHand.h"

#include <QKeyEvent>
#include <algorithm>
#include <cmath>

#include "canvas/HandPaint.h"
#include "canvas/TypedNumbers.h"
#include "canvas/WallPaint.h"
#include "tools/ThingPlace.h"
#include "words/Words.h"

namespace sumpwright::canvas {

namespace {

// Own figures, all: a hand's reach and slip with a mouse.
constexpr double kWallReach_px = 40.0;
constexpr double kLeave_px = 14.0;
constexpr double kRestReach_px = 8.0;
constexpr double kMostRest_m = 0.10;  // own figure: from afar nothing jumps further

}  // namespace

void WallLayHand::begin(tools::Task task) {
  cancel();
  m_laid_under.reset();
  m_laid_at.reset();
  m_laying.emplace(task);
}

std::optional<tools::WallGhost> WallLayHand::ghost() const {
  if (!m_laying || !m_session.hasJob()) return std::nullopt;
  constexpr double kGrid_m = 0.05;  // own figure: openings stand by the brick, not the millimetre
  return m_laying->ghost(m_session.job(), kGrid_m,
                         std::min(kMostRest_m, sight().metres(kRestReach_px)));
}

void WallLayHand::hover(QPointF at) {
  m_pointer = at;
  if (m_laid_under) {
    const QPointF off = at - *m_laid_under;
    // What was just laid is no news to be refused for.
    if (std::hypot(off.x(), off.y()) <= kLeave_px * sight().scale) return;
    m_laid_under.reset();
  }
  if (m_laying) m_laying->point(sight().plan(at), sight().metres(kWallReach_px));
}

void WallLayHand::leave() {
  if (m_laying && m_typed.isEmpty()) m_laying->point(std::nullopt, 0.0);
}

bool WallLayHand::press(QPointF at) {
  hover(at);
  m_pressed = ghost().has_value();
  return m_pressed;
}

void WallLayHand::release() {
  if (!m_pressed) return;
  m_pressed = false;
  lay();
}

void WallLayHand::cancel() {
  m_pressed = false;
  m_typed.clear();
  if (m_laying) m_laying->letGo();
}

void WallLayHand::lay() {
  const auto now = ghost();
  if (!now || now->refusal) return;  // the plate says why
  if (!typedWhole(m_typed, bareUnit(m_session.job().display_units))) return;
  base::Result<plan::Job> after = tools::laid(m_session.job(), *now);
  const std::string added = after ? tools::lastAdded(m_session.job(), *after) : std::string();
  const base::Problems problems =
      m_session.edit(session::Session::tr("Lay: %1").arg(taskTitle()), std::move(after));
  if (!problems.empty()) return;
  m_typed.clear();
  m_laying->letGo();
  m_laid_at = now->at;
  if (const auto next = ghost(); next && next->refusal) {
    m_laid_under = m_pointer;
    m_laying->point(std::nullopt, 0.0);
  }
  if (!added.empty()) m_session.select(added);
}

void WallLayHand::takeTyped() {
  if (m_typed.isEmpty()) return m_laying->letGo();
  m_laying->hold(m_session.job());
  if (!ghost()) m_laying->holdAt(*m_laid_at);
  const auto lengths = typedLengths(m_typed, bareUnit(m_session.job().display_units));
  m_laying->fix(!lengths.empty() ? std::optional(lengths[0]) : std::nullopt,
                lengths.size() > 1 ? std::optional(lengths[1]) : std::nullopt);
}

bool WallLayHand::key(QKeyEvent& event) {
  if (!m_laying || !m_session.hasJob()) return false;
  if (event.key() == Qt::Key_Escape) {
    if (!isActive()) return false;
    return cancel(), true;
  }
  if (event.key() == Qt::Key_Return || event.key() == Qt::Key_Enter) {
    if (!ghost()) return false;
    m_pressed = false;
    return lay(), true;
  }
  if (!ghost() && !m_laid_at) return false;  // no wall to measure along yet
  if (!takeNumberKey(m_typed, event)) return false;
  takeTyped();
  return true;
}

std::optional<Qt::CursorShape> WallLayHand::cursor(QPointF /*at*/) const {
  const auto now = ghost();
  if (!now) return std::nullopt;
  return now->refusal ? Qt::ForbiddenCursor : Qt::CrossCursor;
}

QString WallLayHand::hint() const {
  if (!m_typed.isEmpty()) {
    return session::Session::tr("Tab goes on to the width, Enter lays it, Escape takes it back.");
  }
  return session::Session::tr(
      "point at a wall and click, or type how far from its left corner. Escape ends.");
}

void WallLayHand::paint(QPainter& painter, const drawing::Theme& theme, const QFont& font) const {
  const auto now = ghost();
  if (!now) return;
  const plan::Job& job = m_session.job();
  const WallSpan span{now->at, now->width_m, now->refusal.has_value()};
  paintSpan(painter, theme, sight(), job, span);
  paintStop(painter, theme, sight(), job, span, now->kind, now->guides);
  if (!now->refusal) paintGaps(painter, theme, font, sight(), job, span, now->gaps);
  QString text = spanText(job, span);
  if (!m_typed.isEmpty()) text = QStringLiteral("%1\n%2|").arg(text, m_typed);
  if (now->refusal) {
    const QString reason = why(*now->refusal, job);
    return paintPlate(painter, theme, font, sight(), plateAnchor(sight(), job, span, m_pointer),
                      m_typed.isEmpty() ? reason : text + QLatin1Char('\n') + reason,
                      PlateTone::warning);
  }
  paintPlate(painter, theme, font, sight(), plateAnchor(sight(), job, span, m_pointer), text);
}

}  // namespace sumpwright::canvas
