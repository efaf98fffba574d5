// Inner walls, their doors, and rising walls.

#include <unordered_map>

#include "plan/Checks.h"
#include "plan/PlanGeometry.h"

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
  const double length = length_m(wall->line_m);
  const double to = door.offset_m + std::max(0.0, door.width_m);
  if (door.offset_m >= -kTapeRounding_m && to <= length + kTapeRounding_m) return;
  problems.add("plan.inner-door.off-wall", at(pointer, "offset_m"),
               {thing, base::text("wall", wall->id), base::metres("from", door.offset_m),
                base::metres("to", to), base::metres("length", length)});
}

void checkGaps(const RisingWall& wall, const std::string& pointer, ProblemList& problems) {
  const double length = length_m(wall.line_m);
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

}  // namespace

bool isLine(const geometry::Polyline& line) { return line.size() >= 2 && length_m(line) > 0.0; }

void checkInnerWalls(const Plan& plan, ProblemList& problems) {
  checkLines(plan.inner_walls, "plan.inner-wall.", "/plan/inner_walls", problems);
  checkLines(plan.rising_walls, "plan.rising-wall.", "/plan/rising_walls", problems);
  std::unordered_map<std::string, const InnerWall*> byId;
  for (const InnerWall& wall : plan.inner_walls) byId.emplace(wall.id, &wall);
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
