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
