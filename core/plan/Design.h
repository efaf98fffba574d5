#pragma once
// What is proposed: sumps, outlet, hole and pipe sizes, waivers.

#include <optional>
#include <string>
#include <vector>

#include "geometry/Point.h"
#include "plan/Kinds.h"

namespace sumpwright::plan {

struct Sump {
  std::string id;
  SumpKind kind = SumpKind::cored;
  int ring = 0;                         ///< cored: place on the outside face
  double chainage_m = 0.0;              ///< along that ring from its first corner
  std::optional<geometry::Point> at_m;  ///< internal or standby: a point inside
  bool operator==(const Sump&) const = default;
};

/// A recorded reason for accepting a place that one rule refuses because of one thing. It belongs
/// to a chainage: moved over 10 mm the sump leaves it behind, and it is kept, struck out.
struct Waiver {
  std::string id;
  std::string sump;
  std::string rule;
  std::string thing;  ///< id as in the finding; empty where the finding has none
  int ring = 0;
  double chainage_m = 0.0;
  Evidence evidence = Evidence::reason;
  std::string reason;
  std::string name;
  std::string date;  ///< ISO 8601, yyyy-mm-dd
  bool lapsed = false;
  bool operator==(const Waiver&) const = default;
};

struct Design {
  OutletMode outlet = OutletMode::low;
  std::optional<double> core_mm;          ///< diameter of the hole; not stated: the rule sheet's
  std::optional<double> pipe_od_mm;       ///< outside; not stated: the rule sheet's
  std::optional<double> barrel_length_m;  ///< of the drill; not stated: 0.40 m (common practice)
  std::vector<Sump> sumps;
  std::vector<Waiver> waivers;
  bool operator==(const Design&) const = default;
};

}  // namespace sumpwright::plan
