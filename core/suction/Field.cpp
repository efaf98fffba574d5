#include "suction/Field.h"

#include <algorithm>
#include <chrono>
#include <cmath>

#include "base/Contract.h"

namespace sumpwright::suction {

namespace {

using base::Message;
using base::Problem;

constexpr double kFinest_m = 0.005;  // a grid for a pit, not for a house (own figure)
constexpr double kCoarsest_m = 1.0;

double sinceMs(std::chrono::steady_clock::time_point begun) {
  return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begun)
      .count();
}

double leakageInto(const Network& network, const Scales& scales, const std::vector<double>& s) {
  double flow = 0.0;
  for (std::size_t c = 0; c < s.size(); ++c) flow += leakageOf(network.cells[c], scales) * s[c];
  for (const Joint& joint : network.joints) {
    flow += conductanceOf(joint, scales) * s[static_cast<std::size_t>(joint.cell)];
  }
  return flow;
}

UnitField made(Port port, std::vector<double> suction, const Scales& scales) {
  UnitField unit{std::move(port), std::move(suction)};
  unit.resistance_pa_s_m3 = readAt(unit.port, unit.suction) + ownTerm(unit.port, scales);
  return unit;
}

bool fairScales(const Scales& s) {
  const auto positive = [](double v) { return std::isfinite(v) && v > 0.0; };
  return positive(s.transmissivity) && positive(s.leakage) && positive(s.edges) &&
         positive(s.outdoors) && positive(s.barriers);
}

/// Whether a barrier stands between two points of the grid.
bool walled(const Network& network, Point a, Point b) {
  return std::any_of(network.walls.begin(), network.walls.end(), [&](const auto& wall) {
    const geometry::Vec along = wall.b - wall.a;
    const geometry::Vec link = b - a;
    return (geometry::cross(along, a - wall.a) > 0.0) !=
               (geometry::cross(along, b - wall.a) > 0.0) &&
           (geometry::cross(link, wall.a - a) > 0.0) != (geometry::cross(link, wall.b - a) > 0.0);
  });
}

}  // namespace

FieldSolver FieldSolver::of(const SuctionModel& model, const FieldOptions& options,
                            const Scales& scales) {
  FieldSolver solver;
  FieldSummary& summary = solver.m_summary;
  solver.m_scales = scales;
  if (!(options.cell_m >= kFinest_m && options.cell_m <= kCoarsest_m) || !fairScales(scales)) {
    summary.state = FieldState::bad_options;
    summary.problems = {Problem{Message("suction.options"), "", base::Gravity::unsound}};
    return solver;
  }
  summary.problems = checkModel(model);
  if (!summary.problems.empty()) return solver;
  summary.cell_m = cellWithin(solvedArea_m2(model), options.cell_m, options.most_bytes);
  summary.coarser = summary.cell_m > options.cell_m;
  auto begun = std::chrono::steady_clock::now();
  auto network = std::make_shared<Network>(networkOf(model, summary.cell_m, options.align));
  summary.network_ms = sinceMs(begun);
  summary.cells = network->cells.size();
  summary.links = network->links.size();
  Factoriser factoriser(*network);
  summary.analyse_ms = factoriser.analyse_ms();
  begun = std::chrono::steady_clock::now();
  auto factor = std::make_shared<Factor>();
  const FactorState state = factoriser.factor(*network, scales, *factor);
  summary.factor_ms = sinceMs(begun);
  solver.m_network = network;
  solver.m_factor = factor;
  if (state != FactorState::made) {
    summary.state = FieldState::not_definite;
    summary.problems = {Problem{Message("suction.model.leakage"), "", base::Gravity::unsound}};
    return solver;
  }
  summary.fill = factor->fill();
  summary.bytes = factor->bytes();
  const int middle = static_cast<int>(summary.cells / 2);
  const auto trial = factor->solve({{middle, 1.0}});
  summary.balance = std::abs(leakageInto(*network, scales, trial) - 1.0);
  summary.state = FieldState::solved;
  return solver;
}

std::optional<UnitField> FieldSolver::unit(const Sink& sink) const {
  SUMPWRIGHT_REQUIRE(ok());
  auto port = portAt(*m_network, sink.at, sink.radius_m);
  if (!port) return std::nullopt;
  auto suction = m_factor->solve(port->weights);
  return made(std::move(*port), std::move(suction), m_scales);
}

std::vector<std::optional<UnitField>> FieldSolver::units(std::span<const Sink> sinks) const {
  SUMPWRIGHT_REQUIRE(ok());
  std::vector<std::optional<UnitField>> fields(sinks.size());
  std::vector<Port> ports;
  std::vector<std::size_t> whose;
  std::vector<Draw> draws;
  for (std::size_t k = 0; k < sinks.size(); ++k) {
    auto port = portAt(*m_network, sinks[k].at, sinks[k].radius_m);
    if (!port) continue;
    whose.push_back(k);
    draws.push_back(port->weights);
    ports.push_back(std::move(*port));
  }
  auto suctions = m_factor->solveMany(draws);
  for (std::size_t k = 0; k < whose.size(); ++k) {
    fields[whose[k]] = made(std::move(ports[k]), std::move(suctions[k]), m_scales);
  }
  return fields;
}

std::vector<double> FieldSolver::background(double room_less_outdoors_pa) const {
  SUMPWRIGHT_REQUIRE(ok());
  std::vector<double> flow(m_network->cells.size(), 0.0);
  for (std::size_t c = 0; c < flow.size(); ++c) {
    flow[c] = m_network->cells[c].leak_ground_m3_s_pa * m_scales.leakage * room_less_outdoors_pa;
  }
  for (const Joint& joint : m_network->joints) {
    flow[static_cast<std::size_t>(joint.cell)] +=
        conductanceOf(joint, m_scales) * outdoorShare(joint, m_scales) * room_less_outdoors_pa;
  }
  return m_factor->solveFull(std::move(flow));
}

std::vector<double> resistances(const std::vector<UnitField>& units) {
  const std::size_t n = units.size();
  std::vector<double> matrix(n * n, 0.0);
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = 0; j < n; ++j) {
      matrix[i * n + j] =
          i == j ? units[i].resistance_pa_s_m3 : readAt(units[i].port, units[j].suction);
    }
  }
  return matrix;
}

std::vector<double> resistances(const UnitField& here, const std::vector<UnitField>& others,
                                const std::vector<double>& among_others) {
  const std::size_t n = others.size() + 1;
  std::vector<double> matrix(n * n, here.resistance_pa_s_m3);
  for (std::size_t k = 0; k + 1 < n; ++k) {
    matrix[k + 1] = matrix[(k + 1) * n] = readAt(here.port, others[k].suction);
    for (std::size_t l = 0; l + 1 < n; ++l) {
      matrix[(k + 1) * n + l + 1] = among_others[k * (n - 1) + l];
    }
  }
  return matrix;
}

std::vector<double> inertias(const std::vector<UnitField>& units, const InertiaOf& of) {
  std::vector<double> all;
  for (const UnitField& unit : units) all.push_back(of(unit.port.radius_m));
  return all;
}

std::vector<double> superposed(const std::vector<UnitField>& units,
                               const std::vector<double>& flows_m3_s,
                               const std::vector<double>& background) {
  SUMPWRIGHT_REQUIRE(units.size() == flows_m3_s.size());
  std::vector<double> sum = background;
  for (std::size_t k = 0; k < units.size(); ++k) {
    if (sum.empty()) sum.assign(units[k].suction.size(), 0.0);
    SUMPWRIGHT_REQUIRE(sum.size() == units[k].suction.size());
    for (std::size_t c = 0; c < sum.size(); ++c) sum[c] += flows_m3_s[k] * units[k].suction[c];
  }
  return sum;
}

std::optional<double> sampleAt(const Network& network, const std::vector<double>& suction,
                               Point plan) {
  const Point p = network.frame.toGrid(plan);
  const int home =
      network.cellAt(static_cast<int>(std::floor(p.x)), static_cast<int>(std::floor(p.y)));
  if (home < 0) return std::nullopt;
  const int i = static_cast<int>(std::floor(p.x - 0.5));
  const int j = static_cast<int>(std::floor(p.y - 0.5));
  const double alpha = p.x - 0.5 - i;
  const double beta = p.y - 0.5 - j;
  double sum = 0.0;
  double weights = 0.0;
  for (int k = 0; k < 4; ++k) {
    const int ci = i + (k & 1);
    const int cj = j + (k >> 1);
    const int cell = network.cellAt(ci, cj);
    if (cell < 0 || walled(network, p, {ci + 0.5, cj + 0.5})) continue;
    const double weight =
        ((k & 1) != 0 ? alpha : 1.0 - alpha) * ((k >> 1) != 0 ? beta : 1.0 - beta);
    sum += weight * suction[static_cast<std::size_t>(cell)];
    weights += weight;
  }
  if (weights > 1e-9) return sum / weights;
  return suction[static_cast<std::size_t>(home)];
}

double wardBeta(double permeability_m2) { return 0.550 / std::sqrt(permeability_m2); }

double ergunPermeability(double diameter_m, double porosity) {
  const double solid = 1.0 - porosity;
  return diameter_m * diameter_m * porosity * porosity * porosity / (150.0 * solid * solid);
}

double ergunBeta(double diameter_m, double porosity) {
  return 1.75 * (1.0 - porosity) / (diameter_m * porosity * porosity * porosity);
}

double solvedArea_m2(const SuctionModel& model) {
  double area = floorArea_m2(model);
  for (const Region& region : model.regions) {
    if (region.neighbour) area += floorArea_m2({{Region{region.outline}}});
  }
  return area;
}

double cellWithin(double area_m2, double cell_m, std::size_t most_bytes) {
  constexpr double kBytesPerEntry = 12.0;
  constexpr double kBytesPerCell = 16.0;  // pivots, ordering
  double cell = cell_m;
  while (cell < kCoarsest_m) {
    const double n = std::max(16.0, area_m2 / (cell * cell));
    // Entries per cell of minimum degree on squares: 1.5 to 2.1 log2 n from 12,000 to 192,000
    // cells.
    const double entries = n * std::log2(n) * (1.6 + 0.16 * std::max(0.0, std::log2(n) - 13.0));
    if (kBytesPerEntry * entries + kBytesPerCell * n <= static_cast<double>(most_bytes)) break;
    cell *= 1.25;
  }
  return cell;
}

}  // namespace sumpwright::suction
