#include "build/Heights.h"

#include <algorithm>
#include <cmath>

#include "rules/Spans.h"

namespace sumpwright::build {

using rules::kRounding_m;

double gapInHeight_m(const rules::Thing& thing, const Upright& body) {
  return std::max({0.0, thing.low_m - body.high_m, body.low_m - thing.high_m});
}

double distance_m(double in_plan_m, const rules::Thing& thing, const Upright& body) {
  const double aside = in_plan_m - body.half_m;
  const double gap = gapInHeight_m(thing, body);
  if (gap == 0.0) return aside;
  return aside > 0.0 ? std::sqrt(aside * aside + gap * gap) : gap;
}

bool isClearBelow(const rules::Thing& thing, const Upright& body, const Need& need) {
  return need.clear_below_m && thing.high_m <= body.low_m - *need.clear_below_m + kRounding_m;
}

std::optional<double> reachInPlan_m(const rules::Thing& thing, const Upright& body,
                                    const Need& need) {
  if (isClearBelow(thing, body, need)) return std::nullopt;
  const double gap = gapInHeight_m(thing, body);
  const double r = need.needed_m - kRounding_m;
  if (!(gap < r)) return std::nullopt;
  return body.half_m + std::sqrt(r * r - gap * gap);
}

std::optional<geometry::Interval> heightsTooNear(double in_plan_m, const rules::Thing& thing,
                                                 double half_m, const Need& need) {
  const double aside = std::max(0.0, in_plan_m - half_m);
  const double r = need.needed_m - kRounding_m;
  if (!(aside < r)) return std::nullopt;
  const double h = std::sqrt(r * r - aside * aside);
  double top = thing.high_m + h;
  if (need.clear_below_m) {
    top = std::min(top, thing.high_m + *need.clear_below_m - kRounding_m);
  }
  const geometry::Interval heights{thing.low_m - h, top};
  if (heights.empty()) return std::nullopt;
  return heights;
}

}  // namespace sumpwright::build
