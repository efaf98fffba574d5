#include <algorithm>

#include "plan/Checks.h"
#include "plan/PlanGeometry.h"

namespace sumpwright::plan {

namespace {

void checkRadiator(const Plan& plan, const Radiator& radiator, const std::string& pointer,
                   ProblemList& problems) {
  const auto thing = base::text("thing", labelOf(radiator));
  if (radiator.on && !radiator.line_m.empty()) {
    problems.add("plan.radiator.twice-placed", at(pointer, "line_m"), {thing});
  }
  if (!radiator.on) {
    const bool twoEnds = radiator.line_m.size() == 2 && isLine(radiator.line_m);
    if (!twoEnds) problems.add("plan.radiator.line", at(pointer, "line_m"), {thing});
    return;
  }
  if (radiator.width_m <= 0.0) {
    problems.add("plan.radiator.width", at(pointer, "width_m"),
                 {thing, base::metres("width", radiator.width_m)});
  }
  checkOnWall(plan, *radiator.on, std::max(0.0, radiator.width_m), "plan.radiator.",
              at(pointer, "on"), labelOf(radiator), problems);
}

}  // namespace

void checkHeating(const Plan& plan, ProblemList& problems) {
  for (std::size_t i = 0; i < plan.radiators.size(); ++i) {
    checkRadiator(plan, plan.radiators[i], at("/plan/radiators", i), problems);
  }
  for (std::size_t i = 0; i < plan.heating_pipes.size(); ++i) {
    const HeatingPipe& pipe = plan.heating_pipes[i];
    if (isLine(pipe.line_m)) continue;
    problems.add("plan.heating-pipe.line", at("/plan/heating_pipes", i) + "/line_m",
                 {base::text("thing", labelOf(pipe))});
  }
}

}  // namespace sumpwright::plan
