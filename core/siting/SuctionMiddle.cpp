#include "siting/SuctionMiddle.h"

#include <utility>

#include "siting/SuctionPlaces.h"
#include "siting/SuctionWords.h"

namespace sumpwright::siting {

namespace {

void keepThoseOnFloor(const suction::FieldSolver& solver, std::vector<StudiedSump>& sumps,
                      std::vector<base::Message>& remarks) {
  std::erase_if(sumps, [&](const StudiedSump& sump) {
    if (solver.unit(sump.sink)) return false;
    remarks.push_back(base::Message("suction.sump-off-floor", {base::text("sump", sump.id)}));
    return true;
  });
}

}  // namespace

base::Problems MiddleCases::solve(const suction::GroundRanges& ranges,
                                  const std::vector<suction::OpenCase>& cases,
                                  std::vector<StudiedSump>& sumps,
                                  std::vector<base::Message>& remarks) {
  for (const suction::OpenCase& open : cases) {
    const suction::Ground ground = suction::middleOf(ranges, open);
    auto model = suction::modelOf(m_study.job(), ground, open.choices);
    if (!model) return model.problems();
    auto solver = suction::FieldSolver::of(*model, {.cell_m = m_options.cell_m});
    if (!solver.ok()) return solver.summary().problems;
    if (m_solvers.empty()) keepThoseOnFloor(solver, sumps, remarks);
    if (sumps.empty()) return {};
    m_barriers = m_barriers || !model->barriers.empty();
    m_inertias_pa_s2_m6.push_back(ground.inertia_pa_s2_m6(suction::pitRadius_m(m_options.pit_m3)));
    solveCase(open.choices, solver, sumps);
    m_solvers.push_back(std::move(solver));
    m_models.push_back(std::move(model).value());
  }
  for (std::size_t k = 1; k < m_told.size(); ++k) {
    if (m_told[k].reach.floor < m_told[m_worst].reach.floor) m_worst = k;
  }
  return {};
}

void MiddleCases::solveCase(const suction::ModelChoices& choices,
                            const suction::FieldSolver& solver,
                            const std::vector<StudiedSump>& sumps) {
  MiddleCase one;
  one.choices = choices;
  one.label = caseLabel(m_study.job().plan, choices);
  one.field = solver.summary();
  SolvedSumps solved =
      solvedSumps(solver, sumps, m_system, m_inertias_pa_s2_m6.back(), m_options.target);
  m_names = std::move(solved.names);
  one.duty = std::move(solved.duty);
  one.reach = std::move(solved.reach);
  one.sentence = caseSentence(one, m_options.target, placeOnFloor(m_study, one.reach.least.at));
  m_told.push_back(std::move(one));
  m_suctions.push_back(std::move(solved.suction));
  m_units.push_back(std::move(solved.units));
}

std::shared_ptr<const SuctionField> MiddleCases::fieldOfWorst() const {
  return std::make_shared<const SuctionField>(
      SuctionField{m_models[m_worst], m_solvers[m_worst].network(), m_suctions[m_worst]});
}

airflow::DutyOptions MiddleCases::dutyOfWorst(const SuctionSystem& system) const {
  // All answers have the same floor, and so the same sumps in it.
  return dutyOptions(system, m_names, suction::resistances(m_units[m_worst]),
                     m_inertias_pa_s2_m6[m_worst]);
}

suction::Reach MiddleCases::reachAt(const airflow::DutySummary& duty) const {
  const auto& units = m_units[m_worst];
  return suction::reachOf(m_solvers[m_worst].network(),
                          suction::superposed(units, groundFlows(duty, units.size())),
                          m_options.target);
}

}  // namespace sumpwright::siting
