#pragma once
// What a taped outline misses its start by: a dashed line where it is long, a lens that magnifies
// it where it is short. Internal.

#include "drawing/SheetContext.h"
#include "plan/Plan.h"

namespace sumpwright::drawing {

/// `letter` is that of the first corner. Nothing for fewer than three walls or a gap under half a
/// millimetre.
void closingGap(Sketch& sketch, const SheetContext& c, const plan::Ring& ring,
                const std::string& letter, const Voice& voice);

}  // namespace sumpwright::drawing
