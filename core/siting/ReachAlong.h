#pragma once
// What a sump would reach at every place of the wall, as a curve along the perimeter: share of
// floor held on the middle guess at the ground (quick), chance of reach (in the background).
//
//   auto reach = ReachAlong::of(study, system, options);     // per edit
//   reach = reach->withChance(chance);                       // when the guesses are ready
//   Study judged = study.withReach(shared, RankBy::score);   // a new study, the same plan
//
// One sump alone is meant, with a fan and a pipe of its own; or beside others that stay where they
// stand, all on one fan. A prediction: the re-test decides.
// Where nobody knows whether walls stand through the fill or whether it goes on next door, every
// answer is worked out and the worst counts at each place. A value to share; never throws;
// deterministic whatever the threads, but for the times.

#include <memory>
#include <optional>
#include <vector>

#include "base/Result.h"
#include "siting/Study.h"
#include "siting/SuctionSystem.h"
#include "suction/Chance.h"
#include "suction/Everywhere.h"

namespace sumpwright::siting {

struct ReachOptions {
  std::optional<plan::Fill> fill;               ///< instead of the house's
  std::optional<suction::GroundRanges> ranges;  ///< instead of the fill's (suction::rangesOf())
  std::vector<suction::OpenCase> cases;         ///< none: every answer to what nobody knows
  suction::Target target;
  double pit_m3 = kPit_m3;
  /// Side of a cell. Coarser on large floors, so that the whole wall keeps its time: no more than
  /// kMostReachCells cells (own figure); the summary says so.
  double cell_m = 0.10;
  double step_m = 0.1;       ///< between places of the curve
  double tolerance = 0.005;  ///< share of floor (suction::EverywhereOptions)
  std::vector<suction::Sink>
      others;  ///< on the same fan; heeded where the system is one fan for all
  std::vector<geometry::Point> weak;  ///< points to tell the suction of; none: the four weakest
  int threads = 2;
  suction::Going going;
};

inline constexpr double kMostReachCells = 16000.0;

enum class ReachState {
  computed,
  not_layered  ///< no granular layer: no figure of reach, no places
};

struct ReachSummary {
  ReachState state = ReachState::computed;
  suction::Target target;
  plan::Fill fill = plan::Fill::unknown;
  int cases = 1;  ///< answers that were worked out
  double cell_m = 0.0;
  bool coarser = false;  ///< than asked for
  int solved = 0;        ///< places solved, of all cases
  double miss = 0.0;     ///< greatest miss of the share of floor between solved places, by estimate
  int jumps = 0;         ///< where the share of floor jumps within some 8 cm of wall
  double middle_ms = 0.0;
  double chance_ms = 0.0;
};

/// At one place. Without floor on fill behind the wall all is 0.
struct ReachRead {
  bool on_floor = false;
  double floor = 0.0;  ///< share of floor held at the design suction, 0..1
  double flow_m3_s = 0.0;
  double least_pa = 0.0;                       ///< least of the weak points
  std::optional<suction::PlaceChance> chance;  ///< once it was asked for
};

/// A place of the curve.
struct ReachPlace {
  Place place;
  int edge = 0;  ///< wall of the ring
  ReachRead read;
  std::vector<double> at_weak_pa;  ///< suction at each weak point; the worst case's
};

class ReachAlong {
 public:
  /// Errors: suction.target (target or limit not above nothing, limit above target), those of
  /// suction::modelOf() and of the solver, suction.chance.stopped where `going` said no.
  static base::Result<ReachAlong> of(const Study& study, const SuctionSystem& system,
                                     const ReachOptions& options = {});

  /// The same with the chance of every place. It is asked for every 2 m of a wall and more closely
  /// where neighbours differ by over 5 % (own figures), and read between on a straight line;
  /// guesses are 64, so that a chance is known to some 6 % at best. Error: suction.chance.stopped.
  base::Result<ReachAlong> withChance(const suction::ChanceStudy& chance,
                                      const suction::Going& going = {}) const;

  const ReachSummary& summary() const { return m_data->summary; }
  bool computed() const { return summary().state == ReachState::computed; }
  bool hasChance() const { return m_data->has_chance; }
  /// Every ring from 0 on, wall by wall (suction::Everywhere::curve). Empty where not computed.
  const std::vector<ReachPlace>& places() const { return m_data->places; }
  /// Sumps that count with every place, on the same fan.
  const std::vector<suction::Sink>& others() const { return m_data->others; }
  double radius_m() const { return m_data->radius_m; }  ///< of the pit at every place
  const std::vector<geometry::Point>& weak() const { return m_data->weak; }

  /// Between the places of the wall, on a straight line; wrapped onto the ring. Contract: fits()
  /// the perimeter that the place is of.
  ReachRead at(Place place) const;
  /// Made for walls of these lengths and turns. The plan may have changed all the same: whoever
  /// keeps a value over an edit knows whether the edit matters.
  bool fits(const perimeter::Perimeter& perimeter) const;
  /// Best place by floor held among allowed ones; nothing where none is allowed or on the floor.
  std::optional<ReachPlace> best(const suction::Allowed& allowed) const;

 private:
  struct Data {
    ReachSummary summary;
    std::shared_ptr<const perimeter::Perimeter> perimeter;
    double radius_m = 0.0;
    bool has_chance = false;
    std::vector<suction::Sink> others;
    std::vector<geometry::Point> weak;
    std::vector<ReachPlace> places;
    std::vector<std::size_t> starts;  ///< by ring: its first place; and the end
  };
  std::shared_ptr<const Data> m_data;
};

}  // namespace sumpwright::siting
