#pragma once
// How likely a sump reaches the floor when nobody knows the ground: the same place solved on many
// guesses (Presets.h), each with its own factor.
//
// Where inner walls of unknown footing or party walls leave two answers, each guess is solved for
// all of them and the worst counts. A prediction: the re-test decides.

#include <cstddef>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "base/Result.h"
#include "suction/Flow.h"
#include "suction/ModelOf.h"
#include "suction/Presets.h"
#include "suction/Reach.h"

namespace sumpwright::suction {

struct ChanceOptions {
  int draws = 64;  ///< at least this many for a figure that may be shown (own figure)
  std::uint64_t seed = 1;
  double cell_m = 0.10;
  int threads = 2;
  /// Of all factors kept together; cells get coarser where it would be exceeded.
  std::size_t most_bytes = 512U * 1024U * 1024U;
  Target target;
  FlowOf fan = constantSuction(100.0);
  /// Several sumps on one fan; none: each has a fan of its own.
  FlowsOf together;
  std::vector<OpenCase> cases;         ///< none: every answer to what nobody knows, nothing fitted
  double room_less_outdoors_pa = 0.0;  ///< background that is added, Pa
};

/// Told of the share that is done; answers whether to go on. Called from several threads, one at a
/// time.
using Going = std::function<bool(double done)>;

struct ChanceSummary {
  std::size_t cells = 0;
  double cell_m = 0.0;
  bool coarser = false;  ///< than asked for, to keep within memory
  std::size_t bytes = 0;
  int factors = 0;
  int cases = 1;  ///< answers per guess
  double build_ms = 0.0;
};

/// What the guesses say of one set of sumps.
struct Chance {
  std::vector<float> by_cell;  ///< share of guesses in which the cell is held at the design suction
  double whole_floor = 0.0;    ///< share of guesses in which 95 % of the floor is (own figure)
  double mean_floor = 0.0;     ///< mean share of floor held
  std::vector<double> floors;  ///< of each guess, in order of draws: share of floor held
  std::vector<double> flows_m3_s;  ///< of each guess: all sumps together
  Least least_likely;              ///< chance (not Pa) of the place least likely held, and where
};

/// What the guesses say of one sump, without the floor's cells.
struct PlaceChance {
  double whole_floor = 0.0;  ///< as Chance
  double mean_floor = 0.0;
};

/// Share of the floor that counts as all of it (own figure).
inline constexpr double kWholeFloor = 0.95;

/// The guesses of one plan, factorised: made once per edit, then asked for each place of the sump.
/// A value to share; asking is const and thread-safe.
class ChanceStudy {
 public:
  /// Errors: those of modelOf(); suction.chance.stopped where `going` said no;
  /// suction.model.leakage where a guess has no answer. Deterministic whatever the threads.
  static base::Result<ChanceStudy> of(const plan::Job& job, const GroundRanges& ranges,
                                      const ChanceOptions& options, const Going& going = {});

  const ChanceSummary& summary() const { return m_data->summary; }
  /// Grid of the answers: that of the first case. Other cases have grids of their own and are read
  /// at its centres.
  const Network& network() const { return *m_data->cases[0].network; }
  /// Guesses of the first case; those of others differ only where the ground was fitted.
  const std::vector<Ground>& draws() const { return m_data->cases[0].draws; }

  /// Nothing where no sump is in the floor.
  std::optional<Chance> ask(const std::vector<Sink>& sinks) const;

  /// ask() of each sump alone, or with others on its fan (ChanceOptions::together), many at a
  /// sweep: nothing for those not in the floor. Error: suction.chance.stopped.
  base::Result<std::vector<std::optional<PlaceChance>>> askEach(
      const std::vector<Sink>& sinks, const Going& going = {},
      const std::vector<Sink>& others = {}) const;

 private:
  struct Case {
    std::shared_ptr<const Network> network;
    std::vector<Ground> draws;
    std::vector<Scales> scales;   ///< by draw
    std::vector<Factor> factors;  ///< by draw
    std::vector<int> from;        ///< by cell of the first case: the cell here, or -1
  };
  struct Data {
    std::size_t draws = 0;
    std::vector<Case> cases;
    ChanceOptions options;
    ChanceSummary summary;
  };
  struct Guess;
  static Guess guessOf(const Data& data, std::size_t draw, const std::vector<Sink>& sinks);
  static std::vector<double> floorsOf(const Data& data, std::size_t draw,
                                      const std::vector<Sink>& sinks,
                                      const std::vector<Sink>& others);
  std::shared_ptr<const Data> m_data;
};

}  // namespace sumpwright::suction
