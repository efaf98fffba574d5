#include "siting/SuctionGround.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "plan/SuctionEdits.h"
#include "siting/SuctionPlaces.h"
#include "siting/SuctionWords.h"

namespace sumpwright::siting {

namespace {

using base::Message;
using base::Pressure;
using suction::Fit;

constexpr double kSdsOf95 = 1.959964;  // normal distribution

/// Where a test drew from: where its sump stood then, with the pit it has now.
std::optional<suction::Sink> sinkOf(const Study& study, const plan::PressureTest& test,
                                    double pit_m3) {
  const plan::Sump* sump = plan::testedSump(study.job(), test);
  if (sump == nullptr && !test.stood) return std::nullopt;
  plan::Sump tested = sump == nullptr ? plan::Sump{} : *sump;
  if (test.stood) {
    tested.ring = test.stood->ring;
    tested.chainage_m = test.stood->chainage_m;
    tested.at_m = test.stood->at_m;
  }
  const double litres = tested.pit_l.value_or(1000.0 * pit_m3);
  return suction::sinkOf(study.perimeter(), tested, suction::pitRadius_m(0.001 * litres));
}

/// What is to be known of the place that a test counts with.
void sayWhereItStood(const Study& study, const plan::PressureTest& test, FittedGround& fitted) {
  const auto id = base::text("test", test.id);
  if (!test.stood) {
    fitted.sentences.push_back(Message("suction.fitted.stood-unknown", {id}));
  } else if (plan::hasMovedSince(study.job(), test)) {
    fitted.sentences.push_back(Message(
        "suction.fitted.stood", {id, base::phrase("where", placeOfSump(study, *test.stood))}));
  }
}

const plan::TestHole* holeOf(const plan::Plan& plan, const std::string& id) {
  const auto it = std::find_if(plan.test_holes.begin(), plan.test_holes.end(),
                               [&](const plan::TestHole& h) { return h.id == id; });
  return it == plan.test_holes.end() ? nullptr : &*it;
}

std::string nameOfHole(const plan::Plan& plan, const std::string& id) {
  const plan::TestHole* hole = holeOf(plan, id);
  return hole == nullptr || hole->name.empty() ? id : hole->name;
}

std::vector<suction::Measured> measuredIn(const Study& study, double pit_m3, FittedGround& fitted) {
  std::vector<suction::Measured> all;
  const plan::Job& job = study.job();
  for (const plan::PressureTest& test : job.suction.tests) {
    const auto sink = sinkOf(study, test, pit_m3);
    if (!sink) {
      fitted.sentences.push_back(Message("suction.fitted.no-sump", {base::text("test", test.id)}));
      continue;
    }
    sayWhereItStood(study, test, fitted);
    suction::Measured measured{*sink, test.flow_m3_s, test.pit_pa, {}, test.id};
    for (const plan::HoleReading& reading : test.readings) {
      const plan::TestHole* hole = holeOf(job.plan, reading.hole);
      if (hole == nullptr) continue;  // the check says so
      measured.readings.push_back(
          {nameOfHole(job.plan, reading.hole), hole->at_m, reading.suction_pa, reading.sd_pa});
    }
    all.push_back(std::move(measured));
  }
  fitted.tests = static_cast<int>(all.size());
  return all;
}

/// Standard deviation that puts 95 % into the band; no more than before anything was measured:
/// readings that contradict each other make nobody know less than nothing.
double sdOf(const suction::Banded& band) {
  if (!(band.value > 0.0)) return 0.0;
  return std::min(std::log(band.high / band.value) / kSdsOf95, suction::FitOptions{}.prior_sd);
}

suction::Narrowed narrowedBy(const Fit& fit) {
  suction::Narrowed narrowed;
  narrowed.transmissivity = fit.scales.transmissivity;
  narrowed.leakage = fit.scales.leakage;
  narrowed.sd_transmissivity_ln = sdOf(fit.transmissivity_m3_s_pa);
  narrowed.sd_leakage_ln = sdOf(fit.leak_m_s_pa);
  narrowed.correlation = fit.correlation;
  narrowed.flow_known = fit.flow_known;
  narrowed.sd_ratio_ln = 2.0 * sdOf(fit.lambda_m);
  return narrowed;
}

void sayWhatWasFound(FittedGround& fitted, const suction::GroundRanges& ranges) {
  const Fit& fit = fitted.fit;
  auto& out = fitted.sentences;
  out.push_back(Message("suction.fitted.readings", {base::count("readings", fitted.readings),
                                                    base::count("tests", fitted.tests)}));
  if (!fitted.label.id.empty()) {
    out.push_back(Message("suction.fitted.case", {base::phrase("case", fitted.label)}));
  }
  out.push_back(Message("suction.fitted.lambda", {base::metres("value", fit.lambda_m.value),
                                                  base::metres("low", fit.lambda_m.low),
                                                  base::metres("high", fit.lambda_m.high)}));
  if (fit.flow_known) {
    const double k = ranges.middle().permeability_m2 * fit.scales.transmissivity;
    const double band =
        std::log10(fit.transmissivity_m3_s_pa.high / fit.transmissivity_m3_s_pa.value);
    out.push_back(Message(
        "suction.fitted.permeability",
        {base::number("low", std::log10(k) - band), base::number("high", std::log10(k) + band),
         base::metres("depth", ranges.middle().thickness_m)}));
  }
  for (const suction::Misfit& hole : fit.holes) {
    out.push_back(Message(hole.outlier ? "suction.fitted.hole-outlier" : "suction.fitted.hole",
                          {base::text("hole", hole.hole),
                           base::pressure("measured", Pressure::ofPa(hole.measured_pa)),
                           base::pressure("fitted", Pressure::ofPa(hole.fitted_pa))}));
  }
  if (fit.pit_excess_pa) {
    out.push_back(
        Message(*fit.pit_excess_pa < 0.0 ? "suction.fitted.pit-larger" : "suction.fitted.pit",
                {base::pressure("excess", Pressure::ofPa(std::abs(*fit.pit_excess_pa)))}));
  }
}

}  // namespace

bool wantsFit(const plan::Job& job) { return job.suction.use_tests && !job.suction.tests.empty(); }

std::optional<FittedGround> fittedGround(const Study& study, const suction::GroundRanges& ranges,
                                         double pit_m3, double cell_m) {
  const plan::Job& job = study.job();
  if (job.suction.tests.empty()) return std::nullopt;
  FittedGround fitted;
  const auto measured = measuredIn(study, pit_m3, fitted);
  bool any = false;
  for (const suction::ModelChoices& choices : suction::choicesOf(job.plan)) {
    const auto model = suction::modelOf(job, ranges.middle(), choices);
    if (!model) return std::nullopt;  // said by whoever solves it
    Fit fit = suction::fitGround(*model, measured, {.cell_m = cell_m});
    const bool better =
        !any || (fit.state != suction::FitState::no_answer &&
                 (fitted.fit.state == suction::FitState::no_answer || fit.chi2 < fitted.fit.chi2));
    if (!better) continue;
    any = true;
    fitted.fit = std::move(fit);
    fitted.choices = choices;
  }
  fitted.readings = static_cast<int>(fitted.fit.holes.size());
  if (fitted.usable()) {
    fitted.label = caseLabel(job.plan, fitted.choices);
    fitted.narrowed = narrowedBy(fitted.fit);
    sayWhatWasFound(fitted, ranges);
  } else if (fitted.fit.statements.empty()) {
    fitted.sentences.emplace_back("suction.fit.too-few");
  }
  const auto& statements = fitted.fit.statements;
  fitted.sentences.insert(fitted.sentences.end(), statements.begin(), statements.end());
  return fitted;
}

}  // namespace sumpwright::siting
