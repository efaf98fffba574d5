#pragma once
// What a length of pipe with its fittings costs in pressure.

#include <vector>

#include "airflow/Air.h"
#include "airflow/Fittings.h"
#include "base/Quantities.h"

namespace sumpwright::airflow {

/// Roughness of plastic pipe, m: 0.0015 mm, the smooth end of the 0.0015 to 0.007 mm given for it
/// (The Engineering Toolbox, roughness of pipes). Radon pipe was measured 9 to 23 % less resistant
/// than the tables of the day (Brodhead and Saum, AARST symposium 1996, abstract).
inline constexpr double kPlasticRoughness_m = 1.5e-6;

/// Bore of 110 mm pipe with a 3.2 mm wall, m (sizes of EN 1401, from memory).
inline constexpr double kBore110_m = 0.1036;

struct Pipe {
  double bore_m = kBore110_m;
  double length_m = 0.0;
  double roughness_m = kPlasticRoughness_m;
  std::vector<Fitting> fittings;
  bool operator==(const Pipe&) const = default;
};

/// Bore 10 mm to 1 m, length 0 to 1 km, roughness 0 to 5 % of the bore, every K 0 to 1000.
bool plausible(const Pipe& pipe);

struct PipeLoss {
  base::Pressure loss;         ///< has the sign of the flow
  double slope_pa_s_m3 = 0.0;  ///< d loss / d flow, never negative
  double speed_m_s = 0.0;      ///< mean over the bore, never negative
  double reynolds = 0.0;
  double friction = 0.0;  ///< Darcy's f; 0 in still air
};

/// rho V²/2 (f L/D + sum K + extra_k), f by friction(). The pipe and the air must be plausible and
/// `extra_k` finite.
///   - odd: loss(-Q) = -loss(Q), loss(0) = 0
///   - rising in Q, strictly where the pipe has a length or a K
///   - slope continuous, that of laminar flow at Q = 0
PipeLoss pipeLoss(const Pipe& pipe, base::Flow flow, const Air& air, double extra_k = 0.0);

}  // namespace sumpwright::airflow
