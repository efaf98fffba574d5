#include "suction/Chance.h"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <cmath>
#include <limits>
#include <mutex>

#include "base/Contract.h"
#include "suction/Workers.h"

namespace sumpwright::suction {

namespace {

using base::Message;
using base::Problem;

Problem stopped() { return {Message("suction.chance.stopped"), "", base::Gravity::missing}; }
Problem leakless() { return {Message("suction.model.leakage"), "", base::Gravity::unsound}; }

/// work(index, worker) for every index, shared out over threads; each worker does its own.
void inParallel(std::size_t count, int threads,
                const std::function<void(std::size_t index, std::size_t worker)>& work) {
  const auto workers = static_cast<std::size_t>(std::clamp(threads, 1, 64));
  std::atomic<std::size_t> next{0};
  onWorkers(workers, [&](std::size_t worker) {
    for (std::size_t k = next++; k < count; k = next++) work(k, worker);
  });
}

std::vector<int> readFrom(const Network& reader, const Network& source) {
  std::vector<int> from;
  for (std::size_t c = 0; c < reader.cells.size(); ++c) {
    from.push_back(&reader == &source ? static_cast<int>(c)
                                      : source.cellNear(reader.centre(static_cast<int>(c))));
  }
  return from;
}

/// Fields kept at a time by each thread while places are asked one by one (own figure).
constexpr std::size_t kPlacesPerSweep = 32;

/// Unit fields on one guess and case, of those sinks that are in the floor.
struct UnitsOnGuess {
  std::vector<std::size_t> whose;  ///< index of the sink
  std::vector<UnitField> units;
};

UnitsOnGuess unitsOn(const Network& network, const Factor& factor, const Scales& scales,
                     const std::vector<Sink>& sinks) {
  UnitsOnGuess found;
  std::vector<Draw> draws;
  for (std::size_t k = 0; k < sinks.size(); ++k) {
    auto port = portNear(network, sinks[k].at, sinks[k].radius_m);
    if (!port) continue;
    draws.push_back(port->weights);
    found.whose.push_back(k);
    found.units.push_back({std::move(*port), {}, 0.0});
  }
  auto suctions = factor.solveMany(draws);
  for (std::size_t k = 0; k < found.units.size(); ++k) {
    UnitField& unit = found.units[k];
    unit.suction = std::move(suctions[k]);
    unit.resistance_pa_s_m3 = readAt(unit.port, unit.suction) + ownTerm(unit.port, scales);
  }
  return found;
}

/// A unit field times its flow.
struct Drawn {
  const UnitField* unit = nullptr;
  double flow = 0.0;
};

/// Share of our floor where the fields together are no less than what is asked for.
double shareHeld(const Network& grid, const std::vector<int>& from, const std::vector<Drawn>& drawn,
                 double asked_pa) {
  double held = 0.0;
  double whole = 0.0;
  for (std::size_t c = 0; c < grid.cells.size(); ++c) {
    const double own = grid.cells[c].own_m2;
    whole += own;
    if (from[c] < 0) continue;
    double suction = 0.0;
    for (const Drawn& one : drawn) {
      suction += one.flow * one.unit->suction[static_cast<std::size_t>(from[c])];
    }
    if (suction >= asked_pa) held += own;
  }
  return whole > 0.0 ? held / whole : 0.0;
}

/// A sump beside others on its fan.
std::vector<Drawn> drawnTogether(const UnitField& here, const std::vector<UnitField>& others,
                                 const std::vector<double>& among_others, const Ground& ground,
                                 const FlowsOf& together) {
  std::vector<double> pits{ground.inertia_pa_s2_m6(here.port.radius_m)};
  for (const UnitField& other : others)
    pits.push_back(ground.inertia_pa_s2_m6(other.port.radius_m));
  const auto flows = together(resistances(here, others, among_others), pits);
  std::vector<Drawn> drawn{{&here, flows[0]}};
  for (std::size_t k = 0; k < others.size(); ++k) drawn.push_back({&others[k], flows[k + 1]});
  return drawn;
}

/// Of the k-th place, from the floors by guess; nothing where it is not in the floor.
std::optional<PlaceChance> chanceFrom(const std::vector<std::vector<double>>& floors,
                                      std::size_t k) {
  PlaceChance chance;
  const double each = 1.0 / static_cast<double>(std::max<std::size_t>(1, floors.size()));
  for (const auto& guess : floors) {
    if (guess[k] < 0.0) return std::nullopt;
    chance.mean_floor += each * guess[k];
    if (guess[k] >= kWholeFloor) chance.whole_floor += each;
  }
  return chance;
}

/// The guess that models are built of; the others are factors on it. Nothing of it may be 0.
Ground baseOf(const GroundRanges& ranges) { return ranges.middle(); }

base::Result<std::vector<SuctionModel>> modelsOf(const plan::Job& job, const Ground& base,
                                                 const std::vector<OpenCase>& open) {
  std::vector<SuctionModel> models;
  for (const OpenCase& one : open) {
    auto model = modelOf(job, base, one.choices);
    if (!model) return model.problems();
    models.push_back(std::move(model).value());
  }
  return models;
}

std::vector<Ground> drawsFor(const GroundRanges& ranges, const OpenCase& open,
                             const ChanceOptions& options) {
  return open.narrowed ? drawsOf(ranges, *open.narrowed, options.draws, options.seed)
                       : drawsOf(ranges, options.draws, options.seed);
}

}  // namespace

base::Result<ChanceStudy> ChanceStudy::of(const plan::Job& job, const GroundRanges& ranges,
                                          const ChanceOptions& options, const Going& going) {
  const auto begun = std::chrono::steady_clock::now();
  auto data = std::make_shared<Data>();
  data->options = options;
  const Ground base = baseOf(ranges);
  const auto open = options.cases.empty() ? openCasesOf(job.plan) : options.cases;
  auto built = modelsOf(job, base, open);
  if (!built) return built.problems();
  const std::vector<SuctionModel>& models = *built;
  double area = 0.0;
  for (const SuctionModel& model : models) area += solvedArea_m2(model);
  data->draws = static_cast<std::size_t>(std::max(0, options.draws));
  const auto share = options.most_bytes / std::max<std::size_t>(1, data->draws);
  ChanceSummary& summary = data->summary;
  // All cases of one guess together stay within a guess's share: one floor of their areas' sum.
  summary.cell_m = cellWithin(area, options.cell_m, share);
  summary.coarser = summary.cell_m > options.cell_m;
  summary.cases = static_cast<int>(models.size());
  for (std::size_t k = 0; k < models.size(); ++k) {
    Case one;
    one.network = std::make_shared<Network>(networkOf(models[k], summary.cell_m, true));
    one.draws = drawsFor(ranges, open[k], options);
    for (const Ground& draw : one.draws) one.scales.push_back(scalesFrom(base, draw));
    one.factors.resize(data->draws);
    data->cases.push_back(std::move(one));
  }
  for (Case& one : data->cases) one.from = readFrom(*data->cases[0].network, *one.network);
  summary.cells = data->cases[0].network->cells.size();

  const std::size_t jobs = data->draws * data->cases.size();
  std::atomic<bool> stop{false};
  std::atomic<bool> failed{false};
  std::mutex telling;
  std::size_t done = 0;
  const auto workers = static_cast<std::size_t>(std::clamp(options.threads, 1, 64));
  std::vector<std::vector<std::unique_ptr<Factoriser>>> factorisers(workers);
  for (auto& of_worker : factorisers) of_worker.resize(data->cases.size());
  inParallel(jobs, options.threads, [&](std::size_t k, std::size_t worker) {
    if (stop || failed) return;
    const std::size_t which = k / data->draws;
    const std::size_t draw = k % data->draws;
    Case& one = data->cases[which];
    auto& factoriser = factorisers[worker][which];
    if (!factoriser) factoriser = std::make_unique<Factoriser>(*one.network);
    if (factoriser->factor(*one.network, one.scales[draw], one.factors[draw]) !=
        FactorState::made) {
      failed = true;
    }
    const std::lock_guard lock(telling);
    ++done;
    if (going && !going(static_cast<double>(done) / static_cast<double>(jobs))) stop = true;
  });
  if (stop) return stopped();
  if (failed) return leakless();
  for (const Case& one : data->cases) {
    for (const Factor& factor : one.factors) {
      summary.bytes += factor.bytes();
      ++summary.factors;
    }
  }
  summary.build_ms =
      std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begun).count();
  ChanceStudy study;
  study.m_data = data;
  return study;
}

/// What one guess says: of its cases the one that holds least.
struct ChanceStudy::Guess {
  bool any = false;
  double floor = std::numeric_limits<double>::infinity();
  double flow_m3_s = 0.0;
  std::vector<bool> held;
};

ChanceStudy::Guess ChanceStudy::guessOf(const Data& data, std::size_t draw,
                                        const std::vector<Sink>& sinks) {
  const Network& grid = *data.cases[0].network;
  Guess worst;
  worst.held.assign(grid.cells.size(), true);
  for (const Case& one : data.cases) {
    const auto units = unitsOn(*one.network, one.factors[draw], one.scales[draw], sinks).units;
    if (units.empty()) continue;
    const auto pits = inertias(units, inertiaOf(one.draws[draw]));
    const auto flows = data.options.together && units.size() > 1
                           ? data.options.together(resistances(units), pits)
                           : flowsTogether(resistances(units), pits, data.options.fan);
    const auto suction = superposed(units, flows);
    double floor = 0.0;
    double whole = 0.0;
    for (std::size_t c = 0; c < grid.cells.size(); ++c) {
      const double own = grid.cells[c].own_m2;
      const int there = one.from[c];
      const bool held = there >= 0 && suction[static_cast<std::size_t>(there)] +
                                              data.options.room_less_outdoors_pa >=
                                          data.options.target.design_pa;
      whole += own;
      if (held) floor += own;
      worst.held[c] = worst.held[c] && held;
    }
    worst.any = true;
    if (floor / whole >= worst.floor) continue;
    worst.floor = floor / whole;
    worst.flow_m3_s = 0.0;
    for (const double flow : flows) worst.flow_m3_s += flow;
  }
  return worst;
}

std::optional<Chance> ChanceStudy::ask(const std::vector<Sink>& sinks) const {
  const Data& data = *m_data;
  std::vector<Guess> guesses(data.draws);
  inParallel(guesses.size(), data.options.threads,
             [&](std::size_t k, std::size_t) { guesses[k] = guessOf(data, k, sinks); });
  Chance chance;
  chance.by_cell.assign(network().cells.size(), 0.0F);
  const double each = 1.0 / static_cast<double>(std::max<std::size_t>(1, guesses.size()));
  for (const Guess& guess : guesses) {
    if (!guess.any) return std::nullopt;
    chance.floors.push_back(guess.floor);
    chance.flows_m3_s.push_back(guess.flow_m3_s);
    chance.mean_floor += each * guess.floor;
    if (guess.floor >= kWholeFloor) chance.whole_floor += each;
    for (std::size_t c = 0; c < guess.held.size(); ++c) {
      if (guess.held[c]) chance.by_cell[c] += static_cast<float>(each);
    }
  }
  if (guesses.empty()) return std::nullopt;
  int least = -1;
  for (std::size_t c = 0; c < chance.by_cell.size(); ++c) {
    if (!(network().cells[c].own_m2 > 0.0)) continue;
    if (least < 0 || chance.by_cell[c] < chance.by_cell[static_cast<std::size_t>(least)]) {
      least = static_cast<int>(c);
    }
  }
  if (least >= 0) {
    chance.least_likely = {static_cast<double>(chance.by_cell[static_cast<std::size_t>(least)]),
                           network().centre(least)};
  }
  return chance;
}

/// Share of floor that each sump, beside the others, holds on one guess, the worst case counting;
/// -1: not in the floor.
std::vector<double> ChanceStudy::floorsOf(const Data& data, std::size_t draw,
                                          const std::vector<Sink>& sinks,
                                          const std::vector<Sink>& others) {
  const Network& grid = *data.cases[0].network;
  const double asked = data.options.target.design_pa - data.options.room_less_outdoors_pa;
  std::vector<double> worst(sinks.size(), -1.0);
  for (const Case& one : data.cases) {
    const Factor& factor = one.factors[draw];
    const auto here = unitsOn(*one.network, factor, one.scales[draw], sinks);
    const auto there = unitsOn(*one.network, factor, one.scales[draw], others).units;
    const auto among = resistances(there);
    for (std::size_t k = 0; k < here.units.size(); ++k) {
      const UnitField& unit = here.units[k];
      const Ground& ground = one.draws[draw];
      const Load alone{unit.resistance_pa_s_m3, ground.inertia_pa_s2_m6(unit.port.radius_m)};
      const auto drawn = there.empty()
                             ? std::vector<Drawn>{{&unit, data.options.fan(alone)}}
                             : drawnTogether(unit, there, among, ground, data.options.together);
      double& floor = worst[here.whose[k]];
      const double held = shareHeld(grid, one.from, drawn, asked);
      floor = floor < 0.0 ? held : std::min(floor, held);
    }
  }
  return worst;
}

base::Result<std::vector<std::optional<PlaceChance>>> ChanceStudy::askEach(
    const std::vector<Sink>& sinks, const Going& going, const std::vector<Sink>& others) const {
  const Data& data = *m_data;
  SUMPWRIGHT_REQUIRE(others.empty() || data.options.together);
  const std::size_t draws = data.draws;
  std::vector<std::optional<PlaceChance>> chances;
  const std::size_t sweeps = (sinks.size() + kPlacesPerSweep - 1) / kPlacesPerSweep;
  std::atomic<bool> stop{false};
  std::mutex telling;
  std::size_t done = 0;
  for (std::size_t from = 0; from < sinks.size(); from += kPlacesPerSweep) {
    const std::size_t to = std::min(sinks.size(), from + kPlacesPerSweep);
    const std::vector<Sink> some(sinks.begin() + static_cast<std::ptrdiff_t>(from),
                                 sinks.begin() + static_cast<std::ptrdiff_t>(to));
    std::vector<std::vector<double>> floors(draws);
    inParallel(draws, data.options.threads, [&](std::size_t draw, std::size_t) {
      if (stop) return;
      floors[draw] = floorsOf(data, draw, some, others);
      const std::lock_guard lock(telling);
      ++done;
      const double share = static_cast<double>(done) / static_cast<double>(draws * sweeps);
      if (going && !going(share)) stop = true;
    });
    if (stop) return stopped();
    for (std::size_t k = 0; k < some.size(); ++k) chances.push_back(chanceFrom(floors, k));
  }
  return chances;
}

}  // namespace sumpwright::suction
