// Cable and what goes with it, by the route from each fan to its supply.

#include <algorithm>
#include <cmath>

#include "build/CableRoute.h"
#include "plan/SumpList.h"
#include "price/NeedList.h"

namespace sumpwright::price {

namespace {

// Own figures, to be changed line by line.
constexpr double kCableClip_m = 0.3;  // of cable
constexpr double kConduitTo_m = 1.5;  // cable outside lies in conduit up to this height
constexpr double kCable_h_m = 0.1;

struct Wiring {
  double cable_m = 0.0;
  double section_mm2 = 0.0;
  double conduit_m = 0.0;
  int sleeves = 0;
  int spurs = 0;
};

/// What lies outside in conduit: all along the wall and over its openings, and the drop to a
/// height.
double conduitOf_m(const build::CableRoute& route) {
  double length_m = 0.0;
  for (const build::CablePart& part : route.parts) {
    using enum build::CablePartKind;
    if (part.kind == sleeve) break;  // inside from here on
    if (part.kind == outside || part.kind == over_opening) length_m += part.length_m;
    if (part.kind == drop) length_m += std::min(part.length_m, kConduitTo_m);
  }
  return length_m;
}

/// One fan's cable; a fan without a route is told.
void addRoute(const siting::Study& study, const plan::Sump& sump, Wiring& wiring, NeedList& list) {
  const build::CableAsk ask = build::cableAskOf(study.site(), sump, {sump.ring, sump.chainage_m});
  const build::CableAnswer answer = build::cableRoutes(study.site(), ask);
  if (!answer.chosen) {
    return list.remark(base::Message("price.no-cable",
                                     {base::text("sump", plan::sumpWord(study.job(), sump.id))}));
  }
  const build::CableRoute& route = answer.routes[*answer.chosen];
  wiring.cable_m += route.to_buy_m;
  wiring.section_mm2 = std::max(wiring.section_mm2, ask.figures.section_mm2);
  wiring.sleeves += route.sleeves;
  wiring.conduit_m += conduitOf_m(route);
  // A spur that is there is the one that is used.
  wiring.spurs -= route.kind == plan::SupplyKind::fused_spur ? 1 : 0;
}

}  // namespace

void addWiring(const siting::Study& study, const siting::SuctionSystem& system, int fans,
               NeedList& list) {
  using enum NeedKind;
  Wiring wiring;
  int done = 0;
  for (const plan::Sump& sump : study.job().design.sumps) {
    if (system.shared && done > 0) continue;
    ++done;
    if (sump.kind == plan::SumpKind::cored) {
      addRoute(study, sump, wiring, list);
    } else {
      list.remark(base::Message("price.no-cable",
                                {base::text("sump", plan::sumpWord(study.job(), sump.id))}));
    }
  }
  list.metres("cable", wiring.cable_m);
  list.detail({"cable"}, {"price.detail.cable", {base::number("section", wiring.section_mm2)}});
  list.count("cable_sleeve", material, wiring.sleeves);
  list.metres("conduit", wiring.conduit_m);
  list.count("cable_clip", material, static_cast<int>(std::ceil(wiring.cable_m / kCableClip_m)));
  list.count("spur", material, fans + wiring.spurs);
  list.count("isolator", material, fans);
  list.hours("work_cable", kCable_h_m * wiring.cable_m);
  list.count("electrician", labour, 1);
}

}  // namespace sumpwright::price
