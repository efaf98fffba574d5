#pragma once
// Where a dimension line is tied.

#include <optional>

#include "plan/Job.h"

namespace sumpwright::plan {

/// The place an end stands for, in the plan. Of a wall: its first corner, its second, the middle
/// between. Of what stands on a wall (opening, wall feature, radiator): its ends on the outside
/// face. Of an inner door: its jambs on the centre line. Of a line (inner or rising wall, pipe):
/// its first point, its last, half way along. Of a service: its entry, or the ends of its run where
/// it has none. Of a point or a sump, whichever end is asked for: the point. Of an outside thing of
/// several points: as a line. Of a room or floor zone: the centre of its area, as the middle only.
/// Nothing where no such thing is, or it has no place.
std::optional<Point> placeOf(const Job& job, const DimensionEnd& end);

/// Where a dimension's line stands: from its first end to its second, `off_m` to the left of the
/// straight line between what it measures. Nothing where an end has no place, or both ends are
/// within a micrometre of each other.
std::optional<geometry::Segment> lineOf(const Job& job, const Dimension& dimension);

}  // namespace sumpwright::plan
