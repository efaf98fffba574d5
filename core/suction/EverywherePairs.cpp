// The best place, and the best two, of those that were solved.

#include <algorithm>
#include <limits>
#include <utility>

#include "suction/Everywhere.h"

namespace sumpwright::suction {

namespace {

/// Two fields at once on our own floor; what a pair reaches is counted without a full Reach.
class PairCounter {
 public:
  PairCounter(const Network& network, const Target& target) : m_target(target) {
    for (std::size_t c = 0; c < network.cells.size(); ++c) {
      if (network.cells[c].own_m2 > 0.0) m_cells.emplace_back(c, network.cells[c].own_m2);
    }
  }
  /// Area at or beyond the design suction, and the least suction.
  std::pair<double, double> count(const std::vector<float>& a, double flow_a,
                                  const std::vector<float>& b, double flow_b) const {
    const auto fa = static_cast<float>(flow_a);
    const auto fb = static_cast<float>(flow_b);
    double area = 0.0;
    float least = std::numeric_limits<float>::infinity();
    for (const auto& [cell, own] : m_cells) {
      const float s = fa * a[cell] + fb * b[cell];
      if (static_cast<double>(s) >= m_target.design_pa) area += own;
      least = std::min(least, s);
    }
    return {area, static_cast<double>(least)};
  }

 private:
  Target m_target;
  std::vector<std::pair<std::size_t, double>> m_cells;
};

double readFrom(const Network& network, const SolvedPlace& field, const SolvedPlace& reader) {
  const auto port = portAt(network, reader.sink.at, reader.sink.radius_m);
  double sum = 0.0;
  for (const auto& [cell, weight] : port->weights) {
    sum += weight * static_cast<double>(field.unit[static_cast<std::size_t>(cell)]);
  }
  return sum;
}

}  // namespace

std::optional<SolvedPlace> bestSingle(const Everywhere& everywhere, const Allowed& allowed) {
  const SolvedPlace* best = nullptr;
  for (const SolvedPlace& one : everywhere.solved) {
    if (!allowed(one.place)) continue;
    const auto rank = [](const SolvedPlace& p) {
      return std::pair{p.reach.floor, p.reach.least.suction_pa};
    };
    if (best == nullptr || rank(one) > rank(*best)) best = &one;
  }
  return best == nullptr ? std::nullopt : std::optional(*best);
}

std::optional<Pair> bestPair(const FieldSolver& solver, const Everywhere& everywhere,
                             const EverywhereOptions& options, const Allowed& allowed,
                             const std::optional<Sink>& first) {
  const Network& network = solver.network();
  std::vector<SolvedPlace> firsts;
  if (first) {
    const auto unit = solver.unit(*first);
    if (!unit) return std::nullopt;
    SolvedPlace one{{}, -1, *first, unit->resistance_pa_s_m3};
    one.unit.assign(unit->suction.begin(), unit->suction.end());
    firsts.push_back(std::move(one));
  }
  std::vector<const SolvedPlace*> places;
  for (const SolvedPlace& one : everywhere.solved) {
    if (allowed(one.place)) places.push_back(&one);
  }
  const PairCounter counter(network, options.target);
  std::optional<Pair> best;
  std::pair<double, double> rank{-1.0, 0.0};
  const auto consider = [&](const SolvedPlace& a, const SolvedPlace& b) {
    if (geometry::distance(a.sink.at, b.sink.at) < a.sink.radius_m + b.sink.radius_m) return;
    const double mutual = readFrom(network, a, b);
    const std::vector<double> matrix{a.resistance_pa_s_m3, mutual, mutual, b.resistance_pa_s_m3};
    const std::vector<double> pits{options.inertia(a.sink.radius_m),
                                   options.inertia(b.sink.radius_m)};
    const auto flows = options.together ? options.together(matrix, pits)
                                        : flowsTogether(matrix, pits, options.fan);
    const auto counted = counter.count(a.unit, flows[0], b.unit, flows[1]);
    if (counted <= rank) return;
    rank = counted;
    best = Pair{a, b, flows[0], flows[1], matrix, {}};
  };
  for (std::size_t l = 0; l < places.size(); ++l) {
    if (first) {
      consider(firsts[0], *places[l]);
      continue;
    }
    for (std::size_t k = 0; k < l; ++k) consider(*places[k], *places[l]);
  }
  if (!best) return std::nullopt;
  std::vector<double> both = scaledBy(best->first.unit, best->flow_first_m3_s);
  const auto second = scaledBy(best->second.unit, best->flow_second_m3_s);
  for (std::size_t c = 0; c < both.size(); ++c) both[c] += second[c];
  best->reach = reachOf(network, both, options.target);
  return best;
}

}  // namespace sumpwright::suction
