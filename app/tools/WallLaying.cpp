#include "tools/WallLaying.h"

#include <algorithm>
#include <cmath>

#include "base/Contract.h"
#include "geometry/Distance.h"
#include "plan/OpeningEdits.h"

namespace sumpwright::tools {

namespace {

/// Widths offered for the first of a kind. Own figures, but for the air brick: 215 mm, one brick
/// (from memory).
double usualWidth_m(plan::OpeningKind kind) {
  switch (kind) {
    case plan::OpeningKind::window:
      return 1.20;
    case plan::OpeningKind::door:
      return 0.90;
    case plan::OpeningKind::glazed_door:
      return 1.80;
    case plan::OpeningKind::garage_door:
      return 2.40;
    case plan::OpeningKind::air_vent:
      return 0.215;
    case plan::OpeningKind::soffit_vent:
      return 0.40;
    case plan::OpeningKind::roof_window:
      return 0.80;
    case plan::OpeningKind::flue_terminal:
      break;
  }
  return 0.10;
}

double usualWidth_m(plan::WallFeatureKind kind) {
  switch (kind) {
    case plan::WallFeatureKind::pier:
    case plan::WallFeatureKind::beam_bearing:
      return 0.30;  // own figure
    case plan::WallFeatureKind::chimney_breast:
      return 1.20;  // own figure
    case plan::WallFeatureKind::movement_joint:
    case plan::WallFeatureKind::weep_hole:
    case plan::WallFeatureKind::stepped_footing:
      break;
  }
  return 0.0;  // a line across the wall
}

constexpr double kUsualRadiator_m = 1.00;  // own figure

template <class T, class Is>
std::optional<T> lastOf(const std::vector<T>& list, Is&& is) {
  const auto it = std::find_if(list.rbegin(), list.rend(), is);
  return it == list.rend() ? std::nullopt : std::optional(*it);
}

plan::Thing nextOpening(const plan::Job& job, plan::OpeningKind kind) {
  const auto last =
      lastOf(job.plan.openings, [&](const plan::Opening& o) { return o.kind == kind; });
  plan::Opening next = last.value_or(plan::Opening{});
  next.kind = kind;
  if (!last) next.width_m = usualWidth_m(kind);
  // That the last one never opens, or draws air in, was seen of that one: less is kept clear of a
  // fixed window. A vent is always open.
  const bool vent = kind == plan::OpeningKind::air_vent || kind == plan::OpeningKind::soffit_vent;
  next.opens = vent ? plan::Opens::vent : plan::Opens::yes;
  return next;
}

plan::Thing nextService(const plan::Job& job, plan::ServiceKind kind) {
  plan::Service next;
  next.kind = kind;
  next.entry = plan::OnWall{};
  const auto last =
      lastOf(job.plan.services, [&](const plan::Service& s) { return s.kind == kind; });
  // What was found out about one service says nothing of the next, but for what it carries.
  if (last) next.drain_kind = last->drain_kind;
  return next;
}

plan::Thing nextFeature(const plan::Job& job, plan::WallFeatureKind kind) {
  const auto last =
      lastOf(job.plan.wall_features, [&](const plan::WallFeature& f) { return f.kind == kind; });
  if (last) return *last;
  plan::WallFeature first;
  first.kind = kind;
  first.width_m = usualWidth_m(kind);
  return first;
}

plan::Thing nextRadiator(const plan::Job& job) {
  plan::Radiator next;
  next.on = plan::OnWall{};
  const auto last =
      lastOf(job.plan.radiators, [](const plan::Radiator& r) { return r.on.has_value(); });
  next.width_m = last ? last->width_m : kUsualRadiator_m;
  return next;
}

void putAt(plan::Thing& thing, const plan::OnWall& at, double width_m) {
  std::visit(
      [&](auto& t) {
        if constexpr (requires { t.at.edge; }) {
          t.at = at;
        } else if constexpr (requires { t.entry; }) {
          t.entry = at;
        } else if constexpr (requires { t.on; }) {
          t.on = at;
        }
        if constexpr (requires { t.width_m; }) t.width_m = width_m;
      },
      thing);
}

/// The wall's inside counts as on it: pointing into its body must not be far from it.
bool isNear(const plan::Job& job, const plan::OnWall& at, Point pointer, double reach_m) {
  const auto face = faceOf(job.plan, at);
  return face && geometry::distance(pointer, *face) <= reach_m + wallThickness_m(job, at);
}

}  // namespace

bool laysOnWall(Task task) {
  return openingKindOf(task) || serviceKindOf(task) || featureKindOf(task) ||
         task == Task::lay_radiator;
}

plan::Thing nextLike(const plan::Job& job, Task task) {
  SUMPWRIGHT_REQUIRE(laysOnWall(task));
  plan::Thing thing = plan::Radiator{};
  if (const auto opening = openingKindOf(task)) {
    thing = nextOpening(job, *opening);
  } else if (const auto service = serviceKindOf(task)) {
    thing = nextService(job, *service);
  } else if (const auto feature = featureKindOf(task)) {
    thing = nextFeature(job, *feature);
  } else {
    thing = nextRadiator(job);
  }
  std::visit(
      [](auto& t) {
        t.id.clear();
        if constexpr (requires { t.name; }) t.name.clear();
      },
      thing);
  return thing;
}

WallLaying::WallLaying(Task task) : m_task(task) { SUMPWRIGHT_REQUIRE(laysOnWall(task)); }

void WallLaying::point(std::optional<Point> pointer, double reach_m) {
  m_pointer = pointer;
  m_reach_m = reach_m;
}

void WallLaying::fix(std::optional<double> offset_m, std::optional<double> width_m) {
  m_offset_m = offset_m;
  m_width_m = width_m;
}

void WallLaying::hold(const plan::Job& job) {
  if (m_held) return;
  if (const auto now = ghost(job, 0.0, 0.0)) m_held = now->at;
}

void WallLaying::letGo() {
  m_held.reset();
  m_offset_m.reset();
  m_width_m.reset();
}

std::optional<WallGhost> WallLaying::ghost(const plan::Job& job, double grid_m,
                                           double snap_m) const {
  WallGhost ghost;
  ghost.thing = nextLike(job, m_task);
  std::visit(
      [&](const auto& t) {
        if constexpr (requires { t.width_m; }) ghost.width_m = t.width_m;
        if constexpr (requires { t.storey; }) ghost.storey = t.storey;
      },
      ghost.thing);
  const bool has_width = serviceKindOf(m_task) == std::nullopt;
  if (m_width_m && has_width) ghost.width_m = *m_width_m;
  if (m_held) {
    ghost.at = *m_held;
  } else {
    if (!m_pointer) return std::nullopt;
    WallSnapField field;
    field.reach_m = snap_m;
    field.grid_m = grid_m;
    field.storey = ghost.storey;
    const auto stop = wallStop(job.plan, *m_pointer, ghost.width_m, field);
    if (!stop || !isNear(job, stop->at, *m_pointer, m_reach_m)) return std::nullopt;
    ghost.at = stop->at;
    ghost.kind = stop->kind;
    ghost.guides = stop->guides;
  }
  if (m_offset_m) ghost.at.offset_m = *m_offset_m;
  const auto gaps = gapsBeside(job, ghost.at, ghost.width_m, ghost.storey, {});
  if (!gaps) return std::nullopt;
  ghost.gaps = *gaps;
  putAt(ghost.thing, ghost.at, ghost.width_m);
  const auto after = laid(job, ghost);
  if (!after) ghost.refusal = after.problems().front();
  return ghost;
}

base::Result<plan::Job> laid(const plan::Job& job, const WallGhost& ghost) {
  if (ghost.gaps.right_m < -1e-3 || ghost.at.offset_m < 0.0) {
    return base::Problem{
        base::Message("place.past-end", {base::metres("end", ghost.at.offset_m + ghost.width_m),
                                         base::metres("length", ghost.at.offset_m + ghost.width_m +
                                                                    ghost.gaps.right_m)}),
        "", base::Gravity::unsound};
  }
  base::Result<plan::Job> after =
      base::Problem{base::Message("place.no-wall"), "", base::Gravity::unsound};
  if (const auto* opening = std::get_if<plan::Opening>(&ghost.thing)) {
    after = plan::addOpening(job, ghost.at.ring, ghost.at.edge, plan::Side::left, ghost.at.offset_m,
                             ghost.width_m, *opening);
  } else {
    after = plan::addThing(job, ghost.thing);
  }
  if (!after) return after;
  if (auto fault = newFault(job, *after)) return *fault;
  return after;
}

}  // namespace sumpwright::tools
