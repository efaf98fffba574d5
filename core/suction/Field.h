#pragma once
// The suction field of a model: factorised once, then one back-solve for each sump.
//
//   FieldSolver solver = FieldSolver::of(model, options);   // per edit of the plan
//   auto unit = solver.unit(sump, radius_m);                // per place of the sump
//   suction = flow * unit->suction + background             // linear in the flow
//   at the pit: s_w = R Q + B Q^2, R = unit->resistance_pa_s_m3, B of airflow/Duty.h
//
// Never throws; what keeps it from solving stands in the summary. Deterministic but for the times.

#include <cstddef>
#include <memory>
#include <optional>
#include <span>
#include <vector>

#include "base/Problem.h"
#include "suction/Factor.h"
#include "suction/Flow.h"
#include "suction/Model.h"
#include "suction/Network.h"
#include "suction/Port.h"

namespace sumpwright::suction {

struct FieldOptions {
  double cell_m = 0.05;  ///< side of a cell: 0.10 while things move, 0.05 at rest (own figures)
  bool align = true;     ///< the grid runs with the house (frameOf())
  /// Memory of the factor that is not exceeded: cells get coarser instead (own figure).
  std::size_t most_bytes = 256U * 1024U * 1024U;
};

enum class FieldState { solved, bad_options, bad_model, not_definite };

struct FieldSummary {
  FieldState state = FieldState::bad_model;
  base::Problems problems;  ///< why, where state is not solved
  double cell_m = 0.0;      ///< as taken
  bool coarser = false;     ///< than asked for, to keep within memory
  std::size_t cells = 0;
  std::size_t links = 0;
  std::size_t fill = 0;   ///< entries of the factor below its diagonal
  std::size_t bytes = 0;  ///< of the factor
  double network_ms = 0.0;
  double analyse_ms = 0.0;
  double factor_ms = 0.0;
  /// |leakage in - flow out| / flow out of a trial solve.
  double balance = 0.0;
};

/// A place where air is drawn.
struct Sink {
  Point at;
  double radius_m = 0.3;
  bool operator==(const Sink&) const = default;
};

/// The field of one sink per unit of its flow.
struct UnitField {
  Port port;
  std::vector<double> suction;      ///< by cell, Pa s/m3
  double resistance_pa_s_m3 = 0.0;  ///< R, corrected for the pit's radius
};

class FieldSolver {
 public:
  static FieldSolver of(const SuctionModel& model, const FieldOptions& options = {},
                        const Scales& scales = {});

  bool ok() const { return m_summary.state == FieldState::solved; }
  const FieldSummary& summary() const { return m_summary; }
  /// The rest: contract ok().
  const Network& network() const { return *m_network; }
  const Factor& factor() const { return *m_factor; }
  const Scales& scales() const { return m_scales; }

  /// Nothing where the pit is not in the floor (portAt()).
  std::optional<UnitField> unit(const Sink& sink) const;
  /// unit() of each, cheaper than one by one.
  std::vector<std::optional<UnitField>> units(std::span<const Sink> sinks) const;
  /// Suction with the fan off where rooms and outdoors differ: p_room - p_outdoors, Pa (< 0 in a
  /// house that draws). For even leakage (L_g / L) times it.
  std::vector<double> background(double room_less_outdoors_pa) const;

 private:
  FieldSummary m_summary;
  std::shared_ptr<const Network> m_network;
  std::shared_ptr<const Factor> m_factor;
  Scales m_scales;
};

/// Matrix [R] of several sinks, row by row: s_i = sum_j R_ij Q_j + B_i Q_i^2. Symmetric.
std::vector<double> resistances(const std::vector<UnitField>& units);
/// The same of `here` and then the others, whose own matrix is known already.
std::vector<double> resistances(const UnitField& here, const std::vector<UnitField>& others,
                                const std::vector<double>& among_others);

/// B of each pit.
std::vector<double> inertias(const std::vector<UnitField>& units, const InertiaOf& of);

/// background + sum of flows times unit fields; an empty background is none. Contract: sizes agree.
std::vector<double> superposed(const std::vector<UnitField>& units,
                               const std::vector<double>& flows_m3_s,
                               const std::vector<double>& background = {});

/// Suction at a point of the plan, bilinear between centres, never across a barrier; nothing off
/// the floor.
std::optional<double> sampleAt(const Network& network, const std::vector<double>& suction,
                               Point plan);

/// beta = 0.550 / sqrt(k) (Ward 1964, from memory).
double wardBeta(double permeability_m2);
/// Ergun 1952: k = d^2 e^3 / (150 (1-e)^2), beta = 1.75 (1-e) / (d e^3); constants argued to be low
/// (Quinn 2014): take beta as +-50 %.
double ergunPermeability(double diameter_m, double porosity);
double ergunBeta(double diameter_m, double porosity);

/// Floor that cells are laid on, mirrored houses next door too.
double solvedArea_m2(const SuctionModel& model);

/// The cell side that keeps a factor of so large a floor within memory: the wished one, or coarser
/// by steps of a quarter. Fill after measurement on rectangles (see tests/bench).
double cellWithin(double area_m2, double cell_m, std::size_t most_bytes);

}  // namespace sumpwright::suction
