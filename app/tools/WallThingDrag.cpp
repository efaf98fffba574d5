#include "tools/WallThingDrag.h"

#include <algorithm>
#include <cmath>

#include "base/Contract.h"
#include "plan/PlanCheck.h"

namespace sumpwright::tools {

namespace {

/// A width never goes to nothing under the hand (own figure).
constexpr double kLeastWidth_m = 0.05;

Point along(const plan::Plan& plan, plan::OnWall at, double by_m) {
  at.offset_m += by_m;
  return pointOn(plan, at);
}

}  // namespace

std::optional<WallGrip> wallEndAt(const plan::Job& job, const std::string& id, Point at,
                                  double reach_m) {
  const auto thing = wallThingOf(job, id);
  if (!thing || !(thing->width_m > 0.0) || !faceOf(job.plan, thing->at)) return std::nullopt;
  const double left = geometry::distance(pointOn(job.plan, thing->at), at);
  const double right = geometry::distance(along(job.plan, thing->at, thing->width_m), at);
  if (std::min(left, right) > reach_m) return std::nullopt;
  return WallGrip{id, left <= right ? WallPart::left_end : WallPart::right_end};
}

WallThingDrag::WallThingDrag(plan::Job before, WallGrip grip, Point pointer, WallSnapField field)
    : m_before(std::move(before)),
      m_were(plan::checkJob(m_before)),
      m_grip(std::move(grip)),
      m_field(std::move(field)) {
  const auto thing = wallThingOf(m_before, m_grip.id);
  SUMPWRIGHT_REQUIRE(thing && faceOf(m_before.plan, thing->at));
  m_was = *thing;
  m_width_m = thing->width_m;
  m_stop = {thing->at, StopKind::none, {}};
  m_field.self = m_grip.id;
  m_field.storey = thing->storey;
  m_field.on = thing->at;
  const double held = m_grip.part == WallPart::body       ? thing->width_m / 2.0
                      : m_grip.part == WallPart::left_end ? 0.0
                                                          : thing->width_m;
  m_rod = pointer - along(m_before.plan, thing->at, held);
}

base::Result<plan::Job> WallThingDrag::apply(const WallStop& stop, double width_m) {
  m_stop = stop;
  m_width_m = width_m;
  base::Result<plan::Job> after = withWallThing(m_before, m_grip.id, stop.at, width_m);
  if (!after) return after;
  if (auto fault = newFault(m_were, *after)) return *fault;
  return after;
}

base::Result<plan::Job> WallThingDrag::move(Point pointer) {
  if (m_grip.part == WallPart::body) {
    m_field.on = m_stop.at;
    const auto stop = wallStop(m_before.plan, pointer - m_rod, m_was.width_m, m_field);
    if (!stop) return m_before;
    return apply(*stop, m_was.width_m);
  }
  const Segment face = *faceOf(m_before.plan, m_was.at);
  const double length = geometry::distance(face.a, face.b);
  const Vec run = (1.0 / length) * (face.b - face.a);
  double end = geometry::dot(pointer - m_rod - face.a, run);
  if (m_field.grid_m > 0.0) end = std::round(end / m_field.grid_m) * m_field.grid_m;
  end = std::clamp(end, 0.0, length);
  const double right = m_was.at.offset_m + m_was.width_m;
  WallStop stop{m_was.at, StopKind::grid, {}};
  if (m_grip.part == WallPart::right_end) {
    return apply(stop, std::max(kLeastWidth_m, end - m_was.at.offset_m));
  }
  stop.at.offset_m = std::clamp(end, 0.0, std::max(0.0, right - kLeastWidth_m));
  return apply(stop, right - stop.at.offset_m);
}

base::Result<plan::Job> WallThingDrag::set(double first_m, std::optional<double> second_m) {
  WallStop stop{m_stop.at, StopKind::none, {}};
  if (m_grip.part == WallPart::body) {
    stop.at.offset_m = first_m;
    const bool has_width = m_was.width_m > 0.0;
    return apply(stop, has_width ? second_m.value_or(m_was.width_m) : 0.0);
  }
  stop.at = m_was.at;
  if (m_grip.part == WallPart::left_end) stop.at.offset_m += m_was.width_m - first_m;
  return apply(stop, first_m);
}

}  // namespace sumpwright::tools
