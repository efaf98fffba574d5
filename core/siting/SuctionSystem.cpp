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

constexpr int kHalvings = 50;          // to rounding
constexpr double kInnerLeaf_m = 0.10;  // own figure

/// Length and bends of the design, or what is taken for them.
struct CountedRun {
  double before_m = kBeforeFan_m;
  double after_m = kAfterFanLow_m;
  int bends_before = 1;
  int bends_after = 0;
  bool stated = false;  ///< all of it
  bool drawn = false;   ///< what is not stated is counted from the run as it is placed
};

/// Of the sump whose run the site judges, if it has one.
std::optional<build::CountedPipe> drawnPipe(const rules::Site& site) {
  for (const plan::Sump& sump : site.job.design.sumps) {
    if (site.run && sump.id == site.run->sump) {
      return build::countedPipe(site, sump, {sump.ring, sump.chainage_m});
    }
  }
  return std::nullopt;
}

CountedRun runOf(const rules::Site& site, const std::optional<build::CountedPipe>& drawn) {
  const plan::PipeRun& pipe = site.job.design.pipe;
  const build::CountedPipe usual = drawn.value_or(usualPipe(site, site.outlet));
  return {pipe.before_m.value_or(usual.before_m),
          pipe.after_m.value_or(usual.after_m),
          pipe.bends_before.value_or(usual.bends_before),
          pipe.bends_after.value_or(usual.bends_after),
          pipe.before_m && pipe.after_m && pipe.bends_before && pipe.bends_after,
          drawn.has_value()};
}

std::vector<Fitting> withBends(FittingKind end, int bends) {
  std::vector<Fitting> fittings{Fitting{end}};
  if (bends > 0) fittings.push_back({FittingKind::bend_90, bends});
  return fittings;
}

const char* pipeSource(const CountedRun& run) {
  if (run.stated) {
    return "Lengths and bends as the job states them; wall of the pipe 3.2 mm, sizes of EN 1401, "
           "from memory";
  }
  if (run.drawn) {
    return "Lengths and bends counted from the run as it is drawn, unless the job states them; "
           "wall of the pipe 3.2 mm, sizes of EN 1401, from memory";
  }
  return "Lengths and bends that the job does not state: own figures; wall of the pipe 3.2 mm, "
         "sizes of EN 1401, from memory";
}

Assumption pipeAssumption(const SuctionSystem& system, const CountedRun& run) {
  const char* id = run.stated || run.drawn ? "suction.stated.pipe" : "suction.assumed.pipe";
  return {Message(id, {base::millimetres("bore", 1000.0 * system.before.bore_m),
                       base::metres("before", run.before_m), base::metres("after", run.after_m),
                       base::count("bends", run.bends_before + run.bends_after)}),
          {Mark::own, pipeSource(run)}};
}

const char* fanAssumption(const SuctionSystem& system) {
  if (system.shared) {
    return system.invented ? "suction.assumed.fan-shared-invented" : "suction.assumed.fan-shared";
  }
  return system.invented ? "suction.assumed.fan-invented" : "suction.assumed.fan";
}

void addAssumptions(SuctionSystem& system, const CountedRun& run) {
  auto& out = system.assumptions;
  out.push_back(
      {Message(fanAssumption(system), {base::text("fan", system.fan.title)}), system.fan.source});
  if (system.speed < 1.0) {
    out.push_back({Message("suction.stated.speed", {base::percent("speed", 100.0 * system.speed)}),
                   {Mark::own, "The job's; pressure as the square of the speed (fan laws)"}});
  }
  out.push_back(pipeAssumption(system, run));
  if (system.seal == plan::AnnulusSeal::unknown) {
    out.push_back({Message("suction.assumed.sealed"), {Mark::own, "Nobody said how it is sealed"}});
  }
}

}  // namespace

build::CountedPipe usualPipe(const rules::Site& site, plan::OutletMode outlet) {
  const bool riser = outlet == plan::OutletMode::riser;
  const plan::PipeRun& stated = site.job.design.pipe;
  const double after_m = stated.after_m.value_or(riser ? kAfterFanRiser_m : kAfterFanLow_m);
  return {stated.before_m.value_or(kBeforeFan_m), after_m, stated.bends_before.value_or(1),
          stated.bends_after.value_or(riser ? 2 : 0), after_m};
}

SuctionSystem usualSystem(const rules::Site& site, airflow::Fan fan, bool invented) {
  return systemWith(site, std::move(fan), invented, drawnPipe(site));
}

SuctionSystem systemWith(const rules::Site& site, airflow::Fan fan, bool invented,
                         const std::optional<build::CountedPipe>& drawn) {
  const plan::Design& design = site.job.design;
  const CountedRun run = runOf(site, drawn);
  SuctionSystem system;
  system.fan = std::move(fan);
  system.invented = invented;
  system.speed = design.fan.speed;
  system.one_fan = design.shared_fan;
  system.shared = design.shared_fan && design.sumps.size() > 1;
  system.seal = design.annulus;
  system.annulus = {site.core_m, site.pipe_od_m, kInnerLeaf_m,
                    design.annulus == plan::AnnulusSeal::not_sealed ? 1.0 : 0.0};
  system.before.bore_m = site.pipe_od_m - 2.0 * kPipeWall_m;
  system.before.length_m = run.before_m;
  system.before.fittings = withBends(FittingKind::sharp_inlet, run.bends_before);
  system.after.bore_m = system.before.bore_m;
  system.after.length_m = run.after_m;
  system.after.fittings = withBends(FittingKind::exit, run.bends_after);
  addAssumptions(system, run);
  return system;
}

SuctionSystem leaking(const SuctionSystem& system) {
  SuctionSystem open = system;
  open.annulus.open_share = 1.0;
  return open;
}

airflow::DutyOptions dutyOptions(const SuctionSystem& system, const std::vector<std::string>& sumps,
                                 const std::vector<double>& matrix_pa_s_m3,
                                 const std::vector<double>& inertias_pa_s2_m6) {
  SUMPWRIGHT_REQUIRE(inertias_pa_s2_m6.size() == sumps.size());
  const bool shared = system.one_fan && sumps.size() > 1;
  airflow::DutyOptions duty;
  for (std::size_t k = 0; k < sumps.size(); ++k) {
    airflow::Leg leg;
    leg.sump = sumps[k];
    leg.line = shared ? 0 : k;
    leg.pipe = system.before;
    if (shared) {
      leg.valve = airflow::ValvePosition::open;
      leg.pipe.fittings.push_back({FittingKind::tee_branch});
    }
    leg.annulus = system.annulus;
    leg.inertia_pa_s2_m6 = inertias_pa_s2_m6[k];
    duty.legs.push_back(std::move(leg));
    if (shared && k > 0) continue;
    duty.lines.push_back({system.fan.title, system.fan.curve, system.speed, system.after});
  }
  duty.ground_pa_s_m3 = matrix_pa_s_m3;
  duty.air = system.air;
  return duty;
}

suction::FlowOf flowOf(const SuctionSystem& system) {
  return [ready = dutyOptions(system, {""}, {0.0}, {0.0})](const suction::Load& load) {
    airflow::DutyOptions duty = ready;
    duty.ground_pa_s_m3[0] = load.resistance_pa_s_m3;
    duty.legs[0].inertia_pa_s2_m6 = load.inertia_pa_s2_m6;
    const airflow::DutySummary solved = airflow::solveDuty(duty);
    return solved.ok() ? std::max(0.0, solved.legs[0].ground.m3PerS()) : 0.0;
  };
}

suction::FlowsOf flowsOf(const SuctionSystem& system) {
  if (!system.one_fan) return {};
  return [system](const std::vector<double>& matrix, const std::vector<double>& inertias) {
    const std::size_t sumps = inertias.size();
    const std::vector<std::string> names(sumps);
    const auto solved = airflow::solveDuty(dutyOptions(system, names, matrix, inertias));
    std::vector<double> flows(sumps, 0.0);
    for (std::size_t k = 0; solved.ok() && k < sumps; ++k) {
      flows[k] = std::max(0.0, solved.legs[k].ground.m3PerS());
    }
    return flows;
  };
}

base::Pressure pitSuctionAt(const SuctionSystem& system, base::Flow flow) {
  const auto left = [&](base::Flow moved) {
    return system.fan.curve.at(moved, airflow::density_kg_m3(system.air), system.speed).pressure -
           airflow::pipeLoss(system.before, moved, system.air).loss -
           airflow::pipeLoss(system.after, moved, system.air).loss;
  };
  if (!(system.annulus.open_share > 0.0)) return left(flow);
  // What leaks grows with the pit's suction, what is left for the pit falls with it.
  base::Pressure low;
  base::Pressure high = std::max(base::Pressure(), left(flow));
  for (int halving = 0; halving < kHalvings; ++halving) {
    const base::Pressure pit = 0.5 * (low + high);
    const base::Flow leak = airflow::leakFlow(system.annulus, pit, system.air).flow;
    (left(flow + leak) > pit ? low : high) = pit;
  }
  return low;
}

}  // namespace sumpwright::siting
