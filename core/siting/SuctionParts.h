#pragma once
// What the suction study and the live field have in common. Internal to core/siting.

#include <optional>
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

/// Flow out of the ground at each sump; 0 where there is no duty point.
std::vector<double> groundFlows(const airflow::DutySummary& duty, std::size_t sumps);

}  // namespace sumpwright::siting
