// Distance along the wall from jambs, doors and corners: s less half the hole, round the ring.

#include <algorithm>
#include <limits>

#include "rules/Spans.h"

namespace sumpwright::rules {

namespace {

void spans(const Rule& rule, const Site& site, std::vector<FindingSpan>& out) {
  if (addUnjudged(rule, site, out)) return;
  const double reach = reach_m(rule, site);
  for (const int i : site.things_of_rule[static_cast<std::size_t>(site.indexOf(rule))]) {
    const Thing& thing = site.things[static_cast<std::size_t>(i)];
    std::vector<RingSpan> where;
    for (const RingRange& r : thing.ranges) {
      const RingRange kept{r.ring, r.from_m - reach, r.to_m + reach};
      for (const RingSpan& s : wrapRange(site.perimeter, kept, false)) where.push_back(s);
    }
    const Finding f = makeFinding(
        rule, site, i, base::Message("rule.too-near", {base::phrase("thing", thing.label)}));
    addSpans(rule, site, i, f, joinSpans(std::move(where)), out);
  }
}

/// Gap between [a1, a2] and [b1, b2] round a ring of that length; 0 where they overlap.
double gapRound(double a1, double a2, double b1, double b2, double length) {
  double least = std::numeric_limits<double>::infinity();
  for (const double shift : {-length, 0.0, length}) {
    least = std::min(least, std::max({0.0, b1 + shift - a2, a1 - (b2 + shift)}));
  }
  return least;
}

std::optional<double> least(const Rule& rule, const Site& site, const Thing& thing, int ring,
                            double from, double to) {
  const double length = site.perimeter.length_m(ring);
  double closest = std::numeric_limits<double>::infinity();
  for (const RingRange& r : thing.ranges) {
    if (r.ring == ring) closest = std::min(closest, gapRound(from, to, r.from_m, r.to_m, length));
  }
  if (closest == std::numeric_limits<double>::infinity()) return std::nullopt;
  return closest - halfWidth_m(rule, site).value_or(0.0);
}

std::optional<Nearest> nearest(const Rule& rule, const Site& site, perimeter::Place place) {
  if (!halfWidth_m(rule, site)) return std::nullopt;
  const double s = site.perimeter.wrapped(place).chainage_m;
  return nearestOf(rule, site,
                   [&](const Thing& thing) { return least(rule, site, thing, place.ring, s, s); });
}

}  // namespace

const RuleJudge kAlongWall{RuleKind::along_wall, spans, nearest, least};

}  // namespace sumpwright::rules
