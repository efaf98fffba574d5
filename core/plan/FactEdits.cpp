#include "plan/FactEdits.h"

#include "plan/Checks.h"
#include "plan/DesignEdits.h"
#include "plan/EditProblem.h"
#include "plan/FitsFile.h"
#include "plan/FollowInside.h"
#include "plan/LookedKinds.h"

namespace sumpwright::plan {

namespace {

/// The job with one part changed, unless the file could not hold it.
template <class Part, class Change>
base::Result<Job> withPart(const Job& job, const Part& part, Change&& change) {
  if (const auto bad = unfit(part)) return *bad;
  Job result = job;
  change(result);
  return result;
}

}  // namespace

base::Result<Job> setHouse(const Job& job, const House& house) {
  if (const auto bad = unfit(house)) return *bad;
  Job result = job;
  result.house = house;
  result.house.appliances = job.house.appliances;
  settleLookedFor(job, result);
  if (const auto bad = followThickness(result, job)) return *bad;
  return result;
}

base::Result<Job> setLookedFor(const Job& job, const LookedFor& looked) {
  return withPart(job, looked, [&](Job& result) { result.looked_for = looked; });
}

base::Result<Job> setPermissions(const Job& job, const Permissions& permissions) {
  return withPart(job, permissions, [&](Job& result) { result.permissions = permissions; });
}

base::Result<Job> setUnderlay(const Job& job, const std::optional<Underlay>& underlay) {
  return withPart(job, underlay, [&](Job& result) { result.plan.underlay = underlay; });
}

base::Result<Job> setNorth(const Job& job, double degrees) {
  Plan plan;
  plan.north_deg = degrees;
  return withPart(job, plan, [&](Job& result) { result.plan.north_deg = degrees; });
}

base::Result<Job> setBarrel(const Job& job, std::optional<double> length_m) {
  if (length_m && !(*length_m > 0.0)) {
    return editProblem("plan.barrel.length", {base::metres("barrel", *length_m)});
  }
  Design design;
  design.barrel_length_m = length_m;
  return withPart(job, design, [&](Job& result) { result.design.barrel_length_m = length_m; });
}

base::Result<Job> setDrill(const Job& job, std::optional<double> core_mm,
                           std::optional<double> pipe_od_mm, std::optional<double> barrel_m) {
  base::Result<Job> drilled = setBarrel(job, barrel_m);
  if (drilled && core_mm) drilled = setCore(*drilled, *core_mm);
  if (!drilled) return drilled;
  if (pipe_od_mm && !(*pipe_od_mm > 0.0)) {
    return editProblem("plan.pipe.none", {base::millimetres("pipe", *pipe_od_mm)});
  }
  Design design = drilled->design;
  design.core_mm = core_mm;
  design.pipe_od_mm = pipe_od_mm;
  return withPart(*drilled, design, [&](Job& result) { result.design = design; });
}

base::Result<Job> setPhotos(const Job& job, const std::vector<std::string>& photos) {
  Job pictured = job;
  pictured.photos = photos;
  if (const auto bad = unfit(pictured)) return *bad;
  return pictured;
}

Heading headingOf(const Job& job) {
  return {job.address,       job.client,        job.surveyor, job.surveyed_on,
          job.display_units, job.survey_method, job.notes};
}

base::Result<Job> setHeading(const Job& job, const Heading& heading) {
  if (!heading.surveyed_on.empty() && !isDate(heading.surveyed_on)) {
    return editProblem("plan.date.bad", {base::text("date", heading.surveyed_on)});
  }
  Job headed = job;
  headed.address = heading.address;
  headed.client = heading.client;
  headed.surveyor = heading.surveyor;
  headed.surveyed_on = heading.surveyed_on;
  headed.display_units = heading.display_units;
  headed.survey_method = heading.survey_method;
  headed.notes = heading.notes;
  if (const auto bad = unfit(headed)) return *bad;
  return headed;
}

}  // namespace sumpwright::plan
