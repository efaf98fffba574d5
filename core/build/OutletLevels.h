#pragma once
// Heights of outlet and fan against the ground, the eaves and one another, and things in the way of
// the jet. Metres; heights above finished floor level. Needs a placed run. A fan is meant where the
// rule speaks of one and of no outlet.

#include <optional>
#include <vector>

#include "build/Heights.h"
#include "rules/Spans.h"

namespace sumpwright::build {

/// An upright jet takes up this much to either side (own figure: a pipe of 110 mm whose jet opens
/// by some 12 degrees to a side, over two metres).
inline constexpr double kJetHalf_m = 0.5;

/// Distance in plan under which a thing is in the way of the jet of an upright mouth: it reaches
/// above the mouth and begins less than `needed_m` over it. Nothing: it is not in the way.
std::optional<double> jetReach_m(const rules::Thing& thing, const Upright& mouth, double needed_m);

/// As far from the hole along the ring as stands what the rule measures the height of.
double levelShift_m(const rules::Rule& rule, const rules::PlacedRun& run);

/// What a rule on levels measures at one place of that. No distance: it does not apply there,
/// or what it measures from is not known.
struct OutletLevel {
  std::optional<double> distance_m;
  base::Message of;  ///< phrase: "the ground under it", "the eaves"
  base::Message reason;
};
OutletLevel levelAt(const rules::Rule& rule, const rules::Site& site, perimeter::Place at);

/// Where that is too low (or too near under the eaves), by its own chainage, and where the
/// eaves it is measured from are not known.
struct LevelSpan {
  rules::RingSpan where;
  bool unknown = false;
  std::optional<double> distance_m;  ///< least over the span
  base::Message reason;
};
std::vector<LevelSpan> levelSpans(const rules::Rule& rule, const rules::Site& site);

/// Walls whose eaves are above the outlet or not known.
std::vector<rules::RingSpan> belowEavesSpans(const rules::Site& site);

/// What two lists of spans have in common.
std::vector<rules::RingSpan> commonSpans(const std::vector<rules::RingSpan>& a,
                                         const std::vector<rules::RingSpan>& b);

}  // namespace sumpwright::build
