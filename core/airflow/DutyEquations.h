#pragma once
// The equations of Duty.h as a vector function of the ground's flows, for the solver. The options
// have no problems.

#include <vector>

#include "airflow/Duty.h"

namespace sumpwright::airflow {

class DutyEquations {
 public:
  explicit DutyEquations(const DutyOptions& options);

  /// Everything that follows from the flows q (m³/s) out of the ground.
  struct State {
    std::vector<double> pit;  ///< s
    std::vector<LeakFlow> leak;
    std::vector<PipeLoss> leg;      ///< without closed legs' figures
    std::vector<double> total;      ///< t
    std::vector<double> line_flow;  ///< T
    std::vector<PipeLoss> line;
    std::vector<FanPoint> fan;
    std::vector<double> residual;  ///< Pa, by leg
  };
  State at(const std::vector<double>& q) const;

  /// The step dq of Newton's method: (d residual / d q) dq = -residual.
  std::vector<double> step(const std::vector<double>& q, const State& state) const;

  std::size_t size() const { return m_options.legs.size(); }
  bool closed(std::size_t leg) const;
  bool allClosed() const;

 private:
  double ground(std::size_t i, std::size_t j) const {
    return m_options.ground_pa_s_m3[i * size() + j];
  }

  const DutyOptions& m_options;
  double m_density = 0.0;
};

}  // namespace sumpwright::airflow
