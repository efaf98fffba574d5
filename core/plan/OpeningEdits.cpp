#include "plan/OpeningEdits.h"

#include <algorithm>
#include <cmath>

#include "base/Contract.h"
#include "plan/Checks.h"
#include "plan/EditProblem.h"
#include "plan/OnWalls.h"
#include "plan/PlanGeometry.h"
#include "plan/ThingEdits.h"

namespace sumpwright::plan {

namespace {

const Opening* openingOf(const Job& job, const std::string& id) {
  const auto& all = job.plan.openings;
  const auto it =
      std::find_if(all.begin(), all.end(), [&](const Opening& o) { return o.id == id; });
  return it == all.end() ? nullptr : &*it;
}

base::Problem noOpening(const std::string& id) {
  return editProblem("plan.edit.no-thing", {base::text("thing", id)});
}

base::Problem noRoom(const Opening& o, double from_m, double length) {
  return editProblem("plan.edit.no-room",
                     {base::text("thing", labelOf(o)), base::metres("from", from_m),
                      base::metres("to", from_m + o.width_m), base::metres("length", length)});
}

/// The opening at a place of its wall as taped, or why it does not go there.
base::Result<Opening> opened(const Job& job, Opening o, OnWall wall, Side from, double offset_m) {
  const auto edge = edgeAt(job.plan, wall);
  if (!edge) {
    return editProblem("plan.edit.no-edge",
                       {base::count("ring", wall.ring), base::count("edge", wall.edge)});
  }
  if (!(offset_m >= 0.0) || !(o.width_m > 0.0) || !std::isfinite(offset_m + o.width_m)) {
    return editProblem("plan.edit.not-a-place");
  }
  const double length = length_m(*edge);
  const double first = from == Side::left ? offset_m : length - offset_m - o.width_m;
  if (first < -kTapeRounding_m || first + o.width_m > length + kTapeRounding_m) {
    return noRoom(o, first, length);
  }
  o.at = {wall.ring, wall.edge, std::clamp(first, 0.0, std::max(0.0, length - o.width_m))};
  return o;
}

base::Result<Job> putBack(const Job& job, const base::Result<Opening>& opening) {
  if (!opening) return opening.problems();
  return replaceThing(job, *opening);
}

}  // namespace

base::Result<Job> addOpening(const Job& job, int ring, int edge, Side from, double offset_m,
                             double width_m, Opening facts) {
  facts.width_m = width_m;
  const auto placed = opened(job, std::move(facts), {ring, edge, 0.0}, from, offset_m);
  if (!placed) return placed.problems();
  return addThing(job, *placed);
}

base::Result<Job> placeOpening(const Job& job, const std::string& id, int ring, int edge, Side from,
                               double offset_m) {
  const Opening* o = openingOf(job, id);
  if (o == nullptr) return noOpening(id);
  return putBack(job, opened(job, *o, {ring, edge, 0.0}, from, offset_m));
}

base::Result<Job> slideOpening(const Job& job, const std::string& id, const OnWall& to) {
  const Opening* o = openingOf(job, id);
  if (o == nullptr) return noOpening(id);
  const auto edge = edgeAt(job.plan, to);
  const double last = edge ? std::max(0.0, length_m(*edge) - o->width_m) : 0.0;
  Opening moved = *o;
  // A NaN stays one, for replaceThing to refuse.
  moved.at = {to.ring, to.edge, std::clamp(to.offset_m, 0.0, last)};
  return replaceThing(job, moved);
}

base::Result<Job> setOpeningWidth(const Job& job, const std::string& id, double width_m,
                                  Side kept) {
  const Opening* o = openingOf(job, id);
  if (o == nullptr) return noOpening(id);
  const auto edge = edgeAt(job.plan, o->at);
  const double offset = edge ? tapedOffset_m(job.plan, o->at, o->width_m, kept) : 0.0;
  Opening wider = *o;
  wider.width_m = width_m;
  return putBack(job, opened(job, std::move(wider), o->at, kept, std::max(0.0, offset)));
}

base::Result<Job> repeatOpening(const Job& job, const std::string& id, int times, double pitch_m) {
  const Opening* o = openingOf(job, id);
  if (o == nullptr) return noOpening(id);
  if (times < 1 || !std::isfinite(pitch_m) || pitch_m == 0.0) {
    return editProblem("plan.edit.not-a-place");
  }
  base::Result<Job> result = job;
  for (int i = 1; i <= times && result; ++i) {
    Opening copy = *o;
    copy.id.clear();
    const double offset = o->at.offset_m + i * pitch_m;
    const auto edge = edgeAt(job.plan, o->at);
    if (edge && offset < -kTapeRounding_m) return noRoom(*o, offset, length_m(*edge));
    result = addOpening(*result, o->at.ring, o->at.edge, Side::left, std::max(0.0, offset),
                        o->width_m, std::move(copy));
  }
  return result;
}

base::Result<Job> alignOpening(const Job& job, const std::string& id, const std::string& to) {
  const Opening* o = openingOf(job, id);
  const Opening* other = openingOf(job, to);
  if (o == nullptr) return noOpening(id);
  if (other == nullptr) return noOpening(to);
  const auto edge = edgeAt(job.plan, o->at);
  const auto across = edgeAt(job.plan, other->at);
  if (!edge || !across)
    return opened(job, *o, edge ? other->at : o->at, Side::left, 0.0).problems();
  const Point middle =
      across->a + (other->at.offset_m + other->width_m / 2.0) * directionOf(*across);
  const double along = geometry::dot(middle - edge->a, directionOf(*edge));
  const double first = along - o->width_m / 2.0;
  if (first < -kTapeRounding_m) return noRoom(*o, first, length_m(*edge));
  return putBack(job, opened(job, *o, o->at, Side::left, std::max(0.0, first)));
}

double tapedOffset_m(const Plan& plan, const OnWall& at, double width_m, Side from) {
  const auto edge = edgeAt(plan, at);
  SUMPWRIGHT_REQUIRE(edge.has_value());
  return from == Side::left ? at.offset_m : length_m(*edge) - at.offset_m - width_m;
}

}  // namespace sumpwright::plan
