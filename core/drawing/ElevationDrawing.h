#pragma once
// The unrolled elevation: the walls one after another as seen from outside, corners folded flat;
// chainage across, heights above finished floor up, both to one scale. Rings follow each other with
// a gap. Two layers: what stands whatever the run does, and the run with its verdict.
//
// Roofs are for the eye alone: the job holds none. Eaves and openings without heights are drawn at
// usual ones, dashed.

#include <optional>
#include <string>
#include <vector>

#include "drawing/Box.h"
#include "drawing/DrawList.h"
#include "drawing/Theme.h"
#include "drawing/Voice.h"
#include "siting/Study.h"

namespace sumpwright::drawing {

struct ElevationView {
  double width_mm = 190.0;
  double height_mm = 130.0;
  ThemeName theme = ThemeName::light;
  double mm_per_m = 13.75;
  double left_m = 0.0;     ///< unrolled distance at the left of the walls' room
  double top_m = 5.0;      ///< height at its top
  double label_mm = 12.0;  ///< column of heights at the left; 0: none
  double head_mm = 6.0;    ///< legend on top; 0: none
  /// Of the run of a sump there: names of openings stand clear of it. Not for a run that is
  /// dragged.
  std::optional<perimeter::Place> keep_clear;
  bool strip = false;  ///< the whole house, small: no zone and no words but the walls' names
  bool operator==(const ElevationView&) const = default;
};

/// A place on a wall and a height above finished floor.
struct ElevationSpot {
  perimeter::Place place;
  double height_m = 0.0;
};

/// Distance along the unrolled walls, with the gaps between rings; and of all of them.
double unrolled_m(const siting::Study& study, perimeter::Place place);
double unrolledLength_m(const siting::Study& study);

/// The whole house in a strip that high or less: the scale follows the width.
ElevationView elevationStrip(const siting::Study& study, double width_mm, double height_mm,
                             ThemeName theme);
/// The part about a place, as large as the height lets it be, at most 14 mm to a metre; where the
/// whole house is not wider it stands in the middle. `zoom` times that scale.
ElevationView elevationAbout(const siting::Study& study, perimeter::Place place, double width_mm,
                             double height_mm, ThemeName theme, double zoom = 1.0);

Point elevationPoint(const siting::Study& study, const ElevationView& view, ElevationSpot spot);
/// The nearest place on the walls, and the height (as it is, above or below all there is).
ElevationSpot elevationSpot(const siting::Study& study, const ElevationView& view, Point at_mm);
/// The id of the opening drawn there, or "".
std::string elevationOpeningAt(const siting::Study& study, const ElevationView& view, Point at_mm);
/// Unrolled distances from and to which the view shows.
geometry::Interval elevationShown(const ElevationView& view);

/// Ground, walls, roofs, openings and where no outlet may be: the same wherever the run of a sump
/// goes.
DrawList elevationBase(const siting::Study& study, const ElevationView& view, const Voice& voice);
/// The verdict lane alone.
DrawList elevationLane(const siting::Study& study, const ElevationView& view, const Voice& voice);
/// The verdict lane, and the run of the sump at the assessed place: riser, fan, isolator, core,
/// discharge and what is nearest to it. Without a discharge only the core. Of other cored sumps the
/// line of their run, and all their numbers. Its words keep off `words`, those of the
/// base (wordsOf() in Box.h).
DrawList elevationMarker(const siting::Study& study, const siting::Assessment& assessment,
                         const std::string& sump, const ElevationView& view, const Voice& voice,
                         const std::vector<Box>& words = {});

}  // namespace sumpwright::drawing
