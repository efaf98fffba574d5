#include "plan/WholePlanEdits.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "plan/Checks.h"
#include "plan/EditProblem.h"
#include "plan/FitsFile.h"
#include "plan/OnWalls.h"
#include "plan/PlanGeometry.h"
#include "plan/TapeEdits.h"
#include "plan/ThingParts.h"

namespace sumpwright::plan {

namespace {

base::Problem noOutline() {
  return editProblem("plan.edit.no-edge", {base::count("ring", 0), base::count("edge", 0)});
}

Point middleOf(const Ring& ring) {
  Point low = ring.corners.front();
  Point high = low;
  for (const Point p : ring.corners) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
  return geometry::lerp(low, high, 0.5);
}

bool isWhole(const Ring& ring) {
  return ring.closed && ring.corners.size() >= 3 && ring.walls.size() == ring.corners.size();
}

struct Turn {
  double cosine;
  double sine;
};

Turn turnOf(double degrees) {
  const double quarters = degrees / 90.0;
  if (quarters == std::round(quarters)) {
    constexpr Turn kQuarters[] = {{1, 0}, {0, 1}, {-1, 0}, {0, -1}};
    const double step = std::fmod(std::fmod(quarters, 4.0) + 4.0, 4.0);
    return kQuarters[static_cast<std::size_t>(step) % 4];
  }
  const double angle = degrees * std::numbers::pi / 180.0;
  return {std::cos(angle), std::sin(angle)};
}

/// To the nanometre, so that a plan turned back reads as it did.
double neat(double metres) { return std::round(metres * 1e9) / 1e9 + 0.0; }

/// A place at the very end of a ring, whose length the rounding of its corners changed.
void keepOnRing(const Plan& plan, int ring, double& chainage_m) {
  constexpr double kRounding_m = 1e-6;  // own figure: a thousand corners, each out by a nanometre
  if (ring < 0 || static_cast<std::size_t>(ring) >= plan.rings.size()) return;
  const double length = ringLength_m(plan.rings[static_cast<std::size_t>(ring)]);
  if (chainage_m > length && chainage_m < length + kRounding_m) chainage_m = length;
}

/// Into (-180, 180].
double wrapped(double degrees) {
  const double turn = std::fmod(degrees, 360.0);
  if (turn > 180.0) return turn - 360.0;
  return turn <= -180.0 ? turn + 360.0 : turn;
}

}  // namespace

base::Result<Job> mirrorPlan(const Job& job) {
  if (job.plan.rings.empty() ||
      !std::all_of(job.plan.rings.begin(), job.plan.rings.end(), isWhole)) {
    return noOutline();
  }
  const double twice = 2.0 * middleOf(job.plan.rings[0]).x;
  Job result = job;
  const auto picture = job.plan.underlay;
  forEachPoint(result, [&](Point& p) { p.x = neat(twice - p.x); });
  result.plan.underlay = picture;
  for (Ring& ring : result.plan.rings) {
    ring.taped.clear();
    ring.shared_by = Sharing::not_shared;
  }
  for (std::size_t r = 0; r < result.plan.rings.size(); ++r) {
    result = turnedRound(result, static_cast<int>(r));
  }
  for (Dimension& d : result.plan.dimensions) d.off_m = -d.off_m;
  for (Waiver& w : result.design.waivers) w.lapsed = true;
  if (const auto bad = unfit(result)) return *bad;
  return result;
}

base::Result<Job> otherHalf(const Job& job) {
  base::Result<Job> mirrored = mirrorPlan(job);
  if (!mirrored) return mirrored;
  Job other = std::move(mirrored).value();
  other.looked_for = LookedFor{};
  for (Service& s : other.plan.services) {
    s.located = false;
    s.locating_record.clear();
  }
  other.house.standby = StandbySump{};
  other.design.waivers.clear();
  other.suction.tests.clear();
  return other;
}

base::Result<Job> turnPlan(const Job& job, double degrees) {
  if (job.plan.rings.empty() || job.plan.rings[0].corners.empty()) return noOutline();
  if (!std::isfinite(degrees)) return editProblem("plan.edit.not-a-place");
  const Turn turn = turnOf(degrees);
  const Point middle = middleOf(job.plan.rings[0]);
  Job result = job;
  forEachPoint(result, [&](Point& p) {
    const geometry::Vec v = p - middle;
    const Point to = middle + geometry::Vec{turn.cosine * v.x - turn.sine * v.y,
                                            turn.sine * v.x + turn.cosine * v.y};
    p = {neat(to.x), neat(to.y)};
  });
  for (Sump& s : result.design.sumps) {
    keepOnRing(result.plan, s.ring, s.chainage_m);
    if (s.discharge) keepOnRing(result.plan, s.discharge->ring, s.discharge->chainage_m);
  }
  for (Waiver& w : result.design.waivers) keepOnRing(result.plan, w.ring, w.chainage_m);
  for (PressureTest& test : result.suction.tests) {
    if (test.stood) keepOnRing(result.plan, test.stood->ring, test.stood->chainage_m);
  }
  result.plan.north_deg = wrapped(job.plan.north_deg - degrees);
  for (Ring& ring : result.plan.rings) {
    for (TapedWall& wall : ring.taped) wall.bearing_deg = wrapped(wall.bearing_deg - degrees);
  }
  if (result.plan.underlay) {
    result.plan.underlay->turn_deg = wrapped(result.plan.underlay->turn_deg + degrees);
  }
  if (const auto bad = unfit(result)) return *bad;
  return result;
}

}  // namespace sumpwright::plan
