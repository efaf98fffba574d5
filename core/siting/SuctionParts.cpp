#include "siting/SuctionParts.h"

#include <algorithm>
#include <cmath>

namespace sumpwright::siting {

namespace {

/// Two factors are asked for, not a field: with finer cells they take ten times as long, and one
/// plan would have two grounds (own figure).
constexpr double kFitCell_m = 0.10;

}  // namespace

bool isSound(const suction::Target& target) {
  return std::isfinite(target.design_pa) && target.limit_pa > 0.0 &&
         target.limit_pa <= target.design_pa;
}

TakenGround takenGround(const Study& study, const SuctionOptions& options) {
  TakenGround taken;
  const plan::Fill fill = options.fill.value_or(study.job().house.fill);
  taken.ranges = options.ranges.value_or(suction::rangesOf(study.job(), fill));
  if (taken.ranges.layered && options.use_tests && wantsFit(study.job())) {
    taken.fitted = options.fitted ? options.fitted
                                  : fittedGround(study, taken.ranges, options.pit_m3,
                                                 std::max(options.cell_m, kFitCell_m));
  }
  if (taken.fitted) {
    taken.fitted->sentences = saidOfPlaces(study);
    auto& all = taken.fitted->sentences;
    all.insert(all.end(), taken.fitted->found.begin(), taken.fitted->found.end());
  }
  taken.cases = openCasesOf(study.job().plan, taken.fitted);
  return taken;
}

std::optional<StudiedSump> studiedSump(const perimeter::Perimeter& perimeter,
                                       const plan::Sump& sump, double radius_m) {
  constexpr double kLitre_m3 = 0.001;
  const double radius = sump.pit_l ? suction::pitRadius_m(kLitre_m3 * *sump.pit_l) : radius_m;
  const auto sink = suction::sinkOf(perimeter, sump, radius);
  if (!sink) return std::nullopt;
  const Place place{sump.ring, sump.chainage_m};
  return StudiedSump{sump.id, sump.at_m ? std::nullopt : std::optional(place), *sink};
}

SolvedSumps solvedSumps(const suction::FieldSolver& solver, const std::vector<StudiedSump>& sumps,
                        const SuctionSystem& system, double inertia_pa_s2_m6,
                        const suction::Target& target) {
  SolvedSumps solved;
  for (const StudiedSump& sump : sumps) {
    auto unit = solver.unit(sump.sink);
    if (!unit) continue;
    solved.units.push_back(std::move(*unit));
    solved.names.push_back(sump.id);
  }
  const auto& units = solved.units;
  if (units.empty()) return solved;
  solved.duty = airflow::solveDuty(
      dutyOptions(system, solved.names, suction::resistances(units), inertia_pa_s2_m6));
  solved.suction = suction::superposed(units, groundFlows(solved.duty, units.size()));
  solved.reach = suction::reachOf(solver.network(), solved.suction, target);
  return solved;
}

std::vector<double> groundFlows(const airflow::DutySummary& duty, std::size_t sumps) {
  std::vector<double> flows(sumps, 0.0);
  for (std::size_t k = 0; k < duty.legs.size(); ++k) flows[k] = duty.legs[k].ground.m3PerS();
  return flows;
}

}  // namespace sumpwright::siting
