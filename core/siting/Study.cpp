#include "siting/Study.h"

#include <algorithm>
#include <utility>

#include "base/Contract.h"
#include "build/CableAlong.h"
#include "build/Discharge.h"
#include "build/Run.h"
#include "build/SectionAlong.h"
#include "plan/KindNames.h"
#include "plan/PlanCheck.h"
#include "rules/Spans.h"
#include "rules/Waived.h"
#include "siting/BestPlaces.h"
#include "siting/DesignCheck.h"
#include "siting/DoorLabel.h"
#include "siting/Findings.h"
#include "siting/ReachAlong.h"
#include "siting/RuleList.h"
#include "siting/Scoring.h"
#include "siting/Verdict.h"
#include "siting/Waivers.h"

namespace sumpwright::siting {

namespace {

using rules::FindingSpan;
using rules::Site;
using rules::Weight;

/// Not proven, and only by what cannot be judged yet.
bool isLeftOpen(const Stretch& stretch, const std::vector<FindingSpan>& spans) {
  return stretch.state == State::not_proven &&
         std::all_of(stretch.spans.begin(), stretch.spans.end(), [&](int i) {
           const Finding& f = spans[static_cast<std::size_t>(i)].finding;
           return f.weight == Weight::advisory || isNotYetJudged(f);
         });
}

base::Problems unsound(const plan::Job& job) {
  base::Problems problems = plan::checkJob(job);
  std::erase_if(problems,
                [](const base::Problem& p) { return p.gravity == base::Gravity::missing; });
  return problems;
}

bool isAboutRooms(const rules::Rule& rule) {
  return rule.enabled && rule.severity != rules::Severity::preference &&
         (rule.kind == rules::RuleKind::room_behind ||
          rule.kind == rules::RuleKind::fitting_behind);
}

/// Rules about rooms say nothing where no room is drawn or its use is not known.
void addUnknownRooms(const Site& site, const rules::Rule& rule, std::vector<Unjudged>& list) {
  if (!isAboutRooms(rule)) return;
  if (site.job.plan.rooms.empty()) {
    list.push_back({rule.id, "", base::Message("room.none"), base::Message("rule.unjudged.rooms")});
  }
  for (const plan::Room& room : site.job.plan.rooms) {
    if (room.use != plan::RoomUse::unknown || rule.kind != rules::RuleKind::room_behind) continue;
    const base::Message label = room.name.empty()
                                    ? base::Message("room.unknown")
                                    : base::Message("thing.named", {base::text("name", room.name)});
    list.push_back({rule.id, room.id, label, base::Message("rule.unjudged.room-use")});
  }
}

void addLater(const Site& site, const rules::Rule& rule, std::vector<Unjudged>& list) {
  if (!rule.enabled || rule.kind != rules::RuleKind::clearance || site.run) return;
  for (const rules::Thing& thing : site.later) {
    if (std::find(rule.things.begin(), rule.things.end(), thing.kind) == rule.things.end())
      continue;
    list.push_back({rule.id, thing.id, thing.label, base::Message("rule.unjudged.storey")});
  }
}

std::vector<Unjudged> unjudgedOf(const Site& site) {
  std::vector<Unjudged> list;
  for (const rules::Rule& rule : site.sheet.rules) {
    addUnknownRooms(site, rule, list);
    addLater(site, rule, list);
  }
  return list;
}

/// The finding at one place: its own distance, not the least of the span.
Finding findingAt(const Site& site, const FindingSpan& span, Place place) {
  Finding f = span.finding;
  if (span.of_run) {
    return build::runFindingAt(site.sheet.rules[static_cast<std::size_t>(span.rule_index)], site, f,
                               place);
  }
  if (span.thing_index < 0) return f;
  const rules::Rule& rule = site.sheet.rules[static_cast<std::size_t>(span.rule_index)];
  const rules::Thing& thing = site.things[static_cast<std::size_t>(span.thing_index)];
  f.distance_m =
      judgeOf(rule.kind).least(rule, site, thing, place.ring, place.chainage_m, place.chainage_m);
  const auto& floor = f.waivable.not_within_m;
  if (floor && f.distance_m && *f.distance_m <= *floor) f.waivable.allowed = false;
  return f;
}

int advisoriesIn(const std::vector<Finding>& findings) {
  return static_cast<int>(std::count_if(findings.begin(), findings.end(), [](const Finding& f) {
    return f.weight == Weight::advisory;
  }));
}

State stateOf(const std::vector<Finding>& sorted) {
  return sorted.empty() ? State::clear : rules::stateOf(sorted.front().weight);
}

std::optional<base::Message> labelIn(const std::vector<FindingSpan>& spans, const std::string& id) {
  for (const FindingSpan& s : spans) {
    if (s.finding.thing == id) return s.finding.thing_label;
  }
  return std::nullopt;
}

base::Message named(const std::string& name, base::Message otherwise) {
  return name.empty() ? std::move(otherwise)
                      : base::Message("thing.named", {base::text("name", name)});
}

std::optional<base::Message> labelInPlan(const Site& site, const std::string& id) {
  for (const plan::Room& room : site.job.plan.rooms) {
    if (room.id != id) continue;
    return named(room.name, base::Message("room." + std::string(plan::nameOf(room.use))));
  }
  for (const plan::FloorZone& zone : site.job.plan.floor_zones) {
    if (zone.id != id) continue;
    return named(zone.name, base::Message("floor." + std::string(plan::nameOf(zone.kind))));
  }
  for (int ring = 0; ring < site.perimeter.ringCount(); ++ring) {
    for (const perimeter::Edge& edge : site.perimeter.edges(ring)) {
      if (site.perimeter.wall(edge).id == id) return site.perimeter.wallLabel(edge);
    }
  }
  for (const plan::InnerDoor& door : site.job.plan.inner_doors) {
    if (door.id == id) return innerDoorLabel(site.job.plan, door);
  }
  return std::nullopt;
}

}  // namespace

base::Result<Study> Study::of(const plan::Job& job, const rules::RuleSheet& sheet,
                              const StudyOptions& options) {
  base::Problems problems = unsound(job);
  if (!problems.empty()) return problems;
  auto perimeter = perimeter::Perimeter::of(job);
  if (!perimeter) return perimeter.problems();
  const double core =
      options.core_m.value_or(job.design.core_mm.value_or(sheet.default_core_mm.value) / 1000.0);
  if (const auto bad = sizeProblem(job, sheet, core)) return *bad;
  rules::Site site = rules::makeSite(std::move(perimeter).value(), job, sheet,
                                     options.outlet.value_or(job.design.outlet), core);
  site.run = build::placedRun(site, options.sump);
  site.hole = rules::placedHole(job, options.sump);
  Study study;
  study.m_data = dataOf(std::move(site), options.sump);
  study.m_places = std::make_shared<Places>();
  return study;
}

std::shared_ptr<const Study::Data> Study::dataOf(rules::Site site, const std::string& sump) {
  auto data = std::make_shared<Data>();
  data->site = std::move(site);
  data->site.sump = sump;
  data->accuracy_m = data->site.sheet.accuracy_m(data->site.job.survey_method);
  data->spans = findAll(data->site);
  data->stretches = tile(data->site, data->spans);
  data->unjudged = unjudgedOf(data->site);
  data->wiring = std::make_shared<const build::Wiring>(build::wiringOf(data->site, sump));
  return data;
}

std::shared_ptr<const Study::Data> Study::dataFor(const std::string& sump) const {
  if (sump.empty()) return m_data;
  const auto run = build::placedRun(site(), sump);
  const auto hole = rules::placedHole(job(), sump);
  const bool same =
      hole.has_value() == site().hole.has_value() &&
      (!hole ||
       (hole->entry_m == site().hole->entry_m && hole->fall_deg == site().hole->fall_deg)) &&
      run.has_value() == site().run.has_value() &&
      (!run || (run->outlet_m == site().run->outlet_m && run->shift_m == site().run->shift_m &&
                run->fan_place == site().run->fan_place && run->fan_m == site().run->fan_m)) &&
      build::wiringOf(site(), sump) == *m_data->wiring;
  if (same) return m_data;
  const std::scoped_lock lock(m_data->others_lock);
  auto& other = m_data->others[sump];
  if (!other) {
    rules::Site its = site();
    its.run = run;
    its.hole = hole;
    other = dataOf(std::move(its), sump);
  }
  return other;
}

Study Study::withReach(std::shared_ptr<const ReachAlong> reach, RankBy rank) const {
  auto places = std::make_shared<Places>();
  if (reach && reach->fits(perimeter())) places->reach = std::move(reach);
  places->rank = rank;
  Study study = *this;
  study.m_places = places;
  return study;
}

const build::CableAlong* Study::cable() const {
  if (job().plan.supplies.empty()) return nullptr;
  std::call_once(m_data->cable_once, [this] {
    m_data->cable = std::make_shared<const build::CableAlong>(
        build::CableAlong::of(site(), m_data->wiring->ask, m_data->wiring->shift_m));
  });
  return m_data->cable.get();
}

const build::SectionAlong& Study::section() const {
  std::call_once(m_data->section_once, [this] {
    m_data->section = std::make_shared<const build::SectionAlong>(build::SectionAlong::of(site()));
  });
  return *m_data->section;
}

const std::vector<BestPlace>& Study::best() const {
  std::call_once(m_places->best_once, [this] { m_places->best = bestPlaces(*this); });
  return m_places->best;
}

const std::optional<LeastBad>& Study::leastBad() const {
  std::call_once(m_places->least_bad_once, [this] {
    if (best().empty()) m_places->least_bad = leastBadPlace(*this);
  });
  return m_places->least_bad;
}

std::vector<Finding> Study::findingsOf(const Stretch& stretch) const {
  std::vector<Finding> findings;
  for (const int i : stretch.spans) {
    const FindingSpan& span = spans()[static_cast<std::size_t>(i)];
    Finding f = span.finding;
    if (span.thing_index >= 0) {
      const rules::Rule& rule = sheet().rules[static_cast<std::size_t>(span.rule_index)];
      f.distance_m = judgeOf(rule.kind).least(
          rule, site(), site().things[static_cast<std::size_t>(span.thing_index)], stretch.ring,
          stretch.from_m, stretch.to_m);
    }
    const auto listed = [&](const Finding& other) {
      return other.rule == f.rule && other.thing == f.thing && other.weight == f.weight;
    };
    // A thing may have several spans here that all but meet.
    if (std::none_of(findings.begin(), findings.end(), listed)) findings.push_back(std::move(f));
  }
  sortWorstFirst(findings);
  return findings;
}

std::vector<Run> Study::runs() const { return joinRuns(site(), stretches()); }

std::vector<Run> Study::runsLeftOpen() const {
  // As if those were clear and all else refused: then joining gives the runs.
  std::vector<std::vector<Stretch>> open = stretches();
  for (auto& ring : open) {
    for (Stretch& s : ring) s.state = isLeftOpen(s, spans()) ? State::not_proven : State::refused;
  }
  std::vector<Run> runs = joinRuns(site(), open);
  std::erase_if(runs, [](const Run& run) { return run.state != State::not_proven; });
  return runs;
}

std::vector<double> Study::lengths_m() const {
  std::vector<double> lengths(4, 0.0);
  for (const auto& ring : stretches()) {
    for (const Stretch& s : ring) lengths[static_cast<std::size_t>(s.state)] += s.length_m();
  }
  return lengths;
}

Assessment Study::assess(Place place, const std::string& sump) const {
  if (auto its = dataFor(sump); its != m_data) {
    Study other;
    other.m_data = std::move(its);
    other.m_places = m_places;
    return other.assess(place, sump);
  }
  Assessment a;
  a.place = perimeter().wrapped(place);
  a.point = perimeter().pointAt(a.place);
  const double s = a.place.chainage_m;
  const auto& ring = stretches()[static_cast<std::size_t>(a.place.ring)];
  for (const int i : stretchAt(ring, s).spans) {
    const FindingSpan& span = spans()[static_cast<std::size_t>(i)];
    if (rules::holds(span, s)) a.findings.push_back(findingAt(site(), span, a.place));
  }
  sortWorstFirst(a.findings);
  a.state = stateOf(a.findings);
  for (const Finding& f : a.findings)
    a.accepted.push_back(rules::isWaived(site(), f, a.place, sump));
  a.waived = allWaived(a);
  a.margins = marginsAt(site(), a.place, accuracy_m());
  a.close = std::any_of(a.margins.begin(), a.margins.end(), [&](const Margin& m) {
    return m.close && sheet().find(m.rule)->severity == rules::Severity::binding;
  });
  a.score = scoreOf({site(), section(), reach(), cable()}, a.place, leastBinding(site(), a.margins),
                    advisoriesIn(a.findings));
  a.rooms_behind = roomsBehindAt(site(), a.place);
  a.thickness_assumed = perimeter().edgeAt(a.place).thickness_assumed;
  a.sentence = verdictSentence(site(), a);
  return a;
}

double Study::scoreAt(Place place) const {
  const Place at = perimeter().wrapped(place);
  int advisories = 0;
  const auto& ring = stretches()[static_cast<std::size_t>(at.ring)];
  for (const int i : stretchAt(ring, at.chainage_m).spans) {
    const FindingSpan& span = spans()[static_cast<std::size_t>(i)];
    if (span.finding.weight == Weight::advisory && rules::holds(span, at.chainage_m)) ++advisories;
  }
  return scoreTotal({site(), section(), reach(), cable()}, at, leastBindingMargin_m(site(), at),
                    advisories);
}

State Study::stateAt(Place place) const {
  const Place at = perimeter().wrapped(place);
  State worst = State::clear;
  const auto& ring = stretches()[static_cast<std::size_t>(at.ring)];
  for (const int i : stretchAt(ring, at.chainage_m).spans) {
    if (!rules::holds(spans()[static_cast<std::size_t>(i)], at.chainage_m)) continue;
    worst = std::max(worst, stateFrom({i}, spans()));
  }
  return worst;
}

std::optional<Place> Study::nextAllowed(Place from, int direction) const {
  const Place at = perimeter().wrapped(from);
  const double length = perimeter().length_m(at.ring);
  const State wanted = allowedState(*this);
  std::optional<Place> next;
  double least = 2.0 * length;
  for (const Run& run : runs()) {
    if (run.ring != at.ring || run.state != wanted) continue;
    const Inset inset = insetOf(run, accuracy_m());
    const double target = direction > 0 ? inset.from_m : inset.to_m;
    const double into = perimeter().wrapped({at.ring, at.chainage_m - run.from_m}).chainage_m;
    if (into < run.to_m - run.from_m) continue;  // already there
    const double way = direction > 0 ? target - at.chainage_m : at.chainage_m - target;
    const double ahead = perimeter().wrapped({at.ring, way}).chainage_m;
    if (ahead < least) {
      least = ahead;
      next = perimeter().wrapped({at.ring, target});
    }
  }
  return next;
}

base::Message Study::labelOf(const std::string& id) const {
  for (const rules::Thing& t : site().things) {
    if (t.id == id && t.ranges.empty()) return t.label;
  }
  for (const rules::Thing& t : site().things) {
    if (t.id == id) return t.label;
  }
  if (const auto label = labelIn(spans(), id)) return *label;
  if (const auto label = labelInPlan(site(), id)) return *label;
  return base::plainText(id);
}

}  // namespace sumpwright::siting
