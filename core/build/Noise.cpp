#include "build/Noise.h"

#include <cmath>
#include <numbers>

#include "base/Contract.h"
#include "build/Discharge.h"

namespace sumpwright::build {

double levelAt_db(double power_db, double distance_m) {
  SUMPWRIGHT_REQUIRE(distance_m > 0.0);
  return power_db - 10.0 * std::log10(std::numbers::pi * distance_m * distance_m);
}

std::optional<Hearer> nearestHearer(const rules::Site& site, perimeter::Place hole) {
  if (!site.run || site.run->fan_place == plan::FanPlace::roof_space) return std::nullopt;
  rules::Rule near;
  near.kind = rules::RuleKind::discharge;
  near.measure = rules::DischargeMeasure::near;
  near.applies_to = {rules::Part::fan};
  near.things = {rules::ThingKind::bedroom_window, rules::ThingKind::neighbour_opening};
  near.needed_m = rules::Figure{};
  const auto found = nearestOfRun(near, site, hole);
  if (!found) return std::nullopt;
  return Hearer{found->distance_m, found->label};
}

}  // namespace sumpwright::build
