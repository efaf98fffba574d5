#pragma once
// The house as a tradesman's plan, its stretches, and the sump on it. Two layers, so that a drag
// redraws only the second: planBase depends on study and view alone, planMarker on the place too.

#include <optional>
#include <string>

#include "drawing/Box.h"
#include "drawing/DrawList.h"
#include "drawing/Theme.h"
#include "drawing/Voice.h"
#include "siting/Study.h"

namespace sumpwright::drawing {

/// A window onto the plan: true scale, north as drawn.
struct PlanView {
  double width_mm = 200.0;
  double height_mm = 150.0;
  double mm_per_m = 10.0;  ///< 1:100 on paper is 10; on screen 1 px = 0.25 mm
  Point centre_m;          ///< plan point at the middle of the view
  ThemeName theme = ThemeName::light;
  bool grid = true;                 ///< 1 m / 5 m grid, following zoom
  bool furniture = true;            ///< north point and scale bar in the view's corner
  bool overall_dimensions = false;  ///< paper: overall dimensions of the footprint
  std::string selected;             ///< id of a thing to outline as selected
  /// Paper: labels leave room for a marker with its ties at this place.
  std::optional<perimeter::Place> keep_clear;
};

Point toPage(const PlanView& view, Point plan_m);
Point toPlan(const PlanView& view, Point page_mm);
/// The view that shows the whole plan with its outside things, with a margin for bands and tags.
PlanView fitted(const siting::Study& study, double width_mm, double height_mm, ThemeName name);

/// Things outside the walls widen a view by no more than this.
inline constexpr double kGarden_m = 1.2;
/// The smallest view that holds the plan at a scale with bands, tags and dimensions around it.
PlanView atScale(const siting::Study& study, double mm_per_m, ThemeName name,
                 double garden_m = kGarden_m);

/// North point and scale bar alone, in the top left corner, no higher than kFurnitureHeight_mm; for
/// papers, which give them a place of their own.
DrawList planFurniture(const siting::Study& study, const PlanView& view, const Voice& voice);
inline constexpr double kFurnitureWidth_mm = 66.0;
inline constexpr double kFurnitureHeight_mm = 16.5;

DrawList planBase(const siting::Study& study, const PlanView& view, const Voice& voice);
/// Pit, core, riser ring, stem and grip with the state's sign; distances to what refuses or is
/// nearest, the limit as a dashed arc; ties to two fixed features when `ties`. Its words keep off
/// `words`, those of the base (wordsOf() in Box.h), as far as there is room.
/// `number` stands at the grip where it is not 0 (neededNumber() in plan/SumpList.h).
DrawList planMarker(const siting::Study& study, const siting::Assessment& assessment,
                    const PlanView& view, const Voice& voice, bool ties = false,
                    const std::vector<Box>& words = {}, int number = 0);
/// Where the grip is drawn, for hit tests; mm on the page.
Point gripCentre(const siting::Study& study, const siting::Assessment& assessment,
                 const PlanView& view);
inline constexpr double kGripRadius_mm = 4.75;  ///< 38 px across

/// Where a sump in the wall is drawn.
struct SumpSign {
  std::string id;
  perimeter::Place place;
  Point hole;  ///< on the outside face
  Point grip;
};
/// Of all cored sumps that stand on a ring, in the order of the job.
std::vector<SumpSign> sumpSigns(const siting::Study& study, const PlanView& view);
/// The sumps in the wall but `marked`, which planMarker() draws: each as built, with its number;
/// with `grips` its sign on a smaller grip, without them as it is drawn while the house is
/// surveyed.
DrawList otherSumps(const siting::Study& study, const PlanView& view, const Voice& voice,
                    const std::string& marked, bool grips = true);

}  // namespace sumpwright::drawing
