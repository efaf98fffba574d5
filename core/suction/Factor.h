#pragma once
// The factorised operator of a network: A = L D L^T, kept as plain arrays, and its back-solves.
//
// Eigen's SimplicialLDLT with approximate minimum degree ordering factorises (Guennebaud, Jacob et
// al., Eigen 3.4; Amestoy, Davis and Duff 1996; from memory); it stays behind Factor.cpp. Solving
// is our own: a sump draws from a handful of cells, so the forward half visits only their paths in
// the elimination tree (Gilbert and Peierls 1988, from memory), and many sumps share one sweep of
// the backward half.

#include <cstdint>
#include <memory>
#include <span>
#include <utility>
#include <vector>

#include "suction/Network.h"

namespace sumpwright::suction {

/// Flow drawn from cells, m3/s.
using Draw = std::vector<std::pair<int, double>>;

class Factor {
 public:
  /// Suction in every cell, Pa. Contract: cells exist.
  std::vector<double> solve(const Draw& draw) const;
  /// As above for a draw from every cell, by cell.
  std::vector<double> solveFull(std::vector<double> flow) const;
  /// solve() of each; cheaper than one by one.
  std::vector<std::vector<double>> solveMany(std::span<const Draw> draws) const;

  int size() const { return static_cast<int>(m_pivots.size()); }
  std::size_t fill() const { return m_rows.size(); }  ///< entries of L below its diagonal
  std::size_t bytes() const;

 private:
  friend class Factoriser;
  std::vector<int> pathsFrom(const Draw& draw) const;
  void forward(const Draw& draw, double* x, std::size_t stride) const;

  std::vector<int> m_starts;  // of columns of L; rows of a column grow
  std::vector<int> m_rows;
  std::vector<double> m_values;
  std::vector<double> m_pivots;  // 1 / D
  std::vector<int> m_place;      // of a cell in L's order
};

/// Why a factor was not made.
enum class FactorState { made, empty, not_definite };

/// Factorises one network again and again: the pattern is analysed once. Not for several threads
/// at a time.
class Factoriser {
 public:
  explicit Factoriser(const Network& network);
  ~Factoriser();
  Factoriser(Factoriser&&) noexcept;
  Factoriser& operator=(Factoriser&&) noexcept;
  Factoriser(const Factoriser&) = delete;
  Factoriser& operator=(const Factoriser&) = delete;

  /// `factor` is whole only where `made` comes back. Contract: scales are positive.
  FactorState factor(const Network& network, const Scales& scales, Factor& factor);
  double analyse_ms() const;

 private:
  struct Inside;
  std::unique_ptr<Inside> m_inside;
};

/// Conductance of a link, of a joint, and leakage of a cell under scales, m3/(s Pa).
double conductanceOf(const Link& link, const Scales& scales);
double conductanceOf(const Joint& joint, const Scales& scales);
/// Share of a joint's flow that comes from outdoors; 0 where it is tight.
double outdoorShare(const Joint& joint, const Scales& scales);
double leakageOf(const Cell& cell, const Scales& scales);

/// A s by the network itself: flow drawn from each cell. The twin of the factor.
std::vector<double> applied(const Network& network, const Scales& scales,
                            const std::vector<double>& suction);

}  // namespace sumpwright::suction
