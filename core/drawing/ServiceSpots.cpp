#include "drawing/ServiceSpots.h"

#include "drawing/OutlineThings.h"
#include "drawing/PlanContext.h"

namespace sumpwright::drawing {

std::vector<ServiceSpot> serviceSpots(const siting::Study& study, const PlanView& view) {
  const PlanContext c(study, view);
  std::vector<ServiceSpot> spots;
  for (const ServiceTag& tag : serviceTags(c)) {
    spots.push_back({tag.service->id, toPlan(view, tag.tip), toPlan(view, tag.centre)});
  }
  return spots;
}

std::vector<ServiceSpot> serviceSpots(const plan::Job& job, const PlanView& view) {
  const SheetContext c(view, job.plan.north_deg);
  std::vector<ServiceSpot> spots;
  for (const plan::Service& s : job.plan.services) {
    const auto place = s.entry ? outlineSlot(job, *s.entry, c) : std::nullopt;
    if (!place) continue;
    spots.push_back({s.id, toPlan(view, place->from), toPlan(view, outlinePlate(*place))});
  }
  return spots;
}

}  // namespace sumpwright::drawing
