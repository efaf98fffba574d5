#pragma once
// Where on the walls an outlet may not be, by chainage and height: exact intervals at a given
// height or chainage, and outlines for drawing. About the outlet alone, whatever run is placed; the
// weight says whether of rules that refuse or of those that advise against. Metres; heights above
// finished floor level.

#include <string>
#include <vector>

#include "rules/Spans.h"

namespace sumpwright::build {

/// Heights at one chainage of the outlet that rules of that weight object to: open, sorted and
/// apart; may be without end.
geometry::Intervals heightsObjected(const rules::Site& site, perimeter::Place outlet,
                                    rules::Weight weight);

/// Chainages at one height of the outlet, over all rings.
std::vector<rules::RingSpan> chainagesObjected(const rules::Site& site, double outlet_m,
                                               rules::Weight weight);

// Outlines: ZoneOutlines.cpp.

/// What one thing, or one level, keeps an outlet out of along one edge: x = chainage, y = height,
/// within the edge and [low_m, high_m]. Straight lines that stay within the tolerance of the curve.
struct ZoneOutline {
  std::string rule;
  std::string thing;  ///< "" for ground and eaves
  geometry::Polygon outline;
};
std::vector<ZoneOutline> zoneOutlines(const rules::Site& site, const perimeter::Edge& edge,
                                      rules::Weight weight, double low_m, double high_m,
                                      double tolerance_m);

/// The edge of all those together: what of their outlines no other zone covers, without what lies
/// on the window's own edges and the ends of the wall.
std::vector<geometry::Polyline> zoneEdge(const rules::Site& site, const perimeter::Edge& edge,
                                         rules::Weight weight, double low_m, double high_m,
                                         const std::vector<ZoneOutline>& outlines);

/// The least step aside (0: none) at which nothing refuses an outlet of that height above a hole,
/// nor the riser's way to it, at most `most_m` either way on the hole's own ring; of two equal ones
/// that to the right. Nothing where there is none. An end is only just clear: `inside_m` keeps that
/// far from it, where there is room.
std::optional<double> leastStepAside(const rules::Site& site, perimeter::Place hole,
                                     double outlet_m, double most_m, double inside_m);

/// Outlets over eaves nobody measured are proposed at this height, others this far above them (own
/// figures).
inline constexpr double kProposedHeight_m = 3.0;
inline constexpr double kProposedOverEaves_m = 0.4;

/// A discharge to begin with: straight above the hole, over the eaves, as low as nothing refuses
/// it; where that is over a metre and a half higher, aside at the first height instead. Straight
/// above at the first height where nothing fits.
plan::Discharge proposedDischarge(const rules::Site& site, perimeter::Place hole, double inside_m);

}  // namespace sumpwright::build
