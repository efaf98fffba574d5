#pragma once
// The middle guess at the ground, solved for every answer to what nobody knows. Internal to
// core/siting.

#include <string>
#include <vector>

#include "airflow/FanChoice.h"
#include "siting/SuctionParts.h"
#include "siting/SuctionStudy.h"

namespace sumpwright::siting {

class MiddleCases {
 public:
  MiddleCases(const Study& study, const SuctionSystem& system, const SuctionOptions& options)
      : m_study(study), m_system(system), m_options(options) {}

  /// Sumps that stand in no floor are taken out and remarked on; with none left nothing is solved.
  base::Problems solve(const TakenGround& taken, std::vector<StudiedSump>& sumps,
                       std::vector<base::Message>& remarks);

  const std::vector<MiddleCase>& told() const { return m_told; }
  /// Of told(): the least floor held.
  std::size_t worst() const { return m_worst; }
  const suction::FieldSolver& solverOf(std::size_t which) const { return m_cases[which].solver; }
  const std::vector<double>& suctionOfWorst() const { return m_suctions[m_worst]; }
  const suction::Ground& groundOfWorst() const { return m_cases[m_worst].ground; }
  std::shared_ptr<const SuctionField> fieldOfWorst() const;

  /// The worst answer with another system, and what is held at a duty point of it.
  airflow::DutyOptions dutyOfWorst(const SuctionSystem& system) const;
  suction::Reach reachAt(const airflow::DutySummary& duty) const;
  /// Every answer as a choice of a fan asks for it. Lives no longer than this.
  std::vector<airflow::FanChoiceOptions> fanCases() const;

 private:
  void solveCase(const SolvedCase& solver, const std::vector<StudiedSump>& sumps);
  airflow::DutyOptions dutyOn(std::size_t which, const SuctionSystem& system) const;
  suction::Reach reachOn(std::size_t which, const airflow::DutySummary& duty) const;

  const Study& m_study;
  const SuctionSystem& m_system;
  const SuctionOptions& m_options;
  std::vector<MiddleCase> m_told;
  std::size_t m_worst = 0;
  std::vector<std::string> m_names;  ///< of the sumps
  // All by case.
  std::vector<SolvedCase> m_cases;
  std::vector<std::vector<suction::UnitField>> m_units;
  std::vector<std::vector<double>> m_suctions;
};

}  // namespace sumpwright::siting
