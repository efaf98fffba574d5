#include "plan/DesignEdits.h"

#include <algorithm>
#include <cmath>

#include "plan/Blank.h"
#include "plan/Checks.h"
#include "plan/EditProblem.h"
#include "plan/JobIds.h"
#include "plan/PlanGeometry.h"
#include "plan/SuctionEdits.h"
#include "plan/ThingParts.h"

namespace sumpwright::plan {

namespace {

base::Problem offRing(const std::string& sump, int ring, double chainage_m) {
  return editProblem("plan.sump.off-ring", {base::text("sump", sump), base::count("ring", ring),
                                            base::metres("chainage", chainage_m)});
}

base::Problem unknownSump(const std::string& sump) {
  return editProblem("plan.sump.unknown", {base::text("sump", sump)});
}

template <class List>
auto findById(List& list, const std::string& id) {
  return std::find_if(list.begin(), list.end(), [&](const auto& thing) { return thing.id == id; });
}

std::string freeWaiverId(const Job& job) {
  const std::set<std::string> taken = idsOf(job);
  std::size_t number = 1;
  while (taken.contains("waiver" + std::to_string(number))) ++number;
  return "waiver" + std::to_string(number);
}

void lapseWaivers(Job& job, const Sump& sump) {
  const double length = ringLength_m(job.plan.rings[static_cast<std::size_t>(sump.ring)]);
  for (Waiver& waiver : job.design.waivers) {
    if (waiver.sump != sump.id) continue;
    if (!waiverHolds(waiver, sump.ring, sump.chainage_m, length)) waiver.lapsed = true;
  }
}

std::optional<base::Problem> waiverProblem(const Job& job, const Waiver& waiver) {
  const std::vector<Sump>& sumps = job.design.sumps;
  if (findById(sumps, waiver.sump) == sumps.end()) return unknownSump(waiver.sump);
  const auto name = base::text("waiver", waiver.rule);
  if (waiver.rule.empty()) return editProblem("plan.waiver.no-rule", {name});
  if (isBlank(waiver.reason)) return editProblem("plan.waiver.no-reason", {name});
  if (isBlank(waiver.name)) return editProblem("plan.waiver.no-name", {name});
  if (waiver.date.empty()) return editProblem("plan.waiver.no-date", {name});
  if (!isDate(waiver.date)) return editProblem("plan.date.bad", {base::text("date", waiver.date)});
  if (!onRing(job.plan, waiver.ring, waiver.chainage_m)) {
    return editProblem("plan.waiver.off-ring", {name, base::count("ring", waiver.ring),
                                                base::metres("chainage", waiver.chainage_m)});
  }
  return std::nullopt;
}

}  // namespace

namespace {

double lengthOf(const Ring& ring) {
  double length = 0.0;
  for (std::size_t i = 0; i < ring.corners.size(); ++i) {
    length += geometry::distance(ring.corners[i], ring.corners[(i + 1) % ring.corners.size()]);
  }
  return length;
}

/// The riser goes with its hole: the discharge keeps its height and its distance to one side, the
/// shorter way round the ring. Onto another ring it goes straight above the hole.
void takeDischargeAlong(const Plan& plan, Sump& sump, int ring, double chainage_m) {
  if (!sump.discharge) return;
  const double length = lengthOf(plan.rings[static_cast<std::size_t>(ring)]);
  double aside = 0.0;
  if (sump.discharge->ring == ring && sump.ring == ring && length > 0.0) {
    aside = std::remainder(sump.discharge->chainage_m - sump.chainage_m, length);
  }
  const double to = std::fmod(std::fmod(chainage_m + aside, length) + length, length);
  sump.discharge->ring = ring;
  sump.discharge->chainage_m = aside == 0.0 ? chainage_m : to;
}

}  // namespace

base::Result<Job> moveSump(const Job& job, const std::string& sump, int ring, double chainage_m) {
  if (!onRing(job.plan, ring, chainage_m)) return offRing(sump, ring, chainage_m);
  Job result = job;
  std::vector<Sump>& sumps = result.design.sumps;
  auto it = findById(sumps, sump);
  // A second sump, too: a test that names none was of the only one.
  if (!sumps.empty()) keepWhereItStood(result, it == sumps.end() ? sumps.front().id : sump);
  if (it == sumps.end()) {
    if (const auto bad = unfitId(job, sump)) return *bad;
    it = sumps.emplace(sumps.end());
    it->id = sump;
  } else if (it->kind != SumpKind::cored) {
    return editProblem("plan.sump.not-cored", {base::text("sump", sump)});
  }
  takeDischargeAlong(job.plan, *it, ring, chainage_m);
  it->ring = ring;
  it->chainage_m = chainage_m;
  const Sump moved = *it;
  lapseWaivers(result, moved);
  return result;
}

base::Result<Job> removeSump(const Job& job, const std::string& sump) {
  Job result = job;
  std::vector<Sump>& sumps = result.design.sumps;
  const auto it = findById(sumps, sump);
  if (it == sumps.end()) return unknownSump(sump);
  keepWhereItStood(result, sump);
  sumps.erase(it);
  std::erase_if(result.design.waivers, [&](const Waiver& w) { return w.sump == sump; });
  dropDimensions(result.plan, [&](const std::string& end) { return end == sump; });
  forgetGone(result, {sump});
  return result;
}

base::Result<Job> recordWaiver(const Job& job, const Waiver& waiver) {
  if (const auto bad = waiverProblem(job, waiver)) return *bad;
  Job result = job;
  std::vector<Waiver>& waivers = result.design.waivers;
  const auto same = std::find_if(waivers.begin(), waivers.end(), [&](const Waiver& w) {
    return !w.lapsed && w.sump == waiver.sump && w.rule == waiver.rule && w.thing == waiver.thing;
  });
  Waiver recorded = waiver;
  if (recorded.id.empty()) {
    recorded.id = same == waivers.end() ? freeWaiverId(job) : same->id;
  } else if (same == waivers.end() || same->id != recorded.id) {
    if (const auto bad = unfitId(job, recorded.id)) return *bad;
  }
  if (same == waivers.end()) {
    waivers.push_back(std::move(recorded));
  } else {
    *same = std::move(recorded);
  }
  return result;
}

base::Result<Job> withdrawWaiver(const Job& job, const std::string& waiver) {
  Job result = job;
  std::vector<Waiver>& waivers = result.design.waivers;
  const auto it = findById(waivers, waiver);
  if (it == waivers.end()) {
    return editProblem("plan.waiver.unknown", {base::text("waiver", waiver)});
  }
  waivers.erase(it);
  return result;
}

Job setOutlet(const Job& job, OutletMode mode) {
  Job result = job;
  result.design.outlet = mode;
  return result;
}

base::Result<Job> setCore(const Job& job, double core_mm) {
  if (!(core_mm >= kSmallestCore_mm && core_mm <= kLargestCore_mm)) {
    return editProblem("plan.core.size", {base::millimetres("core", core_mm),
                                          base::millimetres("least", kSmallestCore_mm),
                                          base::millimetres("most", kLargestCore_mm)});
  }
  Job result = job;
  result.design.core_mm = core_mm;
  return result;
}

Job setRuleSheet(const Job& job, const std::string& sheet) {
  Job result = job;
  result.rule_sheet = sheet;
  return result;
}

bool waiverHolds(const Waiver& waiver, int ring, double chainage_m, double ring_length_m) {
  if (waiver.lapsed || waiver.ring != ring) return false;
  const double apart = std::abs(waiver.chainage_m - chainage_m);
  return std::min(apart, ring_length_m - apart) <= kWaiverReach_m + kChainageRounding_m;
}

}  // namespace sumpwright::plan
