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
using perimeter::Place;

constexpr int kWeakPoints = 4;
/// Where the pit comes to a corner, solved places stand this far from it (own figures).
constexpr std::array<double, 5> kNearCorners_m{0.1, 0.25, 0.4, 0.6, 0.8};

std::vector<Place> placesEvery(const Perimeter& perimeter, double step_m) {
  std::vector<Place> places;
  for (int ring = 0; ring < perimeter.ringCount(); ++ring) {
    const double length = perimeter.length_m(ring);
    const int count = std::max(1, static_cast<int>(std::ceil(length / step_m)));
    for (int k = 0; k < count; ++k) places.push_back({ring, length * k / count});
  }
  return places;
}

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

std::vector<SolvedPlace> solvePlaces(const FieldSolver& solver, const Perimeter& perimeter,
                                     const EverywhereOptions& options) {
  std::vector<SolvedPlace> places;
  std::vector<Sink> sinks;
  for (int ring = 0; ring < perimeter.ringCount(); ++ring) {
    for (const perimeter::Edge& edge : perimeter.edges(ring)) {
      for (const double offset : solveOffsets(edge.length_m, options.solve_step_m)) {
        const Place place{ring, edge.start_m + offset};
        sinks.push_back(sinkAt(perimeter, place, options.radius_m));
        places.push_back({place, edge.edge, sinks.back()});
      }
    }
  }
  const auto units = solver.units(sinks);
  std::vector<SolvedPlace> solved;
  for (std::size_t k = 0; k < places.size(); ++k) {
    if (!units[k]) continue;
    SolvedPlace one = std::move(places[k]);
    one.resistance_pa_s_m3 = units[k]->resistance_pa_s_m3;
    one.flow_m3_s = options.fan({one.resistance_pa_s_m3, options.inertia_pa_s2_m6});
    one.unit.assign(units[k]->suction.begin(), units[k]->suction.end());
    one.reach = reachOf(solver.network(), scaledBy(one.unit, one.flow_m3_s), options.target);
    solved.push_back(std::move(one));
  }
  return solved;
}

/// What is read between the solved places before and after on the same wall, or from the nearer one
/// beyond the last.
struct Read {
  double resistance = 0.0;
  double floor = 0.0;
};

std::optional<Read> readBetween(const std::vector<SolvedPlace>& solved, Place place, int edge) {
  const SolvedPlace* low = nullptr;
  const SolvedPlace* high = nullptr;
  for (const SolvedPlace& one : solved) {  // along each wall in order
    if (one.place.ring != place.ring || one.edge != edge) continue;
    if (one.place.chainage_m <= place.chainage_m) low = &one;
    if (one.place.chainage_m > place.chainage_m && high == nullptr) high = &one;
  }
  if (low == nullptr) low = high;
  if (high == nullptr) high = low;
  if (low == nullptr) return std::nullopt;
  const double apart = high->place.chainage_m - low->place.chainage_m;
  const double share = apart > 0.0 ? (place.chainage_m - low->place.chainage_m) / apart : 0.0;
  return Read{
      low->resistance_pa_s_m3 * std::pow(high->resistance_pa_s_m3 / low->resistance_pa_s_m3, share),
      low->reach.floor + share * (high->reach.floor - low->reach.floor)};
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
  all.solved = solvePlaces(solver, perimeter, options);
  all.weak = weak.empty() ? weakPoints(solver.network(), all.solved, kWeakPoints) : std::move(weak);
  std::vector<Draw> draws;
  for (const Point p : all.weak) {
    const int cell = solver.network().cellNear(p);
    draws.push_back(cell >= 0 ? Draw{{cell, 1.0}} : Draw{});
  }
  const auto seen = solver.factor().solveMany(draws);
  for (const Place place : placesEvery(perimeter, options.step_m)) {
    CurvePlace one{place};
    one.at_weak_pa.assign(all.weak.size(), 0.0);
    const Sink sink = sinkAt(perimeter, place, options.radius_m);
    const auto port = portAt(solver.network(), sink.at, sink.radius_m);
    const auto read = readBetween(all.solved, place, perimeter.edgeAt(place).edge);
    one.on_floor = port && read;
    if (one.on_floor) {
      one.resistance_pa_s_m3 = read->resistance;
      one.floor = read->floor;
      one.flow_m3_s = options.fan({one.resistance_pa_s_m3, options.inertia_pa_s2_m6});
      for (std::size_t w = 0; w < seen.size(); ++w) {
        one.at_weak_pa[w] = one.flow_m3_s * readAt(*port, seen[w]);
      }
      const auto least = std::min_element(one.at_weak_pa.begin(), one.at_weak_pa.end());
      one.least_pa = least == one.at_weak_pa.end() ? 0.0 : *least;
    }
    all.curve.push_back(std::move(one));
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
