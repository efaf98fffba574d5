#include <algorithm>
#include <iterator>
#include <map>
#include <string_view>
#include <tuple>
#include <utility>

#include "build/Discharge.h"
#include "plan/KindNames.h"
#include "rules/Spans.h"
#include "siting/Findings.h"
#include "siting/RuleList.h"

namespace sumpwright::siting {

namespace {

using rules::FindingSpan;
using rules::Site;
using rules::Weight;

plan::Looked lookedFor(const plan::LookedFor& looked, const std::string& kind) {
  if (kind == "openings") return looked.openings;
  if (kind == "gas") return looked.gas;
  if (kind == "electricity") return looked.electricity;
  if (kind == "water") return looked.water;
  if (kind == "telecom") return looked.telecom;
  if (kind == "oil") return looked.oil;
  if (kind == "drain") return looked.drain;
  if (kind == "flue_terminal") return looked.flue_terminal;
  if (kind == "heating") return looked.heating;
  // A sheet that gates on a kind the survey does not ask for can never be satisfied: say so.
  return plan::Looked::not_looked;
}

/// Something that could refuse was not looked for: unknown all round.
void addGates(const Site& site, const rules::Rule& rule, std::vector<FindingSpan>& out) {
  for (const rules::Gate& gate : site.sheet.gates) {
    if (gate.rule != rule.id) continue;
    if (lookedFor(site.job.looked_for, gate.looked_for) != plan::Looked::not_looked) continue;
    Finding f;
    f.rule = rule.id;
    f.thing = "looked_for." + gate.looked_for;
    f.thing_label = base::Message("looked." + gate.looked_for);
    f.weight = Weight::unknown;
    f.least_bad = gate.least_bad;
    f.reason = base::Message("rule.not-looked", {base::phrase("kind", f.thing_label)});
    rules::addSpans(rule, site, -1, f, rules::allRings(site.perimeter), out);
  }
}

/// Until the discharge is placed in 3-D a riser is never better than not-proven.
void addDischarge(const Site& site, std::vector<FindingSpan>& out) {
  if (site.outlet != plan::OutletMode::riser || site.run) return;
  Finding f;
  f.rule = "discharge";
  f.weight = Weight::unknown;
  f.least_bad = true;
  f.reason = base::Message("rule.discharge-unplaced");
  for (const rules::RingSpan& ring : rules::allRings(site.perimeter)) {
    out.push_back({ring.ring, ring.from_m, ring.to_m, true, f, -1, -1});
  }
}

void addLeastDistances(const Site& site, std::vector<FindingSpan>& spans, std::size_t from) {
  for (std::size_t i = from; i < spans.size(); ++i) {
    FindingSpan& s = spans[i];
    if (s.thing_index < 0) continue;
    const rules::Rule& rule = site.sheet.rules[static_cast<std::size_t>(s.rule_index)];
    const rules::Thing& thing = site.things[static_cast<std::size_t>(s.thing_index)];
    s.finding.distance_m = judgeOf(rule.kind).least(rule, site, thing, s.ring, s.from_m, s.to_m);
  }
}

/// A number for each (rule, thing, weight), by span: two spans of one thing that nearly meet are
/// the same finding.
std::vector<int> identitiesOf(const std::vector<FindingSpan>& spans) {
  std::map<std::tuple<std::string_view, std::string_view, Weight>, int> numbers;
  std::vector<int> identities;
  for (const FindingSpan& s : spans) {
    const auto key = std::tuple<std::string_view, std::string_view, Weight>(
        s.finding.rule, s.finding.thing, s.finding.weight);
    identities.push_back(numbers.emplace(key, static_cast<int>(numbers.size())).first->second);
  }
  return identities;
}

std::vector<int> setOf(const std::vector<int>& indices, const std::vector<int>& identities) {
  std::vector<int> set;
  for (const int i : indices) set.push_back(identities[static_cast<std::size_t>(i)]);
  std::sort(set.begin(), set.end());
  set.erase(std::unique(set.begin(), set.end()), set.end());
  return set;
}

void addMissing(const std::vector<int>& more, std::vector<int>& indices) {
  std::vector<int> all;
  std::set_union(indices.begin(), indices.end(), more.begin(), more.end(), std::back_inserter(all));
  indices = std::move(all);
}

/// Span ends of one ring, those nearer than kSamePlace_m made one; 0 and the length stay exact.
std::vector<double> endsOf(const Site& site, const std::vector<FindingSpan>& spans, int ring) {
  std::vector<double> ends{0.0, site.perimeter.length_m(ring)};
  for (const FindingSpan& s : spans) {
    if (s.ring != ring) continue;
    ends.push_back(s.from_m);
    ends.push_back(s.to_m);
  }
  std::sort(ends.begin(), ends.end());
  std::vector<double> kept{ends.front()};
  for (const double end : ends) {
    if (end - kept.back() > kSamePlace_m) kept.push_back(end);
  }
  const double length = site.perimeter.length_m(ring);
  if (kept.size() > 1 && length - kept.back() <= kSamePlace_m) kept.back() = length;
  return kept;
}

/// Index of the tile that starts at (about) `end`.
std::size_t tileFrom(const std::vector<double>& ends, double end) {
  const auto at = std::lower_bound(ends.begin(), ends.end(), end - kSamePlace_m);
  return static_cast<std::size_t>(at - ends.begin());
}

std::vector<Stretch> tileRing(const Site& site, const std::vector<FindingSpan>& spans, int ring) {
  const std::vector<double> ends = endsOf(site, spans, ring);
  std::vector<std::vector<int>> covers(ends.size() - 1);
  for (std::size_t i = 0; i < spans.size(); ++i) {
    if (spans[i].ring != ring) continue;
    const std::size_t last = tileFrom(ends, spans[i].to_m);
    for (std::size_t t = tileFrom(ends, spans[i].from_m); t < last; ++t) {
      covers[t].push_back(static_cast<int>(i));
    }
  }
  const std::vector<int> identities = identitiesOf(spans);
  std::vector<Stretch> stretches;
  std::vector<int> before;
  for (std::size_t t = 0; t + 1 < ends.size(); ++t) {
    std::vector<int> here = setOf(covers[t], identities);
    if (!stretches.empty() && before == here) {
      // Every span stays with the stretch: which of them holds a place is asked of each.
      addMissing(covers[t], stretches.back().spans);
      stretches.back().to_m = ends[t + 1];
      continue;
    }
    before = std::move(here);
    stretches.push_back(
        {ring, ends[t], ends[t + 1], stateFrom(covers[t], spans), std::move(covers[t])});
  }
  return stretches;
}

void joinOverStart(std::vector<Run>& ring, double length) {
  if (ring.size() < 2 || ring.front().state != ring.back().state) return;
  ring.back().to_m = length + ring.front().to_m;
  ring.erase(ring.begin());
}

}  // namespace

std::vector<FindingSpan> findAll(const Site& site) {
  std::vector<FindingSpan> spans;
  for (const rules::Rule& rule : site.sheet.rules) {
    if (!rule.enabled || rule.severity == rules::Severity::preference) continue;
    const std::size_t before = spans.size();
    judgeOf(rule.kind).spans(rule, site, spans);
    addLeastDistances(site, spans, before);
    build::addRunSpans(rule, site, spans);
    addGates(site, rule, spans);
  }
  addDischarge(site, spans);
  return spans;
}

bool isNotYetJudged(const Finding& f) {
  return f.weight == Weight::unknown &&
         (f.reason.id == "rule.discharge-unplaced" || f.reason.id == "rule.unjudged.riser" ||
          f.reason.id == "rule.unjudged.part");
}

State stateFrom(const std::vector<int>& indices, const std::vector<FindingSpan>& spans) {
  State worst = State::clear;
  for (const int i : indices) {
    const auto weight = spans[static_cast<std::size_t>(i)].finding.weight;
    const State s = weight == Weight::binding   ? State::refused
                    : weight == Weight::unknown ? State::not_proven
                                                : State::advised_against;
    worst = std::max(worst, s);
  }
  return worst;
}

std::vector<std::vector<Stretch>> tile(const Site& site, const std::vector<FindingSpan>& spans) {
  std::vector<std::vector<Stretch>> rings;
  for (int ring = 0; ring < site.perimeter.ringCount(); ++ring) {
    rings.push_back(tileRing(site, spans, ring));
  }
  return rings;
}

const Stretch& stretchAt(const std::vector<Stretch>& ring, double chainage_m) {
  const auto after =
      std::upper_bound(ring.begin(), ring.end(), chainage_m,
                       [](double s, const Stretch& stretch) { return s < stretch.from_m; });
  return after == ring.begin() ? ring.front() : *std::prev(after);
}

void sortWorstFirst(std::vector<Finding>& findings) {
  std::stable_sort(findings.begin(), findings.end(),
                   [](const Finding& a, const Finding& b) { return a.weight > b.weight; });
}

std::vector<Run> joinRuns(const Site& site, const std::vector<std::vector<Stretch>>& stretches) {
  std::vector<Run> all;
  for (std::size_t r = 0; r < stretches.size(); ++r) {
    std::vector<Run> ring;
    for (const Stretch& s : stretches[r]) {
      if (!ring.empty() && ring.back().state == s.state) {
        ring.back().to_m = s.to_m;
      } else {
        ring.push_back({s.ring, s.from_m, s.to_m, s.state});
      }
    }
    joinOverStart(ring, site.perimeter.length_m(static_cast<int>(r)));
    all.insert(all.end(), ring.begin(), ring.end());
  }
  return all;
}

}  // namespace sumpwright::siting
