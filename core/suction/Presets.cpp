#include "suction/Presets.h"

#include <algorithm>
#include <array>
#include <boost/math/special_functions/erf.hpp>
#include <cmath>
#include <numbers>

#include "plan/FloorLevels.h"

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

/// The depth stays, so that T goes with the permeability.
Ground changed(Ground ground, const Scales& scales) {
  ground.permeability_m2 *= scales.transmissivity;
  ground.leak_ground_m_s_pa *= scales.leakage;
  ground.exposed_m_s_pa *= scales.outdoors;
  ground.joint_width_m *= std::cbrt(scales.edges);  // cubic law
  ground.footing_m2_s_pa *= scales.barriers;
  return ground;
}

using Logs = Narrowed::Logs;
/// Lower triangle S with S S^T the covariance (Cholesky): the first parts keep their even spread.
std::array<Logs, Narrowed::kParts> rootOf(const std::array<Logs, Narrowed::kParts>& covariance) {
  std::array<Logs, Narrowed::kParts> root{};
  for (std::size_t k = 0; k < root.size(); ++k) {
    for (std::size_t l = 0; l <= k; ++l) {
      double rest = covariance[k][l];
      for (std::size_t m = 0; m < l; ++m) rest -= root[k][m] * root[l][m];
      if (k == l) {
        root[k][k] = std::sqrt(std::max(0.0, rest));
      } else if (root[l][l] > 0.0) {
        root[k][l] = rest / root[l][l];
      }
    }
  }
  return root;
}

/// Another T without a measured flow: leakage and footings are told as they are to it.
Logs withFill(Logs logs, double fill) {
  const double by = fill - logs[Narrowed::fill];
  for (const auto part : {Narrowed::fill, Narrowed::leak, Narrowed::footing}) logs[part] += by;
  return logs;
}

Logs within(Logs logs, const Narrowed& narrowed) {
  for (std::size_t k = 0; k < logs.size(); ++k) {
    logs[k] = std::clamp(logs[k], narrowed.low[k], narrowed.high[k]);
  }
  return logs;
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
  // As thick as in the drill section, also where nobody said.
  const double slab_m = plan::floorLayers(house, nullptr).slab.m;
  if (slab_m > 0.0) ranges.slab_m = slab_m;
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

double Narrowed::sd(Part part) const { return std::sqrt(std::max(0.0, covariance[part][part])); }

Scales scalesOf(const Logs& logs, double soil_share) {
  const double split = std::exp(logs[Narrowed::split]);
  Scales scales;
  scales.transmissivity = std::exp(logs[Narrowed::fill]);
  scales.edges = scales.outdoors =
      std::exp(logs[Narrowed::leak]) / (soil_share * split + 1.0 - soil_share);
  scales.leakage = scales.edges * split;
  scales.barriers = std::exp(logs[Narrowed::footing]);
  return scales;
}

double sdLnOf(const Range& range) {
  return range.low > 0.0 ? std::log(range.high / range.low) / std::sqrt(12.0) : 0.0;
}

Ground middleOf(const GroundRanges& ranges, const Narrowed& narrowed) {
  const Logs logs = narrowed.flow_known ? narrowed.mean : withFill(narrowed.mean, 0.0);
  return changed(ranges.middle(), scalesOf(within(logs, narrowed), narrowed.soil_share));
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
  std::array<std::vector<double>, 2 + Narrowed::kParts> shares;
  for (auto& column : shares) column = evenShares(count, dice);
  const Ground base = ranges.middle();
  const auto root = rootOf(narrowed.covariance);
  std::vector<Ground> draws;
  for (std::size_t k = 0; k < static_cast<std::size_t>(std::max(0, count)); ++k) {
    Logs logs = narrowed.mean;
    for (std::size_t p = 0; p < logs.size(); ++p) {
      for (std::size_t l = 0; l <= p; ++l) logs[p] += root[p][l] * normalAt(shares[2 + l][k]);
    }
    if (!narrowed.flow_known) {
      logs =
          withFill(logs, std::log(ranges.permeability_m2.at(shares[0][k]) / base.permeability_m2) +
                             std::log(ranges.thickness_m.at(shares[1][k]) / base.thickness_m));
    }
    draws.push_back(changed(base, scalesOf(within(logs, narrowed), narrowed.soil_share)));
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
