#include "siting/SuctionGround.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "plan/SuctionEdits.h"
#include "siting/SuctionMaterial.h"
#include "siting/SuctionPlaces.h"
#include "siting/SuctionWords.h"
#include "suction/Field.h"

namespace sumpwright::siting {

namespace {

using base::Message;
using base::Pressure;
using suction::Fit;

/// A band of 95 % that is wider tells nothing: a factor of 30 either way (own figure).
constexpr double kHopeless = 900.0;

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

bool isHopeless(const suction::Banded& band) {
  return !(band.low > 0.0) || !(band.high / band.low < kHopeless);
}

void sayBands(const Fit& fit, const suction::GroundRanges& ranges, std::vector<Message>& out) {
  const suction::Banded& lambda = fit.lambda_m;
  // A length under the first decimal is none.
  constexpr double kLeastLength_m = 0.1;
  if (lambda.low < kLeastLength_m && lambda.high < kHopeless * kLeastLength_m) {
    out.push_back(Message("suction.fitted.lambda-most", {base::metres("high", lambda.high)}));
  } else if (isHopeless(lambda)) {
    out.emplace_back("suction.fitted.lambda-untold");
  } else {
    out.push_back(Message("suction.fitted.lambda",
                          {base::metres("value", lambda.value), base::metres("low", lambda.low),
                           base::metres("high", lambda.high)}));
  }
  if (!fit.flow_known) return;
  const suction::Banded& t = fit.transmissivity_m3_s_pa;
  if (isHopeless(t)) return void(out.emplace_back("suction.fitted.permeability-untold"));
  const suction::Ground middle = ranges.middle();
  const double by_t = middle.permeability_m2 / middle.layer().transmissivity_m3_s_pa;
  out.push_back(Message("suction.fitted.permeability",
                        {base::phrase("like", materialOf(by_t * t.low, by_t * t.high)),
                         base::text("value", inPowersOfTen(by_t * t.value)),
                         base::text("low", inPowersOfTen(by_t * t.low)),
                         base::text("high", inPowersOfTen(by_t * t.high)),
                         base::metres("depth", middle.thickness_m)}));
  // A slip of the pen near the sump looks like quite another fill.
  const suction::Range& said = ranges.permeability_m2;
  if (by_t * t.high < said.low || by_t * t.low > said.high) {
    out.push_back(Message("suction.fitted.other-fill",
                          {base::phrase("said", materialOf(said.low, said.high))}));
  }
}

void sayWhatWasFound(FittedGround& fitted, const suction::GroundRanges& ranges) {
  const Fit& fit = fitted.fit;
  auto& out = fitted.found;
  out.push_back(Message("suction.fitted.readings", {base::count("readings", fitted.readings),
                                                    base::count("tests", fitted.tests)}));
  sayCases(fitted);
  sayBands(fit, ranges, out);
  for (const suction::Misfit& hole : fit.holes) {
    const bool low = hole.measured_pa < hole.fitted_pa;
    const char* odd = low ? "suction.fitted.hole-outlier-low" : "suction.fitted.hole-outlier";
    out.push_back(Message(hole.outlier ? odd : "suction.fitted.hole",
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

/// Of those that are usable that with the least misfit; the first where none is.
const FittedCase& bestOf(const std::vector<FittedCase>& cases) {
  const FittedCase* best = nullptr;
  for (const FittedCase& one : cases) {
    if (!one.fit.usable()) continue;
    if (best == nullptr || one.fit.cost < best->fit.cost) best = &one;
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
    const double worse = one.fit.cost - fitted.fit.cost;
    one.ruled_out = !one.fit.usable() || (sure && worse > unlikely * spread);
  }
}

/// The least of what was expected so far and this.
void takeExpected(const plan::Plan& plan, const plan::PressureTest& test,
                  const suction::Network& network, const std::vector<double>& unit,
                  std::vector<ExpectedTest>& expected) {
  ExpectedTest now{test.id, *test.flow_m3_s, {}};
  for (const plan::TestHole& hole : plan.test_holes) {
    const auto suction = suction::sampleAt(network, unit, hole.at_m);
    if (suction) now.holes.push_back({hole.id, *test.flow_m3_s * *suction});
  }
  const auto before = std::find_if(expected.begin(), expected.end(),
                                   [&](const ExpectedTest& one) { return one.test == test.id; });
  if (before == expected.end()) return expected.push_back(std::move(now));
  for (ExpectedHole& hole : before->holes) {
    hole.suction_pa = std::min(hole.suction_pa, now.in(hole.hole).value_or(hole.suction_pa));
  }
}

/// What was known of split and footings before.
suction::FitOptions optionsOf(const suction::GroundRanges& ranges, double cell_m) {
  constexpr double kStated =
      0.05;  // a figure that is stated may still be that far off (own figure)
  suction::FitOptions options;
  options.cell_m = cell_m;
  options.split_sd = std::max(kStated, std::hypot(suction::sdLnOf(ranges.leak_ground_m_s_pa),
                                                  3.0 * suction::sdLnOf(ranges.joint_width_m)));
  options.footing_sd = std::max(kStated, suction::sdLnOf(ranges.footing_m2_s_pa));
  return options;
}

}  // namespace

std::optional<double> ExpectedTest::in(const std::string& hole) const {
  for (const ExpectedHole& one : holes) {
    if (one.hole == hole) return one.suction_pa;
  }
  return std::nullopt;
}

const ExpectedTest* expectedIn(const std::vector<ExpectedTest>& tests, const std::string& test) {
  const auto it = std::find_if(tests.begin(), tests.end(),
                               [&](const ExpectedTest& one) { return one.test == test; });
  return it == tests.end() ? nullptr : &*it;
}

std::vector<ExpectedTest> expectedInTests(const Study& study, const suction::GroundRanges& ranges,
                                          double pit_m3, double cell_m) {
  const plan::Job& job = study.job();
  const auto flows = [](const plan::PressureTest& test) { return test.flow_m3_s.has_value(); };
  const auto& tests = job.suction.tests;
  if (!ranges.layered || std::none_of(tests.begin(), tests.end(), flows)) return {};
  constexpr double kLeastCell_m = 0.10;  // nothing is drawn of it
  std::vector<ExpectedTest> expected;
  for (const suction::ModelChoices& choices : suction::choicesOf(job.plan)) {
    const auto model = suction::modelOf(job, ranges.middle(), choices);
    if (!model) return {};
    const auto solver =
        suction::FieldSolver::of(*model, {.cell_m = std::max(cell_m, kLeastCell_m)});
    if (!solver.ok()) return {};
    for (const plan::PressureTest& test : tests) {
      const auto sink = test.flow_m3_s ? sinkOf(study, test, pit_m3) : std::nullopt;
      const auto unit = sink ? solver.unit(*sink) : std::nullopt;
      if (unit) takeExpected(job.plan, test, solver.network(), unit->suction, expected);
    }
  }
  return expected;
}

std::vector<Message> saidOfReadings(const Study& study) {
  std::vector<Message> out;
  const plan::Job& job = study.job();
  for (const plan::PressureTest& test : job.suction.tests) {
    const auto id = base::text("test", test.id);
    out.push_back(test.flow_m3_s
                      ? Message("suction.measured.test",
                                {id, base::flow("flow", base::Flow::ofM3PerS(*test.flow_m3_s))})
                      : Message("suction.measured.test-no-flow", {id}));
    if (test.pit_pa) {
      out.push_back(Message("suction.measured.pit",
                            {base::pressure("suction", Pressure::ofPa(*test.pit_pa))}));
    }
    for (const plan::HoleReading& reading : test.readings) {
      out.push_back(Message("suction.measured.hole",
                            {base::text("hole", nameOfHole(job.plan, reading.hole)),
                             base::pressure("suction", Pressure::ofPa(reading.suction_pa))}));
    }
  }
  return out;
}

std::vector<Message> saidOfExpected(const Study& study, const std::vector<ExpectedTest>& expected) {
  std::vector<Message> out;
  for (const ExpectedTest& test : expected) {
    out.push_back(Message(
        "suction.expected.test",
        {base::text("test", test.test), base::flow("flow", base::Flow::ofM3PerS(test.flow_m3_s))}));
    for (const ExpectedHole& hole : test.holes) {
      out.push_back(Message("suction.expected.hole",
                            {base::text("hole", nameOfHole(study.job().plan, hole.hole)),
                             base::pressure("suction", Pressure::ofPa(hole.suction_pa))}));
    }
  }
  return out;
}

bool wantsFit(const plan::Job& job) { return job.suction.use_tests && !job.suction.tests.empty(); }

std::vector<suction::OpenCase> openCasesOf(const plan::Plan& plan,
                                           const std::optional<FittedGround>& fitted) {
  if (!fitted || !fitted->usable()) return suction::openCasesOf(plan);
  std::vector<suction::OpenCase> open;
  for (const FittedCase& one : fitted->cases) {
    if (!one.ruled_out) open.push_back({one.choices, one.fit.narrowed});
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
    one.fit = suction::fitGround(*model, measured, optionsOf(ranges, cell_m));
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
  if (!fitted.usable()) fitted.found.emplace_back("suction.fitted.not-used");
  return fitted;
}

}  // namespace sumpwright::siting
