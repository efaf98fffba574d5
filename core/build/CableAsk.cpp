#include "build/CableRoute.h"
#include "build/Run.h"

namespace sumpwright::build {

CableAsk cableAskOf(const rules::Site& site, const plan::Sump& sump, perimeter::Place hole) {
  CableAsk ask;
  ask.fan = site.perimeter.wrapped(hole);
  ask.wish = sump.supply;
  if (sump.fan_height_m) ask.fan_height_m = *sump.fan_height_m;
  if (site.sheet.mains_volts) ask.figures.volts = site.sheet.mains_volts->value;
  const auto run = placedRun(site, sump);
  if (!run) return ask;
  ask.fan_height_m = run->fan_m;
  // A low fan stands over the hole, one further up under the outlet.
  if (sump.fan_place != plan::FanPlace::outside_low) {
    ask.fan = site.perimeter.wrapped({hole.ring, hole.chainage_m + run->shift_m});
  }
  return ask;
}

}  // namespace sumpwright::build
