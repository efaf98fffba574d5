#include "plan/GapEdits.h"

#include <algorithm>
#include <cmath>

#include "geometry/Polylines.h"
#include "plan/Checks.h"
#include "plan/EditProblem.h"
#include "plan/PlanGeometry.h"
#include "plan/ThingEdits.h"

namespace sumpwright::plan {

namespace {

/// `change` on a rising wall; it says why not.
template <class Change>
base::Result<Job> withGaps(const Job& job, const std::string& wall, Change&& change) {
  const auto& walls = job.plan.rising_walls;
  const auto it =
      std::find_if(walls.begin(), walls.end(), [&](const RisingWall& w) { return w.id == wall; });
  if (it == walls.end()) return editProblem("plan.edit.no-thing", {base::text("thing", wall)});
  RisingWall changed = *it;
  if (const auto bad = change(changed)) return *bad;
  return replaceThing(job, changed);
}

bool isAlong(const RisingWall& wall, double at_m) {
  return at_m >= 0.0 &&
         at_m <= geometry::lengthOf(wall.line_m) + kChainageRounding_m;  // false for NaN
}

}  // namespace

base::Result<Job> addGap(const Job& job, const std::string& wall, double from_m, double to_m) {
  return withGaps(job, wall, [&](RisingWall& w) -> std::optional<base::Problem> {
    if (!isAlong(w, from_m) || !isAlong(w, to_m) || !(std::abs(to_m - from_m) >= kShortestEdge_m)) {
      return editProblem("plan.edit.not-a-place");
    }
    Gap gap{std::min(from_m, to_m), std::max(from_m, to_m)};
    std::erase_if(w.gaps, [&](const Gap& other) {
      if (other.to_m < gap.from_m || other.from_m > gap.to_m) return false;
      gap = {std::min(gap.from_m, other.from_m), std::max(gap.to_m, other.to_m)};
      return true;
    });
    w.gaps.push_back(gap);
    std::sort(w.gaps.begin(), w.gaps.end(),
              [](const Gap& a, const Gap& b) { return a.from_m < b.from_m; });
    return std::nullopt;
  });
}

base::Result<Job> fillGap(const Job& job, const std::string& wall, double along_m) {
  return withGaps(job, wall, [&](RisingWall& w) -> std::optional<base::Problem> {
    const auto filled = std::erase_if(
        w.gaps, [&](const Gap& g) { return g.from_m <= along_m && along_m <= g.to_m; });
    if (filled > 0) return std::nullopt;
    return editProblem("plan.edit.no-gap", {base::text("thing", wall)});
  });
}

}  // namespace sumpwright::plan
