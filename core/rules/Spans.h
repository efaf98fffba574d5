#pragma once
// Building findings as spans of a ring: what every kind of rule shares.

#include <vector>

#include "rules/Judge.h"

namespace sumpwright::rules {

/// A piece of one edge, by parameter along the edge (0 at its first corner); may pass its ends.
struct EdgePiece {
  const perimeter::Edge* edge = nullptr;
  geometry::Interval along;
};

/// Connected spans of a ring.
struct RingSpan {
  int ring = 0;
  double from_m = 0.0;
  double to_m = 0.0;
  bool from_in = false;
};

/// Whether a chainage of its ring lies on a span: its end never does, its begin where it says so.
/// Of RingSpan, FindingSpan and perimeter::Span.
template <class Span>
bool holds(const Span& span, double chainage_m) {
  return chainage_m < span.to_m &&
         (chainage_m > span.from_m || (span.from_in && chainage_m == span.from_m));
}

/// Clips pieces to their edges and joins what continues round a corner. Spans are cut at chainage
/// 0. Sorted by (ring, from).
std::vector<RingSpan> joinPieces(const std::vector<EdgePiece>& pieces);

/// Joins spans that overlap or that continue each other (a.to == b.from with b.from_in).
std::vector<RingSpan> joinSpans(std::vector<RingSpan> spans);

/// A range of chainage that may pass 0 or the length, as one or two spans. `from_in` for its
/// first place; shorter than or equal to nothing: none. Longer than the ring: the whole ring.
std::vector<RingSpan> wrapRange(const perimeter::Perimeter& perimeter, const RingRange& range,
                                bool from_in);

RingSpan wholeRing(const perimeter::Perimeter& perimeter, int ring);
std::vector<RingSpan> allRings(const perimeter::Perimeter& perimeter);

/// A distance met but for rounding is met: houses are taped to the millimetre, and a wall that runs
/// exactly the needed distance from something must not be refused by the last digit of a sum (own
/// figure; moves an end by over a micrometre only where the whole span is shorter than four).
inline constexpr double kRounding_m = 1e-12;

/// From the middle of hole or pipe: the needed distance and half the width.
double reach_m(const Rule& rule, const Site& site);

/// Weight a rule's finding has. Contract: not a preference.
Weight weightOf(const Rule& rule);

/// A finding of a rule, with what the rule itself knows filled in; thing_index may be -1.
Finding makeFinding(const Rule& rule, const Site& site, int thing_index, base::Message reason);

/// The finding over each span; in the sheet's own words where it has some for what it objects to.
void addSpans(const Rule& rule, const Site& site, int thing_index, Finding finding,
              const std::vector<RingSpan>& where, std::vector<FindingSpan>& out);

/// Findings that say the rule cannot be judged at all, or not in part (riser mode, only about pipe
/// or cable): unknown over every ring. True when nothing of the rule can be judged.
bool addUnjudged(const Rule& rule, const Site& site, std::vector<FindingSpan>& out);

/// The nearest of the rule's things by a distance function (thing -> optional distance).
template <class DistanceTo>
std::optional<Nearest> nearestOf(const Rule& rule, const Site& site, DistanceTo&& distanceTo) {
  std::optional<Nearest> best;
  for (const int i : site.things_of_rule[static_cast<std::size_t>(site.indexOf(rule))]) {
    const std::optional<double> distance = distanceTo(site.things[static_cast<std::size_t>(i)]);
    if (distance && (!best || *distance < best->distance_m)) best = Nearest{*distance, i};
  }
  return best;
}

}  // namespace sumpwright::rules
