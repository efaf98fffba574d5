#pragma once
// The curve of reach along the wall as a suction study asks for it, without the study: quick, for a
// score that counts it.

#include <vector>

#include "siting/ReachAlong.h"
#include "siting/SuctionStudy.h"

namespace sumpwright::siting {

/// Where the sumps of a design draw that count beside the one of `options.along_of`, those in no
/// floor, too: none where each has a fan of its own, or only one is asked for.
std::vector<suction::Sink> sinksBeside(const perimeter::Perimeter& perimeter,
                                       const plan::Design& design, const SuctionOptions& options);

/// The pit that the curve counts with: what the sump of `options.along_of` states, else the job's.
double pitAlong_m3(const plan::Design& design, const SuctionOptions& options);

/// What the curve takes of a study's options. `cases`: the ground as fitted to what was measured.
ReachOptions reachOptionsOf(const Study& study, const SuctionOptions& options,
                            const suction::GroundRanges& ranges,
                            const std::vector<suction::OpenCase>& cases);

/// Whether a curve is of the sump of `options.along_of`, its pit and the sumps beside it.
bool isAlongOf(const ReachAlong& along, const Study& study, const SuctionOptions& options);

/// Without its chance, the same curve that studySuction() gives where asked for `along`: target,
/// pit and ground of `options`, fitted to the job's tests where it wants that, and the sumps beside
/// it. Errors: those of ReachAlong::of().
base::Result<ReachAlong> reachAsked(const Study& study, const SuctionSystem& system,
                                    const SuctionOptions& options);

/// The best place of each stretch that no rule refuses, put in order by the chance that one sump
/// there reaches the whole floor (RankBy::reach). Empty without a curve, or where it does not fit.
std::vector<BestPlace> placesByChance(const Study& study, std::shared_ptr<const ReachAlong> along);

}  // namespace sumpwright::siting
