#pragma once
// Verbs on walls and whole outlines: facts of a wall, right angles, a rectangle to begin with,
// courtyards. Each takes a job and gives back the changed job or the reason why not; what stands on
// a wall is carried as OutlineEdits.h says.
//
// Errors of all: plan.edit.no-edge for a ring or wall that is not there; plan.edit.not-a-place for
// a number no job file may hold; plan.ring.short-edge.

#include "base/Result.h"
#include "plan/Job.h"

namespace sumpwright::plan {

/// Gives a wall its facts; its id stays, whatever `facts` says. Where it becomes thicker or
/// thinner, what is drawn on its inner face (rooms, floor zones, inner and rising walls, radiators,
/// heating pipes) goes square across with it; doors inside stay where they are. Errors:
/// plan.edit.not-text, plan.edit.too-many, plan.edit.no-space-left where that would turn over or
/// fold the outline of a room or floor zone.
base::Result<Job> setWall(const Job& job, int ring, int edge, const Wall& facts);

/// Makes every corner of a closed ring that is within `tolerance_deg` of a right angle one exactly,
/// and every wall that turns by less than that from the wall before straight on. Walls that hang
/// together so keep the direction that their lengths, taken together, point in; each keeps the
/// place that moves its two corners least (least squares), so that lengths hardly change. Corners
/// of other angles stay where the lines of their walls meet. Rooms and what else is drawn inside
/// stay. Error: plan.edit.not-a-place unless 0 < tolerance_deg < 30 (own figure: from there on a
/// splayed bay would be squared).
base::Result<Job> straighten(const Job& job, int ring, double tolerance_deg);

/// Begins with a rectangle, its first corner at the origin and its first wall along +x, as wide as
/// the house is seen from that side. Error: plan.edit.has-outline.
base::Result<Job> rectangleHouse(const Job& job, double width_m, double depth_m);

/// Begins with an outline, corners either way round. Errors: plan.edit.has-outline,
/// plan.ring.corners for fewer than three.
base::Result<Job> addOutline(const Job& job, const geometry::Polygon& corners);

/// Adds a courtyard, corners either way round. Errors: plan.edit.no-edge where there is no closed
/// outline yet; plan.ring.corners.
base::Result<Job> addCourtyard(const Job& job, const geometry::Polygon& corners);

/// Takes a ring out with all that stands on it: openings, wall features, radiators, cored sumps
/// and their waivers, the entries of services (a service without a run goes too), and the
/// dimensions tied to any of it. Later rings move up. Error: plan.edit.courtyards-first for the
/// outer ring while there are courtyards.
base::Result<Job> removeRing(const Job& job, int ring);

}  // namespace sumpwright::plan
