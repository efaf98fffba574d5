#pragma once
// Dimensions that tie a sump to fixed features of its wall, so that it can be set out with a tape:
// one each way along the wall, and a third as a check.

#include <optional>

#include "siting/Study.h"

namespace sumpwright::drawing {

struct Tie {
  base::Message label;      ///< phrase: "corner D", "the jamb of the kitchen window"
  geometry::Point to;       ///< the feature, on the outside face; plan metres
  double chainage_m = 0.0;  ///< of the feature, where it is on the sump's own wall
  double length_m = 0.0;    ///< from the middle of the hole, straight
};

struct Ties {
  std::optional<Tie> before;  ///< towards smaller chainage
  std::optional<Tie> after;
  /// The check: another jamb of the same wall, or a corner elsewhere in plain sight.
  std::optional<Tie> check;
  bool check_on_wall = false;
};

/// Corners first; the jamb of an opening where the wall runs on beyond its end (next door's wall,
/// or one in line), since such an end cannot be seen from outside. The check is none when neither
/// another jamb nor a corner in sight is there: then the two must add up to the wall's length.
Ties tiesOf(const siting::Study& study, perimeter::Place place);

}  // namespace sumpwright::drawing
