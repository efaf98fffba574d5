#pragma once
// Where a low outlet would stand between walls of the house itself: gas collects there. Exact spans
// of chainage.

#include <vector>

#include "rules/Spans.h"

namespace sumpwright::build {

/// A wall as near as this beside or across from the outlet encloses it (own figure).
inline constexpr double kEnclosing_m = 3.0;

/// Walls on three sides or more within kEnclosing_m, the outlet's own among them; a courtyard's
/// whole ring.
std::vector<rules::RingSpan> enclosedSpans(const rules::Site& site);

/// Straight out from the wall another wall of the house stands nearer than that, or the working
/// room outside the wall is known to be less.
std::vector<rules::RingSpan> passageSpans(const rules::Site& site, double narrower_than_m);

/// The same at one place: enclosed, or in a passage narrower than that.
bool isBetweenWalls(const rules::Site& site, perimeter::Place place, double narrower_than_m);

/// The same on one wall, along it: open intervals; one that reaches past an end holds that end.
geometry::Intervals betweenWalls(const rules::Site& site, const perimeter::Edge& edge,
                                 double narrower_than_m);

}  // namespace sumpwright::build
