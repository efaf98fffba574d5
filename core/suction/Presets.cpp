#include "suction/Presets.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace sumpwright::suction {

namespace {

/// SplitMix64 (Steele, Lea and Flood 2014): the same numbers on every platform.
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : m_state(seed) {}
  std::uint64_t next() {
    std::uint64_t z = (m_state += 0x9e3779b97f4a7c15ULL);
    z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9ULL;
    z = (z ^ (z >> 27U)) * 0x94d049bb133111ebULL;
    return z ^ (z >> 31U);
  }
  double share() { return static_cast<double>(next() >> 11U) * 0x1.0p-53; }

 private:
  std::uint64_t m_state;
};

/// One share from each of `count` equal parts of [0, 1), in random order.
std::vector<double> evenShares(int count, Dice& dice) {
  std::vector<double> shares;
  for (int k = 0; k < count; ++k) shares.push_back((k + dice.share()) / count);
  for (std::size_t k = shares.size(); k > 1; --k) {
    std::swap(shares[k - 1], shares[static_cast<std::size_t>(dice.next() % k)]);
  }
  return shares;
}

Range permeabilityOf(plan::Fill fill) {
  switch (fill) {
    case plan::Fill::clean_stone:
      return {3e-8, 3e-7};
    case plan::Fill::graded:
      return {1e-10, 1e-8};
    case plan::Fill::none:
      return {1e-12, 1e-10};
    case plan::Fill::unknown:
      break;
  }
  return {1e-10, 1e-7};
}

}  // namespace

double Range::at(double share) const {
  if (!(low > 0.0)) return low + share * (high - low);
  return low * std::pow(high / low, share);
}

Ground GroundRanges::middle() const {
  Ground ground;
  ground.permeability_m2 = permeability_m2.middle();
  ground.thickness_m = thickness_m.middle();
  ground.leak_ground_m_s_pa = leak_ground_m_s_pa.middle();
  ground.joint_width_m = joint_width_m.middle();
  ground.footing_m2_s_pa = footing_m2_s_pa.middle();
  ground.exposed_m_s_pa = exposed_m_s_pa.middle();
  ground.slab_m = slab_m;
  ground.air = air;
  return ground;
}

GroundRanges rangesOf(plan::Fill fill, const plan::House& house) {
  GroundRanges ranges;
  ranges.permeability_m2 = permeabilityOf(fill);
  ranges.thickness_m = {0.10, 0.30};
  if (house.hardcore_m && *house.hardcore_m > 0.0) {
    ranges.thickness_m = {0.8 * *house.hardcore_m, 1.25 * *house.hardcore_m};
  }
  ranges.leak_ground_m_s_pa = {1.4e-9, 1.4e-6};
  ranges.joint_width_m = {0.0002, 0.001};
  ranges.footing_m2_s_pa = {1e-8, 1e-5};
  ranges.exposed_m_s_pa = {1e-8, 1e-6};
  if (house.slab_m && *house.slab_m > 0.0) ranges.slab_m = *house.slab_m;
  ranges.layered = fill != plan::Fill::none;
  return ranges;
}

std::vector<Ground> drawsOf(const GroundRanges& ranges, int count, std::uint64_t seed) {
  Dice dice(seed);
  std::array<std::vector<double>, 6> shares;
  for (auto& column : shares) column = evenShares(count, dice);
  std::vector<Ground> draws;
  for (std::size_t k = 0; k < static_cast<std::size_t>(std::max(0, count)); ++k) {
    Ground ground = ranges.middle();
    ground.permeability_m2 = ranges.permeability_m2.at(shares[0][k]);
    ground.thickness_m = ranges.thickness_m.at(shares[1][k]);
    ground.leak_ground_m_s_pa = ranges.leak_ground_m_s_pa.at(shares[2][k]);
    ground.joint_width_m = ranges.joint_width_m.at(shares[3][k]);
    ground.footing_m2_s_pa = ranges.footing_m2_s_pa.at(shares[4][k]);
    ground.exposed_m_s_pa = ranges.exposed_m_s_pa.at(shares[5][k]);
    draws.push_back(ground);
  }
  return draws;
}

Scales scalesFrom(const Ground& base, const Ground& other) {
  Scales scales;
  scales.transmissivity =
      other.layer().transmissivity_m3_s_pa / base.layer().transmissivity_m3_s_pa;
  scales.leakage = other.layer().leak_m_s_pa() / base.layer().leak_m_s_pa();
  scales.edges = other.joint_m2_s_pa() / base.joint_m2_s_pa();
  scales.outdoors = other.exposed_m_s_pa / base.exposed_m_s_pa;
  scales.barriers = other.footing_m2_s_pa / base.footing_m2_s_pa;
  return scales;
}

}  // namespace sumpwright::suction
