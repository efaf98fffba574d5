#pragma once
// The ground as the job's pressure tests tell it. What is fitted here was measured in the holes;
// what is made of it elsewhere is a prediction.

#include <optional>
#include <string>
#include <vector>

#include "siting/Study.h"
#include "suction/Fit.h"
#include "suction/Presets.h"

namespace sumpwright::siting {

/// The ground if one answer to what nobody knows is the true one.
struct FittedCase {
  suction::ModelChoices choices;
  base::Message label;  ///< empty where there is only one
  suction::Fit fit;
  /// The readings are over a hundred times less likely than on the best answer: it counts no more.
  bool ruled_out = false;
};

struct FittedGround {
  suction::Fit fit;                  ///< of the answer that suits the readings best ...
  suction::ModelChoices choices;     ///< ... that answer
  base::Message label;               ///< of that answer; empty where there is only one
  std::vector<FittedCase> cases;     ///< every answer, in the order of choicesOf()
  int tests = 0;                     ///< with a sump of the plan
  int readings = 0;                  ///< that were fitted
  std::vector<base::Message> found;  ///< sentences() but for where the sumps of tests stand now
  /// What was found, hole by hole, and what the readings cannot tell.
  std::vector<base::Message> sentences;
  bool usable() const { return fit.usable(); }
};

/// All tests of the job together, about the middle of the ranges, by every answer to what nobody
/// knows: each has a ground of its own, and all that the readings do not rule out are counted with.
/// Nothing where the job has no test. Where no fit is usable the prediction rests on the ranges,
/// and that is said. The least that rules an answer out: four readings, none of which falls out of
/// the best fit, and a likelihood ratio of 100, errors as large as they turned out (own figures).
std::optional<FittedGround> fittedGround(const Study& study, const suction::GroundRanges& ranges,
                                         double pit_m3, double cell_m);

/// What a hole reads in a pressure test as predicted before anything was measured: at the test's
/// own sump and its own flow, on the middle of the ranges; of answers nobody knows the least.
struct ExpectedHole {
  std::string hole;  ///< id
  double suction_pa = 0.0;
};
struct ExpectedTest {
  std::string test;  ///< id
  double flow_m3_s = 0.0;
  std::vector<ExpectedHole> holes;  ///< of the plan, those on the floor
  std::optional<double> in(const std::string& hole) const;
};
/// Of every test whose flow was measured and whose sump stood in a floor on fill. Empty where
/// nothing is layered.
std::vector<ExpectedTest> expectedInTests(const Study& study, const suction::GroundRanges& ranges,
                                          double pit_m3, double cell_m);
/// nullptr: nothing is expected of that test.
const ExpectedTest* expectedIn(const std::vector<ExpectedTest>& tests, const std::string& test);

/// The job's readings in words, test by test, and what was expected of them.
std::vector<base::Message> saidOfReadings(const Study& study);
std::vector<base::Message> saidOfExpected(const Study& study,
                                          const std::vector<ExpectedTest>& expected);

/// Answers that the readings leave, each with its ground; every answer where nothing is usable.
std::vector<suction::OpenCase> openCasesOf(const plan::Plan& plan,
                                           const std::optional<FittedGround>& fitted);

/// Sentences on tests whose sump has been moved, or that do not say where it stood.
std::vector<base::Message> saidOfPlaces(const Study& study);

/// Whether the job wants it and has any test.
bool wantsFit(const plan::Job& job);

}  // namespace sumpwright::siting
