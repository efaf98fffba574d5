#include "suction/Factor.h"

#include <Eigen/SparseCholesky>
#include <algorithm>
#include <array>
#include <chrono>

#include "base/Contract.h"

namespace sumpwright::suction {

namespace {

using Matrix = Eigen::SparseMatrix<double>;
using Solver = Eigen::SimplicialLDLT<Matrix, Eigen::Lower, Eigen::AMDOrdering<int>>;

constexpr std::size_t kTogether = 8;  // draws in one sweep: a cache line of doubles

std::size_t entryAt(int k) { return static_cast<std::size_t>(k); }

/// Place of an entry on or below the diagonal among the values of a compressed matrix.
int entryOf(const Matrix& matrix, int row, int column) {
  const int* begin = matrix.innerIndexPtr() + matrix.outerIndexPtr()[column];
  const int* end = matrix.innerIndexPtr() + matrix.outerIndexPtr()[column + 1];
  return static_cast<int>(std::lower_bound(begin, end, row) - matrix.innerIndexPtr());
}

Matrix patternOf(const Network& network) {
  std::vector<Eigen::Triplet<double>> entries;
  entries.reserve(network.cells.size() + network.links.size());
  const int n = static_cast<int>(network.cells.size());
  for (int c = 0; c < n; ++c) entries.emplace_back(c, c, 1.0);
  for (const Link& link : network.links) {
    entries.emplace_back(std::max(link.a, link.b), std::min(link.a, link.b), 1.0);
  }
  Matrix matrix(n, n);
  matrix.setFromTriplets(entries.begin(), entries.end());
  return matrix;
}

}  // namespace

double conductanceOf(const Link& link, const Scales& scales) {
  const double fill = link.conduit ? link.fill : link.fill * scales.transmissivity;
  return inSeries(fill, link.wall * scales.barriers);
}

double conductanceOf(const Joint& joint, const Scales& scales) {
  return inSeries(joint.fill * scales.transmissivity,
                  joint.room * scales.edges + joint.outdoors * scales.outdoors);
}

double outdoorShare(const Joint& joint, const Scales& scales) {
  const double outdoors = joint.outdoors * scales.outdoors;
  const double both = joint.room * scales.edges + outdoors;
  return both > 0.0 ? outdoors / both : 0.0;
}

double leakageOf(const Cell& cell, const Scales& scales) {
  return cell.leak_ground_m3_s_pa * scales.leakage;
}

std::vector<double> applied(const Network& network, const Scales& scales,
                            const std::vector<double>& suction) {
  std::vector<double> flow(suction.size(), 0.0);
  for (std::size_t c = 0; c < flow.size(); ++c) {
    flow[c] = leakageOf(network.cells[c], scales) * suction[c];
  }
  for (const Link& link : network.links) {
    const double through =
        conductanceOf(link, scales) * (suction[entryAt(link.a)] - suction[entryAt(link.b)]);
    flow[entryAt(link.a)] += through;
    flow[entryAt(link.b)] -= through;
  }
  for (const Joint& joint : network.joints) {
    flow[entryAt(joint.cell)] += conductanceOf(joint, scales) * suction[entryAt(joint.cell)];
  }
  return flow;
}

/// Columns on the paths from the drawn cells to the root of the elimination tree, in order. The
/// parent of a column is the row of its first entry.
std::vector<int> Factor::pathsFrom(const Draw& draw) const {
  std::vector<int> columns;
  std::vector<bool> seen(m_pivots.size(), false);
  for (const auto& [cell, flow] : draw) {
    int column = m_place[entryAt(cell)];
    while (column >= 0 && !seen[entryAt(column)]) {
      seen[entryAt(column)] = true;
      columns.push_back(column);
      column = m_starts[entryAt(column)] < m_starts[entryAt(column) + 1]
                   ? m_rows[entryAt(m_starts[entryAt(column)])]
                   : -1;
    }
  }
  std::sort(columns.begin(), columns.end());
  return columns;
}

/// L D y = draw, into every stride-th of x, which is zero before.
void Factor::forward(const Draw& draw, double* x, std::size_t stride) const {
  for (const auto& [cell, flow] : draw) x[entryAt(m_place[entryAt(cell)]) * stride] += flow;
  for (const int column : pathsFrom(draw)) {
    double& value = x[entryAt(column) * stride];
    for (int k = m_starts[entryAt(column)]; k < m_starts[entryAt(column) + 1]; ++k) {
      x[entryAt(m_rows[entryAt(k)]) * stride] -= m_values[entryAt(k)] * value;
    }
    value *= m_pivots[entryAt(column)];
  }
}

std::vector<double> Factor::solve(const Draw& draw) const {
  const std::size_t n = m_pivots.size();
  std::vector<double> x(n, 0.0);
  forward(draw, x.data(), 1);
  for (std::size_t column = n; column-- > 0;) {
    double sum = x[column];
    for (int k = m_starts[column]; k < m_starts[column + 1]; ++k) {
      sum -= m_values[entryAt(k)] * x[entryAt(m_rows[entryAt(k)])];
    }
    x[column] = sum;
  }
  std::vector<double> suction(n);
  for (std::size_t c = 0; c < n; ++c) suction[c] = x[entryAt(m_place[c])];
  return suction;
}

std::vector<double> Factor::solveFull(std::vector<double> flow) const {
  SUMPWRIGHT_REQUIRE(flow.size() == m_pivots.size());
  Draw draw;
  for (std::size_t c = 0; c < flow.size(); ++c) draw.emplace_back(static_cast<int>(c), flow[c]);
  return solve(draw);
}

std::vector<std::vector<double>> Factor::solveMany(std::span<const Draw> draws) const {
  const std::size_t n = m_pivots.size();
  std::vector<std::vector<double>> suction;
  std::vector<double> x;
  for (std::size_t first = 0; first < draws.size(); first += kTogether) {
    const std::size_t count = std::min(kTogether, draws.size() - first);
    x.assign(n * kTogether, 0.0);
    for (std::size_t k = 0; k < count; ++k) forward(draws[first + k], x.data() + k, kTogether);
    for (std::size_t column = n; column-- > 0;) {
      std::array<double, kTogether> sums{};
      std::copy_n(&x[column * kTogether], kTogether, sums.begin());
      for (int k = m_starts[column]; k < m_starts[column + 1]; ++k) {
        const double value = m_values[entryAt(k)];
        const double* row = &x[entryAt(m_rows[entryAt(k)]) * kTogether];
        for (std::size_t d = 0; d < kTogether; ++d) sums[d] -= value * row[d];
      }
      std::copy_n(sums.begin(), kTogether, &x[column * kTogether]);
    }
    for (std::size_t d = 0; d < count; ++d) {
      std::vector<double>& out = suction.emplace_back(n);
      for (std::size_t c = 0; c < n; ++c) out[c] = x[entryAt(m_place[c]) * kTogether + d];
    }
  }
  return suction;
}

std::size_t Factor::bytes() const {
  return m_rows.size() * (sizeof(int) + sizeof(double)) +
         m_pivots.size() * (sizeof(double) + 2 * sizeof(int));
}

struct Factoriser::Inside {
  Matrix matrix;
  Solver solver;
  std::vector<int> diagonal;    // entry of each cell
  std::vector<int> link_entry;  // of each link
  double analyse_ms = 0.0;
};

Factoriser::Factoriser(const Network& network) : m_inside(std::make_unique<Inside>()) {
  const auto begun = std::chrono::steady_clock::now();
  Matrix& matrix = m_inside->matrix;
  matrix = patternOf(network);
  for (int c = 0; c < matrix.cols(); ++c) m_inside->diagonal.push_back(entryOf(matrix, c, c));
  for (const Link& link : network.links) {
    m_inside->link_entry.push_back(
        entryOf(matrix, std::max(link.a, link.b), std::min(link.a, link.b)));
  }
  if (matrix.cols() > 0) m_inside->solver.analyzePattern(matrix);
  m_inside->analyse_ms =
      std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begun).count();
}

Factoriser::~Factoriser() = default;
Factoriser::Factoriser(Factoriser&&) noexcept = default;
Factoriser& Factoriser::operator=(Factoriser&&) noexcept = default;

double Factoriser::analyse_ms() const { return m_inside->analyse_ms; }

FactorState Factoriser::factor(const Network& network, const Scales& scales, Factor& factor) {
  Matrix& matrix = m_inside->matrix;
  if (matrix.cols() == 0) return FactorState::empty;
  double* values = matrix.valuePtr();
  std::fill_n(values, matrix.nonZeros(), 0.0);
  const auto on_diagonal = [&](int cell) -> double& {
    return values[m_inside->diagonal[entryAt(cell)]];
  };
  for (std::size_t c = 0; c < network.cells.size(); ++c) {
    on_diagonal(static_cast<int>(c)) += leakageOf(network.cells[c], scales);
  }
  for (std::size_t k = 0; k < network.links.size(); ++k) {
    const Link& link = network.links[k];
    const double conductance = conductanceOf(link, scales);
    on_diagonal(link.a) += conductance;
    on_diagonal(link.b) += conductance;
    values[m_inside->link_entry[k]] -= conductance;
  }
  for (const Joint& joint : network.joints) {
    on_diagonal(joint.cell) += conductanceOf(joint, scales);
  }
  m_inside->solver.factorize(matrix);
  if (m_inside->solver.info() != Eigen::Success) return FactorState::not_definite;
  const auto& pivots = m_inside->solver.vectorD();
  // Floors that leak nowhere leave a pivot of rounding only.
  const double largest = pivots.maxCoeff();
  if (!(pivots.minCoeff() > 1e-14 * largest)) return FactorState::not_definite;
  const Matrix& lower = m_inside->solver.matrixL().nestedExpression();
  factor.m_starts.assign(lower.outerIndexPtr(), lower.outerIndexPtr() + lower.cols() + 1);
  factor.m_rows.assign(lower.innerIndexPtr(), lower.innerIndexPtr() + lower.nonZeros());
  factor.m_values.assign(lower.valuePtr(), lower.valuePtr() + lower.nonZeros());
  factor.m_pivots.resize(entryAt(static_cast<int>(pivots.size())));
  for (Eigen::Index k = 0; k < pivots.size(); ++k) {
    factor.m_pivots[static_cast<std::size_t>(k)] = 1.0 / pivots[k];
  }
  const auto& order = m_inside->solver.permutationP().indices();
  factor.m_place.assign(order.data(), order.data() + order.size());
  return FactorState::made;
}

}  // namespace sumpwright::suction
