#pragma once
// The ground fitted to what was measured in test holes, and where to drill them.
//
// Parameters are the logarithms of Narrowed, as factors on the model's ground, each with a prior:
// transmissivity, all leakage together, how it is split between soil and joints, and walls on their
// own footing. Readings tell the first two; the split, as a rule, and often the walls are known no
// better than before, and count that widely. The flow must be measured: without it only the shape
// (lambda) can be told. The reading at the pit carries the pit's radius and inertial loss, so it
// fits those alone.

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "base/Message.h"
#include "plan/Job.h"
#include "suction/Field.h"
#include "suction/LeastSquares.h"
#include "suction/Presets.h"

namespace sumpwright::suction {

struct Reading {
  std::string hole;  ///< id
  Point at;
  double suction_pa = 0.0;
  std::optional<double> sd_pa;  ///< not stated: readingSd_pa()
};

/// sqrt((0.05 s)^2 + (0.3 Pa)^2): 5 % of the reading and 0.3 Pa of the gauge (own figures).
double readingSd_pa(double suction_pa);
/// What a gauge tells from nothing (own figure). A reading under it says that there is less, no
/// more: so a hole at 0 Pa counts.
inline constexpr double kGaugeStep_pa = 0.3;

struct FitOptions {
  double cell_m = 0.10;
  double prior_sd = 2.302585093;  ///< of T and of leakage about the model's: a factor of 10
  double split_sd = 2.4;          ///< of soil to joints (derived: the ranges of rangesOf())
  double footing_sd = 2.0;        ///< of walls on their own footing (derived, as before)
  int most_steps = 60;
  double outlier = 3.5;  ///< standard deviations off what the other holes say (own figure)
};

/// What a ground can be (own figures): T from 0.05 m of silt (1e-13 m2) to 0.5 m of the coarsest
/// stone (1e-6 m2); leakage over the floor from that of sound concrete to a joint of 3 mm round
/// every 100 m2.
inline constexpr Range kTransmissivities_m3_s_pa{3e-10, 3e-2};
inline constexpr Range kLeakages_m_s_pa{1e-10, 1e-3};

/// A fitted figure with its 95 % band, multiplicative since it was fitted as a logarithm.
struct Banded {
  double value = 0.0;
  double low = 0.0;
  double high = 0.0;
  double sd_ln = 0.0;
};

struct Misfit {
  std::string hole;
  std::size_t test = 0;  ///< which of those that were given
  double measured_pa = 0.0;
  double fitted_pa = 0.0;
  double off_sd = 0.0;  ///< (measured - fitted) / sd
  /// Does not fit what the others say at all (a blocked cell, a hidden duct, a slip of the pen):
  /// the rest was fitted without it.
  bool outlier = false;
};

/// contradictory: readings ten of their errors off on average, even without the odd one (own
/// figure).
enum class FitState { settled, not_settled, too_few, no_answer, contradictory };

struct Fit {
  FitState state = FitState::no_answer;
  int steps = 0;
  Scales scales;  ///< on the model that was given: with them the plan is predicted anew
  Narrowed narrowed;
  Banded transmissivity_m3_s_pa;
  Banded leak_m_s_pa;        ///< soil, joints and bare walls together, spread over the floor
  Banded lambda_m;           ///< sqrt(T / that): one length for floors that leak at their edges too
  double correlation = 0.0;  ///< of ln T and ln of leakage
  double chi2 = 0.0;         ///< of those that were fitted
  double cost = 0.0;         ///< with what priors and a hole left out add
  std::vector<Misfit> holes;
  bool flow_known = false;  ///< else T and leakage are known to a common factor only
  /// What the readings cannot tell, and what to do about it: "suction.fit.*".
  std::vector<base::Message> statements;
  /// Of s_w = R Q + B Q^2, where the pit was read: what R Q leaves, Pa; < 0: the pit is larger than
  /// assumed. Of the first test that has it.
  std::optional<double> pit_excess_pa;
  bool usable() const { return state == FitState::settled || state == FitState::not_settled; }
};

struct Measured {
  Sink sink;
  std::optional<double> flow_m3_s;
  std::optional<double> pit_pa;
  std::vector<Reading> readings;
  std::string name;  ///< in sentences
};

/// One network for all steps; a factorisation and a back-solve per parameter for each. Too few:
/// under two readings on the floor. A reading above its pit's own is left out and said.
Fit fitGround(const SuctionModel& model, const Measured& measured, const FitOptions& options);
/// Of several runs, each with its own sump and flow, together. Where the flow of some was measured
/// the others are left out; where of none, all but the one with most readings, and it is said.
Fit fitGround(const SuctionModel& model, const std::vector<Measured>& tests,
              const FitOptions& options);

struct HoleOptions {
  int count = 3;           ///< two to five; others are taken for the nearest
  double spacing_m = 0.5;  ///< of the places looked at
  double from_edge_m = 0.3;
  double from_sump_m = 1.5;  ///< nearer the field is not that of a layer (own figure: 10 times b)
  /// From each other and from those that are there: this share of the floor's longest way (own
  /// figure). Two side by side read alike.
  double apart = 1.0 / 6.0;
  std::vector<Point> there;           ///< drilled already: what they teach is known
  std::function<int(Point)> room_of;  ///< rooms by number, < 0: none; empty: all one
  FitOptions fit;                     ///< what is known before
};

struct ProposedHole {
  Point at;
  double expected_pa = 0.0;
  double gain = 0.0;  ///< by how much it shrinks what is not known: ln of the volume of the band
};

/// The holes that together teach most of what fitGround() fits, if the ground is as the solver has
/// it: greatest determinant of the information (D-optimal design; Fedorov 1972, from memory),
/// greedy, then by exchange. In a room that has one already only what teaches twice as much as the
/// best elsewhere (own figure). Fewer than asked where no more stand apart. `may(point)`: whether a
/// hole may be drilled there (noDrill()).
std::vector<ProposedHole> proposeHoles(const FieldSolver& solver, const Sink& sink,
                                       double flow_m3_s, const HoleOptions& options,
                                       const std::function<bool(Point)>& may);

/// Why no hole is drilled through the floor there: phrase "suction.hole.*"; nothing where none is
/// known to forbid it. Underfloor heating, wet rooms, within 0.3 m (common practice) of a drawn
/// service, heating pipe or fitting. What is not drawn is not known: locate first.
std::optional<base::Message> noDrill(const plan::Plan& plan, Point at);
/// Also in rooms with old tiles or black glue, and where nobody looked in a floor that is not known
/// to be of 2000 or later: they may hold asbestos (the year from memory).
std::optional<base::Message> noDrill(const plan::Job& job, Point at);

}  // namespace sumpwright::suction
