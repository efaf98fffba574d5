#include "siting/SuctionSystem.h"

#include <algorithm>
#include <utility>

namespace sumpwright::siting {

namespace {

using airflow::Fitting;
using airflow::FittingKind;
using base::Mark;
using base::Message;

constexpr double kPipeWall_m = 0.0032;    // sizes of EN 1401, from memory
constexpr double kBeforeFan_m = 1.0;      // through the wall and up to the fan (own figure)
constexpr double kAfterFanLow_m = 0.5;    // own figure
constexpr double kAfterFanRiser_m = 5.0;  // to the eaves of a house of two storeys (own figure)

Message pipeAssumption(const SuctionSystem& system, int bends) {
  return Message("suction.assumed.pipe",
                 {base::millimetres("bore", 1000.0 * system.before.bore_m),
                  base::metres("before", system.before.length_m),
                  base::metres("after", system.after.length_m), base::count("bends", bends)});
}

}  // namespace

SuctionSystem usualSystem(const rules::Site& site, airflow::Fan fan, bool invented) {
  const bool riser = site.outlet == plan::OutletMode::riser;
  const int bends_after = riser ? 2 : 0;
  SuctionSystem system;
  system.fan = std::move(fan);
  system.invented = invented;
  system.before.bore_m = site.pipe_od_m - 2.0 * kPipeWall_m;
  system.before.length_m = kBeforeFan_m;
  system.before.fittings = {Fitting{FittingKind::sharp_inlet}, Fitting{FittingKind::bend_90}};
  system.after.bore_m = system.before.bore_m;
  system.after.length_m = riser ? kAfterFanRiser_m : kAfterFanLow_m;
  system.after.fittings = {Fitting{FittingKind::exit}};
  if (bends_after > 0) system.after.fittings.push_back({FittingKind::bend_90, bends_after});
  system.assumptions.push_back(
      {Message(invented ? "suction.assumed.fan-invented" : "suction.assumed.fan",
               {base::text("fan", system.fan.title)}),
       system.fan.source});
  system.assumptions.push_back(
      {pipeAssumption(system, 1 + bends_after),
       {Mark::own,
        "Lengths and bends: own figures; wall of the pipe 3.2 mm, sizes of EN 1401, "
        "from memory"}});
  return system;
}

airflow::DutyOptions dutyOptions(const SuctionSystem& system, const std::vector<std::string>& sumps,
                                 const std::vector<double>& matrix_pa_s_m3,
                                 double inertia_pa_s2_m6) {
  airflow::DutyOptions duty;
  for (std::size_t k = 0; k < sumps.size(); ++k) {
    airflow::Leg leg;
    leg.sump = sumps[k];
    leg.line = k;
    leg.pipe = system.before;
    leg.inertia_pa_s2_m6 = inertia_pa_s2_m6;
    duty.legs.push_back(std::move(leg));
    duty.lines.push_back({system.fan.title, system.fan.curve, 1.0, system.after});
  }
  duty.ground_pa_s_m3 = matrix_pa_s_m3;
  duty.air = system.air;
  return duty;
}

suction::FlowOf flowOf(const SuctionSystem& system) {
  return [ready = dutyOptions(system, {""}, {0.0}, 0.0)](const suction::Load& load) {
    airflow::DutyOptions duty = ready;
    duty.ground_pa_s_m3[0] = load.resistance_pa_s_m3;
    duty.legs[0].inertia_pa_s2_m6 = load.inertia_pa_s2_m6;
    const airflow::DutySummary solved = airflow::solveDuty(duty);
    return solved.ok() ? std::max(0.0, solved.legs[0].ground.m3PerS()) : 0.0;
  };
}

base::Pressure pitSuctionAt(const SuctionSystem& system, base::Flow flow) {
  const base::Pressure fan = system.fan.curve.at(flow, airflow::density_kg_m3(system.air)).pressure;
  return fan - airflow::pipeLoss(system.before, flow, system.air).loss -
         airflow::pipeLoss(system.after, flow, system.air).loss;
}

}  // namespace sumpwright::siting
