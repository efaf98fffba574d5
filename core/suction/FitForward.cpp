#include "suction/FitForward.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "plan/SuctionEdits.h"
#include "suction/Sensitivity.h"

namespace sumpwright::suction {

namespace {

constexpr double kTrialFlow_m3_s = 0.01;

Narrowed::Logs logsOf(const std::vector<double>& logs) {
  Narrowed::Logs out{};
  std::copy_n(logs.begin(), out.size(), out.begin());
  return out;
}

}  // namespace

FitLeaks leaksOf(const Network& network) {
  FitLeaks leaks;
  for (const Cell& cell : network.cells) {
    if (!(cell.area_m2 > 0.0)) continue;
    leaks.soil_m3_s_pa += cell.leak_ground_m3_s_pa * cell.own_m2 / cell.area_m2;
    leaks.area_m2 += cell.own_m2;
  }
  for (const Joint& joint : network.joints) {
    if (joint.own) leaks.joints_m3_s_pa += joint.room + joint.outdoors;
  }
  return leaks;
}

std::vector<std::vector<double>> logChanges(const Network& network, const Factor& factor,
                                            const Scales& scales, double soil_share,
                                            const std::vector<double>& suction) {
  const auto by = [&](GroundPart part) {
    return sensitivity(network, factor, scales, suction, part);
  };
  const auto soil = by(GroundPart::leakage);
  const auto joints = by(GroundPart::joints);
  std::vector<double> leak(suction.size());
  std::vector<double> split(suction.size());
  for (std::size_t c = 0; c < suction.size(); ++c) {
    leak[c] = soil[c] + joints[c];
    // What a change of the split gives to one it takes from the other.
    split[c] = (1.0 - soil_share) * soil[c] - soil_share * joints[c];
  }
  return {by(GroundPart::transmissivity), std::move(leak), std::move(split),
          by(GroundPart::barriers)};
}

Datum FitHole::datum() const {
  const double step = reading.sd_pa.value_or(kGaugeStep_pa);
  if (reading.suction_pa < step) return {step, step, true};
  return {reading.suction_pa, reading.sd_pa.value_or(readingSd_pa(reading.suction_pa))};
}

FitForward::FitForward(const SuctionModel& model, std::vector<Measured> tests, double cell_m)
    : m_tests(std::move(tests)),
      m_network(networkOf(model, cell_m, true)),
      m_factoriser(m_network),
      m_leaks(leaksOf(m_network)) {
  for (std::size_t t = 0; t < m_tests.size(); ++t) takeTest(t);
}

void FitForward::takeTest(std::size_t t) {
  const Measured& test = m_tests[t];
  auto port = portAt(m_network, test.sink.at, test.sink.radius_m);
  if (!port) {
    m_left_out.emplace_back("suction.fit.sump-off-floor",
                            std::vector{base::text("test", test.name)});
    return;
  }
  m_runs.push_back({t, std::move(*port), test.flow_m3_s.value_or(kTrialFlow_m3_s), {}});
  for (const Reading& reading : test.readings) takeReading(test, reading);
}

void FitForward::takeReading(const Measured& test, const Reading& reading) {
  const auto hole = base::text("hole", reading.hole);
  const std::vector<double> still(m_network.cells.size(), 0.0);
  if (!sampleAt(m_network, still, reading.at)) {
    m_left_out.emplace_back("suction.fit.off-floor", std::vector{hole});
    return;
  }
  if (const auto why = plan::whyNotRead(reading.hole, reading.suction_pa, test.pit_pa)) {
    m_left_out.emplace_back("suction.fit.not-read", std::vector{base::phrase("why", *why)});
    return;
  }
  m_holes.push_back({m_runs.size() - 1, reading});
}

Scales FitForward::scalesAt(const std::vector<double>& logs) const {
  return scalesOf(logsOf(logs), m_leaks.soilShare());
}

bool FitForward::valuesAt(const std::vector<double>& logs, const std::vector<FitHole>& holes,
                          std::vector<double>& values, std::vector<double>& derivatives) {
  constexpr std::size_t kParts = Narrowed::kParts;
  if (m_factoriser.factor(m_network, scalesAt(logs), m_factor) != FactorState::made) return false;
  values.assign(holes.size(), 0.0);
  derivatives.assign(holes.size() * kParts, 0.0);
  for (std::size_t r = 0; r < m_runs.size(); ++r) {
    Draw draw = m_runs[r].port.weights;
    for (auto& [cell, flow] : draw) flow *= m_runs[r].flow_m3_s;
    m_runs[r].suction = m_factor.solve(draw);
    const auto changes = changesOf(logs, m_runs[r].suction);
    for (std::size_t h = 0; h < holes.size(); ++h) {
      if (holes[h].run != r) continue;
      const Point at = holes[h].reading.at;
      const auto value = sampleAt(m_network, m_runs[r].suction, at);
      if (!value) return false;
      values[h] = *value;
      for (std::size_t p = 0; p < kParts; ++p) {
        derivatives[h * kParts + p] = *sampleAt(m_network, changes[p], at);
      }
    }
  }
  return true;
}

std::vector<std::vector<double>> FitForward::changesOf(const std::vector<double>& logs,
                                                       const std::vector<double>& suction) const {
  const double share = m_leaks.soilShare();
  const double odds = share * std::exp(logs[Narrowed::split]);
  return logChanges(m_network, m_factor, scalesAt(logs), odds / (odds + 1.0 - share), suction);
}

}  // namespace sumpwright::suction
