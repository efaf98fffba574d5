#include "price/Materials.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "build/Run.h"
#include "plan/SumpList.h"
#include "price/NeedList.h"
#include "price/SealList.h"

namespace sumpwright::price {

namespace {

// Own figures, to be changed line by line.
constexpr double kWaste = 0.10;       // pipe bought above what is laid
constexpr double kClipEvery_m = 1.0;  // of pipe
constexpr double kBackerTurns = 2.0;  // round each hole: once in either leaf
constexpr double kSetOut_h = 1.0;
constexpr double kCore_h = 1.5;  // each
constexpr double kPit_h = 1.0;   // each
constexpr double kPipe_h_m = 0.25;
constexpr double kFan_h = 1.0;  // each
constexpr double kCommission_h = 1.5;
constexpr double kClearUp_h = 0.5;

struct Counted {
  int sumps = 0;
  int cored = 0;
  int pits = 0;
  int fans = 0;
  int risers = 0;   ///< of the fans
  int in_roof = 0;  ///< of the fans
  int bends = 0;
  int maybe_round_eaves =
      0;  ///< risers that pass eaves of which nobody knows how far they stand out
  double pipe_m = 0.0;
  double lagged_m = 0.0;  ///< of pipe in the open air
  std::vector<base::Message> assumed_runs;
};

/// A sump's pipe and bends: as the job states them, else as its placed run goes, else the usual.
struct LaidPipe {
  build::CountedPipe counted;
  bool assumed = false;  ///< some of it neither stated nor placed
};

LaidPipe laidAt(const siting::Study& study, const plan::Sump& sump, bool has_fan) {
  const rules::Site& site = study.site();
  LaidPipe laid{siting::usualPipe(site, build::outletModeOf(site, sump))};
  build::CountedPipe& counted = laid.counted;
  const plan::PipeRun& stated = study.job().design.pipe;
  const auto run = build::countedPipe(site, sump, {sump.ring, sump.chainage_m});
  if (!run) {
    const bool after = !has_fan || (stated.after_m && stated.bends_after);
    laid.assumed = !(stated.before_m && stated.bends_before && after);
    return laid;
  }
  if (!stated.before_m) counted.before_m = run->before_m;
  if (!stated.after_m) counted.after_m = run->after_m;
  if (!stated.bends_before) counted.bends_before = run->bends_before;
  if (!stated.bends_after) counted.bends_after = run->bends_after;
  counted.exposed_m = run->exposed_m;
  counted.in_roof_m = run->in_roof_m;
  return laid;
}

/// Which run was taken for one that nobody has placed: nobody needs to where it is low at its hole.
base::Message assumedRun(const rules::Site& site, const plan::Sump& sump,
                         const build::CountedPipe& laid, bool has_fan) {
  const bool low = sump.kind == plan::SumpKind::cored &&
                   build::outletModeOf(site, sump) == plan::OutletMode::low;
  return {low ? "price.assumed-low" : "price.assumed-run",
          {base::text("sump", plan::sumpWord(site.job, sump.id)),
           base::metres("length", laid.before_m + (has_fan ? laid.after_m : 0.0)),
           base::count("bends", laid.bends_before + (has_fan ? laid.bends_after : 0))}};
}

void countFan(const siting::Study& study, const plan::Sump& sump, const build::CountedPipe& laid,
              Counted& out) {
  ++out.fans;
  out.pipe_m += laid.after_m;
  out.bends += laid.bends_after;
  if (build::outletModeOf(study.site(), sump) != plan::OutletMode::riser) return;
  ++out.risers;
  out.in_roof += sump.fan_place == plan::FanPlace::roof_space ? 1 : 0;
  if (const auto run = build::placedRun(study.site(), sump)) {
    const auto eaves = build::eavesPassed(study.site(), *run, {sump.ring, sump.chainage_m});
    out.maybe_round_eaves += eaves.passed && !eaves.out_m ? 1 : 0;
  }
  if (laid.exposed_m > build::kLagOver_m) out.lagged_m += laid.exposed_m;
  out.lagged_m += laid.in_roof_m;  // a roof space is cold
}

Counted countedOf(const siting::Study& study, const siting::SuctionSystem& system) {
  Counted out;
  for (const plan::Sump& sump : study.job().design.sumps) {
    ++out.sumps;
    out.cored += sump.kind == plan::SumpKind::cored ? 1 : 0;
    out.pits += sump.kind == plan::SumpKind::standby ? 0 : 1;  // its pit is there already
  }
  for (const plan::Sump& sump : study.job().design.sumps) {
    const bool has_fan = out.fans == 0 || !system.shared;
    const LaidPipe laid = laidAt(study, sump, has_fan);
    out.pipe_m += laid.counted.before_m;
    out.bends += laid.counted.bends_before;
    if (has_fan) countFan(study, sump, laid.counted, out);
    if (laid.assumed) {
      out.assumed_runs.push_back(assumedRun(study.site(), sump, laid.counted, has_fan));
    }
  }
  return out;
}

void addPipework(const Counted& counted, const siting::SuctionSystem& system,
                 const rules::Site& site, NeedList& list) {
  using enum NeedKind;
  const plan::Design& design = site.job.design;
  list.metres("pipe", (1.0 + kWaste) * counted.pipe_m);
  list.count("bend", material, counted.bends);
  list.count("tee", material, system.shared ? counted.sumps - 1 : 0);
  list.count("valve", material, system.shared ? counted.sumps : 0);
  list.count("coupler", material, 2 * counted.fans);
  list.count("fan", material, counted.fans);
  list.count("silencer", material, design.silencer == plan::YesNo::yes ? counted.fans : 0);
  // Outlets are judged open and upright: a cowl is the rule sheet's and the client's to want.
  list.count("cowl", optional, counted.risers);
  list.bought("cowl");
  list.count("grille", material, counted.fans - counted.risers);
  list.count("mesh", material, counted.fans);
  list.count("cover", material, counted.cored);
  list.count("gauge", material, counted.fans);
  list.count("labels", material, counted.fans);
  list.count("pipe_clip", material,
             counted.sumps + static_cast<int>(std::ceil(counted.pipe_m / kClipEvery_m)));
  list.count("sealant", material, counted.sumps + 1);
  list.metres("backer", kBackerTurns * std::numbers::pi * site.core_m * counted.cored);
  list.metres("lagging", counted.lagged_m);
}

/// What whoever buys it has to ask for.
void addDetails(const rules::Site& site, const siting::SuctionSystem& system, NeedList& list) {
  const base::Arg pipe = base::millimetres("pipe", 1000.0 * site.pipe_od_m);
  const base::Arg hole = base::millimetres("hole", 1000.0 * site.core_m);
  list.detail({"pipe"}, {"price.detail.pipe", {pipe}});
  list.detail({"bend", "tee", "valve", "coupler", "silencer", "cowl", "grille", "mesh", "pipe_clip",
               "lagging"},
              {"price.detail.for-pipe", {pipe}});
  list.detail({"cover"}, {"price.detail.cover", {pipe, hole}});
  list.detail({"sealant", "backer"}, {"price.detail.gap", {pipe, hole}});
  list.detail({"fan"}, {system.invented ? "price.detail.fan-invented" : "price.detail.fan",
                        {base::text("fan", system.fan.title), pipe}});
}

void addWork(const Counted& counted, NeedList& list) {
  list.hours("work_setting_out", kSetOut_h);
  // A hold point: no hole without it, so it is in the total.
  list.count("trial_pit", NeedKind::labour, counted.cored);
  list.count("roof_pass", NeedKind::labour, counted.in_roof);
  list.hours("work_core", kCore_h * counted.cored);
  list.hours("work_pit", kPit_h * counted.pits);
  list.hours("work_pipe", kPipe_h_m * counted.pipe_m);
  list.hours("work_fan", kFan_h * counted.fans);
  list.hours("work_commissioning", kCommission_h);
  list.hours("work_clearing_up", kClearUp_h);
}

void addOptional(const Counted& counted, const siting::Study& study, NeedList& list) {
  using enum NeedKind;
  list.count("reinstatement", optional, counted.cored);
  list.count("spoil", optional, counted.pits);
  list.count("scaffold", optional, std::min(counted.risers, 1));
  list.count("round_eaves", optional, counted.maybe_round_eaves);
  list.count("high_footing", optional, counted.cored);
  const SealList seals = sealList(study);
  list.count("seal_entry", optional, seals.entries);
  list.metres("seal_joint", seals.joint_m, optional);
  list.count("return_visit", optional, 1);
  list.count("retest", optional, 1);
}

}  // namespace

Needs needsOf(const siting::Study& study, const siting::SuctionSystem& system) {
  NeedList list;
  const Counted counted = countedOf(study, system);
  if (counted.sumps == 0) {
    list.remark(base::Message("price.no-sump"));
    return list.take();
  }
  addPipework(counted, system, study.site(), list);
  addDetails(study.site(), system, list);
  addWork(counted, list);
  addWiring(study, system, counted.fans, list);
  addOptional(counted, study, list);
  if (!counted.assumed_runs.empty()) {
    list.assumed({"pipe", "bend", "pipe_clip", "lagging", "work_pipe"});
  }
  for (const base::Message& assumed : counted.assumed_runs) list.remark(assumed);
  for (const siting::Assumption& assumption : system.assumptions) list.remark(assumption.what);
  return list.take();
}

}  // namespace sumpwright::price
