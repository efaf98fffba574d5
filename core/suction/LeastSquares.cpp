#include "suction/LeastSquares.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace sumpwright::suction {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double kFirstDamping = 1e-3;
constexpr double kMostDamping = 1e12;

double largestChange(const std::vector<double>& a, const std::vector<double>& b) {
  double largest = 0.0;
  for (std::size_t k = 0; k < a.size(); ++k) largest = std::max(largest, std::abs(a[k] - b[k]));
  return largest;
}

struct Normal {
  MatrixXd matrix;
  VectorXd slope;
  double chi2 = 0.0;
  double cost = 0.0;
};

class Minimiser {
 public:
  Minimiser(const Forward& forward, const std::vector<Datum>& data,
            const LeastSquaresOptions& options)
      : m_forward(forward), m_data(data), m_options(options) {}

  LeastSquaresResult from(std::vector<double> start) {
    LeastSquaresResult result;
    result.theta = within(std::move(start));
    Normal now;
    if (!normalAt(result.theta, now)) return result;
    double damping = kFirstDamping;
    bool settled = false;
    while (!settled && result.steps < m_options.most_steps && damping < kMostDamping) {
      ++result.steps;
      const std::vector<double> next = within(stepped(result.theta, now, damping));
      const double step = largestChange(next, result.theta);
      Normal there;
      settled = step < m_options.settled;
      if (!normalAt(next, there) || there.cost > now.cost * (1.0 + 1e-14)) {
        damping *= 10.0;
        continue;
      }
      const double gain = now.cost - there.cost;
      settled = settled || (gain < m_options.no_gain * (1.0 + now.cost) && damping < 1.0);
      result.theta = next;
      now = there;
      damping = std::max(1e-12, 0.1 * damping);
    }
    normalAt(result.theta, now);
    result.values = m_values;
    result.chi2 = now.chi2;
    result.cost = now.cost;
    const MatrixXd covariance = now.matrix.completeOrthogonalDecomposition().pseudoInverse();
    result.covariance.assign(covariance.data(), covariance.data() + covariance.size());
    result.state = settled ? LeastSquaresState::settled : LeastSquaresState::not_settled;
    return result;
  }

 private:
  bool normalAt(const std::vector<double>& theta, Normal& normal) {
    if (!m_forward(theta, m_values, m_derivatives)) return false;
    const auto p = static_cast<Index>(theta.size());
    normal.matrix = MatrixXd::Zero(p, p);
    normal.slope = VectorXd::Zero(p);
    normal.chi2 = 0.0;
    for (std::size_t i = 0; i < m_data.size(); ++i) {
      const Residual off = residualOf(m_data[i], m_values[i]);
      VectorXd row(p);
      for (Index k = 0; k < p; ++k) {
        row[k] = off.slope * m_derivatives[i * theta.size() + static_cast<std::size_t>(k)];
      }
      normal.matrix += row * row.transpose();
      normal.slope += off.root * row;
      normal.chi2 += off.root * off.root;
    }
    normal.cost = normal.chi2;
    for (std::size_t k = 0; k < std::min(theta.size(), m_options.priors.size()); ++k) {
      const PriorOn& prior = m_options.priors[k];
      if (!(prior.sd > 0.0)) continue;
      const auto at = static_cast<Index>(k);
      const double off = (theta[k] - prior.mean) / prior.sd;
      normal.matrix(at, at) += 1.0 / (prior.sd * prior.sd);
      normal.slope[at] += off / prior.sd;
      normal.cost += off * off;
    }
    return std::isfinite(normal.cost);
  }

  std::vector<double> within(std::vector<double> theta) const {
    for (std::size_t k = 0; k < std::min(theta.size(), m_options.bounds.size()); ++k) {
      theta[k] = std::clamp(theta[k], m_options.bounds[k].low, m_options.bounds[k].high);
    }
    return theta;
  }

  /// Stands at a bound and would go on beyond it.
  bool isHeld(const std::vector<double>& theta, const Normal& normal, std::size_t k) const {
    if (k >= m_options.bounds.size()) return false;
    const double slope = normal.slope[static_cast<Index>(k)];
    return (theta[k] <= m_options.bounds[k].low && slope > 0.0) ||
           (theta[k] >= m_options.bounds[k].high && slope < 0.0);
  }

  std::vector<double> stepped(std::vector<double> theta, const Normal& normal,
                              double damping) const {
    MatrixXd damped = normal.matrix;
    VectorXd slope = normal.slope;
    for (Index k = 0; k < damped.rows(); ++k) {
      damped(k, k) += damping * std::max(normal.matrix(k, k), 1e-12);
      if (!isHeld(theta, normal, static_cast<std::size_t>(k))) continue;
      damped.row(k).setZero();
      damped.col(k).setZero();
      damped(k, k) = 1.0;
      slope[k] = 0.0;
    }
    VectorXd step = -damped.ldlt().solve(slope);
    const double longest = step.cwiseAbs().maxCoeff();
    if (longest > m_options.longest_step) step *= m_options.longest_step / longest;
    for (std::size_t k = 0; k < theta.size(); ++k) theta[k] += step[static_cast<Index>(k)];
    return theta;
  }

  const Forward& m_forward;
  const std::vector<Datum>& m_data;
  const LeastSquaresOptions& m_options;
  std::vector<double> m_values;
  std::vector<double> m_derivatives;
};

}  // namespace

Residual residualOf(const Datum& datum, double value) {
  if (!datum.below) return {(value - datum.value) / datum.sd, 1.0 / datum.sd};
  const double z = (datum.value - value) / datum.sd;
  constexpr double kTail = -8.0;  // beyond it the chance is taken by its asymptote
  const double density = std::exp(-0.5 * z * z) / std::sqrt(2.0 * std::numbers::pi);
  const double under = 0.5 * std::erfc(-z / std::numbers::sqrt2);
  const double over = 0.5 * std::erfc(z / std::numbers::sqrt2);
  const double square = z < kTail ? z * z + std::log(2.0 * std::numbers::pi * z * z)
                        : z > 0.0 ? -2.0 * std::log1p(-over)
                                  : -2.0 * std::log(under);
  const double by_z = z < kTail ? 2.0 * z + 2.0 / z : -2.0 * density / under;
  if (!(square > 1e-20)) return {};
  const double root = std::sqrt(square);
  return {root, -0.5 * by_z / root / datum.sd};
}

LeastSquaresResult leastSquares(const Forward& forward, const std::vector<Datum>& data,
                                std::vector<double> start, const LeastSquaresOptions& options) {
  return Minimiser(forward, data, options).from(std::move(start));
}

}  // namespace sumpwright::suction
