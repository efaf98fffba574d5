#include <algorithm>

#include "build/CableRoute.h"
#include "build/Levels.h"
#include "build/RefusedZone.h"
#include "build/Run.h"

namespace sumpwright::build {

namespace {

/// Where no run is placed.
double usualHeight(const rules::Site& site, const plan::Sump& sump, perimeter::Place fan) {
  if (sump.fan_height_m) return *sump.fan_height_m;
  if (sump.fan_place == plan::FanPlace::outside_low) {
    return std::max(kLowFan_m, groundAt(site, fan) + kFanOverGround_m);
  }
  const auto eaves = eavesOf(site, site.perimeter.edgeAt(fan));
  return (eaves ? *eaves + kProposedOverEaves_m : kProposedHeight_m) - kFanUnderOutlet_m;
}

}  // namespace

CableAsk cableAskOf(const rules::Site& site, const plan::Sump& sump, perimeter::Place hole) {
  CableAsk ask;
  ask.fan = site.perimeter.wrapped(hole);
  ask.fan_place = sump.fan_place;
  ask.wish = sump.supply;
  if (site.sheet.mains_volts) ask.figures.volts = site.sheet.mains_volts->value;
  const auto run = placedRun(site, sump);
  if (run) ask.fan = site.perimeter.wrapped({hole.ring, hole.chainage_m + fanShift_m(*run)});
  ask.fan_height_m = run ? run->fan_m : usualHeight(site, sump, ask.fan);
  return ask;
}

}  // namespace sumpwright::build
