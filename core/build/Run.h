#pragma once
// The run above a sump once its discharge is placed: which of its parts a rule speaks of, where
// they stand, how it goes sideways. Metres; heights above finished floor level.

#include <optional>
#include <vector>

#include "build/Heights.h"
#include "rules/Judge.h"
#include "rules/Spans.h"

namespace sumpwright::build {

/// Taken where the job states no height of the fan (own figures): low, at a height to be worked on,
/// and so far over the ground of its place at the least; high, as far under the outlet. Where there
/// is less room, half way between the ground and the outlet: never in the ground.
inline constexpr double kLowFan_m = 1.2;
inline constexpr double kFanOverGround_m = 0.5;
inline constexpr double kFanUnderOutlet_m = 0.6;
/// A riser that goes sideways does so this far under its outlet (own figure).
inline constexpr double kCrossUnderOutlet_m = 0.6;

/// Of a cored sump with a discharge on its own ring; else nothing.
std::optional<rules::PlacedRun> placedRun(const rules::Site& site, const plan::Sump& sump);
/// Of the sump with that id, or for "" of the first one that has a run.
std::optional<rules::PlacedRun> placedRun(const rules::Site& site, const std::string& sump);

/// An outlet this high above the ground under it is a riser's, whatever the job calls it (own
/// figure: over everybody's head).
inline constexpr double kOverHeads_m = 2.0;
/// By where the discharge is placed; by the site's outlet where it is not.
plan::OutletMode outletModeOf(const rules::Site& site, const plan::Sump& sump);

/// A part of the placed run, over chainages from `shift_m` to `to_shift_m` of the hole: one and the
/// same of what is upright, all that lies between of the leg that goes sideways, along the walls
/// and round their corners.
struct PlacedPart {
  rules::Part part = rules::Part::outlet;
  double shift_m = 0.0;
  double to_shift_m = 0.0;
  Upright body;
  bool isUpright() const { return shift_m == to_shift_m; }
};

/// Outlet, fan and riser as far as the rule speaks of them; a fan in the roof space is none. Needs
/// a placed run. `from: centre` takes no width off.
std::vector<PlacedPart> placedParts(const rules::Rule& rule, const rules::Site& site);

/// As far along the ring as the fan stands from the hole. Needs a placed run.
double fanShift_m(const rules::PlacedRun& run);

/// Hole chainages at which a part, over [shift_m, to_shift_m] from the hole, meets those spans.
std::vector<rules::RingSpan> broughtBack(const rules::Site& site,
                                         std::vector<rules::RingSpan> spans, double shift_m,
                                         double to_shift_m);

/// Chainages that a part takes up above a hole there, in [0, length]; of what is upright none.
std::vector<rules::RingSpan> takenUp(const rules::Site& site, const PlacedPart& part,
                                     perimeter::Place hole);

perimeter::Place placeOfPart(const rules::Site& site, perimeter::Place hole,
                             const PlacedPart& part);

/// A fan in the roof space: the pipe goes in under the eaves, along to the fan so far, and up out
/// through the roof: two bends and a level piece (own figures).
inline constexpr double kIntoRoof_m = 1.0;
inline constexpr int kRoofBends = 2;

/// What stands in the way of a riser whose outlet is not below the eaves of its wall.
struct EavesPassed {
  /// False too where their height is not known, and where the pipe goes into the roof space.
  bool passed = false;
  std::optional<double> out_m;  ///< how far they stand out; nothing: not known
  bool isAround() const { return passed && out_m.value_or(0.0) > 0.0; }
};
EavesPassed eavesPassed(const rules::Site& site, const rules::PlacedRun& run,
                        perimeter::Place hole);

/// Bends of the riser outside: one out of the wall, two where it goes sideways, one for each corner
/// that it goes round, two where it goes round eaves that are known to stand out.
int bendsOutside(const rules::Site& site, const rules::PlacedRun& run, perimeter::Place hole);

/// Length of riser that stands in the open, from the ground under the hole to the outlet, with what
/// goes sideways, and out round the eaves: their overhang and the pipe's width. With a fan in the
/// roof space up to the eaves, where they are known.
double exposedLength_m(const rules::Site& site, const rules::PlacedRun& run, perimeter::Place hole);
/// More of it than this in the open air is lagged (own figure).
inline constexpr double kLagOver_m = 1.5;

/// The pipe of a sump's placed run, from the pit's end to the outlet, with its hole at a place.
struct CountedPipe {
  double before_m = 0.0;  ///< to the middle of the fan
  double after_m = 0.0;   ///< from there to the open air
  int bends_before = 0;   ///< a low fan stands before what goes sideways, any other after it
  int bends_after = 0;
  double exposed_m = 0.0;  ///< of both, in the open: from the ground up
  double in_roof_m = 0.0;  ///< of both, in a roof space or out of it through the roof
};
/// Nothing without a placed discharge. The hole is the best one, or as the sump states it.
std::optional<CountedPipe> countedPipe(const rules::Site& site, const plan::Sump& sump,
                                       perimeter::Place hole);

/// True where the outlet of the placed run ends below the eaves of its wall, or those are not
/// known.
bool endsBelowEaves(const rules::Site& site, const perimeter::Edge& edge);

}  // namespace sumpwright::build
