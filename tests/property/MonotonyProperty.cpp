// Taking a thing away, or asking for less distance, never makes less wall clear.

#include <algorithm>
#include <functional>

#include "plan/Dimensions.h"
#include "plan/PlanCheck.h"
#include "property/Case.h"

namespace sumpwright::property {

namespace {

using plan::Job;
using siting::State;
using siting::Stretch;
using siting::Study;

constexpr double kOneStudy_m = 1e-6;

/// No place gets worse. Both studies' stretches are asked, so that no place of either is passed
/// over: between two neighbouring ends of both, nothing changes in either.
void expectNoWorse(const Study& before, const Study& after, const Case& c) {
  std::size_t r = 0;
  for (const auto& ring : before.stretches()) {
    std::vector<double> ends;
    for (const Stretch& s : ring) ends.push_back(s.from_m);
    for (const Stretch& s : after.stretches()[r]) ends.push_back(s.from_m);
    ends.push_back(ring.back().to_m);
    std::sort(ends.begin(), ends.end());
    for (std::size_t i = 1; i < ends.size(); ++i) {
      if (ends[i] - ends[i - 1] < kOneStudy_m) continue;
      const siting::Place place{static_cast<int>(r),
                                ends[i - 1] + 0.4321 * (ends[i] - ends[i - 1])};
      ASSERT_LE(after.stateAt(place), before.stateAt(place))
          << "ring " << r << " at " << place.chainage_m
          << "\njob: " << support::writeForReproduction(c.job, c.seed);
    }
    ++r;
  }
  EXPECT_GE(after.lengths_m()[0], before.lengths_m()[0] - kOneStudy_m);
}

template <class Thing>
void removeOne(support::Random& random, std::vector<Thing>& things) {
  things.erase(things.begin() + static_cast<std::ptrdiff_t>(random.index(things.size())));
}

/// Removes one thing that can only object; false where there is none.
bool removeSomething(support::Random& random, Job& job) {
  plan::Plan& p = job.plan;
  std::vector<std::function<void()>> choices;
  const auto offer = [&](auto& list) {
    if (!list.empty()) choices.push_back([&] { removeOne(random, list); });
  };
  offer(p.openings);
  offer(p.services);
  offer(p.outside);
  offer(p.radiators);
  offer(p.heating_pipes);
  offer(p.fittings);
  offer(p.wall_features);
  if (choices.empty()) return false;
  random.oneOf(choices)();
  return true;
}

/// Dimensions that were tied to it go too.
void untie(Job& job) {
  std::erase_if(job.plan.dimensions, [&](const plan::Dimension& d) {
    return !plan::placeOf(job, d.from) || !plan::placeOf(job, d.to);
  });
}

/// "There is one" becomes "looked, none" where the last one went: looked for either way.
void keepLookedFor(Job& job) {
  const auto none = [](plan::Looked& looked) {
    if (looked == plan::Looked::present) looked = plan::Looked::looked_none;
  };
  for (const base::Problem& problem : plan::checkJob(job)) {
    if (problem.message.id != "plan.looked.not-drawn") continue;
    plan::LookedFor& l = job.looked_for;
    if (problem.pointer == "/looked_for/openings") none(l.openings);
    if (problem.pointer == "/looked_for/gas") none(l.gas);
    if (problem.pointer == "/looked_for/electricity") none(l.electricity);
    if (problem.pointer == "/looked_for/water") none(l.water);
    if (problem.pointer == "/looked_for/telecom") none(l.telecom);
    if (problem.pointer == "/looked_for/oil") none(l.oil);
    if (problem.pointer == "/looked_for/drain") none(l.drain);
    if (problem.pointer == "/looked_for/flue_terminal") none(l.flue_terminal);
    if (problem.pointer == "/looked_for/heating") none(l.heating);
  }
}

TEST(MonotonyProperty, RemovingThingsNeverMakesAPlaceWorse) {
  support::forEachSeed(50, [](std::uint64_t seed) {
    Case c = makeCase(seed);
    support::Random random(~seed);
    auto before = study(c);
    ASSERT_TRUE(before);
    for (int i = 0; i < 4 && removeSomething(random, c.job); ++i) {
      untie(c.job);
      keepLookedFor(c.job);
      const auto after = study(c);
      ASSERT_TRUE(after);
      expectNoWorse(*before, *after, c);
      if (testing::Test::HasFailure()) return;
      before = after;
    }
  });
}

TEST(MonotonyProperty, LoweringALimitNeverMakesAPlaceWorse) {
  support::forEachSeed(50, [](std::uint64_t seed) {
    Case c = makeCase(seed);
    support::Random random(~seed);
    auto before = study(c);
    ASSERT_TRUE(before);
    for (rules::Rule& rule : c.sheet.rules) {
      if (!rule.needed_m || !rule.enabled || random.chance(0.6)) continue;
      rule.needed_m->value *= random.uniform(0.0, 1.0);
      const auto after = study(c);
      ASSERT_TRUE(after);
      expectNoWorse(*before, *after, c);
      if (testing::Test::HasFailure()) return;
      before = after;
    }
  });
}

}  // namespace

}  // namespace sumpwright::property
