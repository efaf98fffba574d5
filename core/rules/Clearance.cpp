// Clearance from things in plan, straight or along a string: refused where distance < needed
// (equality is clear).

#include <algorithm>
#include <cmath>

#include "rules/InPlan.h"
#include "rules/Spans.h"

namespace sumpwright::rules {

namespace {

using perimeter::Edge;
using perimeter::Perimeter;

bool isFront(const Perimeter& perimeter, const Edge& edge) {
  return perimeter.wall(edge).elevation == plan::Elevation::front;
}

bool hasFront(const Perimeter& perimeter) {
  for (int ring = 0; ring < perimeter.ringCount(); ++ring) {
    for (const Edge& edge : perimeter.edges(ring)) {
      if (isFront(perimeter, edge)) return true;
    }
  }
  return false;
}

/// Ways to the street nearer in length than this are equal (own figure, far below what a tape
/// tells apart; far above rounding).
constexpr double kEqualWay_m = 1e-6;

void addArc(const Perimeter& perimeter, int ring, double from, double to,
            std::vector<RingSpan>& out) {
  for (const RingSpan& s : wrapRange(perimeter, {ring, from, to}, true)) out.push_back(s);
}

/// Round the entry's ring, the shorter way to the nearest front wall (both ways when equal).
void addWayToFront(const Perimeter& perimeter, perimeter::Place entry, std::vector<RingSpan>& out) {
  const double length = perimeter.length_m(entry.ring);
  double ahead = length;
  double behind = length;
  for (const Edge& edge : perimeter.edges(entry.ring)) {
    if (!isFront(perimeter, edge)) continue;
    const double s = entry.chainage_m;
    if (s >= edge.start_m && s <= edge.end_m()) return;  // it is on a front wall already
    ahead = std::min(ahead, perimeter.wrapped({entry.ring, edge.start_m - s}).chainage_m);
    behind = std::min(behind, perimeter.wrapped({entry.ring, s - edge.end_m()}).chainage_m);
  }
  if (ahead >= length && behind >= length) {
    // No front wall on this ring: it may leave by any of it, and from a courtyard under the house.
    out.push_back(wholeRing(perimeter, entry.ring));
    if (entry.ring != 0 && !hasFront(perimeter)) out.push_back(wholeRing(perimeter, 0));
    return;
  }
  if (ahead <= behind + kEqualWay_m) {
    addArc(perimeter, entry.ring, entry.chainage_m, entry.chainage_m + ahead, out);
  }
  if (behind <= ahead + kEqualWay_m) {
    addArc(perimeter, entry.ring, entry.chainage_m - behind, entry.chainage_m, out);
  }
}

/// Where a buried run that nobody drew may lie: from the entry to the street side, and all of it.
std::vector<RingSpan> streetSide(const Perimeter& perimeter, perimeter::Place entry) {
  std::vector<RingSpan> spans;
  addWayToFront(perimeter, entry, spans);
  for (int ring = 0; ring < perimeter.ringCount(); ++ring) {
    for (const Edge& edge : perimeter.edges(ring)) {
      if (isFront(perimeter, edge)) spans.push_back({ring, edge.start_m, edge.end_m(), true});
    }
  }
  return joinSpans(std::move(spans));
}

void addUnknownRun(const Rule& rule, const Site& site, int index, std::vector<FindingSpan>& out) {
  const Thing& thing = site.things[static_cast<std::size_t>(index)];
  Finding f = makeFinding(rule, site, index,
                          base::Message("rule.run-unknown", {base::phrase("thing", thing.label)}));
  f.weight = Weight::unknown;
  f.waivable = {};
  f.needed_m.reset();
  f.least_bad = false;
  addSpans(rule, site, -1, f,
           thing.nowhere || !thing.street_from ? allRings(site.perimeter)
                                               : streetSide(site.perimeter, *thing.street_from),
           out);
}

void spans(const Rule& rule, const Site& site, std::vector<FindingSpan>& out) {
  const bool unjudged = addUnjudged(rule, site, out);
  for (const int i : site.things_of_rule[static_cast<std::size_t>(site.indexOf(rule))]) {
    const Thing& thing = site.things[static_cast<std::size_t>(i)];
    if (thing.street_from || thing.nowhere) addUnknownRun(rule, site, i, out);
    if (unjudged || thing.nowhere) continue;
    const Finding f = makeFinding(
        rule, site, i, base::Message("rule.too-near", {base::phrase("thing", thing.label)}));
    addSpans(rule, site, i, f, nearWalls(site, thing, rule.path, reach_m(rule, site)), out);
  }
}

std::optional<Nearest> nearest(const Rule& rule, const Site& site, perimeter::Place place) {
  const auto half = halfWidth_m(rule, site);
  if (!half) return std::nullopt;
  return nearestOf(rule, site, [&](const Thing& thing) -> std::optional<double> {
    if (thing.nowhere) return std::nullopt;
    const double distance = distanceInPlan(site, thing, rule.path, place);
    if (!std::isfinite(distance)) return std::nullopt;  // no string gets there
    return distance - *half;
  });
}

std::optional<double> least(const Rule& rule, const Site& site, const Thing& thing, int ring,
                            double from, double to) {
  const auto half = halfWidth_m(rule, site);
  if (!half) return std::nullopt;
  return leastInPlan(site, thing, rule.path, ring, from, to) - *half;
}

}  // namespace

const RuleJudge kClearance{RuleKind::clearance, spans, nearest, least};

}  // namespace sumpwright::rules
