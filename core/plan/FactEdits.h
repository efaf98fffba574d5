#pragma once
// Verbs on what is known of the house apart from its drawing. Each puts a whole part of the job in
// place of the old one; appliances are things (ThingEdits.h) and stay as they are.
//
// Errors of all: plan.edit.not-text, plan.edit.not-a-place, plan.edit.too-many for a value that no
// job file may hold.

#include <optional>
#include <string>
#include <vector>

#include "base/Result.h"
#include "plan/Job.h"

namespace sumpwright::plan {

/// Build-up, levels, standby sump; the appliances of `house` are not looked at. Finding a standby
/// sump makes "a standby pipe" present where it was said not to be there. Where walls become
/// thicker or thinner by it, what is drawn on their inner faces goes along, and
/// plan.edit.no-space-left is an error, as setWall() says.
base::Result<Job> setHouse(const Job& job, const House& house);
base::Result<Job> setLookedFor(const Job& job, const LookedFor& looked);
/// How many things are drawn of a kind, by its key in looked_for ("gas"); 0 for any other key.
std::size_t drawnOfKind(const Job& job, const std::string& key);
base::Result<Job> setPermissions(const Job& job, const Permissions& permissions);
/// Puts a picture under the plan, or takes it away.
base::Result<Job> setUnderlay(const Job& job, const std::optional<Underlay>& underlay);
/// True north, degrees clockwise from the drawing's +y.
base::Result<Job> setNorth(const Job& job, double degrees);
/// Length of the drill barrel; absent: the usual one. Error: plan.barrel.length unless over 0.
base::Result<Job> setBarrel(const Job& job, std::optional<double> length_m);
/// Hole, pipe and barrel; absent: the rule sheet's, and the usual barrel. Errors: plan.core.size,
/// plan.pipe.none, plan.barrel.length.
base::Result<Job> setDrill(const Job& job, std::optional<double> core_mm,
                           std::optional<double> pipe_od_mm, std::optional<double> barrel_m);
/// Paths relative to the job file.
base::Result<Job> setPhotos(const Job& job, const std::vector<std::string>& photos);

/// What heads the job: address, client, surveyor, date, units, how it was measured, notes.
struct Heading {
  std::string address;
  std::string client;
  std::string surveyor;
  std::string surveyed_on;
  DisplayUnits display_units = DisplayUnits::metric;
  SurveyMethod survey_method = SurveyMethod::not_stated;
  std::string notes;
  bool operator==(const Heading&) const = default;
};

Heading headingOf(const Job& job);
/// Error: plan.date.bad unless the date is empty or one of the calendar.
base::Result<Job> setHeading(const Job& job, const Heading& heading);

}  // namespace sumpwright::plan
