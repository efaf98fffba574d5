#pragma once
// Outlines of a DXF drawing, in metres.

#include <string>
#include <vector>

#include "files/import/DxfDrawing.h"
#include "files/import/Outline.h"

namespace sumpwright::files {

/// What the user says about a drawing.
struct DxfChoice {
  double metres_per_unit = 0.001;
  std::vector<std::string> layers;  ///< empty: all
  double join_m = 0.005;            ///< ends so near meet (own figure)
  double sagitta_m = 0.005;         ///< an arc's chords leave it by no more (own figure)
};

/// Closed paths are outlines; the sides of all others are joined (LineJoin.h), layer by layer; an
/// outline is named after its layer. Arcs (bulges) become chords with all corners on the arc, so an
/// area within is at most too small, by less than the arcs' length times sagitta_m. Figures that
/// are not above 0, or not finite, are a problem: import.choice. The
/// reader's frame, for `origin`, is the drawing's, in metres.
base::Result<ImportedOutlines> outlinesOf(const DxfDrawing& drawing, const DxfChoice& choice);

}  // namespace sumpwright::files
