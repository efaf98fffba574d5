#pragma once
// The things of a house that is still being measured: drawn from the bare plan, whatever of it can
// be drawn. Internal.

#include <optional>

#include "drawing/BuiltIn.h"
#include "plan/Job.h"

namespace sumpwright::drawing {

/// The axes of a wall of an outline at a place on it; nothing where there is no such wall.
std::optional<WallSlot> outlineSlot(const plan::Job& job, const plan::OnWall& at,
                                    const SheetContext& c);
/// Where the plate of a service that enters there stands.
Point outlinePlate(const WallSlot& slot);

/// Under the walls: rooms, floors' edges, rising and inner walls, pipes, fittings.
void paintOutlineInside(Sketch& sketch, const SheetContext& c, const plan::Plan& plan);
/// Over the walls: features, radiators, supplies, what is outside, services.
void paintOutlineThings(Sketch& sketch, const SheetContext& c, const plan::Job& job);
/// The thing, wall or room of that id in selection blue.
void paintOutlineSelected(Sketch& sketch, const SheetContext& c, const plan::Job& job,
                          const std::string& id);

}  // namespace sumpwright::drawing
