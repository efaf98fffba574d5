#pragma once
// What the files that draw a field share. Internal.

#include "drawing/FieldDrawing.h"
#include "drawing/PlanContext.h"

namespace sumpwright::drawing {

/// A level's figure alone; a target's with its unit; a value's with its unit, two figures.
base::Message levelWords(FieldKind kind, double level);
base::Message targetWords(FieldKind kind, double level);
base::Message pascalWords(double pa);

/// Of the target where the fill is poorer or better.
Pen dottedTarget(const Colour& colour);

/// The hatch of a floor that has no figure, inside the even-odd area of the rings.
void bareHatch(Sketch& sketch, const Theme& theme, const std::vector<std::vector<Point>>& rings);

/// Colours of a field as shown.
struct FieldPaint {
  const Theme& theme;
  const FieldScale& scale;
  FieldKind kind;
  bool stale;
  explicit FieldPaint(const FieldShown& shown, ThemeName name)
      : theme(drawing::theme(name)),
        scale(fieldScale(shown.kind, name)),
        kind(shown.kind),
        stale(shown.stale) {}
  Colour of(std::size_t own) const {
    const Colour colour = scale.colours[own];
    return stale ? drained(colour, theme.paper) : colour;
  }
};

/// A contour on the page.
struct PageContour {
  double level = 0.0;
  bool target = false;
  std::vector<Point> line;
  bool closed = false;
};

void paintFieldAreas(Sketch& sketch, const FieldSheet& sheet, const FieldShown& shown,
                     const FieldPaint& paint, const std::vector<PageContour>& contours);
void paintFieldLabels(Sketch& sketch, const FieldSheet& sheet, const FieldShown& shown,
                      const FieldPaint& paint, const std::vector<PageContour>& contours,
                      const std::vector<HoleMark>& holes, const Voice& voice);

}  // namespace sumpwright::drawing
