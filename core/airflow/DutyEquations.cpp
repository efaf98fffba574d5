#include "airflow/DutyEquations.h"

#include <Eigen/Core>
#include <Eigen/LU>
#include <cmath>

namespace sumpwright::airflow {

namespace {

using base::Flow;
using base::Pressure;
using Rows = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

Eigen::Index row(std::size_t i) { return static_cast<Eigen::Index>(i); }

}  // namespace

DutyEquations::DutyEquations(const DutyOptions& options)
    : m_options(options), m_density(density_kg_m3(options.air)) {}

bool DutyEquations::closed(std::size_t leg) const {
  return m_options.legs[leg].valve == ValvePosition::closed;
}

bool DutyEquations::allClosed() const {
  for (std::size_t i = 0; i < size(); ++i) {
    if (!closed(i)) return false;
  }
  return true;
}

DutyEquations::State DutyEquations::at(const std::vector<double>& q) const {
  const auto& legs = m_options.legs;
  const auto& lines = m_options.lines;
  State out;
  out.pit.resize(size());
  out.total = q;
  out.line_flow.resize(lines.size());
  for (std::size_t i = 0; i < size(); ++i) {
    const Leg& leg = legs[i];
    double pit = leg.background.pa() + leg.inertia_pa_s2_m6 * q[i] * std::abs(q[i]);
    for (std::size_t j = 0; j < size(); ++j) pit += ground(i, j) * q[j];
    out.pit[i] = pit;
    out.leak.push_back(leakFlow(leg.annulus, Pressure::ofPa(pit) - m_options.house, m_options.air));
    out.total[i] += out.leak.back().flow.m3PerS();
    if (closed(i)) {
      out.leg.emplace_back();
      continue;
    }
    out.leg.push_back(
        pipeLoss(leg.pipe, Flow::ofM3PerS(out.total[i]), m_options.air, valveK(leg.valve)));
    out.line_flow[leg.line] += out.total[i];
  }
  for (std::size_t f = 0; f < lines.size(); ++f) {
    const Flow flow = Flow::ofM3PerS(out.line_flow[f]);
    out.line.push_back(pipeLoss(lines[f].pipe, flow, m_options.air));
    out.fan.push_back(lines[f].curve.at(flow, m_density, lines[f].speed));
  }
  out.residual.resize(size());
  for (std::size_t i = 0; i < size(); ++i) {
    const std::size_t f = legs[i].line;
    // A closed leg passes nothing: what leaks into its pit goes into the ground. In Pa by R_ii.
    out.residual[i] =
        closed(i)
            ? ground(i, i) * out.total[i]
            : out.pit[i] +
                  (out.leg[i].loss + out.line[f].loss - out.fan[f].pressure - m_options.house).pa();
  }
  return out;
}

std::vector<double> DutyEquations::step(const std::vector<double>& q, const State& state) const {
  const Eigen::Index n = row(size());
  // A = ds/dq, then dt/dq = I + L A.
  Eigen::MatrixXd pit = Eigen::Map<const Rows>(m_options.ground_pa_s_m3.data(), n, n);
  Eigen::MatrixXd total = Eigen::MatrixXd::Identity(n, n);
  Eigen::MatrixXd line = Eigen::MatrixXd::Zero(row(m_options.lines.size()), n);  // dT/dq
  for (std::size_t i = 0; i < size(); ++i) {
    pit(row(i), row(i)) += 2.0 * m_options.legs[i].inertia_pa_s2_m6 * std::abs(q[i]);
    total.row(row(i)) += state.leak[i].slope_m3_s_pa * pit.row(row(i));
    if (!closed(i)) line.row(row(m_options.legs[i].line)) += total.row(row(i));
  }
  Eigen::MatrixXd slope(n, n);
  for (std::size_t i = 0; i < size(); ++i) {
    if (closed(i)) {
      slope.row(row(i)) = ground(i, i) * total.row(row(i));
      continue;
    }
    const std::size_t f = m_options.legs[i].line;
    slope.row(row(i)) =
        pit.row(row(i)) + state.leg[i].slope_pa_s_m3 * total.row(row(i)) +
        (state.line[f].slope_pa_s_m3 - state.fan[f].slope_pa_s_m3) * line.row(row(f));
  }
  std::vector<double> out(size());
  Eigen::Map<Eigen::VectorXd>(out.data(), n) =
      slope.partialPivLu().solve(-Eigen::Map<const Eigen::VectorXd>(state.residual.data(), n));
  return out;
}

}  // namespace sumpwright::airflow
