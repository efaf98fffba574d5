#include "geometry/Shapes.h"
#include "plan/Checks.h"
#include "plan/PlanGeometry.h"

namespace sumpwright::plan {

namespace {

/// Things that only make sense with a length: a point would stand for next to nothing of them.
std::size_t leastPoints(OutsideKind kind) {
  switch (kind) {
    case OutsideKind::path:
    case OutsideKind::boundary:
    case OutsideKind::neighbour_opening:
    case OutsideKind::overhead_line:
      return 2;
    case OutsideKind::gully:
    case OutsideKind::inspection_chamber:
    case OutsideKind::tank:
    case OutsideKind::air_conditioner:
    case OutsideKind::deck:
    case OutsideKind::soakaway:
    case OutsideKind::septic_tank:
    case OutsideKind::sitting_place:
    case OutsideKind::steps:
    case OutsideKind::carport:
      break;
  }
  return 1;
}

bool isArea(const OutsideThing& thing) {
  switch (thing.kind) {
    case OutsideKind::inspection_chamber:
    case OutsideKind::tank:
    case OutsideKind::deck:
    case OutsideKind::soakaway:
    case OutsideKind::septic_tank:
    case OutsideKind::sitting_place:
    case OutsideKind::steps:
    case OutsideKind::carport:
      return thing.points_m.size() >= 3;
    default:
      return false;
  }
}

}  // namespace

void checkOutside(const Plan& plan, ProblemList& problems) {
  for (std::size_t i = 0; i < plan.outside.size(); ++i) {
    const OutsideThing& thing = plan.outside[i];
    const std::string pointer = at("/plan/outside", i) + "/points_m";
    const std::size_t least = leastPoints(thing.kind);
    if (thing.points_m.size() < least) {
      problems.add("plan.outside.points", pointer,
                   {base::text("thing", labelOf(thing)),
                    base::count("points", static_cast<std::int64_t>(thing.points_m.size())),
                    base::count("least", static_cast<std::int64_t>(least))});
    } else if (isArea(thing) && geometry::firstSelfContact(thing.points_m)) {
      problems.add("plan.outside.self-contact", pointer, {base::text("thing", labelOf(thing))});
    }
    if (thing.kind == OutsideKind::overhead_line) {
      problems.add(base::Gravity::missing, "plan.outside.overhead", pointer,
                   {base::text("thing", labelOf(thing))});
    }
  }
}

}  // namespace sumpwright::plan
