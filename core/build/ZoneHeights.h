#pragma once
// What a rule keeps an outlet out of, at one place and because of one thing. Internal to
// core/build. Metres; heights above finished floor level.

#include <limits>
#include <optional>

#include "rules/Judge.h"
#include "rules/Spans.h"

namespace sumpwright::build {

inline constexpr double kEndless_m = std::numeric_limits<double>::infinity();

/// Speaks of outlets with that weight, in a way that has heights.
bool isMeant(const rules::Rule& rule, rules::Weight weight);
/// Whether it measures from things, rather than from ground and eaves.
bool isOfThings(const rules::Rule& rule);
/// From what the rule measures to the middle of the pipe.
double halfOf(const rules::Rule& rule, const rules::Site& site);
/// Heights that a rule objects to because of a thing so far off in plan.
std::optional<geometry::Interval> heightsFor(const rules::Rule& rule, const rules::Site& site,
                                             const rules::Thing& thing, double in_plan_m);
/// Furthest in plan that a thing can matter to a rule.
double widest(const rules::Rule& rule, const rules::Site& site);
/// Heights that a rule on levels objects to over one place.
geometry::Intervals levelHeights(const rules::Rule& rule, double ground_m,
                                 std::optional<double> eaves_m);

/// Whether it asks if walls stand round an outlet that ends below the eaves.
bool isOfWallsRound(const rules::Rule& rule);
/// Heights it objects to where they do: all below the eaves; unknown eaves may be anywhere.
geometry::Interval heightsBetweenWalls(std::optional<double> eaves_m);

}  // namespace sumpwright::build
