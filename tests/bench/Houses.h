#pragma once
// Houses with so many things, for benches. Invented.

#include "plan/Job.h"

namespace sumpwright::bench {

/// A 12 x 9 m house with an L-shaped plan and `things` things that clearance rules look at, about
/// its walls: of every ten, four windows or doors (as many as the walls take; then neighbours'
/// windows), two gullies, two drawn drains of three points, one chamber of four corners, one gas
/// entry. Everything looked for.
plan::Job houseWith(int things);

}  // namespace sumpwright::bench
