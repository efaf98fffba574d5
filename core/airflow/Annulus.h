#pragma once
// Air that comes in beside the pipe instead of from under the floor: the gap between the core hole
// and a pipe that is not sealed to the inner leaf, or only part way round. The fan runs, the gauge
// moves, the floor gets little.

#include "airflow/Air.h"
#include "base/Quantities.h"

namespace sumpwright::airflow {

struct Annulus {
  double hole_m = 0.0;      ///< diameter of the core hole
  double pipe_od_m = 0.0;   ///< outside diameter of the pipe
  double depth_m = 0.1;     ///< thickness of the leaf it goes through
  double open_share = 0.0;  ///< of the circumference left unsealed: 0 sealed, 1 not sealed at all
  bool operator==(const Annulus&) const = default;
};

/// The share 0 to 1, the depth 1 mm to 2 m, both diameters up to 1 m; a hole not wider than the
/// pipe has no gap.
bool plausible(const Annulus& annulus);

struct LeakFlow {
  base::Flow flow;             ///< has the sign of the pressure
  double slope_m3_s_pa = 0.0;  ///< d flow / d pressure, never negative
};

/// Flow through the gap at a suction in the pit: that q at which
///
///   dp = q/G + rho/2 (q/(Cd A))²,   G = pi D w³/(12 mu depth),   A = pi D w
///
/// w half the difference of the diameters, D their mean, both times the open share: flow between
/// parallel plates (Poiseuille) and a sharp-edged opening after it, Cd 0.6 (textbook, from memory).
/// Odd and strictly rising where there is a gap; without one nothing. The annulus and air must be
/// plausible.
LeakFlow leakFlow(const Annulus& annulus, base::Pressure suction, const Air& air);

}  // namespace sumpwright::airflow
