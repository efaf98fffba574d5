#include "suction/Everywhere.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

#include "base/Contract.h"

namespace sumpwright::suction {

namespace {

using perimeter::Perimeter;

constexpr int kWeakPoints = 4;
/// Where the pit comes to a corner, solved places stand this far from it (own figures).
constexpr std::array<double, 5> kNearCorners_m{0.1, 0.25, 0.4, 0.6, 0.8};

/// A hair inside a wall: its very end belongs to the next.
constexpr double kHair_m = 1e-6;
/// Times the tolerance: a step of the share of floor that is looked into, whatever the slopes
/// beside it say; and where it cannot be, a jump (own figure).
constexpr double kStepTolerances = 4.0;

std::vector<double> scaledBy(const std::vector<float>& unit, double flow) {
  std::vector<double> suction(unit.size());
  for (std::size_t c = 0; c < unit.size(); ++c) suction[c] = flow * static_cast<double>(unit[c]);
  return suction;
}

/// Along one wall: every step, and nearer to its corners, where the pit meets the next wall.
std::vector<double> solveOffsets(double length_m, double step_m) {
  std::vector<double> offsets;
  const int count = std::max(1, static_cast<int>(std::ceil(length_m / step_m)));
  for (int k = 0; k < count; ++k) offsets.push_back(length_m * (k + 0.5) / count);
  for (const double near : kNearCorners_m) {
    if (near >= 0.5 * length_m) break;
    offsets.push_back(near);
    offsets.push_back(length_m - near);
  }
  std::sort(offsets.begin(), offsets.end());
  return offsets;
}

/// A place that was tried; without `solved` there is no floor behind it.
struct Knot {
  int ring = 0;
  int edge = 0;
  double chainage_m = 0.0;
  std::optional<SolvedPlace> solved;
};

bool areNeighbours(const Knot& a, const Knot& b) { return a.ring == b.ring && a.edge == b.edge; }

/// Two neighbours as a step: its length and how the share of floor changes along it.
struct Step {
  double length_m = 0.0;
  double rise = 0.0;
  double slope() const { return rise / length_m; }
};

class Walker {
 public:
  Walker(const FieldSolver& solver, const Perimeter& perimeter, const EverywhereOptions& options)
      : m_solver(solver), m_perimeter(perimeter), m_options(options) {}

  void walk(Everywhere& all) {
    solve(firstKnots());
    while (m_options.tolerance && static_cast<int>(m_knots.size()) < m_options.most_solved) {
      auto between = middles();
      if (between.empty()) break;
      solve(std::move(between));
    }
    rate(all);
    for (Knot& knot : m_knots) {
      if (knot.solved) all.solved.push_back(std::move(*knot.solved));
    }
  }

 private:
  std::vector<Knot> firstKnots() const {
    std::vector<Knot> knots;
    for (int ring = 0; ring < m_perimeter.ringCount(); ++ring) {
      for (const perimeter::Edge& edge : m_perimeter.edges(ring)) {
        for (const double offset : solveOffsets(edge.length_m, m_options.solve_step_m)) {
          knots.push_back({ring, edge.edge, edge.start_m + offset, std::nullopt});
        }
      }
    }
    return knots;
  }

  void solve(std::vector<Knot> knots) {
    std::vector<Sink> sinks;
    for (const Knot& knot : knots) {
      sinks.push_back(sinkAt(m_perimeter, {knot.ring, knot.chainage_m}, m_options.radius_m));
    }
    const auto units = m_solver.units(sinks);
    for (std::size_t k = 0; k < knots.size(); ++k) {
      if (units[k]) knots[k].solved = solvedPlace(knots[k], sinks[k], *units[k]);
      m_knots.push_back(std::move(knots[k]));
    }
    std::sort(m_knots.begin(), m_knots.end(), [](const Knot& a, const Knot& b) {
      return std::pair(a.ring, a.chainage_m) < std::pair(b.ring, b.chainage_m);
    });
  }

  SolvedPlace solvedPlace(const Knot& knot, const Sink& sink, const UnitField& unit) const {
    SolvedPlace one{{knot.ring, knot.chainage_m}, knot.edge, sink, unit.resistance_pa_s_m3};
    one.flow_m3_s = m_options.fan({one.resistance_pa_s_m3, m_options.inertia_pa_s2_m6});
    one.unit.assign(unit.suction.begin(), unit.suction.end());
    one.reach = reachOf(m_solver.network(), scaledBy(one.unit, one.flow_m3_s), m_options.target);
    return one;
  }

  /// From knot k to the next of the wall; nothing where either has no floor behind it.
  std::optional<Step> stepFrom(std::size_t k) const {
    if (k + 1 >= m_knots.size() || !areNeighbours(m_knots[k], m_knots[k + 1])) return std::nullopt;
    const Knot& a = m_knots[k];
    const Knot& b = m_knots[k + 1];
    if (!a.solved || !b.solved) return std::nullopt;
    return Step{b.chainage_m - a.chainage_m, b.solved->reach.floor - a.solved->reach.floor};
  }

  /// Miss of the straight line over a step: its square times the bend over eight, the bend taken
  /// from the slopes of the steps beside it. Nothing beside it: as if it bent within the step.
  double missOver(std::size_t k, const Step& step) const {
    std::optional<double> bend;
    const auto beside = [&](std::size_t other) {
      const auto there = stepFrom(other);
      if (!there || isJump(other, *there)) return;
      const double here =
          std::abs(there->slope() - step.slope()) / (0.5 * (there->length_m + step.length_m));
      bend = std::max(bend.value_or(0.0), here);
    };
    if (k > 0) beside(k - 1);
    beside(k + 1);
    if (!bend) return 0.25 * std::abs(step.rise);
    return *bend * step.length_m * step.length_m / 8.0;
  }

  bool isShort(std::size_t k) const {
    return m_knots[k + 1].chainage_m - m_knots[k].chainage_m <= m_options.least_step_m;
  }

  bool isSteep(const Step& step) const {
    return std::abs(step.rise) > kStepTolerances * m_options.tolerance.value_or(1.0);
  }

  bool isJump(std::size_t k, const Step& step) const { return isShort(k) && isSteep(step); }

  bool needsMiddle(std::size_t k) const {
    if (!areNeighbours(m_knots[k], m_knots[k + 1]) || isShort(k)) return false;
    if (m_knots[k].solved.has_value() != m_knots[k + 1].solved.has_value()) return true;
    const auto step = stepFrom(k);
    return step && (isSteep(*step) || missOver(k, *step) > *m_options.tolerance);
  }

  std::vector<Knot> middles() const {
    std::vector<Knot> knots;
    for (std::size_t k = 0; k + 1 < m_knots.size(); ++k) {
      if (!needsMiddle(k)) continue;
      const double middle = 0.5 * (m_knots[k].chainage_m + m_knots[k + 1].chainage_m);
      knots.push_back({m_knots[k].ring, m_knots[k].edge, middle, std::nullopt});
    }
    return knots;
  }

  void rate(Everywhere& all) const {
    for (std::size_t k = 0; k + 1 < m_knots.size(); ++k) {
      const auto step = stepFrom(k);
      if (!step) continue;
      if (isJump(k, *step)) {
        ++all.jumps;
      } else {
        all.miss = std::max(all.miss, missOver(k, *step));
      }
    }
  }

  const FieldSolver& m_solver;
  const Perimeter& m_perimeter;
  const EverywhereOptions& m_options;
  std::vector<Knot> m_knots;  ///< by ring and chainage
};

/// Reads between the solved places of one wall, asked with growing chainage.
class Between {
 public:
  Between(const std::vector<SolvedPlace>& solved, const EverywhereOptions& options)
      : m_solved(solved), m_options(options) {}

  /// False where nothing of the wall is solved.
  bool read(const perimeter::Edge& edge, double chainage_m, CurvePlace& into) {
    while (m_next < m_solved.size() && isBefore(m_solved[m_next], edge, chainage_m)) ++m_next;
    const SolvedPlace* low = m_next > 0 ? on(edge, m_next - 1) : nullptr;
    const SolvedPlace* high = on(edge, m_next);
    if (low == nullptr) low = high;
    if (high == nullptr) high = low;
    if (low == nullptr) return false;
    const double apart = high->place.chainage_m - low->place.chainage_m;
    const double share = apart > 0.0 ? (chainage_m - low->place.chainage_m) / apart : 0.0;
    into.resistance_pa_s_m3 = between(low->resistance_pa_s_m3, high->resistance_pa_s_m3, share);
    into.flow_m3_s = between(low->flow_m3_s, high->flow_m3_s, share);
    const double rise = high->reach.floor - low->reach.floor;
    const bool jump = m_options.tolerance && apart <= m_options.least_step_m &&
                      std::abs(rise) > kStepTolerances * *m_options.tolerance;
    into.floor =
        jump ? std::min(low->reach.floor, high->reach.floor) : low->reach.floor + share * rise;
    return true;
  }

 private:
  static double between(double low, double high, double share) {
    if (!(low > 0.0 && high > 0.0)) return low + share * (high - low);
    return low * std::pow(high / low, share);
  }
  static bool isBefore(const SolvedPlace& one, const perimeter::Edge& edge, double chainage_m) {
    return std::pair(one.place.ring, one.place.chainage_m) <= std::pair(edge.ring, chainage_m);
  }
  const SolvedPlace* on(const perimeter::Edge& edge, std::size_t k) const {
    if (k >= m_solved.size()) return nullptr;
    const bool same = m_solved[k].place.ring == edge.ring && m_solved[k].edge == edge.edge;
    return same ? &m_solved[k] : nullptr;
  }

  const std::vector<SolvedPlace>& m_solved;
  const EverywhereOptions& m_options;
  std::size_t m_next = 0;
};

std::vector<double> curveChainages(const perimeter::Edge& edge, double step_m) {
  const int count = std::max(1, static_cast<int>(std::ceil(edge.length_m / step_m)));
  std::vector<double> chainages;
  for (int k = 0; k <= count; ++k) {
    const double offset = std::clamp(edge.length_m * k / count, kHair_m, edge.length_m - kHair_m);
    chainages.push_back(edge.start_m + offset);
  }
  return chainages;
}

double extentOf(const Network& network) {
  double low_x = std::numeric_limits<double>::infinity();
  double low_y = low_x;
  double high_x = -low_x;
  double high_y = -low_x;
  for (std::size_t c = 0; c < network.cells.size(); ++c) {
    if (!(network.cells[c].own_m2 > 0.0)) continue;
    const Point p = network.centre(static_cast<int>(c));
    low_x = std::min(low_x, p.x);
    high_x = std::max(high_x, p.x);
    low_y = std::min(low_y, p.y);
    high_y = std::max(high_y, p.y);
  }
  return std::max({0.0, high_x - low_x, high_y - low_y});
}

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

void readWeak(const Port& port, const std::vector<std::vector<double>>& seen, CurvePlace& one) {
  for (std::size_t w = 0; w < seen.size(); ++w) {
    one.at_weak_pa[w] = one.flow_m3_s * readAt(port, seen[w]);
  }
  const auto least = std::min_element(one.at_weak_pa.begin(), one.at_weak_pa.end());
  one.least_pa = least == one.at_weak_pa.end() ? 0.0 : *least;
}

double readFrom(const Network& network, const SolvedPlace& field, const SolvedPlace& reader) {
  const auto port = portAt(network, reader.sink.at, reader.sink.radius_m);
  double sum = 0.0;
  for (const auto& [cell, weight] : port->weights) {
    sum += weight * static_cast<double>(field.unit[static_cast<std::size_t>(cell)]);
  }
  return sum;
}

}  // namespace

std::vector<Point> weakPoints(const Network& network, const std::vector<SolvedPlace>& solved,
                              int count) {
  std::vector<std::pair<float, std::size_t>> order;
  for (std::size_t c = 0; c < network.cells.size(); ++c) {
    if (!(network.cells[c].own_m2 > 0.0) || solved.empty()) continue;
    float best = 0.0F;
    for (const SolvedPlace& one : solved) best = std::max(best, one.unit[c]);
    order.emplace_back(best, c);
  }
  std::sort(order.begin(), order.end());
  const double apart = extentOf(network) / 3.0;
  std::vector<Point> points;
  for (const auto& [suction, cell] : order) {
    if (static_cast<int>(points.size()) >= count) break;
    const Point p = network.centre(static_cast<int>(cell));
    const bool close = std::any_of(points.begin(), points.end(),
                                   [&](Point q) { return geometry::distance(p, q) < apart; });
    if (!close) points.push_back(p);
  }
  return points;
}

Everywhere everywhereOf(const FieldSolver& solver, const Perimeter& perimeter,
                        const EverywhereOptions& options, std::vector<Point> weak) {
  SUMPWRIGHT_REQUIRE(solver.ok() && options.step_m > 0.0 && options.solve_step_m > 0.0);
  Everywhere all;
  Walker(solver, perimeter, options).walk(all);
  all.weak = weak.empty() ? weakPoints(solver.network(), all.solved, kWeakPoints) : std::move(weak);
  std::vector<Draw> draws;
  for (const Point p : all.weak) {
    const int cell = solver.network().cellNear(p);
    draws.push_back(cell >= 0 ? Draw{{cell, 1.0}} : Draw{});
  }
  const auto seen = solver.factor().solveMany(draws);
  Between solved(all.solved, options);
  for (int ring = 0; ring < perimeter.ringCount(); ++ring) {
    for (const perimeter::Edge& edge : perimeter.edges(ring)) {
      for (const double s : curveChainages(edge, options.step_m)) {
        CurvePlace one{{ring, s}};
        one.edge = edge.edge;
        one.at_weak_pa.assign(all.weak.size(), 0.0);
        const Sink sink = sinkAt(perimeter, one.place, options.radius_m);
        const auto port = portAt(solver.network(), sink.at, sink.radius_m);
        one.on_floor = port && solved.read(edge, s, one);
        if (one.on_floor) readWeak(*port, seen, one);
        all.curve.push_back(std::move(one));
      }
    }
  }
  return all;
}

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
    const auto flows = flowsTogether(matrix, options.inertia_pa_s2_m6, options.fan);
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
