#include "siting/ReachAlong.h"

#include <algorithm>
#include <array>
#include <atomic>
#include <chrono>
#include <cmath>
#include <utility>

#include "base/Contract.h"
#include "siting/SuctionParts.h"
#include "suction/Workers.h"

namespace sumpwright::siting {

namespace {

using base::Message;
using base::Problem;
using perimeter::Edge;
using suction::Everywhere;
using suction::PlaceChance;
using Clock = std::chrono::steady_clock;

constexpr double kChanceStep_m = 2.0;  // own figures
constexpr double kChanceLeastStep_m = 0.3;
constexpr double kChanceStep = 0.05;
constexpr double kFromCorner_m = 0.6;  // first place asked, where the wall is long enough
constexpr double kSameLength_m = 1e-6;
constexpr double kSameTurn_rad = 1e-6;

double elapsedMs(Clock::time_point begun) {
  return std::chrono::duration<double, std::milli>(Clock::now() - begun).count();
}

Problem reachStopped() { return {Message("suction.chance.stopped"), "", base::Gravity::missing}; }

/// One answer to what nobody knows.
struct ReachCase {
  base::Problems problems;
  double cell_m = 0.0;
  Everywhere all;
};

struct CaseAsk {
  const Study& study;
  const ReachOptions& options;
  const suction::GroundRanges& ranges;
  suction::EverywhereOptions everywhere;
};

double coarseEnough(const suction::SuctionModel& model, double cell_m) {
  return std::max(cell_m, std::sqrt(suction::solvedArea_m2(model) / kMostReachCells));
}

ReachCase solvedCase(const CaseAsk& ask, const suction::OpenCase& open,
                     const std::vector<geometry::Point>& weak, const std::function<bool()>& on) {
  ReachCase one;
  const suction::Ground ground = suction::middleOf(ask.ranges, open);
  auto model = suction::modelOf(ask.study.job(), ground, open.choices);
  if (!model) {
    one.problems = model.problems();
    return one;
  }
  const double cell = coarseEnough(*model, ask.options.cell_m);
  const auto solver = suction::FieldSolver::of(*model, {.cell_m = cell});
  one.problems = solver.summary().problems;
  one.cell_m = solver.summary().cell_m;
  if (!on()) one.problems = {reachStopped()};
  if (!one.problems.empty()) return one;
  suction::EverywhereOptions everywhere = ask.everywhere;
  everywhere.inertia = suction::inertiaOf(ground);
  one.all = suction::everywhereOf(solver, ask.study.perimeter(), everywhere, weak);
  for (suction::SolvedPlace& place : one.all.solved) place.unit = {};
  return one;
}

/// The first case says where the weak points are; the others are shared out over threads.
std::vector<ReachCase> solveCases(const CaseAsk& ask,
                                  const std::vector<suction::OpenCase>& choices) {
  std::vector<ReachCase> cases(choices.size());
  std::atomic<std::size_t> done{0};
  std::atomic<bool> stop{false};
  const auto on = [&] {
    // Told by one thread only: the one that called.
    const double share = (static_cast<double>(done) + 0.5) / static_cast<double>(choices.size());
    if (ask.options.going && !ask.options.going(share)) stop = true;
    return !stop;
  };
  const auto quiet = [&] { return !stop.load(); };
  cases[0] = solvedCase(ask, choices[0], ask.options.weak, on);
  done = 1;
  if (!cases[0].problems.empty()) return cases;
  const auto weak = cases[0].all.weak;
  std::atomic<std::size_t> next{1};
  const auto work = [&](const std::function<bool()>& asked) {
    for (std::size_t k = next++; k < choices.size(); k = next++) {
      cases[k] = solvedCase(ask, choices[k], weak, asked);
      ++done;
    }
  };
  const int workers = std::min(ask.options.threads, static_cast<int>(choices.size()) - 1);
  suction::onWorkers(static_cast<std::size_t>(std::max(1, workers)), [&](std::size_t worker) {
    if (worker == 0) {
      work(on);
    } else {
      work(quiet);
    }
  });
  return cases;
}

/// Places of the same wall at the same chainage in every case; the case that holds least counts.
std::vector<ReachPlace> worstOf(const std::vector<ReachCase>& cases) {
  std::vector<ReachPlace> places;
  for (std::size_t k = 0; k < cases[0].all.curve.size(); ++k) {
    const suction::CurvePlace* worst = &cases[0].all.curve[k];
    for (const ReachCase& one : cases) {
      const suction::CurvePlace& here = one.all.curve[k];
      if (std::pair(here.floor, here.least_pa) < std::pair(worst->floor, worst->least_pa)) {
        worst = &here;
      }
    }
    ReachPlace place{worst->place, worst->edge};
    place.read = {worst->on_floor, worst->floor, worst->flow_m3_s, worst->least_pa, std::nullopt};
    place.at_weak_pa = worst->at_weak_pa;
    places.push_back(std::move(place));
  }
  return places;
}

ReachSummary summaryOf(const std::vector<ReachCase>& cases, const ReachOptions& options) {
  ReachSummary summary;
  summary.target = options.target;
  summary.cases = static_cast<int>(cases.size());
  for (const ReachCase& one : cases) {
    summary.cell_m = std::max(summary.cell_m, one.cell_m);
    summary.solved += static_cast<int>(one.all.solved.size());
    summary.miss = std::max(summary.miss, one.all.miss);
    summary.jumps = std::max(summary.jumps, one.all.jumps);
  }
  summary.coarser = summary.cell_m > options.cell_m * (1.0 + 1e-12);
  return summary;
}

double lerped(double low, double high, double share) { return low + share * (high - low); }

PlaceChance lerped(const PlaceChance& low, const PlaceChance& high, double share) {
  return {lerped(low.whole_floor, high.whole_floor, share),
          lerped(low.mean_floor, high.mean_floor, share)};
}

/// A run of neighbouring places of the curve with floor behind them, on one wall.
struct FloorRun {
  std::size_t from = 0;
  std::size_t to = 0;  ///< the last
};

std::vector<FloorRun> floorRuns(const std::vector<ReachPlace>& places) {
  std::vector<FloorRun> runs;
  for (std::size_t k = 0; k < places.size(); ++k) {
    if (!places[k].read.on_floor) continue;
    const bool joins = !runs.empty() && runs.back().to + 1 == k &&
                       places[k - 1].edge == places[k].edge &&
                       places[k - 1].place.ring == places[k].place.ring;
    if (joins) {
      runs.back().to = k;
    } else {
      runs.push_back({k, k});
    }
  }
  return runs;
}

/// Asks for the chance at places of the curve, more closely where it changes.
class ChanceWalk {
 public:
  ChanceWalk(const perimeter::Perimeter& perimeter, double radius_m,
             std::vector<ReachPlace>& places, const suction::ChanceStudy& chance,
             const std::vector<suction::Sink>& others)
      : m_perimeter(perimeter),
        m_radius_m(radius_m),
        m_places(places),
        m_chance(chance),
        m_others(others) {}

  base::Problems walk(const suction::Going& going) {
    m_runs = floorRuns(m_places);
    m_asked.assign(m_places.size(), false);
    std::vector<std::size_t> wanted;
    for (const FloorRun& run : m_runs) addFirst(run, wanted);
    // Each round halves steps; the first is most of the work.
    const std::array<double, 4> shares{0.6, 0.8, 0.9, 1.0};
    double from = 0.0;
    for (const double to : shares) {
      const auto told = [&](double done) { return !going || going(lerped(from, to, done)); };
      auto problems = ask(wanted, told);
      if (!problems.empty()) return problems;
      from = to;
      wanted = between();
      if (wanted.empty()) break;
    }
    for (const FloorRun& run : m_runs) fill(run);
    return {};
  }

 private:
  double chainage(std::size_t k) const { return m_places[k].place.chainage_m; }

  std::size_t nearestIn(const FloorRun& run, double chainage_m) const {
    std::size_t best = run.from;
    for (std::size_t k = run.from; k <= run.to; ++k) {
      if (std::abs(chainage(k) - chainage_m) < std::abs(chainage(best) - chainage_m)) best = k;
    }
    return best;
  }

  void addFirst(const FloorRun& run, std::vector<std::size_t>& wanted) const {
    const double length = chainage(run.to) - chainage(run.from);
    const double inset = std::min(kFromCorner_m, length / 4.0);
    const double low = chainage(run.from) + inset;
    const double high = chainage(run.to) - inset;
    const int steps = std::max(1, static_cast<int>(std::ceil((high - low) / kChanceStep_m)));
    wanted.push_back(run.from);
    for (int k = 0; k <= steps; ++k)
      wanted.push_back(nearestIn(run, lerped(low, high, 1.0 * k / steps)));
    wanted.push_back(run.to);
    std::sort(wanted.begin(), wanted.end());
    wanted.erase(std::unique(wanted.begin(), wanted.end()), wanted.end());
  }

  base::Problems ask(const std::vector<std::size_t>& wanted, const suction::Going& going) {
    std::vector<suction::Sink> sinks;
    for (const std::size_t k : wanted) {
      sinks.push_back(suction::sinkAt(m_perimeter, m_places[k].place, m_radius_m));
    }
    const auto answers = m_chance.askEach(sinks, going, m_others);
    if (!answers) return answers.problems();
    for (std::size_t k = 0; k < wanted.size(); ++k) {
      m_asked[wanted[k]] = true;
      // A grid of its own may see less of the pit in the floor: then it holds nothing.
      m_places[wanted[k]].read.chance = (*answers)[k].value_or(PlaceChance{});
    }
    return {};
  }

  std::vector<std::size_t> askedIn(const FloorRun& run) const {
    std::vector<std::size_t> asked;
    for (std::size_t k = run.from; k <= run.to; ++k) {
      if (m_asked[k]) asked.push_back(k);
    }
    return asked;
  }

  bool differ(std::size_t a, std::size_t b) const {
    const PlaceChance& one = *m_places[a].read.chance;
    const PlaceChance& other = *m_places[b].read.chance;
    return std::abs(one.whole_floor - other.whole_floor) > kChanceStep ||
           std::abs(one.mean_floor - other.mean_floor) > kChanceStep;
  }

  std::vector<std::size_t> between() const {
    std::vector<std::size_t> wanted;
    for (const FloorRun& run : m_runs) {
      const auto asked = askedIn(run);
      for (std::size_t k = 1; k < asked.size(); ++k) {
        const std::size_t low = asked[k - 1];
        const std::size_t high = asked[k];
        if (high - low < 2 || chainage(high) - chainage(low) < kChanceLeastStep_m) continue;
        if (differ(low, high)) wanted.push_back((low + high) / 2);
      }
    }
    return wanted;
  }

  void fill(const FloorRun& run) {
    const auto asked = askedIn(run);
    for (std::size_t k = 1; k < asked.size(); ++k) {
      const std::size_t low = asked[k - 1];
      const std::size_t high = asked[k];
      for (std::size_t i = low + 1; i < high; ++i) {
        const double share = (chainage(i) - chainage(low)) / (chainage(high) - chainage(low));
        m_places[i].read.chance =
            lerped(*m_places[low].read.chance, *m_places[high].read.chance, share);
      }
    }
  }

  const perimeter::Perimeter& m_perimeter;
  double m_radius_m;
  std::vector<ReachPlace>& m_places;
  const suction::ChanceStudy& m_chance;
  const std::vector<suction::Sink>& m_others;
  std::vector<FloorRun> m_runs;
  std::vector<bool> m_asked;
};

}  // namespace

base::Result<ReachAlong> ReachAlong::of(const Study& study, const SuctionSystem& system,
                                        const ReachOptions& options) {
  const auto begun = Clock::now();
  if (!isSound(options.target)) {
    return Problem{Message("suction.target"), "", base::Gravity::unreadable};
  }
  const plan::Fill fill = options.fill.value_or(study.job().house.fill);
  const suction::GroundRanges ranges =
      options.ranges.value_or(suction::rangesOf(study.job(), fill));
  auto data = std::make_shared<Data>();
  data->perimeter = std::make_shared<perimeter::Perimeter>(study.perimeter());
  data->radius_m = suction::pitRadius_m(options.pit_m3);
  if (system.one_fan) data->others = options.others;
  if (ranges.layered) {
    CaseAsk ask{study, options, ranges, {}};
    ask.everywhere.radius_m = data->radius_m;
    ask.everywhere.step_m = options.step_m;
    ask.everywhere.tolerance = options.tolerance;
    ask.everywhere.target = options.target;
    ask.everywhere.fan = flowOf(system);
    ask.everywhere.together = flowsOf(system);
    ask.everywhere.others = data->others;
    auto cases = solveCases(
        ask, options.cases.empty() ? suction::openCasesOf(study.job().plan) : options.cases);
    for (const ReachCase& one : cases) {
      if (!one.problems.empty()) return one.problems;
    }
    data->summary = summaryOf(cases, options);
    data->weak = cases[0].all.weak;
    data->places = worstOf(cases);
  } else {
    data->summary.state = ReachState::not_layered;
    data->summary.target = options.target;
  }
  data->summary.fill = fill;
  for (std::size_t k = 0; k < data->places.size(); ++k) {
    const auto ring = static_cast<std::size_t>(data->places[k].place.ring);
    while (data->starts.size() <= ring) data->starts.push_back(k);
  }
  data->starts.push_back(data->places.size());
  data->summary.middle_ms = elapsedMs(begun);
  ReachAlong reach;
  reach.m_data = data;
  return reach;
}

base::Result<ReachAlong> ReachAlong::withChance(const suction::ChanceStudy& chance,
                                                const suction::Going& going) const {
  const auto begun = Clock::now();
  auto data = std::make_shared<Data>(*m_data);
  const auto problems =
      ChanceWalk(*data->perimeter, data->radius_m, data->places, chance, data->others).walk(going);
  if (!problems.empty()) return problems;
  data->has_chance = computed();
  data->summary.chance_ms = elapsedMs(begun);
  ReachAlong reach;
  reach.m_data = data;
  return reach;
}

ReachRead ReachAlong::at(Place place) const {
  if (!computed()) return {};
  const Place here = m_data->perimeter->wrapped(place);
  const auto ring = static_cast<std::size_t>(here.ring);
  const auto begin = places().begin() + static_cast<std::ptrdiff_t>(m_data->starts[ring]);
  const auto end = places().begin() + static_cast<std::ptrdiff_t>(m_data->starts[ring + 1]);
  auto high = std::lower_bound(begin, end, here.chainage_m, [](const ReachPlace& p, double s) {
    return p.place.chainage_m < s;
  });
  if (high == end) return (end - 1)->read;
  if (high == begin) return begin->read;
  const auto low = high - 1;
  const int edge = m_data->perimeter->edgeAt(here).edge;
  // Within a hair of a corner, where the wall's own places end.
  if (low->edge != high->edge) return (low->edge == edge ? low : high)->read;
  if (!low->read.on_floor || !high->read.on_floor) {
    // The edge of the floor lies between: the nearer place is as good as any.
    const double middle = 0.5 * (low->place.chainage_m + high->place.chainage_m);
    return (here.chainage_m < middle ? low : high)->read;
  }
  const double share =
      (here.chainage_m - low->place.chainage_m) / (high->place.chainage_m - low->place.chainage_m);
  const ReachRead& a = low->read;
  const ReachRead& b = high->read;
  ReachRead read{true, lerped(a.floor, b.floor, share), lerped(a.flow_m3_s, b.flow_m3_s, share),
                 lerped(a.least_pa, b.least_pa, share), std::nullopt};
  if (a.chance && b.chance) read.chance = lerped(*a.chance, *b.chance, share);
  return read;
}

bool ReachAlong::fits(const perimeter::Perimeter& perimeter) const {
  if (perimeter.ringCount() != m_data->perimeter->ringCount()) return false;
  const auto alike = [](const Edge& a, const Edge& b) {
    return std::abs(a.length_m - b.length_m) < kSameLength_m &&
           std::abs(a.turn_rad - b.turn_rad) < kSameTurn_rad;
  };
  for (int ring = 0; ring < perimeter.ringCount(); ++ring) {
    const auto& here = perimeter.edges(ring);
    const auto& there = m_data->perimeter->edges(ring);
    if (!std::equal(here.begin(), here.end(), there.begin(), there.end(), alike)) return false;
  }
  return true;
}

std::optional<ReachPlace> ReachAlong::best(const suction::Allowed& allowed) const {
  const ReachPlace* best = nullptr;
  for (const ReachPlace& one : places()) {
    if (!one.read.on_floor || !allowed(one.place)) continue;
    const auto rank = [](const ReachPlace& p) { return std::pair(p.read.floor, p.read.least_pa); };
    if (best == nullptr || rank(one) > rank(*best)) best = &one;
  }
  return best == nullptr ? std::nullopt : std::optional(*best);
}

}  // namespace sumpwright::siting
