#include "tools/DimensionPull.h"

#include <cmath>
#include <limits>

#include "base/Contract.h"
#include "geometry/Distance.h"
#include "plan/Dimensions.h"
#include "plan/ThingEdits.h"

namespace sumpwright::tools {

namespace {

constexpr double kOnePlace_m = 1e-6;  // rounding

/// Looks for the nearest of one rank; an earlier rank within reach has won already.
class TieSearch {
 public:
  TieSearch(const plan::Job& job, Point at, double reach_m)
      : m_job(job), m_at(at), m_nearest(reach_m) {}

  template <class List>
  void consider(const List& list, plan::ThingEnd end) {
    for (const auto& thing : list) considerOne(thing.id, end);
  }
  void considerOne(const std::string& id, plan::ThingEnd end) {
    const auto place = plan::placeOf(m_job, {id, end});
    if (!place) return;
    const double away = geometry::distance(*place, m_at);
    if (away > m_nearest || (m_best && away == m_nearest)) return;
    m_nearest = away;
    m_best = TiePlace{{id, end}, *place};
  }
  const std::optional<TiePlace>& best() const { return m_best; }

 private:
  const plan::Job& m_job;
  Point m_at;
  double m_nearest;
  std::optional<TiePlace> m_best;
};

void considerCorners(TieSearch& search, const plan::Plan& plan, plan::ThingEnd end) {
  for (const plan::Ring& ring : plan.rings) search.consider(ring.walls, end);
}

void considerEnds(TieSearch& search, const plan::Job& job) {
  const plan::Plan& plan = job.plan;
  for (const plan::ThingEnd end : {plan::ThingEnd::start, plan::ThingEnd::end}) {
    search.consider(plan.openings, end);
    search.consider(plan.wall_features, end);
    search.consider(plan.radiators, end);
    search.consider(plan.services, end);
    search.consider(plan.inner_walls, end);
    search.consider(plan.inner_doors, end);
    search.consider(plan.rising_walls, end);
    search.consider(plan.heating_pipes, end);
    search.consider(plan.outside, end);
    search.consider(plan.supplies, end);
    search.consider(plan.fittings, end);
    search.consider(plan.test_holes, end);
    search.consider(job.design.sumps, end);
  }
}

void considerMiddles(TieSearch& search, const plan::Plan& plan) {
  constexpr auto kMiddle = plan::ThingEnd::middle;
  search.consider(plan.openings, kMiddle);
  search.consider(plan.inner_walls, kMiddle);
  search.consider(plan.rooms, kMiddle);
  search.consider(plan.floor_zones, kMiddle);
  considerCorners(search, plan, kMiddle);
}

/// Distance to the left of from -> to.
double offOf(Point from, Point to, Point at) {
  const Vec along = to - from;
  const double length = geometry::norm(along);
  return length > 0.0 ? geometry::cross(along, at - from) / length : 0.0;
}

double offOnGrid(double off_m, double grid_m) {
  return grid_m > 0.0 ? std::round(off_m / grid_m) * grid_m : off_m;
}

}  // namespace

std::optional<TiePlace> tiePlaceAt(const plan::Job& job, Point at, double reach_m) {
  TieSearch corners(job, at, reach_m);
  considerCorners(corners, job.plan, plan::ThingEnd::start);
  if (corners.best()) return corners.best();
  TieSearch ends(job, at, reach_m);
  considerEnds(ends, job);
  if (ends.best()) return ends.best();
  TieSearch middles(job, at, reach_m);
  considerMiddles(middles, job.plan);
  return middles.best();
}

std::string dimensionAt(const plan::Job& job, Point at, double reach_m) {
  std::string best;
  double nearest = reach_m;
  for (const plan::Dimension& d : job.plan.dimensions) {
    const auto line = plan::lineOf(job, d);
    if (!line || geometry::distance(at, *line) > nearest) continue;
    nearest = geometry::distance(at, *line);
    best = d.id;
  }
  return best;
}

base::Result<plan::Job> dimensionThrough(const plan::Job& job, const std::string& id, Point at,
                                         double grid_m) {
  for (const plan::Dimension& d : job.plan.dimensions) {
    const auto from = plan::placeOf(job, d.from);
    const auto to = plan::placeOf(job, d.to);
    if (d.id != id || !from || !to) continue;
    plan::Dimension moved = d;
    moved.off_m = offOnGrid(offOf(*from, *to, at), grid_m);
    return plan::replaceThing(job, moved);
  }
  return base::Problem{base::Message("plan.edit.no-thing", {base::text("thing", id)}), "",
                       base::Gravity::unsound};
}

void DimensionPull::move(Point pointer, double reach_m, double grid_m) {
  if (m_to) {
    m_off_m = offOnGrid(offOf(m_from->at, m_to->at, pointer), grid_m);
    m_hovered.reset();
    return;
  }
  m_hovered = tiePlaceAt(m_before, pointer, reach_m);
  if (m_from && m_hovered && geometry::distance(m_from->at, m_hovered->at) <= kOnePlace_m) {
    m_hovered.reset();
  }
}

bool DimensionPull::click(Point pointer, double reach_m, double grid_m) {
  move(pointer, reach_m, grid_m);
  if (m_to) return true;
  if (!m_hovered) return false;
  (m_from ? m_to : m_from) = m_hovered;
  return false;
}

bool DimensionPull::back() {
  if (!m_from) return false;
  (m_to ? m_to : m_from).reset();
  return true;
}

void DimensionPull::setOff(double off_m) { m_off_m = m_off_m < 0.0 ? -off_m : off_m; }

base::Result<plan::Job> DimensionPull::finished() const {
  SUMPWRIGHT_REQUIRE(m_from && m_to);
  return plan::addThing(m_before, plan::Dimension{"", m_from->end, m_to->end, m_off_m});
}

}  // namespace sumpwright::tools
