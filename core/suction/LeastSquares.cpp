#include "suction/LeastSquares.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

namespace sumpwright::suction {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double kFirstDamping = 1e-3;
constexpr double kMostDamping = 1e12;

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
    result.theta = std::move(start);
    Normal now;
    if (!normalAt(result.theta, now)) return result;
    double damping = kFirstDamping;
    bool settled = false;
    while (!settled && result.steps < m_options.most_steps && damping < kMostDamping) {
      ++result.steps;
      const VectorXd step = stepOf(now, damping);
      std::vector<double> next = result.theta;
      for (std::size_t k = 0; k < next.size(); ++k) next[k] += step[static_cast<Index>(k)];
      Normal there;
      if (!normalAt(next, there) || there.cost > now.cost * (1.0 + 1e-14)) {
        damping *= 10.0;
        settled = step.cwiseAbs().maxCoeff() < m_options.settled;
        continue;
      }
      settled = step.cwiseAbs().maxCoeff() < m_options.settled;
      result.theta = next;
      now = there;
      damping = std::max(1e-12, 0.1 * damping);
    }
    normalAt(result.theta, now);
    result.values = m_values;
    result.chi2 = now.chi2;
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
      const double off = (m_values[i] - m_data[i].value) / m_data[i].sd;
      VectorXd row(p);
      for (Index k = 0; k < p; ++k) {
        row[k] = m_derivatives[i * theta.size() + static_cast<std::size_t>(k)] / m_data[i].sd;
      }
      normal.matrix += row * row.transpose();
      normal.slope += off * row;
      normal.chi2 += off * off;
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

  VectorXd stepOf(const Normal& normal, double damping) const {
    MatrixXd damped = normal.matrix;
    for (Index k = 0; k < damped.rows(); ++k) {
      damped(k, k) += damping * std::max(normal.matrix(k, k), 1e-12);
    }
    VectorXd step = -damped.ldlt().solve(normal.slope);
    const double longest = step.cwiseAbs().maxCoeff();
    if (longest > m_options.longest_step) step *= m_options.longest_step / longest;
    return step;
  }

  const Forward& m_forward;
  const std::vector<Datum>& m_data;
  const LeastSquaresOptions& m_options;
  std::vector<double> m_values;
  std::vector<double> m_derivatives;
};

}  // namespace

LeastSquaresResult leastSquares(const Forward& forward, const std::vector<Datum>& data,
                                std::vector<double> start, const LeastSquaresOptions& options) {
  return Minimiser(forward, data, options).from(std::move(start));
}

}  // namespace sumpwright::suction
