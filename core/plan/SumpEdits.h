#pragma once
// Verbs on what a sump is besides its place in the wall (DesignEdits.h): one inside the house, the
// core's height and slope, the pit, where the air leaves, the fan, the supply; and the price.
//
// Errors of all: plan.sump.unknown; plan.edit.not-a-place, plan.edit.not-text, plan.edit.too-many
// for a value that no job file may hold; the others are those of checkJob() that are unsound.

#include <optional>
#include <string>

#include "base/Result.h"
#include "plan/Job.h"

namespace sumpwright::plan {

/// Puts an internal or standby sump (added if no sump has that id; without one it gets one) at a
/// point. Errors: plan.sump.cored for a cored one, plan.sump.outside, plan.id.twice. `kind` is that
/// of a sump that is added; one that is there keeps its own.
base::Result<Job> moveSumpInside(const Job& job, const std::string& sump, SumpKind kind, Point to);

/// Centre of the core at the outside face above finished floor, and its slope (positive:
/// down into the house, so that water runs to the pit); absent: not stated. Error: plan.sump.fall.
base::Result<Job> setEntry(const Job& job, const std::string& sump, std::optional<double> entry_m,
                           std::optional<double> fall_deg);
/// Volume of the pit; absent: the job's. Error: plan.pit.size.
base::Result<Job> setPit(const Job& job, const std::string& sump, std::optional<double> pit_l);
/// Where the air leaves; absent: not placed. Error: plan.discharge.off-ring.
base::Result<Job> setDischarge(const Job& job, const std::string& sump,
                               const std::optional<Discharge>& discharge);
base::Result<Job> setFanPlace(const Job& job, const std::string& sump, FanPlace place,
                              std::optional<double> height_m);
/// Id of a supply of the plan; empty: the best. Error: plan.sump.no-supply.
base::Result<Job> setSumpSupply(const Job& job, const std::string& sump, const std::string& supply);

/// Puts the whole price in place of the old one; lines without an id get one. Errors: plan.quote.*,
/// plan.date.bad, plan.id.twice.
base::Result<Job> setQuote(const Job& job, Quote quote);

}  // namespace sumpwright::plan
