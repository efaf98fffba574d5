#pragma once
// Weighted least squares with a prior, by Levenberg and Marquardt's damping (Levenberg 1944,
// Marquardt 1963; from memory). For a handful of parameters, all logarithms of what they stand for.
//
//   minimise sum_i ((v_i(theta) - d_i) / sd_i)^2 + sum_k ((theta_k - m_k) / p_k)^2
//
// A datum of which only a limit is known takes -2 ln Phi((d_i - v_i) / sd_i) instead: the chance
// that a gauge with that error shows no more than d_i (censored normal, Tobin 1958; from memory).

#include <functional>
#include <limits>
#include <vector>

namespace sumpwright::suction {

struct Datum {
  double value = 0.0;
  double sd = 1.0;
  bool below = false;  ///< the value is a limit: what was measured lies under it
};

/// What a datum adds as a square: its root, and d root / d value.
struct Residual {
  double root = 0.0;
  double slope = 0.0;
};
Residual residualOf(const Datum& datum, double value);

/// v(theta) and its derivatives, row by row (datum, parameter); false where theta has no answer.
using Forward = std::function<bool(const std::vector<double>& theta, std::vector<double>& values,
                                   std::vector<double>& derivatives)>;

struct PriorOn {
  double mean = 0.0;
  double sd = 0.0;  ///< 0: none on this parameter
};

/// What a parameter may be.
struct Bounds {
  double low = -std::numeric_limits<double>::infinity();
  double high = std::numeric_limits<double>::infinity();
};

struct LeastSquaresOptions {
  std::vector<PriorOn> priors;  ///< by parameter; missing ones: none
  std::vector<Bounds> bounds;   ///< by parameter; missing ones: none
  int most_steps = 60;
  double settled = 1e-10;     ///< largest change of a parameter that counts as none
  double no_gain = 1e-14;     ///< share of the cost that a step must take off it
  double longest_step = 1.5;  ///< of a parameter, per step (a factor of 4.5)
};

enum class LeastSquaresState { settled, not_settled, no_answer };

struct LeastSquaresResult {
  LeastSquaresState state = LeastSquaresState::no_answer;
  std::vector<double> theta;
  std::vector<double> values;
  std::vector<double> covariance;  ///< (J^T W J + P)^-1, row by row
  double chi2 = 0.0;               ///< of the data alone
  double cost = 0.0;               ///< with what the priors add
  int steps = 0;
};

LeastSquaresResult leastSquares(const Forward& forward, const std::vector<Datum>& data,
                                std::vector<double> start, const LeastSquaresOptions& options);

}  // namespace sumpwright::suction
