// The parts of a suction study's JSON that come of measuring, sealing and sharing a fan.

#include <nlohmann/json.hpp>

#include "cli/Suction.h"
#include "words/Words.h"

namespace sumpwright::cli {

namespace {

using FitRow = nlohmann::ordered_json;

FitRow saidRows(const siting::Study& study, const std::vector<base::Message>& messages) {
  FitRow rows = FitRow::array();
  for (const base::Message& one : messages) {
    rows.push_back({{"id", one.id}, {"sentence", words::say(one, study.job().display_units)}});
  }
  return rows;
}

FitRow bandedRow(const suction::Banded& b) {
  return {{"value", b.value}, {"low", b.low}, {"high", b.high}};
}

FitRow holeRows(const suction::Fit& fit) {
  FitRow rows = FitRow::array();
  for (const suction::Misfit& hole : fit.holes) {
    rows.push_back({{"hole", hole.hole},
                    {"measured_pa", hole.measured_pa},
                    {"fitted_pa", hole.fitted_pa},
                    {"off_sd", hole.off_sd},
                    {"outlier", hole.outlier}});
  }
  return rows;
}

double openShare(airflow::ValvePosition valve) {
  switch (valve) {
    case airflow::ValvePosition::three_quarters:
      return 0.75;
    case airflow::ValvePosition::half:
      return 0.5;
    case airflow::ValvePosition::quarter:
      return 0.25;
    case airflow::ValvePosition::closed:
      return 0.0;
    default:
      return 1.0;
  }
}

}  // namespace

FitRow measuredJson(const siting::Study& study) {
  const auto& tests = study.job().suction.tests;
  if (tests.empty()) return {};
  FitRow rows = FitRow::array();
  for (const plan::PressureTest& test : tests) {
    FitRow readings = FitRow::array();
    for (const plan::HoleReading& reading : test.readings) {
      readings.push_back({{"hole", reading.hole}, {"suction_pa", reading.suction_pa}});
    }
    rows.push_back({{"test", test.id},
                    {"date", test.date},
                    {"flow_m3_s", test.flow_m3_s ? FitRow(*test.flow_m3_s) : FitRow()},
                    {"pit_pa", test.pit_pa ? FitRow(*test.pit_pa) : FitRow()},
                    {"readings", std::move(readings)}});
  }
  return rows;
}

FitRow expectedJson(const siting::SuctionAnswer& answer) {
  FitRow rows = FitRow::array();
  for (const siting::ExpectedTest& test : answer.expected) {
    FitRow holes = FitRow::array();
    for (const siting::ExpectedHole& hole : test.holes) {
      holes.push_back({{"hole", hole.hole}, {"predicted_pa", hole.suction_pa}});
    }
    rows.push_back(
        {{"test", test.test}, {"flow_m3_s", test.flow_m3_s}, {"holes", std::move(holes)}});
  }
  return rows;
}

FitRow fittedJson(const siting::Study& study, const siting::SuctionAnswer& answer) {
  if (!answer.fitted) return {};
  const siting::FittedGround& ground = *answer.fitted;
  const suction::Fit& fit = ground.fit;
  const bool usable = ground.usable();
  return {{"usable", usable},
          {"tests", ground.tests},
          {"readings", ground.readings},
          {"flow_known", fit.flow_known},
          {"case", ground.label.id.empty()
                       ? FitRow()
                       : FitRow(words::say(ground.label, study.job().display_units))},
          {"transmissivity_m3_s_pa", usable ? bandedRow(fit.transmissivity_m3_s_pa) : FitRow()},
          {"leakage_m_s_pa", usable ? bandedRow(fit.leak_m_s_pa) : FitRow()},
          {"lambda_m", usable ? bandedRow(fit.lambda_m) : FitRow()},
          {"correlation", usable ? FitRow(fit.correlation) : FitRow()},
          {"chi2", usable ? FitRow(fit.chi2) : FitRow()},
          {"pit_excess_pa", fit.pit_excess_pa ? FitRow(*fit.pit_excess_pa) : FitRow()},
          {"holes", holeRows(fit)},
          {"sentences", saidRows(study, ground.sentences)}};
}

FitRow sharedFanJson(const siting::Study& study, const siting::SuctionAnswer& answer) {
  if (answer.shared.legs.empty()) return {};
  FitRow rows = FitRow::array();
  for (const siting::SharedLeg& leg : answer.shared.legs) {
    rows.push_back({{"sump", leg.sump},
                    {"flow_m3_s", leg.flow.m3PerS()},
                    {"pit_pa", leg.pit.pa()},
                    {"valve_open", openShare(leg.valve)},
                    {"trimmed_pa", leg.trimmed.pa()}});
  }
  return {{"trims", answer.shared.trims},
          {"held", answer.shared.held},
          {"trimmed_held", answer.shared.trimmed_held},
          {"legs", std::move(rows)},
          {"sentences", saidRows(study, answer.shared.sentences)}};
}

FitRow paperLinesJson(const siting::Study& study, const siting::SuctionAnswer& answer) {
  const siting::SuctionPaperLines& lines = siting::suctionPaperLines(answer);
  return {{"client", saidRows(study, lines.client)}, {"crew", saidRows(study, lines.crew)}};
}

}  // namespace sumpwright::cli
