#include <array>

#include "plan/Checks.h"
#include "plan/PlanGeometry.h"
#include "plan/WallThickness.h"

namespace sumpwright::plan {

namespace {

using base::Gravity;

/// What of a wall matters for siting and may not be known.
struct Unknown {
  const char* id;
  bool outside_only;  ///< outside a party wall stands the neighbour's house
  bool (*holds)(const Wall& wall, const House& house);
};

constexpr auto kUnknowns = std::to_array<Unknown>({
    {"plan.wall.thickness-unknown", false,
     [](const Wall& wall, const House& house) { return !knownThickness_m(wall, house); }},
    {"plan.wall.foundation-unknown", true,
     [](const Wall& wall, const House&) { return wall.foundation == Foundation::unknown; }},
    {"plan.wall.ground-unknown", true,
     [](const Wall& wall, const House&) { return wall.ground == OutsideGround::unknown; }},
    {"plan.wall.free-depth-unknown", true,
     [](const Wall& wall, const House&) { return !wall.free_depth_m; }},
});

/// One problem for all walls of a ring, so that a bare survey is a short list.
void checkUnknown(const House& house, const Ring& ring, const std::string& pointer,
                  const Unknown& unknown, ProblemList& problems) {
  std::string walls;
  std::size_t count = 0;
  std::size_t first = 0;
  for (std::size_t i = 0; i < edgeCount(ring) && i < ring.walls.size(); ++i) {
    const Wall& wall = ring.walls[i];
    if (!unknown.holds(wall, house)) continue;
    if (unknown.outside_only && wall.kind == WallKind::party) continue;
    if (count++ == 0) first = i;
    walls += (walls.empty() ? "" : ", ") + labelOf(wall);
  }
  if (count == 0) return;
  problems.add(Gravity::missing, unknown.id, count == 1 ? at(pointer, first) : pointer,
               {base::text("walls", walls), base::count("count", static_cast<std::int64_t>(count)),
                base::metres("assumed", kAssumedWallThickness_m)});
}

void checkWall(const Wall& wall, const std::string& pointer, ProblemList& problems) {
  if (wall.thickness_m) {
    checkThickness(*wall.thickness_m, "plan.wall.thickness", at(pointer, "thickness_m"),
                   labelOf(wall), problems);
  } else if (const auto thickness = thicknessOf(wall.layers)) {
    checkThickness(*thickness, "plan.wall.thickness", at(pointer, "layers"), labelOf(wall),
                   problems);
  }
  if (wall.free_depth_m && *wall.free_depth_m < 0.0) {
    problems.add("plan.wall.free-depth", at(pointer, "free_depth_m"),
                 {base::text("wall", labelOf(wall)), base::metres("depth", *wall.free_depth_m)});
  }
}

}  // namespace

void checkThickness(double thickness_m, const std::string& id, const std::string& pointer,
                    const std::string& label, ProblemList& problems) {
  if (thickness_m > 0.0 && thickness_m <= kThickestWall_m) return;
  problems.add(id, pointer,
               {base::text("wall", label), base::metres("thickness", thickness_m),
                base::metres("most", kThickestWall_m)});
}

void checkWalls(const Job& job, ProblemList& problems) {
  for (std::size_t r = 0; r < job.plan.rings.size(); ++r) {
    const Ring& ring = job.plan.rings[r];
    const std::string pointer = at("/plan/rings", r) + "/walls";
    if (ring.walls.size() != ring.corners.size()) {
      problems.add("plan.walls.count", pointer,
                   {base::count("walls", static_cast<std::int64_t>(ring.walls.size())),
                    base::count("edges", static_cast<std::int64_t>(ring.corners.size()))});
    }
    for (std::size_t i = 0; i < ring.walls.size(); ++i) {
      checkWall(ring.walls[i], at(pointer, i), problems);
    }
    for (const Unknown& unknown : kUnknowns) {
      checkUnknown(job.house, ring, pointer, unknown, problems);
    }
  }
}

}  // namespace sumpwright::plan
