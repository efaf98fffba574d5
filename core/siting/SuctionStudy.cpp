#include "siting/SuctionStudy.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "base/Contract.h"
#include "siting/ReachAsked.h"
#include "siting/SuctionParts.h"
#include "siting/SuctionPlaces.h"
#include "siting/SuctionSecond.h"
#include "siting/SuctionWords.h"

namespace sumpwright::siting {

namespace {

using base::Message;
using geometry::Point;
using suction::ModelChoices;
using suction::Sink;

constexpr int kFewestDraws = 64;

double at(const std::vector<double>& sorted, double share) {
  const double place = share * static_cast<double>(sorted.size() - 1);
  const auto low = static_cast<std::size_t>(place);
  const std::size_t high = std::min(low + 1, sorted.size() - 1);
  return sorted[low] + (place - static_cast<double>(low)) * (sorted[high] - sorted[low]);
}

Band bandOf(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return {at(values, 0.1), at(values, 0.5), at(values, 0.9)};
}

class Answerer {
 public:
  Answerer(const Study& study, const SuctionSystem& system, const SuctionOptions& options)
      : m_study(study), m_system(system), m_options(options) {
    m_answer.fill = options.fill.value_or(study.job().house.fill);
    m_answer.target = options.target;
    m_radius_m = suction::pitRadius_m(options.pit_m3);
  }

  base::Result<SuctionAnswer> answered() {
    if (auto problem = placed()) return *problem;
    TakenGround taken = takenGround(m_study, m_options);
    m_ranges = taken.ranges;
    m_ground = taken.ground;
    m_answer.fitted = std::move(taken.fitted);
    if (!m_ranges.layered) return finished(SuctionState::not_layered);
    base::Problems problems = solveMiddle();
    if (!problems.empty()) return problems;
    if (m_answer.sumps.empty()) return finished(SuctionState::off_floor);
    problems = takeChance();
    if (!problems.empty()) return problems;
    proposeSecond();
    takeLeak();
    problems = takeAlong();
    if (!problems.empty()) return problems;
    m_answer.thumb = ruleOfThumb(m_answer, m_solvers[0].network(), m_barriers);
    return finished(SuctionState::answered);
  }

 private:
  SuctionAnswer finished(SuctionState state) {
    m_answer.state = state;
    m_answer.verdict = verdictOf(m_answer, m_clustered);
    m_answer.cautions = cautionsOf(m_study.job().plan, usedFit());
    m_answer.paper = linesOf(m_study, m_answer);
    auto& list = m_answer.assumptions;
    for (Assumption& one : groundAssumptions(m_study.job(), m_answer, m_ranges, m_options.pit_m3)) {
      list.push_back(std::move(one));
    }
    list.insert(list.end(), m_system.assumptions.begin(), m_system.assumptions.end());
    return std::move(m_answer);
  }

  void add(const std::string& id, Place place) {
    const auto& perimeter = m_study.perimeter();
    m_answer.sumps.push_back({id, place, suction::sinkAt(perimeter, place, m_radius_m)});
  }

  /// Which sumps are counted with; a problem where there are none to take.
  std::optional<base::Problem> placed() {
    if (m_options.at) {
      add("", m_study.perimeter().wrapped(*m_options.at));
      return std::nullopt;
    }
    for (const plan::Sump& sump : m_study.job().design.sumps) {
      if (auto studied = studiedSump(m_study.perimeter(), sump, m_radius_m)) {
        m_answer.sumps.push_back(std::move(*studied));
      }
    }
    if (!m_answer.sumps.empty()) return std::nullopt;
    if (m_study.best().empty()) {
      return base::Problem{Message("suction.no-place"), "/design/sumps", base::Gravity::missing};
    }
    add("", m_study.best().front().place);
    m_answer.assumptions.push_back(
        {Message("suction.assumed.best-place"), {base::Mark::own, "No sump is drawn"}});
    return std::nullopt;
  }

  bool usedFit() const { return m_answer.fitted && m_answer.fitted->usable(); }

  base::Problems solveMiddle() {
    const plan::Plan& plan = m_study.job().plan;
    for (const ModelChoices& choices : suction::choicesOf(plan)) {
      auto model = suction::modelOf(m_study.job(), m_ground, choices);
      if (!model) return model.problems();
      auto solver = suction::FieldSolver::of(*model, {.cell_m = m_options.cell_m});
      if (!solver.ok()) return solver.summary().problems;
      if (m_solvers.empty()) keepThoseOnFloor(solver);
      if (m_answer.sumps.empty()) return {};
      m_barriers = m_barriers || !model->barriers.empty();
      solveCase(choices, solver);
      m_solvers.push_back(std::move(solver));
      m_models.push_back(std::move(model).value());
    }
    for (std::size_t k = 1; k < m_answer.middle.size(); ++k) {
      const double held = m_answer.middle[k].reach.floor;
      if (held < m_answer.middle[m_answer.worst].reach.floor) m_answer.worst = k;
    }
    const airflow::DutySummary& duty = m_answer.middle[m_answer.worst].duty;
    m_answer.remarks.insert(m_answer.remarks.end(), duty.remarks.begin(), duty.remarks.end());
    takePower(duty);
    const std::size_t worst = m_answer.worst;
    m_answer.field = std::make_shared<const SuctionField>(
        SuctionField{m_models[worst], m_solvers[worst].network(), m_suctions[worst]});
    return {};
  }

  void keepThoseOnFloor(const suction::FieldSolver& solver) {
    std::erase_if(m_answer.sumps, [&](const StudiedSump& sump) {
      if (solver.unit(sump.sink)) return false;
      m_answer.remarks.push_back(Message("suction.sump-off-floor", {base::text("sump", sump.id)}));
      return true;
    });
  }

  void solveCase(const ModelChoices& choices, const suction::FieldSolver& solver) {
    MiddleCase one;
    one.choices = choices;
    one.label = caseLabel(m_study.job().plan, choices);
    one.field = solver.summary();
    std::vector<suction::UnitField> units;
    std::vector<std::string> names;
    for (const StudiedSump& sump : m_answer.sumps) {
      auto unit = solver.unit(sump.sink);
      if (!unit) continue;
      units.push_back(std::move(*unit));
      names.push_back(sump.id);
    }
    one.duty = airflow::solveDuty(dutyOptions(m_system, names, suction::resistances(units),
                                              m_ground.inertia_pa_s2_m6(m_radius_m)));
    m_suctions.push_back(suction::superposed(units, groundFlows(one.duty, units.size())));
    one.reach = suction::reachOf(solver.network(), m_suctions.back(), m_options.target);
    one.sentence = caseSentence(one, m_options.target, placeOnFloor(m_study, one.reach.least.at));
    m_answer.middle.push_back(std::move(one));
    m_units.push_back(std::move(units));
  }

  airflow::DutyOptions dutyOfWorst(const SuctionSystem& system) const {
    std::vector<std::string> names;
    for (const StudiedSump& sump : m_answer.sumps) names.push_back(sump.id);
    const auto& units = m_units[m_answer.worst];
    names.resize(units.size());
    return dutyOptions(system, names, suction::resistances(units),
                       m_ground.inertia_pa_s2_m6(m_radius_m));
  }

  /// On the worst middle case.
  suction::Reach reachAt(const airflow::DutySummary& duty) const {
    const auto& units = m_units[m_answer.worst];
    return suction::reachOf(m_solvers[m_answer.worst].network(),
                            suction::superposed(units, groundFlows(duty, units.size())),
                            m_options.target);
  }

  /// What nobody said of the seal, and what one fan does to its legs.
  void takeLeak() {
    if (m_system.shared) {
      m_answer.shared = sharedFan(dutyOfWorst(m_system), [&](const airflow::DutySummary& duty) {
        return reachAt(duty).floor;
      });
    }
    if (m_system.seal != plan::AnnulusSeal::unknown) return;
    LeakCase leak;
    leak.duty = airflow::solveDuty(dutyOfWorst(leaking(m_system)));
    if (!leak.duty.ok()) return;
    leak.reach = reachAt(leak.duty);
    leak.sentence = leakSentence(leak, m_answer.middle[m_answer.worst]);
    m_answer.leak = std::move(leak);
  }

  void takePower(const airflow::DutySummary& duty) {
    if (!duty.ok()) return;
    double sum = 0.0;
    for (const airflow::LineDuty& line : duty.lines) {
      if (!line.power_w) return;
      sum += *line.power_w;
    }
    m_answer.power_w = sum;
    m_answer.running = airflow::runningCost(sum, std::nullopt);
  }

  base::Problems takeChance() {
    suction::ChanceOptions options;
    options.draws = std::max(kFewestDraws, m_options.draws);
    options.cell_m = m_options.cell_m;
    options.threads = m_options.threads;
    options.target = m_options.target;
    options.fan = flowOf(m_system);
    options.together = flowsOf(m_system);
    if (usedFit()) options.narrowed = m_answer.fitted->narrowed;
    m_chance = m_options.guesses;
    if (!m_chance) {
      auto made = suction::ChanceStudy::of(m_study.job(), m_ranges, options, m_options.going);
      if (!made) return made.problems();
      m_chance = *made;
    }
    m_answer.guesses = m_chance;
    std::vector<Sink> sinks;
    for (const StudiedSump& sump : m_answer.sumps) sinks.push_back(sump.sink);
    const auto chance = m_chance->ask(sinks);
    // On cells so much coarser that its part of the floor has none.
    if (!chance) return {{Message("suction.no-guess"), "/design/sumps", base::Gravity::unsound}};
    m_answer.chance = m_chance->summary();
    m_answer.draws = options.draws;
    m_answer.whole_floor = chance->whole_floor;
    m_answer.mean_floor = chance->mean_floor;
    takeFloor(*chance);
    takeRanges(*chance);
    return {};
  }

  double suctionAt(Point at) const {
    const suction::Network& network = m_solvers[m_answer.worst].network();
    const std::vector<double>& suction = m_suctions[m_answer.worst];
    const int cell = network.cellNear(at);
    return cell < 0 ? 0.0 : suction[static_cast<std::size_t>(cell)];
  }

  /// The floor as data, the share that is likely held, and the place that is least likely.
  void takeFloor(const suction::Chance& chance) {
    const suction::Network& network = m_chance->network();
    double likely = 0.0;
    double area = 0.0;
    std::vector<Point> unlikely;
    const FloorPoint* least = nullptr;
    m_answer.floor.reserve(network.cells.size());
    for (std::size_t c = 0; c < network.cells.size(); ++c) {
      const double own = network.cells[c].own_m2;
      if (!(own > 0.0)) continue;
      const Point at = network.centre(static_cast<int>(c));
      m_answer.floor.push_back({at, suctionAt(at), static_cast<double>(chance.by_cell[c])});
      const FloorPoint& here = m_answer.floor.back();
      area += own;
      if (isLikely(here.chance)) likely += own;
      if (!isLikely(here.chance)) unlikely.push_back(at);
      if (least == nullptr || isLess(here, *least)) least = &here;
    }
    if (least == nullptr) return;
    m_answer.likely_floor = likely / area;
    m_answer.least_likely = {least->chance, least->at};
    m_answer.least_where = placeOnFloor(m_study, least->at);
    // "All but" one place is said only where all the rest lies round it: within half the side of a
    // square of the floor's area (own figure).
    const double round = 0.5 * std::sqrt(area);
    m_clustered = std::all_of(unlikely.begin(), unlikely.end(),
                              [&](Point p) { return geometry::distance(p, least->at) <= round; });
  }

  /// Shares of guesses are sums of single precision.
  static bool isLikely(double chance) { return chance > kLikely - 1e-6; }
  static bool isLess(const FloorPoint& a, const FloorPoint& b) {
    if (std::abs(a.chance - b.chance) > 1e-6) return a.chance < b.chance;
    return a.suction_pa < b.suction_pa;
  }

  void takeRanges(const suction::Chance& chance) {
    m_answer.floor_held = bandOf(chance.floors);
    m_answer.flow_m3_s = bandOf(chance.flows_m3_s);
    if (m_answer.sumps.size() == 1) {
      std::vector<double> pits;
      for (const double flow : chance.flows_m3_s) {
        pits.push_back(pitSuctionAt(m_system, base::Flow::ofM3PerS(flow)).pa());
      }
      m_answer.pit_pa = bandOf(std::move(pits));
    }
    m_answer.ranges = rangeSentences(m_answer);
  }

  void proposeSecond() {
    const bool reaches = isLikely(m_answer.whole_floor);
    if (!m_options.propose_second || reaches || m_answer.sumps.size() != 1) return;
    const SecondAsk ask{m_study,  m_solvers[m_answer.worst], *m_chance,
                        m_answer, flowOf(m_system),          m_ground.inertia_pa_s2_m6(m_radius_m)};
    m_answer.second = secondSump(ask);
  }

  base::Problems takeAlong() {
    if (m_options.reach) m_answer.along = m_options.reach;
    if (!m_options.along || m_answer.along != nullptr) return {};
    const ReachOptions options =
        reachOptionsOf(m_options, m_ranges, usedFit() ? &m_ground : nullptr);
    auto made = ReachAlong::of(m_study, m_system, options);
    if (!made) return made.problems();
    auto with = made->withChance(*m_chance, m_options.going);
    if (!with) return with.problems();
    m_answer.along = std::make_shared<const ReachAlong>(std::move(with).value());
    return {};
  }

  const Study& m_study;
  const SuctionSystem& m_system;
  const SuctionOptions& m_options;
  suction::GroundRanges m_ranges;
  suction::Ground m_ground;  ///< in the middle of the ranges, or as fitted
  double m_radius_m = 0.0;
  SuctionAnswer m_answer;
  std::vector<suction::FieldSolver> m_solvers;           ///< by case
  std::vector<suction::SuctionModel> m_models;           ///< by case
  std::vector<std::vector<suction::UnitField>> m_units;  ///< by case
  std::vector<std::vector<double>> m_suctions;           ///< by case
  std::optional<suction::ChanceStudy> m_chance;
  bool m_barriers = false;
  bool m_clustered = false;
};

}  // namespace

SuctionOptions suctionOptionsOf(const plan::Job& job) {
  SuctionOptions options;
  const plan::SuctionFacts& facts = job.suction;
  options.target.design_pa = facts.target_pa.value_or(options.target.design_pa);
  // One that is stated alone may be under the usual limit.
  options.target.limit_pa =
      facts.limit_pa.value_or(std::min(options.target.limit_pa, options.target.design_pa));
  if (!facts.target_pa) {
    options.target.design_pa = std::max(options.target.design_pa, options.target.limit_pa);
  }
  if (facts.pit_l) options.pit_m3 = 0.001 * *facts.pit_l;
  return options;
}

base::Result<SuctionAnswer> studySuction(const Study& study, const SuctionSystem& system,
                                         const SuctionOptions& options) {
  if (!isSound(options.target)) {
    return base::Problem{Message("suction.target"), "", base::Gravity::unreadable};
  }
  return Answerer(study, system, options).answered();
}

}  // namespace sumpwright::siting
