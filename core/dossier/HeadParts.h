#pragma once
// What head and verdict of a paper draw alike. Internal to core/dossier.

#include <string>
#include <vector>

#include "dossier/Flow.h"

namespace sumpwright::dossier {

/// A pipe that goes down through the ground into its pit.
void paintMark(Sketch& sketch, const drawing::Theme& theme, Point at);

/// One under the other from there down.
void paintLines(Sketch& sketch, const Desk& desk, const std::vector<std::string>& lines, Point at,
                const Font& font, const Colour& colour, drawing::HAlign align);

}  // namespace sumpwright::dossier
