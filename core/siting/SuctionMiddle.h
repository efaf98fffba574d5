#pragma once
// The middle guess at the ground, solved for every answer to what nobody knows. Internal to
// core/siting.

#include <string>
#include <vector>

#include "siting/SuctionParts.h"
#include "siting/SuctionStudy.h"

namespace sumpwright::siting {

class MiddleCases {
 public:
  MiddleCases(const Study& study, const SuctionSystem& system, const SuctionOptions& options)
      : m_study(study), m_system(system), m_options(options) {}

  /// Sumps that stand in no floor are taken out and remarked on; with none left nothing is solved.
  base::Problems solve(const suction::GroundRanges& ranges,
                       const std::vector<suction::OpenCase>& cases, std::vector<StudiedSump>& sumps,
                       std::vector<base::Message>& remarks);

  const std::vector<MiddleCase>& told() const { return m_told; }
  /// Of told(): the least floor held.
  std::size_t worst() const { return m_worst; }
  const suction::FieldSolver& solverOf(std::size_t which) const { return m_solvers[which]; }
  const std::vector<double>& suctionOfWorst() const { return m_suctions[m_worst]; }
  double inertiaOfWorst_pa_s2_m6() const { return m_inertias_pa_s2_m6[m_worst]; }
  std::shared_ptr<const SuctionField> fieldOfWorst() const;
  /// A wall stands through the fill in some answer.
  bool hasBarriers() const { return m_barriers; }

  /// The worst answer with another system, and what is held at a duty point of it.
  airflow::DutyOptions dutyOfWorst(const SuctionSystem& system) const;
  suction::Reach reachAt(const airflow::DutySummary& duty) const;

 private:
  void solveCase(const suction::ModelChoices& choices, const suction::FieldSolver& solver,
                 const std::vector<StudiedSump>& sumps);

  const Study& m_study;
  const SuctionSystem& m_system;
  const SuctionOptions& m_options;
  std::vector<MiddleCase> m_told;
  std::size_t m_worst = 0;
  bool m_barriers = false;
  std::vector<std::string> m_names;  ///< of the sumps
  // All by case.
  std::vector<double> m_inertias_pa_s2_m6;
  std::vector<suction::FieldSolver> m_solvers;
  std::vector<suction::SuctionModel> m_models;
  std::vector<std::vector<suction::UnitField>> m_units;
  std::vector<std::vector<double>> m_suctions;
};

}  // namespace sumpwright::siting
