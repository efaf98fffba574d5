#include "suction/Presets.h"

#include <algorithm>
#include <array>
#include <boost/math/special_functions/erf.hpp>
#include <cmath>
#include <numbers>

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

/// Quantile of the normal distribution.
double normalAt(double share) {
  constexpr double kLeast = 1e-9;  // a share of nothing has no quantile
  return std::numbers::sqrt2 *
         boost::math::erf_inv(2.0 * std::clamp(share, kLeast, 1.0 - kLeast) - 1.0);
}

/// T and all leakage times a factor; the depth stays, so that T goes with the permeability.
Ground changed(Ground ground, double transmissivity, double leakage) {
  ground.permeability_m2 *= transmissivity;
  ground.leak_ground_m_s_pa *= leakage;
  ground.exposed_m_s_pa *= leakage;
  ground.joint_width_m *= std::cbrt(leakage);  // cubic law
  return ground;
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

GroundRanges rangesOf(const plan::Job& job, std::optional<plan::Fill> fill) {
  GroundRanges ranges = rangesOf(fill.value_or(job.house.fill), job.house);
  const plan::GroundGuess& guess = job.suction.ground;
  const auto put = [](Range& range, const std::optional<plan::Spread>& said, double unit) {
    if (said) range = {unit * said->low, unit * said->high};
  };
  put(ranges.permeability_m2, guess.permeability_m2, 1.0);
  put(ranges.thickness_m, guess.fill_depth_m, 1.0);
  put(ranges.leak_ground_m_s_pa, guess.leakage_m_s_pa, 1.0);
  put(ranges.joint_width_m, guess.joint_width_mm, 0.001);
  put(ranges.footing_m2_s_pa, guess.footing_m2_s_pa, 1.0);
  put(ranges.exposed_m_s_pa, guess.exposed_m_s_pa, 1.0);
  return ranges;
}

Ground middleOf(const GroundRanges& ranges, const Narrowed& narrowed) {
  const double t = narrowed.flow_known ? narrowed.transmissivity : 1.0;
  return changed(ranges.middle(), t, t * narrowed.leakage / narrowed.transmissivity);
}

std::vector<OpenCase> openCasesOf(const plan::Plan& plan) {
  std::vector<OpenCase> cases;
  for (const ModelChoices& choices : choicesOf(plan)) cases.push_back({choices, std::nullopt});
  return cases;
}

Ground middleOf(const GroundRanges& ranges, const OpenCase& one) {
  return one.narrowed ? middleOf(ranges, *one.narrowed) : ranges.middle();
}

std::vector<Ground> drawsOf(const GroundRanges& ranges, const Narrowed& narrowed, int count,
                            std::uint64_t seed) {
  Dice dice(seed);
  std::array<std::vector<double>, 5> shares;
  for (auto& column : shares) column = evenShares(count, dice);
  const Ground base = ranges.middle();
  const double ratio_ln = std::log(narrowed.leakage / narrowed.transmissivity);
  const double rest = std::sqrt(std::max(0.0, 1.0 - narrowed.correlation * narrowed.correlation));
  std::vector<Ground> draws;
  for (std::size_t k = 0; k < static_cast<std::size_t>(std::max(0, count)); ++k) {
    const double z = normalAt(shares[3][k]);
    double t_ln = 0.0;
    double l_ln = 0.0;
    if (narrowed.flow_known) {
      const double z_t = normalAt(shares[2][k]);
      t_ln = std::log(narrowed.transmissivity) + narrowed.sd_transmissivity_ln * z_t;
      l_ln = std::log(narrowed.leakage) +
             narrowed.sd_leakage_ln * (narrowed.correlation * z_t + rest * z);
    } else {
      t_ln = std::log(ranges.permeability_m2.at(shares[0][k]) / base.permeability_m2) +
             std::log(ranges.thickness_m.at(shares[1][k]) / base.thickness_m);
      l_ln = t_ln + ratio_ln + narrowed.sd_ratio_ln * z;
    }
    Ground ground = changed(base, std::exp(t_ln), std::exp(l_ln));
    ground.footing_m2_s_pa = ranges.footing_m2_s_pa.at(shares[4][k]);
    draws.push_back(ground);
  }
  return draws;
}

Scales scalesFrom(const Ground& base, const Ground& other) {
  Scales scales;
  scales.transmissivity =
      other.layer().transmissivity_m3_s_pa / base.layer().transmissivity_m3_s_pa;
  scales.leakage = other.leak_ground_m_s_pa / base.leak_ground_m_s_pa;
  scales.edges = other.joint_m2_s_pa() / base.joint_m2_s_pa();
  scales.outdoors = other.exposed_m_s_pa / base.exposed_m_s_pa;
  scales.barriers = other.footing_m2_s_pa / base.footing_m2_s_pa;
  return scales;
}

}  // namespace sumpwright::suction
