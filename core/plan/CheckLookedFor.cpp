// Whether what was looked for agrees with what is drawn.

#include <algorithm>
#include <array>
#include <functional>
#include <optional>

#include "plan/Checks.h"
#include "plan/FactEdits.h"
#include "plan/LookedKinds.h"
#include "plan/PlanGeometry.h"

namespace sumpwright::plan {

namespace {

using base::Gravity;

/// What is drawn of a kind: whether anything at all, and whether something has a place.
struct Drawn {
  std::optional<std::string> first;  ///< label
  bool placed = false;
  std::size_t count = 0;

  template <class List, class Is, class IsPlaced>
  void add(const List& list, Is is, IsPlaced isPlaced) {
    for (const auto& thing : list) {
      if (!is(thing)) continue;
      ++count;
      if (!first) first = labelOf(thing);
      placed = placed || isPlaced(thing);
    }
  }
  template <class List, class Is>
  void add(const List& list, Is is) {
    add(list, is, [](const auto&) { return true; });
  }
};

constexpr auto kAny = [](const auto&) { return true; };

Drawn services(const Job& job, std::initializer_list<ServiceKind> kinds) {
  Drawn drawn;
  drawn.add(
      job.plan.services,
      [&](const Service& s) {
        return std::find(kinds.begin(), kinds.end(), s.kind) != kinds.end();
      },
      [](const Service& s) { return s.entry.has_value() || !s.run_m.empty(); });
  return drawn;
}

auto outsideIs(std::initializer_list<OutsideKind> kinds) {
  return [kinds = std::vector<OutsideKind>(kinds)](const OutsideThing& t) {
    return std::find(kinds.begin(), kinds.end(), t.kind) != kinds.end();
  };
}

Drawn openings(const Job& job) {
  Drawn drawn;
  drawn.add(job.plan.openings,
            [](const Opening& o) { return o.kind != OpeningKind::flue_terminal; });
  drawn.add(job.plan.outside, outsideIs({OutsideKind::neighbour_opening}));
  return drawn;
}

Drawn drains(const Job& job) {
  Drawn drawn = services(job, {ServiceKind::drain, ServiceKind::waste});
  drawn.add(job.plan.outside, outsideIs({OutsideKind::gully, OutsideKind::inspection_chamber}));
  return drawn;
}

Drawn flueTerminals(const Job& job) {
  Drawn drawn;
  drawn.add(job.plan.openings,
            [](const Opening& o) { return o.kind == OpeningKind::flue_terminal; });
  return drawn;
}

Drawn heating(const Job& job) {
  Drawn drawn;
  drawn.add(job.plan.radiators, kAny);
  drawn.add(job.plan.heating_pipes, kAny);
  drawn.add(job.plan.floor_zones, [](const FloorZone& z) { return z.underfloor_heating; });
  return drawn;
}

Drawn standby(const Job& job) {
  Drawn drawn;
  if (job.house.standby.state == StandbyState::found) {
    drawn.count = 1;
    drawn.first = job.house.standby.where;
    drawn.placed = true;
  }
  return drawn;
}

Drawn openFlues(const Job& job) {
  Drawn drawn;
  drawn.add(job.house.appliances, [](const Appliance& a) { return a.open_flued; });
  return drawn;
}

struct Kind {
  const char* key;
  Looked LookedFor::*looked;
  bool gates;  ///< not looked for makes places not-proven
  Drawn (*drawn)(const Job&);
};

constexpr auto kKinds = std::to_array<Kind>({
    {"openings", &LookedFor::openings, true, openings},
    {"gas", &LookedFor::gas, true,
     [](const Job& job) { return services(job, {ServiceKind::gas}); }},
    {"electricity", &LookedFor::electricity, true,
     [](const Job& job) { return services(job, {ServiceKind::electricity}); }},
    {"water", &LookedFor::water, true,
     [](const Job& job) { return services(job, {ServiceKind::water}); }},
    {"telecom", &LookedFor::telecom, true,
     [](const Job& job) { return services(job, {ServiceKind::telecom}); }},
    {"oil", &LookedFor::oil, true,
     [](const Job& job) { return services(job, {ServiceKind::oil}); }},
    {"drain", &LookedFor::drain, true, drains},
    {"flue_terminal", &LookedFor::flue_terminal, true, flueTerminals},
    {"heating", &LookedFor::heating, true, heating},
    {"standby_pipe", &LookedFor::standby_pipe, false, standby},
    {"open_flue", &LookedFor::open_flue, false, openFlues},
});

void checkKind(const Job& job, const Kind& kind, ProblemList& problems) {
  const std::string pointer = at("/looked_for", kind.key);
  const auto name = base::phrase("kind", base::Message(std::string("looked.") + kind.key));
  const Drawn drawn = kind.drawn(job);
  switch (job.looked_for.*kind.looked) {
    case Looked::not_looked:
      if (kind.gates) problems.add(Gravity::missing, "plan.looked.not", pointer, {name});
      break;
    case Looked::looked_none:
      if (drawn.first) {
        problems.add("plan.looked.contradicted", pointer,
                     {name, base::text("thing", *drawn.first)});
      }
      break;
    case Looked::present:
      // A thing that is there but nowhere drawn refuses no place: a wall would read clear over it.
      if (!drawn.placed) {
        problems.add(kind.gates ? Gravity::unsound : Gravity::missing, "plan.looked.not-drawn",
                     pointer, {name});
      }
      break;
  }
}

}  // namespace

void settleLookedFor(const Job& before, Job& after) {
  for (const Kind& kind : kKinds) {
    Looked& looked = after.looked_for.*kind.looked;
    const Drawn was = kind.drawn(before);
    const Drawn is = kind.drawn(after);
    if (looked == Looked::looked_none && is.first && !was.first) looked = Looked::present;
    if (looked == Looked::present && was.placed && !is.placed) looked = Looked::not_looked;
  }
}

std::size_t drawnOfKind(const Job& job, const std::string& key) {
  for (const Kind& kind : kKinds) {
    if (key == kind.key) return kind.drawn(job).count;
  }
  return 0;
}

bool setLooked(LookedFor& answers, const std::string& key, Looked answer) {
  for (const Kind& kind : kKinds) {
    if (key != kind.key) continue;
    answers.*kind.looked = answer;
    return true;
  }
  return false;
}

void checkLookedFor(const Job& job, ProblemList& problems) {
  for (const Kind& kind : kKinds) checkKind(job, kind, problems);
  if (job.looked_for.open_flue == Looked::not_looked && job.house.appliances.empty()) {
    problems.add(Gravity::missing, "plan.flue.not-looked", "/looked_for/open_flue");
  }
}

}  // namespace sumpwright::plan
