#pragma once
// Rooms and floors found from the walls that are drawn.

#include <vector>

#include "base/Result.h"
#include "plan/Job.h"

namespace sumpwright::plan {

/// The areas that walls close off: within the inner faces of the outside walls (each as thick as
/// the wall, the house or, of neither known, the check says) and between the inner walls. An inner
/// wall that ends within 0.05 m (own figure) of another wall reaches it; doors are in walls, so
/// they part rooms too. Outlines counter-clockwise, on the faces, none over another: a room all
/// round a courtyard or another room is cut in two along x, and a wall that stands free in a room
/// is left out of its outline. Areas under 0.2 m2 (own figure) are none. Ordered by their lowest,
/// then leftmost corner. Error: plan.edit.no-areas where the outline is not closed or crosses
/// itself.
base::Result<std::vector<geometry::Polygon>> findRooms(const Job& job);

/// Rooms from the walls: an area that holds the middle of one room gives that room its outline; one
/// that holds none becomes a room of unknown use; one that holds several stays as drawn, for the
/// surveyor parted it where no wall stands. A room whose middle lies in no area, as where a wall
/// now runs through it, counts as in the area it covers most of. Rooms that cover none stay. Error:
/// plan.edit.no-areas.
base::Result<Job> roomsFromWalls(const Job& job);

/// Adds floor zones, of unknown kind, wherever within the inner faces of the outside walls there is
/// none yet; an area all round an earlier zone is cut in two along x. Errors: plan.edit.no-areas;
/// plan.edit.floor-whole where nothing is left to fill.
base::Result<Job> floorZoneFromWalls(const Job& job);

}  // namespace sumpwright::plan
