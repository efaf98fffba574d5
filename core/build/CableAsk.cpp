#include <algorithm>

#include "build/CableRoute.h"
#include "build/Levels.h"
#include "build/RefusedZone.h"
#include "build/Run.h"
#include "geometry/Distance.h"
#include "plan/KindNames.h"

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

/// The room it stands in, or at the wall of.
const plan::Room* roomOf(const plan::Plan& plan, geometry::Point at) {
  constexpr double kAtWall_m = 0.35;  // a supply is drawn on the wall as often as before it (own)
  const plan::Room* nearest = nullptr;
  double least = kAtWall_m;
  for (const plan::Room& room : plan.rooms) {
    const double off = geometry::distanceToArea(at, room.outline_m);
    if (off >= least) continue;
    least = off;
    nearest = &room;
  }
  return nearest;
}

}  // namespace

base::Message supplyLabel(const rules::Site& site, const plan::Supply& supply) {
  if (!supply.name.empty()) return base::plainText(supply.name);
  base::Message kind("thing." + std::string(plan::nameOf(supply.kind)));
  const plan::Room* room = roomOf(site.job.plan, supply.at_m);
  if (room == nullptr) return kind;
  const base::Message where = room->name.empty()
                                  ? base::Message("room." + std::string(plan::nameOf(room->use)))
                                  : base::Message("thing.named", {base::text("name", room->name)});
  return base::Message("cable.supply.in",
                       {base::phrase("supply", kind), base::phrase("room", where)});
}

void takePower(CableAsk& ask, const plan::Design& design, std::optional<double> power_w) {
  if (power_w && design.sumps.size() == 1) ask.power_w = *power_w;
}

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
