#pragma once
// Nearness in height as well as in plan. A thing stands on its shape in plan from low_m to high_m,
// and what is placed stands upright on one point of a wall's outside face. So the square of their
// distance is that of the distance in plan plus that of the gap in height, and a rule in space is
// the rule in plan with a smaller reach: exact, in closed form, for walls at any angle.
// Metres; heights above finished floor level.

#include <optional>

#include "geometry/Interval.h"
#include "rules/Judge.h"

namespace sumpwright::build {

/// The mouth of an outlet or a fan at one height, or a riser over a range, `half_m` to either side.
struct Upright {
  double low_m = 0.0;
  double high_m = 0.0;
  double half_m = 0.0;
};

/// What a rule asks for. clear_below_m: a thing whose top is that far below, or further, is clear.
struct Need {
  double needed_m = 0.0;
  std::optional<double> clear_below_m;
};

/// 0 where they share a height.
double gapInHeight_m(const rules::Thing& thing, const Upright& body);

/// From the edge of what is upright to a thing so far off in plan; below 0 where it overlaps it.
double distance_m(double in_plan_m, const rules::Thing& thing, const Upright& body);

/// True where the thing ends so far below that the rule does not speak of it.
bool isClearBelow(const rules::Thing& thing, const Upright& body, const Need& need);

/// Distance in plan, from the middle, under which the body is too near; nothing where the heights
/// alone keep them apart. A distance exactly met is clear.
std::optional<double> reachInPlan_m(const rules::Thing& thing, const Upright& body,
                                    const Need& need);

/// Heights of a mouth, so far from the thing in plan, that are too near: one open interval, which
/// may be without end; or nothing.
std::optional<geometry::Interval> heightsTooNear(double in_plan_m, const rules::Thing& thing,
                                                 double half_m, const Need& need);

}  // namespace sumpwright::build
