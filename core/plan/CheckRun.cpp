// Fan, pipe, where the air leaves, where power comes from, and heights of eaves.

#include <algorithm>
#include <cmath>

#include "geometry/Distance.h"
#include "geometry/Shapes.h"
#include "plan/Checks.h"
#include "plan/OnWalls.h"
#include "plan/PlanGeometry.h"

namespace sumpwright::plan {

namespace {

/// As a fan table asks for: two would be a straight line.
constexpr std::size_t kFewestCurvePoints = 3;

void checkFan(const FanPick& fan, ProblemList& problems) {
  if (!(fan.speed > 0.0) || fan.speed > 1.0) {
    problems.add("plan.fan.speed", "/design/fan/speed", {base::percent("speed", 100 * fan.speed)});
  }
  for (std::size_t i = 0; i < fan.points.size(); ++i) {
    const FanPickPoint& point = fan.points[i];
    const bool falls = i == 0 || (point.flow_m3_s > fan.points[i - 1].flow_m3_s &&
                                  point.pressure_pa < fan.points[i - 1].pressure_pa);
    if (falls && point.flow_m3_s >= 0.0 && point.pressure_pa >= 0.0) continue;
    problems.add("plan.fan.curve", at("/design/fan/points", i),
                 {base::count("point", static_cast<std::int64_t>(i) + 1)});
    return;  // what follows would only be out of order with this one
  }
  if (!fan.points.empty() && fan.points.size() < kFewestCurvePoints) {
    problems.add("plan.fan.few-points", "/design/fan/points",
                 {base::count("least", static_cast<std::int64_t>(kFewestCurvePoints))});
  }
}

void checkLengths(const PipeRun& pipe, ProblemList& problems) {
  const auto negative = [&](const std::optional<double>& length, const char* key) {
    if (!length || *length >= 0.0) return;
    problems.add("plan.pipe.length", at("/design/pipe", key), {base::metres("length", *length)});
  };
  negative(pipe.before_m, "before_m");
  negative(pipe.after_m, "after_m");
}

void checkSumpRun(const Job& job, const Sump& sump, const std::string& pointer,
                  ProblemList& problems) {
  const auto thing = base::text("sump", sump.id);
  checkPit(sump.pit_l, at(pointer, "pit_l"), problems);
  if (sump.fall_deg && !(std::abs(*sump.fall_deg) <= kSteepestCore_deg)) {
    problems.add(
        "plan.sump.fall", at(pointer, "fall_deg"),
        {thing, base::degrees("fall", *sump.fall_deg), base::degrees("most", kSteepestCore_deg)});
  }
  const auto& out = sump.discharge;
  if (out && !onRing(job.plan, out->ring, out->chainage_m)) {
    problems.add(
        "plan.discharge.off-ring", at(at(pointer, "discharge"), "chainage_m"),
        {thing, base::count("ring", out->ring), base::metres("chainage", out->chainage_m)});
  } else if (out && sump.kind == SumpKind::cored && out->ring != sump.ring) {
    // A riser goes round corners, not through the house.
    problems.add("plan.discharge.other-ring", at(at(pointer, "discharge"), "ring"),
                 {thing, base::count("ring", out->ring), base::count("own", sump.ring)});
  }
  const auto& supplies = job.plan.supplies;
  if (!sump.supply.empty() && std::none_of(supplies.begin(), supplies.end(),
                                           [&](const Supply& s) { return s.id == sump.supply; })) {
    problems.add("plan.sump.no-supply", at(pointer, "supply"),
                 {thing, base::text("supply", sump.supply)});
  }
}

/// A pit is not dug through heating.
void checkHeated(const Plan& plan, const Sump& sump, const std::string& pointer,
                 ProblemList& problems) {
  if (sump.kind != SumpKind::internal || !sump.at_m) return;
  const bool heated =
      std::any_of(plan.floor_zones.begin(), plan.floor_zones.end(), [&](const FloorZone& zone) {
        return zone.underfloor_heating && geometry::contains(zone.outline_m, *sump.at_m);
      });
  if (!heated) return;
  problems.add(base::Gravity::missing, "plan.sump.heated-floor", at(pointer, "at_m"),
               {base::text("sump", sump.id)});
}

void checkEavesAt(const std::optional<double>& eaves_m, const std::string& pointer,
                  ProblemList& problems) {
  if (!eaves_m || (*eaves_m > 0.0 && *eaves_m <= kHighestEaves_m)) return;
  problems.add("plan.eaves.height", at(pointer, "eaves_m"),
               {base::metres("eaves", *eaves_m), base::metres("most", kHighestEaves_m)});
}

}  // namespace

void checkEavesHeights(const Job& job, ProblemList& problems) {
  checkEavesAt(job.house.eaves_m, "/house", problems);
  const auto& overhang = job.house.eaves_overhang_m;
  if (overhang && !(*overhang >= 0.0 && *overhang <= kMostOverhang_m)) {
    problems.add("plan.eaves.overhang", "/house/eaves_overhang_m",
                 {base::metres("overhang", *overhang), base::metres("most", kMostOverhang_m)});
  }
  for (std::size_t r = 0; r < job.plan.rings.size(); ++r) {
    const auto& walls = job.plan.rings[r].walls;
    for (std::size_t i = 0; i < walls.size(); ++i) {
      checkEavesAt(walls[i].eaves_m, at(at("/plan/rings", r) + "/walls", i), problems);
    }
  }
}

void checkRun(const Job& job, ProblemList& problems) {
  checkFan(job.design.fan, problems);
  checkLengths(job.design.pipe, problems);
  for (std::size_t i = 0; i < job.design.sumps.size(); ++i) {
    checkSumpRun(job, job.design.sumps[i], at("/design/sumps", i), problems);
    checkHeated(job.plan, job.design.sumps[i], at("/design/sumps", i), problems);
  }
}

}  // namespace sumpwright::plan
