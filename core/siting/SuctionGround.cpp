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
      fitted.found.push_back(Message("suction.fitted.no-sump", {base::text("test", test.id)}));
      continue;
    }
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

void sayCases(FittedGround& fitted) {
  if (fitted.label.id.empty()) return;
  fitted.found.push_back(Message("suction.fitted.case", {base::phrase("case", fitted.label)}));
  for (const FittedCase& one : fitted.cases) {
    if (one.choices == fitted.choices) continue;
    fitted.found.push_back(
        Message(one.ruled_out ? "suction.fitted.case-ruled-out" : "suction.fitted.case-open",
                {base::phrase("case", one.label)}));
  }
}

void sayWhatWasFound(FittedGround& fitted, const suction::GroundRanges& ranges) {
  const Fit& fit = fitted.fit;
  auto& out = fitted.found;
  out.push_back(Message("suction.fitted.readings", {base::count("readings", fitted.readings),
                                                    base::count("tests", fitted.tests)}));
  sayCases(fitted);
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

bool isUsable(const Fit& fit) {
  return fit.state == suction::FitState::settled || fit.state == suction::FitState::not_settled;
}

/// Misfit of readings and prior together.
double objectiveOf(const Fit& fit) {
  const double prior = suction::FitOptions{}.prior_sd;
  return fit.chi2 + std::pow(std::log(fit.scales.transmissivity) / prior, 2) +
         std::pow(std::log(fit.scales.leakage) / prior, 2);
}

/// Of those that are usable that with the least misfit; the first where none is.
const FittedCase& bestOf(const std::vector<FittedCase>& cases) {
  const FittedCase* best = nullptr;
  for (const FittedCase& one : cases) {
    if (!isUsable(one.fit)) continue;
    if (best == nullptr || objectiveOf(one.fit) < objectiveOf(best->fit)) best = &one;
  }
  return best != nullptr ? *best : cases.front();
}

void ruleOut(FittedGround& fitted) {
  constexpr int kFewestToRuleOut = 4;
  constexpr double kParameters = 2.0;
  const double unlikely = 2.0 * std::log(100.0);
  const auto& holes = fitted.fit.holes;
  const bool sure = fitted.readings >= kFewestToRuleOut &&
                    std::none_of(holes.begin(), holes.end(),
                                 [](const suction::Misfit& hole) { return hole.outlier; });
  const double spread =
      std::max(1.0, fitted.fit.chi2 / std::max(1.0, fitted.readings - kParameters));
  for (FittedCase& one : fitted.cases) {
    const double worse = objectiveOf(one.fit) - objectiveOf(fitted.fit);
    one.ruled_out = !isUsable(one.fit) || (sure && worse > unlikely * spread);
  }
}

}  // namespace

bool wantsFit(const plan::Job& job) { return job.suction.use_tests && !job.suction.tests.empty(); }

std::vector<suction::OpenCase> openCasesOf(const plan::Plan& plan,
                                           const std::optional<FittedGround>& fitted) {
  if (!fitted || !fitted->usable()) return suction::openCasesOf(plan);
  std::vector<suction::OpenCase> open;
  for (const FittedCase& one : fitted->cases) {
    if (!one.ruled_out) open.push_back({one.choices, one.narrowed});
  }
  return open;
}

std::vector<Message> saidOfPlaces(const Study& study) {
  std::vector<Message> out;
  const plan::Job& job = study.job();
  for (const plan::PressureTest& test : job.suction.tests) {
    const auto id = base::text("test", test.id);
    if (!test.stood && plan::testedSump(job, test) != nullptr) {
      out.push_back(Message("suction.fitted.stood-unknown", {id}));
    } else if (plan::hasMovedSince(job, test)) {
      out.push_back(Message("suction.fitted.stood",
                            {id, base::phrase("where", placeOfSump(study, *test.stood))}));
    }
  }
  return out;
}

std::optional<FittedGround> fittedGround(const Study& study, const suction::GroundRanges& ranges,
                                         double pit_m3, double cell_m) {
  const plan::Job& job = study.job();
  if (job.suction.tests.empty()) return std::nullopt;
  FittedGround fitted;
  const auto measured = measuredIn(study, pit_m3, fitted);
  for (const suction::ModelChoices& choices : suction::choicesOf(job.plan)) {
    const auto model = suction::modelOf(job, ranges.middle(), choices);
    if (!model) return std::nullopt;  // said by whoever solves it
    FittedCase one;
    one.choices = choices;
    one.label = caseLabel(job.plan, choices);
    one.fit = suction::fitGround(*model, measured, {.cell_m = cell_m});
    one.narrowed = narrowedBy(one.fit);
    fitted.cases.push_back(std::move(one));
  }
  const FittedCase& best = bestOf(fitted.cases);
  fitted.fit = best.fit;
  fitted.choices = best.choices;
  fitted.readings = static_cast<int>(fitted.fit.holes.size());
  if (fitted.usable()) {
    ruleOut(fitted);
    fitted.label = best.label;
    sayWhatWasFound(fitted, ranges);
  } else if (fitted.fit.statements.empty()) {
    fitted.found.emplace_back("suction.fit.too-few");
  }
  const auto& statements = fitted.fit.statements;
  fitted.found.insert(fitted.found.end(), statements.begin(), statements.end());
  return fitted;
}

}  // namespace sumpwright::siting
