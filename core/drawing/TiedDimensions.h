#pragma once
// Dimension lines that are tied to what they measure: as they stand in the job, on every drawing of
// the plan.

#include <vector>

#include "drawing/SheetContext.h"
#include "drawing/Voice.h"
#include "plan/Job.h"

namespace sumpwright::drawing {

/// A dimension's line on the page, and the plate its words stand on.
struct TiedDimension {
  const plan::Dimension* dimension = nullptr;  ///< of the job
  geometry::Segment line;
  geometry::Segment measured;  ///< what it measures, on the page
  Text words;
  std::vector<Point> plate;
};

/// Those that have both their ends, in file order; the job must outlive them.
std::vector<TiedDimension> tiedDimensions(const SheetContext& c, const plan::Job& job,
                                          const Voice& voice);

/// Each with extension lines, oblique ticks and its words in the line; the chosen one
/// (PlanView::selected) heavier and in the colour of what is chosen.
void paintTiedDimensions(Sketch& sketch, const SheetContext& c,
                         const std::vector<TiedDimension>& dimensions);

}  // namespace sumpwright::drawing
