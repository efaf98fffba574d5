#pragma once
// The drill section as a picture: wall, floor and ground cut through at the sump, seen along the
// wall with the outside at the left; hole, pipe, seals and hollow as they will be built.

#include "build/DrillSection.h"
#include "drawing/DrawList.h"
#include "drawing/Theme.h"
#include "drawing/Voice.h"

namespace sumpwright::drawing {

struct SectionView {
  double width_mm = 73.0;
  double height_mm = 52.0;
  ThemeName theme = ThemeName::light;
  /// Layers named, heights on a ladder, distances from the hole: for the crew sheet, from some
  /// 150 mm by 100 mm. Else the few heights that a glance needs.
  bool dimensioned = false;
};

/// Fits the view at one scale, cut off at its edges. Where no hole is cored, wall, floor and ground
/// alone.
DrawList sectionDrawing(const build::DrillSection& section, const SectionView& view,
                        const Voice& voice);

}  // namespace sumpwright::drawing
