#pragma once
// What a fan does: static pressure against air flow, strictly falling, with the electric power.
//
// A curve is either a table of points or the law P = P0 (1 - (Q/Qmax)^m). Between points it is a
// piecewise cubic Hermite curve with the slopes of F. N. Fritsch and R. E. Carlson (Monotone
// piecewise cubic interpolation, SIAM J. Numerical Analysis 17, 1980; from memory): mean of the
// neighbouring secants, drawn back onto the circle alpha² + beta² = 9. It goes through the points,
// falls wherever they fall, never swings past them, and its slope is continuous. Beyond the points
// it goes on straight and says so (FanPoint::outside). Power is joined by straight lines and stays
// level beyond the points.
//
// Air and speed (the fan laws; textbook, from memory): with r = density / the curve's density and
// n = speed / the curve's speed,
//   P = r n² P_curve(Q/n),  W = r n³ W_curve(Q/n).

#include <cstddef>
#include <optional>
#include <vector>

#include "airflow/Air.h"
#include "base/Quantities.h"
#include "base/Result.h"

namespace sumpwright::airflow {

struct CurvePoint {
  base::Flow flow;
  base::Pressure pressure;
  std::optional<double> power_w;
  bool operator==(const CurvePoint&) const = default;
};

struct CurveLaw {
  base::Pressure shut_off;  ///< P0, at no flow
  base::Flow free_flow;     ///< Qmax, at no pressure
  double exponent = 2.0;    ///< m
  std::optional<double> power_at_shut_off_w;
  std::optional<double> power_at_free_flow_w;  ///< straight between the two
  bool operator==(const CurveLaw&) const = default;
};

inline constexpr std::size_t kFewestPoints = 3;  ///< own figure: two would be a straight line
inline constexpr std::size_t kMostPoints = 200;  ///< own figure

/// One place on the curve.
struct FanPoint {
  base::Pressure pressure;
  double slope_pa_s_m3 = 0.0;  ///< d pressure / d flow, below nothing (the law's: nothing at Q = 0)
  std::optional<double> power_w;  ///< electric; absent where the curve has none
  bool outside = false;           ///< beyond the points or between free flow and backwards
};

class FanCurve {
 public:
  /// A fan that stands still: no pressure at any flow, no power.
  FanCurve() = default;

  /// Problems (unreadable; pointers begin with `pointer`, rows are /points/N, keys those of a fan
  /// table): fans.points.few, fans.points.many, fans.number (not finite, below nothing or too
  /// large), fans.points.flow-order, fans.points.not-falling, fans.points.power-missing.
  static base::Result<FanCurve> through(std::vector<CurvePoint> points,
                                        double density_kg_m3 = kFanDensity_kg_m3,
                                        const std::string& pointer = "");

  /// Problems: fans.number at /law/KEY: a pressure or flow of nothing or below, an exponent outside
  /// 1 to 10, a power below nothing.
  static base::Result<FanCurve> byLaw(const CurveLaw& law, double density_kg_m3 = kFanDensity_kg_m3,
                                      const std::string& pointer = "");

  /// Strictly falling in `flow` (standing still: level). `density_kg_m3` and `speed` (1 = as the
  /// curve was drawn) above nothing.
  FanPoint at(base::Flow flow, double density_kg_m3, double speed = 1.0) const;

  /// The largest flow the curve was given for.
  base::Flow lastFlow() const;
  double density_kg_m3() const { return m_density; }

 private:
  FanPoint plain(double flow_m3_s) const;
  FanPoint onLaw(double flow_m3_s) const;
  FanPoint onPoints(double flow_m3_s) const;

  std::vector<CurvePoint> m_points;
  std::vector<double> m_slopes;  ///< at the points, Pa s/m³
  std::optional<CurveLaw> m_law;
  double m_density = kFanDensity_kg_m3;
};

/// The slopes of Fritsch and Carlson at x, for x rising and two points or more.
std::vector<double> monotoneSlopes(const std::vector<double>& x, const std::vector<double>& y);

}  // namespace sumpwright::airflow
