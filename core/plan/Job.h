#pragma once
// All that one job file holds, as a value compared with ==.

#include <string>
#include <vector>

#include "plan/Design.h"
#include "plan/House.h"
#include "plan/Plan.h"
#include "plan/SuctionFacts.h"

namespace sumpwright::plan {

/// Whether each kind of thing that could refuse a place was looked for. Nothing drawn implies it.
struct LookedFor {
  // these gate: not looked makes every stretch that is not refused not-proven
  Looked openings = Looked::not_looked;
  Looked gas = Looked::not_looked;
  Looked electricity = Looked::not_looked;
  Looked water = Looked::not_looked;
  Looked telecom = Looked::not_looked;
  Looked oil = Looked::not_looked;
  Looked drain = Looked::not_looked;
  Looked flue_terminal = Looked::not_looked;
  Looked heating = Looked::not_looked;
  // hold points; they gate nothing
  Looked standby_pipe = Looked::not_looked;
  Looked open_flue = Looked::not_looked;
  bool operator==(const LookedFor&) const = default;
};

/// What needs somebody else's leave; unknown is a hold point.
struct Permissions {
  YesNo protected_structure = YesNo::unknown;
  YesNo conservation_area = YesNo::unknown;
  YesNo flats = YesNo::unknown;
  YesNo tenanted = YesNo::unknown;
  std::string consent;  ///< whose leave was had, when, and where it is written
  bool operator==(const Permissions&) const = default;
};

struct Job {
  std::string id;
  std::string address;
  std::string client;
  std::string surveyor;
  std::string surveyed_on;  ///< ISO 8601
  std::string rule_sheet = "ie-practice";
  DisplayUnits display_units = DisplayUnits::metric;
  SurveyMethod survey_method = SurveyMethod::not_stated;
  std::string notes;
  std::vector<std::string> photos;  ///< paths relative to the job file
  LookedFor looked_for;
  Permissions permissions;
  House house;
  Plan plan;
  SuctionFacts suction;
  Design design;
  bool operator==(const Job&) const = default;
};

}  // namespace sumpwright::plan
