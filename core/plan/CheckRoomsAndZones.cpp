#include <algorithm>

#include "geometry/Shapes.h"
#include "plan/Checks.h"
#include "plan/FloorLevels.h"
#include "plan/PlanGeometry.h"

namespace sumpwright::plan {

namespace {

using base::Gravity;

/// How much of an outline lies outside the house or in a courtyard.
double areaOutsideHouse(const geometry::Polygon& outline, const Plan& plan,
                        const CheckedRings& rings) {
  double area = geometry::areaOutside(outline, plan.rings[0].corners);
  for (const std::size_t c : rings.courtyards) {
    area += geometry::overlapArea(outline, plan.rings[c].corners);
  }
  return area;
}

/// Rooms and zones are checked alike; `theme` is "plan.room." or "plan.zone.".
template <class Thing>
class OutlineCheck {
 public:
  OutlineCheck(const std::vector<Thing>& things, std::string theme, std::string pointer,
               ProblemList& problems)
      : m_things(things),
        m_theme(std::move(theme)),
        m_pointer(std::move(pointer)),
        m_problems(problems) {}

  void run(const Plan& plan, const CheckedRings& rings) {
    for (std::size_t i = 0; i < m_things.size() && !m_problems.full(); ++i) {
      if (!isSimple(i)) continue;
      if (rings.outer_sound) checkInside(i, areaOutsideHouse(m_things[i].outline_m, plan, rings));
      for (const std::size_t before : m_simple) checkOverlap(before, i);
      m_simple.push_back(i);
    }
  }

 private:
  std::string outlineOf(std::size_t i) const { return at(m_pointer, i) + "/outline_m"; }
  base::Arg thing(std::size_t i) const { return base::text("thing", labelOf(m_things[i])); }

  bool isSimple(std::size_t i) {
    const geometry::Polygon& outline = m_things[i].outline_m;
    if (outline.size() < 3) {
      m_problems.add(m_theme + "corners", outlineOf(i),
                     {thing(i), base::count("corners", static_cast<std::int64_t>(outline.size()))});
      return false;
    }
    const auto contact = geometry::firstSelfContact(outline);
    if (!contact) return true;
    m_problems.add(m_theme + "self-contact", outlineOf(i),
                   {thing(i), base::metres("x", contact->x), base::metres("y", contact->y)});
    return false;
  }

  void checkInside(std::size_t i, double outside_m2) {
    if (outside_m2 <= kSliver_m2) return;
    m_problems.add(m_theme + "outside", outlineOf(i),
                   {thing(i), {"area", base::Quantity{outside_m2, base::Unit::squareMetre}}});
  }

  void checkOverlap(std::size_t before, std::size_t i) {
    const double common = geometry::overlapArea(m_things[before].outline_m, m_things[i].outline_m);
    if (common <= kSliver_m2) return;
    m_problems.add(m_theme + "overlap", outlineOf(i),
                   {thing(i),
                    base::text("other", labelOf(m_things[before])),
                    {"area", base::Quantity{common, base::Unit::squareMetre}}});
  }

  const std::vector<Thing>& m_things;
  std::string m_theme;
  std::string m_pointer;
  ProblemList& m_problems;
  std::vector<std::size_t> m_simple;
};

void checkRoomUses(const Plan& plan, ProblemList& problems) {
  if (plan.rooms.empty()) problems.add(Gravity::missing, "plan.room.none", "/plan/rooms");
  for (std::size_t i = 0; i < plan.rooms.size(); ++i) {
    if (plan.rooms[i].use != RoomUse::unknown) continue;
    problems.add(Gravity::missing, "plan.room.use-unknown", at("/plan/rooms", i) + "/use",
                 {base::text("thing", labelOf(plan.rooms[i]))});
  }
}

void checkFloorKinds(const Plan& plan, ProblemList& problems) {
  if (plan.floor_zones.empty()) {
    problems.add(Gravity::missing, "plan.zone.none", "/plan/floor_zones");
  }
  for (std::size_t i = 0; i < plan.floor_zones.size(); ++i) {
    const FloorZone& zone = plan.floor_zones[i];
    const std::string pointer = at("/plan/floor_zones", i);
    const auto thing = base::text("thing", labelOf(zone));
    const bool suspended = isSuspended(zone.kind);
    if (zone.kind == FloorKind::unknown) {
      problems.add(Gravity::missing, "plan.zone.kind-unknown", pointer + "/kind", {thing});
    } else if (suspended && zone.oversite == Oversite::unknown) {
      problems.add(Gravity::missing, "plan.zone.oversite-unknown", pointer + "/oversite", {thing});
    }
  }
}

}  // namespace

void checkRoomsAndZones(const Plan& plan, const CheckedRings& rings, ProblemList& problems) {
  checkRoomUses(plan, problems);
  checkFloorKinds(plan, problems);
  OutlineCheck(plan.rooms, "plan.room.", "/plan/rooms", problems).run(plan, rings);
  OutlineCheck(plan.floor_zones, "plan.zone.", "/plan/floor_zones", problems).run(plan, rings);
}

}  // namespace sumpwright::plan
