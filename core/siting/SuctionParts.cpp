#include "siting/SuctionParts.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <utility>

#include "geometry/Distance.h"
#include "suction/Workers.h"

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

base::Result<std::vector<SolvedCase>> solvedCases(const Study& study, const TakenGround& taken,
                                                  const SuctionOptions& options) {
  std::vector<SolvedCase> cases;
  double area_m2 = 0.0;
  for (const suction::OpenCase& open : taken.cases) {
    const suction::Ground ground = suction::middleOf(taken.ranges, open);
    auto model = suction::modelOf(study.job(), ground, open.choices);
    if (!model) return model.problems();
    area_m2 += suction::solvedArea_m2(*model);
    cases.push_back({open.choices, ground, std::move(model).value(), {}});
  }
  suction::FieldOptions field;
  field.most_bytes /= cases.size();
  field.cell_m = std::max(options.cell_m, std::sqrt(area_m2 / options.most_cells));
  std::atomic<std::size_t> next{0};
  std::atomic<bool> stop{false};
  const auto workers =
      std::min(static_cast<std::size_t>(std::clamp(options.threads, 1, 64)), cases.size());
  suction::onWorkers(workers, [&](std::size_t worker) {
    for (std::size_t k = next++; k < cases.size() && !stop; k = next++) {
      cases[k].solver = suction::FieldSolver::of(cases[k].model, field);
      if (worker == 0 && options.going && !options.going(0.0)) stop = true;
    }
  });
  if (stop)
    return base::Problem{base::Message("suction.chance.stopped"), "", base::Gravity::missing};
  for (const SolvedCase& one : cases) {
    if (!one.solver.ok()) return one.solver.summary().problems;
  }
  return cases;
}

std::optional<StudiedSump> studiedSump(const perimeter::Perimeter& perimeter,
                                       const plan::Sump& sump, double radius_m) {
  const double radius = sump.pit_l ? suction::pitRadius_m(kLitre_m3 * *sump.pit_l) : radius_m;
  const auto sink = suction::sinkOf(perimeter, sump, radius);
  if (!sink) return std::nullopt;
  const Place place{sump.ring, sump.chainage_m};
  return StudiedSump{sump.id, sump.at_m ? std::nullopt : std::optional(place), *sink};
}

std::optional<base::Problem> pitsInOne(const std::vector<StudiedSump>& sumps) {
  for (std::size_t b = 1; b < sumps.size(); ++b) {
    for (std::size_t a = 0; a < b; ++a) {
      const double apart = geometry::distance(sumps[a].sink.at, sumps[b].sink.at);
      const double least = sumps[a].sink.radius_m + sumps[b].sink.radius_m;
      if (apart >= least) continue;
      return base::Problem{
          base::Message("suction.pits-in-one",
                        {base::text("sump", sumps[b].id), base::text("other", sumps[a].id),
                         base::metres("apart", apart), base::metres("least", least)}),
          "/design/sumps", base::Gravity::unsound};
    }
  }
  return std::nullopt;
}

SolvedSumps solvedSumps(const suction::FieldSolver& solver, const std::vector<StudiedSump>& sumps,
                        const SuctionSystem& system, const suction::Ground& ground,
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
  solved.duty =
      airflow::solveDuty(dutyOptions(system, solved.names, suction::resistances(units),
                                     suction::inertias(units, suction::inertiaOf(ground))));
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
