#pragma once
// A house studied under the Irish sheet, and ways to ask it.

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <string>

#include "siting/Study.h"
#include "support/PlanBuilder.h"
#include "support/RandomPlan.h"

namespace sumpwright::siting {

inline constexpr double kMicrometre = 1e-6;

inline Study studied(const plan::Job& job, const rules::RuleSheet& sheet,
                     const StudyOptions& options = {}) {
  auto made = Study::of(job, sheet, options);
  EXPECT_TRUE(made) << (made ? "" : made.problems()[0].message.id + made.problems()[0].pointer);
  return std::move(made).value();
}

inline Study studied(const plan::Job& job) {
  return studied(job, support::builtInSheet("ie-practice"));
}

inline const Finding* findingOf(const Assessment& a, const std::string& rule,
                                const std::string& thing) {
  const auto found = std::find_if(a.findings.begin(), a.findings.end(), [&](const Finding& f) {
    return f.rule == rule && f.thing == thing;
  });
  return found == a.findings.end() ? nullptr : &*found;
}

inline bool has(const Assessment& a, const std::string& rule, const std::string& thing) {
  return findingOf(a, rule, thing) != nullptr;
}

}  // namespace sumpwright::siting
