#include "canvas/WallDragHand.h"

#include <QKeyEvent>
#include <algorithm>
#include <cmath>

#include "canvas/HandPaint.h"
#include "canvas/TypedNumbers.h"
#include "canvas/WallPaint.h"
#include "paint/Look.h"
#include "tools/OutlineDrag.h"
#include "words/Words.h"

namespace sumpwright::canvas {

namespace {

// Own figures, all: a hand's reach and slip with a mouse.
constexpr double kEndReach_px = 9.0;
constexpr double kCornerFirst_px = 10.0;  // a corner's handle lies over what ends there
constexpr double kStopReach_px = 8.0;
constexpr double kMostStop_m = 0.10;  // own figure: from afar nothing jumps further
constexpr double kWallGrid_m = 0.05;  // own figure
constexpr double kDragSlip_px = 4.0;

}  // namespace

std::optional<tools::WallGrip> WallDragHand::gripAt(QPointF at) const {
  if (!m_session.hasJob()) return std::nullopt;
  const plan::Job& job = m_session.job();
  const geometry::Point at_m = sight().plan(at);
  if (const auto end =
          tools::wallEndAt(job, m_session.selected(), at_m, sight().metres(kEndReach_px))) {
    return end;
  }
  const auto outline = tools::outlineGripAt(job.plan, at_m, sight().metres(kCornerFirst_px), 0.0);
  if (outline && outline->kind == tools::GripKind::corner) return std::nullopt;
  const std::string id = m_pick(at);
  const auto thing = tools::wallThingOf(job, id);
  if (!thing || !tools::faceOf(job.plan, thing->at)) return std::nullopt;
  return tools::WallGrip{id, tools::WallPart::body};
}

bool WallDragHand::press(QPointF at) {
  reset();
  m_grip = gripAt(at);
  if (!m_grip) return false;
  m_pressed = m_pointer = at;
  m_session.select(m_grip->id);
  return true;
}

/// From the job as it is now, not as it was at the press: an undo may have come between.
bool WallDragHand::beginDrag() {
  const auto thing = tools::wallThingOf(m_session.job(), m_grip->id);
  if (!thing || !tools::faceOf(m_session.job().plan, thing->at)) return false;
  tools::WallSnapField field;
  field.reach_m = std::min(kMostStop_m, sight().metres(kStopReach_px));
  field.grid_m = kWallGrid_m;
  m_drag.emplace(m_session.job(), *m_grip, sight().plan(m_pressed), field);
  m_session.beginPreview();
  return true;
}

void WallDragHand::apply(base::Result<plan::Job> live) {
  m_refusal.reset();
  if (live) return m_session.preview(std::move(live).value());
  m_refusal = live.problems().front();  // what cannot be leaves the last that could
}

void WallDragHand::move(QPointF at) {
  m_pointer = at;
  if (!m_grip) return;
  const QPointF slip = at - m_pressed;
  if (!m_drag) {
    if (std::hypot(slip.x(), slip.y()) <= kDragSlip_px * sight().scale) return;
    if (!beginDrag()) return cancel();
  }
  if (!m_session.isPreviewing()) return cancel();  // undone or opened under the hand
  // A number that was typed holds against a hand that trembles.
  if (m_typed.isEmpty()) apply(m_drag->move(sight().plan(at)));
}

/// A typed place that cannot be, or cannot be read to its end, is not taken for the last that
/// could.
bool WallDragHand::isAmiss() const {
  if (m_typed.isEmpty()) return false;
  return m_refusal || !typedWhole(m_typed, bareUnit(m_session.job().display_units));
}

void WallDragHand::release() {
  if (isAmiss()) return cancel();
  const bool end = m_grip && m_grip->part != tools::WallPart::body;
  if (m_drag && m_session.isPreviewing()) {
    m_session.finishPreview(end ? session::Session::tr("Change a width")
                                : session::Session::tr("Move a thing"));
  }
  reset();
}

void WallDragHand::cancel() {
  if (m_drag && m_session.isPreviewing()) m_session.cancelPreview();
  reset();
}

void WallDragHand::reset() {
  m_grip.reset();
  m_drag.reset();
  m_refusal.reset();
  m_typed.clear();
}

void WallDragHand::takeTyped() {
  if (m_typed.isEmpty() && m_drag) return move(m_pointer);
  const auto lengths = typedLengths(m_typed, bareUnit(m_session.job().display_units));
  if (lengths.empty()) return;
  if (!m_drag && !beginDrag()) return cancel();
  if (!m_session.isPreviewing()) return cancel();
  apply(m_drag->set(lengths[0], lengths.size() > 1 ? std::optional(lengths[1]) : std::nullopt));
}

bool WallDragHand::key(QKeyEvent& event) {
  if (!m_grip) return false;
  if (event.key() == Qt::Key_Escape) return cancel(), true;
  if (event.key() == Qt::Key_Return || event.key() == Qt::Key_Enter) {
    if (isAmiss()) return true;
    return release(), true;
  }
  if (!takeNumberKey(m_typed, event)) return false;
  takeTyped();
  return true;
}

std::optional<Qt::CursorShape> WallDragHand::cursor(QPointF at) const {
  const auto grip = gripAt(at);
  if (!grip) return std::nullopt;
  return grip->part == tools::WallPart::body ? Qt::OpenHandCursor : Qt::SizeAllCursor;
}

QString WallDragHand::hint() const {
  if (!m_grip) return {};
  return m_grip->part == tools::WallPart::body
             ? session::Session::tr(
                   "Drag along the wall, or type how far from its left corner; Escape gives up.")
             : session::Session::tr("Drag the end, or type the width; Escape gives up.");
}

void WallDragHand::paintEnds(QPainter& painter, const drawing::Theme& theme) const {
  const auto thing = tools::wallThingOf(m_session.job(), m_session.selected());
  if (!thing || !(thing->width_m > 0.0) || !tools::faceOf(m_session.job().plan, thing->at)) return;
  const double half = 4.0 * sight().scale;
  painter.setPen(QPen(paint::colour(theme.selection), 1.6 * sight().scale));
  painter.setBrush(paint::colour(theme.paper));
  for (const double along_m : {0.0, thing->width_m}) {
    plan::OnWall end = thing->at;
    end.offset_m += along_m;
    painter.drawEllipse(sight().widget(tools::pointOn(m_session.job().plan, end)), half, half);
  }
}

void WallDragHand::paint(QPainter& painter, const drawing::Theme& theme, const QFont& font) const {
  if (!m_session.hasJob()) return;
  if (!m_drag || !m_session.isPreviewing()) return paintEnds(painter, theme);
  const plan::Job& job = m_session.job();
  const WallSpan span{m_drag->stop().at, m_drag->width_m(), m_refusal.has_value()};
  paintSpan(painter, theme, sight(), job, span);
  paintStop(painter, theme, sight(), job, span, m_drag->stop().kind, m_drag->stop().guides);
  QString text = spanText(job, span);
  if (!m_typed.isEmpty()) text = QStringLiteral("%1\n%2|").arg(text, m_typed);
  if (m_refusal) {
    const QString reason = why(*m_refusal, job);
    return paintPlate(painter, theme, font, sight(), plateAnchor(sight(), job, span, m_pointer),
                      m_typed.isEmpty() ? reason : text + QLatin1Char('\n') + reason,
                      PlateTone::warning);
  }
  const auto gaps =
      tools::gapsBeside(job, span.at, span.width_m, m_drag->storey(), m_drag->grip().id);
  if (gaps) paintGaps(painter, theme, font, sight(), job, span, *gaps);
  paintPlate(painter, theme, font, sight(), plateAnchor(sight(), job, span, m_pointer), text);
}

}  // namespace sumpwright::canvas
