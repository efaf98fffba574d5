#include "airflow/DutyRemarks.h"

#include <algorithm>
#include <utility>

namespace sumpwright::airflow {

namespace {

using base::Message;
using Messages = std::vector<Message>;

Message ofLeg(const DutyOptions& options, std::size_t i) {
  return Message("airflow.where.leg", {base::text("sump", options.legs[i].sump)});
}

Message ofLine(const DutyOptions& options, std::size_t f) {
  return Message("airflow.where.line", {base::text("fan", options.lines[f].fan)});
}

void remarkFlows(const DutyOptions& options, const DutySummary& duty, Messages& out) {
  for (std::size_t i = 0; i < duty.legs.size(); ++i) {
    const LegDuty& leg = duty.legs[i];
    if (leg.total < base::Flow()) {
      out.push_back(Message("airflow.flows-back", {base::phrase("where", ofLeg(options, i)),
                                                   base::flow("flow", -leg.total)}));
    }
  }
}

void remarkCurves(const DutyOptions& options, const DutySummary& duty, Messages& out) {
  for (std::size_t f = 0; f < duty.lines.size(); ++f) {
    if (!duty.lines[f].outside_curve) continue;
    out.push_back(
        Message("airflow.outside-curve",
                {base::text("fan", options.lines[f].fan), base::flow("flow", duty.lines[f].flow),
                 base::flow("last", options.lines[f].speed * options.lines[f].curve.lastFlow())}));
  }
}

void remarkLeaks(const DutyOptions& options, const DutySummary& duty, Messages& out) {
  for (std::size_t i = 0; i < duty.legs.size(); ++i) {
    const LegDuty& leg = duty.legs[i];
    if (leg.leak <= base::Flow() || leg.total <= base::Flow()) continue;
    out.push_back(Message(
        "airflow.annulus-leaks",
        {base::text("sump", options.legs[i].sump), base::flow("leak", leg.leak),
         base::flow("total", leg.total), base::percent("share", 100.0 * (leg.leak / leg.total))}));
  }
}

/// Points on one fan steal from each other: a leg is named when it takes over twice its even share
/// or over three quarters (own figures).
void remarkShares(const DutyOptions& options, const DutySummary& duty, Messages& out) {
  for (std::size_t f = 0; f < duty.lines.size(); ++f) {
    std::size_t open = 0;
    std::size_t most = 0;
    for (std::size_t i = 0; i < duty.legs.size(); ++i) {
      if (options.legs[i].line != f || options.legs[i].valve == ValvePosition::closed) continue;
      if (open == 0 || duty.legs[i].total > duty.legs[most].total) most = i;
      ++open;
    }
    if (open < 2 || duty.lines[f].flow <= base::Flow()) continue;
    const double share = duty.legs[most].total / duty.lines[f].flow;
    const double limit = std::min(0.75, 2.0 / static_cast<double>(open));
    if (share <= limit) continue;
    out.push_back(
        Message("airflow.leg-takes-most",
                {base::text("sump", options.legs[most].sump), base::percent("share", 100.0 * share),
                 base::count("legs", static_cast<std::int64_t>(open)),
                 base::text("fan", options.lines[f].fan)}));
  }
}

void remarkSpeed(const SpeedLimits& limits, double speed, const Message& where, Messages& out) {
  const bool carries = speed > limits.condensate_m_s;
  if (!carries && speed <= limits.noise_m_s) return;
  out.push_back(
      Message(carries ? "airflow.speed.condensate" : "airflow.speed.noise",
              {base::phrase("where", where), base::speed("speed", speed),
               base::speed("limit", carries ? limits.condensate_m_s : limits.noise_m_s)}));
}

}  // namespace

std::vector<Message> dutyRemarks(const DutyOptions& options, const DutySummary& duty) {
  Messages out;
  if (duty.stop == DutyStop::not_solved)
    out.push_back(Message("airflow.not-solved", {base::pressure("residual", duty.residual)}));
  if (duty.stop == DutyStop::no_flow) out.emplace_back("airflow.no-flow");
  remarkFlows(options, duty, out);
  remarkCurves(options, duty, out);
  remarkLeaks(options, duty, out);
  remarkShares(options, duty, out);
  for (std::size_t f = 0; f < duty.lines.size(); ++f)
    remarkSpeed(options.limits, duty.lines[f].speed_m_s, ofLine(options, f), out);
  for (std::size_t i = 0; i < duty.legs.size(); ++i)
    remarkSpeed(options.limits, duty.legs[i].speed_m_s, ofLeg(options, i), out);
  return out;
}

std::vector<StuckLeg> stuckOpen(const DutyOptions& options) {
  std::vector<StuckLeg> out;
  const DutySummary designed = solveDuty(options);
  if (!designed.ok()) return out;
  for (std::size_t i = 0; i < options.legs.size(); ++i) {
    const ValvePosition valve = options.legs[i].valve;
    if (valve == ValvePosition::none || valve == ValvePosition::open) continue;
    DutyOptions stuck = options;
    stuck.legs[i].valve = ValvePosition::open;
    StuckLeg row{i, solveDuty(stuck), i, {}, {}, {}};
    base::Pressure lost;
    for (std::size_t j = 0; row.duty.ok() && j < options.legs.size(); ++j) {
      const base::Pressure loss = designed.legs[j].pit - row.duty.legs[j].pit;
      if (j == i || loss <= lost) continue;
      lost = loss;
      row.robbed = j;
      row.before = designed.legs[j].pit;
      row.after = row.duty.legs[j].pit;
      row.remark = Message(
          "airflow.stuck-open",
          {base::text("sump", options.legs[i].sump), base::text("robbed", options.legs[j].sump),
           base::pressure("before", row.before), base::pressure("after", row.after)});
    }
    out.push_back(std::move(row));
  }
  return out;
}

}  // namespace sumpwright::airflow
