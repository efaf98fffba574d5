#pragma once
// The house apart from its plan: build-up, levels, standby sump, appliances. Heights in metres
// above finished floor level = 0. An absent value is not known; whoever uses it states the default.

#include <optional>
#include <string>
#include <vector>

#include "geometry/Point.h"
#include "plan/Kinds.h"
#include "plan/Plan.h"

namespace sumpwright::plan {

struct Appliance {
  std::string id;
  std::string name;  ///< "stove", "gas boiler", ...
  bool open_flued = true;
  std::string where;
  bool operator==(const Appliance&) const = default;
};

struct StandbySump {
  StandbyState state = StandbyState::not_searched;
  StandbyIdentity identity = StandbyIdentity::assumed;
  std::optional<geometry::Point> at_m;
  std::string where;       ///< where the cap is, in words
  std::string drain_test;  ///< what was seen, in words; empty: not tested
  bool operator==(const StandbySump&) const = default;
};

struct House {
  std::optional<int> year_built;
  BuildType build_type = BuildType::unknown;
  std::optional<double> wall_thickness_m;  ///< used where a wall states none
  std::optional<double> cavity_m;
  std::optional<double> slab_m;
  std::optional<double> screed_m;
  std::optional<double> insulation_m;
  std::optional<double> hardcore_m;
  Fill fill = Fill::unknown;
  std::optional<double> ground_level_m;
  std::optional<double> dpc_height_m;
  std::optional<double> footing_top_low_m;  ///< a range, not a number: the section needs both ends
  std::optional<double> footing_top_high_m;
  Barrier barrier = Barrier::unknown;
  std::optional<double> barrier_level_m;
  std::string height_datum;              ///< sill or threshold that heights are taken from outside
  std::optional<double> height_datum_m;  ///< its level: without it nothing can be set out from it
  std::vector<Appliance> appliances;
  StandbySump standby;
  std::vector<Layer> wall_layers;              ///< outside to inside, where a wall states none
  Looked eaves_wildlife = Looked::not_looked;  ///< bats, nests: found, stop and ask
  std::optional<double> eaves_m;               ///< where a wall states none
  std::optional<double> eaves_overhang_m;      ///< edge of the eaves, gutter and all, off the wall
  YesNo roof_lived_in = YesNo::unknown;        ///< somebody lives in the roof space
  bool operator==(const House&) const = default;
};

}  // namespace sumpwright::plan
