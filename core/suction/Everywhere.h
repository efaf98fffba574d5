#pragma once
// The whole perimeter at once: what a sump would do at every place of the wall.
//
// By reciprocity (the Green function is symmetric) one back-solve for a weak point gives its
// suction per flow for a sump anywhere. The resistance a sump sees changes slowly along the wall,
// so it is solved for every metre or so and read between; those solves give the reach there too.
// Where reading between would miss by more than a tolerance, places between are solved as well.

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "perimeter/Perimeter.h"
#include "suction/Flow.h"
#include "suction/ModelOf.h"
#include "suction/Reach.h"

namespace sumpwright::suction {

struct EverywhereOptions {
  double radius_m = 0.3;      ///< of the pit
  double step_m = 0.1;        ///< between places of the curve
  double solve_step_m = 1.0;  ///< between places that are solved; nearer at corners
  /// Share of floor by which reading between solved places may miss, by estimate: steps are halved
  /// until it does not, or until they are shorter than least_step_m. Nothing: never halved.
  std::optional<double> tolerance;
  double least_step_m = 0.08;                      ///< own figure
  int most_solved = 600;                           ///< places; no halving beyond (own figure)
  InertiaOf inertia = [](double) { return 0.0; };  ///< of the pits
  Target target;
  FlowOf fan = constantSuction(100.0);
  FlowsOf together;  ///< of several on one fan; none: each has a fan of its own
  /// Sumps that stay where they stand and draw on the same fan as the one at each place: all count
  /// together. Contract: with `together`. Those in no floor are left out.
  std::vector<Sink> others;
};

/// A place of the wall that was solved.
struct SolvedPlace {
  perimeter::Place place;
  int edge = -1;  ///< of the ring; -1: on no wall
  Sink sink;
  double resistance_pa_s_m3 = 0.0;
  double flow_m3_s = 0.0;
  Reach reach;
  std::vector<float> unit;               ///< suction per flow by cell
  std::vector<double> other_flows_m3_s;  ///< of the others in the floor
};

/// A place of the curve.
struct CurvePlace {
  perimeter::Place place;
  double resistance_pa_s_m3 = 0.0;
  double flow_m3_s = 0.0;
  std::vector<double> at_weak_pa;  ///< suction at each weak point
  double least_pa = 0.0;           ///< the least of them
  double floor = 0.0;              ///< share of floor reached, between solved places
  bool on_floor = false;           ///< false: no floor on fill behind the wall there; all else 0
  int edge = -1;                   ///< of the ring
};

struct Everywhere {
  std::vector<Point> weak;
  std::vector<SolvedPlace> solved;  ///< those with floor behind them, by ring and chainage
  /// Every ring from 0 on, wall by wall from 1 um past its start to 1 um short of its end.
  std::vector<CurvePlace> curve;
  /// Greatest miss of `floor` between solved places, by estimate from the bend of its slope; over
  /// the tolerance only where steps may be halved no more. Jumps apart.
  double miss = 0.0;
  /// Gaps of no more than least_step_m over which the share of floor jumps (a wall through the fill
  /// is passed); within, the curve takes the lesser.
  int jumps = 0;
};

/// Points that are hard to reach from anywhere on the wall, apart from each other by a third of the
/// floor's size: where the best of the solved places does least per flow first. At most `count`.
std::vector<Point> weakPoints(const Network& network, const std::vector<SolvedPlace>& solved,
                              int count);

/// With no weak points given, the four of weakPoints(). Contract: solver.ok(), steps positive.
/// Between solved places of a wall the resistance and the flow are read on a logarithmic scale, the
/// share of floor on a straight one; past the last of a wall all are as there.
Everywhere everywhereOf(const FieldSolver& solver, const perimeter::Perimeter& perimeter,
                        const EverywhereOptions& options, std::vector<Point> weak = {});

/// A solved place's field at a flow.
std::vector<double> scaledBy(const std::vector<float>& unit, double flow_m3_s);

/// Whether a sump may stand at a place, such as where no rule refuses it.
using Allowed = std::function<bool(const perimeter::Place&)>;

struct Pair {
  SolvedPlace first;
  SolvedPlace second;
  double flow_first_m3_s = 0.0;
  double flow_second_m3_s = 0.0;
  std::vector<double> matrix;  ///< [R], row by row
  Reach reach;                 ///< of both
};

/// The solved place with the greatest reach; of equals the one with the greatest least suction.
std::optional<SolvedPlace> bestSingle(const Everywhere& everywhere, const Allowed& allowed);

/// The two solved places that together reach most, flows of both solved together: each with a fan
/// of its own, or both on one. With `first` only its partner is sought. Nothing with fewer than two
/// places.
std::optional<Pair> bestPair(const FieldSolver& solver, const Everywhere& everywhere,
                             const EverywhereOptions& options, const Allowed& allowed,
                             const std::optional<Sink>& first = std::nullopt);

}  // namespace sumpwright::suction
