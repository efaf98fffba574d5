#pragma once
// What the suction study and the live field have in common.

#include <optional>
#include <string>
#include <vector>

#include "siting/SuctionStudy.h"

namespace sumpwright::siting {

inline constexpr double kLitre_m3 = 0.001;

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

/// One answer to what nobody knows, solved on the middle guess at the ground.
struct SolvedCase {
  suction::ModelChoices choices;
  suction::Ground ground;
  suction::SuctionModel model;
  suction::FieldSolver solver;
};
/// All of them, on cells of one size: options.cell_m, or coarser where they would have more than
/// options.most_cells together or need more memory than one is given (suction::FieldOptions).
/// Shared out over options.threads. Errors: those of suction::modelOf() and of the solver,
/// suction.chance.stopped where options.going said no.
base::Result<std::vector<SolvedCase>> solvedCases(const Study& study, const TakenGround& taken,
                                                  const SuctionOptions& options);

/// Where a sump draws, its pit as large as it states or else of that radius; nothing without a
/// place.
std::optional<StudiedSump> studiedSump(const perimeter::Perimeter& perimeter,
                                       const plan::Sump& sump, double radius_m);

/// Two pits that run into each other are one pit: no duty point is worked out for them. The problem
/// is of the second of the pair; nothing where all stand clear of each other.
std::optional<base::Problem> pitsInOne(const std::vector<StudiedSump>& sumps);

/// What sumps do together on one answer, those left out that stand in no floor there.
struct SolvedSumps {
  std::vector<std::string> names;
  std::vector<suction::UnitField> units;  ///< empty: none stands in it, and nothing is solved
  airflow::DutySummary duty;
  std::vector<double> suction;  ///< by cell, Pa
  suction::Reach reach;
};
SolvedSumps solvedSumps(const suction::FieldSolver& solver, const std::vector<StudiedSump>& sumps,
                        const SuctionSystem& system, const suction::Ground& ground,
                        const suction::Target& target);

/// Flow out of the ground at each sump; 0 where there is no duty point.
std::vector<double> groundFlows(const airflow::DutySummary& duty, std::size_t sumps);

}  // namespace sumpwright::siting
