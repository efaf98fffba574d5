#pragma once
// The line of a distance: from the edge of the hole to the nearest edge of the thing, as the rule
// measured it.

#include <optional>
#include <string>

#include "siting/Study.h"

namespace sumpwright::drawing {

struct Measure {
  std::string thing;
  geometry::Point centre;  ///< of the hole, or the nearest point of its drill line; plan metres
  geometry::Point from;    ///< edge of the hole towards the thing
  geometry::Point to;      ///< nearest point of the thing
  bool on_wall = false;    ///< along the wall, from from_s_m to to_s_m
  double from_s_m = 0.0;
  double to_s_m = 0.0;
  double distance_m = 0.0;
  double needed_m = 0.0;
  double half_m = 0.0;  ///< taken off for hole or pipe
  bool refused = false;
};

/// Nothing where the rule or thing is not on the plan, or the distance is no line.
std::optional<Measure> measureOf(const siting::Study& study, perimeter::Place place,
                                 const std::string& rule, const std::string& thing);

/// What a drawing shows: the distances of what refuses or is advised against (worst two), else the
/// least margin.
std::vector<Measure> measuresToShow(const siting::Study& study,
                                    const siting::Assessment& assessment);

}  // namespace sumpwright::drawing
