#include "siting/SuctionStudy.h"

#include <algorithm>
#include <utility>

#include "base/Contract.h"
#include "siting/ReachAsked.h"
#include "siting/SuctionFloor.h"
#include "siting/SuctionMiddle.h"
#include "siting/SuctionParts.h"
#include "siting/SuctionSecond.h"
#include "siting/SuctionWords.h"

namespace sumpwright::siting {

namespace {

using base::Message;
using suction::Sink;

constexpr int kFewestDraws = 64;

class Answerer {
 public:
  Answerer(const Study& study, const SuctionSystem& system, const SuctionOptions& options)
      : m_study(study), m_system(system), m_options(options), m_middle(study, system, options) {
    m_answer.fill = options.fill.value_or(study.job().house.fill);
    m_answer.target = options.target;
    m_radius_m = suction::pitRadius_m(options.pit_m3);
  }

  base::Result<SuctionAnswer> answered() {
    if (auto problem = placed()) return *problem;
    if (auto problem = pitsInOne(m_answer.sumps)) return *problem;
    m_taken = takenGround(m_study, m_options);
    m_answer.expected =
        expectedInTests(m_study, m_taken.ranges, m_options.pit_m3, m_options.cell_m);
    m_answer.fitted = m_taken.fitted;
    if (!m_taken.ranges.layered) return finished(SuctionState::not_layered);
    base::Problems problems = solveMiddle();
    if (!problems.empty()) return problems;
    if (m_answer.sumps.empty()) return finished(SuctionState::off_floor);
    problems = takeChance();
    if (!problems.empty()) return problems;
    proposeSecond();
    takeLeak();
    if (!m_options.fans.empty()) m_answer.fans = fanOffers(m_middle, m_system, m_options.fans);
    problems = takeAlong();
    if (!problems.empty()) return problems;
    m_answer.thumb = ruleOfThumb(m_study, m_answer);
    return finished(SuctionState::answered);
  }

 private:
  SuctionAnswer finished(SuctionState state) {
    m_answer.state = state;
    m_answer.verdict = verdictOf(m_answer, m_clustered);
    m_answer.cautions = cautionsOf(m_study.job().plan, usedFit());
    m_answer.paper = linesOf(m_study, m_answer);
    auto& list = m_answer.assumptions;
    for (Assumption& one :
         groundAssumptions(m_study.job(), m_answer, m_taken.ranges, m_options.pit_m3)) {
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
    base::Problems problems = m_middle.solve(m_taken, m_answer.sumps, m_answer.remarks);
    if (!problems.empty() || m_answer.sumps.empty()) return problems;
    m_answer.middle = m_middle.told();
    m_answer.worst = m_middle.worst();
    const airflow::DutySummary& duty = m_answer.middle[m_answer.worst].duty;
    m_answer.remarks.insert(m_answer.remarks.end(), duty.remarks.begin(), duty.remarks.end());
    takePower(duty);
    m_answer.field = m_middle.fieldOfWorst();
    return {};
  }

  /// What nobody said of the seal, and what one fan does to its legs.
  void takeLeak() {
    if (m_system.shared) {
      m_answer.shared =
          sharedFan(m_middle.dutyOfWorst(m_system),
                    [&](const airflow::DutySummary& duty) { return m_middle.reachAt(duty).floor; });
    }
    if (m_system.seal != plan::AnnulusSeal::unknown) return;
    LeakCase leak;
    leak.duty = airflow::solveDuty(m_middle.dutyOfWorst(leaking(m_system)));
    if (!leak.duty.ok()) return;
    leak.reach = m_middle.reachAt(leak.duty);
    leak.sentence = leakSentence(leak, m_answer.middle[m_answer.worst]);
    m_answer.leak = std::move(leak);
  }

  void takePower(const airflow::DutySummary& duty) {
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
    options.cases = m_taken.cases;
    m_chance = m_options.guesses;
    if (!m_chance) {
      auto made = suction::ChanceStudy::of(m_study.job(), m_taken.ranges, options, m_options.going);
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
    remarkOnCells();
    m_answer.draws = options.draws;
    m_answer.whole_floor = chance->whole_floor;
    m_answer.mean_floor = chance->mean_floor;
    m_clustered = takeFloor(m_study, m_middle, *m_chance, *chance, m_answer);
    takeRanges(m_system, *chance, m_answer);
    return {};
  }

  /// Cells that had to be larger than asked for are said to be.
  void remarkOnCells() {
    const suction::FieldSummary& field = m_answer.middle[m_answer.worst].field;
    if (!field.coarser && !m_answer.chance.coarser) return;
    m_answer.remarks.push_back(Message(
        "suction.coarser",
        {base::metres("field", field.cell_m), base::metres("guesses", m_answer.chance.cell_m),
         base::metres("asked", m_options.cell_m)}));
  }

  void proposeSecond() {
    const bool reaches = isLikelyHeld(m_answer.whole_floor);
    if (!m_options.propose_second || reaches || m_answer.sumps.size() != 1) return;
    const SecondAsk ask{m_study,
                        m_middle.solverOf(m_middle.worst()),
                        *m_chance,
                        m_answer,
                        flowOf(m_system),
                        flowsOf(m_system),
                        suction::inertiaOf(m_middle.groundOfWorst()),
                        m_radius_m};
    m_answer.second = secondSump(ask);
  }

  base::Problems takeAlong() {
    const ReachOptions options = reachOptionsOf(m_study, m_options, m_taken.ranges, m_taken.cases);
    // One before, of another pit or of other sumps beside it, is no more true.
    if (m_options.reach && isAlongOf(*m_options.reach, m_study, m_options)) {
      m_answer.along = m_options.reach;
    }
    if (!m_options.along || m_answer.along != nullptr) return {};
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
  TakenGround m_taken;
  double m_radius_m = 0.0;
  SuctionAnswer m_answer;
  MiddleCases m_middle;
  std::optional<suction::ChanceStudy> m_chance;
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
