#include "stages/RunFacts.h"

#include <QCoreApplication>
#include <algorithm>

#include "plan/FactEdits.h"
#include "plan/SuctionEdits.h"
#include "plan/SumpEdits.h"
#include "stages/KindWords.h"
#include "stages/ThingText.h"

namespace sumpwright::stages {

namespace {

struct RunFacts {
  Q_DECLARE_TR_FUNCTIONS(RunFacts)
};

using plan::Design;
using plan::Job;
using plan::Sump;

std::optional<Sump> sumpIn(const Job& job, const std::string& id) {
  for (const Sump& sump : job.design.sumps) {
    if (sump.id == id) return sump;
  }
  return std::nullopt;
}

/// One verb after the other; what did not change passes through each.
base::Result<Job> putSump(const Job& job, const Sump& sump) {
  auto after = plan::setEntry(job, sump.id, sump.entry_m, sump.fall_deg);
  if (after) after = plan::setPit(*after, sump.id, sump.pit_l);
  if (after) after = plan::setFanPlace(*after, sump.id, sump.fan_place, sump.fan_height_m);
  if (after) after = plan::setDischarge(*after, sump.id, sump.discharge);
  if (after) after = plan::setSumpSupply(*after, sump.id, sump.supply);
  return after;
}

FactTable<Sump> sumpTable(const std::string& id) {
  return FactTable<Sump>([id](const Job& job) { return sumpIn(job, id); }, putSump);
}

Fact coreFact() {
  FactTable<Design> t([](const Job& job) { return std::optional(job.design); },
                      [](const Job& job, const Design& d) {
                        return plan::setDrill(job, d.core_mm, d.pipe_od_mm, d.barrel_length_m);
                      });
  Fact& core = t.add(
      "/design/core_mm", RunFacts::tr("Core"), FactKind::length,
      [](const Design& d) -> FactValue {
        return d.core_mm ? FactValue(*d.core_mm / 1000.0) : FactValue();
      },
      [](Design& d, const FactValue& v) {
        const double* metres = std::get_if<double>(&v);
        d.core_mm = metres == nullptr ? std::nullopt : std::optional(sizeTyped_mm(*metres));
      });
  core.says = RunFacts::tr("Core: diameter of the hole");
  core.unknown = RunFacts::tr("The rule sheet's is taken.");
  return t.take().front();
}

void addHole(FactTable<Sump>& t) {
  Fact& entry = t.measure("entry_m", RunFacts::tr("Entry height"), &Sump::entry_m, FactKind::level);
  entry.says = RunFacts::tr("Entry height: middle of the hole at the outside face, to the floor");
  entry.unknown = RunFacts::tr("The best one is taken.");
  Fact& fall = t.measure("fall_deg", RunFacts::tr("Fall"), &Sump::fall_deg, FactKind::number);
  fall.says = RunFacts::tr("Fall: degrees that the hole goes down into the house");
  fall.unknown = RunFacts::tr("The best one is taken.");
  Fact& pit = t.measure("pit_l", RunFacts::tr("Hollow"), &Sump::pit_l, FactKind::number);
  pit.says = RunFacts::tr("Hollow: litres of fill taken out under the slab");
  pit.unknown = RunFacts::tr("The job's, else a bucket of 12 l, is taken (common practice).");
}

void addFan(FactTable<Sump>& t) {
  t.choice("fan_place", RunFacts::tr("Fan"), &Sump::fan_place, fanPlaceWords());
  Fact& height =
      t.measure("fan_height_m", RunFacts::tr("Fan height"), &Sump::fan_height_m, FactKind::level);
  height.says = RunFacts::tr("Fan height: above finished floor");
}

/// Height first: a discharge that has no place yet is put above the hole.
void addDischarge(FactTable<Sump>& t) {
  Fact& height = t.add(
      "discharge/height_m", RunFacts::tr("Discharge height"), FactKind::level,
      [](const Sump& s) -> FactValue {
        return s.discharge ? FactValue(s.discharge->height_m) : FactValue();
      },
      [](Sump& s, const FactValue& v) {
        const double* metres = std::get_if<double>(&v);
        if (metres == nullptr) return s.discharge.reset();
        if (!s.discharge) s.discharge = plan::Discharge{s.ring, s.chainage_m, 0.0};
        s.discharge->height_m = *metres;
      });
  height.says = RunFacts::tr("Discharge height: where the air leaves, above finished floor");
  height.unknown = RunFacts::tr("Not placed: judged as if low at the hole, or at the eaves.");
  Fact& along = t.add(
      "discharge/chainage_m", RunFacts::tr("Discharge at"), FactKind::length,
      [](const Sump& s) -> FactValue {
        return s.discharge ? FactValue(s.discharge->chainage_m) : FactValue();
      },
      [](Sump& s, const FactValue& v) {
        const double* metres = std::get_if<double>(&v);
        if (metres != nullptr && s.discharge) s.discharge->chainage_m = *metres;
      });
  along.says = RunFacts::tr("Discharge at: along the walls from the ring's first corner");
  along.required = true;
  along.applies = [get = along.get](const Job& job) {
    return std::holds_alternative<double>(get(job));
  };
}

Fact supplyFact(const Job& job, const std::string& id) {
  Fact fact;
  fact.key = "supply";
  fact.label = RunFacts::tr("Supply");
  fact.says = RunFacts::tr("Supply: the socket or spur that the fan is wired from");
  fact.kind = FactKind::choice;
  fact.choices << RunFacts::tr("The best one");
  std::vector<std::string> ids{""};
  for (const plan::Supply& supply : job.plan.supplies) {
    fact.choices << namedIn(supply.id, job);
    ids.push_back(supply.id);
  }
  fact.get = [id, ids](const Job& j) -> FactValue {
    const auto sump = sumpIn(j, id);
    const auto it = std::find(ids.begin(), ids.end(), sump ? sump->supply : std::string());
    return it == ids.end() ? -1 : static_cast<int>(it - ids.begin());
  };
  fact.set = [id, ids](const Job& j, const FactValue& v) -> base::Result<Job> {
    const int* chosen = std::get_if<int>(&v);
    if (chosen == nullptr || *chosen < 0) return j;
    return plan::setSumpSupply(j, id, ids[static_cast<std::size_t>(*chosen)]);
  };
  return fact;
}

}  // namespace

std::vector<Fact> runFacts(const plan::Job& job, const std::string& sump) {
  FactTable<Sump> t = sumpTable(sump);
  t.add(coreFact());
  addHole(t);
  addFan(t);
  addDischarge(t);
  t.add(supplyFact(job, sump));
  return t.take();
}

}  // namespace sumpwright::stages
