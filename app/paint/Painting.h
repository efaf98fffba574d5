#pragma once
// Paints draw lists with Qt: screen, printer, PDF, SVG and PNG share this. No widgets.

#include <QFont>
#include <QImage>
#include <QPainter>

#include "drawing/DrawList.h"

namespace sumpwright::paint {

/// `units_per_mm`: painter units for a millimetre of the list (on screen 4 at 100 %, since 1 px is
/// 0.25 mm). The list's origin comes to the painter's origin. The painter's state is kept.
void paintDrawList(QPainter& painter, const drawing::DrawList& list, double units_per_mm);

/// The same onto a picture of solid pixels, its upper and its lower half at the same time where a
/// second core is free; to the eye what one painter would have painted (lines that are cut where
/// the halves meet are rounded otherwise).
void paintOn(QImage& picture, const drawing::DrawList& list, double units_per_mm);

/// The program's font: B612, then DejaVu Sans, then what the system has; not hinted, so that widths
/// are the same at every size.
QFont drawingFont(const drawing::Font& font);

}  // namespace sumpwright::paint
