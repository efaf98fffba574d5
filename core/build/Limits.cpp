#include "build/Limits.h"

#include <algorithm>
#include <cmath>

#include "build/Figures.h"

namespace sumpwright::build {

namespace {

/// The hole stays under a point of the wall, square to it.
Limit under(LimitKind kind, double x, double level, double radius, double needed) {
  return {kind, level, x, -1.0, radius + needed, needed, true, false};
}

/// The hole's edge at the outside face stays under (or over) a level.
Limit belowAtFace(LimitKind kind, double level, double radius, double needed) {
  return {kind, level - needed, 0.0, -1.0, radius, needed, false, false};
}
Limit aboveAtFace(LimitKind kind, double level, double radius) {
  return {kind, -level, 0.0, 1.0, radius, 0.0, false, false};
}

void addUpper(const BuildUp& up, Start start, std::vector<Limit>& limits) {
  const double r = up.core_m / 2.0;
  limits.push_back(under(LimitKind::slab, up.wall_m, up.underside_m(), r, kCover_m));
  if (up.barrier == plan::Barrier::lapped_through_wall) {
    limits.push_back(under(LimitKind::barrier, 0.0, up.barrier_m, r, kUnderBarrier_m));
  } else if (up.barrier == plan::Barrier::in_floor) {
    limits.push_back(under(LimitKind::barrier, up.wall_m, up.barrier_m, r, kUnderBarrier_m));
  }
  limits.push_back(belowAtFace(LimitKind::dpc, up.dpc_m, r, kUnderDpc_m));
  if (start == Start::below_ground) {
    limits.push_back(belowAtFace(LimitKind::ground, up.ground_m, r, 0.0));
  } else {
    limits.push_back(aboveAtFace(LimitKind::ground, up.ground_m, r));
  }
}

void addLower(const BuildUp& up, Start start, double footing_top, std::vector<Limit>& limits) {
  const double r = up.core_m / 2.0;
  const double past_footing = up.wall_m + std::min(kFootingOut_m, kPastInner_m);
  limits.push_back(
      {LimitKind::footing, -footing_top, -past_footing, 1.0, r + kCover_m, kCover_m, true, false});
  if (up.hardcore_m > 0.0) {
    limits.push_back({LimitKind::fill, -up.fillBottom_m(), -(up.wall_m + kPastInner_m), 1.0, 0.0,
                      0.0, false, true});
  }
  if (start == Start::below_ground) {
    limits.push_back(aboveAtFace(LimitKind::dig, up.ground_m - kDeepestDig_m + kBelowHole_m, r));
  }
}

}  // namespace

double Limit::slack(double entry_m, double fall) const {
  return a + b * fall + c * entry_m - k * std::sqrt(1.0 + fall * fall);
}

std::vector<Limit> limitsOf(const BuildUp& up, Start start, double footing_top_m,
                            double least_fall) {
  std::vector<Limit> limits;
  addUpper(up, start, limits);
  addLower(up, start, footing_top_m, limits);
  const double least = start == Start::above_ground ? kLeastFallAbove : least_fall;
  limits.push_back({LimitKind::gentle_fall, -least, 1.0, 0.0, 0.0, least, false, false});
  limits.push_back({LimitKind::steep_fall, kMostFall, -1.0, 0.0, 0.0, kMostFall, false, false});
  limits.push_back({LimitKind::barrel, up.barrel_m, 0.0, 0.0, up.wall_m, up.wall_m, false, true});
  return limits;
}

}  // namespace sumpwright::build
