#include "siting/RunDuty.h"

#include <algorithm>

namespace sumpwright::siting {

namespace {

/// The speed that counts is the faster of leg and line: they may share a bore, but not the air.
RunDuty dutyOfLeg(const airflow::DutySummary& duty, std::size_t leg) {
  const airflow::LegDuty& own = duty.legs[leg];
  const airflow::LineDuty& line = duty.lines[std::min(leg, duty.lines.size() - 1)];
  RunDuty run;
  run.flow = own.total;
  run.pit = own.pit;
  run.fan = line.fan;
  run.speed_m_s = std::max(own.speed_m_s, line.speed_m_s);
  const airflow::SpeedLimits limits;
  if (run.speed_m_s > limits.condensate_m_s) {
    run.verdict = PipeSpeed::condensate;
  } else if (run.speed_m_s > limits.noise_m_s) {
    run.verdict = PipeSpeed::noisy;
  }
  run.shared = duty.legs.size() > duty.lines.size();
  run.power_w = line.power_w;
  if (run.power_w) run.running = airflow::runningCost(*run.power_w, std::nullopt);
  return run;
}

}  // namespace

std::optional<RunDuty> dutyIn(const SuctionAnswer& answer, const std::string& sump) {
  if (answer.state != SuctionState::answered || answer.worst >= answer.middle.size()) {
    return std::nullopt;
  }
  const airflow::DutySummary& duty = answer.middle[answer.worst].duty;
  if (!duty.ok() || duty.lines.empty()) return std::nullopt;
  for (std::size_t k = 0; k < answer.sumps.size() && k < duty.legs.size(); ++k) {
    if (answer.sumps[k].id == sump) return dutyOfLeg(duty, k);
  }
  return std::nullopt;
}

std::optional<RunDuty> mostAir(const SuctionSystem& system) {
  constexpr double kNothing_pa_s_m3 = 1.0;  // of ground: at a fan's flow under a tenth of a pascal
  const airflow::DutySummary duty =
      airflow::solveDuty(dutyOptions(system, {std::string()}, {kNothing_pa_s_m3}, {0.0}));
  if (!duty.ok() || duty.legs.empty() || duty.lines.empty()) return std::nullopt;
  RunDuty run = dutyOfLeg(duty, 0);
  run.at_most = true;
  return run;
}

}  // namespace sumpwright::siting
