#include "siting/ReachAsked.h"

#include <algorithm>
#include <utility>

#include "siting/SuctionParts.h"

namespace sumpwright::siting {

std::vector<suction::Sink> sinksBeside(const perimeter::Perimeter& perimeter,
                                       const plan::Design& design, const SuctionOptions& options) {
  std::vector<suction::Sink> others;
  if (!design.shared_fan || options.at) return others;
  const auto& sumps = design.sumps;
  const auto mine = std::find_if(sumps.begin(), sumps.end(), [&](const plan::Sump& sump) {
    return sump.id == options.along_of;
  });
  const auto left_out = mine != sumps.end() ? mine : sumps.begin();
  for (auto sump = sumps.begin(); sump != sumps.end(); ++sump) {
    if (sump == left_out) continue;
    const auto one = studiedSump(perimeter, *sump, suction::pitRadius_m(options.pit_m3));
    if (one) others.push_back(one->sink);
  }
  return others;
}

ReachOptions reachOptionsOf(const SuctionOptions& options, const suction::GroundRanges& ranges,
                            const std::vector<suction::OpenCase>& cases,
                            const std::vector<suction::Sink>& others) {
  ReachOptions reach;
  reach.fill = options.fill;
  reach.ranges = ranges;
  reach.cases = cases;
  reach.others = others;
  reach.target = options.target;
  reach.pit_m3 = options.pit_m3;
  reach.cell_m = options.cell_m;
  reach.threads = options.threads;
  return reach;
}

base::Result<ReachAlong> reachAsked(const Study& study, const SuctionSystem& system,
                                    const SuctionOptions& options) {
  const TakenGround taken = takenGround(study, options);
  ReachOptions reach = reachOptionsOf(options, taken.ranges, taken.cases,
                                      sinksBeside(study.perimeter(), study.job().design, options));
  reach.going = options.going;
  return ReachAlong::of(study, system, reach);
}

std::vector<BestPlace> placesByChance(const Study& study, std::shared_ptr<const ReachAlong> along) {
  if (along == nullptr || !along->computed() || !along->fits(study.perimeter())) return {};
  return study.withReach(std::move(along), RankBy::reach).best();
}

}  // namespace sumpwright::siting
