#include "siting/ReachAsked.h"

#include <algorithm>
#include <utility>

#include "siting/SuctionParts.h"

namespace sumpwright::siting {

namespace {

/// The sump that the curve is of; without one of that name the first.
std::vector<plan::Sump>::const_iterator movedOf(const std::vector<plan::Sump>& sumps,
                                                const SuctionOptions& options) {
  const auto mine = std::find_if(sumps.begin(), sumps.end(), [&](const plan::Sump& sump) {
    return sump.id == options.along_of;
  });
  return mine != sumps.end() ? mine : sumps.begin();
}

}  // namespace

double pitAlong_m3(const plan::Design& design, const SuctionOptions& options) {
  const auto sump = movedOf(design.sumps, options);
  const bool states = !options.at && sump != design.sumps.end() && sump->pit_l;
  return states ? kLitre_m3 * *sump->pit_l : options.pit_m3;
}

std::vector<suction::Sink> sinksBeside(const perimeter::Perimeter& perimeter,
                                       const plan::Design& design, const SuctionOptions& options) {
  std::vector<suction::Sink> others;
  if (!design.shared_fan || options.at) return others;
  const auto& sumps = design.sumps;
  const auto left_out = movedOf(sumps, options);
  for (auto sump = sumps.begin(); sump != sumps.end(); ++sump) {
    if (sump == left_out) continue;
    const auto one = studiedSump(perimeter, *sump, suction::pitRadius_m(options.pit_m3));
    if (one) others.push_back(one->sink);
  }
  return others;
}

ReachOptions reachOptionsOf(const Study& study, const SuctionOptions& options,
                            const suction::GroundRanges& ranges,
                            const std::vector<suction::OpenCase>& cases) {
  ReachOptions reach;
  reach.fill = options.fill;
  reach.ranges = ranges;
  reach.cases = cases;
  reach.others = sinksBeside(study.perimeter(), study.job().design, options);
  reach.target = options.target;
  reach.pit_m3 = pitAlong_m3(study.job().design, options);
  reach.cell_m = options.cell_m;
  reach.threads = options.threads;
  return reach;
}

bool isAlongOf(const ReachAlong& along, const Study& study, const SuctionOptions& options) {
  const plan::Design& design = study.job().design;
  return along.radius_m() == suction::pitRadius_m(pitAlong_m3(design, options)) &&
         along.others() == sinksBeside(study.perimeter(), design, options);
}

base::Result<ReachAlong> reachAsked(const Study& study, const SuctionSystem& system,
                                    const SuctionOptions& options) {
  const TakenGround taken = takenGround(study, options);
  ReachOptions reach = reachOptionsOf(study, options, taken.ranges, taken.cases);
  reach.going = options.going;
  return ReachAlong::of(study, system, reach);
}

std::vector<BestPlace> placesByChance(const Study& study, std::shared_ptr<const ReachAlong> along) {
  if (along == nullptr || !along->computed() || !along->fits(study.perimeter())) return {};
  return study.withReach(std::move(along), RankBy::reach).best();
}

}  // namespace sumpwright::siting
