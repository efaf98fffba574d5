#pragma once
// What runs along what. Any unit of length. Internal to core/suction.

#include <optional>

#include "suction/Model.h"

namespace sumpwright::suction {

/// Where `other` runs along `line`, that near to it and within some 15 degrees of its direction
/// (own figure), by distance from line.a. Nothing where it does not, or one has no length.
std::optional<Stretch> alongside(const geometry::Segment& line, const geometry::Segment& other,
                                 double within);

}  // namespace sumpwright::suction
