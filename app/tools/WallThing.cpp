#include "tools/WallThing.h"

#include <algorithm>
#include <cmath>
#include <variant>

#include "base/Contract.h"
#include "plan/OpeningEdits.h"
#include "plan/PlanCheck.h"
#include "plan/ThingEdits.h"
#include "plan/WallThickness.h"

namespace sumpwright::tools {

namespace {

constexpr double kRounding_m = 1e-3;  // a tape's rounding, as in plan/OpeningEdits.h

/// Its place on a wall, or null.
template <class T>
auto* placeIn(T& thing) {
  using Place = std::conditional_t<std::is_const_v<T>, const plan::OnWall, plan::OnWall>;
  Place* none = nullptr;
  if constexpr (requires { thing.at.edge; }) {
    return &thing.at;
  } else if constexpr (requires { thing.entry; }) {
    return thing.entry ? &*thing.entry : none;
  } else if constexpr (requires { thing.on; }) {
    return thing.on ? &*thing.on : none;
  } else {
    return none;
  }
}

template <class T>
WallThing asWallThing(const T& thing, const plan::OnWall& at) {
  WallThing found{at, 0.0, 0};
  if constexpr (requires { thing.width_m; }) found.width_m = thing.width_m;
  if constexpr (requires { thing.storey; }) found.storey = thing.storey;
  return found;
}

Vec alongOf(const Segment& face) {
  return (1.0 / geometry::distance(face.a, face.b)) * (face.b - face.a);
}

/// The run of a service whose entry goes from one place to another.
void carryRun(const plan::Plan& plan, plan::Service& service, const plan::OnWall& to) {
  const auto before = faceOf(plan, *service.entry);
  const auto after = faceOf(plan, to);
  if (!before || !after) return;
  const Point from = pointOn(plan, *service.entry);
  const Point entry = pointOn(plan, to);
  const Vec a = alongOf(*before);
  const Vec b = alongOf(*after);
  const double cosine = geometry::dot(a, b);
  const double sine = geometry::cross(a, b);
  const bool same = service.entry->ring == to.ring && service.entry->edge == to.edge;
  for (Point& p : service.run_m) {
    const Vec off = p - from;
    p = entry + (same ? off : Vec{cosine * off.x - sine * off.y, sine * off.x + cosine * off.y});
  }
}

base::Problem pastTheEnd(double end_m, double length_m) {
  return {base::Message("place.past-end",
                        {base::metres("end", end_m), base::metres("length", length_m)}),
          "", base::Gravity::unsound};
}

/// The other things of a wall, as stretches.
template <class Visit>
void forEachOnFace(const plan::Job& job, const plan::OnWall& at, int storey,
                   const std::string& self, Visit&& visit) {
  const auto all = [&](const auto& list) {
    for (const auto& thing : list) {
      const plan::OnWall* place = placeIn(thing);
      if (place == nullptr || thing.id == self) continue;
      const WallThing there = asWallThing(thing, *place);
      if (place->ring != at.ring || place->edge != at.edge || there.storey != storey) continue;
      visit(thing.id, there);
    }
  };
  all(job.plan.openings);
  all(job.plan.services);
  all(job.plan.radiators);
  all(job.plan.wall_features);
}

}  // namespace

std::optional<Segment> faceOf(const plan::Plan& plan, const plan::OnWall& at) {
  if (at.ring < 0 || static_cast<std::size_t>(at.ring) >= plan.rings.size()) return std::nullopt;
  const plan::Ring& ring = plan.rings[static_cast<std::size_t>(at.ring)];
  const auto i = static_cast<std::size_t>(at.edge);
  const std::size_t corners = ring.corners.size();
  const std::size_t walls = ring.closed || corners == 0 ? corners : corners - 1;
  if (at.edge < 0 || i >= walls) return std::nullopt;
  const Segment face{ring.corners[i], ring.corners[(i + 1) % corners]};
  if (!(geometry::distance(face.a, face.b) > 0.0)) return std::nullopt;
  return face;
}

Point pointOn(const plan::Plan& plan, const plan::OnWall& at) {
  const auto face = faceOf(plan, at);
  SUMPWRIGHT_REQUIRE(face.has_value());
  return face->a + at.offset_m * alongOf(*face);
}

double wallThickness_m(const plan::Job& job, const plan::OnWall& at) {
  if (!faceOf(job.plan, at)) return plan::usualThickness_m(job.house);
  return plan::thicknessTaken_m(job.plan.rings[static_cast<std::size_t>(at.ring)],
                                static_cast<std::size_t>(at.edge), job.house);
}

std::optional<WallThing> wallThingOf(const plan::Job& job, const std::string& id) {
  const auto thing = plan::thingOf(job, id);
  if (!thing) return std::nullopt;
  return std::visit(
      [](const auto& t) -> std::optional<WallThing> {
        const plan::OnWall* at = placeIn(t);
        if (at == nullptr) return std::nullopt;
        return asWallThing(t, *at);
      },
      *thing);
}

base::Result<plan::Job> withWallThing(const plan::Job& job, const std::string& id,
                                      const plan::OnWall& at, double width_m) {
  const auto is = wallThingOf(job, id);
  if (!is) {
    return base::Problem{base::Message("plan.edit.no-thing", {base::text("thing", id)}), "",
                         base::Gravity::unsound};
  }
  const auto face = faceOf(job.plan, at);
  if (!face) {
    return base::Problem{base::Message("place.no-wall"), "", base::Gravity::unsound};
  }
  const double length = geometry::distance(face->a, face->b);
  if (at.offset_m < -kRounding_m || at.offset_m + width_m > length + kRounding_m) {
    return pastTheEnd(at.offset_m + width_m, length);
  }
  plan::OnWall fitting = at;
  fitting.offset_m = std::clamp(at.offset_m, 0.0, std::max(0.0, length - width_m));
  plan::Thing thing = *plan::thingOf(job, id);
  std::visit(
      [&](auto& t) {
        if constexpr (std::is_same_v<std::remove_cvref_t<decltype(t)>, plan::Service>) {
          carryRun(job.plan, t, fitting);
        } else if constexpr (requires { t.width_m; }) {
          t.width_m = width_m;
        }
        if (plan::OnWall* place = placeIn(t)) *place = fitting;
      },
      thing);
  return plan::replaceThing(job, thing);
}

std::optional<WallGaps> gapsBeside(const plan::Job& job, const plan::OnWall& at, double width_m,
                                   int storey, const std::string& self) {
  const auto face = faceOf(job.plan, at);
  if (!face) return std::nullopt;
  WallGaps gaps;
  gaps.left_m = at.offset_m;
  gaps.right_m = geometry::distance(face->a, face->b) - at.offset_m - width_m;
  const double middle = at.offset_m + width_m / 2.0;
  forEachOnFace(job, at, storey, self, [&](const std::string& id, const WallThing& there) {
    const bool left = there.at.offset_m + there.width_m / 2.0 <= middle;
    const double gap = left ? at.offset_m - there.at.offset_m - there.width_m
                            : there.at.offset_m - at.offset_m - width_m;
    std::optional<WallNeighbour>& nearest = left ? gaps.left : gaps.right;
    if (!nearest || gap < nearest->gap_m) nearest = WallNeighbour{id, std::max(0.0, gap)};
  });
  return gaps;
}

std::optional<base::Problem> newFault(const plan::Job& before, const plan::Job& after) {
  return newFault(plan::checkJob(before), after);
}

std::optional<base::Problem> newFault(const base::Problems& before, const plan::Job& after) {
  for (const base::Problem& is : plan::checkJob(after)) {
    if (is.gravity == base::Gravity::missing) continue;
    const bool known = std::any_of(before.begin(), before.end(), [&](const base::Problem& was) {
      return was.message.id == is.message.id && was.pointer == is.pointer;
    });
    if (!known) return is;
  }
  return std::nullopt;
}

}  // namespace sumpwright::tools
