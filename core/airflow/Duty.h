#pragma once
// The duty point: the air flows at which ground, pipes and fans agree.
//
//   pit i:     s_i = b_i + sum_j R_ij q_j + B_i q_i |q_i|           suction in the pit, to the room
//   leg i:     S_f = s_i + (pipe, fittings, valve of leg i)(t_i),   t_i = q_i + leak_i(s_i - house)
//   fan f:     P_f(T_f) = S_f - house + (pipe of line f)(T_f),      T_f = sum of its t_i
//
// q_i comes out of the ground, leak_i beside an unsealed pipe (Annulus.h), from outdoors; `house`
// is the room's pressure less the outdoors', where the fan blows. [R] is the ground's answer to a
// unit flow at each sump, B the inertial loss at the pit (see inertia_pa_s2_m6()).
//
// With [R] positive definite there is one solution and only one: every part takes more pressure
// for more flow, and the fans give less. Numbered properties, tested on random systems:
//   1 more resistance anywhere in a single-sump system never gives more flow
//   2 a fan that is stronger at every flow gives more flow
//   3 relabelling sumps or lines relabels the answer
//   4 fan air power = what ground, legs, leaks and lines take, within the residual
//   5 n equal sumps on one fan are n times one sump with the main line's flow n times as large
//
// One open leg is solved by bracketing (Alefeld, Potra, Shi: Algorithm 748, ACM TOMS 21, 1995, of
// Boost.Math), several by Newton's method with step halving. Nothing is thrown; the same input
// gives the same bits.

#include <cstddef>
#include <string>
#include <vector>

#include "airflow/Annulus.h"
#include "airflow/FanCurve.h"
#include "airflow/Pipe.h"
#include "airflow/SpeedLimits.h"
#include "base/Problem.h"
#include "base/Quantities.h"

namespace sumpwright::airflow {

/// From one sump to where it joins its fan's line.
struct Leg {
  std::string sump;      ///< as messages call it
  std::size_t line = 0;  ///< index into DutyOptions::lines
  Pipe pipe;             ///< with its inlet
  ValvePosition valve = ValvePosition::none;
  Annulus annulus;
  double inertia_pa_s2_m6 = 0.0;  ///< B
  base::Pressure background;      ///< b: suction in the pit before any fan runs
  bool operator==(const Leg&) const = default;
};

/// A fan and the pipe that all its air goes through, before and after it.
struct FanLine {
  std::string fan;  ///< as messages call it
  FanCurve curve;
  double speed = 1.0;  ///< share of the curve's speed; fans that can be turned down
  Pipe pipe;           ///< with its exit
};

enum class DutyMethod { automatic, newton };

struct DutyOptions {
  std::vector<Leg> legs;  ///< 1 to 50 (own figure)
  std::vector<FanLine> lines;
  /// [R], row by row, legs × legs, Pa s/m³: ground[i n + j] is the suction in pit i per unit flow
  /// from pit j.
  std::vector<double> ground_pa_s_m3;
  Air air;
  base::Pressure house;  ///< room less outdoors; below nothing in a heated house
  SpeedLimits limits;
  DutyMethod method = DutyMethod::automatic;
  /// Where pressures agree to this, it is solved.
  base::Pressure tolerance = base::Pressure::ofPa(1e-8);
  int max_iterations = 200;
};

enum class DutyStop {
  converged,
  no_flow,        ///< every valve is closed: the fans draw nothing
  not_solved,     ///< the iterations ran out; the figures are the last ones
  unusable_input  ///< see problems; no figures
};

struct LegDuty {
  base::Flow ground;    ///< q, from under the floor
  base::Flow leak;      ///< beside the pipe
  base::Flow total;     ///< t, in the pipe
  base::Pressure pit;   ///< s
  base::Pressure loss;  ///< pipe, fittings and valve of the leg
  double speed_m_s = 0.0;
  bool operator==(const LegDuty&) const = default;
};

struct LineDuty {
  base::Flow flow;         ///< T
  base::Pressure fan;      ///< P
  base::Pressure suction;  ///< S, where the legs join
  base::Pressure loss;     ///< of the line's own pipe
  double speed_m_s = 0.0;
  std::optional<double> power_w;  ///< electric
  bool outside_curve = false;
  bool operator==(const LineDuty&) const = default;
};

struct DutySummary {
  DutyStop stop = DutyStop::unusable_input;
  int iterations = 0;
  base::Pressure residual;    ///< largest disagreement left over the legs
  std::vector<LegDuty> legs;  ///< as in the options
  std::vector<LineDuty> lines;
  /// What a person should know, worst first: air flowing back, a fan off its curve, leaks, a leg
  /// that takes most of the air, speeds over the limits. Ids "airflow.*".
  std::vector<base::Message> remarks;
  /// Ids "airflow.input.*" with pointers into the options ("/legs/0/pipe").
  base::Problems problems;

  bool ok() const { return stop == DutyStop::converged || stop == DutyStop::no_flow; }
};

DutySummary solveDuty(const DutyOptions& options);

/// B of a pit: beta rho / (4 pi² b² r_w), beta the fill's inertial factor (1/m), b the depth of the
/// fill, r_w the pit's radius: the inertial part of radial flow to a well in a layer (Forchheimer's
/// law integrated from r_w outwards; derived). Not a number unless b and r_w are above nothing.
double inertia_pa_s2_m6(double beta_per_m, double fill_depth_m, double pit_radius_m,
                        const Air& air);

}  // namespace sumpwright::airflow
