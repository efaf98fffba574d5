#pragma once
// One random house under one random sheet, studied: what the property tests work on.

#include <gtest/gtest.h>

#include "siting/Study.h"
#include "support/RandomPlan.h"
#include "support/SampledTwin.h"
#include "support/Seed.h"

namespace sumpwright::property {

struct Case {
  std::uint64_t seed = 0;
  plan::Job job;
  rules::RuleSheet sheet;
};

inline Case makeCase(std::uint64_t seed, const support::RandomPlanOptions& options = {}) {
  support::Random random(seed);
  Case c;
  c.seed = seed;
  c.job = support::randomJob(random, options);
  c.sheet = support::randomSheet(random);
  return c;
}

/// Studies the case; a random job that is refused is itself a failure.
inline std::optional<siting::Study> study(const Case& c) {
  auto made = siting::Study::of(c.job, c.sheet);
  if (made) return std::move(made).value();
  ADD_FAILURE() << "the random house is not sound: " << made.problems()[0].message.id << " at "
                << made.problems()[0].pointer
                << "\njob: " << support::writeForReproduction(c.job, c.seed);
  return std::nullopt;
}

inline support::SampledTwin twinOf(const siting::Study& study) {
  return {study.job(), study.sheet(), study.site().outlet, study.site().core_m};
}

/// What is said of a stretch, in the twin's terms.
inline support::TwinFindings findingsOf(const siting::Study& study,
                                        const siting::Stretch& stretch) {
  support::TwinFindings set;
  for (const int i : stretch.spans) {
    const rules::Finding& f = study.spans()[static_cast<std::size_t>(i)].finding;
    set.insert({f.rule, f.thing, f.weight});
  }
  return set;
}

inline support::TwinFindings findingsAt(const siting::Study& study, int ring, double s) {
  support::TwinFindings set;
  for (const rules::Finding& f : study.assess({ring, s}).findings) {
    set.insert({f.rule, f.thing, f.weight});
  }
  return set;
}

}  // namespace sumpwright::property
