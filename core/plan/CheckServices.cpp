#include "plan/Blank.h"
#include "plan/Checks.h"
#include "plan/PlanGeometry.h"

namespace sumpwright::plan {

namespace {

using base::Gravity;

void checkRun(const Service& service, const std::string& pointer, ProblemList& problems) {
  const auto thing = base::text("thing", labelOf(service));
  if (service.run == RunKnown::drawn) {
    if (!isLine(service.run_m)) {
      problems.add("plan.service.run-without-points", at(pointer, "run_m"), {thing});
    }
  } else if (!service.run_m.empty()) {
    problems.add("plan.service.run-contradicted", at(pointer, "run"), {thing});
  } else if (service.run == RunKnown::unknown) {
    problems.add(Gravity::missing, "plan.service.run-unknown", at(pointer, "run"), {thing});
  }
}

/// What a drain is matters to a void beside it: land drains let air in, shallow ones are met.
void checkDrain(const Service& service, const std::string& pointer, ProblemList& problems) {
  const auto thing = base::text("thing", labelOf(service));
  const bool drain = service.kind == ServiceKind::drain || service.kind == ServiceKind::waste;
  const bool stated = service.drain_kind != DrainKind::unknown || service.invert_m ||
                      service.trapped != YesNo::unknown;
  if (!drain) {
    if (stated) problems.add("plan.service.not-a-drain", at(pointer, "drain_kind"), {thing});
    return;
  }
  if (service.kind == ServiceKind::waste) return;  // above ground mostly
  if (service.drain_kind == DrainKind::land_drain) {
    problems.add(Gravity::missing, "plan.service.land-drain", at(pointer, "drain_kind"), {thing});
  }
  if (service.drain_kind == DrainKind::unknown || !service.invert_m) {
    problems.add(Gravity::missing, "plan.service.drain-unknown",
                 at(pointer, service.invert_m ? "drain_kind" : "invert_m"), {thing});
  }
}

void checkService(const Plan& plan, const Service& service, const std::string& pointer,
                  ProblemList& problems) {
  const auto thing = base::text("thing", labelOf(service));
  if (service.entry) {
    checkOnWall(plan, *service.entry, 0.0, "plan.service.", at(pointer, "entry"), labelOf(service),
                problems);
  } else if (service.run_m.empty()) {
    problems.add(Gravity::missing, "plan.service.nowhere", at(pointer, "entry"), {thing});
  }
  checkRun(service, pointer, problems);
  checkDrain(service, pointer, problems);
  if (!service.located && service.run == RunKnown::drawn && isLine(service.run_m)) {
    problems.add(Gravity::missing, "plan.service.not-located", at(pointer, "located"), {thing});
  }
  if (service.located && isBlank(service.locating_record)) {
    problems.add(Gravity::missing, "plan.service.no-record", at(pointer, "locating_record"),
                 {thing});
  }
}

}  // namespace

void checkServices(const Plan& plan, ProblemList& problems) {
  for (std::size_t i = 0; i < plan.services.size(); ++i) {
    checkService(plan, plan.services[i], at("/plan/services", i), problems);
  }
}

}  // namespace sumpwright::plan
