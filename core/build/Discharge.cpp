#include "build/Discharge.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "build/Enclosure.h"
#include "build/Heights.h"
#include "build/OutletLevels.h"
#include "build/Run.h"
#include "plan/KindNames.h"
#include "rules/InPlan.h"
#include "rules/RuleSheetNames.h"
#include "rules/Spans.h"

namespace sumpwright::build {

namespace {

using base::Message;
using perimeter::Place;
using rules::DischargeMeasure;
using rules::Finding;
using rules::FindingSpan;
using rules::RingSpan;
using rules::Rule;
using rules::RuleKind;
using rules::Site;
using rules::Thing;

bool measuresDistance(const Rule& rule) {
  if (rule.kind == RuleKind::clearance) return true;
  return rule.kind == RuleKind::discharge &&
         (rule.measure == DischargeMeasure::near || rule.measure == DischargeMeasure::over ||
          rule.measure == DischargeMeasure::jet);
}

bool measuresLevel(const Rule& rule) {
  return rule.kind == RuleKind::discharge && !measuresDistance(rule) &&
         rule.measure != DischargeMeasure::enclosed;
}

Need needOf(const Rule& rule) {
  Need need;
  need.needed_m = rule.needed_m ? rule.needed_m->value : 0.0;
  if (rule.clear_below_m) need.clear_below_m = rule.clear_below_m->value;
  return need;
}

/// As far in plan as a thing must be from a part; nothing where the heights keep them apart.
std::optional<double> reachTo(const Rule& rule, const Thing& thing, const PlacedPart& part) {
  if (rule.kind == RuleKind::discharge && rule.measure == DischargeMeasure::over) {
    if (!(thing.low_m < part.body.low_m)) return std::nullopt;
    return part.body.half_m + rule.needed_m->value - rules::kRounding_m;
  }
  if (rule.kind == RuleKind::discharge && rule.measure == DischargeMeasure::jet) {
    return jetReach_m(thing, part.body, rule.needed_m->value);
  }
  return reachInPlan_m(thing, part.body, needOf(rule));
}

/// Distance that the rule measures, by that in plan.
double measured(const Rule& rule, const Thing& thing, const PlacedPart& part, double in_plan_m) {
  if (rule.kind == RuleKind::discharge && rule.measure == DischargeMeasure::over) {
    return in_plan_m - part.body.half_m;
  }
  if (rule.kind == RuleKind::discharge && rule.measure == DischargeMeasure::jet) {
    return std::max(0.0, thing.low_m - part.body.high_m);
  }
  return distance_m(in_plan_m, thing, part.body);
}

/// The end of the last edge and the length are one place (rounding).
constexpr double kSameEnd_m = 1e-9;

/// Spans cut at chainage 0 made whole again: their ends then pass the ring's length.
void joinOverStart(const Site& site, std::vector<RingSpan>& spans) {
  for (RingSpan& last : spans) {
    const double length = site.perimeter.length_m(last.ring);
    if (last.to_m < length - kSameEnd_m || last.from_m == 0.0) continue;
    for (RingSpan& first : spans) {
      if (first.ring != last.ring || first.from_m != 0.0 || !first.from_in) continue;
      last.to_m = length + first.to_m;
      first.to_m = first.from_m;  // emptied
    }
  }
  std::erase_if(spans, [](const RingSpan& s) { return !(s.from_m < s.to_m); });
}

/// Hole chainages from those of a part that stands `shift_m` further round the ring.
std::vector<RingSpan> broughtBack(const Site& site, std::vector<RingSpan> spans, double shift_m) {
  if (shift_m == 0.0) return spans;
  joinOverStart(site, spans);
  std::vector<RingSpan> back;
  for (const RingSpan& s : spans) {
    if (s.from_m == 0.0 && s.to_m >= site.perimeter.length_m(s.ring) - kSameEnd_m) {
      back.push_back(rules::wholeRing(site.perimeter, s.ring));
      continue;
    }
    const rules::RingRange moved{s.ring, s.from_m - shift_m, s.to_m - shift_m};
    for (const RingSpan& w : rules::wrapRange(site.perimeter, moved, s.from_in)) back.push_back(w);
  }
  return back;
}

Place placeOfPart(const Site& site, Place hole, const PlacedPart& part) {
  if (part.shift_m == 0.0) return site.perimeter.wrapped(hole);
  return site.perimeter.wrapped({hole.ring, hole.chainage_m + part.shift_m});
}

std::vector<RingSpan> tooNear(const Rule& rule, const Site& site, const Thing& thing) {
  std::vector<RingSpan> spans;
  for (const PlacedPart& part : placedParts(rule, site)) {
    const auto r = reachTo(rule, thing, part);
    if (!r) continue;
    for (const RingSpan& s :
         broughtBack(site, rules::nearWalls(site, thing, rule.path, *r), part.shift_m)) {
      spans.push_back(s);
    }
  }
  return rules::joinSpans(std::move(spans));
}

/// The part nearest to a thing that the rule speaks of, and how near.
struct NearPart {
  double distance_m = std::numeric_limits<double>::infinity();
  rules::Part part = rules::Part::outlet;
};

NearPart nearPart(const Rule& rule, const Site& site, const Thing& thing, Place hole) {
  NearPart best;
  for (const PlacedPart& part : placedParts(rule, site)) {
    // Out of the rule's sight at this height, be it ever so near in plan.
    const auto reach = reachTo(rule, thing, part);
    const double plan =
        rules::distanceInPlan(site, thing, rule.path, placeOfPart(site, hole, part));
    const bool jet = rule.kind == RuleKind::discharge && rule.measure == DischargeMeasure::jet;
    if (jet && !(reach && plan < *reach)) continue;
    if (isClearBelow(thing, part.body, needOf(rule))) continue;
    const double d = measured(rule, thing, part, plan);
    if (d < best.distance_m) best = {d, part.part};
  }
  return best;
}

/// The least over a span of hole chainages: distance grows with that in plan, part by part.
NearPart leastOver(const Rule& rule, const Site& site, const Thing& thing, const RingSpan& span) {
  NearPart least;
  for (const PlacedPart& part : placedParts(rule, site)) {
    if (!reachTo(rule, thing, part)) continue;
    const rules::RingRange moved{span.ring, span.from_m + part.shift_m, span.to_m + part.shift_m};
    for (const RingSpan& w : rules::wrapRange(site.perimeter, moved, true)) {
      const double plan = rules::leastInPlan(site, thing, rule.path, w.ring, w.from_m, w.to_m);
      const double d = measured(rule, thing, part, plan);
      if (d < least.distance_m) least = {d, part.part};
    }
  }
  return least;
}

bool heightsKnown(const Thing& thing) {
  return std::isfinite(thing.low_m) || std::isfinite(thing.high_m);
}

Message nearReason(const Rule& rule, const Thing& thing, rules::Part part) {
  if (rule.kind == RuleKind::discharge && rule.measure == DischargeMeasure::over) {
    return Message("rule.outlet-over", {base::phrase("thing", thing.label)});
  }
  if (rule.kind == RuleKind::discharge && rule.measure == DischargeMeasure::jet) {
    return Message("rule.outlet-jet", {base::phrase("thing", thing.label)});
  }
  const Message what("part." + std::string(plan::nameOf(part)));
  return Message(heightsKnown(thing) ? "rule.run-near" : "rule.run-near-any-height",
                 {base::phrase("part", what), base::phrase("thing", thing.label)});
}

Finding thingFinding(const Rule& rule, const Site& site, const Thing& thing) {
  Finding f = rules::makeFinding(rule, site, -1, nearReason(rule, thing, rule.applies_to.front()));
  f.thing = thing.id;
  f.thing_label = thing.label;
  if (rule.waiver.only_located && !thing.located) f.waivable.allowed = false;
  return f;
}

void addRun(const Rule& rule, const Site& site, Finding finding, const std::vector<RingSpan>& where,
            std::vector<FindingSpan>& out) {
  const std::size_t before = out.size();
  rules::addSpans(rule, site, -1, std::move(finding), where, out);
  for (std::size_t i = before; i < out.size(); ++i) out[i].of_run = true;
}

void addThings(const Rule& rule, const Site& site, std::vector<FindingSpan>& out) {
  for (const Thing* thing : thingsInHeight(rule, site)) {
    const Finding f = thingFinding(rule, site, *thing);
    for (const RingSpan& span : tooNear(rule, site, *thing)) {
      Finding here = f;
      const NearPart least = leastOver(rule, site, *thing, span);
      here.distance_m = least.distance_m;
      here.reason = nearReason(rule, *thing, least.part);
      addRun(rule, site, here, {span}, out);
    }
  }
}

/// Between walls, where the outlet is low: of a placed one, where it ends below the eaves.
void addEnclosed(const Rule& rule, const Site& site, bool placed, std::vector<FindingSpan>& out) {
  const double shift = placed ? site.run->shift_m : 0.0;
  const auto low = placed ? belowEavesSpans(site) : rules::allRings(site.perimeter);
  const auto add = [&](const std::vector<RingSpan>& where, const char* reason) {
    const Finding f = rules::makeFinding(
        rule, site, -1, Message(reason, {base::metres("needed", rule.needed_m->value)}));
    addRun(rule, site, f, broughtBack(site, commonSpans(where, low), shift), out);
  };
  add(enclosedSpans(site), "rule.outlet-enclosed");
  add(passageSpans(site, rule.needed_m->value), "rule.outlet-passage");
}

void dischargeSpans(const Rule& rule, const Site& site, std::vector<FindingSpan>& out) {
  const bool low = site.outlet == plan::OutletMode::low && !site.run;
  if (low && rule.measure == DischargeMeasure::enclosed) addEnclosed(rule, site, false, out);
}

std::optional<rules::Nearest> nothingNear(const Rule& /*rule*/, const Site& /*site*/,
                                          Place /*place*/) {
  return std::nullopt;
}

std::optional<double> noDistance(const Rule& /*rule*/, const Site& /*site*/, const Thing& /*thing*/,
                                 int /*ring*/, double /*from_m*/, double /*to_m*/) {
  return std::nullopt;
}

const Thing* thingOf(const Rule& rule, const Site& site, const std::string& id) {
  for (const Thing* thing : thingsInHeight(rule, site)) {
    if (thing->id == id) return thing;
  }
  return nullptr;
}

}  // namespace

const rules::RuleJudge kDischarge{RuleKind::discharge, dischargeSpans, nothingNear, noDistance};

std::vector<const Thing*> thingsInHeight(const Rule& rule, const Site& site) {
  std::vector<const Thing*> things;
  const auto take = [&](const Thing& thing) {
    const bool meant =
        std::find(rule.things.begin(), rule.things.end(), thing.kind) != rule.things.end();
    if (meant && !thing.shapes.empty()) things.push_back(&thing);
  };
  std::for_each(site.things.begin(), site.things.end(), take);
  std::for_each(site.later.begin(), site.later.end(), take);
  return things;
}

void addRunSpans(const Rule& rule, const Site& site, std::vector<FindingSpan>& out) {
  if (!site.run || !rule.needed_m) return;
  if (measuresDistance(rule)) {
    if (rules::isAboutRun(rule)) addThings(rule, site, out);
  } else if (measuresLevel(rule)) {
    for (const LevelSpan& level : levelSpans(rule, site)) {
      Finding f = rules::makeFinding(rule, site, -1, level.reason);
      f.distance_m = level.distance_m;
      if (level.unknown) {
        f.weight = rules::Weight::unknown;
        f.waivable = {};
        f.needed_m.reset();
        f.distance_m.reset();
      }
      addRun(rule, site, f, broughtBack(site, {level.where}, site.run->shift_m), out);
    }
  } else if (rule.kind == RuleKind::discharge) {
    addEnclosed(rule, site, true, out);
  }
}

Finding runFindingAt(const Rule& rule, const Site& site, const Finding& finding, Place hole) {
  Finding f = finding;
  if (!site.run || f.weight == rules::Weight::unknown) return f;
  if (measuresLevel(rule)) {
    const Place outlet = site.perimeter.wrapped({hole.ring, hole.chainage_m + site.run->shift_m});
    const OutletLevel level = levelAt(rule, site, outlet);
    f.distance_m = level.distance_m;
    f.reason = level.reason;
    return f;
  }
  const Thing* thing = measuresDistance(rule) ? thingOf(rule, site, f.thing) : nullptr;
  if (thing == nullptr) return f;
  const NearPart nearest = nearPart(rule, site, *thing, hole);
  f.distance_m = nearest.distance_m;
  if (rule.reason.empty()) f.reason = nearReason(rule, *thing, nearest.part);
  if (f.waivable.not_within_m && *f.distance_m <= *f.waivable.not_within_m) {
    f.waivable.allowed = false;
  }
  return f;
}

std::optional<RunNearest> nearestOfRun(const Rule& rule, const Site& site, Place hole) {
  if (!site.run || !rule.needed_m) return std::nullopt;
  if (measuresLevel(rule)) {
    const Place outlet = site.perimeter.wrapped({hole.ring, hole.chainage_m + site.run->shift_m});
    const OutletLevel level = levelAt(rule, site, outlet);
    if (!level.distance_m) return std::nullopt;
    return RunNearest{*level.distance_m, "", level.of};
  }
  if (!measuresDistance(rule) || !rules::isAboutRun(rule)) return std::nullopt;
  std::optional<RunNearest> best;
  for (const Thing* thing : thingsInHeight(rule, site)) {
    const double d = nearPart(rule, site, *thing, hole).distance_m;
    if (!std::isfinite(d)) continue;
    if (!best || d < best->distance_m) best = RunNearest{d, thing->id, thing->label};
  }
  return best;
}

}  // namespace sumpwright::build
