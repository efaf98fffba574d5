#pragma once
// How near a thing is to the walls in plan, by the path a rule measures along. Metres, from the
// point on the outside face; widths of hole and pipe are the caller's. Things must have shapes.

#include <vector>

#include "rules/Judge.h"
#include "rules/Spans.h"

namespace sumpwright::rules {

/// Places of one edge nearer than r, by parameter along the edge; may pass its ends. None for
/// r <= 0 but what lies inside an area.
geometry::Intervals nearAlong(const Site& site, const perimeter::Edge& edge, const Thing& thing,
                              PathKind path, double r);

/// Places of all rings nearer than r.
std::vector<RingSpan> nearWalls(const Site& site, const Thing& thing, PathKind path, double r);

double distanceInPlan(const Site& site, const Thing& thing, PathKind path, perimeter::Place place);

/// The least over chainages [from, to] of one ring, 0 <= from <= to <= length.
double leastInPlan(const Site& site, const Thing& thing, PathKind path, int ring, double from_m,
                   double to_m);

}  // namespace sumpwright::rules
