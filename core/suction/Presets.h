#pragma once
// What can be known of the ground under a floor, as ranges: nobody has measured them yet.
//
// Marks: [S] looked up, [M] from memory, [O] own figure, [D] derived. Every range is to be shown as
// an assumption and changed by whoever knows better.

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "plan/Job.h"
#include "suction/ModelOf.h"
#include "suction/Network.h"

namespace sumpwright::suction {

/// Low and high end of a figure that is taken to be even on a logarithmic scale between them.
struct Range {
  double low = 0.0;
  double high = 0.0;
  double at(double share) const;  ///< share 0..1 of the way, on the logarithmic scale
  double middle() const { return at(0.5); }
  bool operator==(const Range&) const = default;
};

struct GroundRanges {
  Range permeability_m2;
  Range thickness_m;
  Range leak_ground_m_s_pa;
  Range joint_width_m;
  Range footing_m2_s_pa;  ///< through inner walls on their own footing
  Range exposed_m_s_pa;
  double slab_m = 0.10;
  airflow::Air air;
  /// With no granular layer flow is not in a layer at all: reach is not to be given as a figure
  /// (test with a strong temporary fan instead).
  bool layered = true;
  Ground middle() const;
  bool operator==(const GroundRanges&) const = default;
};

/// The ranges of what lies under the slab, house figures (slab, fill depth) taken where they are
/// known, a slab nobody measured as in the drill section (plan::floorLayers()):
/// - clean stone: k 3e-8..3e-7 m2 (Ergun 1952 with 5..16 mm at porosity 0.40, [D]; 16.2 mm is the
///   effective diameter of a stone measured by Hung et al. 2018, abstract [S]), depth 0.10..0.30 m
///   [O]
/// - graded hardcore with fines: k 1e-10..1e-8 m2 [O]
/// - none: k 1e-12..1e-10 m2, sand (Nazaroff and Nero 1988, [M]); not layered
/// - unknown: k 1e-10..1e-7 m2 [O]: never taken for clean stone
/// and for all: soil leakage 1.4e-9..1.4e-6 m/(s Pa) (soil of 1e-13..1e-10 m2 over 4 m, [D]),
/// joints 0.2..1 mm [O], footings 1e-8..1e-5 m2/(s Pa) [O].
GroundRanges rangesOf(plan::Fill fill, const plan::House& house);

/// Those of a job: of its fill (or the one given), with what the job says of the ground instead.
GroundRanges rangesOf(const plan::Job& job, std::optional<plan::Fill> fill = std::nullopt);

/// What a fit leaves open: logarithms of factors on the ranges' middle, spread as normal ones and
/// kept within what a ground can be.
struct Narrowed {
  /// Transmissivity; the leakage of soil, joints and exposed walls together; its split, soil to
  /// joints; what walls on their own footing let through.
  enum Part : std::size_t { fill, leak, split, footing };
  static constexpr std::size_t kParts = 4;
  using Logs = std::array<double, kParts>;
  static constexpr double kWide = 50.0;
  Logs mean{};
  std::array<Logs, kParts> covariance{};
  Logs low{-kWide, -kWide, -kWide, -kWide};
  Logs high{kWide, kWide, kWide, kWide};
  double soil_share = 0.5;  ///< of the leakage on the ranges' middle
  /// The flow was measured. Else only what the others are to T was told: T then stays as wide as
  /// the ranges, and they go with it.
  bool flow_known = true;
  double sd(Part part) const;
};

/// The factors those logarithms stand for.
Scales scalesOf(const Narrowed::Logs& logs, double soil_share);

/// The ground in the middle of what is left.
Ground middleOf(const GroundRanges& ranges, const Narrowed& narrowed);

/// An answer to what nobody knows, and what a fit leaves of the ground if it is the true one.
struct OpenCase {
  ModelChoices choices;
  std::optional<Narrowed> narrowed;  ///< none: nothing was fitted
};
/// All answers of a plan on the ranges as they are (choicesOf()).
std::vector<OpenCase> openCasesOf(const plan::Plan& plan);
Ground middleOf(const GroundRanges& ranges, const OpenCase& one);

/// `count` guesses, spread evenly: a Latin hypercube (McKay, Beckman and Conover 1979, from memory)
/// from a fixed seed, so that the same ranges give the same guesses everywhere.
std::vector<Ground> drawsOf(const GroundRanges& ranges, int count, std::uint64_t seed = 1);

/// The same as the fit leaves them; the depth of fill stays in the middle of its range, for only
/// its product with the permeability is told.
std::vector<Ground> drawsOf(const GroundRanges& ranges, const Narrowed& narrowed, int count,
                            std::uint64_t seed = 1);

/// Standard deviation of a figure's logarithm that is even on a range.
double sdLnOf(const Range& range);

/// Factors that turn a network of `base` into one of `other`. Slab depth and viscosity are in both.
Scales scalesFrom(const Ground& base, const Ground& other);

}  // namespace sumpwright::suction
