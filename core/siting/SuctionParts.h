#pragma once
// What the suction study and the live field have in common. Internal to core/siting.

#include <optional>
#include <string>
#include <vector>

#include "siting/SuctionStudy.h"

namespace sumpwright::siting {

/// Above nothing, the limit no more than the design suction.
bool isSound(const suction::Target& target);

/// The ground that is counted with: the ranges, the tests fitted where the job wants it, and every
/// answer to what nobody knows with what is left of the ground then. Never without a case.
struct TakenGround {
  suction::GroundRanges ranges;
  std::optional<FittedGround> fitted;
  std::vector<suction::OpenCase> cases;
};
TakenGround takenGround(const Study& study, const SuctionOptions& options);

/// Where a sump draws, its pit as large as it states or else of that radius; nothing without a
/// place.
std::optional<StudiedSump> studiedSump(const perimeter::Perimeter& perimeter,
                                       const plan::Sump& sump, double radius_m);

/// What sumps do together on one answer, those left out that stand in no floor there.
struct SolvedSumps {
  std::vector<std::string> names;
  std::vector<suction::UnitField> units;  ///< empty: none stands in it, and nothing is solved
  airflow::DutySummary duty;
  std::vector<double> suction;  ///< by cell, Pa
  suction::Reach reach;
};
SolvedSumps solvedSumps(const suction::FieldSolver& solver, const std::vector<StudiedSump>& sumps,
                        const SuctionSystem& system, double inertia_pa_s2_m6,
                        const suction::Target& target);

/// Flow out of the ground at each sump; 0 where there is no duty point.
std::vector<double> groundFlows(const airflow::DutySummary& duty, std::size_t sumps);

}  // namespace sumpwright::siting
