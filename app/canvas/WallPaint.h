#pragma once
// How a place on a wall is shown while something is laid or dragged there: its body, what it is in
// line with, and the lengths a tape would show beside it.

#include "canvas/PlanHand.h"
#include "plan/Job.h"
#include "tools/WallStop.h"

namespace sumpwright::canvas {

struct WallSpan {
  plan::OnWall at;
  double width_m = 0.0;
  bool refused = false;  ///< drawn crossed out as well as in another colour
};

/// The stretch of the wall it takes; a line across where it has no width.
void paintSpan(QPainter& painter, const drawing::Theme& theme, const Sight& sight,
               const plan::Job& job, const WallSpan& span);
/// Dimension lines outside the wall: to the thing or corner on each side, the width between, and
/// farther out to the corners where a thing stands between.
void paintGaps(QPainter& painter, const drawing::Theme& theme, const QFont& font,
               const Sight& sight, const plan::Job& job, const WallSpan& span,
               const tools::WallGaps& gaps);
/// Guides, and the mark of what it rests on; each kind its own.
void paintStop(QPainter& painter, const drawing::Theme& theme, const Sight& sight,
               const plan::Job& job, const WallSpan& span, tools::StopKind kind,
               const std::vector<geometry::Segment>& guides);
/// Where a plate goes so that it stands inside the house, clear of the lengths outside.
QPointF plateAnchor(const Sight& sight, const plan::Job& job, const WallSpan& span,
                    QPointF pointer);
/// "1.20 from the left corner, 1.05 wide".
QString spanText(const plan::Job& job, const WallSpan& span);

}  // namespace sumpwright::canvas
