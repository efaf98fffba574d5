#include "airflow/FanCurve.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "airflow/FanCurveCheck.h"
#include "base/Contract.h"

namespace sumpwright::airflow {

namespace {

using base::Flow;
using base::Pressure;

/// Cubic Hermite on [0, h]: value and slope at t h.
struct Piece {
  double h, y0, y1, m0, m1;

  double value(double t) const {
    const double t2 = t * t;
    const double t3 = t2 * t;
    return y0 * (2.0 * t3 - 3.0 * t2 + 1.0) + h * m0 * (t3 - 2.0 * t2 + t) +
           y1 * (3.0 * t2 - 2.0 * t3) + h * m1 * (t3 - t2);
  }
  double slope(double t) const {
    return (y1 - y0) / h * 6.0 * t * (1.0 - t) + m0 * (3.0 * t * t - 4.0 * t + 1.0) +
           m1 * (3.0 * t * t - 2.0 * t);
  }
};

std::optional<double> between(std::optional<double> a, std::optional<double> b, double t) {
  if (!a || !b) return std::nullopt;
  return *a + t * (*b - *a);
}

}  // namespace

std::vector<double> monotoneSlopes(const std::vector<double>& x, const std::vector<double>& y) {
  SUMPWRIGHT_REQUIRE(x.size() == y.size() && x.size() >= 2);
  const std::size_t pieces = x.size() - 1;
  std::vector<double> secant(pieces);
  for (std::size_t k = 0; k < pieces; ++k) secant[k] = (y[k + 1] - y[k]) / (x[k + 1] - x[k]);
  std::vector<double> slope(x.size());
  slope.front() = secant.front();
  slope.back() = secant.back();
  for (std::size_t k = 1; k < pieces; ++k) {
    const bool turns = secant[k - 1] * secant[k] <= 0.0;
    slope[k] = turns ? 0.0 : 0.5 * (secant[k - 1] + secant[k]);
  }
  for (std::size_t k = 0; k < pieces; ++k) {
    if (secant[k] == 0.0) {
      slope[k] = slope[k + 1] = 0.0;
      continue;
    }
    const double alpha = slope[k] / secant[k];
    const double beta = slope[k + 1] / secant[k];
    const double radius2 = alpha * alpha + beta * beta;
    if (radius2 <= 9.0) continue;
    const double tau = 3.0 / std::sqrt(radius2);
    slope[k] = tau * alpha * secant[k];
    slope[k + 1] = tau * beta * secant[k];
  }
  return slope;
}

base::Result<FanCurve> FanCurve::through(std::vector<CurvePoint> points, double density_kg_m3,
                                         const std::string& pointer) {
  base::Problems problems = curveProblems(points, pointer);
  checkDensity(density_kg_m3, pointer, problems);
  if (!problems.empty()) return problems;
  FanCurve curve;
  std::vector<double> x;
  std::vector<double> y;
  for (const CurvePoint& point : points) {
    x.push_back(point.flow.m3PerS());
    y.push_back(point.pressure.pa());
  }
  curve.m_slopes = monotoneSlopes(x, y);
  curve.m_points = std::move(points);
  curve.m_density = density_kg_m3;
  return curve;
}

base::Result<FanCurve> FanCurve::byLaw(const CurveLaw& law, double density_kg_m3,
                                       const std::string& pointer) {
  base::Problems problems = curveProblems(law, pointer);
  checkDensity(density_kg_m3, pointer, problems);
  if (!problems.empty()) return problems;
  FanCurve curve;
  curve.m_law = law;
  curve.m_density = density_kg_m3;
  return curve;
}

FanPoint FanCurve::onLaw(double flow_m3_s) const {
  const double p0 = m_law->shut_off.pa();
  const double share = std::abs(flow_m3_s) / m_law->free_flow.m3PerS();
  const double fall = p0 * std::pow(share, m_law->exponent);
  const double steep = p0 * m_law->exponent * std::pow(share, m_law->exponent - 1.0);
  FanPoint out;
  out.pressure = Pressure::ofPa(flow_m3_s < 0.0 ? p0 + fall : p0 - fall);
  out.slope_pa_s_m3 = -steep / m_law->free_flow.m3PerS();
  out.outside = flow_m3_s < 0.0 || share > 1.0;
  out.power_w = between(m_law->power_at_shut_off_w, m_law->power_at_free_flow_w,
                        flow_m3_s < 0.0 ? 0.0 : std::min(share, 1.0));
  return out;
}

FanPoint FanCurve::onPoints(double flow_m3_s) const {
  const auto beyond = [&](std::size_t end) {
    const double more = flow_m3_s - m_points[end].flow.m3PerS();
    return FanPoint{Pressure::ofPa(m_points[end].pressure.pa() + m_slopes[end] * more),
                    m_slopes[end], m_points[end].power_w, more != 0.0};
  };
  if (flow_m3_s <= m_points.front().flow.m3PerS()) return beyond(0);
  if (flow_m3_s >= m_points.back().flow.m3PerS()) return beyond(m_points.size() - 1);
  const auto next =
      std::upper_bound(m_points.begin(), m_points.end(), flow_m3_s,
                       [](double q, const CurvePoint& point) { return q < point.flow.m3PerS(); });
  const auto k = static_cast<std::size_t>(next - m_points.begin()) - 1;
  const CurvePoint& a = m_points[k];
  const CurvePoint& b = m_points[k + 1];
  const Piece piece{(b.flow - a.flow).m3PerS(), a.pressure.pa(), b.pressure.pa(), m_slopes[k],
                    m_slopes[k + 1]};
  const double t = (flow_m3_s - a.flow.m3PerS()) / piece.h;
  return {Pressure::ofPa(piece.value(t)), piece.slope(t), between(a.power_w, b.power_w, t), false};
}

FanPoint FanCurve::plain(double flow_m3_s) const {
  if (m_law) return onLaw(flow_m3_s);
  if (!m_points.empty()) return onPoints(flow_m3_s);
  return {Pressure(), 0.0, 0.0, false};
}

FanPoint FanCurve::at(Flow flow, double density_kg_m3, double speed) const {
  SUMPWRIGHT_REQUIRE(density_kg_m3 > 0.0 && speed > 0.0);
  FanPoint point = plain(flow.m3PerS() / speed);
  const double r = density_kg_m3 / m_density;
  point.pressure = r * speed * speed * point.pressure;
  point.slope_pa_s_m3 *= r * speed;
  if (point.power_w) *point.power_w *= r * speed * speed * speed;
  return point;
}

Flow FanCurve::lastFlow() const {
  if (m_law) return m_law->free_flow;
  return m_points.empty() ? Flow() : m_points.back().flow;
}

}  // namespace sumpwright::airflow
