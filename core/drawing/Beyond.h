#pragma once
// What a view cannot hold. On paper a thing outside the walls is drawn whole or not at all, and a
// line that leads out of the picture ends in a break mark.

#include <vector>

#include "drawing/PlanDrawing.h"

namespace sumpwright::drawing {

/// Paths and boundaries: they lead out of the picture anyway.
bool isLine(const plan::OutsideThing& thing);
/// Things with a place of their own that do not lie whole within the view, and lines of which
/// nothing does.
std::vector<const plan::OutsideThing*> beyond(const siting::Study& study, const PlanView& view);
/// Whether a buried run, path or boundary is cut by the view's edge.
bool linesGoOn(const siting::Study& study, const PlanView& view);
/// The view at its scale, moved and made higher (up to `height_mm`; its width is `width_mm`) so
/// that it holds as much as it can of what lies around the house, the nearest first.
PlanView holdingMost(const siting::Study& study, PlanView view, double width_mm, double height_mm);

}  // namespace sumpwright::drawing
