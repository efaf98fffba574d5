#include "tools/BesideEdits.h"

#include <algorithm>
#include <cmath>
#include <variant>

#include "plan/Dimensions.h"
#include "plan/JobIds.h"
#include "plan/OpeningEdits.h"
#include "plan/ThingEdits.h"
#include "tools/WallThing.h"

namespace sumpwright::tools {

namespace {

constexpr double kBeside_m = 0.30;  // own figure: a pier of brick and a half between two openings
constexpr double kAside_m = 0.50;   // own figure
constexpr double kFacing = 0.02;    // sine; own figure: walls a degree apart face each other

base::Problem besideProblem(const char* id) {
  return {base::Message(id), "", base::Gravity::unsound};
}

/// As it is, unless it contradicts something that was in order before.
base::Result<plan::Job> unlessFaulty(const plan::Job& before, base::Result<plan::Job> after) {
  if (!after) return after;
  if (auto fault = newFault(before, *after)) return *fault;
  return after;
}

bool onSameWall(const plan::OnWall& a, const plan::OnWall& b) {
  return a.ring == b.ring && a.edge == b.edge;
}

base::Result<plan::Job> copiedOnWall(const plan::Job& job, const std::string& id,
                                     const WallThing& thing, double step_m) {
  base::Result<plan::Job> copied = plan::copyThing(job, id, {0.0, 0.0});
  if (!copied) return copied;
  plan::OnWall at = thing.at;
  at.offset_m += step_m;
  return unlessFaulty(job, withWallThing(*copied, copyOf(job, *copied, id), at, thing.width_m));
}

Vec unitOf(const Segment& face) {
  return (1.0 / geometry::distance(face.a, face.b)) * (face.b - face.a);
}

const plan::Opening* openingIn(const plan::Job& job, const std::string& id) {
  const auto& all = job.plan.openings;
  const auto it =
      std::find_if(all.begin(), all.end(), [&](const plan::Opening& o) { return o.id == id; });
  return it == all.end() ? nullptr : &*it;
}

}  // namespace

std::string copyOf(const plan::Job& before, const plan::Job& after, const std::string& id) {
  const auto original = plan::thingOf(before, id);
  if (!original) return {};
  const auto were = plan::idsOf(before);
  for (const std::string& is : plan::idsOf(after)) {
    if (were.contains(is)) continue;
    const auto thing = plan::thingOf(after, is);
    if (thing && thing->index() == original->index()) return is;
  }
  return {};
}

base::Result<plan::Job> copiedBeside(const plan::Job& job, const std::string& id,
                                     const std::string& copied_from) {
  const auto thing = wallThingOf(job, id);
  if (!thing) {
    const auto from = plan::placeOf(job, {copied_from, plan::ThingEnd::middle});
    const auto to = plan::placeOf(job, {id, plan::ThingEnd::middle});
    const Vec step = from && to ? *to - *from : Vec{kAside_m, -kAside_m};
    return unlessFaulty(job, plan::copyThing(job, id, step));
  }
  const auto before = wallThingOf(job, copied_from);
  if (before && onSameWall(before->at, thing->at)) {
    return copiedOnWall(job, id, *thing, thing->at.offset_m - before->at.offset_m);
  }
  const double step = thing->width_m + kBeside_m;
  base::Result<plan::Job> right = copiedOnWall(job, id, *thing, step);
  if (right) return right;
  base::Result<plan::Job> left = copiedOnWall(job, id, *thing, -step);
  return left ? left : right;
}

base::Result<plan::Job> inLineWith(const plan::Job& job, const std::string& id,
                                   const std::string& with) {
  const auto thing = wallThingOf(job, id);
  const auto other = wallThingOf(job, with);
  if (!thing || !other || id == with) return besideProblem("place.both-on-walls");
  const auto face = faceOf(job.plan, thing->at);
  const auto across = faceOf(job.plan, other->at);
  if (!face || !across) return besideProblem("place.no-wall");
  const bool facing = std::abs(geometry::cross(unitOf(*face), unitOf(*across))) <= kFacing;
  if (facing && openingIn(job, id) != nullptr && openingIn(job, with) != nullptr) {
    return unlessFaulty(job, plan::alignOpening(job, id, with));
  }
  plan::OnWall at = thing->at;
  at.offset_m = other->at.offset_m;
  if (facing) {
    plan::OnWall middle = other->at;
    middle.offset_m += other->width_m / 2.0;
    at.offset_m =
        geometry::dot(pointOn(job.plan, middle) - face->a, unitOf(*face)) - thing->width_m / 2.0;
  }
  return unlessFaulty(job, withWallThing(job, id, at, thing->width_m));
}

base::Result<plan::Job> sizedLike(const plan::Job& job, const std::string& id,
                                  const std::string& like) {
  const plan::Opening* opening = openingIn(job, id);
  const plan::Opening* other = openingIn(job, like);
  if (opening == nullptr || other == nullptr || id == like) {
    return besideProblem("place.both-openings");
  }
  const auto face = faceOf(job.plan, opening->at);
  if (!face) return besideProblem("place.no-wall");
  plan::Opening sized = *opening;
  sized.width_m = other->width_m;
  sized.sill_m = other->sill_m;
  sized.head_m = other->head_m;
  const double last = std::max(0.0, geometry::distance(face->a, face->b) - sized.width_m);
  sized.at.offset_m =
      std::clamp(opening->at.offset_m + (opening->width_m - sized.width_m) / 2.0, 0.0, last);
  return unlessFaulty(job, plan::replaceThing(job, sized));
}

}  // namespace sumpwright::tools
