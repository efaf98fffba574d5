#include "airflow/Annulus.h"

#include <cmath>
#include <numbers>

namespace sumpwright::airflow {

bool plausible(const Annulus& annulus) {
  return annulus.open_share >= 0.0 && annulus.open_share <= 1.0 && annulus.depth_m >= 0.001 &&
         annulus.depth_m <= 2.0 && annulus.hole_m >= 0.0 && annulus.hole_m <= 1.0 &&
         annulus.pipe_od_m >= 0.0 && annulus.pipe_od_m <= 1.0;
}

LeakFlow leakFlow(const Annulus& annulus, base::Pressure suction, const Air& air) {
  const double gap = 0.5 * (annulus.hole_m - annulus.pipe_od_m);
  if (gap <= 0.0 || annulus.open_share <= 0.0) return {};
  constexpr double kDischarge = 0.6;
  const double round =
      annulus.open_share * std::numbers::pi * 0.5 * (annulus.hole_m + annulus.pipe_od_m);
  const double area = kDischarge * round * gap;
  const double a = 12.0 * viscosity_pa_s(air) * annulus.depth_m / (round * gap * gap * gap);
  const double b = 0.5 * density_kg_m3(air) / (area * area);
  // b q² + a q = |dp|, written so that small pressures lose no digits.
  const double dp = std::abs(suction.pa());
  const double root = std::sqrt(a * a + 4.0 * b * dp);
  const double q = 2.0 * dp / (a + root);
  return {base::Flow::ofM3PerS(std::copysign(q, suction.pa())), 1.0 / root};
}

}  // namespace sumpwright::airflow
