#pragma once
// Live dimensions over the plan.

#include "canvas/HandPaint.h"

namespace sumpwright::canvas {

/// A thin line with a tick at each end and its length on a plate in its middle; beside it where it
/// is too short to hold it.
void paintDistance(QPainter& painter, const drawing::Theme& theme, const QFont& font,
                   const Sight& sight, const geometry::Segment& line, plan::DisplayUnits units);

/// Where the plate of a distance stands, for what is pressed.
QRectF distancePlate(const QFont& font, const Sight& sight, const geometry::Segment& line,
                     const QString& text);

}  // namespace sumpwright::canvas
