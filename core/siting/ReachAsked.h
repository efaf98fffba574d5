#pragma once
// The curve of reach along the wall as a suction study asks for it, without the study: quick, for a
// score that counts it.

#include "siting/ReachAlong.h"
#include "siting/SuctionStudy.h"

namespace sumpwright::siting {

/// What the curve takes of a study's options. `fitted`: of the ranges nothing but that ground is
/// left, which was fitted to measured suction; nullptr: it was not.
ReachOptions reachOptionsOf(const SuctionOptions& options, const suction::GroundRanges& ranges,
                            const suction::Ground* fitted);

/// Without its chance, the same curve that studySuction() gives where asked for `along`: target,
/// pit and ground of `options`, fitted to the job's tests where it wants that. Errors: those of
/// ReachAlong::of().
base::Result<ReachAlong> reachAsked(const Study& study, const SuctionSystem& system,
                                    const SuctionOptions& options);

/// The best place of each stretch that no rule refuses, put in order by the chance that one sump
/// there reaches the whole floor (RankBy::reach). Empty without a curve, or where it does not fit.
std::vector<BestPlace> placesByChance(const Study& study, std::shared_ptr<const ReachAlong> along);

}  // namespace sumpwright::siting
