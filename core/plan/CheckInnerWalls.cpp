// Inner walls, their doors, and rising walls.

#include <algorithm>
#include <unordered_map>

#include "geometry/Polylines.h"
#include "plan/Checks.h"
#include "plan/OnWalls.h"
#include "plan/PlanGeometry.h"
#include "plan/WallThickness.h"

namespace sumpwright::plan {

namespace {

/// `theme`: "plan.inner-wall." or "plan.rising-wall.".
template <class Walls>
void checkLines(const Walls& walls, const std::string& theme, const std::string& list,
                ProblemList& problems) {
  for (std::size_t i = 0; i < walls.size(); ++i) {
    if (!isLine(walls[i].line_m)) {
      problems.add(theme + "line", at(list, i) + "/line_m", {base::text("thing", walls[i].id)});
    }
    checkThickness(walls[i].thickness_m, theme + "thickness", at(list, i) + "/thickness_m",
                   walls[i].id, problems);
  }
}

void checkDoor(const InnerDoor& door, const InnerWall* wall, const std::string& pointer,
               ProblemList& problems) {
  const auto thing = base::text("thing", door.id);
  if (door.width_m <= 0.0) {
    problems.add("plan.inner-door.width", at(pointer, "width_m"),
                 {thing, base::metres("width", door.width_m)});
  }
  if (wall == nullptr) {
    problems.add("plan.inner-door.no-wall", at(pointer, "wall"),
                 {thing, base::text("wall", door.wall)});
    return;
  }
  const double length = geometry::lengthOf(wall->line_m);
  const double to = door.offset_m + std::max(0.0, door.width_m);
  if (door.offset_m >= -kTapeRounding_m && to <= length + kTapeRounding_m) return;
  problems.add("plan.inner-door.off-wall", at(pointer, "offset_m"),
               {thing, base::text("wall", wall->id), base::metres("from", door.offset_m),
                base::metres("to", to), base::metres("length", length)});
}

void checkGaps(const RisingWall& wall, const std::string& pointer, ProblemList& problems) {
  const double length = geometry::lengthOf(wall.line_m);
  for (std::size_t i = 0; i < wall.gaps.size(); ++i) {
    const Gap& gap = wall.gaps[i];
    if (gap.from_m >= -kTapeRounding_m && gap.from_m < gap.to_m &&
        gap.to_m <= length + kTapeRounding_m) {
      continue;
    }
    problems.add("plan.rising-wall.gap", at(pointer + "/gaps", i),
                 {base::text("thing", wall.id), base::metres("from", gap.from_m),
                  base::metres("to", gap.to_m), base::metres("length", length)});
  }
}

/// An inner wall reaches the outside wall within this of its inner face (own figure, as rooms are
/// found with 0.05 m; more here, for what is only remarked on).
constexpr double kReachesWall_m = 0.15;
/// Beside a frame, not in front of the opening (own figure).
constexpr double kFrame_m = 0.05;

/// Whether a wall that ends there stands in front of the opening.
bool endsIn(const Job& job, const Opening& opening, Point end) {
  const Plan& plan = job.plan;
  const bool small = isOfRoof(opening.kind) || opening.kind == OpeningKind::air_vent ||
                     opening.kind == OpeningKind::flue_terminal;
  const auto edge = edgeAt(plan, opening.at);
  if (small || opening.storey != 0 || !edge) return false;
  const geometry::Vec along = directionOf(*edge);
  const double offset = geometry::dot(end - edge->a, along) - opening.at.offset_m;
  const double in = geometry::dot(end - edge->a, geometry::left(along));
  const Ring& ring = plan.rings[static_cast<std::size_t>(opening.at.ring)];
  const double thickness =
      thicknessTaken_m(ring, static_cast<std::size_t>(opening.at.edge), job.house);
  return in >= 0.0 && in <= thickness + kReachesWall_m && offset > kFrame_m &&
         offset < opening.width_m - kFrame_m;
}

void checkEnds(const Job& job, const InnerWall& wall, const std::string& pointer,
               ProblemList& problems) {
  if (wall.line_m.size() < 2) return;
  for (const Point end : {wall.line_m.front(), wall.line_m.back()}) {
    const auto it = std::find_if(job.plan.openings.begin(), job.plan.openings.end(),
                                 [&](const Opening& opening) { return endsIn(job, opening, end); });
    if (it == job.plan.openings.end()) continue;
    problems.add(base::Gravity::missing, "plan.inner-wall.in-opening", at(pointer, "line_m"),
                 {base::text("thing", wall.id), base::text("other", labelOf(*it))});
    return;
  }
}

}  // namespace

bool isLine(const geometry::Polyline& line) {
  return line.size() >= 2 && geometry::lengthOf(line) > 0.0;
}

void checkInnerWalls(const Job& job, ProblemList& problems) {
  const Plan& plan = job.plan;
  checkLines(plan.inner_walls, "plan.inner-wall.", "/plan/inner_walls", problems);
  checkLines(plan.rising_walls, "plan.rising-wall.", "/plan/rising_walls", problems);
  std::unordered_map<std::string, const InnerWall*> byId;
  for (const InnerWall& wall : plan.inner_walls) byId.emplace(wall.id, &wall);
  for (std::size_t i = 0; i < plan.inner_walls.size(); ++i) {
    checkEnds(job, plan.inner_walls[i], at("/plan/inner_walls", i), problems);
  }
  for (std::size_t i = 0; i < plan.inner_doors.size(); ++i) {
    const auto wall = byId.find(plan.inner_doors[i].wall);
    checkDoor(plan.inner_doors[i], wall == byId.end() ? nullptr : wall->second,
              at("/plan/inner_doors", i), problems);
  }
  for (std::size_t i = 0; i < plan.rising_walls.size(); ++i) {
    checkGaps(plan.rising_walls[i], at("/plan/rising_walls", i), problems);
  }
}

}  // namespace sumpwright::plan
