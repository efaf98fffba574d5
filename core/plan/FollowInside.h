#pragma once
// What is drawn inside the house (LinesInside.h) goes with the inner face it stands on when an edit
// moves that face. On a face counts within 0.05 m (own figure).
// Internal to core/plan.

#include <optional>

#include "base/Problem.h"
#include "plan/Job.h"

namespace sumpwright::plan {

/// The wall along `outside_face` was shifted: what stands on its inner face, by as much.
void followWall(Job& job, const geometry::Segment& outside_face, double thickness_m,
                geometry::Vec shift);

/// Walls became thicker or thinner: `job` is `before` but for that. What stood on an inner face
/// goes square across with it, what stood in an inner corner with the corner; all else stays, also
/// where a wall is now drawn over it. The former thickness puts all back, but for what the face
/// came to stand at in between. Error, `job` then being of no use: plan.edit.no-space-left where
/// the outline of a room or floor zone would be turned over or folded.
std::optional<base::Problem> followThickness(Job& job, const Job& before);

/// Corner `corner` of a ring went elsewhere: inner corners go to where they are now, and what
/// stands between two of them keeps its distance from the one of the corner that stayed. Rings of
/// as many corners, with a wall to each edge.
void followCorner(Job& job, const Ring& before, const Ring& after, std::size_t corner);

/// Corner `gone` of `before` was taken out; `across` is the edge of `after` in place of the two
/// walls there: what stood on them is set square onto its inner face, and outlines lose the corner.
void followRemoved(Job& job, const Ring& before, const Ring& after, std::size_t gone,
                   std::size_t across);

}  // namespace sumpwright::plan
