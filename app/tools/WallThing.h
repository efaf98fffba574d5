#pragma once
// What stands on an outside wall, whatever its kind: openings, entries of services, radiators on a
// wall, wall features. Offsets run from the wall's left corner as seen from outside.

#include <optional>
#include <string>

#include "base/Result.h"
#include "geometry/Point.h"
#include "plan/Job.h"

namespace sumpwright::tools {

using geometry::Point;
using geometry::Segment;
using geometry::Vec;

struct WallThing {
  plan::OnWall at;
  double width_m = 0.0;
  int storey = 0;
};

/// Nothing for an id that stands on no wall.
std::optional<WallThing> wallThingOf(const plan::Job& job, const std::string& id);

/// The same thing at another place and width, which must fit its wall. The run of a service goes
/// along, and turns with the wall where it comes to another. Errors: those of plan/OpeningEdits.h
/// and plan/ThingEdits.h; place.past-end where it does not fit; plan.edit.no-thing.
base::Result<plan::Job> withWallThing(const plan::Job& job, const std::string& id,
                                      const plan::OnWall& at, double width_m);

/// The outside face of a wall, its left end first; nothing where there is no such wall, or it has
/// no length.
std::optional<Segment> faceOf(const plan::Plan& plan, const plan::OnWall& at);
/// The point `offset_m` along it. Contract: faceOf() gives one.
Point pointOn(const plan::Plan& plan, const plan::OnWall& at);
/// Outside to inside face, as stated, else the usual.
double wallThickness_m(const plan::Job& job, const plan::OnWall& at);

/// Nearest thing on the same wall beside a stretch of it.
struct WallNeighbour {
  std::string id;
  double gap_m = 0.0;  ///< never below 0
};

/// What a tape would show beside a stretch of a wall.
struct WallGaps {
  double left_m = 0.0;   ///< to the left corner
  double right_m = 0.0;  ///< to the right corner
  std::optional<WallNeighbour> left;
  std::optional<WallNeighbour> right;
};

/// Of a stretch `width_m` from `at` on; what `self` names and openings of other storeys do not
/// count. Nothing where there is no such wall.
std::optional<WallGaps> gapsBeside(const plan::Job& job, const plan::OnWall& at, double width_m,
                                   int storey, const std::string& self);

/// What `after` says against itself that `before` did not: the first unsound problem of it.
std::optional<base::Problem> newFault(const plan::Job& before, const plan::Job& after);
/// The same, with what checkJob() says of the job before.
std::optional<base::Problem> newFault(const base::Problems& before, const plan::Job& after);

}  // namespace sumpwright::tools
