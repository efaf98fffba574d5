#include "suction/Trenches.h"

#include "geometry/Interval.h"

namespace sumpwright::suction {

namespace {

constexpr double kLeastBelow_m = 1.0;  // own figure

double lengthWithin_m(const geometry::Segment& piece, const Polygon& area) {
  const double length = geometry::distance(piece.a, piece.b);
  if (!(length > 0.0)) return 0.0;
  const geometry::Line line{piece.a, (1.0 / length) * (piece.b - piece.a)};
  double within = 0.0;
  for (const auto& part : geometry::inside(line, area)) {
    within += geometry::clip(part, {0.0, length}).length();
  }
  return within;
}

double belowHouse_m(const plan::Plan& plan, const Polyline& run) {
  double below = 0.0;
  for (std::size_t k = 1; k < run.size(); ++k) {
    for (std::size_t r = 0; r < plan.rings.size(); ++r) {
      const double within = lengthWithin_m({run[k - 1], run[k]}, plan.rings[r].corners);
      below += r == 0 ? within : -within;
    }
  }
  return below;
}

bool isBelow(const plan::Service& service, const plan::Plan& plan) {
  const bool drain =
      service.kind == plan::ServiceKind::drain || service.kind == plan::ServiceKind::waste;
  return drain && service.run == plan::RunKnown::drawn &&
         belowHouse_m(plan, service.run_m) >= kLeastBelow_m;
}

}  // namespace

std::vector<std::string> drainsBelow(const plan::Plan& plan) {
  std::vector<std::string> drains;
  for (const plan::Service& service : plan.services) {
    if (isBelow(service, plan)) drains.push_back(service.id);
  }
  return drains;
}

std::vector<Conduit> trenchesBelow(const plan::Plan& plan, const airflow::Air& air) {
  const double conveyance = kTrenchPermeability_m2 * kTrench_m2 / airflow::viscosity_pa_s(air);
  std::vector<Conduit> trenches;
  for (const plan::Service& service : plan.services) {
    if (isBelow(service, plan)) trenches.push_back({service.id, service.run_m, conveyance});
  }
  return trenches;
}

}  // namespace sumpwright::suction
