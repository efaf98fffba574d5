#pragma once
// Drawings as rows of a paper.

#include "dossier/Flow.h"

namespace sumpwright::dossier {

/// The list with its top left corner there.
void placeDrawing(Sketch& sketch, const drawing::DrawList& list, Point at);

/// A row as high as the list, at the column's left edge.
Row figureRow(drawing::DrawList list, bool keep_with_next = false);

}  // namespace sumpwright::dossier
