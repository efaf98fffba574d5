#pragma once
// The way of a cable over the unrolled elevation and over the plan: lists to lay over
// elevationBase() and planBase(). Their words keep off `words`, those of what lies below (wordsOf()
// in Box.h).

#include <optional>
#include <vector>

#include "build/CableRoute.h"
#include "drawing/ElevationDrawing.h"
#include "drawing/PlanDrawing.h"

namespace sumpwright::drawing {

/// What runs outside, from the fan on, and where it goes in. Empty for a fan in the roof space.
DrawList elevationCable(const siting::Study& study, const build::CableRoute& route,
                        const ElevationSpot& fan, const ElevationView& view, const Voice& voice,
                        const std::vector<Box>& words = {});

/// All of it, from the fan to the supply.
DrawList planCable(const siting::Study& study, const build::CableRoute& route, const PlanView& view,
                   const Voice& voice, const std::vector<Box>& words = {});

/// The part of the plan about a route, at that scale, as wide as it says and as high as it takes;
/// nothing where that is more than `most_mm` high, or wider.
std::optional<PlanView> viewOfCable(const build::CableRoute& route, double mm_per_m,
                                    double width_mm, double most_mm);

}  // namespace sumpwright::drawing
