#pragma once
// What is proposed: sumps, outlet, hole and pipe sizes, fan and pipe run, waivers, price, what a
// year costs. Heights above finished floor = 0.

#include <optional>
#include <string>
#include <vector>

#include "geometry/Point.h"
#include "plan/Kinds.h"
#include "plan/Quote.h"
#include "plan/Running.h"

namespace sumpwright::plan {

/// Where the air leaves.
struct Discharge {
  int ring = 0;
  double chainage_m = 0.0;  ///< along that ring's outside face
  double height_m = 0.0;
  bool operator==(const Discharge&) const = default;
};

struct Sump {
  std::string id;
  SumpKind kind = SumpKind::cored;
  int ring = 0;                         ///< cored: place on the outside face
  double chainage_m = 0.0;              ///< along that ring from its first corner
  std::optional<geometry::Point> at_m;  ///< internal or standby: a point inside
  std::optional<double> entry_m;        ///< centre of the core at the outside face
  std::optional<double> fall_deg;       ///< slope of the core; positive: down into the house
  std::optional<double> pit_l;          ///< volume of the pit; not stated: the job's
  std::optional<Discharge> discharge;
  FanPlace fan_place = FanPlace::outside_low;
  std::optional<double> fan_height_m;
  std::string supply;  ///< id of the supply it is wired from; "": the best
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

struct FanPickPoint {
  double flow_m3_s = 0.0;
  double pressure_pa = 0.0;
  std::optional<double> power_w;
  bool operator==(const FanPickPoint&) const = default;
};

/// The fan chosen: one of a table, or a curve of its own, which wins.
struct FanPick {
  std::string table;  ///< id of the fan table; "": the first that has the fan
  std::string id;     ///< in the table; "": not chosen
  std::string title;
  std::vector<FanPickPoint> points;
  double speed = 1.0;  ///< share of the curve's speed
  bool operator==(const FanPick&) const = default;
};

/// Pipe and bends from the hole to the fan and from the fan to the open air; what is not stated is
/// assumed from the outlet and said to be.
struct PipeRun {
  std::optional<double> before_m;
  std::optional<double> after_m;
  std::optional<int> bends_before;
  std::optional<int> bends_after;
  bool operator==(const PipeRun&) const = default;
};

struct Design {
  OutletMode outlet = OutletMode::low;
  std::optional<double> core_mm;          ///< diameter of the hole; not stated: the rule sheet's
  std::optional<double> pipe_od_mm;       ///< outside; not stated: the rule sheet's
  std::optional<double> barrel_length_m;  ///< of the drill; not stated: 0.40 m (common practice)
  std::vector<Sump> sumps;
  std::vector<Waiver> waivers;
  FanPick fan;
  bool shared_fan = false;  ///< all sumps on one fan
  PipeRun pipe;
  AnnulusSeal annulus = AnnulusSeal::unknown;
  YesNo silencer = YesNo::unknown;
  Running running;
  Quote quote;
  bool operator==(const Design&) const = default;
};

}  // namespace sumpwright::plan
