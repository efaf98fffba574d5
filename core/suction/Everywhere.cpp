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
      : m_solver(solver), m_perimeter(perimeter), m_options(options) {
    SUMPWRIGHT_REQUIRE(options.others.empty() || options.together);
    for (auto& unit : solver.units(options.others)) {
      if (unit) m_others.push_back(std::move(*unit));
    }
    m_among_others = resistances(m_others);
    m_others_inertias = inertias(m_others, options.inertia);
  }

  const std::vector<UnitField>& others() const { return m_others; }

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
      if (units[k] && !isOnAnother(sinks[k])) {
        knots[k].solved = solvedPlace(knots[k], sinks[k], *units[k]);
      }
      m_knots.push_back(std::move(knots[k]));
    }
    std::sort(m_knots.begin(), m_knots.end(), [](const Knot& a, const Knot& b) {
      return std::pair(a.ring, a.chainage_m) < std::pair(b.ring, b.chainage_m);
    });
  }

  SolvedPlace solvedPlace(const Knot& knot, const Sink& sink, const UnitField& unit) const {
    SolvedPlace one{{knot.ring, knot.chainage_m}, knot.edge, sink, unit.resistance_pa_s_m3};
    one.unit.assign(unit.suction.begin(), unit.suction.end());
    takeFlows(unit, one);
    std::vector<double> suction = scaledBy(one.unit, one.flow_m3_s);
    for (std::size_t k = 0; k < m_others.size(); ++k) {
      for (std::size_t c = 0; c < suction.size(); ++c) {
        suction[c] += one.other_flows_m3_s[k] * m_others[k].suction[c];
      }
    }
    one.reach = reachOf(m_solver.network(), suction, m_options.target);
    return one;
  }

  void takeFlows(const UnitField& unit, SolvedPlace& one) const {
    const double inertia = m_options.inertia(unit.port.radius_m);
    if (m_others.empty()) {
      one.flow_m3_s = m_options.fan({one.resistance_pa_s_m3, inertia});
      return;
    }
    std::vector<double> all{inertia};
    all.insert(all.end(), m_others_inertias.begin(), m_others_inertias.end());
    one.other_flows_m3_s = m_options.together(resistances(unit, m_others, m_among_others), all);
    one.flow_m3_s = one.other_flows_m3_s.front();
    one.other_flows_m3_s.erase(one.other_flows_m3_s.begin());
  }

  /// No second pit is dug in the first.
  bool isOnAnother(const Sink& sink) const {
    return std::any_of(m_options.others.begin(), m_options.others.end(), [&](const Sink& other) {
      return geometry::distance(sink.at, other.at) < sink.radius_m + other.radius_m;
    });
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
  std::vector<UnitField> m_others;
  std::vector<double> m_among_others;  ///< their matrix
  std::vector<double> m_others_inertias;
  std::vector<Knot> m_knots;  ///< by ring and chainage
};

/// Reads between the solved places of one wall, asked with growing chainage.
class Between {
 public:
  Between(const std::vector<SolvedPlace>& solved, const EverywhereOptions& options)
      : m_solved(solved), m_options(options) {}

  /// False where nothing of the wall is solved.
  bool read(const perimeter::Edge& edge, double chainage_m, CurvePlace& into,
            std::vector<double>& other_flows) {
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
    other_flows.clear();
    for (std::size_t k = 0; k < low->other_flows_m3_s.size(); ++k) {
      other_flows.push_back(between(low->other_flows_m3_s[k], high->other_flows_m3_s[k], share));
    }
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

void readWeak(const Port& port, const std::vector<std::vector<double>>& seen,
              const std::vector<UnitField>& others, const std::vector<double>& other_flows,
              CurvePlace& one) {
  for (std::size_t w = 0; w < seen.size(); ++w) {
    one.at_weak_pa[w] = one.flow_m3_s * readAt(port, seen[w]);
    for (std::size_t k = 0; k < others.size(); ++k) {
      one.at_weak_pa[w] += other_flows[k] * readAt(others[k].port, seen[w]);
    }
  }
  const auto least = std::min_element(one.at_weak_pa.begin(), one.at_weak_pa.end());
  one.least_pa = least == one.at_weak_pa.end() ? 0.0 : *least;
}

}  // namespace

std::vector<double> scaledBy(const std::vector<float>& unit, double flow_m3_s) {
  std::vector<double> suction(unit.size());
  for (std::size_t c = 0; c < unit.size(); ++c) {
    suction[c] = flow_m3_s * static_cast<double>(unit[c]);
  }
  return suction;
}

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
  Walker walker(solver, perimeter, options);
  walker.walk(all);
  all.weak = weak.empty() ? weakPoints(solver.network(), all.solved, kWeakPoints) : std::move(weak);
  std::vector<Draw> draws;
  for (const Point p : all.weak) {
    const int cell = solver.network().cellNear(p);
    draws.push_back(cell >= 0 ? Draw{{cell, 1.0}} : Draw{});
  }
  const auto seen = solver.factor().solveMany(draws);
  Between solved(all.solved, options);
  std::vector<double> other_flows;
  for (int ring = 0; ring < perimeter.ringCount(); ++ring) {
    for (const perimeter::Edge& edge : perimeter.edges(ring)) {
      for (const double s : curveChainages(edge, options.step_m)) {
        CurvePlace one{{ring, s}};
        one.edge = edge.edge;
        one.at_weak_pa.assign(all.weak.size(), 0.0);
        const Sink sink = sinkAt(perimeter, one.place, options.radius_m);
        const auto port = portAt(solver.network(), sink.at, sink.radius_m);
        one.on_floor = port && solved.read(edge, s, one, other_flows);
        if (one.on_floor) readWeak(*port, seen, walker.others(), other_flows, one);
        all.curve.push_back(std::move(one));
      }
    }
  }
  return all;
}

}  // namespace sumpwright::suction
