#include "siting/SuctionShared.h"

#include <algorithm>
#include <array>
#include <utility>

#include "airflow/DutyRemarks.h"

namespace sumpwright::siting {

namespace {

using airflow::DutyOptions;
using airflow::DutySummary;
using airflow::ValvePosition;
using base::Message;

constexpr std::size_t kMostLegs = 4;  // own figure
constexpr double kWorthIt = 0.01;     // of the floor (own figure)
constexpr auto kPositions =
    std::to_array<ValvePosition>({ValvePosition::open, ValvePosition::three_quarters,
                                  ValvePosition::half, ValvePosition::quarter});

/// The next setting of the valves, like a counter; false after the last.
bool counted(DutyOptions& options) {
  for (airflow::Leg& leg : options.legs) {
    const auto* const at = std::find(kPositions.begin(), kPositions.end(), leg.valve);
    if (at + 1 != kPositions.end()) {
      leg.valve = *(at + 1);
      return true;
    }
    leg.valve = ValvePosition::open;
  }
  return false;
}

bool anyOpen(const DutyOptions& options) {
  return std::any_of(options.legs.begin(), options.legs.end(),
                     [](const airflow::Leg& leg) { return leg.valve == ValvePosition::open; });
}

DutyOptions trimmedFrom(const DutyOptions& open, double least, const HeldAt& held) {
  DutyOptions best = open;
  if (open.legs.size() > kMostLegs) return best;
  double most = least + kWorthIt;
  DutyOptions one = open;
  while (counted(one)) {
    if (!anyOpen(one)) continue;
    const DutySummary duty = airflow::solveDuty(one);
    const double share = duty.ok() ? held(duty) : 0.0;
    if (share <= most) continue;
    most = share;
    best = one;
  }
  return best;
}

const char* valveWord(ValvePosition valve) {
  switch (valve) {
    case ValvePosition::three_quarters:
      return "suction.valve.three-quarters";
    case ValvePosition::half:
      return "suction.valve.half";
    case ValvePosition::quarter:
      return "suction.valve.quarter";
    default:
      return "suction.valve.open";
  }
}

void sayTrim(const DutyOptions& trimmed, SharedFan& shared) {
  auto& out = shared.sentences;
  out.push_back(
      Message("suction.shared.trim", {base::percent("before", 100.0 * shared.held),
                                      base::percent("after", 100.0 * shared.trimmed_held)}));
  for (const airflow::Leg& leg : trimmed.legs) {
    out.push_back(Message(
        "suction.shared.valve",
        {base::text("sump", leg.sump), base::phrase("valve", Message(valveWord(leg.valve)))}));
  }
  for (const airflow::StuckLeg& stuck : airflow::stuckOpen(trimmed)) {
    if (!stuck.remark.id.empty()) out.push_back(stuck.remark);
  }
}

}  // namespace

SharedFan sharedFan(const DutyOptions& open, const HeldAt& held) {
  SharedFan shared;
  const DutySummary duty = airflow::solveDuty(open);
  if (!duty.ok() || open.legs.size() < 2) return shared;
  shared.held = held(duty);
  const DutyOptions trimmed = trimmedFrom(open, shared.held, held);
  const DutySummary after = airflow::solveDuty(trimmed);
  shared.trims = trimmed.legs != open.legs;
  shared.trimmed_held = held(after);
  for (std::size_t i = 0; i < open.legs.size(); ++i) {
    const airflow::LegDuty& leg = duty.legs[i];
    shared.legs.push_back(
        {open.legs[i].sump, leg.total, leg.pit, trimmed.legs[i].valve, after.legs[i].pit});
    shared.sentences.push_back(Message(
        "suction.shared.leg", {base::text("sump", open.legs[i].sump), base::flow("flow", leg.total),
                               base::pressure("pit", leg.pit)}));
  }
  if (shared.trims) {
    sayTrim(trimmed, shared);
  } else {
    shared.sentences.emplace_back("suction.shared.even");
  }
  return shared;
}

}  // namespace sumpwright::siting
