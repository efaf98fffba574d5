#pragma once
// What hands write and paint in common.

#include <QPainter>

#include "canvas/PlanHand.h"
#include "plan/Kinds.h"
#include "tools/LengthText.h"
#include "tools/Snap.h"

namespace sumpwright::canvas {

/// A length to the millimetre, or to an eighth of an inch.
QString printedLength(double metres, plan::DisplayUnits units);
tools::BareUnit bareUnit(plan::DisplayUnits units);

/// Lines and marks of a snap; each kind has its own mark, never colour alone.
void paintSnap(QPainter& painter, const drawing::Theme& theme, const Sight& sight,
               const tools::Snapped& snapped);

enum class PlateTone { plain, warning };
/// A plate with a text beside the pointer, kept in sight; a warning carries a sign. Nothing for an
/// empty text.
void paintPlate(QPainter& painter, const drawing::Theme& theme, const QFont& font,
                const Sight& sight, QPointF at, const QString& text,
                PlateTone tone = PlateTone::plain);

}  // namespace sumpwright::canvas
