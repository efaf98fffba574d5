#include "airflow/FanChoice.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "airflow/DutyCheck.h"

namespace sumpwright::airflow {

namespace {

using base::Message;
using base::Pressure;

Pressure suctionAt(const WatchPoint& point, const DutySummary& duty) {
  Pressure sum = point.background;
  for (std::size_t j = 0; j < duty.legs.size(); ++j)
    sum += Pressure::ofPa(point.per_flow_pa_s_m3[j] * duty.legs[j].ground.m3PerS());
  return sum;
}

void judgeReach(const FanChoiceOptions& options, FanVerdict& verdict) {
  verdict.least_share = 1.0;
  for (std::size_t i = 0; i < options.watch.size(); ++i) {
    const WatchPoint& point = options.watch[i];
    const Pressure suction = suctionAt(point, verdict.duty);
    const double share = suction / point.needed;
    if (i > 0 && share >= verdict.least_share) continue;
    verdict.least_share = share;
    verdict.weakest = i;
    verdict.least = suction;
  }
  if (options.watch.empty()) return;
  const WatchPoint& point = options.watch[verdict.weakest];
  verdict.reasons.push_back(
      Message(verdict.least_share >= 1.0 ? "airflow.choice.holds" : "airflow.choice.falls-short",
              {base::text("point", point.name), base::pressure("suction", verdict.least),
               base::pressure("needed", point.needed)}));
}

/// The share of the floor that is held, where that was asked for.
bool holdsFloor(const FanChoiceOptions& options, FanVerdict& verdict) {
  if (!options.held) return true;
  verdict.held = options.held(verdict.duty);
  const bool holds = *verdict.held >= options.held_needed;
  verdict.reasons.push_back(
      Message(holds ? "airflow.choice.floor-held" : "airflow.choice.floor-short",
              {base::percent("share", 100.0 * *verdict.held),
               base::percent("needed", 100.0 * options.held_needed)}));
  return holds;
}

FanSuits judgePipes(const DutyOptions& system, const DutySummary& duty) {
  double fastest = 0.0;
  bool sound = true;
  for (const LineDuty& line : duty.lines) {
    fastest = std::max(fastest, line.speed_m_s);
    sound = sound && !line.outside_curve;
  }
  for (const LegDuty& leg : duty.legs) {
    fastest = std::max(fastest, leg.speed_m_s);
    sound = sound && leg.total >= base::Flow();
  }
  if (!sound || fastest > system.limits.condensate_m_s) return FanSuits::no;
  return fastest > system.limits.noise_m_s ? FanSuits::noisy : FanSuits::yes;
}

std::optional<double> powerOf(const DutySummary& duty) {
  double sum = 0.0;
  for (const LineDuty& line : duty.lines) {
    if (!line.power_w) return std::nullopt;
    sum += *line.power_w;
  }
  return sum;
}

FanVerdict judgeOn(const Fan& fan, const FanChoiceOptions& options) {
  DutyOptions system = options.system;
  for (FanLine& line : system.lines) {
    line.curve = fan.curve;
    line.fan = fan.title;
  }
  FanVerdict verdict;
  verdict.duty = solveDuty(system);
  if (options.held) verdict.held = 0.0;
  if (verdict.duty.stop == DutyStop::converged) {
    judgeReach(options, verdict);
    verdict.power_w = powerOf(verdict.duty);
    const bool holds = holdsFloor(options, verdict) && verdict.least_share >= 1.0;
    verdict.suits = holds ? judgePipes(system, verdict.duty) : FanSuits::no;
  }
  verdict.reasons.insert(verdict.reasons.end(), verdict.duty.remarks.begin(),
                         verdict.duty.remarks.end());
  return verdict;
}

/// How near a fan comes to what is needed: the floor first, then the weakest point.
std::pair<double, double> nearness(const FanVerdict& verdict) {
  return {verdict.held.value_or(0.0), verdict.least_share};
}

FanVerdict judge(const Fan& fan, std::size_t index, std::span<const FanChoiceOptions> cases) {
  FanVerdict worst = judgeOn(fan, cases[0]);
  for (std::size_t k = 1; k < cases.size(); ++k) {
    FanVerdict here = judgeOn(fan, cases[k]);
    if (!(nearness(here) < nearness(worst))) continue;
    worst = std::move(here);
    worst.which = k;
  }
  worst.fan = index;
  return worst;
}

/// The same to whole percent of the floor, as it is shown: of those that hold as much the one of
/// least power is worth more.
std::pair<double, double> shownNearness(const FanVerdict& verdict) {
  return {std::floor(100.0 * verdict.held.value_or(0.0) + 1e-9), verdict.least_share};
}

bool better(const FanVerdict& a, const FanVerdict& b) {
  if (a.suits != b.suits) return a.suits < b.suits;
  if (a.suits == FanSuits::no && shownNearness(a) != shownNearness(b)) {
    return shownNearness(a) > shownNearness(b);
  }
  constexpr double kUnknown = std::numeric_limits<double>::infinity();
  return a.power_w.value_or(kUnknown) < b.power_w.value_or(kUnknown);
}

/// The first of the ranking says why it is first.
void sayWhyFirst(std::vector<FanVerdict>& ranked) {
  if (ranked.empty()) return;
  FanVerdict& first = ranked.front();
  const auto suiting = std::count_if(ranked.begin(), ranked.end(),
                                     [](const FanVerdict& v) { return v.suits != FanSuits::no; });
  if (suiting == 0) {
    first.reasons.insert(first.reasons.begin(), Message("airflow.choice.none"));
  } else if (suiting > 1 && first.power_w) {
    first.reasons.insert(
        first.reasons.begin(),
        Message(first.suits == FanSuits::noisy ? "airflow.choice.least-power-noisy"
                                               : "airflow.choice.least-power",
                {base::watts("power", *first.power_w), base::count("suiting", suiting)}));
  } else if (suiting == 1) {
    first.reasons.insert(first.reasons.begin(), Message("airflow.choice.only-one"));
  }
}

void checkWatch(const FanChoiceOptions& options, base::Problems& problems) {
  for (std::size_t i = 0; i < options.watch.size(); ++i) {
    const WatchPoint& point = options.watch[i];
    bool sound = point.per_flow_pa_s_m3.size() == options.system.legs.size() &&
                 std::isfinite(point.background.pa()) && point.needed > Pressure() &&
                 std::isfinite(point.needed.pa());
    for (const double k : point.per_flow_pa_s_m3) sound = sound && std::isfinite(k);
    if (sound) continue;
    problems.push_back({Message("airflow.input.watch", {base::text("point", point.name)}),
                        "/watch/" + std::to_string(i), base::Gravity::unsound});
  }
}

}  // namespace

FanChoice chooseFan(std::span<const Fan> fans, const FanChoiceOptions& options) {
  return chooseFan(fans, std::span(&options, 1));
}

FanChoice chooseFan(std::span<const Fan> fans, std::span<const FanChoiceOptions> cases) {
  FanChoice out;
  for (const FanChoiceOptions& options : cases) {
    out.problems = dutyProblems(options.system);
    for (base::Problem& problem : out.problems) problem.pointer = "/system" + problem.pointer;
    checkWatch(options, out.problems);
    if (!out.problems.empty()) return out;
  }
  if (cases.empty()) return out;
  for (std::size_t i = 0; i < fans.size(); ++i) out.ranked.push_back(judge(fans[i], i, cases));
  std::stable_sort(out.ranked.begin(), out.ranked.end(), better);
  sayWhyFirst(out.ranked);
  return out;
}

}  // namespace sumpwright::airflow
