#pragma once
// Verbs on the outline of the house: corners and walls. Each takes a job and gives back the changed
// job or the reason why not. The result may contradict itself (an outline that crosses itself while
// it is dragged, an opening wider than its wall): checkJob() says so, nothing here does.
//
// What stands on a wall goes with it: it keeps its distance from the corner that stayed; where both
// corners moved, its place square to the wall. It is kept on its wall as far as it fits. That holds
// for openings, wall features, service entries, radiators, points of the ground outside and cored
// sumps. A waiver goes with its sump, but lapses where the edit moved that sump's place in the
// world by more than kWaiverReach_m. Corners of rooms and floor zones and points of inner and
// rising walls, radiators and heating pipes on an inner face that moved (within 0.05 m, own figure)
// go with it: where its corner was dragged, they keep their distance from the corner that stayed.
// Doors and gaps in inner and rising walls stay where they are. A field book is emptied where
// corners move; dimensions tied to a wall that goes, go with it.
//
// Errors of all: plan.edit.no-corner, plan.edit.no-edge for a ring, corner or edge that is not
// there; plan.edit.not-a-place for a coordinate or length that is no finite number within 10 km;
// plan.ring.short-edge where an edge would be shorter than a millimetre.

#include "base/Result.h"
#include "plan/Job.h"

namespace sumpwright::plan {

/// Both edges at the corner turn; their other ends stay.
base::Result<Job> moveCorner(const Job& job, int ring, int corner, Point to);

/// Shifts a wall square to itself, `out_m` away from the inside of the house (negative: inwards).
/// Its neighbours keep their lines and become longer or shorter; where a neighbour runs on in the
/// same line, a wall as thick and of the same kind is put between them, square to both.
base::Result<Job> moveWall(const Job& job, int ring, int edge, double out_m);

/// Gives an edge a length by shifting the wall after it along the edge; where that wall runs on in
/// the same line, only the corner between them goes.
base::Result<Job> setWallLength(const Job& job, int ring, int edge, double length_m);

/// Makes two walls of one, `offset_m` from its first corner; the second gets a new id and all else
/// of the first. Nothing moves. Error: plan.edit.split-through for a place within something that
/// stands on the wall.
base::Result<Job> splitWall(const Job& job, int ring, int edge, double offset_m);

/// Takes a corner out; the wall across has the facts of the longer of the two it replaces. What
/// stood on them is set square onto it. Error: plan.edit.too-few-corners for a ring of three.
base::Result<Job> removeCorner(const Job& job, int ring, int corner);

}  // namespace sumpwright::plan
