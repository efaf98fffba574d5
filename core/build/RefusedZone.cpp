#include "build/RefusedZone.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "build/Discharge.h"
#include "build/Enclosure.h"
#include "build/Levels.h"
#include "build/RunWalls.h"
#include "build/ZoneHeights.h"
#include "rules/InPlan.h"

namespace sumpwright::build {

namespace {

using geometry::Interval;
using geometry::Intervals;
using perimeter::Edge;
using perimeter::Place;
using rules::RingSpan;
using rules::Rule;
using rules::RuleKind;
using rules::Site;
using rules::Thing;

/// The sheet as far as it speaks of an outlet with that weight, of the outlet alone, placed at a
/// height right over the hole.
Site outletOnly(const Site& site, double outlet_m, rules::Weight weight) {
  Site only = site;
  std::erase_if(only.sheet.rules, [&](const Rule& r) { return !isMeant(r, weight); });
  for (Rule& rule : only.sheet.rules) rule.applies_to = {rules::Part::outlet};
  only.run = rules::PlacedRun{};
  only.run->outlet_m = outlet_m;
  return only;
}

bool isOnRefusedWall(const Rule& rule, const Site& site, Place outlet) {
  const auto walls = refusedWalls(rule, site, halfOf(rule, site));
  return std::any_of(walls.begin(), walls.end(), [&](const RingSpan& s) {
    return s.ring == outlet.ring && rules::holds(s, outlet.chainage_m);
  });
}

/// The pieces of [from, to] round a ring that nothing covers.
Intervals gapsBetween(std::vector<RingSpan> spans, int ring, double length) {
  std::erase_if(spans, [&](const RingSpan& s) { return s.ring != ring; });
  Intervals gaps;
  double from = 0.0;
  for (const RingSpan& s : rules::joinSpans(std::move(spans))) {
    if (s.from_m >= from) gaps.push_back({from, s.from_m});
    from = std::max(from, s.to_m);
  }
  if (from <= length) gaps.push_back({from, length});
  return gaps;
}

double insideOf(Interval gap, double s, double inside_m) {
  const double inset = std::min(inside_m, 0.5 * (gap.to - gap.from));
  return std::clamp(s, gap.from + inset, gap.to - inset);
}

}  // namespace

Intervals heightsObjected(const Site& site, Place outlet, rules::Weight weight) {
  const Place at = site.perimeter.wrapped(outlet);
  const Edge& edge = site.perimeter.edgeAt(at);
  Intervals found;
  for (const Rule& rule : site.sheet.rules) {
    if (!isMeant(rule, weight)) continue;
    if (rule.kind == RuleKind::wall) {
      if (isOnRefusedWall(rule, site, at)) found.push_back({-kEndless_m, kEndless_m});
      continue;
    }
    if (isOfWallsRound(rule)) {
      if (isBetweenWalls(site, at, rule.needed_m->value)) {
        found.push_back(heightsBetweenWalls(eavesOf(site, edge)));
      }
      continue;
    }
    if (!isOfThings(rule)) {
      for (const Interval& i : levelHeights(rule, groundAt(site, at), eavesOf(site, edge))) {
        found.push_back(i);
      }
      continue;
    }
    for (const Thing* thing : thingsInHeight(rule, site)) {
      const double in_plan = rules::distanceInPlan(site, *thing, rule.path, at);
      if (const auto i = heightsFor(rule, site, *thing, in_plan)) found.push_back(*i);
    }
  }
  return geometry::unite(std::move(found));
}

std::vector<RingSpan> chainagesObjected(const Site& site, double outlet_m, rules::Weight weight) {
  const Site only = outletOnly(site, outlet_m, weight);
  std::vector<rules::FindingSpan> found;
  for (const Rule& rule : only.sheet.rules) addRunSpans(rule, only, found);
  std::vector<RingSpan> spans;
  for (const rules::FindingSpan& s : found) {
    if (s.finding.weight == weight) spans.push_back({s.ring, s.from_m, s.to_m, s.from_in});
  }
  return rules::joinSpans(std::move(spans));
}

std::optional<double> leastStepAside(const Site& site, Place hole, double outlet_m, double most_m,
                                     double inside_m) {
  const double length = site.perimeter.length_m(hole.ring);
  const double s = site.perimeter.wrapped(hole).chainage_m;
  const auto refused = chainagesObjected(site, outlet_m, rules::Weight::binding);
  Site placed = site;
  placed.run = rules::PlacedRun{};
  placed.run->outlet_m = outlet_m;
  std::optional<double> best;
  for (const Interval& gap : gapsBetween(refused, hole.ring, length)) {
    for (const double round : {0.0, length, -length}) {
      const Interval moved{gap.from + round, gap.to + round};
      const double step = insideOf(moved, s, inside_m) - s;
      if (std::abs(step) > most_m) continue;
      if (best && std::abs(step) >= std::abs(*best)) continue;
      placed.run->shift_m = step;
      if (!isWayRefused(placed, {hole.ring, s})) best = step;
    }
  }
  return best;
}

plan::Discharge proposedDischarge(const Site& site, Place hole, double inside_m) {
  constexpr double kMostHigher_m = 1.5;  // own figures: a taller stack, or as far aside
  constexpr double kMostAside_m = 3.0;
  const Place at = site.perimeter.wrapped(hole);
  const auto eaves = eavesOf(site, site.perimeter.edgeAt(at));
  const double first = eaves ? *eaves + kProposedOverEaves_m : kProposedHeight_m;
  double height = first;
  for (const Interval& i : heightsObjected(site, at, rules::Weight::binding)) {
    if (i.from < height && height < i.to) height = i.to + inside_m;
  }
  plan::Discharge discharge{at.ring, at.chainage_m, height};
  if (height - first <= kMostHigher_m) return discharge;
  discharge.height_m = first;
  if (const auto step = leastStepAside(site, at, first, kMostAside_m, inside_m)) {
    discharge.chainage_m = site.perimeter.wrapped({at.ring, at.chainage_m + *step}).chainage_m;
  }
  return discharge;
}

}  // namespace sumpwright::build
