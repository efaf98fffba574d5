#pragma once
// Verbs on the design. Each takes a job and gives back the changed job or the reason why not.

#include "base/Result.h"
#include "plan/Job.h"

namespace sumpwright::plan {

/// A waiver holds within this distance of its chainage (own figure: what a crew can mark on a
/// wall).
inline constexpr double kWaiverReach_m = 0.010;

/// Puts the cored sump `sump` (added if no sump has that id) at a place; waivers of that sump that
/// stand more than kWaiverReach_m from it (the shorter way round the ring) lapse
/// and stay lapsed. Its discharge goes along: as high, and as far to one side of the hole. Pressure
/// tests of it stay where they were made (keepWhereItStood()). Errors:
/// plan.sump.off-ring when ring or chainage (0 .. length) is not on the footprint,
/// plan.sump.not-cored for an internal or standby sump, plan.id.empty and plan.id.twice when a sump
/// to be added has no id or one that is taken.
base::Result<Job> moveSump(const Job& job, const std::string& sump, int ring, double chainage_m);

/// Removes the sump, every waiver that names it and every dimension tied to it; pressure tests of
/// it stay, say where it stood, and name no sump. Error: plan.sump.unknown.
base::Result<Job> removeSump(const Job& job, const std::string& sump);

/// Adds or replaces (same sump, rule, thing, not lapsed) a waiver; without an id it gets a free one
/// or keeps that of the waiver it replaces. Errors: plan.waiver.no-rule, plan.waiver.no-reason,
/// plan.waiver.no-name, plan.waiver.no-date when those are empty, plan.date.bad,
/// plan.waiver.off-ring, plan.sump.unknown, plan.id.twice.
base::Result<Job> recordWaiver(const Job& job, const Waiver& waiver);

/// Takes a waiver back. Error: plan.waiver.unknown.
base::Result<Job> withdrawWaiver(const Job& job, const std::string& waiver);

Job setOutlet(const Job& job, OutletMode mode);
/// Error: plan.core.size unless 40 mm <= core_mm <= 300 mm.
base::Result<Job> setCore(const Job& job, double core_mm);
Job setRuleSheet(const Job& job, const std::string& sheet);

/// True when the waiver is neither lapsed nor left behind by the sump at (ring, chainage).
bool waiverHolds(const Waiver& waiver, int ring, double chainage_m, double ring_length_m);

}  // namespace sumpwright::plan
