#pragma once
// Weighted least squares with a prior, by Levenberg and Marquardt's damping (Levenberg 1944,
// Marquardt 1963; from memory). For a handful of parameters, all logarithms of what they stand for.
//
//   minimise sum_i ((v_i(theta) - d_i) / sd_i)^2 + sum_k ((theta_k - m_k) / p_k)^2

#include <functional>
#include <vector>

namespace sumpwright::suction {

struct Datum {
  double value = 0.0;
  double sd = 1.0;
};

/// v(theta) and its derivatives, row by row (datum, parameter); false where theta has no answer.
using Forward = std::function<bool(const std::vector<double>& theta, std::vector<double>& values,
                                   std::vector<double>& derivatives)>;

struct PriorOn {
  double mean = 0.0;
  double sd = 0.0;  ///< 0: none on this parameter
};

struct LeastSquaresOptions {
  std::vector<PriorOn> priors;  ///< by parameter; missing ones: none
  int most_steps = 60;
  double settled = 1e-10;     ///< largest change of a parameter that counts as none
  double longest_step = 1.5;  ///< of a parameter, per step (a factor of 4.5)
};

enum class LeastSquaresState { settled, not_settled, no_answer };

struct LeastSquaresResult {
  LeastSquaresState state = LeastSquaresState::no_answer;
  std::vector<double> theta;
  std::vector<double> values;
  std::vector<double> covariance;  ///< (J^T W J + P)^-1, row by row
  double chi2 = 0.0;               ///< of the data alone
  int steps = 0;
};

LeastSquaresResult leastSquares(const Forward& forward, const std::vector<Datum>& data,
                                std::vector<double> start, const LeastSquaresOptions& options);

}  // namespace sumpwright::suction
