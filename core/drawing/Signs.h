#pragma once
// Signs that say what colour also says: one shape for each state and each service.

#include "drawing/Sketch.h"
#include "drawing/Theme.h"

namespace sumpwright::drawing {

/// clear: round with a tick; advised against: triangle with an upright bar; not proven: diamond
/// with a question mark; refused: square with a cross. `size_mm` across.
void stateSign(Sketch& sketch, const Theme& theme, rules::State state, Point centre,
               double size_mm);

/// Electricity zigzag, gas outlined drop, water two waves, telecom two crossing strands, oil filled
/// drop, drain three bars, waste two bars, drawn for a plate of 20 px (scale 1).
void serviceSign(Sketch& sketch, plan::ServiceKind kind, const Colour& colour, Point centre,
                 double scale);

/// The sign on its plate, 5 mm across at scale 1.
void servicePlate(Sketch& sketch, const Theme& theme, plan::ServiceKind kind, Point centre,
                  double scale = 1.0);
inline constexpr double kPlateHalf_mm = 2.5;

}  // namespace sumpwright::drawing
