#include "build/Discharge.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "build/Enclosure.h"
#include "build/Heights.h"
#include "build/Levels.h"
#include "build/OutletLevels.h"
#include "build/Run.h"
#include "build/RunWalls.h"
#include "plan/KindNames.h"
#include "plan/RoofSpace.h"
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
         rule.measure != DischargeMeasure::enclosed && rule.measure != DischargeMeasure::roof_space;
}

bool isOfRoofSpace(const Rule& rule) {
  return rule.kind == RuleKind::discharge && rule.measure == DischargeMeasure::roof_space;
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

/// In plan from a part above that hole.
double inPlanTo(const Rule& rule, const Site& site, const Thing& thing, Place hole,
                const PlacedPart& part) {
  if (part.isUpright()) {
    return rules::distanceInPlan(site, thing, rule.path, placeOfPart(site, hole, part));
  }
  double least = std::numeric_limits<double>::infinity();
  for (const RingSpan& w : takenUp(site, part, hole)) {
    least = std::min(least, rules::leastInPlan(site, thing, rule.path, w.ring, w.from_m, w.to_m));
  }
  return least;
}

std::vector<RingSpan> tooNear(const Rule& rule, const Site& site, const Thing& thing) {
  std::vector<RingSpan> spans;
  for (const PlacedPart& part : placedParts(rule, site)) {
    const auto r = reachTo(rule, thing, part);
    if (!r) continue;
    for (const RingSpan& s : broughtBack(site, rules::nearWalls(site, thing, rule.path, *r),
                                         part.shift_m, part.to_shift_m)) {
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
    const double plan = inPlanTo(rule, site, thing, hole, part);
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
    const rules::RingRange moved{span.ring, span.from_m + part.shift_m,
                                 span.to_m + part.to_shift_m};
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

Message partWords(rules::Part part) { return Message("part." + std::string(plan::nameOf(part))); }

Message nearReason(const Rule& rule, const Thing& thing, rules::Part part) {
  if (rule.kind == RuleKind::discharge && rule.measure == DischargeMeasure::over) {
    return Message("rule.outlet-over", {base::phrase("thing", thing.label)});
  }
  if (rule.kind == RuleKind::discharge && rule.measure == DischargeMeasure::jet) {
    return Message("rule.outlet-jet", {base::phrase("thing", thing.label)});
  }
  const Message what = partWords(part);
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
    addRun(rule, site, f, broughtBack(site, commonSpans(where, low), shift, shift), out);
  };
  add(enclosedSpans(site), "rule.outlet-enclosed");
  add(passageSpans(site, rule.needed_m->value), "rule.outlet-passage");
}

Message labelOfThing(const Site& site, const std::string& id) {
  for (const auto* list : {&site.later, &site.things}) {
    for (const Thing& thing : *list) {
      if (thing.id == id) return thing.label;
    }
  }
  return base::plainText(id);
}

/// The pipe of a fan in the roof space goes out through the roof: on the wall under the eaves it
/// does not end.
void addUnderRoof(const Rule& rule, const Site& site, std::vector<FindingSpan>& out) {
  const double shift = site.run->shift_m;
  for (int ring = 0; ring < site.perimeter.ringCount(); ++ring) {
    for (const perimeter::Edge& edge : site.perimeter.edges(ring)) {
      const auto eaves = eavesOf(site, edge);
      if (eaves ? site.run->outlet_m >= *eaves : !rule.unknown_gates) continue;
      Finding f = rules::makeFinding(rule, site, -1, Message("rule.roof-outlet"));
      if (!eaves) {
        f.reason = Message("rule.eaves-unknown");
        f.weight = rules::Weight::unknown;
      }
      f.waivable = {};
      addRun(rule, site, f,
             broughtBack(site, {{edge.ring, edge.start_m, edge.end_m(), true}}, shift, shift), out);
    }
  }
}

/// A fan in the roof space, all round: whether somebody lives there is a fact of the house.
void addRoofSpace(const Rule& rule, const Site& site, std::vector<FindingSpan>& out) {
  if (site.run->fan_place != plan::FanPlace::roof_space) return;
  addUnderRoof(rule, site, out);
  const plan::RoofSpace roof = plan::roofSpaceOf(site.job);
  if (roof.lived_in == plan::YesNo::no) return;
  if (roof.lived_in == plan::YesNo::unknown && !rule.unknown_gates) return;
  Finding f = rules::makeFinding(rule, site, -1, Message("rule.roof-lived-in"));
  if (roof.lived_in == plan::YesNo::unknown) {
    f.reason = Message("rule.roof-unknown");
    f.weight = rules::Weight::unknown;
    f.waivable = {};
  } else if (!roof.shown_by.empty()) {
    f.thing = roof.shown_by;
    f.thing_label = labelOfThing(site, roof.shown_by);
    f.reason = Message("rule.roof-shown", {base::phrase("thing", f.thing_label)});
  }
  addRun(rule, site, f, rules::allRings(site.perimeter), out);
}

void addLevels(const Rule& rule, const Site& site, std::vector<FindingSpan>& out) {
  const double shift = levelShift_m(rule, *site.run);
  for (const LevelSpan& level : levelSpans(rule, site)) {
    Finding f = rules::makeFinding(rule, site, -1, level.reason);
    f.distance_m = level.distance_m;
    if (level.unknown) {
      f.weight = rules::Weight::unknown;
      f.waivable = {};
      f.needed_m.reset();
      f.distance_m.reset();
    }
    addRun(rule, site, f, broughtBack(site, {level.where}, shift, shift), out);
  }
}

OutletLevel levelAbove(const Rule& rule, const Site& site, Place hole) {
  const double shift = levelShift_m(rule, *site.run);
  return levelAt(rule, site, site.perimeter.wrapped({hole.ring, hole.chainage_m + shift}));
}

/// Whether a part comes too near to something the rule speaks of.
bool isTooNear(const Rule& rule, const Site& site, const PlacedPart& part, Place hole) {
  for (const Thing* thing : thingsInHeight(rule, site)) {
    const auto r = reachTo(rule, *thing, part);
    if (r && inPlanTo(rule, site, *thing, hole, part) < *r) return true;
  }
  return false;
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
  if (!site.run) return;
  if (rule.kind == RuleKind::wall) return addRunWalls(rule, site, out);
  if (isOfRoofSpace(rule)) return addRoofSpace(rule, site, out);
  if (!rule.needed_m) return;
  if (measuresDistance(rule)) {
    if (rules::isAboutRun(rule)) addThings(rule, site, out);
  } else if (measuresLevel(rule)) {
    addLevels(rule, site, out);
  } else if (rule.kind == RuleKind::discharge) {
    addEnclosed(rule, site, true, out);
  }
}

bool isWayRefused(const Site& site, Place hole) {
  for (const Rule& rule : site.sheet.rules) {
    const bool binding = rule.enabled && rule.severity == rules::Severity::binding;
    const bool wall = rule.kind == RuleKind::wall;
    if (!binding || !(wall || (rule.needed_m && measuresDistance(rule)))) continue;
    for (const PlacedPart& part : placedParts(rule, site)) {
      const bool goes_aside = part.part == rules::Part::riser && part.to_shift_m != part.shift_m;
      const bool at_outlet =
          part.part == rules::Part::riser && part.isUpright() && part.shift_m != 0.0;
      if (!goes_aside && !at_outlet) continue;
      if (wall ? isOnRefused(rule, site, part, hole) : isTooNear(rule, site, part, hole)) {
        return true;
      }
    }
  }
  return false;
}

Finding runFindingAt(const Rule& rule, const Site& site, const Finding& finding, Place hole) {
  Finding f = finding;
  if (!site.run || f.weight == rules::Weight::unknown) return f;
  if (rule.kind == RuleKind::wall) return runWallAt(rule, site, std::move(f), hole);
  if (measuresLevel(rule)) {
    const OutletLevel level = levelAbove(rule, site, hole);
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
    const OutletLevel level = levelAbove(rule, site, hole);
    if (!level.distance_m) return std::nullopt;
    return RunNearest{*level.distance_m, "", level.of, partWords(rules::Part::outlet)};
  }
  if (!measuresDistance(rule) || !rules::isAboutRun(rule)) return std::nullopt;
  std::optional<RunNearest> best;
  for (const Thing* thing : thingsInHeight(rule, site)) {
    const NearPart near = nearPart(rule, site, *thing, hole);
    if (!std::isfinite(near.distance_m)) continue;
    if (best && near.distance_m >= best->distance_m) continue;
    best = RunNearest{near.distance_m, thing->id, thing->label, partWords(near.part)};
  }
  return best;
}

}  // namespace sumpwright::build
