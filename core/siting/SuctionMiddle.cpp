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

base::Problems MiddleCases::solve(const TakenGround& taken, std::vector<StudiedSump>& sumps,
                                  std::vector<base::Message>& remarks) {
  auto cases = solvedCases(m_study, taken, m_options);
  if (!cases) return cases.problems();
  m_cases = std::move(cases).value();
  // All answers have the same floor, and so the same sumps in it.
  keepThoseOnFloor(m_cases.front().solver, sumps, remarks);
  if (sumps.empty()) return {};
  for (const SolvedCase& one : m_cases) {
    solveCase(one, sumps);
    if (!m_told.back().duty.ok()) {
      return {{base::Message("suction.no-duty"), "/design/fan", base::Gravity::unsound}};
    }
  }
  for (std::size_t k = 1; k < m_told.size(); ++k) {
    if (m_told[k].reach.floor < m_told[m_worst].reach.floor) m_worst = k;
  }
  return {};
}

void MiddleCases::solveCase(const SolvedCase& solver, const std::vector<StudiedSump>& sumps) {
  MiddleCase one;
  one.choices = solver.choices;
  one.label = caseLabel(m_study.job().plan, one.choices);
  one.field = solver.solver.summary();
  // The memory's bound lies below that of a drag's cells: either is told.
  one.field.coarser = one.field.cell_m > m_options.cell_m;
  SolvedSumps solved = solvedSumps(solver.solver, sumps, m_system, solver.ground, m_options.target);
  m_names = std::move(solved.names);
  one.duty = std::move(solved.duty);
  one.reach = solved.reach;
  one.sentence = caseSentence(one, m_options.target, placeOnFloor(m_study, one.reach.least.at));
  m_told.push_back(std::move(one));
  m_suctions.push_back(std::move(solved.suction));
  m_units.push_back(std::move(solved.units));
}

std::shared_ptr<const SuctionField> MiddleCases::fieldOfWorst() const {
  return std::make_shared<const SuctionField>(
      SuctionField{m_cases[m_worst].model, solverOf(m_worst).network(), m_suctions[m_worst]});
}

airflow::DutyOptions MiddleCases::dutyOn(std::size_t which, const SuctionSystem& system) const {
  // All answers have the same floor, and so the same sumps in it.
  const auto& units = m_units[which];
  return dutyOptions(system, m_names, suction::resistances(units),
                     suction::inertias(units, suction::inertiaOf(m_cases[which].ground)));
}

airflow::DutyOptions MiddleCases::dutyOfWorst(const SuctionSystem& system) const {
  return dutyOn(m_worst, system);
}

suction::Reach MiddleCases::reachOn(std::size_t which, const airflow::DutySummary& duty) const {
  const auto& units = m_units[which];
  return suction::reachOf(solverOf(which).network(),
                          suction::superposed(units, groundFlows(duty, units.size())),
                          m_options.target);
}

suction::Reach MiddleCases::reachAt(const airflow::DutySummary& duty) const {
  return reachOn(m_worst, duty);
}

std::vector<airflow::FanChoiceOptions> MiddleCases::fanCases() const {
  std::vector<airflow::FanChoiceOptions> cases;
  for (std::size_t k = 0; k < m_told.size(); ++k) {
    airflow::FanChoiceOptions one;
    one.system = dutyOn(k, m_system);
    one.held = [this, k](const airflow::DutySummary& duty) { return reachOn(k, duty).floor; };
    one.held_needed = suction::kWholeFloor;
    cases.push_back(std::move(one));
  }
  return cases;
}

}  // namespace sumpwright::siting
