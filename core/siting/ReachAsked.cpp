#include "siting/ReachAsked.h"

#include <utility>

#include "siting/SuctionParts.h"

namespace sumpwright::siting {

namespace {

/// Ranges of which nothing is left but one ground.
suction::GroundRanges pinnedTo(suction::GroundRanges ranges, const suction::Ground& ground) {
  const auto one = [](double value) { return suction::Range{value, value}; };
  ranges.permeability_m2 = one(ground.permeability_m2);
  ranges.thickness_m = one(ground.thickness_m);
  ranges.leak_ground_m_s_pa = one(ground.leak_ground_m_s_pa);
  ranges.joint_width_m = one(ground.joint_width_m);
  ranges.footing_m2_s_pa = one(ground.footing_m2_s_pa);
  ranges.exposed_m_s_pa = one(ground.exposed_m_s_pa);
  return ranges;
}

}  // namespace

ReachOptions reachOptionsOf(const SuctionOptions& options, const suction::GroundRanges& ranges,
                            const suction::Ground* fitted) {
  ReachOptions reach;
  reach.fill = options.fill;
  reach.ranges = fitted == nullptr ? ranges : pinnedTo(ranges, *fitted);
  reach.target = options.target;
  reach.pit_m3 = options.pit_m3;
  reach.cell_m = options.cell_m;
  reach.threads = options.threads;
  return reach;
}

base::Result<ReachAlong> reachAsked(const Study& study, const SuctionSystem& system,
                                    const SuctionOptions& options) {
  const TakenGround taken = takenGround(study, options);
  const bool fitted = taken.fitted && taken.fitted->usable();
  ReachOptions reach = reachOptionsOf(options, taken.ranges, fitted ? &taken.ground : nullptr);
  reach.going = options.going;
  return ReachAlong::of(study, system, reach);
}

std::vector<BestPlace> placesByChance(const Study& study, std::shared_ptr<const ReachAlong> along) {
  if (along == nullptr || !along->computed() || !along->fits(study.perimeter())) return {};
  return study.withReach(std::move(along), RankBy::reach).best();
}

}  // namespace sumpwright::siting
