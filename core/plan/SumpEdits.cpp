#include "plan/SumpEdits.h"

#include <algorithm>

#include "plan/CheckedEdit.h"
#include "plan/Checks.h"
#include "plan/JobIds.h"
#include "plan/SuctionEdits.h"
#include "plan/ThingEdits.h"

namespace sumpwright::plan {

namespace {

/// The job with one sump changed, and sound there.
template <class Change>
base::Result<Job> withSump(const Job& job, const std::string& sump, Change&& change) {
  Job result = job;
  auto& sumps = result.design.sumps;
  const auto it =
      std::find_if(sumps.begin(), sumps.end(), [&](const Sump& s) { return s.id == sump; });
  if (it == sumps.end()) return editProblem("plan.sump.unknown", {base::text("sump", sump)});
  change(*it);
  const auto index = static_cast<std::size_t>(it - sumps.begin());
  return checkedAt(std::move(result), at("/design/sumps", index), checkRun);
}

void checkPlaceAndId(const Job& job, ProblemList& problems) {
  ProblemList unheeded(base::Gravity::unsound);
  checkDesign(job, checkRings(job.plan, unheeded), problems);
  checkIds(job, problems);
}

void checkQuoteAndIds(const Job& job, ProblemList& problems) {
  checkQuote(job.design.quote, problems);
  checkIds(job, problems);
}

}  // namespace

base::Result<Job> moveSumpInside(const Job& job, const std::string& sump, SumpKind kind, Point to) {
  Job result = job;
  auto& sumps = result.design.sumps;
  auto it = std::find_if(sumps.begin(), sumps.end(), [&](const Sump& s) { return s.id == sump; });
  if (!sumps.empty()) keepWhereItStood(result, it == sumps.end() ? sumps.front().id : sump);
  if (it == sumps.end()) {
    const std::string id = sump.empty() ? unusedId(job, "sump") : sump;
    if (const auto bad = unfitId(job, id)) return *bad;
    it = sumps.emplace(sumps.end());
    it->id = id;
    it->kind = kind;
  }
  if (it->kind == SumpKind::cored) {
    return editProblem("plan.sump.cored", {base::text("sump", sump)});
  }
  it->at_m = to;
  const auto index = static_cast<std::size_t>(it - sumps.begin());
  return checkedAt(std::move(result), at("/design/sumps", index), checkPlaceAndId);
}

base::Result<Job> setEntry(const Job& job, const std::string& sump, std::optional<double> entry_m,
                           std::optional<double> fall_deg) {
  return withSump(job, sump, [&](Sump& s) {
    s.entry_m = entry_m;
    s.fall_deg = fall_deg;
  });
}

base::Result<Job> setPit(const Job& job, const std::string& sump, std::optional<double> pit_l) {
  return withSump(job, sump, [&](Sump& s) { s.pit_l = pit_l; });
}

base::Result<Job> setDischarge(const Job& job, const std::string& sump,
                               const std::optional<Discharge>& discharge) {
  return withSump(job, sump, [&](Sump& s) { s.discharge = discharge; });
}

base::Result<Job> setFanPlace(const Job& job, const std::string& sump, FanPlace place,
                              std::optional<double> height_m) {
  return withSump(job, sump, [&](Sump& s) {
    s.fan_place = place;
    s.fan_height_m = height_m;
  });
}

base::Result<Job> setSumpSupply(const Job& job, const std::string& sump,
                                const std::string& supply) {
  return withSump(job, sump, [&](Sump& s) { s.supply = supply; });
}

base::Result<Job> setQuote(const Job& job, Quote quote) {
  Job result = job;
  result.design.quote = std::move(quote);
  for (QuoteLine& line : result.design.quote.lines) {
    if (line.id.empty()) line.id = unusedId(result, "price-line");
  }
  return checkedAt(std::move(result), "/design/quote", checkQuoteAndIds);
}

}  // namespace sumpwright::plan
